// How high letters must be, by panel and market.
#include "doctest/doctest.h"
#include "engine/decimal.h"
#include "engine/type_height.h"
#include "shipped.h"

namespace test_type_height {

using decimal::kOne;
using market::Market;
using type_height::Panel;
using type_height::Shape;

namespace {

constexpr std::int64_t kInch = 254'000;  // mm on the grid

std::int64_t inches(double count) {
    return static_cast<std::int64_t>(count * kInch + 0.5);
}

type_height::Heights us(const Panel& panel) {
    return type_height::heights(Market::us, type_height::area(panel).value(), {}, panel.moulded, 0);
}

std::int64_t square_inches_10000(const Panel& panel) {  // rounded to 0.0001 square inch
    return decimal::scale_nearest(type_height::area(panel).value(), kOne, 6'451'600);
}

}  // namespace

TEST_CASE("a tube 2 in high and 2 in round has a panel of 1.6 square inches") {
    // EX2-3; 21 CFR 701.10, 701.13.
    const Panel tube{Shape::cylinder, inches(2), inches(2)};
    CHECK(square_inches_10000(tube) == 16'000);
    CHECK(us(tube).net->printed == "1/16 in");
    CHECK_FALSE(us(tube).at_the_foot);
}

TEST_CASE("the lid of a tin is a panel: 2.5 in across asks for 1/16 in, 2.6 in for 1/8 in") {
    // EX2-4.
    const Panel small{Shape::round_top, 0, inches(2.5)}, large{Shape::round_top, 0, inches(2.6)};
    CHECK(square_inches_10000(small) == 49'087);
    CHECK(square_inches_10000(large) == 53'093);
    CHECK(us(small).net->printed == "1/16 in");
    CHECK_FALSE(us(small).at_the_foot);
    CHECK(us(large).net->printed == "1/8 in");
    CHECK(us(large).at_the_foot);
}

TEST_CASE("the steps of 21 CFR 701.13(i): up to and with 5, 25, 100 and 400 square inches") {
    // EX2-5.
    CHECK(us({Shape::cylinder, inches(3), inches(10)}).net->printed == "1/8 in");  // 12 square inches
    struct Step {
        std::int64_t side;  // inches; the other is 5
        const char* at;
        const char* beyond;
    };
    for (const Step& step : {Step{1, "1/16 in", "1/8 in"},
                             {5, "1/8 in", "3/16 in"},
                             {20, "3/16 in", "1/4 in"},
                             {80, "1/4 in", "1/2 in"}}) {
        const Panel exact{Shape::rectangle, 5 * kInch, step.side * kInch};
        CHECK(us(exact).net->printed == step.at);
        // The least step of the grid more.
        CHECK(us({Shape::rectangle, 5 * kInch, step.side * kInch + 1}).net->printed == step.beyond);
        CHECK(us({Shape::rectangle, 5 * kInch, step.side * kInch - 1}).net->printed == step.at);
    }
    CHECK(us({Shape::rectangle, kInch, kInch, true}).net->printed == "1/8 in");  // moulded: 1/16 in more
}

TEST_CASE("Canada's steps: up to and with 32, 258, 645 and 2580 square centimetres") {
    // CA-NQ-size, CA-NQ-small: C.R.C., c. 417, s. 14 to 16.
    const auto ca = [](std::int64_t area) { return type_height::heights(Market::ca, area, {}, false, 0); };
    constexpr std::int64_t kCm = 100 * kOne;
    CHECK(ca(32 * kCm).net->mm == 16'000);
    CHECK(ca(32 * kCm + 1).net->mm == 32'000);
    CHECK(ca(258 * kCm).net->mm == 32'000);
    CHECK(ca(258 * kCm + 1).net->mm == 64'000);
    CHECK(ca(645 * kCm).net->mm == 64'000);
    CHECK(ca(645 * kCm + 1).net->mm == 95'000);
    CHECK(ca(2580 * kCm + 1).net->mm == 127'000);
    CHECK(ca(10 * kCm).list->mm == 8'000);
    CHECK(ca(10 * kCm + 1).list->mm == 16'000);
    CHECK(ca(kCm).bold);
}

TEST_CASE("the US list may be 1/32 in where less than 12 square inches can carry letters") {
    const auto list = [](std::optional<std::int64_t> area) {
        return type_height::heights(Market::us, kOne, area, false, 0).list->printed;
    };
    CHECK(list(12 * 6'451'600 - 1) == "1/32 in");
    CHECK(list(12 * 6'451'600) == "1/16 in");
    CHECK(list({}) == "1/16 in");
}

TEST_CASE("EU and GB go by the nominal amount, from memory; their list has no height in the law") {
    const auto eu = [](std::int64_t net) { return type_height::heights(Market::eu, kOne, {}, false, net); };
    CHECK(eu(50 * kOne).net->printed == "2 mm");
    CHECK(eu(50 * kOne + 1).net->printed == "3 mm");
    CHECK(eu(200 * kOne).net->printed == "3 mm");
    CHECK(eu(1000 * kOne).net->printed == "4 mm");
    CHECK(eu(1000 * kOne + 1).net->printed == "6 mm");
    CHECK(eu(kOne).net->standing == source::Standing::memory);
    CHECK_FALSE(eu(kOne).list.has_value());
}

TEST_CASE("a panel without size, or of ten metres, has no area") {
    CHECK_FALSE(type_height::area({Shape::rectangle, 0, kOne}).has_value());
    CHECK_FALSE(type_height::area({Shape::cylinder, kOne, -1}).has_value());
    CHECK_FALSE(type_height::area({Shape::round_top, 0, INT64_MAX}).has_value());
    CHECK(type_height::area({Shape::other, 100 * kOne, 100 * kOne}).value() == 4000 * kOne);
}

TEST_CASE("every source of a height is in the bibliography, standing as it stands there") {
    for (const auto& [market, id] : market::kAll) {
        const type_height::Heights heights = type_height::heights(market, kOne, {}, false, kOne);
        for (const auto& height : {heights.net, heights.list, heights.warnings}) {
            if (!height) continue;
            const source::Entry* entry = catalogue::find_source(shipped::presets().catalogue, height->source);
            REQUIRE(entry != nullptr);
            CHECK(entry->standing == height->standing);
        }
    }
}

}  // namespace test_type_height
