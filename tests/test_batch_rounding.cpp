// One batch on several scales: the lines add up, and no small line pays for a large one.
#include <cstdlib>
#include <vector>

#include "doctest/doctest.h"
#include "engine/batch.h"
#include "support.h"

namespace test_batch_rounding {

using quantity::grams;
using quantity::Mass;
using support::line;
using support::rest;

namespace {

const scales::Bench kBench{{{"fine", {100}, grams(200)}, {"kitchen", {10000}, grams(5000)}}, {}};

Mass sum_of(const batch::Batch& made) {
    Mass sum;
    for (const auto& one : made.lines)
        sum = sum + one.grams;
    return sum;
}

}  // namespace

TEST_CASE("a line too heavy for the fine scale is rounded to the kitchen scale, the small one is not") {
    const auto formula = support::formula_of({line("wax", 223000), line("jojoba", 3300), rest("sunflower")});
    const auto made = batch::make(formula, support::grams(10000000, 100), support::shelf(), "salve", kBench);
    REQUIRE(made.ok());
    CHECK(made->lines[0].place.scale == 1u);
    CHECK(made->lines[1].place.scale == 0u);
    CHECK(made->lines[1].grams == Mass{33000});  // 3.30 g, as it should be
    CHECK(made->lines[0].grams == grams(223));
    CHECK(made->lines[2].grams == grams(774));  // up to the next gram: 996.7 g are left for both
    CHECK(made->total == Mass{10003000});
    CHECK(sum_of(*made) == made->total);
}

TEST_CASE("where all lines go to one scale nothing changes") {
    const auto formula = support::formula_of({line("wax", 223000), line("jojoba", 3300), rest("sunflower")});
    const batch::Request request = support::grams(1000000, 100);
    const auto with = batch::make(formula, request, support::shelf(), "salve", kBench);
    const auto without = batch::make(formula, request, support::shelf(), "salve");
    CHECK(with->total == without->total);
    for (std::size_t i = 0; i < 3; ++i)
        CHECK(with->lines[i].grams == without->lines[i].grams);
}

TEST_CASE("on several scales the lines add up, within a step of what was asked") {
    chance::Generator chance(5);
    const auto shelf = support::shelf();
    for (int i = 0; i < 500; ++i) {
        scales::Bench bench;
        for (const std::int64_t division : {10, 100, 1000, 10000})
            if (chance.below(2) == 0)
                bench.scales.push_back({"", {division}, Mass{division * chance.between(500, 20000)}});
        if (chance.below(3) == 0) bench.jug = scales::Jug{"", Mass{chance.between(0, 3'000'000)}};
        const auto formula = support::random_formula(chance, shelf);
        const batch::Request request = support::grams(chance.between(10'000, 30'000'000), 100);
        const auto made = batch::make(formula, request, shelf, "salve", bench);
        if (!made) {
            CHECK(made.error().code == result::Code::batch_zero);
            continue;
        }
        CAPTURE(i);
        CHECK(sum_of(*made) == made->total);
        std::int64_t coarsest = 100;
        for (const auto& one : made->lines)
            coarsest = std::max(coarsest, one.place.division.grid);
        CHECK(made->total >= made->asked);
        CHECK(made->total.grid - made->asked.grid < 2 * coarsest);
        for (const auto& one : made->lines) {
            CHECK(one.grams.grid % one.place.division.grid == 0);
            const Mass exact = quantity::share_of(made->total, one.percent);
            // A step of its own, and its part of what the other scales' steps leave.
            CHECK(std::abs(one.grams.grid - exact.grid) <= one.place.division.grid + coarsest);
        }
    }
}

TEST_CASE("a capped line keeps its cap on several scales too") {
    catalogue::Ingredient own;
    own.id = "own";
    own.max_percent["salve"] = {3333};
    const auto shelf = catalogue::with_own(support::shelf(), {own});
    const auto formula = support::formula_of({line("wax", 223000), line("own", 3333), rest("sunflower")});
    for (std::int64_t asked = 9'000'000; asked < 9'100'000; asked += 1234) {
        const auto made = batch::make(formula, support::grams(asked, 100), shelf, "salve", kBench);
        REQUIRE(made.ok());
        CHECK(made->lines[1].grams.grid * 1'000'000 <= made->total.grid * 3333);
        CHECK(sum_of(*made) == made->total);
    }
}

}  // namespace test_batch_rounding
