// The batch: grams that add up, phase by phase, each with its scale; before them how much is made, after them
// what is to be remarked and what to do about it.
#include <algorithm>
#include <cmath>

#include "app.h"
#include "mirror.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

// Decimal places a scale of this division shows.
int places_of(quantity::Mass division) {
    int places = decimal::kPlaces;
    for (std::int64_t rest = division.grid; places > 0 && rest % 10 == 0; rest /= 10)
        --places;
    return places;
}

// And those of the finest scale of the batch.
int places_of(const batch::Batch& made) {
    int places = places_of(made.division);
    for (const batch::Line& line : made.lines)
        if (line.grams > quantity::Mass{0}) places = std::max(places, places_of(line.place.division));
    return places;
}

std::string container_name(const app::App& app, const std::string& id) {
    const catalogue::Container* known = catalogue::find_container(app.presets.catalogue, id);
    if (known) return known->name;
    return id.empty() ? app.say("batch.portion") : id;
}

// "8 × Tin, 28 g each: about 30.5 mL cold, 31.6 mL when poured at 65 °C; holds 35 mL"
std::string fill_words(const app::App& app, const batch::Batch& made, const batch::Fill& fill) {
    const auto ml = [&](quantity::Volume volume) { return words::figure_fixed(app.words, volume.grid, 1); };
    std::string text =
        app.say(fill.from == batch::FillFrom::test_fill ? "batch.fill_line_tested" : "batch.fill_line",
                {{"count", std::to_string(fill.count)},
                 {"name", container_name(app, fill.container)},
                 {"each", app.grams(fill.each)}});
    if (fill.cold) text += ": " + app.say("batch.cold_ml", {{"ml", ml(*fill.cold)}});
    if (fill.warm && made.pour_c)
        text += ", " + app.say("batch.warm_ml",
                               {{"ml", ml(*fill.warm)}, {"c", words::figure(app.words, *made.pour_c)}});
    if (fill.cold && fill.holds) text += ", " + app.say("batch.holds_ml", {{"ml", ml(*fill.holds)}});
    if (fill.holds && made.pour_c && !fill.warm) text += "; " + app.say("batch.warm_unknown");
    if (fill.share_usual && fill.share)
        text += " " + app.say("batch.share_usual", {{"percent", words::figure(app.words, fill.share->grid)}});
    return text;
}

void total(app::App& app, const batch::Batch& made) {
    kit::Kit& kit = app.kit;
    const theme::Colours& c = theme::colours();
    const std::string big = words::figure_fixed(app.words, made.total.grid, places_of(made));
    std::string under;
    for (const batch::Fill& fill : made.fills)
        under += fill_words(app, made, fill) + "\n";
    if (made.fills.empty())
        under += app.say("batch.after_loss", {{"fill", app.grams(made.fill)},
                                              {"loss", words::figure(app.words, made.loss.grid)}});
    else
        under +=
            app.say(made.loss_usual ? "batch.with_usual_loss" : "batch.with_loss",
                    {{"fill", app.grams(made.fill)}, {"loss", words::figure(app.words, made.loss.grid)}});
    const std::string name = app.say("batch.total", {{"g", big}});
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const float room = kit.width - 32;
    const float unit = widget::measure("g", theme::Type::figure).x + 8;
    const bool fits = widget::measure(big, theme::Type::hero).x + unit <= room;
    const theme::Type type = fits ? theme::Type::hero : theme::Type::figure;
    const ImVec2 figure = widget::measure(big, type),
                 small = widget::measure(under, theme::Type::small, room);
    const ImVec2 label = widget::measure(app.say("batch.total_label"), theme::Type::small, room);
    const float top = start.y + 12 + std::ceil(label.y) + 1;  // of the figure
    const ImRect box(start, {start.x + kit.width, top + 4 + figure.y + small.y + 16});
    mirror::Node node;
    node.id = widget::id_of("total");
    node.role = mirror::Role::status;
    node.name = name + ". " + under;
    std::replace(node.name.begin(), node.name.end(), '\n', ' ');
    widget::fill_place(node, box);
    mirror::add(node);
    widget::draw_panel(box, c.accent_soft, c.on_accent_soft);
    widget::draw_wrapped({start.x + 16, start.y + 12}, app.say("batch.total_label"), theme::Type::small,
                         theme::paint(c.on_accent_soft), room);
    widget::draw_wrapped({start.x + 16, top}, big, type, theme::paint(c.on_accent_soft), 0);
    widget::draw_wrapped(
        {start.x + 16 + figure.x + 8, top + theme::baseline(type) - theme::baseline(theme::Type::figure)},
        "g", theme::Type::figure, theme::paint(c.on_accent_soft), 0);
    widget::draw_wrapped({start.x + 16, top + 4 + figure.y}, under, theme::Type::small,
                         theme::paint(c.on_accent_soft), room);
    ImGui::Dummy(box.GetSize());
}

