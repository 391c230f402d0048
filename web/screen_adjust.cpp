// Sheets that change a formula as a whole: to 100, firmer or softer, one line while others give way, the
// batch that fits an amount of one line. Each shows what would change before it is taken.
#include <algorithm>

#include "app.h"
#include "engine/adjustment.h"
#include "mirror.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace screens {
namespace {

std::string figure(const app::App& app, std::int64_t grid) {
    return words::figure(app.words, grid);
}

// What changes, or why it can't be, and the button that takes it. True: it was taken.
bool preview(app::App& app, const workspace::Recipe& recipe,
             const result::Result<adjustment::Adjusted>& adjusted) {
    kit::Kit& kit = app.kit;
    widget::gap(16);
    if (!adjusted) {
        widget::finding_badge(kit, finding::Severity::caution, words::say(app.words, adjusted.error()), "");
    } else if (adjusted->changes.empty()) {
        widget::text(kit, app.say("adjust.same"), theme::Type::body, widget::Ink::soft);
    } else {
        widget::heading(kit, 2, app.say("adjust.preview"));
        mirror::Node list;
        list.id = widget::id_of("changes");
        list.role = mirror::Role::list;
        list.name = app.say("adjust.preview");
        mirror::open(list);
        for (const adjustment::Change& change : adjusted->changes) {
            mirror::Node item;
            item.id = widget::id_of("change_" + std::to_string(change.line));
            item.role = mirror::Role::item;
            mirror::open(item);
            widget::RowSpec row;
            row.title = workspace::display_name(app.known(), recipe.formula.lines[change.line]);
            row.under = app.say("adjust.change", {{"from", figure(app, change.from.grid)},
                                                  {"to", figure(app, change.to.grid)}});
            row.plain = true;
            widget::row(kit, "row_" + std::to_string(change.line), row);
            mirror::close();
        }
        mirror::close();
    }
    widget::gap(12);
    const bool can = adjusted && !adjusted->changes.empty();
    if (!widget::button(kit, "take", app.say("adjust.take"), widget::Look::primary, kit.width, !can))
        return false;
    app.undo.deed_done();
    kit.drafts.clear();
    app::edit(app, adjusted->formula);
    app::close_sheet(app);
    return true;
}

}  // namespace

void to_hundred(app::App& app) {
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe) return app::close_sheet(app);
    widget::text(app.kit, app.say("adjust.to_hundred_about"), theme::Type::small, widget::Ink::soft);
    preview(app, *recipe, adjustment::to_hundred(recipe->formula));
}

void firmness(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe) return app::close_sheet(app);
    int& steps = app.ui.wish.steps;
    const auto at = [&](int wanted) { return adjustment::firmer(recipe->formula, app.known(), wanted); };
    widget::text(kit, app.say("adjust.firmness_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(10);
    int step = 0;
    widget::Columns columns = widget::begin_columns(kit);
    if (widget::button(kit, "softer", app.say("adjust.softer"), widget::Look::plain, kit.width,
                       !at(steps - 1).ok()))
        step = -1;
    widget::next_column(kit, columns);
    if (widget::button(kit, "firmer", app.say("adjust.firmer"), widget::Look::plain, kit.width,
                       !at(steps + 1).ok()))
        step = 1;
    widget::end_columns(kit, columns);
    if (step != 0) {
        steps += step;
        app.ui.again = true;
    }
    preview(app, *recipe, at(steps));
}

void give_way(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || app.ui.line >= recipe->formula.lines.size()) return app::close_sheet(app);
    const std::size_t at = app.ui.line;
    const std::vector<formula::Line>& lines = recipe->formula.lines;
    app::Wish& wish = app.ui.wish;

    widget::NumberSpec spec;
    spec.name = app.say("adjust.new_percent", {{"name", workspace::display_name(app.known(), lines[at])}});
    spec.unit = "%";
    spec.read = typed::percent;
    spec.large = true;
    std::int64_t now = lines[at].percent.grid;
    if (lines[at].rest && app.analysis && app.analysis->rest) now = app.analysis->rest->grid;
    const auto change = widget::number_field(kit, "percent", wish.percent ? wish.percent->grid : now, spec);
    if (change.value) wish.percent = quantity::Percent{*change.value};
    widget::gap(10);
    widget::heading(kit, 2, app.say("adjust.gives_way"));
    widget::text(kit, app.say("adjust.give_way_about"), theme::Type::small, widget::Ink::soft);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (i == at || lines[i].locked) continue;
        if (widget::tick(kit, "giver_" + std::to_string(i), workspace::display_name(app.known(), lines[i]),
                         wish.givers.count(i) > 0)) {
            if (!wish.givers.erase(i)) wish.givers.insert(i);
            app.ui.again = true;
        }
    }
    preview(app, *recipe,
            adjustment::give_way(recipe->formula, at, wish.percent.value_or(quantity::Percent{now}),
                                 {wish.givers.begin(), wish.givers.end()}));
}

void fit_amount(app::App& app) {
    kit::Kit& kit = app.kit;
    workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || app.ui.line >= recipe->formula.lines.size()) return app::close_sheet(app);
    app::Wish& wish = app.ui.wish;
    widget::text(kit, app.say("adjust.fit_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(10);
    widget::NumberSpec spec;
    spec.name = app.say("adjust.amount",
                        {{"name", workspace::display_name(app.known(), recipe->formula.lines[app.ui.line])}});
    spec.unit = "g";
    spec.read = typed::mass;
    spec.hint = "0";
    spec.large = true;
    spec.may_be_empty = true;
    std::optional<std::int64_t> value;
    if (wish.amount) value = wish.amount->grid;
    if (const auto change = widget::number_field(kit, "amount", value, spec); change.changed) {
        wish.amount.reset();
        if (change.value) wish.amount = quantity::Mass{*change.value};
    }
    widget::gap(16);
    std::optional<result::Result<quantity::Mass>> batch;
    if (wish.amount)
        batch = adjustment::batch_for(recipe->formula, app.ui.line, *wish.amount, recipe->batch.division,
                                      batch::kLargest);
    if (batch && batch->ok())
        widget::text(kit, app.say("adjust.batch", {{"grams", figure(app, (*batch)->grid)}}),
                     theme::Type::strong);
    else if (batch)
        widget::finding_badge(kit, finding::Severity::caution, words::say(app.words, batch->error()), "");
    widget::gap(12);
    if (!widget::button(kit, "take", app.say("adjust.take"), widget::Look::primary, kit.width,
                        !(batch && batch->ok())))
        return;
    app.undo.deed_done();
    recipe->batch = batch::of_grams(recipe->batch, **batch);
    app::close_sheet(app);
    app.ui.screen = app::Screen::batch;
}

}  // namespace screens
