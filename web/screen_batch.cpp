// The batch: how much, in which containers, on which scale; then grams that add up, phase by phase.
#include <algorithm>

#include "app.h"
#include "mirror.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

std::string grams(const app::App& app, quantity::Mass mass) {
    return app.say("unit.grams", {{"n", words::figure(app.words, mass.grid)}});
}

// Decimal places a scale of this division shows.
int places_of(quantity::Mass division) {
    int places = decimal::kPlaces;
    for (std::int64_t rest = division.grid; places > 0 && rest % 10 == 0; rest /= 10)
        --places;
    return places;
}

// What goes into each container: a weight, or a share of its volume.
void fill_field(app::App& app, batch::Containers& one, const catalogue::Container* known,
                const std::string& name) {
    widget::NumberSpec fill;
    if (one.fill_percent) {
        fill.name = app.say("batch.fill_percent_of", {{"name", name}});
        fill.label = app.say("batch.fill_percent");
        fill.unit = "%";
        fill.read = typed::percent;
        if (const auto change = widget::number_field(app.kit, "fill_percent", one.fill_percent->grid, fill);
            change.value)
            one.fill_percent = quantity::Percent{*change.value};
        return;
    }
    fill.name = app.say("batch.fill_each_of", {{"name", name}});
    fill.label = app.say("batch.fill_each");
    fill.unit = "g";
    fill.read = typed::mass;
    fill.may_be_empty = true;
    if (known && known->fill_g)
        fill.hint = app.say("batch.fill_usual", {{"g", words::figure(app.words, known->fill_g->value.max)}});
    std::optional<std::int64_t> value;
    if (one.fill_g) value = one.fill_g->grid;
    if (const auto change = widget::number_field(app.kit, "fill_g", value, fill); change.changed) {
        one.fill_g.reset();
        if (change.value) one.fill_g = quantity::Mass{*change.value};
    }
}

void container_card(app::App& app, batch::Request& request, std::size_t index, bool& remove) {
    kit::Kit& kit = app.kit;
    batch::Containers& one = request.containers[index];
    const catalogue::Container* known = catalogue::find_container(app.presets.catalogue, one.id);
    const std::string name = known ? known->name : one.id;
    widget::begin_card(kit);
    widget::RowSpec which;
    which.title = name;
    which.under = app.say("batch.container_change");
    which.onward = true;
    if (widget::row(kit, "which", which).pressed) {
        app.ui.line = index;
        app.ui.line_is_new = false;
        app::show(app, app::Sheet::container);
    }
    widget::gap(6);
    widget::Columns columns = widget::begin_columns(kit);
    widget::NumberSpec count;
    count.name = app.say("batch.count_of", {{"name", name}});
    count.label = app.say("batch.count");
    count.read = typed::whole;
    if (const auto change = widget::number_field(kit, "count", one.count * decimal::kOne, count);
        change.value)
        one.count = *change.value / decimal::kOne;
    widget::next_column(kit, columns);
    fill_field(app, one, known, name);
    widget::end_columns(kit, columns);
    widget::gap(10);
    const int by = one.fill_percent ? 1 : 0;
    const int pressed = widget::choice(kit, "by", app.say("batch.fill_by"),
                                       {app.say("batch.by_weight"), app.say("batch.by_volume")}, by);
    if (pressed == 0 && by == 1) one.fill_percent.reset();
    if (pressed == 1 && by == 0) {
        one.fill_g.reset();
        one.fill_percent = quantity::percent(90);
    }
    if (known && known->fill_g && !one.fill_g && !one.fill_percent) {
        const auto& usual = *known->fill_g;
        widget::gap(8);
        widget::text(
            kit,
            app.say(usual.value.min == usual.value.max ? "batch.fill_source_one" : "batch.fill_source",
                    {{"min", words::figure(app.words, usual.value.min)},
                     {"max", words::figure(app.words, usual.value.max)},
                     {"source", app::source_words(app, usual.source, usual.standing)}}),
            theme::Type::small, widget::Ink::soft);
    }
    if (known && known->nominal_ml && one.fill_percent) {
        const auto& volume = *known->nominal_ml;
        widget::gap(8);
        widget::text(
            kit,
            app.say(volume.value.min == volume.value.max ? "batch.volume_source_one" : "batch.volume_source",
                    {{"min", words::figure(app.words, volume.value.min)},
                     {"max", words::figure(app.words, volume.value.max)},
                     {"source", app::source_words(app, volume.source, volume.standing)}}),
            theme::Type::small, widget::Ink::soft);
    }
    widget::gap(6);
    remove = widget::button(kit, "remove", app.say("batch.container_remove", {{"name", name}}),
                            widget::Look::quiet);
    widget::end_card(kit);
}

