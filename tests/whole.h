// Whether what is drawn is whole: all of it in the mirror with a name, nothing sticks out or is too small for
// a finger, no word is missing; with recipes at the edge of what screens have to cope with, and the ways to
// open every screen and sheet. For tests without a browser.
#pragma once

#include <algorithm>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "engine/chance.h"
#include "engine/swap.h"
#include "engine/workspace_own.h"
#include "hand.h"
#include "imgui_internal.h"
#include "shipped.h"
#include "web/drawn_items.h"

namespace whole {

using app::Screen;
using app::Sheet;
using mirror::Node;
using mirror::Role;

struct Size {
    float width, height;
};
inline constexpr Size kSizes[] = {{360, 640}, {640, 360}, {320, 568}, {820, 1180}, {1440, 900}};
inline constexpr Screen kScreens[] = {Screen::book,     Screen::formula, Screen::batch, Screen::stock,
                                      Screen::more,     Screen::checks,  Screen::label, Screen::papers,
                                      Screen::workshop, Screen::reading, Screen::swaps, Screen::blend,
                                      Screen::cost};
// Every sheet there is, by counting: source_list is the last.
inline std::vector<Sheet> all_sheets() {
    std::vector<Sheet> sheets;
    for (int i = 1; i <= static_cast<int>(Sheet::source_list); ++i)
        sheets.push_back(static_cast<Sheet>(i));
    return sheets;
}

inline constexpr float kSmallest = 44;  // CSS px; product.md, and WCAG 2.2 success criterion 2.5.5

inline bool interactive(const Node& node) {
    return hand::is_field(node.role) || hand::is_pressed(node.role);
}

inline std::string described(const Node& node) {
    std::ostringstream out;
    out << "\"" << node.name << "\" at " << node.x << ", " << node.y << ", " << node.width << " x "
        << node.height;
    return out.str();
}

// Points that were drawn to the right or left of the window: words or frames cut off at its edge.
inline std::string drawn_outside() {
    const float width = platform::window().width;
    for (const ImDrawList* list : ImGui::GetDrawData()->CmdLists)
        for (const ImDrawCmd& command : list->CmdBuffer)
            for (unsigned i = 0; i < command.ElemCount; ++i) {
                const ImDrawVert& point =
                    list->VtxBuffer[list->IdxBuffer[command.IdxOffset + i] + command.VtxOffset];
                if (point.pos.x >= -1.5f && point.pos.x <= width + 1.5f) continue;
                std::ostringstream out;
                out << "drawn at " << point.pos.x << ", " << point.pos.y << " by " << list->_OwnerName;
                return out.str();
            }
    return "";
}

// Everything that is wrong with what is drawn now, a line each; "" when nothing is.
enum class Words { of_the_table, of_anyone };
inline std::string faults(Words words = Words::of_the_table) {
    std::ostringstream out;
    const float width = platform::window().width;
    const std::vector<Node>& nodes = mirror::nodes();
    const std::set<std::uint32_t> drawn(drawn_items::ids().begin(), drawn_items::ids().end());
    std::set<std::uint32_t> ids;
    int titles = 0;
    for (const Node& node : nodes) {
        ids.insert(node.id);
        titles += node.role == Role::heading && node.level == 1;
        for (const std::string* text : {&node.name, &node.value, &node.description})
            if (words == Words::of_the_table &&
                (text->find("[[") != std::string::npos || text->find('{') != std::string::npos))
                out << "a word is missing: " << *text << "\n";
        if (node.name.find_first_not_of(' ') == std::string::npos &&
            (interactive(node) || node.role == Role::heading || node.role == Role::dialog ||
             node.role == Role::region || node.role == Role::table))
            out << "has no name: " << described(node) << "\n";
        if (interactive(node) && (node.width < kSmallest || node.height < kSmallest))
            out << "is too small for a finger: " << described(node) << "\n";
        if (interactive(node) && node.visible && drawn.count(node.id) == 0)
            out << "in the mirror, but not drawn: " << described(node) << "\n";
        if (node.visible && (node.x < -0.5f || node.x + node.width > width + 0.5f))
            out << "sticks out: " << described(node) << "\n";
    }
    if (titles != 1) out << "has " << titles << " headings of the first level\n";
    if (mirror::clashes() != 0) out << mirror::clashes() << " ids are given twice\n";
    for (const std::uint32_t id : drawn)
        if (ids.count(id) == 0) out << "drawn, but not in the mirror: " << id << "\n";
    if (platform::native::frame_wanted()) out << "does not come to rest\n";
    if (const std::string where = drawn_outside(); !where.empty()) out << where << "\n";
    return out.str();
}

// Pairs of things to be pressed that lie over one another, on a page without sheet and keypad, not scrolled.
// Beneath the bar of places and a screen's foot the list goes on, cut off there.
inline std::string overlaps() {
    std::ostringstream out;
    std::vector<const Node*> pressed;
    const std::string foot = app::state().ui.foot ? app::state().say("book.new") : "";
    for (const Node& node : mirror::nodes())
        if (interactive(node) && node.visible && node.role != Role::tab && node.name != foot)
            pressed.push_back(&node);
    for (std::size_t i = 0; i < pressed.size(); ++i)
        for (std::size_t k = i + 1; k < pressed.size(); ++k) {
            const Node &a = *pressed[i], &b = *pressed[k];
            const float across = std::min(a.x + a.width, b.x + b.width) - std::max(a.x, b.x);
            const float down = std::min(a.y + a.height, b.y + b.height) - std::max(a.y, b.y);
            if (across > 1 && down > 1) out << described(a) << " lies over " << described(b) << "\n";
        }
    return out.str();
}

// A recipe at the edge of what screens have to cope with.
inline workspace::Recipe difficult() {
    workspace::Recipe recipe;
    recipe.title = "Frost-line elbow butter for the longest night of the year, made over";
    recipe.product = "body_butter";
    formula::Line line;
    line.ingredient = "cetearyl_alcohol";
    line.percent = {333333};
    line.locked = true;
    recipe.formula = formula::add_line({{{"A", {}, {}}}, {}}, line).value();
    line.ingredient = "";
    line.name = "Grandmother's infusion of pot marigold, arnica and plantain, last year's";
    line.locked = false;
    line.phase = "B";
    recipe.formula = formula::add_line(recipe.formula, line).value();
    line.name = "Donaudampfschifffahrtsgesellschaftskapitänskajütenschlüsselbundpflegebalsam";
    line.percent = {};
    line.phase = "C";
    recipe.formula = formula::add_line(recipe.formula, line).value();
    recipe.formula.phases[1].hold_c = 750000;
    recipe.formula.phases[1].add_below_c = 725000;
    recipe.steps = {{"B", "Stir.", 90}, {"", "", {}}};
    recipe.notes = std::string(2000, 'w');
    recipe.batch.amount = batch::Amount::containers;
    recipe.batch.containers = {{"jar_60ml", 9999, {}, quantity::percent(90)},
                               {"no_such_jar", 1, {}, {}},
                               {"tin_30ml", 12, quantity::Mass{123456}, {}}};
    recipe.batch.division = {123};
    return recipe;
}

inline workspace::Recipe over_full() {
    workspace::Recipe recipe = difficult();
    recipe.formula.lines[0].percent = {990000};
    recipe.formula.lines[1].percent = {990000};
    recipe.formula.lines[2].rest = true;
    recipe.batch = {};
    return recipe;
}

inline std::vector<workspace::Recipe> recipes() {
    std::vector<workspace::Recipe> all{difficult(), over_full(), app::blank_recipe(app::state())};
    for (const auto& [stem, recipe] : app::state().presets.recipes)
        all.push_back(recipe);
    return all;
}

inline void draw_again() {
    hand::push(platform::Kind::resized);
    hand::settle();
}

inline void show_screen(app::App& app, Screen screen) {
    app.ui.screen = screen;
    if (const workspace::Recipe* recipe = app::open_recipe(app); recipe && screen == Screen::swaps) {
        app.ui.swap = {};
        for (const formula::Line& line : recipe->formula.lines)
            for (const swap::StandIn& one : swap::stand_ins(app.known(), line.ingredient))
                if (app.ui.swap.of.empty()) app.ui.swap.of = line.ingredient, app.ui.swap.by = one.ingredient;
    }
    app::ReadingIn& in = app.ui.reading;
    if (screen != Screen::reading || !in.entries.empty()) return;
    in.recalled = true;
    in.text =
        "Helianthus Annuus Seed Oil, Cera Alba, Butyrospermum Parkii Butter, Something Unknown, Tocopherol, "
        "Citrus "
        "Aurantium Dulcis Peel Oil, Limonene";
    app::read_ingredients(app);
}

inline void open_sheet(app::App& app, Sheet sheet) {
    app.ui.recipe = app.work.open;
    app.ui.line = app.ui.phase = 0;
    app.ui.typed = "half a link";
    app.ui.incoming = *app::open_recipe(app);
    workspace_backup::Content backup{
        "2026-11-24T12:00:00Z", app.work.recipes, app.work.settings, {"half a record"}};
    backup.recipes[0].recipe.notes += "!";
    backup.recipes.push_back(backup.recipes[0]);
    backup.settings->sort = workspace::Sort::title;
    app.ui.restore = workspace_backup::preview(app.work, std::move(backup));
    app.ui.amounts_in = {};
    app.ui.list_in = app::ListIn{
        "A list with everything\nBeeswax 20\n2 tbsp olive oil\n10 drops of something long that few have "
        "heard of\nWater ad 1,234.5\nPhase B:\nHoney a pinch\nTotal 100\nMethod\nStir until clear.",
        {},
        {},
        1};
    app::read_list(app);
    app.ui.card = app::open_recipe(app)->formula.lines.empty()
                      ? "shea"
                      : app::open_recipe(app)->formula.lines[0].ingredient;
    if (app.work.own.empty()) {
        catalogue::Ingredient own =
            workspace::copy_of(*catalogue::find_ingredient(app.presets.catalogue, "shea"));
        own.name = "Shea butter from the Saturday market in the old harbour, last year\u2019s jars";
        own.analysis = catalogue::LotAnalysis{"L-7", "2026-08-01", "Hollow Lane", {{"linalool", {}}}};
        own.parts = {{"sunflower", quantity::percent(98)}};
        own.max_percent = {{"salve", quantity::percent(5)}};
        app::add_own(app, own);
    }
    app.ui.own = app.work.own.front().ingredient.id;
    app::show(app, sheet);
    if (sheet == Sheet::from_text || sheet == Sheet::paste_list) app::take_in(app, app.ui.typed);
    draw_again();
}

template <class Look>
inline void in_every_size(app::App& app, Look look) {
    for (const Size& size : kSizes)
        for (const bool dark : {false, true}) {
            if (dark && size.width != kSizes[0].width) continue;  // the same lines in other colours
            platform::native::window().prefers_dark = dark;
            hand::resize(size.width, size.height);
            CAPTURE(size.width);
            CAPTURE(dark);
            look();
            app::close_sheet(app);
        }
}

inline std::string name_of(const char* ingredient) {
    return catalogue::find_ingredient(shipped::presets().catalogue, ingredient)->name;
}
inline std::string percent_of(const char* ingredient) {
    return app::state().say("line.percent_of", {{"name", name_of(ingredient)}});
}

// By name: a formula of two lines and a rest line, 60 % and 30 % stated.
inline void write_three_lines(app::App& app) {
    hand::press("New recipe");
    hand::press("Blank");
    for (const char* id : {"beeswax_yellow", "shea", "sunflower_ho"}) {
        hand::press(app.say("formula.add_line", {{"id", "A"}}));
        hand::write(app.say("ingredient.search"), name_of(id).substr(0, 6));
        hand::press(name_of(id));
    }
    hand::write(percent_of("beeswax_yellow"), "60");
    hand::write(percent_of("shea"), "30");
    hand::press(name_of("sunflower_ho"));
    hand::press(app.say("line.rest_on"));
}

}  // namespace whole
