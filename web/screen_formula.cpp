// The open recipe's formula: lines by phase in percent, the sum, what the checks remark, steps and notes.
#include <algorithm>

#include "app.h"
#include "engine/adjustment.h"
#include "engine/workspace_edits.h"
#include "engine/workspace_own.h"
#include "kept_rows.h"
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

constexpr float kPercentWidth = 104;  // in letters of the usual size

void sum_strip(app::App& app, const workspace::Recipe& recipe) {
    const analysis::Analysis& now = *app.analysis;
    const auto figure = [&](quantity::Percent percent) { return words::figure(app.words, percent.grid); };
    std::string words;
    bool good = true;
    if (recipe.formula.lines.empty()) {
        words = app.say("formula.sum_empty");
    } else if (now.rest) {
        good = now.rest->grid >= 0;
        words = good ? app.say("formula.sum_rest", {{"rest", figure(*now.rest)}})
                     : app.say("formula.sum_over", {{"over", figure({-now.rest->grid})}});
    } else {
        good = now.stated_sum == quantity::kHundred;
        const quantity::Percent missing = quantity::kHundred - now.stated_sum;
        words = good               ? app.say("formula.sum_good")
                : missing.grid > 0 ? app.say("formula.sum_under",
                                             {{"sum", figure(now.stated_sum)}, {"missing", figure(missing)}})
                                   : app.say("formula.sum_above", {{"sum", figure(now.stated_sum)},
                                                                   {"over", figure({-missing.grid})}});
    }
    const theme::Colours& c = theme::colours();
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const float mark = theme::mark(16), indent = 30 + mark, room = app.kit.width - indent - 10;
    const ImVec2 size = widget::measure(words, theme::Type::strong, room);
    const ImRect box(start, {start.x + app.kit.width, start.y + size.y + 20});
    mirror::Node node;
    node.id = widget::id_of("sum");
    node.role = mirror::Role::status;
    node.name = words;
    widget::fill_place(node, box);
    mirror::add(node);
    ImGui::Dummy(box.GetSize());
    if (!ImGui::IsRectVisible(box.Min, box.Max)) return;
    const std::uint32_t ink = good ? c.on_accent_soft : c.stop;
    widget::draw_panel(box, good ? c.accent_soft : c.stop_ground, ink);
    if (good && !recipe.formula.lines.empty())
        widget::draw_mark(widget::Mark::check, {start.x + 16 + mark / 2, box.GetCenter().y}, mark,
                          theme::paint(ink), 2.6f);
    else if (!good)
        ImGui::GetWindowDrawList()->AddNgonFilled({start.x + 16 + mark / 2, box.GetCenter().y},
                                                  theme::mark(10), theme::paint(ink), 8);
    widget::draw_wrapped({start.x + indent, start.y + 10}, words, theme::Type::strong, theme::paint(ink),
                         room);
}

std::string phase_title(const app::App& app, const formula::Phase& phase) {
    std::string words = app.say("phase.name", {{"id", phase.id}});
    if (phase.hold_c)
        words += " \xC2\xB7 " + app.say("phase.hold", {{"c", words::figure(app.words, *phase.hold_c)}});
    if (phase.add_below_c)
        words +=
            " \xC2\xB7 " + app.say("phase.add_below", {{"c", words::figure(app.words, *phase.add_below_c)}});
    return words;
}

std::string line_under(const app::App& app, const formula::Line& line) {
    std::string words;
    const auto add = [&](const std::string& more) { words += (words.empty() ? "" : " \xC2\xB7 ") + more; };
    if (line.rest) add(app.say("line.rest"));
    if (line.locked) add(app.say("line.locked"));
    if (line.ingredient.empty()) add(app.say("line.unknown"));
    if (line.strained) add(app.say("line.strained"));
    const workspace::Recipe* recipe = app.analysed ? &*app.analysed : nullptr;
    const catalogue::Ingredient* own = recipe ? workspace::own_of(*recipe, line.ingredient) : nullptr;
    if (own && own->made) add(app.say(app::made_key(own->made->as)));
    if (own && std::find(app.mine.begin(), app.mine.end(), *own) == app.mine.end())
        add(app.say("line.came_along"));
    return words;
}