void how_much(app::App& app, batch::Request& request) {
    kit::Kit& kit = app.kit;
    const bool in_containers = request.amount == batch::Amount::containers;
    const int chosen = in_containers ? 0 : request.amount == batch::Amount::grams ? 1 : -1;
    const int pressed = widget::choice(kit, "amount", app.say("batch.how_much"),
                                       {app.say("batch.in_containers"), app.say("batch.by_mass")}, chosen);
    if (pressed == 0 && !in_containers) {
        request.amount = batch::Amount::containers;
        if (request.containers.empty()) {
            app.ui.line_is_new = true;
            app::show(app, app::Sheet::container);
        }
    }
    if (pressed == 1 && chosen != 1) {
        request.amount = batch::Amount::grams;
        if (request.grams.grid == 0) request.grams = quantity::grams(100);
    }
    widget::gap(12);
    if (request.amount == batch::Amount::grams) {
        widget::NumberSpec mass;
        mass.name = app.say("batch.mass");
        mass.unit = "g";
        mass.read = typed::mass;
        mass.large = true;
        if (const auto change = widget::number_field(kit, "grams", request.grams.grid, mass); change.value)
            request.grams = quantity::Mass{*change.value};
    } else if (in_containers) {
        std::optional<std::size_t> removed;
        for (std::size_t i = 0; i < request.containers.size(); ++i) {
            ImGui::PushID(static_cast<int>(i));
            bool remove = false;
            container_card(app, request, i, remove);
            if (remove) removed = i;
            widget::gap(10);
            ImGui::PopID();
        }
        if (removed) {
            request.containers.erase(request.containers.begin() + static_cast<std::ptrdiff_t>(*removed));
            kit.drafts.clear();  // they belong to containers by place
        }
        if (request.containers.size() < 20 &&
            widget::button(kit, "add_container", app.say("batch.container_add"), widget::Look::plain,
                           kit.width)) {
            app.ui.line_is_new = true;
            app::show(app, app::Sheet::container);
        }
        widget::gap(12);
        widget::NumberSpec loss;
        loss.name = app.say("batch.loss");
        loss.unit = "%";
        loss.read = typed::loss;
        loss.may_be_empty = true;
        loss.hint =
            app.say("batch.loss_usual", {{"percent", words::figure(app.words, batch::kUsualLoss.grid)}});
        std::optional<std::int64_t> value;
        if (request.loss) value = request.loss->grid;
        if (const auto change = widget::number_field(kit, "loss", value, loss); change.changed) {
            request.loss.reset();
            if (change.value) request.loss = quantity::Percent{*change.value};
        }
    }
}

void which_scale(app::App& app, batch::Request& request) {
    std::vector<std::string> options;
    int chosen = -1;
    for (std::size_t i = 0; i < app.work.settings.scales.size(); ++i) {
        const workspace::Scale& scale = app.work.settings.scales[i];
        options.push_back(
            scale.name.empty()
                ? grams(app, scale.division)
                : app.say("batch.scale_named", {{"name", scale.name}, {"g", grams(app, scale.division)}}));
        if (scale.division == request.division && chosen < 0) chosen = static_cast<int>(i);
    }
    if (chosen < 0) {  // a recipe from elsewhere, for a scale that is not on this bench
        options.push_back(grams(app, request.division));
        chosen = static_cast<int>(options.size()) - 1;
    }
    widget::text(app.kit, app.say("batch.scale"), theme::Type::small, widget::Ink::soft);
    widget::gap(4);
    const int pressed = widget::choice(app.kit, "scale", app.say("batch.scale"), options, chosen);
    if (pressed >= 0 && static_cast<std::size_t>(pressed) < app.work.settings.scales.size())
        request.division = app.work.settings.scales[static_cast<std::size_t>(pressed)].division;
}

