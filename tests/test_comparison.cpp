// States of a recipe side by side: what each holds, what follows, what the checks and the prices say; and
// that what is not known is said as that.
#include "doctest/doctest.h"
#include "engine/comparison.h"
#include "shipped.h"

namespace test_comparison {

using comparison::Part;
using comparison::Row;
using comparison::Table;

namespace {

workspace::Recipe recipe_of(const std::vector<std::pair<const char*, int>>& lines) {
    workspace::Recipe recipe;
    recipe.formula.phases.push_back({});
    for (const auto& [id, percent] : lines) {
        formula::Line line;
        line.ingredient = id;
        line.percent = quantity::percent(percent);
        line.rest = percent == 0;
        recipe.formula.lines.push_back(line);
    }
    return recipe;
}

Table table_of(const std::vector<const workspace::Recipe*>& sides,
               const catalogue::Catalogue& known = shipped::presets().catalogue,
               const price::Book* prices = nullptr) {
    return comparison::of(sides, {known, &shipped::book(), prices, {}, {}});
}

const Row& row(const Table& table, const std::string& key) {
    for (const Row& one : table.rows)
        if (one.key == key) return one;
    FAIL("no row ", key);
    return table.rows.front();
}

std::optional<double> value(const Table& table, const std::string& key, std::size_t side) {
    const auto& grid = row(table, key).values[side];
    return grid ? std::optional(decimal::to_double(*grid)) : std::nullopt;
}

bool finds(const std::vector<finding::Finding>& list, finding::Code code) {
    for (const finding::Finding& one : list)
        if (one.code == code) return true;
    return false;
}

const workspace::Recipe kBees = recipe_of({{"beeswax_yellow", 20}, {"shea", 30}, {"almond", 0}});
const workspace::Recipe kPlants = recipe_of({{"candelilla", 10}, {"shea", 30}, {"sunflower", 0}});

}  // namespace

TEST_CASE("side by side: lines, what is in one alone, and what the rest line comes to") {
    const Table table = table_of({&kBees, &kPlants});
    CHECK(value(table, "beeswax_yellow", 0) == 20);
    CHECK_FALSE(value(table, "beeswax_yellow", 1));
    CHECK(value(table, "sunflower", 1) == 60);
    CHECK_FALSE(row(table, "shea").differs());
    CHECK(row(table, "candelilla").differs());
    CHECK(row(table, "candelilla").name == "Candelilla wax");
    CHECK(table.rows.front().part == Part::lines);
}

TEST_CASE("side by side: an ingredient that stands twice has two rows, and three sides have three figures") {
    const workspace::Recipe twice = recipe_of({{"shea", 30}, {"shea", 10}, {"almond", 60}});
    const Table table = table_of({&kBees, &twice, &kPlants});
    std::vector<Row> shea;
    for (const Row& one : table.rows)
        if (one.key == "shea") shea.push_back(one);
    REQUIRE(shea.size() == 2);
    CHECK(shea[0].values == std::vector<std::optional<std::int64_t>>{300000, 300000, 300000});
    CHECK(shea[1].values == std::vector<std::optional<std::int64_t>>{{}, 100000, {}});
}

TEST_CASE("side by side: bees and nuts are counted, and what the checks no longer find is told") {
    const Table table = table_of({&kBees, &kPlants});
    CHECK(value(table, "animal", 0) == 1);
    CHECK(value(table, "animal", 1) == 0);
    CHECK(value(table, "nut", 0) == 2);  // almond, shea
    CHECK(value(table, "nut", 1) == 1);
    CHECK(finds(table.gone, finding::Code::origin_bee));
    CHECK_FALSE(finds(table.come, finding::Code::origin_bee));
    const Table back = table_of({&kPlants, &kBees});
    CHECK(finds(back.come, finding::Code::origin_bee));
}

TEST_CASE("side by side: what cannot be checked without the book is counted, not passed over") {
    const catalogue::Catalogue& known = shipped::presets().catalogue;
    const Table with = table_of({&kBees}),
                without = comparison::of({&kBees}, {known, nullptr, nullptr, {}, {}});
    CHECK(*value(without, "not_made", 0) > *value(with, "not_made", 0));
}

TEST_CASE("side by side: of how much the fatty acids are known falls when a profile is taken away") {
    const Table before = table_of({&kBees, &kPlants});
    catalogue::Catalogue less = shipped::presets().catalogue;
    for (catalogue::Ingredient& one : less.ingredients)
        if (one.id == "shea") one.fatty_acids.reset();
    const Table after = table_of({&kBees, &kPlants}, less);
    for (const std::size_t side : {0, 1}) {
        REQUIRE(value(after, "profile_known", side));
        CHECK(*value(after, "profile_known", side) < *value(before, "profile_known", side));
    }
}

TEST_CASE("side by side: an acid that one side has is nought on the other, where that one is known") {
    const workspace::Recipe castor = recipe_of({{"castor", 100}}), olive = recipe_of({{"olive", 100}});
    const Table table = table_of({&castor, &olive});
    CHECK(*value(table, "acid ricinoleic", 0) > 80);
    CHECK(value(table, "acid ricinoleic", 1) == 0);
    const workspace::Recipe wax = recipe_of({{"candelilla", 100}});
    CHECK_FALSE(value(table_of({&castor, &wax}), "acid ricinoleic", 1));
}

TEST_CASE("side by side: the cost of a kilogram, and how much of it is known") {
    price::Book prices;
    CHECK(table_of({&kBees, &kPlants}, shipped::presets().catalogue, &prices).currency.empty());
    prices.currency = "EUR";
    for (const char* id : {"beeswax_yellow", "shea", "almond", "sunflower"}) {
        price::Pack pack;
        pack.what = id;
        pack.size = 1000 * decimal::kOne;
        pack.currency = "EUR";
        pack.paid = {1000};
        prices.packs.push_back(pack);
    }
    const Table table = table_of({&kBees, &kPlants}, shipped::presets().catalogue, &prices);
    CHECK(value(table, "ingredients", 0) == 10);
    CHECK(value(table, "cost_known", 0) == 100);
    CHECK(value(table, "ingredients", 1) == 9);
    CHECK(value(table, "cost_known", 1) == 90);  // candelilla has no price
}

TEST_CASE("side by side: a formula that does not add up has lines and checks, and nothing that needs a sum") {
    const workspace::Recipe half = recipe_of({{"shea", 30}, {"almond", 20}});
    const Table table = table_of({&kBees, &half});
    CHECK(value(table, "shea", 1) == 30);
    CHECK(*value(table, "stops", 1) > 0);
    CHECK_FALSE(value(table, "firmness", 1));
    CHECK(value(table, "firmness", 0));
}

TEST_CASE("side by side: every figure of every starter has its words") {
    for (const auto& [stem, recipe] : shipped::presets().recipes)
        for (const Row& one : table_of({&recipe, &kBees}).rows) {
            if (!one.name.empty() || one.part == Part::lines) continue;
            CAPTURE(one.key);
            CHECK(words::has(shipped::english(), "compare." + one.key));
            CHECK(words::has(shipped::english(), "compare." + std::string(comparison::part_name(one.part))));
        }
}

}  // namespace test_comparison
