// What a batch costs: two recipes worked out by hand, with mixed units and currencies, and that every level
// adds to the one above it whatever the prices are.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "engine/chance.h"
#include "engine/cost.h"
#include "engine/door.h"
#include "engine/store_prices.h"
#include "engine/workshop_cost.h"
#include "shipped.h"
#include "support.h"

namespace test_cost {

using cost::Cost;
using cost::Kind;
using cost::Why;
using money::Amount;
using quantity::grams;
using quantity::percent;
using result::Code;

namespace {

price::Book book_of(const char* json) {
    store_json::Failure failure;
    const auto tree = store_json::parse(json);
    REQUIRE(tree);
    price::Book book = store_prices::book_from(*tree, "prices", failure);
    REQUIRE_MESSAGE(!failure.failed(), (failure.error ? failure.error->place : ""));
    return book;
}

catalogue::Ingredient own(const char* id, std::int64_t density) {
    catalogue::Ingredient one;
    one.id = one.name = id;
    one.own = true;
    one.density = source::Sourced<catalogue::DensityAt>{{{density}, {}}, "", source::Standing::estimate};
    return one;
}

result::Result<Cost> tried(const workspace::Recipe& recipe, const price::Book& book) {
    const analysis::Analysis report = analysis::of(recipe, shipped::presets().catalogue);
    REQUIRE(report.percents);
    const bool any = recipe.batch.amount != batch::Amount::none;
    if (any) REQUIRE(report.batch);
    return cost::of({recipe.formula, *report.percents, any ? &*report.batch : nullptr,
                     catalogue::with_own(shipped::presets().catalogue, recipe.own), ""},
                    book);
}
Cost costed(const workspace::Recipe& recipe, const price::Book& book) {
    const auto made = tried(recipe, book);
    REQUIRE(made);
    return *made;
}

// 6 tins of 30 g, 10 % loss: 200 g. 50 g of wax, 149 g of oil of 0.92 g/mL, 1 g of vitamin E.
workspace::Recipe salve() {
    workspace::Recipe recipe;
    recipe.product = "salve";
    recipe.own = {own("own_oil", 9200)};
    recipe.formula =
        support::formula_of({support::line("beeswax_yellow", 250'000), support::rest("own_oil", "B"),
                             support::line("tocopherol", 5'000, "C")});
    recipe.batch = support::containers({{"tin_30ml", 6, grams(30), {}}}, 100);
    recipe.batch.loss = percent(10);
    return recipe;
}
constexpr const char* kSalvePrices = R"({"currency":"EUR",
    "packs":[{"ingredient":"beeswax_yellow","g":500,"price":9.8,"delivery":1.2,"currency":"EUR","day":"2026-09-01"},
             {"ingredient":"own_oil","ml":1000,"price":6.5,"currency":"GBP","day":"2026-10-10","supplier":"the market"},
             {"ingredient":"tocopherol","g":50,"price":1200,"currency":"JPY","day":"2026-10-12"},
             {"container":"tin_30ml","pieces":24,"price":18,"currency":"EUR"},
             {"for":"label","pieces":100,"price":8.5,"currency":"USD"}],
    "rates":[{"from":"GBP","to":"EUR","gives":1.16,"day":"2026-10-01"},
             {"from":"JPY","to":"EUR","amount":100,"gives":0.62,"day":"2026-10-01"},
             {"from":"EUR","to":"USD","gives":1.09,"day":"2026-10-01"}],
    "hour":{"amount":18,"currency":"EUR"},"overhead_batch":{"amount":2.5,"currency":"EUR"},"overhead_percent":5,
    "makings":[{"minutes_batch":45,"minutes_unit":2}]})";

// 5 jars of 50 g and 7 tins of 25 g, 15 % loss: 500 g. 200 g of shea, 175 g of an oil of 0.95 g/mL, 120 g of
// glycerin, 5 g of drops that nobody knows the density of.
workspace::Recipe balm() {
    workspace::Recipe recipe;
    recipe.product = "salve";
    recipe.own = {own("own_castor", 9500)};
    formula::Line drops;
    drops.name = "Grandmother's drops";
    drops.percent = percent(1);
    drops.phase = "C";
    recipe.formula =
        support::formula_of({support::line("shea", 400'000), support::line("own_castor", 350'000),
                             support::line("glycerin", 240'000, "B"), drops});
    recipe.batch = support::containers({{"jar_60ml", 5, grams(50), {}}, {"tin_30ml", 7, grams(25), {}}}, 100);
    recipe.batch.loss = percent(15);
    return recipe;
}
constexpr const char* kBalmPrices = R"({"currency":"JPY",
    "packs":[{"ingredient":"shea","g":1000,"price":12.5,"delivery":2.49,"currency":"EUR"},
             {"ingredient":"own_castor","ml":250,"price":1.25,"currency":"KWD"},
             {"ingredient":"glycerin","g":500,"price":980,"currency":"JPY"},
             {"ingredient":"Grandmother's drops","ml":30,"price":500,"currency":"JPY"},
             {"container":"jar_60ml","pieces":10,"price":1500,"currency":"JPY"},
             {"for":"box","pieces":50,"price":1000,"currency":"JPY"}],
    "rates":[{"from":"EUR","to":"JPY","gives":164.75,"day":"2026-10-01"},
             {"from":"KWD","to":"JPY","gives":505.5,"day":"2026-10-01"}],
    "hour":{"amount":1500,"currency":"JPY"},"overhead_percent":10,
    "makings":[{"minutes_unit":3,"label":false,"box":true}]})";

std::vector<std::int64_t> minors(const Cost& made) {
    std::vector<std::int64_t> all;
    for (const Amount one : made.kinds)
        all.push_back(one.minor);
    return all;
}
std::vector<std::int64_t> of_lines(const Cost& made) {
    std::vector<std::int64_t> all;
    for (const cost::Line& one : made.lines)
        all.push_back(one.amount.minor);
    return all;
}

void check_adds_up(const Cost& made, const formula::Formula& formula) {
    Amount kinds, phases, lines, units, held;
    quantity::Percent shares;
    for (int i = 0; i < cost::kKinds; ++i) {
        kinds = kinds + made.kinds[i];
        shares = shares + made.shares[i];
    }
    for (const cost::Phase& phase : made.phases) {
        phases = phases + phase.amount;
        Amount of_phase;
        for (std::size_t i = 0; i < made.lines.size(); ++i)
            if (formula.lines[i].phase == phase.id) of_phase = of_phase + made.lines[i].amount;
        CHECK(of_phase == phase.amount);
    }
    for (const cost::Units& one : made.units) {
        units = units + one.amount;
        held = held + one.containers;
        CHECK(one.low.minor * one.count + one.more == one.amount.minor);
        CHECK(one.more < one.count);
    }
    for (const cost::Line& one : made.lines)
        lines = lines + one.amount;
    CHECK(kinds == made.amount);
    CHECK(phases == made.kinds[0]);
    CHECK(lines == made.kinds[0]);
    if (made.amount.minor > 0) CHECK(shares == quantity::kHundred);
    if (!made.units.empty()) {
        CHECK(units == made.amount);
        CHECK(held == made.kinds[static_cast<int>(Kind::containers)]);
    }
}

}  // namespace

TEST_CASE("cost: a salve by hand, in cents: bought by weight and volume in euros, pounds, yen and dollars") {
    // wax (980 + 120) / 500 g × 50 g = 110; oil 650 p × 1.16 / 920 g × 149 g = 122.115; vitamin E 1200 JPY ×
    // 0.62 / 100 × 100 / 50 g × 1 g = 14.88: 246.995. Tins 1800 / 24 × 6 = 450. Labels 850 / 1.09 / 100 × 6 =
    // 46.789. Work 57 min at 18 an hour = 1710. Overhead 250 + 5 % of 2453.784 = 372.689. In all 2826.473.
    // Rounded down 246 + 450 + 46 + 1710 + 372, and the two cents left go to the largest rests, 0.995 and
    // 0.789. Lines: 110, 122, 14 and one cent to 0.88.
    const Cost made = costed(salve(), book_of(kSalvePrices));
    CHECK(made.total == grams(200));
    CHECK(made.amount == Amount{2826});
    CHECK(minors(made) == std::vector<std::int64_t>{247, 450, 47, 0, 1710, 372});
    CHECK(of_lines(made) == std::vector<std::int64_t>{110, 122, 15});
    CHECK(made.phases[2] == cost::Phase{"C", {15}});
    CHECK(made.lost == Amount{25});  // 20 g of 200 g
    CHECK(made.shares[4] == quantity::Percent{605000});
    REQUIRE(made.units.size() == 1);
    CHECK(made.units[0].one == Amount{471});
    CHECK(made.units[0].more == 0);
    CHECK(made.known == quantity::kHundred);
    CHECK(made.missing.empty());
    CHECK(made.rates.size() == 3);
    check_adds_up(made, salve().formula);
}

TEST_CASE("cost: a balm by hand, in yen, with dinars of three places, two containers and what has no price") {
    // shea 14.99 EUR × 164.75 / 1000 g × 200 g = 493.921; castor 1.250 KWD × 505.5 / 237.5 g × 175 g =
    // 465.592; glycerin 980 / 500 g × 120 g = 235.2: 1194.713. Jars 1500 / 10 × 5 = 750, tins not known.
    // Boxes 1000 / 50 × 12 = 240. Work 36 min at 1500 = 900. Overhead 10 % = 308.471. In all 3393.184. By
    // units: jars 750 + 1140 × 5/12 + 1503.184 × 250/425 = 2109.226, tins 1140 × 7/12 + 1503.184 × 175/425 =
    // 1283.958.
    const Cost made = costed(balm(), book_of(kBalmPrices));
    CHECK(made.total == grams(500));
    CHECK(made.amount == Amount{3393});
    CHECK(minors(made) == std::vector<std::int64_t>{1195, 750, 0, 240, 900, 308});
    CHECK(of_lines(made) == std::vector<std::int64_t>{494, 466, 235, 0});
    REQUIRE(made.units.size() == 2);
    CHECK(made.units[0] == cost::Units{"jar_60ml", 5, grams(50), {2109}, {422}, {421}, 4, {750}});
    CHECK(made.units[1] == cost::Units{"tin_30ml", 7, grams(25), {1284}, {183}, {183}, 3, {0}});
    CHECK(made.lost == Amount{179});  // 75 g of 500 g
    CHECK(made.known == percent(99));
    REQUIRE(made.missing.size() == 2);
    CHECK(made.missing[0] == cost::Missing{Kind::ingredients, 3, "Grandmother's drops", Why::no_density});
    CHECK(made.missing[1] == cost::Missing{Kind::containers, 1, "tin_30ml", Why::no_price});
    check_adds_up(made, balm().formula);
}

TEST_CASE("cost: coverage falls with every price that is taken away, and says which") {
    price::Book book = book_of(kSalvePrices);
    quantity::Percent before = costed(salve(), book).known;
    std::size_t missing = 0;
    for (int i = 0; i < 3; ++i) {
        book = *price::without_pack(book, 0);
        const Cost made = costed(salve(), book);
        CHECK(made.known < before);
        CHECK(made.missing.size() == ++missing);
        check_adds_up(made, salve().formula);
        before = made.known;
    }
    CHECK(before == quantity::Percent{});
    book.rates.clear();
    book.hour.reset();
    CHECK(costed(salve(), book).missing.size() == missing + 2);  // of the labels, and of the work
}

TEST_CASE("cost: every level adds to the one above it, whatever is paid and filled") {
    chance::Generator chance(7);
    const char* const currencies[] = {"EUR", "JPY", "KWD"};
    for (int round = 0; round < 300; ++round) {
        price::Book book = book_of(round % 2 ? kSalvePrices : kBalmPrices);
        workspace::Recipe recipe = round % 2 ? salve() : balm();
        const auto up_to = [&](std::int64_t most) {
            return 1 + static_cast<std::int64_t>(chance.below(static_cast<std::uint64_t>(most)));
        };
        book.currency = currencies[round % 3];
        for (const char* from : currencies)
            for (const char* to : {"EUR", "JPY", "KWD", "GBP", "USD"})
                if (std::string(from) != to)
                    book = *price::with_rate(book,
                                             {from, to, up_to(50'000), up_to(5'000'000), "2026-11-01", ""});
        for (price::Pack& pack : book.packs) {
            pack.paid = {up_to(100'000)};
            pack.size = pack.unit == price::Unit::pieces ? up_to(50) * decimal::kOne : up_to(20'000'000);
        }
        book.overhead_percent = up_to(500'000);
        for (batch::Containers& one : recipe.batch.containers)
            one.count = up_to(40), one.fill_g = quantity::Mass{up_to(900'000)};
        check_adds_up(costed(recipe, book), recipe.formula);
    }
}

TEST_CASE("cost: without a batch a kilogram is reckoned, its ingredients alone") {
    workspace::Recipe recipe = salve();
    recipe.batch = {};
    const Cost made = costed(recipe, book_of(kSalvePrices));
    CHECK_FALSE(made.batch);
    CHECK(made.total == grams(1000));
    CHECK(made.amount == Amount{1235});  // five times 246.995
    CHECK(made.units.empty());
    CHECK(made.missing.empty());
}

TEST_CASE("cost: a made part without a price costs what is put into it, by its yield") {
    workspace::Recipe recipe = salve();
    catalogue::Ingredient infusion;
    infusion.id = infusion.name = "own_infusion";
    infusion.own = true;
    infusion.parts = {{"own_oil", percent(100)}};
    infusion.made = catalogue::Made{catalogue::MadeAs::infusion, percent(80), {"Dried petals"}};
    recipe.own.push_back(infusion);
    recipe.formula.lines[1].ingredient = "own_infusion";
    const Cost made = costed(recipe, book_of(kSalvePrices));
    CHECK(made.lines[1].amount == Amount{153});  // 122.115 / 0.8
    CHECK(made.lines[1].known == quantity::kHundred);
    REQUIRE(made.missing.size() == 1);
    CHECK(made.missing[0] == cost::Missing{Kind::ingredients, 1, "Dried petals", Why::strained_out});
    price::Book priced = book_of(kSalvePrices);
    priced.packs.push_back(priced.packs[0]);
    priced.packs.back().what = "own_infusion";
    CHECK(costed(recipe, priced).missing.empty());
}

TEST_CASE("cost: no currency, no cost; and no sum runs over") {
    const auto none = tried(salve(), {});
    REQUIRE_FALSE(none);
    CHECK(none.error().place == "prices.currency");
    price::Book book = book_of(kSalvePrices);
    book.packs[0].size = 1;
    book.packs[0].paid = {money::kMostMinor};
    const auto large = tried(salve(), book);
    REQUIRE_FALSE(large);
    CHECK(large.error().code == Code::number_too_large);
}

TEST_CASE("cost: a workshop is shared out over its heads, and what is bought whole costs more") {
    workspace::Recipe recipe = salve();
    recipe.batch.amount = batch::Amount::containers;
    workshop::Plan plan;
    plan.people = 7;
    plan.stations = 2;
    const workshop::Recipe of{recipe.formula, recipe.steps, recipe.batch, recipe.product};
    const auto known = catalogue::with_own(shipped::presets().catalogue, recipe.own);
    const auto made = workshop::of(of, plan, known);
    REQUIRE(made);
    const price::Book book = book_of(kSalvePrices);
    const auto head = workshop::per_head(of, "", plan, *made, known, book);
    REQUIRE(head);
    CHECK(head->low.minor * 7 + head->more == head->used.minor);
    CHECK(head->more < 7);
    REQUIRE(head->bought);
    CHECK(*head->bought > head->used);
    CHECK(head->known == quantity::kHundred);
    // By hand: what all kits take of each line, and a tin and a label for each unit.
    double cents = static_cast<double>(made->units) * (75 + 850 / 1.09 / 100);
    const double each[] = {1100.0 / 500, 650 * 1.16 / 920, 744.0 / 50};
    for (const workshop::Total& total : made->totals)
        cents += decimal::to_double(total.need.grid) * each[total.line];
    CHECK(static_cast<double>(head->used.minor) == doctest::Approx(cents).epsilon(0.0005));
}

TEST_CASE("cost: the command line says it as JSON, and refuses prices with their place") {
    const std::string recipe = store::write_recipe(salve());
    const auto ask = [&](const std::string& prices, const std::string& more = "") {
        return door::run("cost", R"({"recipe":)" + recipe + R"(,"prices":)" + prices + more + "}",
                         shipped::presets());
    };
    const door::Answer said = ask(kSalvePrices, R"(,"workshop":{"people":4,"stations":2})");
    REQUIRE_MESSAGE(said.exit_code == 0, said.err);
    const auto tree = store_json::parse(said.out);
    REQUIRE(tree);
    CHECK((*tree)["amount"] == 28.26);
    CHECK((*tree)["kinds"][1]["amount"] == 4.5);
    CHECK((*tree)["lines"][1]["amount"] == 1.22);
    CHECK((*tree)["units"][0]["one"] == 4.71);
    CHECK((*tree)["at_least"] == false);
    CHECK((*tree)["workshop"]["people"] == 4);
    const auto refused = [&](const char* from, const char* to, const char* place) {
        std::string prices = kSalvePrices;
        REQUIRE(prices.find(from) != std::string::npos);
        prices.replace(prices.find(from), std::string(from).size(), to);
        const door::Answer answer = ask(prices);
        CHECK(answer.exit_code == 2);
        CHECK_MESSAGE(answer.err.rfind(place, 0) == 0, answer.err);
    };
    refused(R"("currency":"EUR","day")", R"("currency":"EURO","day")", "prices.packs[0].currency: ");
    refused("9.8,", "9.805,", "prices.packs[0].price: ");
    refused("\"price\":1200", "\"price\":1200.5", "prices.packs[2].price: ");
    refused("\"g\":500", "\"g\":0", "prices.packs[0].size: ");
    refused("\"gives\":1.16", "\"gives\":0", "prices.rates[0].gives: ");
    refused("2026-10-10", "2026-13-10", "prices.packs[1].day: ");
    refused("\"supplier\"", "\"seller\"", "prices.packs[1].seller: ");
    refused("\"hour\"", "\"an_hour\"", "prices.an_hour: ");
    refused("\"pieces\":24", "\"pieces\":2.5", "prices.packs[3].pieces: ");
    refused("\"currency\":\"EUR\",\n", "", "prices.currency: ");
}

}  // namespace test_cost
