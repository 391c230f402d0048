// What was understood of a pasted list, line by line, before anything is kept; and the sheet of one line,
// where its ingredient is chosen or the line left out.
#include "app.h"
#include "mirror.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

constexpr const char* kDot = " \xC2\xB7 ";

std::string figure(const app::App& app, std::int64_t grid) {
    return words::figure(app.words, grid);
}

// Of what was worked out: hundredths, unless that would leave too little of it.
std::string rounded(const app::App& app, std::int64_t grid) {
    return grid < decimal::kOne / 10 ? figure(app, grid) : words::figure_fixed(app.words, grid, 2);
}

std::string remark_words(const app::App& app, const pasted::Remark& remark) {
    return app.say("pasted." + std::string(pasted::code_name(remark.code)),
                   {{"line", std::to_string(remark.line)},
                    {"column", std::to_string(remark.column)},
                    {"detail", remark.detail},
                    {"n", remark.detail}});
}

void remarks(app::App& app, const std::vector<pasted::Remark>& all) {
    for (const pasted::Remark& remark : all) {
        widget::gap(6);
        widget::finding_badge(
            app.kit, pasted::refuses(remark.code) ? finding::Severity::caution : finding::Severity::note,
            remark_words(app, remark), "");
    }
}

std::string grams_words(const app::App& app, const measures::Span& grams) {
    if (grams.low == grams.high) return app.say("unit.grams", {{"n", figure(app, grams.usual)}});
    return app.say("pasted_ui.about", {{"g", rounded(app, grams.usual)},
                                       {"low", rounded(app, grams.low)},
                                       {"high", rounded(app, grams.high)}});
}

std::string name_of(const app::App& app, const pasted::Entry& entry) {
    if (const auto* one = catalogue::find_ingredient(app.presets.catalogue, entry.ingredient))
        return one->name;
    return entry.name.empty() ? entry.text : entry.name;
}

std::string share_words(const app::App& app, const pasted::Entry& entry) {
    if (entry.left_out) return app.say("pasted_ui.out");
    if (entry.amount && entry.amount->rest) return app.say("line.rest_short");
    return rounded(app, entry.percent.value_or(quantity::Percent{}).grid) + "\xC2\xA0%";
}

std::string kind_words(const app::App& app, const pasted::Entry& entry) {
    switch (entry.kind) {
        case pasted::Kind::heading:
            return app.say("pasted_ui.heading");
        case pasted::Kind::phase:
            return app.say("phase.name", {{"id", entry.phase}});
        case pasted::Kind::total:
            return app.say("pasted_ui.total");
        case pasted::Kind::step:
            return app.say("pasted_ui.step");
        default:
            return app.say("pasted_ui.note");
    }
}

std::string summary(const app::App& app, const pasted::List& list) {
    std::string words = app.say("count.lines", {{"n", std::to_string(pasted::ingredients(list))}});
    const bool percent = list.basis == pasted::Basis::percent;
    if (list.basis != pasted::Basis::none)
        words += kDot + app.say(percent                             ? "pasted_ui.in_percent"
                                : list.basis == pasted::Basis::mass ? "pasted_ui.in_weights"
                                                                    : "pasted_ui.in_parts");
    if (list.sum && percent) words += kDot + app.say("pasted_ui.adds", {{"sum", figure(app, *list.sum)}});
    if (list.grams) words += kDot + app.say("unit.grams", {{"n", rounded(app, list.grams->grid)}});
    return words;
}

// True: the list was read anew.
bool unit_choice(app::App& app) {
    app::ListIn& in = *app.ui.list_in;
    if (!in.list.has_unitless) return false;
    static constexpr pasted::Basis kBases[] = {pasted::Basis::percent, pasted::Basis::mass,
                                               pasted::Basis::parts};
    int chosen = 0;
    for (int i = 0; i < 3; ++i)
        if (kBases[i] == in.list.unitless) chosen = i;
    widget::gap(10);
    const int pressed = widget::choice(
        app.kit, "unitless", app.say("pasted_ui.unitless"),
        {app.say("pasted_ui.percent"), app.say("pasted_ui.grams"), app.say("pasted_ui.parts")}, chosen);
    if (pressed < 0) return false;
    in.said.unitless = kBases[pressed];
    app::read_list(app);
    return true;
}

void keep_list(app::App& app) {
    auto recipe = pasted::recipe_of(app.ui.list_in->list);
    if (!recipe) return app::tell(app, words::say(app.words, recipe.error()), true);
    const workspace::Recipe blank = app::blank_recipe(app);
    if (recipe->title.empty()) recipe->title = blank.title;
    recipe->batch.division = blank.batch.division;
    app.ui.list_in.reset();
    app::close_sheet(app);
    app::keep(app, std::move(recipe.value()));
}

}  // namespace