// "0.01 g scale, into the jug: 312 g with it"
std::string place_words(const app::App& app, const batch::Line& one) {
    const std::vector<scales::Scale>& bench = app.analysed_on.scales;
    const bool known = one.place.scale && *one.place.scale < bench.size();
    const std::string name = known ? bench[*one.place.scale].name : "";
    const std::string division = app.grams(one.place.division);
    const std::string on = name.empty() ? app.say("batch.on_scale", {{"g", division}})
                                        : app.say("batch.on_scale_named", {{"name", name}, {"g", division}});
    if (!app.analysed_on.jug) return on;
    if (!one.place.in_jug) return app.say("batch.on_scale_dish", {{"scale", on}});
    return app.say("batch.on_scale_jug", {{"scale", on}, {"load", app.grams(one.place.load)}});
}

// One line to weigh: the grams large, what they really are in percent beneath the name. In large letters the
// grams have a row of their own between the two.
void weigh_line(app::App& app, const workspace::Recipe& recipe, const batch::Line& one) {
    kit::Kit& kit = app.kit;
    const theme::Colours& c = theme::colours();
    const std::string name = workspace::display_name(app.known(), recipe.formula.lines[one.line]);
    const std::string figure = words::figure_fixed(app.words, one.grams.grid, places_of(one.place.division));
    std::string under =
        app.say("batch.percent", {{"percent", words::figure_fixed(app.words, one.actual.grid, 2)}});
    if (std::abs(one.error_grid) >= 50)  // 0.005 %: would be shown as 0.00
        under = app.say("batch.percent_off",
                        {{"percent", words::figure_fixed(app.words, one.actual.grid, 2)},
                         {"error", (one.error_grid > 0 ? "+" : "\xE2\x88\x92") +
                                       words::figure_fixed(app.words, std::abs(one.error_grid), 2)}});
    if (one.uncertain.grid >= 50)
        under += " \xC2\xB7 " + app.say("batch.uncertain",
                                        {{"percent", words::figure_fixed(app.words, one.uncertain.grid, 2)}});
    under += "\n" + place_words(app, one);
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const float right =
        widget::measure(figure, theme::Type::figure).x + widget::measure(" g", theme::Type::body).x + 8;
    const bool tight = theme::tight(kit.width);
    const float room = tight ? kit.width : kit.width - right - 12;
    const ImVec2 title = widget::measure(name, theme::Type::body, room),
                 small = widget::measure(under, theme::Type::small, room);
    const float between = tight ? theme::line_height(theme::Type::figure) : 0;
    const float height = std::max(56.0f, title.y + between + small.y + 14);
    const ImRect box(start, {start.x + kit.width, start.y + height});
    mirror::Node row;
    row.role = mirror::Role::row;
    row.id = widget::id_of("row" + std::to_string(one.line));
    widget::fill_place(row, box);
    mirror::open(row);
    const auto cell = [&](const char* key, mirror::Role role, const std::string& words, ImRect place) {
        mirror::Node node;
        node.id = widget::id_of(key + std::to_string(one.line));
        node.role = role;
        node.name = words;
        widget::fill_place(node, place);
        mirror::add(node);
    };
    const float y = box.GetCenter().y - (title.y + between + small.y) / 2;
    const float top = tight ? y + title.y : box.GetCenter().y - theme::line_height(theme::Type::figure) / 2;
    cell("name", mirror::Role::row_header, name, ImRect(box.Min, {box.Min.x + room, box.Max.y}));
    cell("grams", mirror::Role::cell, app.say("unit.grams", {{"n", figure}}),
         tight ? ImRect({box.Max.x - right, top}, {box.Max.x, top + between})
               : ImRect({box.Max.x - right, box.Min.y}, box.Max));
    std::string said = under;
    std::replace(said.begin(), said.end(), '\n', ' ');
    cell("percent", mirror::Role::cell, said,
         ImRect({box.Min.x, box.Min.y + title.y + between}, {box.Min.x + room, box.Max.y}));
    mirror::close();
    widget::draw_wrapped({start.x, y}, name, theme::Type::body, theme::paint(c.ink), room);
    widget::draw_wrapped({start.x, y + title.y + between}, under, theme::Type::small,
                         theme::paint(c.ink_soft), room);
    const float unit = widget::measure(" g", theme::Type::body).x;
    widget::draw_wrapped({box.Max.x - unit - widget::measure(figure, theme::Type::figure).x, top}, figure,
                         theme::Type::figure, theme::paint(c.ink), 0);
    widget::draw_wrapped(
        {box.Max.x - unit, top + theme::baseline(theme::Type::figure) - theme::baseline(theme::Type::body)},
        " g", theme::Type::body, theme::paint(c.ink_soft), 0);
    ImGui::Dummy(box.GetSize());
    widget::hairline(kit);
}

