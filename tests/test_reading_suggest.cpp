// Suggestions: they fit, add to 100 exactly, differ, and stand on steps that can be weighed.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/reading_work.h"

namespace test_reading_suggest {

using reading::Answer;
using reading::Problem;
using reading::Suggestion;

namespace {

constexpr std::int64_t kOne = decimal::kOne;

Problem list_of(std::size_t items, std::optional<std::size_t> line_after = std::nullopt) {
    Problem problem;
    for (std::size_t i = 0; i < items; ++i)
        problem.items.push_back({"", "ingredient " + std::to_string(i + 1), false, {}});
    problem.line_after = line_after;
    return problem;
}

std::int64_t sum_of(const Suggestion& suggestion) {
    std::int64_t sum = 0;
    for (const quantity::Percent one : suggestion.percents)
        sum += one.grid;
    return sum;
}

}  // namespace

TEST_CASE("suggestions: five different ones of four and three, the centre first, on round figures") {
    const Problem problem = list_of(7, 4);
    const Answer answer = reading::answer(problem, {});
    REQUIRE(answer.suggestions.size() == 5);
    const std::vector<reading::Row> rows = reading::rows_of(problem);
    for (const Suggestion& one : answer.suggestions) {
        CHECK(one.fits);
        CHECK(sum_of(one) == quantity::kHundred.grid);
        CHECK(reading::fits(problem, rows, one.percents));
        CHECK(one.step >= 100);
        for (std::size_t i = 1; i < 7; ++i)
            CHECK(one.percents[i].grid % 10 == 0);
    }
    for (std::size_t i = 0; i < 7; ++i)
        CHECK(std::abs(decimal::to_double(answer.suggestions[0].percents[i].grid) - answer.likely[i].mean) <
              0.6);
    // The second is as far from the first as it can be: farther than they all are on average.
    CHECK(std::abs(answer.suggestions[1].percents[0].grid - answer.suggestions[0].percents[0].grid) >
          5 * kOne);
}

TEST_CASE("suggestions: they stay within the middle of the cloud") {
    const Answer answer = reading::answer(list_of(4, 4), {4000, 5, 3, false});
    for (const Suggestion& one : answer.suggestions)
        for (std::size_t i = 0; i < 4; ++i) {
            const double percent = decimal::to_double(one.percents[i].grid);
            CHECK(percent >= answer.likely[i].p05 - 0.6);
            CHECK(percent <= answer.likely[i].p95 + 0.6);
        }
}

TEST_CASE("suggestions: statements are kept to the last figure, equations too") {
    Problem problem = list_of(9);
    problem.statements = {reading::amount(2, 9 * kOne, 95000), reading::group("", {3, 4}, 123456, 123456)};
    const std::vector<reading::Row> rows = reading::rows_of(problem);
    const Answer answer = reading::answer(problem, {});
    CHECK(answer.suggestions.size() >= 3);
    for (const Suggestion& one : answer.suggestions) {
        CHECK(one.fits);
        CHECK(reading::fits(problem, rows, one.percents));
        CHECK(one.percents[3].grid + one.percents[4].grid == 123456);
    }
}

TEST_CASE(
    "suggestions: in the narrowest room they stand on the grid; finer than the grid it is the nearest, and "
    "said") {
    Problem problem = list_of(3, 3);
    problem.statements = {reading::amount(0, {}, 333334)};  // between a third and that
    const Answer answer = reading::answer(problem, {});
    REQUIRE(!answer.suggestions.empty());
    for (const Suggestion& one : answer.suggestions) {
        CHECK(one.fits);
        CHECK(one.step == 1);
        CHECK(one.percents[0].grid == 333334);
    }

    Problem thirds = list_of(3, 3);
    thirds.statements = {reading::amount(0, {}, 100000)};
    thirds.statements[0].terms[0] = {0, 300000, 300000};  // three tenths of A are at most 10 %: A is a third
    const Answer third = reading::answer(thirds, {});
    REQUIRE(third.state == reading::State::fits);
    REQUIRE(third.suggestions.size() == 1);
    CHECK_FALSE(third.suggestions[0].fits);
    CHECK(third.suggestions[0].percents == std::vector<quantity::Percent>{{333334}, {333333}, {333333}});
    CHECK(reading::answer(list_of(1), {}).suggestions.size() == 1);
}

TEST_CASE("suggestions: what keeps to the list is told from what does not") {
    const Problem open = list_of(4);
    const auto of = [](std::int64_t a, std::int64_t b, std::int64_t c, std::int64_t d) {
        return std::vector<quantity::Percent>{
            {a * kOne / 10}, {b * kOne / 10}, {c * kOne / 10}, {d * kOne / 10}};
    };
    CHECK(reading::fits(open, {}, of(900, 90, 4, 6)));          // below the line in any order
    CHECK_FALSE(reading::fits(open, {}, of(900, 30, 40, 30)));  // not above it
    CHECK_FALSE(reading::fits(open, {}, of(900, 90, 5, 6)));    // more than 100
    CHECK_FALSE(reading::fits(open, {}, of(980, 5, 15, 0)));    // one below the line before one above
    CHECK(reading::fits(list_of(4, 2), {}, of(900, 90, 4, 6)));
    CHECK_FALSE(reading::fits(list_of(4, 3), {}, of(900, 90, 4, 6)));
    CHECK_FALSE(reading::fits(list_of(4, 1), {}, of(900, 90, 4, 6)));
    CHECK(reading::fits(list_of(4, 3), {}, of(890, 90, 10, 10)));  // at exactly 1 % on either side
    Problem free = open;
    free.items[3].free = true;
    CHECK(reading::fits(free, {}, of(400, 90, 10, 500)));
}

TEST_CASE("gains: what each statement bought, and the line too") {
    Problem problem = list_of(5, 4);
    problem.statements = {reading::amount(1, 10 * kOne, 30 * kOne), reading::amount(0, {}, 60 * kOne),
                          reading::amount(2, {}, 90 * kOne)};
    const Answer answer = reading::answer(problem, {});
    REQUIRE(answer.gains.size() == 4);
    CHECK(answer.gains[0].item == 1);  // B is 13 to 30 with it, 13 to 49 without
    CHECK(answer.gains[0].narrower == doctest::Approx(19));
    CHECK(answer.gains[1].item == 0);  // A is 24.75 to 60 with it, to 88 without
    CHECK(answer.gains[1].narrower == doctest::Approx(28));
    CHECK(answer.gains[2].narrower == doctest::Approx(0));  // says nothing new
    CHECK(answer.gains[3].said.what == reading::Said::What::line);
    CHECK(answer.gains[3].narrower > 1);
    CHECK(answer.statements[0].min == doctest::Approx(13));
    CHECK(answer.statements[0].max == doctest::Approx(30));
}

}  // namespace test_reading_suggest
