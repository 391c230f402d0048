// Sides of a recipe, figure by figure, in columns under one another: each side has a letter, so that it is
// told without colour, and what differs from the first stands in strong letters.
#include <algorithm>

#include "app.h"
#include "engine/comparison.h"
#include "engine/money.h"
#include "kept_rows.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

using comparison::Part;
using comparison::Row;
using comparison::Unit;

std::string side_letter(std::size_t side) {
    return std::string(1, static_cast<char>('A' + side));
}

std::string side_value(const app::App& app, const comparison::Table& table, const Row& row,
                       std::size_t side) {
    const auto& value = row.values[side];
    if (!value) return row.part == Part::lines ? "\xE2\x80\x93" : app.say("card.unknown");
    switch (row.unit) {
        case Unit::percent:
            return app.say("card.percent", {{"range", words::figure(app.words, *value)}});
        case Unit::money:
            return words::figure_fixed(app.words, *value, money::places(table.currency).value_or(2)) +
                   "\xC2\xA0" + table.currency;
        default:
            return words::figure(app.words, *value);
    }
}

std::string side_row_name(const app::App& app, const Row& row) {
    if (!row.name.empty())
        return row.part == Part::blend ? app.say("compare.acid", {{"name", row.name}}) : row.name;
    return row.part == Part::lines ? row.key : app.say("compare." + row.key);
}

std::string side_cell(const app::App& app, const comparison::Table& table, const Row& row, std::size_t side) {
    return side_letter(side) + "\xC2\xA0 " + side_value(app, table, row, side);
}

// As many beside one another as there is room for, in all rows alike.
std::size_t side_columns(const app::App& app, const comparison::Table& table, std::size_t sides) {
    float widest = 1;
    for (const Row& row : table.rows)
        for (std::size_t i = 0; i < row.values.size(); ++i)
            widest =
                std::max(widest, widget::measure(side_cell(app, table, row, i), theme::Type::strong).x + 14);
    const auto room = static_cast<std::size_t>(std::max(1.0f, app.kit.width / widest));
    return std::min(sides, room);
}

void side_row(app::App& app, const comparison::Table& table, const Row& row, std::size_t columns) {
    kit::Kit& kit = app.kit;
    const std::string name = side_row_name(app, row);
    std::vector<std::string> cells;
    mirror::Node node;
    node.role = mirror::Role::text;
    node.name = name + ":";
    for (std::size_t i = 0; i < row.values.size(); ++i) {
        cells.push_back(side_cell(app, table, row, i));
        node.name += (i > 0 ? ", " : " ") + side_letter(i) + " " + side_value(app, table, row, i);
    }
    const float width = kit.width / static_cast<float>(columns);
    const float line = theme::line_height(theme::Type::strong) + 2;
    const float above = widget::measure(name, theme::Type::body, kit.width).y + 2;
    const float height = above + line * static_cast<float>((cells.size() + columns - 1) / columns) + 14;
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const ImRect box(start, {start.x + kit.width, start.y + height});
    node.id = widget::id_of("side_" + row.key);
    while (mirror::used(node.id))
        ++node.id;
    widget::fill_place(node, box);
    mirror::add(node);
    ImGui::Dummy(box.GetSize());
    if (!ImGui::IsRectVisible(box.Min, box.Max)) return;
    const theme::Colours& c = theme::colours();
    widget::draw_wrapped({start.x, start.y + 6}, name, theme::Type::body, theme::paint(c.ink), kit.width);
    for (std::size_t i = 0; i < cells.size(); ++i) {
        const bool other = row.values[i] != row.values.front();
        widget::draw_wrapped({start.x + width * static_cast<float>(i % columns),
                              start.y + 6 + above + line * static_cast<float>(i / columns)},
                             cells[i], other ? theme::Type::strong : theme::Type::body,
                             theme::paint(other ? c.ink : c.ink_soft), width);
    }
}

void findings_of_sides(app::App& app, const std::vector<finding::Finding>& all, std::size_t in,
                       std::size_t not_in) {
    if (all.empty()) return;
    widget::gap(14);
    widget::heading(app.kit, 2,
                    app.say("compare.found", {{"in", side_letter(in)}, {"other", side_letter(not_in)}}));
    for (const finding::Finding& one : all) {
        finding::Finding about = one;  // its line is one of another state of the recipe
        about.line.reset();
        widget::gap(6);
        widget::finding_badge(
            app.kit, one.severity,
            finding::say(app.words, one, app::subject_name(app, about), app::constituent_name(app, about)),
            "");
    }
}

}  // namespace

void compared(app::App& app, const comparison::Table& table, const std::vector<std::string>& sides) {
    kit::Kit& kit = app.kit;
    for (std::size_t i = 0; i < sides.size(); ++i)
        widget::text(kit, side_letter(i) + "\xC2\xA0 " + sides[i], theme::Type::small, widget::Ink::soft);
    const std::size_t columns = side_columns(app, table, sides.size());
    std::optional<Part> part;
    bool same = false;
    for (const Row& row : table.rows) {
        if (!row.differs() && !app.ui.all_compared) {
            same = true;
            continue;
        }
        if (row.part != part) {
            widget::gap(14);
            widget::heading(kit, 2, app.say("compare." + std::string(comparison::part_name(row.part))));
            part = row.part;
        }
        side_row(app, table, row, columns);
        widget::hairline(kit);
    }
    if (!part) {
        widget::gap(8);
        widget::text(kit, app.say("adjust.same"));
    }
    if (same || app.ui.all_compared) {
        widget::gap(8);
        if (widget::button(kit, "all_compared", app.say(app.ui.all_compared ? "compare.less" : "compare.all"),
                           widget::Look::quiet)) {
            app.ui.all_compared = !app.ui.all_compared;
            app.ui.again = true;
        }
    }
    const std::size_t last = sides.size() - 1;
    findings_of_sides(app, table.come, last, 0);
    findings_of_sides(app, table.gone, 0, last);
}

}  // namespace screens
