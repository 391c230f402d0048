// The list of ingredients: names and order by market, what is split and added up, what is not known, and a
// list read back.
#include <algorithm>
#include <numeric>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/chance.h"
#include "engine/declaration.h"
#include "engine/declaration_read.h"
#include "engine/made.h"
#include "engine/workspace.h"
#include "shipped.h"
#include "support.h"

namespace test_declaration {

using catalogue::Ingredient;
using declaration::Block;
using declaration::Declaration;
using declaration::Doubt;
using declaration::Item;
using declaration::Named;
using declaration::Scent;
using declaration::Wish;
using market::Market;
using quantity::percent;
using quantity::Percent;

namespace {

const catalogue::Catalogue& shelf() {
    return shipped::presets().catalogue;
}

Wish wish(Market market) {
    Wish made;
    made.market = market;
    return made;
}

struct Part {
    const char* ingredient;
    double percent;
};

formula::Formula formula_of(const std::vector<Part>& parts) {
    std::vector<formula::Line> lines;
    for (const Part& part : parts)
        lines.push_back(support::line(part.ingredient, decimal::from_double(part.percent).value()));
    return support::formula_of(lines);
}

Declaration of(const formula::Formula& formula, const Wish& wish, const std::vector<Ingredient>& own = {},
               const std::vector<Named>& allergens = {}) {
    const auto made = declaration::of(formula, shelf(), own, wish, allergens);
    REQUIRE(made.ok());
    return made.value();
}

std::string list(const std::vector<Part>& parts, Market market) {
    return declaration::text(of(formula_of(parts), wish(market)));
}

bool doubts(const Declaration& declaration, Doubt doubt) {
    return std::any_of(declaration.remarks.begin(), declaration.remarks.end(),
                       [&](const auto& one) { return one.doubt == doubt; });
}

const Item& item(const Declaration& declaration, std::string_view name) {
    for (const Item& one : declaration.items)
        if (one.name == name) return one;
    FAIL("not declared: ", std::string(name));
    return declaration.items.front();
}

// The order with the items of these two names exchanged.
std::vector<std::size_t> exchanged(const Declaration& declaration, std::string_view a, std::string_view b) {
    std::vector<std::size_t> order(declaration.items.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto at = [&](std::string_view name) {
        return static_cast<std::size_t>(&item(declaration, name) - declaration.items.data());
    };
    std::swap(order[at(a)], order[at(b)]);
    return order;
}

Ingredient own(std::string id, std::vector<catalogue::Part> parts = {}) {
    Ingredient one;
    one.own = true;
    one.id = std::move(id);
    one.name = "The " + one.id;
    one.source = "my supplier's sheet";
    one.standing = source::Standing::supplier;
    one.parts = std::move(parts);
    return one;
}

// Sunflower with dry petals, strained out.
Ingredient infusion() {
    workspace::Recipe recipe;
    recipe.title = "Marigold oil";
    formula::Line petals = support::line("", percent(10).grid);
    petals.name = "Dried marigold petals";
    petals.strained = true;
    recipe.formula = support::formula_of({support::line("sunflower", percent(90).grid), petals});
    Ingredient one =
        made::ingredient_of(recipe.formula, catalogue::MadeAs::infusion, percent(80), shelf()).value();
    one.id = "own_marigold_oil";
    one.name = "Marigold oil";
    return one;
}

}  // namespace

TEST_CASE("the same salve is named after each market") {
    const std::vector<Part> salve{{"beeswax_yellow", 20}, {"shea", 30}, {"water", 10}, {"sunflower", 40}};
    CHECK(list(salve, Market::eu) ==
          "Helianthus Annuus Seed Oil, Butyrospermum Parkii Butter, Cera Alba, Aqua");
    CHECK(list(salve, Market::gb) == list(salve, Market::eu));
    CHECK(list(salve, Market::ni) == list(salve, Market::eu));
    CHECK(list(salve, Market::us) ==
          "Helianthus Annuus (Sunflower) Seed Oil, Butyrospermum Parkii (Shea) Butter, Beeswax, Water");
    // C.R.C., c. 869, s. 21.2(4)(c): what the Schedule lists may stand by all three of its names.
    CHECK(list(salve, Market::ca) ==
          "Helianthus Annuus (Sunflower) Seed Oil, Butyrospermum Parkii (Shea) Butter, "
          "Cera Alba / Beeswax / Cire d\xE2\x80\x99\x61\x62\x65ille, Aqua / Water / Eau");
}

TEST_CASE(
    "exactly 1.00 % is in the order in EU and GB and free in the US and Canada; 0.99 and 1.01 % are alike") {
    // EX-6; EU: Art. 19(1)(g) "less than 1 %"; 21 CFR 701.3(f) and C.R.C., c. 869, s. 21.4(2): at or under 1
    // %.
    const auto block = [](double at, Market market) {
        const Declaration made = of(formula_of({{"sunflower", 100 - at}, {"tocopherol", at}}), wish(market));
        return item(made, "Tocopherol").block;
    };
    for (const Market market : {Market::eu, Market::gb, Market::ni}) {
        CHECK(block(1.00, market) == Block::ordered);
        CHECK(block(0.9999, market) == Block::free);
    }
    for (const Market market : {Market::us, Market::ca}) {
        CHECK(block(1.00, market) == Block::free);
        CHECK(block(1.0001, market) == Block::ordered);
    }
    for (const auto& [market, id] : market::kAll) {
        CHECK(block(0.99, market) == Block::free);
        CHECK(block(1.01, market) == Block::ordered);
    }
    CHECK(doubts(of(formula_of({{"sunflower", 99}, {"tocopherol", 1}}), wish(Market::eu)),
                 Doubt::close_to_line));
}

TEST_CASE("beeswax 30, coconut 68, vitamin E 1.0, peppermint 0.9 and mica 0.1 for colour") {
    // EX2-7; 21 CFR 701.3(f).
    const formula::Formula balm = formula_of(
        {{"beeswax_yellow", 30}, {"coconut", 68}, {"tocopherol", 1}, {"peppermint", 0.9}, {"mica", 0.1}});
    Wish us = wish(Market::us);
    us.colours = {"mica"};
    const Declaration there = of(balm, us);
    CHECK(declaration::text(there) ==
          "Cocos Nucifera (Coconut) Oil, Beeswax, Tocopherol, Mentha Piperita (Peppermint) Oil, Mica");
    CHECK(declaration::may_stand(there, exchanged(there, "Tocopherol", "Mentha Piperita (Peppermint) Oil")));
    CHECK_FALSE(declaration::may_stand(there, exchanged(there, "Beeswax", "Cocos Nucifera (Coconut) Oil")));
    CHECK_FALSE(declaration::may_stand(there, exchanged(there, "Mica", "Tocopherol")));

    Wish eu = us;
    eu.market = Market::eu;
    const Declaration here = of(balm, eu);
    CHECK(declaration::text(here) ==
          "Cocos Nucifera Oil, Cera Alba, Tocopherol, Mentha Piperita Oil, CI 77019");
    CHECK(item(here, "Tocopherol").block == Block::ordered);
    CHECK_FALSE(declaration::may_stand(here, exchanged(here, "Tocopherol", "Mentha Piperita Oil")));

    // Canada: colours may stand among what is at or under 1 %.
    Wish ca = us;
    ca.market = Market::ca;
    const Declaration canada = of(balm, ca);
    CHECK(declaration::may_stand(canada, exchanged(canada, "Mica", "Tocopherol")));
    CHECK_FALSE(declaration::may_stand(canada, exchanged(canada, "Mica", "Cocos Nucifera (Coconut) Oil")));
}

TEST_CASE("equal names are added up before they are put in order") {
    // Two beeswaxes and two sunflower oils share a name.
    const Declaration made = of(formula_of({{"beeswax_white", 12},
                                            {"sunflower_ho", 20},
                                            {"olive", 30},
                                            {"beeswax_yellow", 10},
                                            {"sunflower", 28}}),
                                wish(Market::eu));
    CHECK(declaration::text(made) == "Helianthus Annuus Seed Oil, Olea Europaea Fruit Oil, Cera Alba");
    CHECK(made.items[0].percent == percent(48));
    CHECK(made.items[0].from == std::vector<std::string>{"sunflower_ho", "sunflower"});
}

TEST_CASE("made parts and own blends are split, and what they hold is added to its equals elsewhere") {
    const Ingredient blend = own("own_base", {{"olive", percent(50)}, {"beeswax_yellow", percent(50)}});
    const Declaration made =
        of(formula_of({{"own_base", 40}, {"olive", 25}, {"coconut", 35}}), wish(Market::eu), {blend});
    CHECK(declaration::text(made) == "Olea Europaea Fruit Oil, Cocos Nucifera Oil, Cera Alba");
    CHECK(made.items[0].percent == percent(45));
    CHECK(made.remarks.empty());
}

TEST_CASE("an own entry that does not say all of its parts leaves a gap, or its own further names") {
    Ingredient blend = own("own_base", {{"olive", percent(60)}});
    const Declaration gap = of(formula_of({{"own_base", 50}, {"coconut", 50}}), wish(Market::eu), {blend});
    CHECK(declaration::text(gap) == "Cocos Nucifera Oil, Olea Europaea Fruit Oil, [own_base]");
    CHECK(doubts(gap, Doubt::parts_incomplete));
    CHECK_FALSE(declaration::complete(gap));
    blend.inci["eu"] = "Olea Europaea Fruit Oil, Ricinus Communis Seed Oil";
    const Declaration named = of(formula_of({{"own_base", 50}, {"coconut", 50}}), wish(Market::eu), {blend});
    CHECK(declaration::text(named) ==
          "Cocos Nucifera Oil, Olea Europaea Fruit Oil, Ricinus Communis Seed Oil");
}

TEST_CASE("a bought blend of several names is shared out evenly, which is said to be a guess") {
    const Declaration made =
        of(formula_of({{"ewax_nf", 6}, {"cetearyl_alcohol", 2}, {"water", 92}}), wish(Market::eu));
    CHECK(declaration::text(made) == "Aqua, Cetearyl Alcohol, Polysorbate 60");
    CHECK(item(made, "Cetearyl Alcohol").percent == percent(5));
    CHECK(item(made, "Polysorbate 60").percent == percent(3));
    CHECK(doubts(made, Doubt::shares_unknown));
}

TEST_CASE(
    "the plant of an infusion is a gap under its own name until the maker says what it is declared as") {
    Ingredient oil = infusion();
    const formula::Formula salve = formula_of({{"own_marigold_oil", 80}, {"beeswax_yellow", 20}});
    const Declaration gap = of(salve, wish(Market::eu), {oil});
    CHECK(declaration::text(gap) == "Helianthus Annuus Seed Oil, Cera Alba, [Dried marigold petals]");
    CHECK(doubts(gap, Doubt::plant_strained));
    CHECK(gap.items.back().standing == source::Standing::common_practice);
    oil.inci["eu"] = "Helianthus Annuus Seed Oil, Calendula Officinalis Flower Extract";
    const Declaration named = of(salve, wish(Market::eu), {oil});
    CHECK(declaration::text(named) ==
          "Helianthus Annuus Seed Oil, Cera Alba, Calendula Officinalis Flower Extract");
    CHECK(declaration::complete(named));

    // The infusion's own recipe: what is strained out is no line of the product.
    formula::Line petals = support::line("", percent(10).grid);
    petals.name = "Dried marigold petals";
    petals.strained = true;
    const Declaration itself =
        of(support::formula_of({support::line("sunflower", percent(90).grid), petals}), wish(Market::eu));
    CHECK(itself.items.front().percent == quantity::kHundred);
    CHECK(declaration::text(itself) == "Helianthus Annuus Seed Oil, [Dried marigold petals]");
}

TEST_CASE("a name that is not known in a market is a gap, never another market's") {
    Ingredient mine = own("own_plum");
    mine.inci["eu"] = "Prunus Domestica Seed Oil";
    const formula::Formula oil = formula_of({{"own_plum", 60}, {"sunflower", 40}});
    CHECK(declaration::complete(of(oil, wish(Market::gb), {mine})));
    const Declaration us = of(oil, wish(Market::us), {mine});
    CHECK(declaration::text(us) == "[own_plum], Helianthus Annuus (Sunflower) Seed Oil");
    CHECK(doubts(us, Doubt::name_missing));
    // In Canada genus and species are enough: C.R.C., c. 869, s. 21.2(3).
    CHECK(declaration::complete(of(oil, wish(Market::ca), {mine})));
    // A variety is named as what it is a variety of.
    Ingredient variety = own("own_shea");
    variety.based_on = "shea";
    CHECK(declaration::text(of(formula_of({{"own_shea", 100}}), wish(Market::us), {variety})) ==
          "Butyrospermum Parkii (Shea) Butter");
    // Written by name only; the hydrosol's name depends on the lot.
    formula::Line line = support::line("", percent(50).grid);
    line.name = "Grandmother's jar";
    CHECK(declaration::text(of(support::formula_of({line, support::line("hydrosol", percent(50).grid)}),
                               wish(Market::eu))) == "[Grandmother's jar], [hydrosol]");
}

TEST_CASE("essential oils together are parfum, on lips aroma; Canada lets them stand last") {
    const formula::Formula balm = formula_of(
        {{"sunflower", 94}, {"peppermint", 2}, {"lavender", 1}, {"shea", 2.5}, {"tocopherol", 0.5}});
    Wish together = wish(Market::eu);
    together.scent = Scent::together;
    CHECK(declaration::text(of(balm, together)) ==
          "Helianthus Annuus Seed Oil, Parfum, Butyrospermum Parkii Butter, Tocopherol");
    together.lips = true;
    CHECK(item(of(balm, together), "Aroma").percent == percent(3));
    together.market = Market::us;
    CHECK(item(of(balm, together), "Flavor").percent == percent(3));
    together.market = Market::ca;
    together.lips = false;
    const Declaration canada = of(balm, together);
    CHECK(canada.items.back().name == "Parfum");  // s. 21.4(3)
    // A bought scent is "parfum" however the others are named.
    Ingredient scent = own("own_scent");
    scent.role = "fragrance";
    CHECK(declaration::text(of(formula_of({{"sunflower", 99}, {"own_scent", 1}}), wish(Market::us),
                               {scent})) == "Helianthus Annuus (Sunflower) Seed Oil, Fragrance");
}

TEST_CASE("allergens follow, most first, and one that is named already is not named twice") {
    // EX-8: 1 % of peppermint oil with 40 % menthol on lips: Menthol and Mentha Piperita Oil are printed.
    const std::vector<Named> named{
        {"Limonene", {200'000'000}, "peppermint", "memory", source::Standing::memory},
        {"Menthol", {4'000'000'000}, "peppermint", "eu_2023_1545", source::Standing::document},
        {"Mentha Piperita Oil", {10'000'000'000}, "peppermint", "eu_2023_1545", source::Standing::document}};
    const formula::Formula balm = formula_of({{"sunflower", 98.9}, {"peppermint", 1}, {"mica", 0.1}});
    Wish eu = wish(Market::eu);
    eu.colours = {"mica"};
    const Declaration made = of(balm, eu, {}, named);
    CHECK(declaration::text(made) ==
          "Helianthus Annuus Seed Oil, Mentha Piperita Oil, Menthol, Limonene, CI 77019");
    CHECK(item(made, "Mentha Piperita Oil").allergen);
    Wish ca = wish(Market::ca);
    ca.colours = {"mica"};
    CHECK(
        declaration::text(of(balm, ca, {}, named)) ==
        "Helianthus Annuus (Sunflower) Seed Oil, Mentha Piperita (Peppermint) Oil, Menthol, Limonene, Mica");
    // In "parfum" the oil is not named, so the allergen is.
    eu.scent = Scent::together;
    CHECK(declaration::text(of(balm, eu, {}, named)) ==
          "Helianthus Annuus Seed Oil, Parfum, Mentha Piperita Oil, Menthol, Limonene, CI 77019");
}

TEST_CASE("a group name beside the oil it stands for is printed, with a doubt") {
    const std::vector<Named> named{
        {"Lavandula Oil/Extract", {5'000'000'000}, "lavender", "eu_2023_1545", source::Standing::document}};
    const Declaration made =
        of(formula_of({{"sunflower", 99.5}, {"lavender", 0.5}}), wish(Market::eu), {}, named);
    CHECK(declaration::text(made) ==
          "Helianthus Annuus Seed Oil, Lavandula Angustifolia Oil, Lavandula Oil/Extract");
    CHECK(doubts(made, Doubt::group_beside_oil));
}

TEST_CASE("nanomaterials are marked in Europe, colours of other shades stand behind a mark of their own") {
    Wish eu = wish(Market::eu);
    eu.nano = {"zinc_oxide"};
    eu.may_contain = {"mica", "titanium_dioxide"};
    const formula::Formula stick = formula_of({{"sunflower", 95}, {"zinc_oxide", 5}});
    CHECK(declaration::text(of(stick, eu)) ==
          "Helianthus Annuus Seed Oil, Zinc Oxide (nano) [+/- CI 77019, CI 77891]");
    eu.market = Market::us;
    CHECK(declaration::text(of(stick, eu), "May contain:") ==
          "Helianthus Annuus (Sunflower) Seed Oil, Zinc Oxide [May contain: Mica, Titanium Dioxide]");
}

TEST_CASE("a formula that does not add to 100 has no declaration, with the sum it has") {
    const auto made =
        declaration::of(formula_of({{"sunflower", 60}, {"shea", 30}}), shelf(), {}, wish(Market::eu));
    REQUIRE_FALSE(made.ok());
    CHECK(made.error().code == result::Code::sum_not_hundred);
    CHECK(made.error().detail == "90");
}

TEST_CASE("names part at commas, but not within brackets or numbers") {
    using Names = std::vector<std::string>;
    CHECK(declaration::at_commas("Cetearyl Alcohol, Polysorbate 60") ==
          Names{"Cetearyl Alcohol", "Polysorbate 60"});
    CHECK(declaration::at_commas("1,2-Hexanediol, Aqua") == Names{"1,2-Hexanediol", "Aqua"});
    CHECK(declaration::at_commas("Olus (a, b) Oil") == Names{"Olus (a, b) Oil"});
    CHECK(declaration::at_commas(" , ,, ").empty());
}

TEST_CASE("splitting a line in two changes nothing in the list; every printed order is one the law allows") {
    chance::Generator chance(20261126);
    for (int i = 0; i < 300; ++i) {
        const formula::Formula formula = support::random_formula(chance, shelf());
        for (const auto& [market, id] : market::kAll) {
            const auto made = declaration::of(formula, shelf(), {}, wish(market));
            if (!made) continue;
            std::vector<std::size_t> order(made->items.size());
            std::iota(order.begin(), order.end(), std::size_t{0});
            CHECK(declaration::may_stand(*made, order));
            const auto last = made->items.end() - 1;
            CHECK(std::is_sorted(made->items.begin(), last + 1, [](const Item& a, const Item& b) {
                return a.block == b.block && a.percent && b.percent && *a.percent > *b.percent;
            }));
            std::int64_t sum = 0;
            for (const Item& one : made->items)
                sum += one.percent.value_or(Percent{0}).grid;
            CHECK(sum == quantity::kHundred.grid);

            formula::Formula halves = formula;
            formula::Line& first = halves.lines.front();
            if (first.rest || first.percent.grid < 2) continue;
            formula::Line half = first;
            half.percent.grid = first.percent.grid / 2;
            first.percent = first.percent - half.percent;
            halves.lines.insert(halves.lines.begin(), half);
            const auto again = declaration::of(halves, shelf(), {}, wish(market));
            REQUIRE(again.ok());
            CHECK(declaration::text(*again) == declaration::text(*made));
        }
    }
}

}  // namespace test_declaration
