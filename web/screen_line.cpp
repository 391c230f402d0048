// Sheets for one line and one phase of the formula: what can be done with it, which ingredient, which
// temperatures.
#include "app.h"
#include "engine/swap.h"
#include "engine/workspace_edits.h"
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

void line(app::App& app) {
    kit::Kit& kit = app.kit;
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || app.ui.line >= recipe->formula.lines.size()) return app::close_sheet(app);
    const std::size_t at = app.ui.line;
    const formula::Formula& now = recipe->formula;
    const formula::Line& line = now.lines[at];
    std::optional<result::Result<formula::Formula>> changed;
    bool stay = false;

    if (const catalogue::Ingredient* ingredient = catalogue::find_ingredient(app.known(), line.ingredient)) {
        if (ingredient->usual_leave_on_percent) {
            const auto& usual = *ingredient->usual_leave_on_percent;
            widget::text(
                kit,
                app.say("line.usual", {{"min", words::figure(app.words, usual.value.min)},
                                       {"max", words::figure(app.words, usual.value.max)},
                                       {"source", app::source_words(app, usual.source, usual.standing)}}),
                theme::Type::small, widget::Ink::soft);
            widget::gap(6);
        }
        if (!ingredient->caution.empty()) {
            widget::finding_badge(kit, finding::Severity::note, ingredient->caution, "");
            widget::gap(6);
        }
    }
    ceiling_of_line(app, at, true);
    held_on_line(app, at);
    if (!line.ingredient.empty() && catalogue::find_ingredient(app.known(), line.ingredient)) {
        widget::RowSpec about;
        about.title = app.say("line.about");
        about.onward = true;
        if (widget::row(kit, "about", about).pressed)
            return app::show_card(app, std::string(line.ingredient), true);
        widget::hairline(kit);
    }
    auto choice = [&](std::string_view key, const words::Arguments& arguments = {}) {
        const std::string label = app.say(key, arguments);
        const bool pressed = widget::row(kit, label, {label, "", "", "", false, false}).pressed;
        widget::hairline(kit);
        return pressed;
    };
    if (choice("line.change")) {
        app.ui.line_is_new = false;
        app.ui.search.clear();
        return app::show(app, app::Sheet::ingredient);
    }
    const catalogue::Ingredient* known = catalogue::find_ingredient(app.known(), line.ingredient);
    if (known && swap::by_weight(known->role) && choice("swap_ui.open")) {
        app.ui.swap = {};
        app.ui.swap.of = line.ingredient;
        app.ui.screen = app::Screen::swaps;
        app.ui.to_top = true;
        return app::close_sheet(app);
    }
    if (!line.rest && !line.hold && !app::brought(app, at).empty() && choice("hold.title"))
        return app::show(app, app::Sheet::hold);
    if (!line.locked && now.lines.size() > 1 && choice("adjust.give_way")) {
        app.ui.wish = {};
        if (const auto rest = formula::rest_line(now); rest && *rest != at && !now.lines[*rest].locked)
            app.ui.wish.givers = {*rest};
        return app::show(app, app::Sheet::give_way);
    }
    if (choice("adjust.fit")) {
        app.ui.wish = {};
        return app::show(app, app::Sheet::fit_amount);
    }
    if (choice(line.rest ? "line.rest_off" : "line.rest_on"))
        changed = formula::set_rest(now, at, !line.rest);
    if (!line.rest && choice(line.locked ? "line.lock_off" : "line.lock_on"))
        changed = formula::set_locked(now, at, !line.locked);
    if (at > 0 && choice("line.up")) {
        changed = formula::move_line(now, at, at - 1);
        if (changed->ok()) app.ui.line = at - 1;
        stay = true;
    }
    if (at + 1 < now.lines.size() && choice("line.down")) {
        changed = formula::move_line(now, at, at + 1);
        if (changed->ok()) app.ui.line = at + 1;
        stay = true;
    }
    for (const formula::Phase& phase : now.phases)
        if (phase.id != line.phase && choice("line.to_phase", {{"id", phase.id}}))
            changed = formula::move_to_phase(now, at, phase.id);
    widget::gap(8);
    if (widget::button(kit, "remove", app.say("line.remove"), widget::Look::danger, kit.width))
        changed = formula::remove_line(now, at);
    if (changed) {
        app.undo.deed_done();
        app.kit.drafts.clear();  // they belong to lines by place, and places change
        app::edit(app, *changed);
        app::edit(app, workspace::without_unused(*recipe, app.mine));
        if (!stay) app::close_sheet(app);
    }
}

