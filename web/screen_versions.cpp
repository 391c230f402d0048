// Versions of the open recipe: kept under a name or frozen by a batch record, laid beside one another, and
// what can be done with one.
#include <algorithm>
#include <utility>

#include "app.h"
#include "engine/workspace_versions.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace screens {
namespace {

using workspace::Differences;
using workspace::Filed;
using workspace::Version;

void add_remark(std::string& text, const std::string& more) {
    if (!more.empty()) text += (text.empty() ? "" : " \xC2\xB7 ") + more;
}

// "3 lines, steps"
std::string differ_words(const app::App& app, const Differences& made) {
    if (!made.any()) return app.say("version_ui.same");
    std::string what;
    const auto add = [&](bool differs, const std::string& words) {
        if (differs) what += (what.empty() ? "" : ", ") + words;
    };
    add(made.changed_lines > 0, app.say("count.lines", {{"n", std::to_string(made.changed_lines)}}));
    add(made.title, app.say("version_ui.title_of"));
    add(made.product, app.say("version_ui.product"));
    add(made.steps, app.say("version_ui.steps"));
    add(made.notes, app.say("version_ui.notes"));
    add(made.label, app.say("version_ui.label"));
    if (what.empty()) return app.say("version_ui.amount_alone");
    return app.say("version_ui.differs", {{"what", what}});
}

std::string percent_words(const app::App& app, const std::optional<quantity::Percent>& percent) {
    return percent ? app.say("card.percent", {{"range", words::figure(app.words, percent->grid)}})
                   : app.say("card.unknown");
}

void difference_row(app::App& app, const workspace::Recipe& one, const workspace::Recipe& other,
                    const version::Line& line, int index) {
    const formula::Line& shown = line.other ? other.formula.lines[*line.other] : one.formula.lines[*line.one];
    widget::RowSpec row;
    row.title = workspace::display_name(
        catalogue::with_own(app.presets.catalogue, line.other ? other.own : one.own), shown);
    row.plain = true;
    switch (line.change) {
        case version::Change::added:
            row.under = app.say("version_ui.added");
            row.right = percent_words(app, line.is);
            break;
        case version::Change::gone:
            row.under = app.say("version_ui.gone", {{"was", percent_words(app, line.was)}});
            break;
        case version::Change::percent:
            row.under = percent_words(app, line.was) + " \xE2\x86\x92 " + percent_words(app, line.is);
            if (line.was && line.is) {
                const std::int64_t by = (*line.is - *line.was).grid;
                row.right = (by > 0 ? "+" : "\xE2\x88\x92") + words::figure(app.words, by > 0 ? by : -by);
            }
            break;
        case version::Change::same:
            row.under = percent_words(app, line.is);
            break;
    }
    if (line.moved)
        row.under +=
            " \xC2\xB7 " + app.say("version_ui.moved", {{"id", other.formula.lines[*line.other].phase}});
    ImGui::PushID(index);
    widget::row(app.kit, "line", row);
    ImGui::PopID();
    widget::hairline(app.kit);
}

void comparison(app::App& app, const workspace::Recipe& one, const workspace::Recipe& other) {
    const Differences made = workspace::differences(one, other);
    widget::text(app.kit, differ_words(app, made));
    widget::gap(4);
    int index = 0;
    for (const bool changed : {true, false}) {
        if (!changed && made.changed_lines < made.lines.size() && made.changed_lines > 0) {
            widget::gap(10);
            widget::text(app.kit, app.say("version_ui.unchanged"), theme::Type::small, widget::Ink::soft);
        }
        for (const version::Line& line : made.lines)
            if ((line.change != version::Change::same || line.moved) == changed)
                difference_row(app, one, other, line, ++index);
    }
}

// The recipe as it stands and those of its versions that are ticked, in the order of the list; each with the
// day it was kept.
void side_by_side(app::App& app, const workspace::Recipe& now, const std::vector<const Filed*>& all) {
    constexpr std::size_t kMostSides = 6;
    std::vector<std::string>& chosen = app.ui.versions.sides;
    widget::text(app.kit, app.say("version_ui.many_about"), theme::Type::small, widget::Ink::soft);
    std::vector<workspace::Recipe> sides;
    std::vector<std::string> names;
    for (std::size_t i = 0; i <= all.size(); ++i) {
        const Filed* filed = i == 0 ? nullptr : all[i - 1];
        const std::string id = filed ? filed->id : "";
        std::string name = app::version_name(app, id);
        if (filed) add_remark(name, filed->made.substr(0, 10));
        const auto at = std::find(chosen.begin(), chosen.end(), id);
        bool ticked = at != chosen.end();
        if (widget::tick(app.kit, "side_" + id, name, ticked)) {
            if (ticked)
                chosen.erase(at);
            else if (chosen.size() < kMostSides)
                chosen.push_back(id);
            app.ui.again = true;
        }
        if (!ticked) continue;
        sides.push_back(filed ? std::get<Version>(filed->what).recipe : now);
        names.push_back(std::move(name));
    }
    if (sides.size() < 2) return;
    widget::gap(12);
    compared(app, app::compared(app, std::move(sides)), names);
}

}  // namespace

