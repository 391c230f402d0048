// What a sale still needs, by market, and the two sums of law that go with it.
#include <set>
#include <string>

#include "doctest/doctest.h"
#include "engine/sale_needs.h"
#include "shipped.h"

namespace test_sale_needs {

using market::Market;
using quantity::Percent;

namespace {

bool needs(Market market, std::string_view id) {
    for (const sale_needs::Need& one : sale_needs::of(market))
        if (one.id == id) return true;
    return false;
}

}  // namespace

TEST_CASE("each market has its own points, and every point has its sentence") {
    CHECK(needs(Market::eu, "assessor"));
    CHECK(needs(Market::gb, "notify_gb"));
    CHECK_FALSE(needs(Market::gb, "notify_eu"));
    CHECK(needs(Market::ni, "notify_eu"));
    CHECK(needs(Market::us, "substantiation"));
    CHECK_FALSE(needs(Market::us, "assessor"));
    CHECK(needs(Market::ca, "notify_ca"));
    CHECK(needs(Market::ca, "hotlist"));
    std::set<std::string> wanted;
    for (const auto& [market, id] : market::kAll)
        for (const sale_needs::Need& one : sale_needs::of(market))
            wanted.insert("sale." + std::string(one.id));
    for (const std::string& key : wanted) {
        CAPTURE(key);
        CHECK(words::has(shipped::english(), key));
    }
    for (const auto& [key, text] : shipped::english().entries)
        if (key.rfind("sale.", 0) == 0) CHECK(wanted.count(key) == 1);
}

TEST_CASE("what the maker has done is marked") {
    const auto list = sale_needs::of(Market::ca, {"notify_ca"});
    for (const sale_needs::Need& one : list)
        CHECK(one.done == (one.id == "notify_ca"));
}

TEST_CASE("Canada's ranges for the notification: over, up to and with") {
    // EX2-9; C.R.C., c. 869, s. 30.
    const auto range = [](std::int64_t grid) { return sale_needs::canada_range(Percent{grid}); };
    CHECK(range(100'000) == 8);
    CHECK(range(100'100) == 7);
    CHECK(range(30'000) == 9);
    CHECK(range(10'000) == 10);
    CHECK(range(1'000) == 12);
    CHECK(range(10) == 13);
    CHECK(range(11) == 12);
    CHECK(range(1'000'000) == 1);
    CHECK(range(800'000) == 2);
    CHECK(range(1) == 13);
    CHECK(range(0) == 0);
}

TEST_CASE("a small business by the average of three years: under 1,000,000 dollars") {
    // EX-3, EX-4, EX-5; FD&C Act s. 612.
    CHECK(sale_needs::is_small_business({1'100'000, 750'000, 850'000}));
    CHECK(sale_needs::is_small_business({1'250'000, 950'000, 725'000}));
    CHECK_FALSE(sale_needs::is_small_business({950'000, 1'275'000, 850'000}));
    CHECK_FALSE(sale_needs::is_small_business({1'000'000, 1'000'000, 1'000'000}));
    CHECK(sale_needs::is_small_business({1'000'000, 1'000'000, 999'999}));
}

}  // namespace test_sale_needs
