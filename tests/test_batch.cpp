// Batches: published cases of rounding, containers and loss, caps, and what is refused.
#include <cmath>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/batch.h"
#include "support.h"

namespace test_batch {

using batch::Containers;
using quantity::Mass;
using quantity::Percent;
using result::Code;
using support::line;
using support::rest;

namespace {

formula::Formula of_percents(const std::vector<std::int64_t>& grid) {
    std::vector<formula::Line> lines;
    for (const auto percent : grid)
        lines.push_back(line("wax", percent));
    return support::formula_of(lines);
}

result::Result<batch::Batch> make(const formula::Formula& formula, const batch::Request& request) {
    return batch::make(formula, request, support::shelf(), "salve");
}

formula::Formula balm() {
    return support::formula_of({line("wax", 250000), line("shea", 250000), rest("sunflower")});
}

// What a fill is, without its volumes.
batch::Fill weight_of(batch::Fill fill) {
    fill.holds = fill.cold = fill.warm = std::nullopt;
    return fill;
}
batch::Fill fill(const std::string& id, std::int64_t count, Mass each, batch::FillFrom from) {
    batch::Fill made;
    made.container = id;
    made.count = count;
    made.each = each;
    made.from = from;
    return made;
}

std::vector<std::int64_t> grams(const batch::Batch& batch) {
    std::vector<std::int64_t> all;
    for (const auto& one : batch.lines)
        all.push_back(one.grams.grid);
    return all;
}

}  // namespace

TEST_CASE("250 g of a balm come out in grams that add up") {
    const auto made = make(balm(), support::grams(2500000, 100));
    REQUIRE(made.ok());
    CHECK(made->total == quantity::grams(250));
    CHECK(grams(*made) == std::vector<std::int64_t>{625000, 625000, 1250000});
    CHECK(made->lines[2].percent == quantity::percent(50));
    CHECK(made->lines[2].actual == quantity::percent(50));
    CHECK(made->lines[2].error_grid == 0);
}

// Percent times batch, then split 50:30:20 (arithmetic).
TEST_CASE("T24: 1.5 % of oils in 250 g are 3.75 g, split 1.875, 1.125 and 0.75 g") {
    const auto made = make(
        support::formula_of({line("wax", 7500), line("shea", 4500), line("jojoba", 3000), rest("sunflower")}),
        support::grams(2500000, 10));
    REQUIRE(made.ok());
    CHECK(made->lines[0].grams.grid == 18750);
    CHECK(made->lines[1].grams.grid == 11250);
    CHECK(made->lines[2].grams.grid == 7500);
}

TEST_CASE("the small batches of the rounding table come out as worked there") {
    // Worked by largest remainder in methods, section 4.1 (computed there; grams in tenths, errors in
    // hundredths of %).
    struct Row {
        std::vector<std::int64_t> percents;
        std::int64_t batch_g, division_grid;
        std::vector<double> grams, errors;
    };
    const std::vector<Row> rows = {
        {{333300, 333300, 333400}, 100, 10000, {33, 33, 34}, {-0.99, -0.99, 1.98}},
        {{334000, 333000, 333000}, 10, 1000, {3.4, 3.3, 3.3}, {1.80, -0.90, -0.90}},
        {{400000, 250000, 200000, 120000, 20000, 7000, 3000},
         30,
         1000,
         {12, 7.5, 6, 3.6, 0.6, 0.2, 0.1},
         {0, 0, 0, 0, 0, -4.76, 11.11}},
        {{400000, 250000, 200000, 120000, 20000, 7000, 3000},
         30,
         10000,
         {12, 7, 6, 4, 1, 0, 0},
         {0, -6.67, 0, 11.11, 66.67, -100, -100}},
        {{450000, 225000, 225000, 80000, 15000, 5000},
         57,
         1000,
         {25.6, 12.8, 12.8, 4.6, 0.9, 0.3},
         {-0.19, -0.19, -0.19, 0.88, 5.26, 5.26}},
        {{285000, 285000, 285000, 145000}, 10, 10000, {3, 3, 3, 1}, {5.26, 5.26, 5.26, -31.03}},
    };
    for (const Row& row : rows) {
        CAPTURE(row.batch_g);
        const auto made =
            make(of_percents(row.percents), support::grams(row.batch_g * 10000, row.division_grid));
        REQUIRE(made.ok());
        for (std::size_t i = 0; i < row.grams.size(); ++i) {
            CAPTURE(i);
            CHECK(made->lines[i].grams.grid == std::llround(row.grams[i] * 10000));
            CHECK(std::abs(decimal::to_double(made->lines[i].error_grid) - row.errors[i]) < 0.00501);
        }
    }
}

TEST_CASE("a batch that is no multiple of the division is rounded up to one and tells what was asked") {
    const auto made = make(balm(), support::grams(100005, 1000));
    REQUIRE(made.ok());
    CHECK(made->asked == Mass{100005});
    CHECK(made->total == Mass{101000});
    CHECK(make(balm(), support::grams(1, 10000))->total == quantity::grams(1));
}

TEST_CASE("14 tubes of 4.5 g with 5 % lost take 66.32 g") {
    // 14 x 4.5 / 0.95 = 66.31578…, up to the next 0.0001 g, then up to the next 0.01 g
    const auto made = make(balm(), support::containers({{"tube", 14, {}, {}}}, 100));
    REQUIRE(made.ok());
    CHECK(made->fill == quantity::grams(63));
    CHECK(made->asked == Mass{663158});
    CHECK(made->total == Mass{663200});
    CHECK(made->loss == quantity::percent(5));
    CHECK(made->loss_usual);
    REQUIRE(made->fills.size() == 1);
    CHECK(weight_of(made->fills[0]) == fill("tube", 14, {45000}, batch::FillFrom::usual_weight));
}

TEST_CASE("a fill is taken as said by weight, as said by volume, or by the usual weight") {
    batch::Request request = support::containers(
        {{"tube", 2, Mass{51000}, {}}, {"tin", 3, {}, quantity::percent(90)}, {"jar", 1, {}, {}}}, 100);
    request.loss = Percent{0};
    const auto made = make(of_percents({1000000}), request);  // wax, 0.96 g/mL
    REQUIRE(made.ok());
    batch::Fill tins = fill("tin", 3, {259200}, batch::FillFrom::said_volume);  // 27 mL
    tins.share = quantity::percent(90);
    CHECK(weight_of(made->fills[0]) == fill("tube", 2, {51000}, batch::FillFrom::said_weight));
    CHECK(weight_of(made->fills[1]) == tins);
    CHECK(weight_of(made->fills[2]) == fill("jar", 1, {550000}, batch::FillFrom::usual_weight));  // upper end
    CHECK(made->fill == Mass{102000 + 777600 + 550000});
    CHECK(made->total == made->fill);
    CHECK_FALSE(made->loss_usual);
}

TEST_CASE("a container that the catalogue does not have may be filled by weight") {
    CHECK(make(balm(), support::containers({{"my_pot", 4, Mass{250000}, {}}}, 100)).ok());
}

TEST_CASE("a mass is what is to be weighed: the loss is inside it") {
    batch::Request request = support::grams(1000000, 100);
    request.loss = quantity::percent(4);
    const auto made = make(balm(), request);
    CHECK(made->total == quantity::grams(100));
    CHECK(made->fill == quantity::grams(96));
    CHECK(make(balm(), support::grams(1000000, 100))->fill == quantity::grams(100));
}

TEST_CASE("what cannot be weighed out is refused with its place") {
    using result::Error;
    const auto fault = [](const batch::Request& request) { return make(balm(), request).error(); };
    const auto with = [](Containers one) { return support::containers({one}, 100); };
    batch::Request people = support::grams(10000, 100), stock = people, loss = people;
    people.amount = batch::Amount::people;
    stock.amount = batch::Amount::stock;
    CHECK(fault(batch::Request{}) == Error{Code::amount_missing, "batch", ""});
    CHECK(fault(people) == Error{Code::batch_zero, "batch.people", ""});
    CHECK(fault(stock) == Error{Code::amount_missing, "batch.stock", ""});
    CHECK(fault(support::containers({}, 100)) == Error{Code::amount_missing, "batch.containers", ""});
    CHECK(fault(support::grams(0, 100)) == Error{Code::batch_zero, "batch.grams", ""});
    CHECK(fault(support::grams(-1, 100)).code == Code::batch_zero);
    CHECK(fault(support::grams(batch::kLargest.grid + 1, 100)) ==
          Error{Code::batch_too_large, "batch.grams", "1000000"});
    CHECK(fault(support::grams(10000, 0)) == Error{Code::division_invalid, "batch.division_g", "0"});
    CHECK(fault(support::grams(10000, -100)).code == Code::division_invalid);
    loss.loss = quantity::kHundred;
    CHECK(fault(loss) == Error{Code::loss_invalid, "batch.loss_percent", "100"});
    loss.loss = Percent{-1};
    CHECK(fault(loss).code == Code::loss_invalid);
    CHECK(fault(with({"urn", 1, {}, {}})) == Error{Code::container_unknown, "batch.containers[0].id", "urn"});
    CHECK(fault(with({"tin", 1, {}, {}})) == Error{Code::fill_unknown, "batch.containers[0].id", "tin"});
    CHECK(fault(with({"tube", 1, {}, quantity::percent(90)})).code == Code::fill_unknown);
    CHECK(fault(with({"tube", 0, {}, {}})) == Error{Code::batch_zero, "batch.containers[0].count", ""});
    CHECK(fault(with({"tube", 10001, {}, {}})).code == Code::too_many);
    CHECK(fault(with({"tube", 1, Mass{0}, {}})).place == "batch.containers[0].fill_g");
    CHECK(fault(with({"jar", 1, {}, Percent{0}})).place == "batch.containers[0].fill_percent");
    CHECK(fault(with({"jar", 1, {}, Percent{1000001}})).code == Code::number_too_large);
    CHECK(fault(with({"tube", 1000, Mass{200'000'000}, {}})) ==
          Error{Code::batch_too_large, "batch.containers", "1000000"});
    batch::Request lossy = with({"tube", 50, Mass{200'000'000}, {}});
    CHECK(fault(lossy) == Error{Code::batch_too_large, "batch.loss_percent", "1000000"});
    CHECK(make(of_percents({500000}), support::grams(10000, 100)).error().code == Code::sum_not_hundred);
}

TEST_CASE("a fill by volume needs a density") {
    const auto made = make(support::formula_of({line("oat", 1000000)}),
                           support::containers({{"jar", 1, {}, quantity::percent(90)}}, 100));
    CHECK(made.error() == result::Error{Code::density_unknown, "batch.containers[0].fill_percent", ""});
}

namespace {

// Wax rounds up from 0.285 g to 0.3 g at 0.1 g unless a cap forbids it: 57 g, 0.5 %.
formula::Formula with_drop() {
    return support::formula_of({line("sunflower", 450000), line("shea", 225000), line("mystery", 225000),
                                line("oat", 80000), line("water", 15000), line("own", 5000)});
}

catalogue::Catalogue with_cap(const std::string& key, Percent cap) {
    catalogue::Ingredient own;
    own.id = "own";
    own.max_percent[key] = cap;
    return catalogue::with_own(support::shelf(), {own});
}

}  // namespace

TEST_CASE("a capped line is never rounded above its cap") {
    const batch::Request request = support::grams(570000, 1000);
    CHECK(batch::make(with_drop(), request, support::shelf(), "salve")->lines[5].grams == Mass{3000});
    for (const std::string key : {"salve", "5A"}) {
        CAPTURE(key);
        const auto made = batch::make(with_drop(), request, with_cap(key, {5000}), "salve");
        REQUIRE(made.ok());
        CHECK(made->lines[5].grams == Mass{2000});
        CHECK(grams(*made) == std::vector<std::int64_t>{257000, 128000, 128000, 46000, 9000, 2000});
    }
}

TEST_CASE("a cap for another product does not count") {
    const batch::Request request = support::grams(570000, 1000);
    CHECK(batch::make(with_drop(), request, with_cap("scrub", {5000}), "salve")->lines[5].grams ==
          Mass{3000});
    CHECK(batch::make(with_drop(), request, with_cap("5A", {5000}), "scrub")->lines[5].grams == Mass{3000});
}

TEST_CASE("of two caps that apply the smaller one counts") {
    catalogue::Ingredient own;
    own.id = "own";
    own.max_percent["salve"] = {20000};
    own.max_percent["5A"] = {5000};
    const auto made = batch::make(with_drop(), support::grams(570000, 1000),
                                  catalogue::with_own(support::shelf(), {own}), "salve");
    CHECK(made->lines[5].grams == Mass{2000});
}

TEST_CASE("a line whose percent is over its cap is refused, whatever the rounding") {
    const auto made =
        batch::make(with_drop(), support::grams(570000, 1000), with_cap("salve", {4999}), "salve");
    CHECK(made.error() == result::Error{Code::cap_leaves_no_room, "lines[5].percent", "0.4999"});
}

TEST_CASE("where no other line can take what a capped one leaves, the batch is refused") {
    const auto formula = support::formula_of({line("own", 505000), line("wax", 495000)});
    auto catalogue = with_cap("salve", {505000});
    catalogue::Ingredient wax;
    wax.id = "wax";
    wax.max_percent["salve"] = {495000};
    catalogue = catalogue::with_own(catalogue, {wax});
    CHECK(batch::make(formula, support::grams(100000, 10000), catalogue, "salve").error() ==
          result::Error{Code::cap_leaves_no_room, "batch.division_g", "50.5"});
    CHECK(batch::make(formula, support::grams(100000, 500), catalogue, "salve").ok());
}

TEST_CASE("two lines of one ingredient share its cap") {
    const auto formula =
        support::formula_of({line("own", 5000), line("sunflower", 990000), line("own", 5000)});
    const auto uncapped = batch::make(formula, support::grams(570000, 1000), support::shelf(), "salve");
    CHECK(uncapped->lines[0].grams + uncapped->lines[2].grams == Mass{6000});
    const auto made = batch::make(formula, support::grams(570000, 1000), with_cap("salve", {10000}), "salve");
    REQUIRE(made.ok());
    CHECK(made->lines[0].grams + made->lines[2].grams == Mass{5000});  // 1 % of 57 g is 0.57 g
}

}  // namespace test_batch