// A line: its name opens the line's sheet, its percent stands in a field at the right, or beneath the name
// where the letters are large.
void draw_line(app::App& app, const workspace::Recipe& recipe, std::size_t index, std::size_t& menu,
               std::optional<result::Result<formula::Formula>>& changed) {
    kit::Kit& kit = app.kit;
    const formula::Line& line = recipe.formula.lines[index];
    mirror::Node item;
    item.id = widget::id_of("line");
    item.role = mirror::Role::item;
    mirror::open(item);
    const std::string name = workspace::display_name(app.known(), line);
    const std::string under = line_under(app, line);
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const bool tight = theme::tight(kit.width);
    const float field = theme::grown(kPercentWidth), dots = theme::mark(14);
    const float room = tight ? kit.width : kit.width - field - 12;
    const float text_room = room - dots - 20;
    const ImVec2 size = widget::measure(name, theme::Type::body, text_room);
    const ImVec2 small = under.empty() ? ImVec2(0, 0) : widget::measure(under, theme::Type::small, text_room);
    const float height = std::max(tight ? theme::kTarget : theme::field(), size.y + small.y + 8);

    mirror::Node node;
    node.role = mirror::Role::button;
    node.name = name;
    node.description = under;
    node.has_popup = true;
    const widget::Press press = widget::press_area(kit, "name", {room, height}, node);
    const theme::Colours& c = theme::colours();
    if (press.down || press.hovered)
        ImGui::GetWindowDrawList()->AddRectFilled(press.box.Min, press.box.Max,
                                                  theme::paint(c.ink, press.down ? 0.12f : 0.05f), 8);
    widget::draw_mark(widget::Mark::dots, {start.x + 4 + dots / 2, press.box.GetCenter().y}, dots,
                      theme::paint(c.ink_soft), 1.6f);
    const float y = press.box.GetCenter().y - (size.y + small.y) / 2;
    widget::draw_wrapped({start.x + 16 + dots, y}, name, theme::Type::body, theme::paint(c.ink), text_room);
    if (!under.empty())
        widget::draw_wrapped({start.x + 16 + dots, y + size.y}, under, theme::Type::small,
                             theme::paint(c.ink_soft), text_room);
    widget::focus_ring(press.box, 8, press.id);
    if (press.clicked || press.menu) menu = index;

    ImGui::SetCursorScreenPos({start.x + kit.width - field,
                               tight ? start.y + height + 2 : start.y + (height - theme::field()) / 2});
    widget::NumberSpec spec;
    spec.name = app.say("line.percent_of", {{"name", name}});
    spec.unit = "%";
    spec.read = typed::percent;
    spec.bare = true;
    spec.width = field;
    spec.hint = "0";
    spec.may_be_empty = true;
    spec.disabled = line.rest || line.locked;
    std::optional<std::int64_t> shown = line.percent.grid;
    if (line.rest) {
        shown = app.analysis->rest ? std::optional(app.analysis->rest->grid) : std::nullopt;
    } else if (line.percent.grid == 0) {
        shown = std::nullopt;
    }
    const widget::NumberChange change = widget::number_field(kit, "percent", shown, spec);
    if (change.changed) changed = formula::set_percent(recipe.formula, index, {change.value.value_or(0)});
    const float below = ImGui::GetCursorScreenPos().y;
    widget::go_to(start.x, std::max(start.y + height, below) + 4);
    mirror::close();
}