void ingredient(app::App& app) {
    kit::Kit& kit = app.kit;
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe) return app::close_sheet(app);
    widget::TextSpec spec;
    spec.name = app.say("ingredient.search");
    spec.hint = app.say("ingredient.search_hint");
    spec.search = true;
    spec.last = true;
    spec.most_bytes = formula::kMostNameBytes;
    if (const auto typed = widget::text_field(kit, "search", app.ui.search, spec)) app.ui.search = *typed;
    kit.wish_blur = mirror::take_enter(widget::id_of("search")) != 0 || kit.wish_blur;
    widget::gap(8);

    std::string chosen, written;
    std::vector<catalogue::Ingredient> mine = app.mine;  // the recipe's own of the same id is the one it uses
    std::erase_if(mine, [&](const catalogue::Ingredient& one) {
        return workspace::own_of(*recipe, one.id) != nullptr;
    });
    catalogue::Catalogue laid;
    if (!mine.empty()) laid = catalogue::with_own(app.known(), mine);
    const catalogue::Catalogue& offered = mine.empty() ? app.known() : laid;
    mirror::Node list;
    list.id = widget::id_of("found");
    list.role = mirror::Role::list;
    list.name = app.say("ingredient.found");
    mirror::open(list);
    const auto draw = [&](const catalogue::Ingredient* one) {
        mirror::Node item;
        item.id = widget::id_of("item_" + one->id);
        item.role = mirror::Role::item;
        mirror::open(item);
        const auto inci = one->inci.find("eu");
        std::string under =
            one->made ? app.say(app::made_key(one->made->as)) : app::role_words(app, one->role);
        if (inci != one->inci.end()) under += (under.empty() ? "" : " \xC2\xB7 ") + inci->second;
        if (widget::row(kit, one->id, {one->name, under, "", "", false, false}).pressed) chosen = one->id;
        mirror::close();
        widget::hairline(kit);
    };
    for (const catalogue::Ingredient* one :
         catalogue::search(offered, app.ui.search, offered.ingredients.size()))
        kept_rows::row(kit, "row " + one->id, [&] { draw(one); });
    mirror::close();
    if (const std::string name = typed::words(app.ui.search); !name.empty()) {
        widget::gap(10);
        if (widget::button(kit, "as_written", app.say("ingredient.as_written", {{"name", name}}),
                           widget::Look::plain, kit.width))
            written = name;
        widget::gap(4);
        widget::text(kit, app.say("ingredient.as_written_about"), theme::Type::small, widget::Ink::soft);
    }
    if (chosen.empty() && written.empty()) return;
    app.undo.deed_done();
    auto brought = workspace::bring_in(app.work, app.presets.catalogue, *recipe, chosen);
    if (!brought) return app::tell(app, words::say(app.words, brought.error()), true);
    workspace::Used used = std::move(brought).value();
    chosen = used.id;
    if (app.ui.line_is_new) {
        formula::Line line;
        line.ingredient = chosen;
        line.name = written;
        if (app.ui.phase < recipe->formula.phases.size())
            line.phase = recipe->formula.phases[app.ui.phase].id;
        app::edit(app,
                  workspace::with_formula(std::move(used.recipe), formula::add_line(recipe->formula, line)));
    } else {
        app::edit(app, workspace::with_formula(
                           std::move(used.recipe),
                           formula::set_ingredient(recipe->formula, app.ui.line, chosen, written)));
        app::edit(app, workspace::without_unused(*recipe, app.mine));
    }
    app::close_sheet(app);
}

void phase(app::App& app) {
    kit::Kit& kit = app.kit;
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || app.ui.phase >= recipe->formula.phases.size()) return app::close_sheet(app);
    formula::Phase now = recipe->formula.phases[app.ui.phase];
    const auto temperature = [&](const char* key, const char* label, std::optional<std::int64_t>& value) {
        widget::NumberSpec spec;
        spec.name = app.say(label);
        spec.unit =
            "\xC2\xB0"
            "C";
        spec.read = typed::celsius;
        spec.may_be_empty = true;
        spec.hint = app.say("phase.no_temperature");
        const widget::NumberChange change = widget::number_field(kit, key, value, spec);
        if (!change.changed) return;
        value = change.value;
        app::edit(app, workspace::set_phase(*recipe, app.ui.phase, now));
    };
    widget::text(kit, app.say("phase.about"), theme::Type::small, widget::Ink::soft);
    widget::gap(10);
    temperature("hold", "phase.hold_c", now.hold_c);
    widget::gap(10);
    temperature("below", "phase.add_below_c", now.add_below_c);
    widget::gap(20);
    bool used = false;
    for (const formula::Line& line : recipe->formula.lines)
        used = used || line.phase == now.id;
    if (!used && recipe->formula.phases.size() > 1 &&
        widget::button(kit, "remove", app.say("phase.remove", {{"id", now.id}}), widget::Look::danger,
                       kit.width)) {
        app.undo.deed_done();
        app::edit(app, workspace::remove_phase(*recipe, now.id));
        return app::close_sheet(app);
    }
    if (widget::button(kit, "done", app.say("sheet_ui.done"), widget::Look::primary, kit.width))
        app::close_sheet(app);
}

void product(app::App& app) {
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe) return app::close_sheet(app);
    for (const catalogue::Product& one : app.presets.catalogue.products) {
        const std::string contact =
            app.say(one.contact == "rinse_off" ? "product.rinse_off" : "product.leave_on");
        if (widget::row(app.kit, one.id, {one.name, contact, "", "", one.id == recipe->product, false})
                .pressed) {
            app.undo.deed_done();
            app::edit(app, workspace::set_product(*recipe, one.id));
            app::close_sheet(app);
        }
        widget::hairline(app.kit);
    }
}

}  // namespace screens
