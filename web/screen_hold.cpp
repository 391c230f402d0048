// A line that is to bring the same amount of a constituent, whatever bottle it comes from: choosing which,
// and on the line's sheet the percent that does, with what the checks say of it.
#include "app.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

std::string called(const app::App& app, const formula::Hold& hold) {
    finding::Finding about;
    about.constituent = hold.constituent;
    return app::constituent_name(app, about);
}

void hold_line(app::App& app, std::size_t line, std::optional<formula::Hold> hold) {
    app.undo.deed_done();
    app::edit(app, formula::set_hold(app::open_recipe(app)->formula, line, std::move(hold)));
}

}  // namespace

void held_on_line(app::App& app, std::size_t line) {
    kit::Kit& kit = app.kit;
    const auto kept = app::keeping(app, line);
    if (!kept) return;
    const formula::Line& now = app.analysed->formula.lines[line];
    const auto figure = [&](quantity::Percent percent) { return words::figure(app.words, percent.grid); };
    widget::text(
        kit, app.say("hold.now", {{"percent", figure(now.hold->percent)}, {"name", called(app, *now.hold)}}));
    std::optional<quantity::Percent> set;
    if (!kept->ok()) {
        const bool known = kept->error().code != result::Code::gives_too_little;
        widget::text(kit, known ? words::say(app.words, kept->error()) : app.say("hold.not_known"),
                     theme::Type::small, widget::Ink::soft);
    } else if (kept->value().percent == now.percent) {
        widget::text(kit, app.say("hold.met"), theme::Type::small, widget::Ink::soft);
    } else {
        set = kept->value().percent;
        widget::text(kit, app.say("hold.takes", {{"percent", figure(*set)}}), theme::Type::small,
                     widget::Ink::soft);
        for (const finding::Finding& one : kept->value().beyond) {
            widget::gap(6);
            widget::finding_badge(
                kit, one.severity,
                finding::say(app.words, one, app::subject_name(app, one), app::constituent_name(app, one)),
                app::source_words(app, one.source, one.standing));
        }
    }
    widget::gap(6);
    if (set && widget::button(kit, "hold_set", app.say("hold.set", {{"percent", figure(*set)}}))) {
        app.undo.deed_done();
        app.kit.drafts.clear();
        app::edit(app, formula::set_percent(app::open_recipe(app)->formula, line, *set));
    }
    if (widget::button(kit, "hold_off", app.say("hold.off"), widget::Look::quiet))
        hold_line(app, line, std::nullopt);
    widget::gap(6);
}

void hold(app::App& app) {
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || app.ui.line >= recipe->formula.lines.size()) return app::close_sheet(app);
    widget::text(app.kit, app.say("hold.about"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    const std::vector<formula::Hold> all = app::brought(app, app.ui.line);
    if (all.empty()) widget::text(app.kit, app.say("hold.none"));
    for (const formula::Hold& one : all) {
        widget::RowSpec row;
        row.title = called(app, one);
        row.right = app.say("hold.brings", {{"percent", words::figure(app.words, one.percent.grid)}});
        const bool chosen = widget::row(app.kit, one.constituent, row).pressed;
        widget::hairline(app.kit);
        if (!chosen) continue;
        hold_line(app, app.ui.line, one);
        return app::show(app, app::Sheet::line);
    }
}

}  // namespace screens