void steps_and_notes(app::App& app, const workspace::Recipe& recipe) {
    kit::Kit& kit = app.kit;
    kept_rows::row(kit, "steps", [&] {
        widget::gap(24);
        widget::heading(kit, 2, app.say("formula.steps"));
        widget::gap(6);
    });
    std::optional<workspace::Changed> changed;
    const auto draw_step = [&](std::size_t i) {
        widget::TextSpec spec;
        spec.name = app.say("formula.step_n", {{"n", std::to_string(i + 1)}});
        if (!recipe.steps[i].phase.empty())
            spec.name += ", " + app.say("phase.name", {{"id", recipe.steps[i].phase}});
        if (recipe.steps[i].minutes)
            spec.name += ", " + app.say("count.minutes", {{"n", std::to_string(*recipe.steps[i].minutes)}});
        spec.note = true;
        spec.most_bytes = workspace::kMostStepBytes;
        if (const auto typed = widget::text_field(kit, "step", recipe.steps[i].text, spec))
            changed =
                workspace::set_step(recipe, i, {recipe.steps[i].phase, *typed, recipe.steps[i].minutes});
        if (widget::button(kit, "remove", app.say("formula.step_remove", {{"n", std::to_string(i + 1)}}),
                           widget::Look::quiet))
            changed = workspace::remove_step(recipe, i);
        widget::gap(4);
    };
    for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        kept_rows::row(kit, "row", [&] { draw_step(i); });
        ImGui::PopID();
    }
    kept_rows::row(kit, "notes", [&] {
        if (recipe.steps.size() < workspace::kMostSteps &&
            widget::button(kit, "add_step", app.say("formula.step_add"))) {
            app.undo.deed_done();
            changed = workspace::add_step(recipe, {});
        }
        widget::gap(20);
        widget::TextSpec notes;
        notes.name = app.say("formula.notes");
        notes.note = true;
        notes.last = true;
        notes.most_bytes = workspace::kMostNotesBytes;
        if (const auto typed = widget::text_field(kit, "notes", recipe.notes, notes))
            changed = workspace::set_notes(recipe, *typed);
    });
    if (changed) app::edit(app, *changed);
}

void draw_finding(app::App& app, const finding::Finding& one) {
    widget::gap(8);
    const std::string name = app::subject_name(app, one);
    const std::string source =
        one.source.empty()
            ? ""
            : app.say("finding_ui.source", {{"title", app::source_words(app, one.source, one.standing)}});
    widget::finding_badge(app.kit, one.severity, finding::say(app.words, one, name), source,
                          finding::advice(app.words, one, name));
}

void findings(app::App& app) {
    if (app.analysis->findings.empty()) return;
    kept_rows::row(app.kit, "remarks", [&] {
        widget::gap(20);
        widget::heading(app.kit, 2, app.say("formula.remarks"));
    });
    for (std::size_t i = 0; i < app.analysis->findings.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        kept_rows::row(app.kit, "finding", [&] { draw_finding(app, app.analysis->findings[i]); });
        ImGui::PopID();
    }
}

// What the recipe is for, and whether its lines make a hundred.
void head(app::App& app, const workspace::Recipe& recipe) {
    kit::Kit& kit = app.kit;
    const catalogue::Product* product = catalogue::find_product(app.presets.catalogue, recipe.product);
    const std::string kind = product ? product->name : recipe.product;
    widget::RowSpec kind_row;
    kind_row.title = kind;
    kind_row.under = app.say("product.title");
    kind_row.onward = true;
    if (widget::row(kit, "product", kind_row).pressed) app::show(app, app::Sheet::product);
    widget::gap(4);
    sum_strip(app, recipe);
    if (!recipe.formula.lines.empty() && !app.analysis->percents.ok()) {
        widget::gap(8);
        if (widget::button(kit, "to_hundred", app.say("adjust.to_hundred"), widget::Look::plain, kit.width))
            app::show(app, app::Sheet::to_hundred);
    }
}