void lines(app::App& app, const workspace::Recipe& recipe, const batch::Batch& made) {
    mirror::Node table;
    table.role = mirror::Role::table;
    table.id = widget::id_of("table");
    table.name = app.say("batch.table");
    mirror::open(table);
    for (const formula::Phase& phase : recipe.formula.phases) {
        bool headed = false;
        for (const batch::Line& one : made.lines) {
            if (recipe.formula.lines[one.line].phase != phase.id) continue;
            if (!headed && recipe.formula.phases.size() > 1) {
                std::string title = app.say("phase.name", {{"id", phase.id}});
                if (phase.hold_c)
                    title += " \xC2\xB7 " +
                             app.say("phase.hold", {{"c", words::figure(app.words, *phase.hold_c)}});
                if (phase.add_below_c)
                    title += " \xC2\xB7 " + app.say("phase.add_below",
                                                    {{"c", words::figure(app.words, *phase.add_below_c)}});
                widget::gap(14);
                mirror::Node head;
                head.role = mirror::Role::row;
                head.id = widget::id_of("head" + phase.id);
                mirror::open(head);
                mirror::Node cell;
                cell.role = mirror::Role::column_header;
                cell.id = widget::id_of("head_cell" + phase.id);
                cell.name = title;
                const ImVec2 at = ImGui::GetCursorScreenPos();
                const ImVec2 size = widget::measure(title, theme::Type::strong, app.kit.width);
                widget::fill_place(cell, ImRect(at, {at.x + app.kit.width, at.y + size.y}));
                mirror::add(cell);
                mirror::close();
                widget::draw_wrapped(at, title, theme::Type::strong, theme::paint(theme::colours().heading),
                                     app.kit.width);
                ImGui::Dummy({app.kit.width, size.y + 4});
                widget::hairline(app.kit);
            }
            headed = true;
            weigh_line(app, recipe, one);
        }
    }
    mirror::close();
}

// What is mixed before anything is weighed.
void mixes(app::App& app, const workspace::Recipe& recipe) {
    kit::Kit& kit = app.kit;
    for (const remedy::Ahead& ahead : app.analysis->ahead) {
        const std::string& id = recipe.formula.lines[ahead.line].ingredient;
        const catalogue::Ingredient* mix = catalogue::find_ingredient(app.known(), id);
        if (!mix || mix->parts.size() != ahead.parts.size()) continue;
        std::string parts;
        for (std::size_t i = 0; i < ahead.parts.size(); ++i) {
            const catalogue::Ingredient* part =
                catalogue::find_ingredient(app.known(), mix->parts[i].ingredient);
            parts += (i == 0 ? "" : ", ") +
                     app.say("batch.mix_part",
                             {{"name", part && !part->name.empty() ? part->name : mix->parts[i].ingredient},
                              {"g", app.grams(ahead.parts[i])}});
        }
        widget::gap(10);
        widget::text(kit, app.say("batch.mix_of", {{"name", mix->name}, {"parts", parts}}));
    }
}