void total(app::App& app, const batch::Batch& made) {
    kit::Kit& kit = app.kit;
    const theme::Colours& c = theme::colours();
    const std::string big = words::figure_fixed(app.words, made.total.grid, places_of(made.division));
    std::string under;
    for (const batch::Fill& fill : made.fills) {
        const catalogue::Container* known = catalogue::find_container(app.presets.catalogue, fill.container);
        under += app.say("batch.fill_line", {{"count", std::to_string(fill.count)},
                                             {"name", known ? known->name : fill.container},
                                             {"each", grams(app, fill.each)}}) +
                 "\n";
    }
    if (made.fills.empty())
        under += app.say("batch.after_loss", {{"fill", grams(app, made.fill)},
                                              {"loss", words::figure(app.words, made.loss.grid)}});
    else
        under +=
            app.say(made.loss_usual ? "batch.with_usual_loss" : "batch.with_loss",
                    {{"fill", grams(app, made.fill)}, {"loss", words::figure(app.words, made.loss.grid)}});
    const std::string name = app.say("batch.total", {{"g", big}});
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const float room = kit.width - 32;
    const ImVec2 figure = widget::measure(big, theme::Type::hero),
                 small = widget::measure(under, theme::Type::small, room);
    const ImRect box(start, {start.x + kit.width, start.y + 16 + 18 + figure.y + small.y + 16});
    mirror::Node node;
    node.id = widget::id_of("total");
    node.role = mirror::Role::status;
    node.name = name + ". " + under;
    std::replace(node.name.begin(), node.name.end(), '\n', ' ');
    widget::fill_place(node, box);
    mirror::add(node);
    ImGui::GetWindowDrawList()->AddRectFilled(box.Min, box.Max, theme::paint(c.accent_soft),
                                              theme::kRound + 2);
    widget::draw_wrapped({start.x + 16, start.y + 12}, app.say("batch.total_label"), theme::Type::small,
                         theme::paint(c.on_accent_soft), room);
    widget::draw_wrapped({start.x + 16, start.y + 30}, big, theme::Type::hero, theme::paint(c.on_accent_soft),
                         0);
    widget::draw_wrapped({start.x + 16 + figure.x + 8,
                          start.y + 30 + figure.y - widget::measure("g", theme::Type::figure).y - 4},
                         "g", theme::Type::figure, theme::paint(c.on_accent_soft), 0);
    widget::draw_wrapped({start.x + 16, start.y + 34 + figure.y}, under, theme::Type::small,
                         theme::paint(c.on_accent_soft), room);
    ImGui::Dummy(box.GetSize());
}

// One line to weigh: the grams large, what they really are in percent beneath the name.
void weigh_line(app::App& app, const workspace::Recipe& recipe, const batch::Batch& made,
                const batch::Line& one) {
    kit::Kit& kit = app.kit;
    const theme::Colours& c = theme::colours();
    const std::string name = workspace::display_name(app.known, recipe.formula.lines[one.line]);
    const std::string figure = words::figure_fixed(app.words, one.grams.grid, places_of(made.division));
    std::string under =
        app.say("batch.percent", {{"percent", words::figure_fixed(app.words, one.actual.grid, 2)}});
    if (std::abs(one.error_grid) >= 50)  // 0.005 %: would be shown as 0.00
        under = app.say("batch.percent_off",
                        {{"percent", words::figure_fixed(app.words, one.actual.grid, 2)},
                         {"error", (one.error_grid > 0 ? "+" : "\xE2\x88\x92") +
                                       words::figure_fixed(app.words, std::abs(one.error_grid), 2)}});
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const float right =
        widget::measure(figure, theme::Type::figure).x + widget::measure(" g", theme::Type::body).x + 8;
    const float room = kit.width - right - 12;
    const ImVec2 title = widget::measure(name, theme::Type::body, room),
                 small = widget::measure(under, theme::Type::small, room);
    const float height = std::max(56.0f, title.y + small.y + 14);
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
    cell("name", mirror::Role::row_header, name, ImRect(box.Min, {box.Min.x + room, box.Max.y}));
    cell("grams", mirror::Role::cell, app.say("unit.grams", {{"n", figure}}),
         ImRect({box.Max.x - right, box.Min.y}, box.Max));
    cell("percent", mirror::Role::cell, under,
         ImRect({box.Min.x, box.Min.y + title.y}, {box.Min.x + room, box.Max.y}));
    mirror::close();
    const float y = box.GetCenter().y - (title.y + small.y) / 2;
    widget::draw_wrapped({start.x, y}, name, theme::Type::body, theme::paint(c.ink), room);
    widget::draw_wrapped({start.x, y + title.y}, under, theme::Type::small, theme::paint(c.ink_soft), room);
    const float baseline = box.GetCenter().y - theme::line_height(theme::Type::figure) / 2;
    const float unit = widget::measure(" g", theme::Type::body).x;
    widget::draw_wrapped({box.Max.x - unit - widget::measure(figure, theme::Type::figure).x, baseline},
                         figure, theme::Type::figure, theme::paint(c.ink), 0);
    widget::draw_wrapped({box.Max.x - unit, baseline + 6}, " g", theme::Type::body, theme::paint(c.ink_soft),
                         0);
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
                widget::draw_wrapped(at, title, theme::Type::strong, theme::paint(theme::colours().accent),
                                     app.kit.width);
                ImGui::Dummy({app.kit.width, size.y + 4});
                widget::hairline(app.kit);
            }
            headed = true;
            weigh_line(app, recipe, made, one);
        }
    }
    mirror::close();
}

}  // namespace

