// The date or the open jar: 30 months decide.
#include "doctest/doctest.h"
#include "engine/durability.h"

namespace test_durability {

using durability::Keeping;
using durability::Mark;
using market::Market;

namespace {

Mark mark(std::int64_t months, Market market = Market::eu) {
    return durability::of(market, {months, 12, false}, "2026-11-26").mark;
}

}  // namespace

TEST_CASE("24 and 30 months are a date, 31 months the months after opening") {
    // EX-18; Regulation (EC) 1223/2009, Art. 19(1)(c).
    CHECK(mark(24) == Mark::best_before);
    CHECK(mark(30) == Mark::best_before);
    CHECK(mark(31) == Mark::after_opening);
    CHECK(durability::of(Market::eu, {31, 12, false}, "").months == 12);
    for (const Market market : {Market::gb, Market::ni}) {
        CHECK(mark(30, market) == Mark::best_before);
        CHECK(mark(31, market) == Mark::after_opening);
    }
}

TEST_CASE("the month on the label is over within the time that was found") {
    using durability::last_month_within;
    CHECK(last_month_within("2026-11-26", 24) == "10/2028");  // the end of November lies beyond
    CHECK(last_month_within("2026-11-30", 24) == "11/2028");  // made on a month's last day
    CHECK(last_month_within("2026-11-01", 24) == "10/2028");
    CHECK(last_month_within("2026-01-15", 12) == "12/2026");
    CHECK(last_month_within("2028-02-29", 12) == "02/2029");
    CHECK(last_month_within("2028-02-28", 12) == "02/2029");
    CHECK(last_month_within("2027-02-28", 12) == "01/2028");  // that February has a day more
    CHECK(last_month_within("yesterday", 12).empty());
    CHECK(last_month_within("2026-13-01", 12).empty());
    CHECK(last_month_within("2026-11-26", 1'000'000).empty());
}

TEST_CASE("what is not said is not guessed") {
    CHECK(durability::of(Market::eu, {}, "2026-11-26").mark == Mark::unknown);
    CHECK(durability::of(Market::eu, {36, {}, false}, "2026-11-26").mark == Mark::opened_unknown);
    CHECK(durability::of(Market::eu, {36, {}, true}, "2026-11-26").mark == Mark::none_needed);
    CHECK(durability::of(Market::eu, {24, {}, false}, "").date.empty());
}

TEST_CASE("no rule that asks for a date is known for the US and Canada") {
    CHECK(mark(24, Market::us) == Mark::none_asked);
    CHECK(mark(24, Market::ca) == Mark::none_asked);
    CHECK(durability::of(Market::us, {24, 12, false}, "").standing == source::Standing::memory);
}

}  // namespace test_durability
