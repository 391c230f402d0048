// Scales: who carries and shows what, the smallest load, and the published floors of weighing.
#include <cmath>
#include <vector>

#include "doctest/doctest.h"
#include "engine/scales.h"

namespace test_scales {

using quantity::grams;
using quantity::Mass;
using quantity::Percent;
using scales::Bench;
using scales::Place;

namespace {

constexpr Mass kFine{100}, kCoarse{10000};  // 0.01 g and 1 g

Bench two(Mass fine_carries, Mass coarse_carries) {
    return {{{"coarse", kCoarse, coarse_carries}, {"fine", kFine, fine_carries}}, {}};
}

bool near(double value, double wanted, double tolerance) {
    return std::abs(value - wanted) <= tolerance;
}

}  // namespace

TEST_CASE("a light line goes to the fine scale, one too heavy for it to the coarse one") {
    const auto places = scales::assign({grams(5), grams(250)}, kFine, two(grams(200), grams(5000)));
    CHECK(places[0] == Place{1, kFine, false, grams(5), true});
    CHECK(places[1] == Place{0, kCoarse, false, grams(250), true});
}

TEST_CASE("of the scales that show the division the coarsest is taken, and it is read in that division") {
    Bench bench = two({}, {});
    bench.scales.push_back({"finest", {10}, grams(20)});
    CHECK(scales::assign({grams(5)}, kFine, bench)[0].scale == 1u);
    CHECK(scales::assign({grams(5)}, kCoarse, bench)[0].scale == 0u);
    const Place tenths = scales::assign({grams(5)}, Mass{1000}, bench)[0];  // 0.1 g is shown by 0.01 g
    CHECK(tenths.scale == 1u);
    CHECK(tenths.division == Mass{1000});
}

TEST_CASE("where no scale is as fine as asked, the finest there is decides") {
    CHECK(scales::assign({grams(5)}, Mass{10}, two({}, {}))[0].division == kFine);
}

TEST_CASE("weighed into a jug, the jug and what it holds count") {
    Bench bench = two(grams(200), grams(5000));
    bench.jug = scales::Jug{"tall", grams(150)};
    const auto places = scales::assign({grams(40), grams(20), grams(400)}, kFine, bench);
    CHECK(places[0] == Place{1, kFine, true, grams(190), true});
    CHECK(places[1] == Place{1, kFine, false, grams(20), true});  // 210 g in the jug: by itself, in a dish
    CHECK(places[2] == Place{0, kCoarse, true, grams(610), true});
}

TEST_CASE("what no scale carries stays with the strongest and is said") {
    const Place place = scales::assign({grams(6000)}, kFine, two(grams(200), grams(5000)))[0];
    CHECK(place.scale == 0u);
    CHECK_FALSE(place.carried);
    CHECK(place.load == grams(6000));
}

TEST_CASE("a bench without scales carries anything in the division asked") {
    CHECK(scales::assign({grams(6000)}, kFine, {})[0] == Place{{}, kFine, false, grams(6000), true});
}

TEST_CASE("a line needs 20 divisions, and the batch 2000 divisions over its percent") {
    CHECK(scales::least_load(Mass{1000}) == grams(2));
    CHECK(scales::reads(grams(2), Mass{1000}));
    CHECK_FALSE(scales::reads(Mass{19999}, Mass{1000}));
    CHECK(scales::least_batch(Mass{1000}, {4000}) == grams(500));  // 2000 × 0.1 / 0.4
    CHECK(scales::least_batch(kFine, {3000}) == Mass{666'667});    // 66.6667 g
    CHECK(scales::least_batch(kCoarse, quantity::percent(2)) == grams(1000));
}

TEST_CASE("the smallest batches of the rounding section come out, taken by half a division") {
    // methods 4.1 (b): batch ≥ 100·d/(2·t·p), half a division against t: 5 % there is 10 % of one division
    CHECK(near(decimal::to_double(scales::least_batch(Mass{1000}, {3000}, quantity::percent(10)).grid), 333.3,
               0.05));
    CHECK(near(decimal::to_double(scales::least_batch(kFine, {3000}, quantity::percent(10)).grid), 33.33,
               0.005));
}

TEST_CASE("the floor of USP <41> is 820 divisions at 0.10 %") {
    // USP <41> Balances: minimum weight 2000·s, s at least 0.41 d; its example s = 0.00015 g gives 0.300 g
    CHECK(near(scales::least_weight(0.0001, 0.1, 0.00015), 0.300, 1e-12));
    CHECK(near(scales::least_weight(0.001, 0.1, 0.0), 0.82, 1e-12));
    CHECK(near(scales::least_weight(0.001, 0.1, 0.0001), 0.82, 1e-12));  // better than the scale can show
    CHECK(near(scales::rounding_sd(1), 0.4082, 0.00005));
}

TEST_CASE("the smallest weights at 0.1, 1 and 5 % are those of the table") {
    struct Row {  // methods 4.2, computed there as 2·max(s, 0.41 d)/t
        double division, tenth, one, five;
    };
    for (const Row& row : {Row{1, 820, 82, 16.4}, Row{0.1, 82, 8.2, 1.64}, Row{0.01, 8.2, 0.82, 0.164},
                           Row{0.001, 0.82, 0.082, 0.0164}}) {
        CAPTURE(row.division);
        CHECK(near(scales::least_weight(row.division, 0.1), row.tenth, row.tenth * 1e-9));
        CHECK(near(scales::least_weight(row.division, 1), row.one, row.one * 1e-9));
        CHECK(near(scales::least_weight(row.division, 5), row.five, row.five * 1e-9));
    }
}

TEST_CASE("rounding, repeatability and linearity add in quadrature") {
    CHECK(near(scales::uncertainty(0.6, 0, 0), 0.6 / std::sqrt(6.0), 1e-12));
    CHECK(near(scales::uncertainty(0, 0.3, 0), 0.3, 1e-12));
    CHECK(near(scales::uncertainty(0, 0, 0.3), 0.3 / std::sqrt(3.0), 1e-12));
    CHECK(near(scales::uncertainty(0.06, 0.02, 0.03), std::sqrt(0.0006 + 0.0004 + 0.0003), 1e-12));
}

TEST_CASE("what the division leaves uncertain of each percent is as the table has it") {
    // methods 4.3, computed there: 36/13.2/10.2/0.6 g, u = d/√6, k = 2
    const std::vector<Mass> weights = {{360000}, {132000}, {102000}, {6000}};
    struct Row {
        Mass division;
        double percents[4];
    };
    for (const Row& row :
         {Row{kCoarse, {1.515, 1.181, 1.199, 1.347}}, Row{{1000}, {0.1515, 0.1181, 0.1198, 0.1347}},
          Row{kFine, {0.0152, 0.0118, 0.0120, 0.0135}}}) {
        CAPTURE(row.division.grid);
        const auto found = scales::percent_uncertainty(weights, std::vector<Mass>(4, row.division));
        for (std::size_t i = 0; i < 4; ++i) {
            CAPTURE(i);
            const double last_place = row.division == kCoarse ? 0.0011 : 0.00016;
            CHECK(near(decimal::to_double(found[i].grid), row.percents[i], last_place));
        }
    }
}

TEST_CASE("a line that nothing is weighed for adds no uncertainty of its own") {
    const auto found = scales::percent_uncertainty({grams(50), {}}, {kFine, kFine});
    CHECK(found[0] == Percent{0});
    CHECK(found[1] == Percent{0});
}

}  // namespace test_scales
