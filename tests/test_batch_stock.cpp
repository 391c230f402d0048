// As far as what is at hand goes.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/batch.h"
#include "support.h"

namespace test_batch_stock {

using batch::Stock;
using batch::Supply;
using quantity::grams;
using quantity::Mass;
using result::Code;
using support::line;
using support::rest;

namespace {

formula::Formula balm() {
    return support::formula_of({line("wax", 200000), line("shea", 300000), rest("sunflower")});
}

result::Result<batch::Batch> from(const formula::Formula& formula, std::vector<Stock> stock,
                                  std::int64_t division = 1000,
                                  const catalogue::Catalogue& shelf = support::shelf()) {
    batch::Request request;
    request.amount = batch::Amount::stock;
    request.stock = std::move(stock);
    request.division = {division};
    return batch::make(formula, request, shelf, "salve");
}

const Supply& supply(const batch::Batch& made, const std::string& ingredient) {
    for (const Supply& one : made.reach->supplies)
        if (one.ingredient == ingredient) return one;
    FAIL("there is no such supply");
    return made.reach->supplies.front();
}

}  // namespace

TEST_CASE("the ingredient that runs out first says how far it goes") {
    const auto made = from(balm(), {{"wax", grams(14)}, {"shea", grams(100)}, {"sunflower", grams(200)}});
    REQUIRE(made.ok());
    CHECK(made->total == grams(70));  // 14 g of wax at 20 %
    CHECK(supply(*made, "wax").first_out);
    CHECK(supply(*made, "wax").left == grams(0));
    CHECK_FALSE(supply(*made, "shea").first_out);
    CHECK(supply(*made, "shea").left == grams(79));
    CHECK(supply(*made, "sunflower").need == grams(35));  // the rest line counts
    CHECK(made->lines[2].grams == grams(35));
}

TEST_CASE("what is not said does not limit and stands as not known") {
    const auto made = from(balm(), {{"shea", grams(30)}});
    CHECK(made->total == grams(100));
    CHECK_FALSE(supply(*made, "wax").have.has_value());
    CHECK_FALSE(supply(*made, "wax").left.has_value());
}

TEST_CASE("stock is found by id, by name and by what a line says, and added up") {
    formula::Line own = line("", 100000);
    own.name = "Pot marigold oil";
    const auto formula = support::formula_of({own, rest("sunflower")});
    const auto made = from(
        formula, {{"sunflower", grams(50)}, {"sunflower OIL", grams(40)}, {"Pot marigold oil", grams(9)}});
    CHECK(made->total == grams(90));
    CHECK(supply(*made, "sunflower").have == grams(90));
}

TEST_CASE("what no line takes is told and does not limit") {
    const auto made = from(balm(), {{"wax", grams(14)}, {"jojoba", Mass{10}}});
    CHECK(made->total == grams(70));
    CHECK(made->reach->not_needed == std::vector<std::string>{"jojoba"});
    CHECK(from(balm(), {{"jojoba", grams(10)}}).error() ==
          result::Error{Code::stock_not_needed, "batch.stock", "jojoba"});
}

TEST_CASE("nothing, or too little for one step of the scale, is refused by name") {
    CHECK(from(balm(), {}).error() == result::Error{Code::amount_missing, "batch.stock", ""});
    CHECK(from(balm(), {{"wax", grams(0)}, {"shea", grams(5)}}).error() ==
          result::Error{Code::stock_too_little, "batch.stock", "wax"});
}

TEST_CASE("the batch is never more than is at hand, whatever the rounding") {
    // 33.3333 % twice of one ingredient: both lines may round up together
    const auto formula =
        support::formula_of({line("wax", 333333), line("shea", 333334), line("wax", 333333)});
    for (std::int64_t have = 1000; have < 40000; have += 700) {
        CAPTURE(have);
        const auto made = from(formula, {{"wax", Mass{have}}});
        if (!made) continue;
        CHECK(*supply(*made, "wax").left >= Mass{0});
        CHECK(supply(*made, "wax").first_out);
        Mass sum;
        for (const auto& one : made->lines)
            sum = sum + one.grams;
        CHECK(sum == made->total);
    }
}

TEST_CASE("one step more would be more than is at hand") {
    chance::Generator chance(11);
    for (int i = 0; i < 300; ++i) {
        const auto formula = support::random_formula(chance, support::shelf());
        std::vector<Stock> stock;
        for (const auto& one : support::shelf().ingredients)
            if (chance.below(3) != 0) stock.push_back({one.id, Mass{chance.between(1, 2'000'000)}});
        const auto made = from(formula, stock, 100);
        if (!made) continue;
        bool limited = false;
        for (const Supply& one : made->reach->supplies) {
            if (one.left) CHECK(*one.left >= Mass{0});
            limited = limited || one.first_out;
        }
        CHECK(limited);
    }
}

TEST_CASE("a made part that is not at hand is looked for as its parts") {
    catalogue::Ingredient mix;
    mix.id = "mix";
    mix.parts = {{"wax", quantity::percent(25)}, {"jojoba", quantity::percent(75)}};
    const auto shelf = catalogue::with_own(support::shelf(), {mix});
    const auto formula = support::formula_of({line("mix", 400000), rest("sunflower")});
    CHECK(from(formula, {{"wax", grams(10)}}, 1000, shelf)->total == grams(100));
    CHECK(from(formula, {{"mix", grams(10)}, {"wax", grams(1)}}, 1000, shelf)->total == grams(25));
}

TEST_CASE("the loss is inside what the stock makes") {
    batch::Request request;
    request.amount = batch::Amount::stock;
    request.stock = {{"wax", grams(20)}};
    request.loss = quantity::percent(4);
    const auto made = batch::make(balm(), request, support::shelf(), "salve");
    CHECK(made->total == grams(100));
    CHECK(made->fill == grams(96));
}

}  // namespace test_batch_stock