// How much is made, in one row; the row opens the sheet where that is said.
std::string amount_in_short(const app::App& app, const batch::Request& request) {
    std::string words;
    if (request.amount == batch::Amount::grams) words = grams(app, request.grams);
    if (request.amount == batch::Amount::containers)
        for (const batch::Containers& one : request.containers) {
            const catalogue::Container* known = catalogue::find_container(app.presets.catalogue, one.id);
            words += (words.empty() ? "" : ", ") +
                     app.say("batch.count_short",
                             {{"count", std::to_string(one.count)}, {"name", known ? known->name : one.id}});
        }
    return words.empty() ? app.say("batch.say_how_much") : words;
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
        row.under = app.say("batch.weighed_to", {{"g", grams(app, recipe->batch.division)}});
        row.onward = true;
        if (widget::row(kit, "amount", row).pressed) app::show(app, app::Sheet::amount);
    }
    widget::gap(6);
    if (made && made->lines.size() == recipe->formula.lines.size()) {
        total(app, *made);
        widget::gap(6);
        lines(app, *recipe, *made);
        for (const finding::Finding& one : app.analysis->findings) {
            if (one.code != finding::Code::line_rounds_to_zero &&
                one.code != finding::Code::line_error_large && one.code != finding::Code::batch_rounded &&
                one.code != finding::Code::density_partly_known)
                continue;
            widget::gap(8);
            const std::string name =
                one.line ? workspace::display_name(app.known, recipe->formula.lines[*one.line]) : one.subject;
            widget::finding_badge(kit, one.severity, finding::say(app.words, one, name), "");
        }
    } else if (!made && recipe->batch.amount != batch::Amount::none) {
        widget::finding_badge(kit, finding::Severity::stop, words::say(app.words, made.error()), "");
    }
    widget::gap(22);
    widget::finding_badge(kit, finding::Severity::caution, app.say("caution.heat"), app.say("caution.defer"));
    widget::gap(16);
    if (made && widget::button(kit, "sheet", app.say("batch.sheet"), widget::Look::plain, kit.width))
        app::save_batch_sheet(app);
    widget::gap(8);
    if (widget::button(kit, "share", app.say("recipe.share"), widget::Look::plain, kit.width)) {
        app.ui.recipe = app.work.open;
        app::show(app, app::Sheet::share);
    }
}

void amount(app::App& app) {
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || !app.analysis) return app::close_sheet(app);
    how_much(app, recipe->batch);
    widget::gap(14);
    which_scale(app, recipe->batch);
    widget::gap(18);
    const result::Result<batch::Batch>& made = app.analysis->batch;
    if (made)
        total(app, *made);
    else if (recipe->batch.amount != batch::Amount::none)
        widget::finding_badge(app.kit, finding::Severity::stop, words::say(app.words, made.error()), "");
    widget::gap(14);
    if (widget::button(app.kit, "done", app.say("sheet_ui.done"), widget::Look::primary, app.kit.width))
        app::close_sheet(app);
}

void container(app::App& app) {
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe) return app::close_sheet(app);
    batch::Request& request = recipe->batch;
    for (const catalogue::Container& one : app.presets.catalogue.containers) {
        std::string under;
        if (one.nominal_ml) {
            const auto& range = one.nominal_ml->value;
            under = app.say(
                range.min == range.max ? "container.ml" : "container.ml_range",
                {{"min", words::figure(app.words, range.min)}, {"max", words::figure(app.words, range.max)}});
        }
        if (one.fill_g)
            under += (under.empty() ? "" : " \xC2\xB7 ") +
                     app.say("container.usual", {{"g", words::figure(app.words, one.fill_g->value.max)}});
        if (widget::row(app.kit, one.id, {one.name, under, "", "", false, false}).pressed) {
            app.undo.deed_done();
            if (!app.ui.line_is_new && app.ui.line < request.containers.size()) {
                request.containers[app.ui.line].id = one.id;
                request.containers[app.ui.line].fill_g.reset();
            } else {
                request.containers.push_back({one.id, 1, std::nullopt, std::nullopt});
            }
            app::show(app, app::Sheet::amount);
        }
        widget::hairline(app.kit);
    }
}

}  // namespace screens