void take_remedy(app::App& app, workspace::Recipe& recipe, const remedy::Remedy& one,
                 const std::string& subject, const std::string& oil) {
    std::string name;
    if (one.mix)
        name = app.say("remedy.mix_name", {{"subject", subject},
                                           {"oil", oil},
                                           {"percent", words::figure(app.words, one.mix->strength.grid)}});
    while (name.size() > formula::kMostNameBytes ||
           (!name.empty() && (name.back() & 0xC0) == 0x80 && name.size() == formula::kMostNameBytes))
        name.pop_back();
    const auto taken = remedy::take(recipe, one, app.known(), name);
    if (!taken) return app::tell(app, words::say(app.words, taken.error()), true);
    app.undo.deed_done();
    recipe = *taken;
    app.kit.drafts.clear();
    app::tell(app, app.say("remedy.taken"));
}

bool is_of_batch(finding::Code code) {
    static constexpr finding::Code kCodes[] = {
        finding::Code::line_rounds_to_zero, finding::Code::line_error_large,
        finding::Code::batch_rounded,       finding::Code::density_partly_known,
        finding::Code::line_too_heavy,      finding::Code::warm_over_brim,
        finding::Code::pour_too_hot,        finding::Code::stock_unknown,
        finding::Code::stock_not_needed};
    return std::find(std::begin(kCodes), std::end(kCodes), code) != std::end(kCodes);
}

// The remarks about the batch; under a line too small for its scale, what may be done, worked out in full.
void batch_findings(app::App& app, workspace::Recipe& recipe) {
    kit::Kit& kit = app.kit;
    const auto name_of = [&](std::size_t line) {
        return workspace::display_name(app.known(), recipe.formula.lines[line]);
    };
    const remedy::Remedy* pressed = nullptr;
    for (const finding::Finding& one : app.analysis->findings) {
        if (!is_of_batch(one.code)) continue;
        widget::gap(8);
        const catalogue::Ingredient* known = catalogue::find_ingredient(app.known(), one.subject);
        const std::string name = one.line                        ? name_of(*one.line)
                                 : known && !known->name.empty() ? known->name
                                                                 : one.subject;
        const bool sourced =
            one.code == finding::Code::warm_over_brim || one.code == finding::Code::pour_too_hot;
        widget::finding_badge(kit, one.severity, finding::say(app.words, one, name),
                              sourced ? app.say("finding_ui.source",
                                                {{"title", app::source_words(app, one.source, one.standing)}})
                                      : "");
        if (one.code != finding::Code::line_error_large && one.code != finding::Code::line_rounds_to_zero)
            continue;
        for (const remedy::Remedy& way : app.analysis->remedies) {
            if (way.line != one.line) continue;
            const std::string oil = way.mix ? name_of(way.mix->oil) : "";
            ImGui::PushID(static_cast<int>(way.line));
            ImGui::PushID(static_cast<int>(way.kind));
            widget::gap(6);
            widget::text(kit, remedy::say(app.words, way, name, oil), theme::Type::small, widget::Ink::soft);
            widget::gap(4);
            if (widget::button(kit, "take", remedy::say_short(app.words, way, name, oil), widget::Look::plain,
                               kit.width))
                pressed = &way;
            ImGui::PopID();
            ImGui::PopID();
        }
    }
    if (!pressed) return;
    const remedy::Remedy taken = *pressed;
    take_remedy(app, recipe, taken, name_of(taken.line), taken.mix ? name_of(taken.mix->oil) : "");
}

}  // namespace

