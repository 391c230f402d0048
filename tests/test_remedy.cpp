// Remedies for lines that are too small for their scale: what they say, and that each one, taken, works.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "shipped.h"
#include "support.h"

namespace test_remedy {

using quantity::grams;
using quantity::Mass;
using quantity::Percent;
using remedy::Kind;
using remedy::Remedy;
using support::line;
using support::rest;
using workspace::Recipe;

namespace {

const catalogue::Catalogue& shelf() {
    return shipped::presets().catalogue;
}

// 0.4 % of vitamin E in 50 g on a scale of 0.1 g: 0.2 g, two steps.
Recipe balm() {
    Recipe recipe;
    recipe.formula = support::formula_of(
        {line("beeswax_yellow", 200000, "A"), rest("sunflower_ho", "B"), line("tocopherol", 4000, "C")});
    recipe.formula.phases[0].hold_c = 750000;
    recipe.formula.phases[1].hold_c = 700000;
    recipe.formula.phases[2].add_below_c = 650000;
    recipe.batch = support::grams(500000, 1000);
    return recipe;
}

const Remedy* find(const analysis::Analysis& report, Kind kind, std::size_t line) {
    for (const Remedy& one : report.remedies)
        if (one.kind == kind && one.line == line) return &one;
    return nullptr;
}

bool reads_badly(const analysis::Analysis& report, std::size_t line) {
    for (const finding::Finding& one : report.findings)
        if (one.line == line &&
            (one.code == finding::Code::line_error_large || one.code == finding::Code::line_rounds_to_zero))
            return true;
    return false;
}

// Every remedy of the recipe, taken by itself, removes its finding and makes no other of its kind.
int check_all(const Recipe& recipe, const catalogue::Catalogue& shelf, const scales::Bench& bench) {
    const auto report = analysis::of(recipe, shelf, bench);
    const auto with_own = catalogue::with_own(shelf, recipe.own);
    for (const Remedy& one : report.remedies) {
        CAPTURE(static_cast<int>(one.kind));
        CAPTURE(one.line);
        CHECK(reads_badly(report, one.line));
        const auto taken = remedy::take(recipe, one, with_own, "Mixed ahead");
        REQUIRE(taken.ok());
        const auto after = analysis::of(*taken, shelf, bench);
        REQUIRE(after.batch.ok());
        CHECK_FALSE(reads_badly(after, one.line));
        for (std::size_t i = 0; i < recipe.formula.lines.size(); ++i)
            if (!reads_badly(report, i)) CHECK_FALSE(reads_badly(after, i));
        if (one.kind == Kind::bigger_batch) {
            CHECK(after.batch->asked == one.total);
            CHECK(after.batch->total >= one.total);
        }
        if (one.kind == Kind::mix_ahead) {
            CHECK(after.batch->lines[one.line].grams == one.mix->weigh);
            CHECK(after.batch->lines[one.mix->oil].grams == one.mix->oil_left);
            CHECK(one.mix->small + one.mix->with >= one.mix->weigh);
            const Mass division = after.batch->lines[one.line].place.division;
            CHECK(scales::reads(one.mix->small, division));
            CHECK(scales::reads(one.mix->with, division));
            CHECK(one.mix->small.grid % division.grid == 0);
            CHECK(one.mix->with.grid % division.grid == 0);
        }
    }
    return static_cast<int>(report.remedies.size());
}

}  // namespace

TEST_CASE("a line of two steps is offered a bigger batch and a mix ahead, worked out in full") {
    const auto report = analysis::of(balm(), shelf());
    CHECK(reads_badly(report, 2));
    const Remedy* bigger = find(report, Kind::bigger_batch, 2);
    REQUIRE(bigger != nullptr);
    CHECK(bigger->total == grams(500));  // 2000 × 0.1 / 0.4
    const Remedy* mix = find(report, Kind::mix_ahead, 2);
    REQUIRE(mix != nullptr);
    CHECK(mix->mix->oil == 1);
    CHECK(mix->mix->strength == quantity::percent(10));
    CHECK(mix->mix->small == grams(2));
    CHECK(mix->mix->with == grams(18));
    CHECK(mix->mix->weigh == grams(2));         // 4 % of 50 g
    CHECK(mix->mix->oil_left == Mass{380000});  // 39.8 g less the 1.8 g that the mix brings
}

TEST_CASE("a mix taken leaves the composition as it was") {
    const Recipe before = balm();
    const auto report = analysis::of(before, shelf());
    const auto taken = remedy::take(before, *find(report, Kind::mix_ahead, 2), shelf(), "Vitamin E 10 %");
    REQUIRE(taken.ok());
    REQUIRE(taken->own.size() == 1);
    const catalogue::Ingredient& mix = taken->own[0];
    CHECK(mix.id == "mix_tocopherol");
    CHECK(mix.parts == std::vector<catalogue::Part>{{"tocopherol", quantity::percent(10)},
                                                    {"sunflower_ho", quantity::percent(90)}});
    const auto percents = formula::percents(taken->formula);
    REQUIRE(percents.ok());
    CHECK((*percents)[2] == quantity::percent(4));
    CHECK((*percents)[1] == Percent{796000 - 36000});
    CHECK(workspace::checked(*taken).ok());
}

TEST_CASE("a stated oil line gives way as the rest line does") {
    Recipe recipe = balm();
    recipe.formula.lines[1].rest = false;
    recipe.formula.lines[1].percent = {796000};
    const auto report = analysis::of(recipe, shelf());
    const auto taken = remedy::take(recipe, *find(report, Kind::mix_ahead, 2), shelf(), "Mixed");
    CHECK(taken->formula.lines[1].percent == Percent{760000});
    CHECK(formula::percents(taken->formula).ok());
}

TEST_CASE("no mix is offered where the rest is water or solid, nor for what does not go into oil") {
    Recipe recipe = balm();
    recipe.formula.lines[1].ingredient = "water";
    CHECK(find(analysis::of(recipe, shelf()), Kind::mix_ahead, 2) == nullptr);
    recipe.formula.lines[1].ingredient = "shea";
    CHECK(find(analysis::of(recipe, shelf()), Kind::mix_ahead, 2) == nullptr);
    recipe = balm();
    recipe.formula.lines[2].ingredient = "sodium_benzoate";
    CHECK(find(analysis::of(recipe, shelf()), Kind::mix_ahead, 2) == nullptr);
    CHECK(find(analysis::of(recipe, shelf()), Kind::bigger_batch, 2) != nullptr);
    recipe.formula.lines[2].ingredient = "";
    recipe.formula.lines[2].name = "Something of Grandmother's";
    CHECK(find(analysis::of(recipe, shelf()), Kind::mix_ahead, 2) == nullptr);
}

TEST_CASE("an oil of the line's own phase comes before the rest line") {
    Recipe recipe = balm();
    recipe.formula.lines.push_back(line("rosehip", 100000, "C"));
    CHECK(find(analysis::of(recipe, shelf()), Kind::mix_ahead, 2)->mix->oil == 3);
}

TEST_CASE("much of a cold mix is said to cool a batch that sets, a little is not") {
    CHECK_FALSE(find(analysis::of(balm(), shelf()), Kind::mix_ahead, 2)->mix->cooled_c.has_value());
    Recipe recipe = balm();
    recipe.batch = support::grams(100000, 1000);  // 0.04 g: a mix of 20 % of the batch is needed
    const analysis::Analysis now = analysis::of(recipe, shelf());
    const Remedy* mix = find(now, Kind::mix_ahead, 2);
    REQUIRE(mix != nullptr);
    CHECK(mix->mix->hot_c == 650000);
    CHECK(mix->mix->strength == quantity::percent(2));
    CHECK(mix->mix->cooled_c == 560000);  // 65 − 20 % of 45
}

TEST_CASE("a finer scale of the bench is offered where it does") {
    const scales::Bench bench{{{"", {1000}, {}}, {"", {100}, {}}, {"", {10}, {}}}, {}};
    const auto report = analysis::of(balm(), shelf(), bench);
    const Remedy* finer = find(report, Kind::finer_scale, 2);
    REQUIRE(finer != nullptr);
    CHECK(finer->division == Mass{100});  // 0.2 g are 20 steps of 0.01 g: the finest is not needed
}

TEST_CASE("from stock no bigger batch is offered") {
    Recipe recipe = balm();
    recipe.batch.amount = batch::Amount::stock;
    recipe.batch.stock = {{"beeswax_yellow", grams(10)}};
    const auto report = analysis::of(recipe, shelf());
    CHECK(reads_badly(report, 2));
    CHECK(find(report, Kind::bigger_batch, 2) == nullptr);
    CHECK(find(report, Kind::mix_ahead, 2) != nullptr);
}

TEST_CASE("a bigger batch keeps the loss that was reckoned with") {
    Recipe recipe = balm();
    recipe.batch = support::containers({{"lip_tube_round", 10, {}, {}}}, 1000);
    const auto report = analysis::of(recipe, shelf());
    const auto taken = remedy::take(recipe, *find(report, Kind::bigger_batch, 2), shelf(), "");
    CHECK(taken->batch.amount == batch::Amount::grams);
    CHECK(taken->batch.loss == batch::kUsualLoss);
    CHECK(taken->batch.containers == recipe.batch.containers);
}

TEST_CASE("every remedy of the demonstration recipes removes its finding, whatever the scale") {
    int offered = 0;
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        for (const std::int64_t division : {10, 1000, 50000}) {
            Recipe tried = recipe;
            tried.batch.division = {division};
            for (const std::int64_t whole : {0, 20, 100, 900}) {
                if (whole > 0) tried.batch = support::grams(whole * 10000, division);
                offered += check_all(tried, shelf(), {});
                offered +=
                    check_all(tried, shelf(), {{{"", {100}, grams(200)}, {"", {10000}, grams(5000)}}, {}});
            }
        }
    }
    CHECK(offered > 100);
}

TEST_CASE("every remedy of random recipes removes its finding") {
    chance::Generator chance(23);
    int offered = 0;
    for (int i = 0; i < 200; ++i) {
        CAPTURE(i);
        const Recipe recipe = support::random_recipe(chance, shelf());
        scales::Bench bench;
        if (chance.below(2) == 0)
            bench = {{{"", {100}, grams(200)}, {"", {10000}, grams(5000)}}, scales::Jug{"", grams(120)}};
        offered += check_all(recipe, shelf(), bench);
    }
    CHECK(offered > 100);
}

TEST_CASE("what is mixed ahead adds up and reads on the scale") {
    const auto report = analysis::of(balm(), shelf());
    const auto taken = remedy::take(balm(), *find(report, Kind::mix_ahead, 2), shelf(), "Mixed");
    const auto after = analysis::of(*taken, shelf());
    REQUIRE(after.ahead.size() == 1);
    CHECK(after.ahead[0] == remedy::Ahead{2, grams(20), {grams(2), grams(18)}});
}

}  // namespace test_remedy
