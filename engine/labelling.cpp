#include "labelling.h"

namespace labelling {

using market::Market;

result::Result<Market> market_of(const workspace::Recipe& recipe) {
    if (recipe.market.empty()) return Market::eu;
    if (const auto known = market::of_id(recipe.market)) return *known;
    return result::Error{result::Code::field_unknown_value, "market", recipe.market};
}

std::optional<label::Net> net_of(const batch::Batch& batch, std::size_t package,
                                 const catalogue::Catalogue& shipped) {
    if (package >= batch.fills.size()) return std::nullopt;
    const batch::Fill& fill = batch.fills[package];
    label::Net net{fill.each, fill.cold, false};
    const catalogue::Container* container = catalogue::find_container(shipped, fill.container);
    if (fill.from == batch::FillFrom::usual_weight && container != nullptr && container->fill_g) {
        net.usual = true;
        net.mass.grid = std::min(net.mass.grid, container->fill_g->value.min);
        if (net.volume && fill.each.grid > 0)
            net.volume->grid = decimal::scale_down(net.volume->grid, net.mass.grid, fill.each.grid);
    }
    return net;
}

result::Result<Labelled> of(const workspace::Recipe& recipe, const std::optional<batch::Batch>& batch,
                            const catalogue::Catalogue& shipped, const Details& details,
                            const std::optional<std::vector<declaration::Named>>& allergens,
                            const words::Table& table) {
    const auto market = market_of(recipe);
    if (!market) return market.error();
    const catalogue::Product* kind = catalogue::find_product(shipped, recipe.product);
    const label::Said& said = recipe.label;
    declaration::Wish wish;
    wish.market = *market;
    wish.scent = said.scent_together ? declaration::Scent::together : declaration::Scent::named;
    wish.lips = kind != nullptr && kind->place == "lips";
    wish.colours = {said.colours.begin(), said.colours.end()};
    wish.nano = {said.nano.begin(), said.nano.end()};
    wish.may_contain = said.may_contain;
    auto list = declaration::of(recipe.formula, shipped, recipe.own, wish,
                                allergens.value_or(std::vector<declaration::Named>{}));
    if (!list) return list.error();

    label::Content content;
    content.list = *list;
    content.allergens_known = allergens.has_value();
    content.title = recipe.title;
    content.identity = said.identity;
    content.identity_french = said.identity_french;
    if (content.identity.empty() && kind != nullptr) {
        content.identity = kind->name;
        const std::string french = "kind_french." + kind->id;
        if (content.identity_french.empty() && words::has(table, french))
            content.identity_french = words::say(table, french);
    }
    content.form = net_contents::form_of(recipe.product);
    if (batch) content.net = net_of(*batch, details.package, shipped);
    content.keeping = said.keeping;
    content.made_on = details.made_on;
    content.batch_number = details.batch_number;
    content.maker = details.maker;
    content.warnings = said.warnings;
    content.directions = said.directions;
    content.panel = said.panel;
    content.labelling_area = details.labelling_area;
    content.digits = details.digits;

    Labelled made;
    made.label = label::of(content, table);
    made.list = std::move(content.list);
    made.net = content.net;
    made.needs = sale_needs::of(*market);
    return made;
}

result::Result<assessor_pack::Pack> pack_of(const workspace::Recipe& recipe,
                                            const catalogue::Catalogue& shipped) {
    const auto market = market_of(recipe);
    if (!market) return market.error();
    return assessor_pack::of(recipe.formula, shipped, recipe.own, recipe.title, recipe.product, *market);
}

}  // namespace labelling
