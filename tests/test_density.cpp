// Density of a blend by additive volumes, with how much of the weight it is known for.
#include "doctest/doctest.h"
#include "engine/density.h"
#include "support.h"

namespace test_density {

using quantity::Percent;
using support::line;

namespace {

density::Blend blend(const formula::Formula& formula) {
    return density::of(formula, formula::percents(formula).value(), support::shelf());
}

}  // namespace

TEST_CASE("half oil of 0.92 and half water of 1.00 weigh 0.9583 g a millilitre") {
    // 1 / (0.5 / 0.92 + 0.5 / 1.00) = 0.958333…
    const auto half = blend(support::formula_of({line("sunflower", 500000), line("water", 500000)}));
    CHECK(half.density.grid == 9583);
    CHECK(half.known == quantity::kHundred);
}

TEST_CASE("lines without a density leave the rest to speak, and the share that speaks is said") {
    const auto partly = blend(support::formula_of({line("sunflower", 300000), line("oat", 700000)}));
    CHECK(partly.density.grid == 9200);
    CHECK(partly.known == quantity::percent(30));
}

TEST_CASE("where nothing has a density, nothing is known") {
    CHECK(blend(support::formula_of({line("oat", 1000000)})) == density::Blend{});
    CHECK(blend(support::formula_of({line("unheard_of", 1000000)})) == density::Blend{});
    CHECK(blend(support::formula_of({line("sunflower", 0), line("oat", 1000000)})) == density::Blend{});
}

TEST_CASE("a density of nothing or less is taken as not known") {
    auto shelf = support::shelf();
    shelf.ingredients[5].density->value.density = {0};
    const auto formula = support::formula_of({line("sunflower", 1000000)});
    CHECK(density::of(formula, formula::percents(formula).value(), shelf) == density::Blend{});
}

}  // namespace test_density
