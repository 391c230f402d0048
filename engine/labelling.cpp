#include "labelling.h"

#include <algorithm>
#include <utility>

#include "analysis_case.h"
#include "safety_bounds.h"

namespace labelling {

using market::Market;

namespace {

std::string name_of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                    const std::string& id) {
    if (const auto* one = catalogue::find_ingredient(shipped, id)) return one->name;
    for (const catalogue::Ingredient& own : recipe.own)
        if (own.id == id && !own.name.empty()) return own.name;
    return id;
}

}  // namespace

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

Allergens allergens_of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                       const std::vector<catalogue::Ingredient>& mine, const limits::Book* book,
                       const words::Table& table) {
    Allergens found;
    if (book == nullptr) return found;
    const safety::Allergens all = safety::allergens_of(analysis::case_of(recipe, shipped, mine, book));
    if (all.regime == nullptr) return found;
    found.named = all.named;
    found.asked = all.regime->list != limits::List::none;
    found.reason = words::say(table, "regime." + all.regime->reason);
    for (const std::string& id : all.unknown)
        found.unknown.push_back(name_of(recipe, shipped, id));
    return found;
}

std::vector<Warning> warnings_of(const workspace::Recipe& recipe,
                                 const std::vector<finding::Finding>& findings,
                                 const catalogue::Catalogue& shipped, const words::Table& table) {
    using finding::Code;
    std::vector<Warning> all;
    const auto add = [&](const finding::Finding& from, std::string_view key,
                         const words::Arguments& arguments, bool due) {
        Warning made{words::say(table, key, arguments), due, from.rule, from.source, from.standing};
        for (const Warning& one : all)
            if (one.sentence == made.sentence) return;
        all.push_back(std::move(made));
    };
    std::string nuts;
    const finding::Finding *nut = nullptr, *child = nullptr;
    for (const finding::Finding& one : findings) {
        if (one.code == Code::warning_due) {
            const bool eucalyptus = one.rule == "Hotlist eucalyptus oil";
            add(one, eucalyptus ? "label.warn_eucalyptus" : "label.warn_due",
                {{"name", name_of(recipe, shipped, one.subject)}, {"rule", one.rule}}, eucalyptus);
        }
        if (one.code == Code::water_gets_in) add(one, "label.warn_water", {}, false);
        if (one.code == Code::oil_not_in_pregnancy) add(one, "label.warn_pregnancy", {}, false);
        const bool of_age = one.code == Code::oil_not_for_child && one.limit;
        if (of_age && (child == nullptr || *one.limit > *child->limit)) child = &one;
        if (one.code != Code::origin_nut) continue;
        nut = nut == nullptr ? &one : nut;
        const std::string name = name_of(recipe, shipped, one.subject);
        if (nuts.find(name) == std::string::npos) nuts += (nuts.empty() ? "" : ", ") + name;
    }
    if (child != nullptr)
        add(*child, "label.warn_children", {{"years", words::figure(table, *child->limit)}}, false);
    if (nut != nullptr) add(*nut, "label.warn_nuts", {{"names", nuts}}, false);
    return all;
}

customer_card::Card card_of(const workspace::Recipe& recipe, const safety::Report& report,
                            const catalogue::Catalogue& shipped,
                            const std::vector<catalogue::Ingredient>& mine, const limits::Book* book,
                            const words::Table& table) {
    const safety::Case the = analysis::case_of(recipe, shipped, mine, book);
    Allergens allergens = allergens_of(recipe, shipped, mine, book, table);
    customer_card::Asked asked;
    asked.title = recipe.title;
    asked.findings = &report.findings;
    asked.allergens = std::move(allergens.named);
    asked.allergens_asked = allergens.asked;
    asked.book = book;
    for (const safety::Portion& portion : the.portions) {
        if (portion.percent.grid <= 0) continue;
        const catalogue::Ingredient* one = portion.own != nullptr ? portion.own : portion.known;
        if (one == nullptr) {
            asked.unknown.push_back(portion.name.empty() ? portion.ingredient : portion.name);
        } else if (std::find(asked.held.begin(), asked.held.end(), one) == asked.held.end()) {
            asked.held.push_back(one);
            // An own entry that is based on nothing that is shipped is known by its name alone.
            if (portion.known == portion.own) asked.unknown.push_back(one->name);
        }
    }
    return customer_card::of(asked, table);
}

result::Result<Labelled> of(const workspace::Recipe& recipe, const std::optional<batch::Batch>& batch,
                            const catalogue::Catalogue& shipped, const Details& details,
                            const Allergens& allergens, const words::Table& table,
                            const safety::Report* report) {
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
                                allergens.named.value_or(std::vector<declaration::Named>{}));
    if (!list) return list.error();

    label::Content content;
    content.list = *list;
    content.allergens_known = allergens.named.has_value();
    content.allergens_reason = allergens.reason;
    content.allergens_unknown = allergens.unknown;
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
    Labelled made;
    if (report != nullptr) made.warnings = warnings_of(recipe, report->findings, shipped, table);
    for (const Warning& one : made.warnings)
        if (one.due &&
            std::find(said.warnings.begin(), said.warnings.end(), one.sentence) == said.warnings.end())
            content.warnings.push_back(one.sentence);
    content.warnings.insert(content.warnings.end(), said.warnings.begin(), said.warnings.end());
    content.directions = said.directions;
    content.panel = said.panel;
    content.labelling_area = details.labelling_area;
    content.digits = details.digits;

    made.label = label::of(content, table);
    if (std::any_of(made.warnings.begin(), made.warnings.end(), [](const Warning& one) { return one.due; }))
        made.label.remarks.push_back(words::say(table, "label.warn_words"));
    made.allergens = allergens;
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
