// Money, what is paid, and prices that follow from a cost: margin, mark-up and break-even against published
// examples.
#include <string>

#include "doctest/doctest.h"
#include "engine/money.h"
#include "engine/price.h"
#include "engine/pricing.h"
#include "engine/store.h"
#include "engine/store_prices.h"
#include "shipped.h"

namespace test_price {

using money::Amount;
using price::By;
using result::Code;

namespace {

price::Pack wax(std::int64_t minor, const char* day) {
    price::Pack pack;
    pack.what = "beeswax_yellow";
    pack.size = 500 * decimal::kOne;
    pack.currency = "EUR";
    pack.paid = {minor};
    pack.day = day;
    return pack;
}

std::int64_t at(std::int64_t percent) {
    return percent * decimal::kOne;
}

}  // namespace

TEST_CASE("money: cents, yen and thousandths are whole, and what has no coin is refused") {
    CHECK(money::places("EUR") == 2);
    CHECK(money::places("JPY") == 0);
    CHECK(money::places("KWD") == 3);
    CHECK(money::places("CLF") == 4);
    for (const char* none : {"", "eur", "EU", "EURO", "XXX", "URE", "XAU"})
        CHECK_FALSE(money::places(none).has_value());
    CHECK(*money::amount_of(125'000, "EUR") == Amount{1250});
    CHECK(money::amount_of(125'050, "EUR").error().code == Code::number_too_fine);
    CHECK(*money::amount_of(125'050, "KWD") == Amount{12505});
    CHECK(money::amount_of(125'000, "JPY").error().code == Code::number_too_fine);
    CHECK(money::amount_of(-1, "CLF").error().code == Code::number_negative);
    CHECK(money::amount_of(10'000, "ECU").error().code == Code::field_unknown_value);
    for (const char* one : {"EUR", "JPY", "KWD", "CLF"})
        CHECK(*money::amount_of(money::grid_of({70}, one), one) == Amount{70});
}

TEST_CASE("pricing: a margin is of the price") {
    // "Business Mathematics", chapter 8, section 8-2 (markup on selling price), page 297, exercises 1 and 2,
    // as answered at questionai.com/amp/textbooksolution-120064: 25 % of 28.00 leaves a cost of 21.00; a cost
    // of 18.60 with 40 % is sold at 31.00.
    CHECK(pricing::price_of({2100}, {By::margin, at(25)}) == Amount{2800});
    CHECK(pricing::price_of({1860}, {By::margin, at(40)}) == Amount{3100});
    CHECK(pricing::margin_of({1860}, {3100}) == at(40));
    CHECK(pricing::margin_of({2100}, {2800}) == at(25));
}

TEST_CASE("pricing: a mark-up is of the cost") {
    // aaamath.com/B/g75_max1.htm, lesson "Markup": bought at 4.00, marked up by 25 %, sold at 5.00; and
    // reference.com/math/calculate-mark-up-product-85863eccb734c00d: from 6.00 to 7.20 are 20 %.
    CHECK(pricing::price_of({400}, {By::mark_up, at(25)}) == Amount{500});
    CHECK(pricing::price_of({600}, {By::mark_up, at(20)}) == Amount{720});
    CHECK(pricing::mark_up_of({400}, {500}) == at(25));
    CHECK(pricing::mark_up_of({600}, {720}) == at(20));
    CHECK(pricing::margin_of({600}, {720}) == 166'667);  // the same price by its other name
}

TEST_CASE("pricing: break-even is the first whole unit that has paid for what is fixed") {
    // psu.pb.unizin.org/acctg211/chapter/breakeven-analysis (after OpenStax, Principles of Accounting 2):
    // fixed costs of 20 000, 400 a unit, 250 of them variable, so that each brings in 150: 133.3, the 134th.
    CHECK(pricing::break_even({2'000'000}, {25'000}, {40'000}) == 134);
    CHECK(pricing::break_even({1'800'000}, {2'000}, {10'000}) == 225);  // even
    CHECK(pricing::break_even({0}, {2'000}, {10'000}) == 0);
    CHECK_FALSE(pricing::break_even({1}, {2'000}, {2'000}).has_value());
    CHECK_FALSE(pricing::break_even({1}, {2'000}, {1'999}).has_value());
}

TEST_CASE("pricing: retail is put on the wholesale price, and says what it earns over the cost") {
    price::Book book;
    book.wholesale = price::Step{By::mark_up, at(100)};
    book.retail = price::Step{By::margin, at(50)};
    const pricing::Offers offers = pricing::offers({471}, book, Amount{4500});
    REQUIRE(offers.wholesale);
    REQUIRE(offers.retail);
    CHECK(offers.wholesale->price == Amount{942});
    CHECK(offers.retail->price == Amount{1884});
    CHECK(offers.retail->earned == Amount{1413});
    CHECK(offers.retail->margin == at(75));
    CHECK(offers.wholesale->break_even == 10);  // 4500 / 471 = 9.55
    CHECK(offers.retail->break_even == 4);
    book.wholesale.reset();
    CHECK(pricing::offers({471}, book, std::nullopt).retail->price == Amount{942});
    CHECK_FALSE(pricing::offers({0}, book, std::nullopt).retail->mark_up.has_value());
}

TEST_CASE("price: of several packs the chosen one counts, else the latest") {
    price::Book book;
    book = *price::with_pack(book, {}, wax(900, "2026-03-01"));
    book = *price::with_pack(book, {}, wax(1100, "2026-09-01"));
    book = *price::with_pack(book, {}, wax(700, ""));
    CHECK(price::pack_of(book, price::Of::ingredient, "beeswax_yellow")->paid == Amount{1100});
    book.packs[0].chosen = true;
    CHECK(price::pack_of(book, price::Of::ingredient, "beeswax_yellow")->paid == Amount{900});
    price::Pack other = book.packs[1];
    other.chosen = true;
    book = *price::with_pack(book, 1, other);
    CHECK_FALSE(book.packs[0].chosen);
    CHECK(price::pack_of(book, price::Of::container, "beeswax_yellow") == nullptr);
    CHECK(price::without_pack(book, 3).error().code == Code::line_missing);
}

TEST_CASE("price: a rate is the last one up to the day, in either direction") {
    price::Book book;
    for (const char* day : {"2026-03-01", "2026-06-01", "2026-09-01"})
        book = *price::with_rate(book, {"GBP", "EUR", decimal::kOne, 11'600, day, ""});
    const auto day_of = [&](const char* day) { return price::rate_of(book, "EUR", "GBP", day)->day; };
    CHECK(day_of("2026-07-15") == "2026-06-01");
    CHECK(day_of("2026-06-01") == "2026-06-01");
    CHECK(day_of("2026-01-01") == "2026-03-01");
    CHECK(day_of("") == "2026-09-01");
    book = *price::with_rate(book, {"EUR", "GBP", decimal::kOne, 8'600, "2026-09-01", ""});
    CHECK(book.rates.size() == 3);  // it took the place of the other of that day
    CHECK(price::rate_of(book, "USD", "EUR", "") == nullptr);
    CHECK(price::with_rate(book, {"EUR", "EUR", 1, 1, "2026-09-01", ""}).error().place == "rates[3].to");
}

TEST_CASE("price: what is out of bounds is refused with its place") {
    price::Book book;
    price::Pack pack = wax(1, "");
    pack.size = 0;
    CHECK(price::with_pack(book, {}, pack).error().place == "packs[0].size");
    pack = wax(1, "");
    pack.unit = price::Unit::pieces;
    CHECK(price::with_pack(book, {}, pack).error().code == Code::field_unknown_value);
    pack = wax(-1, "");
    CHECK(price::with_pack(book, {}, pack).error().code == Code::number_negative);
    book.wholesale = price::Step{By::margin, at(100)};
    CHECK(price::checked(book).error().place == "wholesale");
    book.wholesale = price::Step{By::mark_up, at(100)};
    CHECK(price::checked(book).ok());
}

TEST_CASE("price: what is kept comes back, and the frozen sample is read as it was written") {
    const std::string text = shipped::data("v1_prices.json");
    const auto device = store::read_settings(text);
    REQUIRE_MESSAGE(device, (device ? "" : device.error().place));
    CHECK(store::write_settings(device->settings, device->open) == text);
    const price::Book& book = device->settings.prices;
    CHECK(book.currency == "EUR");
    CHECK(book.packs.size() == 4);
    CHECK(book.packs[1].unit == price::Unit::ml);
    CHECK(book.packs[3].of == price::Of::label);
    CHECK(book.retail == price::Step{By::margin, at(40)});
    CHECK(price::making_of(book, "balm").minutes_batch == at(90));
    CHECK(price::making_of(book, "other").minutes_unit == at(2));
    CHECK(device->settings.low == std::vector<lot::Threshold>{{"beeswax_yellow", quantity::grams(100)}});
    for (std::size_t i = 0; i < text.size(); i += 7)
        CHECK_FALSE(store::read_settings(text.substr(0, i)));
}

}  // namespace test_price