void versions(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe) return nothing_open(app);
    app::VersionsIn& in = app.ui.versions;
    const std::vector<const Filed*> all = workspace::versions_of(app.work, app.work.open);
    widget::text(kit, app.say("version_ui.about"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    widget::TextSpec name;
    name.name = app.say("version_ui.name");
    name.hint = app.say("version_ui.name_hint");
    name.last = true;
    name.most_bytes = static_cast<int>(workspace::kMostVersionBytes);
    if (const auto typed = widget::text_field(kit, "name", in.name, name)) in.name = *typed;
    widget::gap(8);
    if (widget::button(kit, "keep", app.say("version_ui.keep"), widget::Look::primary, kit.width))
        return app::keep_version(app, in.name);
    widget::gap(18);
    if (!all.empty() && widget::tick(kit, "many", app.say("version_ui.many"), in.beside)) {
        in.beside = !in.beside;
        in.sides.clear();
        app.ui.again = true;
    }
    if (in.beside && !all.empty()) return side_by_side(app, *recipe, all);
    std::string pressed;
    if (all.empty()) widget::text(kit, app.say("version_ui.none"), theme::Type::small, widget::Ink::soft);
    for (const Filed* filed : all) {
        const auto& version = std::get<Version>(filed->what);
        widget::RowSpec row;
        row.title = app::version_name(app, filed->id);
        if (version.pinned) row.right = app.say("version_ui.the_one");
        row.under = filed->made.substr(0, 10);
        if (version.frozen && !version.name.empty()) add_remark(row.under, app.say("version_ui.frozen"));
        add_remark(row.under, differ_words(app, workspace::differences(version.recipe, *recipe)));
        row.onward = row.right.empty();
        if (widget::row(kit, filed->id, row).pressed) pressed = filed->id;
        widget::hairline(kit);
    }
    if (pressed.empty()) return;
    in.version = pressed;
    in.against.clear();
    in.named = std::get<Version>((*std::find_if(all.begin(), all.end(),
                                                [&](const Filed* one) { return one->id == pressed; }))
                                     ->what)
                   .name;
    kit.drafts.clear();
    app::show(app, app::Sheet::version);
}

void version(app::App& app) {
    kit::Kit& kit = app.kit;
    app::VersionsIn& in = app.ui.versions;
    const workspace::Recipe* now = app::open_recipe(app);
    const Version* found = workspace::find_version(app.work, in.version);
    if (!found || !now || found->of != app.work.open) return app::close_sheet(app);
    const Version version = *found;  // a press changes it
    // Beside the recipe as it is, or one of the other versions, the latest of them.
    constexpr std::size_t kMostBeside = 8;
    std::vector<std::string> ids{""}, names{app::version_name(app, "")};
    for (const Filed* filed : workspace::versions_of(app.work, version.of))
        if (filed->id != in.version && ids.size() < kMostBeside) {
            ids.push_back(filed->id);
            names.push_back(app::version_name(app, filed->id));
        }
    const auto at = std::find(ids.begin(), ids.end(), in.against);
    const int chosen = at == ids.end() ? 0 : static_cast<int>(at - ids.begin());
    widget::text(kit, app.say("version_ui.beside"), theme::Type::small, widget::Ink::soft);
    widget::gap(4);
    if (const int beside = widget::choice(kit, "beside", app.say("version_ui.beside"), names, chosen);
        beside >= 0)
        in.against = ids[static_cast<std::size_t>(beside)];
    widget::gap(10);
    const Version* other = workspace::find_version(app.work, in.against);
    comparison(app, version.recipe, other ? other->recipe : *now);
    widget::gap(18);
    if (widget::button(kit, "take", app.say("version_ui.take"), widget::Look::primary, kit.width))
        return app::take_version(app, in.version);
    widget::gap(8);
    if (widget::button(kit, "branch", app.say("version_ui.branch"), widget::Look::plain, kit.width))
        return app::branch_version(app, in.version);
    widget::gap(8);
    if (widget::tick(kit, "pin", app.say("version_ui.pin"), version.pinned))
        app::pin_version(app, in.version, !version.pinned);
    widget::gap(10);
    widget::TextSpec name;
    name.name = app.say("version_ui.rename");
    name.last = true;
    name.most_bytes = static_cast<int>(workspace::kMostVersionBytes);
    if (const auto typed = widget::text_field(kit, "named", in.named, name)) {
        in.named = *typed;
        app::name_version(app, in.version, in.named);
    }
}

}  // namespace screens
