// Stock: what there is to work with. Shipped ingredients, the person's own, made parts, and what came with
// the open recipe, apart from one another; searched and filtered by role. Pressing one opens its card.
#include <algorithm>
#include <set>

#include "app.h"
#include "engine/sorting.h"
#include "engine/workspace_made.h"
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

using catalogue::Ingredient;

std::string under(const app::App& app, const Ingredient& one) {
    std::string words = app::role_words(app, one.role);
    if (one.made) words = app.say(app::made_key(one.made->as));
    const auto inci = one.inci.find("eu");
    if (inci != one.inci.end()) words += (words.empty() ? "" : " \xC2\xB7 ") + inci->second;
    return words;
}

// A group with its heading, when anything of it fits what was typed and chosen; the id pressed, else "".
std::string group(app::App& app, const char* title, const catalogue::Catalogue& of) {
    kit::Kit& kit = app.kit;
    std::vector<const Ingredient*> found = catalogue::search(of, app.ui.stock_search, of.ingredients.size());
    std::erase_if(found, [&](const Ingredient* one) {
        return !app.ui.stock_role.empty() && one->role != app.ui.stock_role;
    });
    if (found.empty()) return "";
    widget::gap(18);
    widget::heading(kit, 2, app.say(title, {{"n", std::to_string(found.size())}}));
    widget::gap(2);
    mirror::Node list;
    list.id = widget::id_of(std::string("list ") + title);
    list.role = mirror::Role::list;
    list.name = app.say(title, {{"n", std::to_string(found.size())}});
    mirror::open(list);
    std::string pressed;
    ImGui::PushID(title);
    const auto draw = [&](const Ingredient* one) {
        mirror::Node item;
        item.id = widget::id_of("item " + one->id);
        item.role = mirror::Role::item;
        mirror::open(item);
        if (widget::row(kit, one->id,
                        {one->name.empty() ? one->id : one->name, under(app, *one), "", "", false, false})
                .pressed)
            pressed = one->id;
        mirror::close();
        widget::hairline(kit);
    };
    for (const Ingredient* one : found)
        kept_rows::row(kit, "row " + one->id, [&] { draw(one); });
    ImGui::PopID();
    mirror::close();
    return pressed;
}

catalogue::Catalogue listed(std::vector<Ingredient> ingredients) {
    catalogue::Catalogue list;
    list.ingredients = std::move(ingredients);
    return list;
}

// What is under its threshold, or under what the open recipe's batch takes; the id pressed, else "".
std::string runs_low(app::App& app) {
    std::vector<workspace::Wanted> needs;
    if (app.analysed && app.analysis && app.analysis->batch)
        needs = workspace::wanted(*app.analysed, *app.analysis->batch);
    const std::vector<workspace::Low> low = workspace::low(app.work, app::shelf(app), needs);
    if (low.empty()) return "";
    std::string pressed;
    widget::heading(app.kit, 2, app.say("stock.low"));
    for (const workspace::Low& one : low) {
        const catalogue::Ingredient* known =
            catalogue::find_ingredient(app.presets.catalogue, one.ingredient);
        for (const Ingredient& mine : app.mine)
            if (mine.id == one.ingredient) known = &mine;
        widget::RowSpec row;
        row.title = known && !known->name.empty() ? known->name : one.ingredient;
        row.under =
            app.say(!one.left ? "stock.low_unknown"
                    : one.own ? "stock.low_own"
                              : "stock.low_needed",
                    {{"left", one.left ? app.grams(*one.left) : ""}, {"wanted", app.grams(one.wanted)}});
        if (widget::row(app.kit, "low " + one.ingredient, row).pressed) pressed = one.ingredient;
        widget::hairline(app.kit);
    }
    widget::gap(14);
    return pressed;
}

}  // namespace

void stock(app::App& app) {
    kit::Kit& kit = app.kit;
    const std::string low = runs_low(app);
    widget::TextSpec search;
    search.name = app.say("ingredient.search");
    search.hint = app.say("ingredient.search_hint");
    search.search = true;
    search.last = true;
    search.most_bytes = formula::kMostNameBytes;
    if (const auto typed = widget::text_field(kit, "search", app.ui.stock_search, search))
        app.ui.stock_search = *typed;
    kit.wish_blur = mirror::take_enter(widget::id_of("search")) != 0 || kit.wish_blur;
    widget::gap(8);
    widget::RowSpec role;
    role.title =
        app.ui.stock_role.empty() ? app.say("stock.all_roles") : app::role_words(app, app.ui.stock_role);
    role.under = app.say("stock.role");
    role.onward = true;
    if (widget::row(kit, "role", role).pressed) {
        app.ui.roles_of_own = false;
        app::show(app, app::Sheet::roles);
    }
    widget::gap(4);
    if (widget::button(kit, "new", app.say("stock.new"), widget::Look::primary, kit.width)) {
        app.ui.typed.clear();
        app::show(app, app::Sheet::own_new);
    }

    const std::string mine = group(app, "stock.mine", listed(app.mine));
    std::vector<Ingredient> came;
    if (const workspace::Recipe* recipe = app::open_recipe(app)) {
        for (const Ingredient& own : recipe->own)
            if (std::find(app.mine.begin(), app.mine.end(), own) == app.mine.end()) came.push_back(own);
        sorting::stable(came, [](const Ingredient& a, const Ingredient& b) { return a.id < b.id; });
    }
    const std::string along = group(app, "stock.came_along", listed(came));
    const std::string shipped = group(app, "stock.shipped", app.presets.catalogue);
    if (const auto binned = static_cast<std::size_t>(
            std::count_if(app.work.own.begin(), app.work.own.end(),
                          [](const workspace::KeptOwn& kept) { return !kept.binned.empty(); }));
        binned > 0) {
        widget::gap(20);
        if (widget::button(kit, "bin", app.say("stock.bin", {{"n", std::to_string(binned)}})))
            app::show(app, app::Sheet::own_bin);
    }
    const std::string pressed = !low.empty() ? low : !mine.empty() ? mine : !along.empty() ? along : shipped;
    if (!pressed.empty()) app::show_card(app, pressed, !along.empty());
}

void roles(app::App& app) {
    kit::Kit& kit = app.kit;
    std::set<std::string> all;
    for (const Ingredient& one : app.presets.catalogue.ingredients)
        all.insert(one.role);
    const workspace::KeptOwn* own = workspace::find_own(app.work, app.ui.own);
    if (app.ui.roles_of_own && !own) return app::close_sheet(app);
    const std::string now = app.ui.roles_of_own ? own->ingredient.role : app.ui.stock_role;
    std::optional<std::string> chosen;
    const auto choice = [&](const std::string& role, const std::string& words) {
        if (widget::row(kit, "role " + role, {words, "", "", "", role == now, false}).pressed) chosen = role;
        widget::hairline(kit);
    };
    choice("", app.say(app.ui.roles_of_own ? "own.role_unknown" : "stock.all_roles"));
    for (const std::string& role : all)
        choice(role, app::role_words(app, role));
    if (!chosen) return;
    if (!app.ui.roles_of_own) {
        app.ui.stock_role = *chosen;
        return app::close_sheet(app);
    }
    Ingredient changed = own->ingredient;
    changed.role = *chosen;
    app::edit_own(app, std::move(changed));
    app::show(app, app::Sheet::own);
}

}  // namespace screens