// What is done to the formula as a whole.
void deeds(app::App& app, const workspace::Recipe& recipe,
           std::optional<result::Result<formula::Formula>>& changed) {
    kit::Kit& kit = app.kit;
    widget::gap(12);
    if (recipe.formula.phases.size() < formula::kMostPhases &&
        widget::button(kit, "add_phase", app.say("formula.add_phase"), widget::Look::quiet)) {
        const auto used = [&](char letter) {
            for (const formula::Phase& phase : recipe.formula.phases)
                if (phase.id == std::string(1, letter)) return true;
            return false;
        };
        char letter = static_cast<char>('A' + recipe.formula.phases.size());
        while (used(letter))  // more letters than phases: one is free
            letter = letter == 'Z' ? 'A' : static_cast<char>(letter + 1);
        const std::string id(1, letter);
        app.undo.deed_done();
        changed = formula::add_phase(recipe.formula, {id, std::nullopt, std::nullopt});
    }
    if (adjustment::firmer(recipe.formula, app.known(), 0).ok() &&
        widget::button(kit, "firmness", app.say("adjust.firmness"), widget::Look::quiet)) {
        app.ui.wish = {};
        app::show(app, app::Sheet::firmness);
    }
    if (!recipe.formula.lines.empty() &&
        widget::button(kit, "in_amounts", app.say("amounts.title"), widget::Look::quiet)) {
        app.ui.amounts_in = {};
        app::show(app, app::Sheet::in_amounts);
    }
}

}  // namespace

void nothing_open(app::App& app) {
    widget::gap(24);
    widget::text(app.kit, app.say("formula.none_open"), theme::Type::body, widget::Ink::soft);
    widget::gap(16);
    if (widget::button(app.kit, "to_book", app.say("formula.to_book"), widget::Look::primary, app.kit.width))
        app.ui.screen = app::Screen::book;
}

void formula(app::App& app) {
    kit::Kit& kit = app.kit;
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || !app.analysis) return nothing_open(app);

    kept_rows::row(kit, "head", [&] { head(app, *recipe); });

    std::size_t menu = recipe->formula.lines.size();
    std::optional<std::size_t> phase_pressed;
    std::optional<result::Result<formula::Formula>> changed;
    for (std::size_t p = 0; p < recipe->formula.phases.size(); ++p) {
        const formula::Phase& phase = recipe->formula.phases[p];
        ImGui::PushID(static_cast<int>(p) + 1000);
        kept_rows::row(kit, "header", [&] {
            widget::gap(14);
            widget::RowSpec header;
            header.title = phase_title(app, phase);
            header.onward = true;
            if (widget::row(kit, "phase", header).pressed) phase_pressed = p;
            widget::hairline(kit);
            widget::gap(6);
        });
        mirror::Node list;
        list.id = widget::id_of("lines");
        list.role = mirror::Role::list;
        list.name = app.say("phase.lines_of", {{"id", phase.id}});
        mirror::open(list);
        for (std::size_t i = 0; i < recipe->formula.lines.size(); ++i) {
            if (recipe->formula.lines[i].phase != phase.id) continue;
            ImGui::PushID(static_cast<int>(i));
            kept_rows::row(kit, "row", [&] { draw_line(app, *recipe, i, menu, changed); });
            ImGui::PopID();
        }
        mirror::close();
        kept_rows::row(kit, "footer", [&] {
            if (!widget::button(kit, "add", app.say("formula.add_line", {{"id", phase.id}}),
                                widget::Look::plain, kit.width))
                return;
            app.ui.phase = p;
            app.ui.line_is_new = true;
            app.ui.search.clear();
            app::show(app, app::Sheet::ingredient);
        });
        ImGui::PopID();
    }
    kept_rows::row(kit, "deeds", [&] { deeds(app, *recipe, changed); });
    findings(app);
    steps_and_notes(app, *recipe);

    if (changed) app::edit(app, *changed);
    if (menu < recipe->formula.lines.size()) {
        app.ui.line = menu;
        app::show(app, app::Sheet::line);
    }
    if (phase_pressed) {
        app.ui.phase = *phase_pressed;
        app::show(app, app::Sheet::phase);
    }
}

}  // namespace screens
