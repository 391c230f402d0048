// What things cost and what is left of them: worked out when it is asked for, kept until what it rests on
// changes.
#include <utility>

#include "app.h"
#include "engine/money_said.h"
#include "engine/workshop_cost.h"
#include "engine/workspace_edits.h"
#include "platform.h"

namespace app {
namespace {

void forget_costs(App& app) {
    if (app.costed_with == app.work.settings.prices && app.costed_of == app.work.open &&
        app.workshop_with == app.work.settings.workshop)
        return;
    app.costed_of = app.work.open;
    app.costed_with = app.work.settings.prices;
    app.cost.reset();
    app.per_head.reset();
}

}  // namespace

const result::Result<cost::Cost>& cost_of(App& app) {
    forget_costs(app);
    if (app.cost) return *app.cost;
    const workspace::Recipe& recipe = *app.analysed;
    const bool any = recipe.batch.amount != batch::Amount::none;
    if (!app.analysis->percents)
        app.cost = app.analysis->percents.error();
    else if (any && !app.analysis->batch)
        app.cost = app.analysis->batch.error();
    else
        app.cost = cost::of({recipe.formula, *app.analysis->percents, any ? &*app.analysis->batch : nullptr,
                             app.known(), app.work.open},
                            app.costed_with);
    return *app.cost;
}

std::optional<cost::PerHead> per_head(App& app) {
    forget_costs(app);
    const auto& made = workshop_of(app);
    if (!made || app.costed_with.currency.empty()) return std::nullopt;
    const workspace::Recipe& recipe = *app.analysed;
    if (!app.per_head)
        app.per_head =
            workshop::per_head({recipe.formula, recipe.steps, recipe.batch, recipe.product}, app.work.open,
                               app.workshop_with, *made, app.known(), app.costed_with);
    return *app.per_head ? std::optional(**app.per_head) : std::nullopt;
}

const workspace::Shelf& shelf(App& app) {
    if (!app.shelf || app.shelf_of != app.work.filings) {
        app.shelf = workspace::shelf(app.work);
        app.shelf_of = app.work.filings;
    }
    return *app.shelf;
}

std::string money(const App& app, money::Amount amount) {
    return money::say(app.words, amount, app.work.settings.prices.currency);
}

void edit_prices(App& app, const result::Result<price::Book>& changed) {
    edit(app, workspace::set_prices(app.work.settings, changed));
    ask_to_keep(app);
}

void show_packs(App& app, price::Of of, const std::string& what) {
    PriceIn& in = app.ui.price;
    in.of = of;
    in.what = what;
    in.at.reset();
    in.entering = price::pack_of(app.work.settings.prices, of, what) == nullptr;
    in.pack = {};
    in.paid = in.delivery = std::nullopt;
    app.kit.drafts.clear();
    show(app, Sheet::pack);
}

bool keep_pack(App& app) {
    PriceIn& in = app.ui.price;
    price::Pack pack = in.pack;
    pack.of = in.of;
    pack.what = in.what;
    const auto amount = [&](const std::optional<std::int64_t>& grid, money::Amount& to) {
        const auto said = money::amount_of(grid.value_or(0), pack.currency);
        if (said)
            to = *said;
        else
            tell(app, words::say(app.words, said.error()), true);
        return said.ok();
    };
    if (!in.paid) {
        tell(app, app.say("paid.price_missing"), true);
        return false;
    }
    if (!amount(in.paid, pack.paid) || !amount(in.delivery, pack.delivery)) return false;
    const auto changed = price::with_pack(app.work.settings.prices, in.at, std::move(pack));
    edit_prices(app, changed);
    return changed.ok();
}

std::string taken_words(App& app, const workspace::Taking& taking) {
    static constexpr const char* kWhy[] = {
        "", "", "", "record_ui.why_no_such_lot", "record_ui.why_not_counted", "record_ui.why_before_count"};
    if (taking.why == workspace::NotTaken::none) {
        const workspace::OnShelf& from = shelf(app).all[*taking.shelf];
        if (from.counted && from.taken > *from.counted)
            return app.say("record_ui.taken_over", {{"g", app.grams(*from.counted)}});
        return app.say("record_ui.taken", {{"left", app.grams(from.left().value_or(quantity::Mass{}))}});
    }
    const char* why = kWhy[static_cast<int>(taking.why)];
    return *why == 0 ? "" : app.say("record_ui.not_taken", {{"why", app.say(why)}});
}

}  // namespace app
