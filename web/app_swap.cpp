// Sides of a recipe worked out beside one another when they are looked at, kept until what they rest on
// changes; and a swap that is taken.
#include <utility>

#include "app.h"
#include "engine/workspace_own.h"

namespace app {

const comparison::Table& compared(App& app, std::vector<workspace::Recipe> sides) {
    const price::Book& prices = app.work.settings.prices;
    if (app.compared && app.compared_sides == sides && app.compared_with == prices) return *app.compared;
    app.compared_sides = std::move(sides);
    app.compared_with = prices;
    std::vector<const workspace::Recipe*> all;
    for (const workspace::Recipe& side : app.compared_sides)
        all.push_back(&side);
    const limits::Book* book = limits_book(app);
    app.compared =
        comparison::of(all, {app.presets.catalogue, book, &app.compared_with, app.analysed_on, app.mine});
    return *app.compared;
}

void take_swap(App& app, formula::Formula formula) {
    app.undo.deed_done();
    app.kit.drafts.clear();  // they belong to lines by place, and places change
    edit(app, result::Result<formula::Formula>(std::move(formula)));
    if (const workspace::Recipe* recipe = open_recipe(app))
        edit(app, workspace::without_unused(*recipe, app.mine));
    app.ui.swap = {};
    app.ui.screen = Screen::formula;
    tell(app, app.say("swap_ui.taken"));
}

}  // namespace app
