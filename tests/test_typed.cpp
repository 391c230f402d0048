// What number fields make of what is typed. How a number is read at all is tested in test_decimal.cpp and
// test_quantity.cpp; here, which kinds of text each field takes and what it says to the others.
#include <cstdint>
#include <optional>
#include <string_view>

#include "doctest/doctest.h"
#include "engine/batch.h"
#include "web/typed.h"

namespace test_typed {

using result::Code;

namespace {

using Read = result::Result<std::int64_t> (*)(std::string_view);

struct Good {
    std::string_view text;
    std::int64_t grid;
};
struct Refused {
    std::string_view text;
    Code code;
};

template <std::size_t kGood, std::size_t kBad>
void check(Read read, const Good (&good)[kGood], const Refused (&bad)[kBad]) {
    for (const Good& one : good) {
        CAPTURE(one.text);
        const auto number = read(one.text);
        REQUIRE(number.ok());
        CHECK(*number == one.grid);
    }
    for (const Refused& one : bad) {
        CAPTURE(one.text);
        const auto number = read(one.text);
        REQUIRE_FALSE(number.ok());
        CHECK(number.error().code == one.code);
    }
}

}  // namespace

TEST_CASE("a percent field takes a number, with or without its sign, and arithmetic") {
    CHECK(*typed::percent("12.5") == 125000);
    CHECK(*typed::percent("12,5 %") == 125000);
    CHECK(*typed::percent("250/12") == 208333);
}

TEST_CASE("percents run from nothing to the whole") {
    constexpr Good kGood[] = {{"0", 0},          {"100", 1000000},   {"21%", 210000},    {"0,0001", 1},
                              {"½", 5000},       {"10+2.5", 125000}, {"100-78", 220000}, {"3×4", 120000},
                              {"(2+4)/8", 7500}, {" 8 ", 80000}};
    constexpr Refused kBad[] = {{"", Code::number_empty},
                                {"   ", Code::number_empty},
                                {"-1", Code::number_negative},
                                {"100.0001", Code::number_too_large},
                                {"60+60", Code::number_too_large},
                                {"1-2", Code::number_negative},
                                {"1.234,5", Code::number_ambiguous},
                                {"12..3", Code::number_malformed},
                                {"1e2", Code::number_malformed},
                                {"nan", Code::number_malformed},
                                {"twelve", Code::number_malformed},
                                {"5/0", Code::division_by_zero},
                                {"0.00001", Code::number_too_fine}};
    check(typed::percent, kGood, kBad);
}

TEST_CASE("a weight field takes units of weight and turns them into grams") {
    // 1 oz = 28.3495 g, 1 lb = 453.592 g: 16 CFR 500.19(a).
    constexpr Good kGood[] = {
        {"250", 2500000},   {"250 g", 2500000}, {"0,5 kg", 5000000},  {"2 oz", 566990}, {"1 lb", 4535920},
        {"250/12", 208333}, {"14*4.5", 630000}, {"14 × 4,5", 630000}, {"500 mg", 5000}, {"1 000", 10000000}};
    constexpr Refused kBad[] = {{"", Code::number_empty},
                                {"0", Code::batch_zero},
                                {"0 g", Code::batch_zero},
                                {"-3", Code::number_negative},
                                {"3 mL", Code::unit_unknown},
                                {"3 cups", Code::unit_unknown},
                                {"1,234.5", Code::number_ambiguous},
                                {"g", Code::number_malformed},
                                {"1e400", Code::unit_unknown},
                                {"99999999999", Code::number_too_large}};
    check(typed::mass, kGood, kBad);
}

TEST_CASE("a weight goes up to one tonne, beyond which no batch is made") {
    CHECK(*typed::mass("1 000 kg") == batch::kLargest.grid);
    CHECK(typed::mass("1000000.0001").error().code == Code::number_too_large);
    CHECK(typed::mass_or_none("2 000 kg").error().code == Code::number_too_large);
}

TEST_CASE("a loss leaves something over") {
    CHECK(*typed::loss("0") == 0);
    CHECK(*typed::loss("99.9999 %") == 999999);
    CHECK(typed::loss("100").error().code == Code::loss_invalid);
    CHECK(typed::loss("101").error().code == Code::number_too_large);
}

TEST_CASE("where a weight may be missing, nothing is a weight too") {
    CHECK(*typed::mass_or_none("0") == 0);
    CHECK(*typed::mass_or_none("2 oz") == 566990);
    CHECK(typed::mass_or_none("-1").error().code == Code::number_negative);
}

TEST_CASE("a count is whole") {
    constexpr Good kGood[] = {
        {"14", 140000}, {"0", 0}, {"2*7", 140000}, {"10000", 100000000}, {"28/2", 140000}};
    constexpr Refused kBad[] = {{"1.5", Code::number_too_fine},      {"7/2", Code::number_too_fine},
                                {"-1", Code::number_negative},       {"10001", Code::number_too_large},
                                {"a dozen", Code::number_malformed}, {"", Code::number_empty}};
    check(typed::whole, kGood, kBad);
}

TEST_CASE("temperatures run from a freezer to hot oil") {
    constexpr Good kGood[] = {
        {"70", 700000}, {"-18", -180000}, {"−18", -180000}, {"72,5", 725000}, {"300", 3000000}};
    constexpr Refused kBad[] = {
        {"301", Code::number_too_large}, {"-51", Code::number_negative}, {"hot", Code::number_malformed}};
    check(typed::celsius, kGood, kBad);
}

TEST_CASE("words lose the space around them, not the space between") {
    CHECK(typed::words("  Orchard lip balm \n") == "Orchard lip balm");
    CHECK(typed::words("balm") == "balm");
    CHECK(typed::words(" \t ").empty());
    CHECK(typed::words("").empty());
}

TEST_CASE("a refusal tells the place and the text, so that its sentence can show them") {
    const auto number = typed::mass("3 cups");
    REQUIRE_FALSE(number.ok());
    CHECK(number.error().place == "character 3");
    CHECK(number.error().detail == "cups");
}

}  // namespace test_typed
