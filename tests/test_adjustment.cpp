// Changes to a whole formula: to 100, give way, firmer, the batch that fits an amount. Figures are worked by
// hand beside each; the catalogue is invented (support.h).
#include <numeric>

#include "doctest/doctest.h"
#include "engine/adjustment.h"
#include "support.h"

namespace test_adjustment {

using adjustment::Change;
using formula::Formula;
using quantity::Mass;
using quantity::Percent;
using result::Code;
using result::Error;
using support::line;
using support::rest;

namespace {

std::int64_t sum(const Formula& formula) {
    return formula::stated_sum(formula).grid;
}

}  // namespace

TEST_CASE("bringing to 100 keeps the proportions of the unlocked lines") {
    // 20 : 30 : 30 of 80 becomes 25 : 37.5 : 37.5 of 100
    const Formula short_one =
        support::formula_of({line("wax", 200000), line("shea", 300000), line("sunflower", 300000)});
    const auto made = adjustment::to_hundred(short_one);
    REQUIRE(made.ok());
    CHECK(made->formula.lines[0].percent == Percent{250000});
    CHECK(made->formula.lines[1].percent == Percent{375000});
    CHECK(made->formula.lines[2].percent == Percent{375000});
    CHECK(made->changes ==
          std::vector<Change>{{0, {200000}, {250000}}, {1, {300000}, {375000}}, {2, {300000}, {375000}}});
}

TEST_CASE("bringing to 100 shares thirds out on the grid and leaves locked lines alone") {
    Formula thirds = support::formula_of({line("wax", 100000), line("shea", 100000), line("jojoba", 100000)});
    CHECK(sum(adjustment::to_hundred(thirds)->formula) == 1000000);
    thirds.lines[0].locked = true;
    const auto made = adjustment::to_hundred(thirds).value();
    CHECK(made.formula.lines[0].percent == Percent{100000});
    CHECK(made.formula.lines[1].percent == Percent{450000});
    CHECK(made.changes.size() == 2);
}

TEST_CASE("with a rest line there is nothing to bring to 100 unless it is below nothing") {
    const Formula good = support::formula_of({line("wax", 200000), rest("sunflower")});
    CHECK(adjustment::to_hundred(good)->changes.empty());
    const Formula over = support::formula_of({line("wax", 600000), line("shea", 900000), rest("sunflower")});
    const auto made = adjustment::to_hundred(over).value();
    CHECK(made.formula.lines[0].percent == Percent{400000});
    CHECK(made.formula.lines[1].percent == Percent{600000});
    CHECK(made.formula.lines[2].rest);
    CHECK(made.changes[2] == Change{2, {-500000}, {0}});
}

TEST_CASE("what cannot be brought to 100 says why") {
    CHECK(adjustment::to_hundred(Formula{}).error().code == Code::formula_empty);
    Formula stuck = support::formula_of({line("wax", 200000), line("shea", 0)});
    stuck.lines[0].locked = true;
    CHECK(adjustment::to_hundred(stuck).error() == Error{Code::nothing_gives_way, "lines", ""});
    Formula heavy = support::formula_of({line("wax", 900000), line("shea", 200000)});
    heavy.lines[0].locked = heavy.lines[1].locked = true;
    CHECK(adjustment::to_hundred(heavy).error() == Error{Code::locked_over_hundred, "lines", "110"});
}

TEST_CASE("one line changes and chosen others give way in proportion") {
    const Formula balm = support::formula_of(
        {line("wax", 200000), line("shea", 300000), line("jojoba", 100000), line("sunflower", 400000)});
    // 20 to 24: the 4 come from 30 and 10 as 3 and 1
    const auto made = adjustment::give_way(balm, 0, {240000}, {1, 2}).value();
    CHECK(made.changes ==
          std::vector<Change>{{0, {200000}, {240000}}, {1, {300000}, {270000}}, {2, {100000}, {90000}}});
    CHECK(sum(made.formula) == 1000000);
    // 20 to 12: the 8 go to them as 6 and 2
    CHECK(adjustment::give_way(balm, 0, {120000}, {1, 2})->formula.lines[1].percent == Percent{360000});
    CHECK(adjustment::give_way(balm, 0, {200000}, {1})->changes.empty());
}

TEST_CASE("the rest line may give way, and stays the rest line") {
    const Formula balm = support::formula_of({line("wax", 200000), line("shea", 300000), rest("sunflower")});
    const auto made = adjustment::give_way(balm, 0, {250000}, {2}).value();
    CHECK(made.formula.lines[2].rest);
    CHECK(made.changes == std::vector<Change>{{0, {200000}, {250000}}, {2, {500000}, {450000}}});
    // Changing the rest line itself: the others take what it leaves, and it is still the rest.
    const auto other = adjustment::give_way(balm, 2, {400000}, {1}).value();
    CHECK(other.formula.lines[2].rest);
    CHECK(other.formula.lines[1].percent == Percent{400000});
    CHECK(formula::percents(other.formula).value()[2] == Percent{400000});
}

TEST_CASE("lines that hold nothing take up what is left evenly") {
    const Formula balm = support::formula_of({line("wax", 1000000), line("shea", 0), line("jojoba", 0)});
    const auto made = adjustment::give_way(balm, 0, {400000}, {1, 2}).value();
    CHECK(made.formula.lines[1].percent == Percent{300000});
    CHECK(made.formula.lines[2].percent == Percent{300000});
}

TEST_CASE("a change that the others cannot give is refused with the most there is") {
    Formula balm =
        support::formula_of({line("wax", 200000), line("shea", 300000), line("sunflower", 500000)});
    CHECK(adjustment::give_way(balm, 0, {600000}, {1}).error() ==
          Error{Code::gives_too_little, "lines[0]", "50"});
    CHECK(adjustment::give_way(balm, 0, {600000}, {}).error().code == Code::nothing_gives_way);
    CHECK(adjustment::give_way(balm, 0, {600000}, {0}).error().code == Code::nothing_gives_way);
    CHECK(adjustment::give_way(balm, 0, {-1}, {1}).error().code == Code::number_negative);
    CHECK(adjustment::give_way(balm, 0, {1000001}, {1}).error().code == Code::number_too_large);
    CHECK(adjustment::give_way(balm, 3, {1}, {1}).error().code == Code::line_missing);
    CHECK(adjustment::give_way(balm, 0, {1}, {3}).error().code == Code::line_missing);
    balm.lines[1].locked = true;
    CHECK(adjustment::give_way(balm, 0, {210000}, {1}).error() == Error{Code::line_locked, "lines[1]", ""});
    CHECK(adjustment::give_way(balm, 1, {210000}, {0}).error() == Error{Code::line_locked, "lines[1]", ""});
}

TEST_CASE("firmer takes wax up by a step at the cost of the oil that is the rest") {
    const Formula balm =
        support::formula_of({line("wax", 200000), line("jojoba", 500000), rest("sunflower")});
    const auto firm = adjustment::firmer(balm, support::shelf(), 2).value();
    CHECK(firm.changes == std::vector<Change>{{0, {200000}, {220000}}, {2, {300000}, {280000}}});
    const auto soft = adjustment::firmer(balm, support::shelf(), -1).value();
    CHECK(soft.changes == std::vector<Change>{{0, {200000}, {190000}}, {2, {300000}, {310000}}});
}

TEST_CASE("where the rest is water the largest oil gives way, and several waxes share the step") {
    const Formula lotion = support::formula_of({line("wax", 30000), line("wax", 10000), line("jojoba", 50000),
                                                line("sunflower", 150000), rest("water", "B")});
    const auto firm = adjustment::firmer(lotion, support::shelf(), 1).value();
    CHECK(firm.changes ==
          std::vector<Change>{{0, {30000}, {37500}}, {1, {10000}, {12500}}, {3, {150000}, {140000}}});
}

TEST_CASE("no wax, no oil, too little of either: said, not guessed") {
    const auto shelf = support::shelf();
    CHECK(adjustment::firmer(support::formula_of({line("shea", 500000), rest("sunflower")}), shelf, 1)
              .error()
              .code == Code::no_wax);
    CHECK(
        adjustment::firmer(support::formula_of({line("wax", 500000), rest("shea")}), shelf, 1).error().code ==
        Code::no_oil);
    const Formula little = support::formula_of({line("wax", 990000), rest("sunflower")});
    CHECK(adjustment::firmer(little, shelf, 2).error() == Error{Code::gives_too_little, "", "100"});
    const Formula soft = support::formula_of({line("wax", 15000), rest("sunflower")});
    CHECK(adjustment::firmer(soft, shelf, -2).error() == Error{Code::gives_too_little, "", "0"});
    Formula locked = support::formula_of({line("wax", 200000), rest("sunflower")});
    locked.lines[0].locked = true;
    CHECK(adjustment::firmer(locked, shelf, 1).error().code == Code::no_wax);
}

TEST_CASE("the batch fits an amount of one line on the scale's own steps") {
    const Formula balm = support::formula_of({line("wax", 210000), rest("sunflower")});
    const Mass most = quantity::grams(1000000);
    // 14 g ÷ 21 % = 66.667 g
    CHECK(adjustment::batch_for(balm, 0, quantity::grams(14), {100}, most).value() == Mass{666700});
    CHECK(adjustment::batch_for(balm, 0, quantity::grams(14), {10000}, most).value() == Mass{670000});
    CHECK(adjustment::batch_for(balm, 1, quantity::grams(79), {100}, most).value() == Mass{1000000});
    CHECK(adjustment::batch_for(balm, 0, {1}, {10000}, most).value() == Mass{10000});
    CHECK(adjustment::batch_for(balm, 0, {0}, {100}, most).error().code == Code::batch_zero);
    CHECK(adjustment::batch_for(balm, 0, quantity::grams(999999), {100}, most).error().code ==
          Code::batch_too_large);
    CHECK(adjustment::batch_for(balm, 0, quantity::grams(1), {0}, most).error().code ==
          Code::division_invalid);
    CHECK(adjustment::batch_for(balm, 2, quantity::grams(1), {100}, most).error().code == Code::line_missing);
    const Formula open = support::formula_of({line("wax", 210000)});
    CHECK(adjustment::batch_for(open, 0, quantity::grams(1), {100}, most).error().code ==
          Code::sum_not_hundred);
}

TEST_CASE("whatever is asked, a formula that adds to 100 still does, and locked lines keep their amount") {
    const auto shelf = support::shelf();
    chance::Generator chance(20261125);
    for (int round = 0; round < 2000; ++round) {
        const Formula before = support::random_formula(chance, shelf);
        const std::size_t line = chance.below(before.lines.size());
        std::vector<std::size_t> givers;
        for (std::size_t i = 0; i < before.lines.size(); ++i)
            if (i != line && chance.below(2) == 0) givers.push_back(i);
        const auto one = adjustment::give_way(before, line, {chance.between(0, 1000000)}, givers);
        const auto two = adjustment::firmer(before, shelf, static_cast<int>(chance.between(-3, 3)));
        for (const auto& made : {one, two}) {
            if (!made.ok()) continue;
            CAPTURE(round);
            CHECK(formula::percents(made->formula).ok());
            for (std::size_t i = 0; i < before.lines.size(); ++i)
                if (before.lines[i].locked && !before.lines[i].rest)
                    CHECK(made->formula.lines[i] == before.lines[i]);
        }
    }
}

}  // namespace test_adjustment
