#include "engine/measures.h"

#include "doctest/doctest.h"
#include "engine/catalogue.h"
#include "shipped.h"

namespace test_measures {

namespace {

measures::Span count(std::int64_t whole) {
    return {whole * decimal::kOne, whole * decimal::kOne, whole * decimal::kOne};
}
const measures::Measure& measure(std::string_view id) {
    const measures::Measure* found = measures::find(id);
    REQUIRE(found != nullptr);
    return *found;
}

}  // namespace

// 16 CFR 500.19(a): 1 oz = 28.3495 g, 1 lb = 453.592 g, 1 fl oz = 29.5735 mL.
TEST_CASE("an ounce, a pound and a fluid ounce hold what 16 CFR 500.19 says, without error") {
    CHECK(measures::times(count(1), measure("ounce")) == measures::Span{283495, 283495, 283495});
    CHECK(measures::times(count(1), measure("pound")).usual == 4535920);
    CHECK(measures::times(count(1), measure("fluid_ounce")).usual == 295735);
    CHECK(measure("ounce").firm());
}

// 21 CFR 101.9(b)(5)(viii): teaspoon 5 mL, tablespoon 15 mL, cup 240 mL. Family Physician 1994;6:7-8:
// teaspoons held 2.42 to 7.71 mL.
TEST_CASE("a spoon holds its published volume, with the spread that was measured") {
    CHECK(measures::times(count(1), measure("teaspoon")) == measures::Span{24200, 50000, 77100});
    CHECK(measures::times(count(1), measure("tablespoon")).usual == 150000);
    CHECK(measures::times(count(1), measure("cup")).usual == 2400000);
    CHECK_FALSE(measure("tablespoon").firm());
    CHECK(measure("tablespoon").standing == source::Standing::estimate);
}

// Tisserand Institute, drop size: 20 to 40 drops a mL.
TEST_CASE("twenty drops are half a millilitre to one, usually two thirds") {
    CHECK(measures::times(count(20), measure("drop")) == measures::Span{5000, 6667, 10000});
}

// T22, by the same source: 5 drops of an oil of 0.90 g/mL in a jar of 30 g.
TEST_CASE("T22: five drops are 0.1125 to 0.225 g, and of 30 g that is 0.375 to 0.75 %") {
    const measures::Span grams = measures::grams_of(measures::times(count(5), measure("drop")), {9000});
    CHECK(grams == measures::Span{1125, 1500, 2250});
    CHECK(decimal::scale_nearest(grams.low, quantity::kHundred.grid, quantity::grams(30).grid) == 3750);
    CHECK(decimal::scale_nearest(grams.usual, quantity::kHundred.grid, quantity::grams(30).grid) == 5000);
    CHECK(decimal::scale_nearest(grams.high, quantity::kHundred.grid, quantity::grams(30).grid) == 7500);
}

TEST_CASE("a volume becomes grams through a density, with its spread") {
    CHECK(measures::grams_of({5000, 6667, 10000}, {9000}) == measures::Span{4500, 6000, 9000});
}

TEST_CASE("the longest name that stands at the beginning is the measure") {
    CHECK(measures::at_start("fl oz castor oil").measure->id == "fluid_ounce");
    CHECK(measures::at_start("oz. castor oil").bytes == 3);
    CHECK(measures::at_start("g").measure->id == "gram");
    CHECK(measures::at_start("glycerin").measure == nullptr);
    CHECK(measures::at_start("% w/w").bytes == 5);
    CHECK(measures::at_start("T olive oil").measure->id == "tablespoon");
    CHECK(measures::at_start("t olive oil").measure->id == "teaspoon");
    CHECK(measures::at_start("the").measure == nullptr);
    CHECK(measures::at_start("").measure == nullptr);
    CHECK(measures::at_start("Esslöffel Öl").measure->id == "tablespoon");
}

TEST_CASE("every measure has figures in order, and a loose one says where they come from") {
    for (const measures::Measure& one : measures::all()) {
        CAPTURE(std::string(one.id));
        const bool has_figures = one.kind == measures::Kind::mass || one.kind == measures::Kind::volume;
        CHECK((one.usual > 0) == has_figures);
        CHECK(one.low <= one.usual);
        CHECK(one.usual <= one.high);
        if (!one.firm()) CHECK((!one.source.empty() || one.standing == source::Standing::estimate));
        const source::Entry* entry =
            catalogue::find_source(shipped::presets().catalogue, std::string(one.source));
        if (one.source.empty()) continue;
        REQUIRE(entry != nullptr);
        CHECK(entry->standing == one.standing);
    }
}

}  // namespace test_measures