// How much is made, in one row; the row opens the sheet where that is said.
std::string amount_in_short(const app::App& app, const batch::Request& request) {
    std::string words;
    switch (request.amount) {
        case batch::Amount::none:
            break;
        case batch::Amount::grams:
            words = app.grams(request.grams);
            break;
        case batch::Amount::containers:
            for (const batch::Containers& one : request.containers)
                words += (words.empty() ? "" : ", ") +
                         app.say("batch.count_short", {{"count", std::to_string(one.count)},
                                                       {"name", container_name(app, one.id)}});
            break;
        case batch::Amount::people:
            words =
                app.say("batch.people_short",
                        {{"people", std::to_string(request.people)},
                         {"each", request.unit ? app.say("batch.count_short",
                                                         {{"count", std::to_string(request.each)},
                                                          {"name", container_name(app, request.unit->id)}})
                                               : app.grams(quantity::grams(request.each))}});
            break;
        case batch::Amount::stock:
            words = app.say("batch.from_stock");
            break;
    }
    return words.empty() ? app.say("batch.say_how_much") : words;
}

void batch_total(app::App& app) {
    if (app.analysis && app.analysis->batch) total(app, *app.analysis->batch);
}

// What of each ingredient is needed and left, the one that runs out first in front of all.
void stock_left(app::App& app) {
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || !app.analysis || !app.analysis->batch || !app.analysis->batch->reach) return;
    for (const bool first : {true, false})
        for (const batch::Supply& supply : app.analysis->batch->reach->supplies) {
            if (!supply.have || supply.first_out != first) continue;
            const catalogue::Ingredient* known = catalogue::find_ingredient(app.known(), supply.ingredient);
            widget::gap(4);
            widget::text(app.kit,
                         app.say(first ? "batch.stock_out" : "batch.stock_left",
                                 {{"name", known && !known->name.empty() ? known->name : supply.ingredient},
                                  {"need", app.grams(supply.need)},
                                  {"left", app.grams(*supply.left)}}),
                         first ? theme::Type::strong : theme::Type::small,
                         first ? widget::Ink::plain : widget::Ink::soft);
        }
}

void batch(app::App& app) {
    kit::Kit& kit = app.kit;
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || !app.analysis) return nothing_open(app);
    const result::Result<batch::Batch>& made = app.analysis->batch;
    if (recipe->batch.amount == batch::Amount::none) {
        widget::text(kit, app.say("batch.begin"), theme::Type::body, widget::Ink::soft);
        widget::gap(12);
        if (widget::button(kit, "amount", app.say("batch.say_how_much"), widget::Look::primary, kit.width))
            app::show(app, app::Sheet::amount);
    } else {
        widget::RowSpec row;
        row.title = amount_in_short(app, recipe->batch);
        row.under = app.say("batch.weighed_to", {{"g", app.grams(recipe->batch.division)}});
        row.onward = true;
        if (widget::row(kit, "amount", row).pressed) app::show(app, app::Sheet::amount);
    }
    widget::gap(8);
    const bool under_way = app::weighing(app) != nullptr;
    if ((made || under_way) &&
        widget::button(kit, "weigh", app.say(under_way ? "batch.weigh_on" : "batch.weigh_out"),
                       widget::Look::primary, kit.width))
        app::weigh(app);
    widget::gap(6);
    if (made && made->lines.size() == recipe->formula.lines.size()) {
        batch_total(app);
        stock_left(app);
        mixes(app, *recipe);
        widget::gap(6);
        lines(app, *recipe, *made);
        batch_findings(app, *recipe);
    } else if (!made && recipe->batch.amount != batch::Amount::none) {
        widget::finding_badge(kit, finding::Severity::stop, words::say(app.words, made.error()), "");
    }
    made_needs(app);
    widget::gap(22);
    widget::finding_badge(kit, finding::Severity::caution, app.say("caution.heat"), app.say("caution.defer"));
    widget::gap(16);
    if (made && widget::button(kit, "sheet", app.say("batch.sheet"), widget::Look::plain, kit.width))
        app::give(app, app::Paper::batch_sheet);
    widget::gap(8);
    if (made && widget::button(kit, "record", app.say("record_ui.write"), widget::Look::plain, kit.width))
        app::begin_record(app);
    widget::gap(8);
    if (widget::button(kit, "papers", app.say("batch.papers"), widget::Look::plain, kit.width)) {
        app.ui.screen = app::Screen::papers;
        app.ui.to_top = true;
    }
    widget::gap(8);
    if (widget::button(kit, "share", app.say("recipe.share"), widget::Look::plain, kit.width)) {
        app.ui.recipe = app.work.open;
        app::show(app, app::Sheet::share);
    }
}

}  // namespace screens