void pasted(app::App& app) {
    kit::Kit& kit = app.kit;
    if (!app.ui.list_in) return app::close_sheet(app);
    widget::text(kit, app.say("pasted_ui.help"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    if (!app.ui.list_in->list.title.empty()) widget::heading(kit, 3, app.ui.list_in->list.title);
    widget::text(kit, summary(app, app.ui.list_in->list), theme::Type::strong);
    if (unit_choice(app)) return;
    const app::ListIn& in = *app.ui.list_in;
    widget::gap(10);
    widget::Columns columns = widget::begin_columns(kit);  // before the lines: a long list must not hide them
    const bool keep = widget::button(kit, "keep", app.say("incoming.keep"), widget::Look::primary, kit.width,
                                     pasted::ingredients(in.list) == 0);
    widget::next_column(kit, columns);
    const bool back = widget::button(kit, "back", app.say("pasted_ui.back"), widget::Look::plain, kit.width);
    widget::end_columns(kit, columns);
    if (!in.list.remarks.empty()) widget::gap(4);
    remarks(app, in.list.remarks);
    widget::gap(10);
    mirror::Node list;
    list.id = widget::id_of("entries");
    list.role = mirror::Role::list;
    list.name = app.say("pasted_ui.title");
    mirror::open(list);
    std::optional<std::size_t> pressed;
    for (std::size_t i = 0; i < in.list.entries.size(); ++i) {
        const pasted::Entry& entry = in.list.entries[i];
        ImGui::PushID(static_cast<int>(i));
        mirror::Node item;
        item.id = widget::id_of("item");
        item.role = mirror::Role::item;
        mirror::open(item);
        widget::RowSpec row;
        if (entry.kind == pasted::Kind::ingredient) {
            row.title = name_of(app, entry);
            row.under =
                app.say("pasted_ui.place", {{"line", std::to_string(entry.line)}, {"text", entry.text}});
            if (entry.grams) row.under += kDot + grams_words(app, *entry.grams);
            row.right = share_words(app, entry);
            row.onward = true;
        } else {
            row.title = entry.name.empty() ? entry.text : entry.name;
            row.under = app.say("pasted_ui.place",
                                {{"line", std::to_string(entry.line)}, {"text", kind_words(app, entry)}});
            row.plain = true;
        }
        if (widget::row(kit, "row", row).pressed && !row.plain) pressed = i;
        if (!entry.left_out && !entry.remarks.empty()) {
            remarks(app, entry.remarks);
            widget::gap(10);
        }
        mirror::close();
        widget::hairline(kit);
        ImGui::PopID();
    }
    mirror::close();
    if (pressed) {
        app.ui.list_in->entry = *pressed;
        app.ui.search.clear();
        return app::show(app, app::Sheet::pasted_line);
    }
    if (back) {
        app.ui.typed = in.text;
        app.ui.typed_problem.clear();
        return app::show(app, app::Sheet::paste_list);
    }
    if (keep) keep_list(app);
}

void pasted_line(app::App& app) {
    kit::Kit& kit = app.kit;
    if (!app.ui.list_in || app.ui.list_in->entry >= app.ui.list_in->list.entries.size())
        return app::close_sheet(app);
    app::ListIn& in = *app.ui.list_in;
    const std::size_t at = in.entry;
    const pasted::Entry& entry = in.list.entries[at];
    widget::text(kit,
                 app.say("pasted_ui.place", {{"line", std::to_string(entry.line)}, {"text", entry.text}}),
                 theme::Type::body);
    if (entry.grams) widget::text(kit, grams_words(app, *entry.grams), theme::Type::small, widget::Ink::soft);
    const measures::Measure* measure = entry.amount ? measures::find(entry.amount->measure) : nullptr;
    if (measure && !measure->firm())
        widget::text(kit,
                     app.say("pasted_ui.error_source",
                             {{"source", app::source_words(app, measure->source, measure->standing)}}),
                     theme::Type::small, widget::Ink::soft);
    if (!entry.aside.empty())
        widget::text(kit, app.say("pasted_ui.aside", {{"text", entry.aside}}), theme::Type::small,
                     widget::Ink::soft);
    widget::gap(10);

    std::optional<std::string> chosen;
    const auto choice = [&](std::string_view key, const std::string& title, const std::string& under) {
        widget::RowSpec row;
        row.title = title;
        row.under = under;
        row.chosen = !entry.ingredient.empty() && key == entry.ingredient;
        const bool pressed = widget::row(kit, "choice_" + std::string(key), row).pressed;
        widget::hairline(kit);
        return pressed;
    };
    const bool out = widget::button(kit, "leave_out",
                                    app.say(entry.left_out ? "pasted_ui.take_again" : "pasted_ui.leave_out"),
                                    widget::Look::plain, kit.width);
    widget::gap(10);
    for (const std::string& id : entry.offered)
        if (const auto* one = catalogue::find_ingredient(app.presets.catalogue, id))
            if (choice(id, one->name, app.say("role." + one->role))) chosen = id;
    if (!entry.name.empty() && choice("as_written", app.say("ingredient.as_written", {{"name", entry.name}}),
                                      app.say("ingredient.as_written_about")))
        chosen = "";
    widget::gap(10);
    if (const auto found = picked(app, entry.ingredient)) chosen = *found;
    if (!chosen && !out) return;
    if (chosen) in.said.chosen[at] = *chosen;
    if (out && !in.said.left_out.erase(at)) in.said.left_out.insert(at);
    app::read_list(app);
    app::show(app, app::Sheet::pasted);
}

}  // namespace screens
