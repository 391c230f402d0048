// Batch numbers by a pattern of one's own: made, and never twice.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/record_number.h"

namespace test_record_number {

using record::next_number;

namespace {

constexpr const char* kDay = "2026-03-07";
constexpr const char* kTitle = "Orchard lip balm";

}  // namespace

TEST_CASE("the usual number is the day and a count that begins anew each day") {
    CHECK(next_number("", kDay, kTitle, {}) == "20260307-1");
    CHECK(next_number("", kDay, kTitle, {"20260307-1", "20260307-2"}) == "20260307-3");
    CHECK(next_number("", "2026-03-08", kTitle, {"20260307-1"}) == "20260308-1");
}

TEST_CASE("a pattern is plain text with places: year, month, day, count, letters of the title") {
    CHECK(next_number("[letters][short year][month]/[two-digit count]", kDay, kTitle, {}) == "OLB2603/01");
    CHECK(next_number("[three-digit count] [year]", kDay, kTitle, {"001 2026"}) == "002 2026");
    CHECK(next_number("Lot [day].[month]. [count]", kDay, kTitle, {}) == "Lot 07.03. 1");
    CHECK(next_number("[letters]-[count]", kDay, "apple's own", {}) == "AO-1");
}

TEST_CASE("a pattern without a count gets one where the number is taken") {
    CHECK(next_number("[year]-[month]-[day]", kDay, kTitle, {}) == "2026-03-07");
    CHECK(next_number("[year]-[month]-[day]", kDay, kTitle, {"2026-03-07"}) == "2026-03-07-2");
}

TEST_CASE("a number is taken in whatever writing") {
    CHECK(record::same_number("OLB 26-1", "olb26-1"));
    CHECK_FALSE(record::same_number("OLB26-1", "OLB261"));
    CHECK(next_number("[letters] [count]", kDay, kTitle, {"olb1"}) == "OLB 2");
}

TEST_CASE("brackets that are no place stay; a number is never longer than it may be, nor taken") {
    CHECK(next_number("[tin][count]", kDay, kTitle, {}) == "[tin]1");
    const std::string wordy(60, 'x');
    const std::string first = next_number(wordy + "[count]", kDay, kTitle, {});
    CHECK(first.size() == record::kMostNumberBytes);
    const std::string second = next_number(wordy + "[count]", kDay, kTitle, {first});
    CHECK(second.size() <= record::kMostNumberBytes);
    CHECK_FALSE(record::same_number(first, second));
}

TEST_CASE("of many batches of one day no two have one number") {
    for (const char* pattern : {"", "[day]", "[two-digit count]", "x"}) {
        std::vector<std::string> taken;
        for (int i = 0; i < 120; ++i) {
            const std::string number = next_number(pattern, kDay, kTitle, taken);
            for (const std::string& before : taken)
                REQUIRE_FALSE(record::same_number(before, number));
            taken.push_back(number);
        }
    }
}

}  // namespace test_record_number
