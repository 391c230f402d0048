// Made parts: how a recipe is one (sheet), and what of others a batch takes (a section of the batch's
// screen).
#include "app.h"
#include "engine/workspace_made.h"
#include "mirror.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {

void made(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::Kept* kept = workspace::find(std::as_const(app.work), app.ui.recipe);
    if (!kept) return app::close_sheet(app);
    const workspace::Recipe& recipe = kept->recipe;
    std::optional<result::Result<workspace::Recipe>> changed;
    widget::text(kit, app.say("made.about"), theme::Type::small, widget::Ink::soft);
    widget::gap(10);
    const int as =
        widget::choice(kit, "as", app.say("made.kind"),
                       {app.say("made.infusion"), app.say("made.blend"), app.say("made.pre_dilution")},
                       recipe.made ? static_cast<int>(recipe.made->as) : -1);
    const std::string id =
        recipe.made ? recipe.made->id : workspace::free_id(app.work, app.presets.catalogue, recipe.title);
    const quantity::Percent yield = recipe.made ? recipe.made->yield : quantity::kHundred;
    if (as >= 0) changed = workspace::set_made(recipe, id, static_cast<catalogue::MadeAs>(as), yield);
    if (recipe.made) {
        widget::gap(14);
        widget::NumberSpec spec;
        spec.name = app.say("made.yield");
        spec.unit = "%";
        spec.read = typed::percent;
        const auto change = widget::number_field(kit, "yield", yield.grid, spec);
        if (change.changed && change.value && *change.value > 0)
            changed = workspace::set_made(recipe, id, recipe.made->as, {*change.value});
        widget::gap(2);
        widget::text(kit, app.say("made.yield_about"), theme::Type::small, widget::Ink::soft);
        widget::gap(16);
        widget::heading(kit, 3, app.say("made.strained"));
        widget::text(kit, app.say("made.strained_about"), theme::Type::small, widget::Ink::soft);
        const catalogue::Catalogue known = catalogue::with_own(app.presets.catalogue, recipe.own);
        for (std::size_t i = 0; i < recipe.formula.lines.size(); ++i) {
            const formula::Line& line = recipe.formula.lines[i];
            ImGui::PushID(static_cast<int>(i));
            if (widget::row(
                    kit, "line",
                    {workspace::display_name(known, line), app.say(line.strained ? "made.out" : "made.stays"),
                     "", "", line.strained, false})
                    .pressed) {
                workspace::Recipe next = recipe;
                const auto formula = formula::set_strained(recipe.formula, i, !line.strained);
                if (formula) next.formula = *formula;
                changed = formula ? result::Result<workspace::Recipe>(next) : formula.error();
            }
            ImGui::PopID();
            widget::hairline(kit);
        }
        if (const auto part = workspace::made_ingredient(recipe, app.presets.catalogue); !part) {
            widget::gap(8);
            widget::finding_badge(kit, finding::Severity::note, words::say(app.words, part.error()), "");
        }
        widget::gap(14);
        if (widget::button(kit, "none", app.say("made.none"), widget::Look::danger, kit.width))
            changed = workspace::without_made(recipe);
    }
    widget::gap(10);
    if (widget::button(kit, "done", app.say("sheet_ui.done"), widget::Look::primary, kit.width))
        app::close_sheet(app);
    if (changed) app::edit(app, app.ui.recipe, *changed);
}

// Drawn below a batch's grams; nothing when the recipe uses no made part.
void made_needs(app::App& app) {
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || !app.analysis || !app.analysis->batch) return;
    const std::vector<workspace::Need> needs = workspace::needs(app.work, *recipe, *app.analysis->batch);
    if (needs.empty()) return;
    kit::Kit& kit = app.kit;
    widget::gap(22);
    widget::heading(kit, 2, app.say("made.needs"));
    std::optional<workspace::Need> chosen;
    for (const workspace::Need& need : needs) {
        formula::Line line;
        line.ingredient = need.ingredient;
        const std::string name = workspace::display_name(app.known(), line);
        const bool can = !need.recipe.empty() && need.to_weigh > quantity::Mass{0};
        widget::row(kit, "need " + need.ingredient,
                    {name,
                     can ? app.say("made.need_weigh", {{"g", app.grams(need.to_weigh)}})
                         : app.say("made.need_no_recipe"),
                     app.grams(need.grams), "", false, true});
        if (can && widget::button(kit, "make " + need.ingredient, app.say("made.make", {{"name", name}}),
                                  widget::Look::plain, kit.width))
            chosen = need;
    }
    if (!chosen) return;
    const workspace::Kept* kept = workspace::find(std::as_const(app.work), chosen->recipe);
    if (!kept) return;
    app::edit(app, chosen->recipe, workspace::set_batch_grams(kept->recipe, chosen->to_weigh));
    app::open(app, chosen->recipe, app::Screen::batch);
}

}  // namespace screens
