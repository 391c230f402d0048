#include "engine/formula_amounts.h"

#include "doctest/doctest.h"
#include "support.h"

namespace test_formula_amounts {

using result::Code;

TEST_CASE("grams read back as percents that add to exactly 100") {
    const auto thirds =
        support::formula_of({support::line("wax", 0), support::line("shea", 0), support::line("jojoba", 0)});
    const auto set = formula::set_amounts(thirds, {10000, 10000, 10000});
    REQUIRE(set.ok());
    CHECK(set->lines[0].percent.grid + set->lines[1].percent.grid + set->lines[2].percent.grid == 1000000);
    CHECK(set->lines[0].percent.grid == 333334);
    CHECK(formula::percents(*set).ok());
}

TEST_CASE("the rest line stays the rest line and comes to its amount") {
    const auto balm = support::formula_of({support::line("wax", 200000), support::rest("jojoba")});
    const auto set = formula::set_amounts(balm, {250000, 750000});
    REQUIRE(set.ok());
    CHECK(set->lines[1].rest);
    CHECK((*formula::percents(*set))[1].grid == 750000);
    CHECK(set->lines[0].percent.grid == 250000);
}

TEST_CASE("amounts that are no formula are refused with their place") {
    const auto balm = support::formula_of({support::line("wax", 200000), support::line("jojoba", 800000)});
    CHECK(formula::set_amounts(balm, {1}).error().code == Code::line_missing);
    CHECK(formula::set_amounts(balm, {1, -1}).error() ==
          result::Error{Code::number_negative, "lines[1]", "-0.0001"});
    CHECK(formula::set_amounts(balm, {0, 0}).error().code == Code::formula_empty);
    CHECK(formula::set_amounts({}, {}).error().code == Code::formula_empty);
}

TEST_CASE("a locked line keeps its percent: amounts that would change it are refused, others are taken") {
    auto balm = support::formula_of({support::line("wax", 200000), support::line("jojoba", 800000)});
    balm.lines[0].locked = true;
    CHECK(formula::set_amounts(balm, {30, 70}).error() == result::Error{Code::line_locked, "lines[0]", ""});
    CHECK(formula::set_amounts(balm, {20, 80}).ok());
}

}  // namespace test_formula_amounts
