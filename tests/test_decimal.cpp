// Reading, printing, scaling and sharing out of exact decimals.
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/chance.h"
#include "engine/decimal.h"

namespace test_decimal {

using decimal::kOne;
using result::Code;

TEST_CASE("12.5 and 12,5 are the same number") {
    CHECK(decimal::read("12.5").value() == 125000);
    CHECK(decimal::read("12,5").value() == 125000);
    CHECK(decimal::print(125000) == "12.5");
    CHECK(decimal::print(125000, decimal::Sign::comma) == "12,5");
}

TEST_CASE("what is unambiguous is read") {
    struct Row {
        std::string text;
        std::int64_t grid;
    };
    const std::vector<Row> rows = {
        {"0", 0},
        {"7", 70000},
        {"12", 120000},
        {"250", 2500000},
        {"12.5", 125000},
        {"12,5", 125000},
        {".5", 5000},
        {",5", 5000},
        {"0.0001", 1},
        {"5.", 50000},
        {"5,", 50000},
        {"1,234", 12340},  // one sign is the decimal sign, whatever stands after it
        {"1.234", 12340},
        {"1.50000", 15000},  // zeros beyond the grid say nothing
        {"007", 70000},
        {"000000000000000000000000000001", 10000},
        {"+5", 50000},
        {"-3", -30000},
        {"\u22123", -30000},  // minus sign
        {"-0", 0},
        {"-.5", -5000},
        {" 12 ", 120000},
        {"\t12\n", 120000},
        {"\u00A012.5\u202F", 125000},
        {"1 234,5", 12345000},
        {"1\u00A0234,5", 12345000},  // no-break space
        {"1\u2009234.5", 12345000},  // thin space
        {"1\u202F234", 12340000},    // narrow no-break space
        {"12 345 678", 123456780000},
        {"1'234.5", 12345000},
        {"1\u2019234.5", 12345000},
        {"1/2", 5000},
        {"1 / 2", 5000},
        {"1\u20442", 5000},  // fraction slash
        {"1/3", 3333},
        {"2/3", 6667},
        {"-1/3", -3333},
        {"-2/3", -6667},
        {"1/20000", 1},  // half a step goes away from zero
        {"-1/20000", -1},
        {"1/20001", 0},
        {"7/2", 35000},
        {"1 1/2", 15000},
        {"2 3/4", 27500},
        {"1 234 1/2", 12345000},
        {"\u00BD", 5000},
        {"\u00BC", 2500},
        {"\u00BE", 7500},
        {"\u2153", 3333},
        {"1\u00BD", 15000},
        {"1 \u00BD", 15000},
        {"-1\u00BC", -12500},
        {"\uFF11\uFF12\uFF0E\uFF15", 125000},  // full-width digits and point
        {"100000000", decimal::kLargest},
        {"-100000000", -decimal::kLargest},
    };
    for (const Row& row : rows) {
        CAPTURE(row.text);
        const auto got = decimal::read(row.text);
        REQUIRE(got.ok());
        CHECK(got.value() == row.grid);
    }
}

TEST_CASE("what is no number or could be two is refused, with its place") {
    struct Row {
        std::string text;
        Code code;
        int character;
    };
    const std::vector<Row> rows = {
        {"", Code::number_empty, 1},
        {" ", Code::number_empty, 1},
        {"\u00A0\u2009", Code::number_empty, 1},
        {"1,234.5", Code::number_ambiguous, 6},
        {"1.234,5", Code::number_ambiguous, 6},
        {"1,234,567", Code::number_ambiguous, 6},
        {"1.234.567", Code::number_ambiguous, 6},
        {"1.5,2", Code::number_ambiguous, 4},
        {"1 234/5", Code::number_ambiguous, 2},  // 1 and 234/5, or 1234/5
        {"12..3", Code::number_malformed, 4},
        {"12,,3", Code::number_malformed, 4},
        {"12.,3", Code::number_malformed, 4},
        {".", Code::number_malformed, 2},
        {",", Code::number_malformed, 2},
        {"-", Code::number_malformed, 2},
        {"--5", Code::number_malformed, 2},
        {"+-5", Code::number_malformed, 2},
        {"- 5", Code::number_malformed, 2},
        {"5-", Code::number_malformed, 2},
        {"\u20135", Code::number_malformed, 1},  // a dash, not a minus
        {"nan", Code::number_malformed, 1},
        {"inf", Code::number_malformed, 1},
        {"Infinity", Code::number_malformed, 1},
        {"1e3", Code::number_malformed, 2},
        {"1e400", Code::number_malformed, 2},
        {"0x10", Code::number_malformed, 2},
        {"5%", Code::number_malformed, 2},
        {"5g", Code::number_malformed, 2},
        {"ten", Code::number_malformed, 1},
        {"12 34", Code::number_malformed, 4},
        {"1 23", Code::number_malformed, 3},
        {"1234 567", Code::number_malformed, 6},
        {"1  234", Code::number_malformed, 4},
        {"1_000", Code::number_malformed, 2},
        {"1.234 567", Code::number_malformed, 7},
        {"1/", Code::number_malformed, 3},
        {"/2", Code::number_malformed, 1},
        {"1/2/3", Code::number_malformed, 4},
        {"1 3/2", Code::number_malformed, 3},
        {"1.5/2", Code::number_malformed, 4},
        {"1/2.5", Code::number_malformed, 4},
        {"1/-2", Code::number_malformed, 3},
        {"\u00BD\u00BD", Code::number_malformed, 2},
        {"\u00BD5", Code::number_malformed, 2},
        {"1.5\u00BD", Code::number_malformed, 4},
        {"1/0", Code::division_by_zero, 3},
        {"1 0/0", Code::division_by_zero, 5},
        {"0.00001", Code::number_too_fine, 7},
        {"1.23456", Code::number_too_fine, 7},
        {"100000000.0001", Code::number_too_large, 1},
        {"100000001", Code::number_too_large, 9},
        {"123456789012345678901234567890", Code::number_too_large, 9},
        {"-999999999999", Code::number_too_large, 10},
        {"\u0661\u0662", Code::number_malformed, 1},  // Arabic-Indic digits
        {std::string("1\0", 2), Code::number_malformed, 2},
        {std::string("\0", 1), Code::number_malformed, 1},
        {"\xFF", Code::number_malformed, 1},
        {"1\xC2", Code::number_malformed, 2},
        {"\xC0\xB1", Code::number_malformed, 1},  // the digit 1 in a longer form than allowed
        {"\u00BD\xE2\x80", Code::number_malformed, 2},
        {"(1)", Code::number_malformed, 1},
        {"1+1", Code::number_malformed, 2},
    };
    for (const Row& row : rows) {
        CAPTURE(row.text);
        const auto got = decimal::read(row.text);
        REQUIRE_FALSE(got.ok());
        CHECK(got.error().code == row.code);
        CHECK(got.error().place == "character " + std::to_string(row.character));
    }
}

TEST_CASE("an error repeats the text short, on one line and as valid UTF-8") {
    CHECK(decimal::read("1,234.5").error().detail == "1,234.5");
    CHECK(decimal::read("a\nb").error().detail == "a\uFFFDb");
    CHECK(decimal::read("a\xFF").error().detail == "a\uFFFD");
    CHECK(decimal::read(std::string(100, 'x')).error().detail == std::string(40, 'x') + "\u2026");
}

TEST_CASE("250/12 on the keypad is 20.8333") {
    CHECK(decimal::calculate("250/12").value() == 208333);
}

TEST_CASE("arithmetic is exact and rounded once") {
    struct Row {
        const char* text;
        std::int64_t grid;
    };
    const Row rows[] = {
        {"12,5", 125000},      {"1/3+1/3+1/3", 10000},  {"1/3*3", 10000},
        {"2+3*4", 140000},     {"(2+3)*4", 200000},     {"2 + 3", 50000},
        {"10-2-3", 50000},     {"100/4/5", 50000},      {"-5+3", -20000},
        {"\u22125+3", -20000}, {"3\u00D74", 120000},    {"10\u00F74", 25000},
        {"1 1/2*2", 30000},    {"\u00BD+\u00BC", 7500}, {"1 234,5/5", 2469000},
        {"((((7))))", 70000},  {"2*(-3)", -60000},      {"0/5", 0},
        {"1/(2/3)", 15000},    {"1/20000", 1},          {"14*4.25*1.05", 624750},
        {"- 3", -30000},
    };
    for (const Row& row : rows) {
        CAPTURE(row.text);
        const auto got = decimal::calculate(row.text);
        REQUIRE(got.ok());
        CHECK(got.value() == row.grid);
    }
}

TEST_CASE("arithmetic that is none is refused") {
    struct Row {
        std::string text;
        Code code;
        int character;
    };
    const Row rows[] = {
        {"", Code::number_empty, 1},
        {"2+", Code::number_malformed, 3},
        {"*2", Code::number_malformed, 1},
        {"2**3", Code::number_malformed, 3},
        {"2--3", Code::number_malformed, 3},
        {"2*-3", Code::number_malformed, 3},
        {"(2", Code::number_malformed, 3},
        {"2)", Code::number_malformed, 2},
        {"()", Code::number_malformed, 2},
        {"2(3)", Code::number_malformed, 2},
        {"2 3", Code::number_malformed, 3},
        {"1,234.5+1", Code::number_ambiguous, 6},
        {"5/0", Code::division_by_zero, 3},
        {"5/(2-2)", Code::division_by_zero, 7},
        {"250/12=", Code::number_malformed, 7},
        {"2^3", Code::number_malformed, 2},
        {"99999999*99999999", Code::number_too_large, 1},
        {"99999999*99999999*99999999*99999999", Code::number_too_large, 26},
        {std::string(1000, '('), Code::number_malformed, 41},
        {"1000000000/1000000000", Code::number_too_large, 10},
    };
    for (const Row& row : rows) {
        CAPTURE(row.text);
        const auto got = decimal::calculate(row.text);
        REQUIRE_FALSE(got.ok());
        CHECK(static_cast<int>(got.error().code) == static_cast<int>(row.code));
        CHECK(got.error().place == "character " + std::to_string(row.character));
    }
}

TEST_CASE("a double out of JSON must lie on the grid") {
    CHECK(decimal::from_double(12.5).value() == 125000);
    CHECK(decimal::from_double(-0.0001).value() == -1);
    CHECK(decimal::from_double(0.1).value() == 1000);
    CHECK(decimal::from_double(-0.0).value() == 0);
    CHECK(decimal::from_double(99999999.9999).value() == 999999999999);
    CHECK(decimal::from_double(0.00001).error().code == Code::number_too_fine);
    CHECK(decimal::from_double(0.1 + 0.2).error().code == Code::number_too_fine);
    CHECK(decimal::from_double(std::numeric_limits<double>::infinity()).error().code ==
          Code::number_malformed);
    CHECK(decimal::from_double(-std::numeric_limits<double>::infinity()).error().code ==
          Code::number_malformed);
    CHECK(decimal::from_double(std::nan("")).error().code == Code::number_malformed);
    CHECK(decimal::from_double(1e9).error().code == Code::number_too_large);
    CHECK(decimal::from_double(-1e300).error().code == Code::number_too_large);
}

TEST_CASE("every grid value goes to a double and comes back") {
    chance::Generator chance(20);
    for (int i = 0; i < 20000; ++i) {
        const std::int64_t grid = chance.between(-decimal::kLargest, decimal::kLargest);
        REQUIRE(decimal::from_double(decimal::to_double(grid)).value() == grid);
    }
}

TEST_CASE("what is printed is read back as the same number, with either sign") {
    chance::Generator chance(21);
    for (int i = 0; i < 20000; ++i) {
        const std::int64_t largest = i % 2 == 0 ? decimal::kLargest : 100 * kOne;
        const std::int64_t grid = chance.between(-largest, largest);
        REQUIRE(decimal::read(decimal::print(grid)).value() == grid);
        REQUIRE(decimal::read(decimal::print(grid, decimal::Sign::comma)).value() == grid);
        REQUIRE(decimal::read(decimal::print_fixed(grid, 6)).value() == grid);
    }
}

TEST_CASE("fixed places round half away from zero") {
    CHECK(decimal::print_fixed(125000, 2) == "12.50");
    CHECK(decimal::print_fixed(125050, 2) == "12.51");
    CHECK(decimal::print_fixed(-125050, 2) == "-12.51");
    CHECK(decimal::print_fixed(125049, 2) == "12.50");
    CHECK(decimal::print_fixed(5000, 0) == "1");
    CHECK(decimal::print_fixed(-5000, 0) == "-1");
    CHECK(decimal::print_fixed(4999, 0) == "0");
    CHECK(decimal::print_fixed(-4999, 0) == "0");
    CHECK(decimal::print_fixed(-1, 2) == "0.00");
    CHECK(decimal::print_fixed(1, 6) == "0.000100");
    CHECK(decimal::print_fixed(999999, 1, decimal::Sign::comma) == "100,0");
    CHECK(decimal::print(0) == "0");
    CHECK(decimal::print(1) == "0.0001");
    CHECK(decimal::print(-1) == "-0.0001");
    CHECK(decimal::print(1000000) == "100");
    CHECK(decimal::print(std::numeric_limits<std::int64_t>::min()) == "-922337203685477.5808");
}

TEST_CASE("scaling rounds as its name says, on both sides of zero") {
    CHECK(decimal::scale_nearest(1, 1, 2) == 1);
    CHECK(decimal::scale_nearest(-1, 1, 2) == -1);
    CHECK(decimal::scale_nearest(1, 1, 3) == 0);
    CHECK(decimal::scale_nearest(-2, 1, 3) == -1);
    CHECK(decimal::scale_down(-1, 1, 2) == -1);
    CHECK(decimal::scale_down(1, 1, 2) == 0);
    CHECK(decimal::scale_up(-1, 1, 2) == 0);
    CHECK(decimal::scale_up(1, 1, 2) == 1);
    CHECK(decimal::scale_up(4, 1, 2) == 2);
    const std::int64_t big = std::int64_t{1} << 62;
    CHECK(decimal::scale_nearest(big, big, big) == big);
    CHECK(decimal::scale_down(big, big - 1, big) == big - 1);
    CHECK(decimal::scale_up(-big, big, big) == -big);
    CHECK(decimal::scale_nearest(big, big, 1) == std::numeric_limits<std::int64_t>::max());
}

TEST_CASE("60 seats over the 15 states of 1790 come out as Hamilton's method gave them") {
    // Populations for apportionment after the census of 1790 as given in Balinski and Young, "Fair
    // Representation" (1982), from memory; they add to the 3 615 920 that electowiki's page on Hamilton's
    // method states (oldid=9372), where the seats below stand too.
    const std::vector<std::int64_t> people = {630560, 475327, 432879, 353523, 331589, 278514, 236841, 206236,
                                              179570, 141822, 85533,  70835,  68705,  68446,  55540};
    // VA, MA, PA, NC, NY, MD, CT, SC, NJ, NH, VT, GA, KY, RI, DE
    const std::vector<std::int64_t> seats = {11, 8, 7, 6, 6, 5, 4, 3, 3, 2, 1, 1, 1, 1, 1};
    std::int64_t sum = 0;
    for (const std::int64_t state : people)
        sum += state;
    CHECK(sum == 3615920);
    const auto got = decimal::share_out(60, people);
    REQUIRE(got.ok());
    CHECK(got.value() == seats);
}

TEST_CASE("ties go to the larger weight, then to the earlier place") {
    CHECK(decimal::share_out(1, {1, 1, 1}).value() == std::vector<std::int64_t>{1, 0, 0});
    CHECK(decimal::share_out(2, {1, 1, 1}).value() == std::vector<std::int64_t>{1, 1, 0});
    CHECK(decimal::share_out(2, {1, 3}).value() == std::vector<std::int64_t>{0, 2});  // 0.5 and 1.5
    CHECK(decimal::share_out(0, {1, 2}).value() == std::vector<std::int64_t>{0, 0});
}

TEST_CASE("a weight of nothing gets nothing, and weights of nothing at all are refused") {
    CHECK(decimal::share_out(10, {0, 3, 0}).value() == std::vector<std::int64_t>{0, 10, 0});
    CHECK(decimal::share_out(10, {0, 0}).error().code == Code::formula_empty);
    CHECK(decimal::share_out(10, {}).error().code == Code::formula_empty);
    CHECK(decimal::share_out(10, {1, -1}).error().code == Code::number_negative);
    CHECK(decimal::share_out(-1, {1, 1}).error().code == Code::number_negative);
}

TEST_CASE("a part is not given more than its most, and the others take what it leaves") {
    CHECK(decimal::share_out(10, {333, 333, 334}).value() == std::vector<std::int64_t>{3, 3, 4});
    CHECK(decimal::share_out(10, {333, 333, 334}, {10, 10, 3}).value() == std::vector<std::int64_t>{4, 3, 3});
    CHECK(decimal::share_out(10, {333, 333, 334}, {3, 3, 3}).error().code == Code::cap_leaves_no_room);
    CHECK(decimal::share_out(10, {5, 5}, {4, 10}).error().code == Code::cap_leaves_no_room);
}

TEST_CASE("parts add up and stay within one unit of their share, for weights near the end of the range") {
    chance::Generator chance(22);
    for (int round = 0; round < 5000; ++round) {
        const std::int64_t largest = round % 2 == 0 ? 1000 : std::int64_t{1} << 60;
        std::vector<std::int64_t> weights(1 + chance.below(15));
        for (auto& weight : weights)
            weight = chance.between(0, largest);
        weights[0] += 1;
        const std::int64_t units = chance.between(0, round % 3 == 0 ? 50 : std::int64_t{1} << 40);
        const auto parts = decimal::share_out(units, weights).value();
        std::int64_t sum = 0;
        long double total = 0;
        for (const auto weight : weights)
            total += static_cast<long double>(weight);
        for (std::size_t i = 0; i < parts.size(); ++i) {
            sum += parts[i];
            const long double share =
                static_cast<long double>(units) * static_cast<long double>(weights[i]) / total;
            REQUIRE(std::abs(static_cast<double>(static_cast<long double>(parts[i]) - share)) < 1.001);
        }
        REQUIRE(sum == units);
    }
}

}  // namespace test_decimal
