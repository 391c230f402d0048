// What a list allows, held against closed forms (Σ 1/k and the like), against a published example and against
// corners that were counted out in fractions.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/reading_bounds.h"

namespace test_reading_bounds {

using reading::BoundsWork;
using reading::Problem;
using reading::Range;
using reading::Statement;

namespace {

constexpr std::int64_t kOne = decimal::kOne;

Problem list_of(std::size_t items, std::optional<std::size_t> line_after = std::nullopt) {
    Problem problem;
    for (std::size_t i = 0; i < items; ++i)
        problem.items.push_back({"", "ingredient " + std::to_string(i + 1), false, {}});
    problem.line_after = line_after;
    return problem;
}

Problem plain(std::size_t items) {  // in order to the end, with nothing below which the order is free
    Problem problem = list_of(items, items);
    problem.line = {};
    return problem;
}

BoundsWork worked(const Problem& problem, bool inside = false) {
    BoundsWork work(problem, reading::rows_of(problem), inside);
    while (work.work(7)) {
    }
    CHECK(!work.stuck());
    return work;
}

void check_range(const Range& range, double min, double max) {
    CHECK(std::abs(range.min - min) < 1e-9);
    CHECK(std::abs(range.max - max) < 1e-9);
}

}  // namespace

TEST_CASE("bounds: three in order are at least a third and at most all, half, a third") {
    const BoundsWork work = worked(plain(3));
    REQUIRE(work.feasible());
    check_range(work.items()[0], 100.0 / 3, 100);
    check_range(work.items()[1], 0, 50);
    check_range(work.items()[2], 0, 100.0 / 3);
}

TEST_CASE("bounds: a list in order, from one to forty, as its closed form") {
    for (std::size_t n = 1; n <= 40; ++n) {
        const BoundsWork work = worked(plain(n));
        REQUIRE(work.feasible());
        CAPTURE(n);
        check_range(work.items()[0], 100.0 / static_cast<double>(n), 100);
        for (std::size_t i = 2; i <= n; ++i)
            check_range(work.items()[i - 1], 0, 100.0 / static_cast<double>(i));
    }
}

TEST_CASE("bounds: m above a line at 1, 2 or 10 %, k below it, as the closed form; and when nothing fits") {
    int fits = 0;
    for (const double line : {1.0, 2.0, 10.0})
        for (std::size_t m = 0; m <= 20; ++m)
            for (std::size_t k = 0; m + k <= 40; k += m < 10 && k < 6 ? 1 : 7) {
                if (m + k == 0) continue;
                Problem problem = list_of(m + k, m);
                problem.line = {static_cast<std::int64_t>(line) * kOne};
                const BoundsWork work = worked(problem);
                CAPTURE(m);
                CAPTURE(k);
                CAPTURE(line);
                const double above = static_cast<double>(m), below = static_cast<double>(k);
                const bool feasible = above * line <= 100 && (m >= 1 || below * line >= 100);
                REQUIRE(work.feasible() == feasible);
                if (!feasible) continue;
                fits += 1;
                if (m > 0)
                    check_range(work.items()[0], std::max(line, (100 - below * line) / above),
                                100 - (above - 1) * line);
                for (std::size_t i = 2; i <= m; ++i) {
                    const double place = static_cast<double>(i);
                    check_range(work.items()[i - 1], line, (100 - (above - place) * line) / place);
                }
                if (m == 0) continue;
                for (std::size_t i = m; i < m + k; ++i)
                    check_range(work.items()[i], 0, std::min(line, 100 - above * line));
            }
    CHECK(fits > 300);
}

TEST_CASE("bounds: the published list of flour, water, eggs at 2 %, salt and turmeric (T1)") {
    // https://tomerv.github.io/posts/food-ingredients/ : flour 47 to 96, water 2 to 49
    Problem problem = plain(5);
    problem.statements.push_back(reading::amount(2, 2 * kOne, 2 * kOne));
    const BoundsWork work = worked(problem, true);
    check_range(work.items()[0], 47, 96);
    check_range(work.items()[1], 2, 49);
    check_range(work.items()[2], 2, 2);
    check_range(work.items()[3], 0, 2);
    check_range(work.items()[4], 0, 2);
    // The same page's chocolate: 58 + 40 + x + 0.1 = 100.
    Problem chocolate = plain(4);
    for (const auto& [item, tenths] : {std::pair{0, 580}, {1, 400}, {3, 1}})
        chocolate.statements.push_back(
            reading::amount(static_cast<std::size_t>(item), tenths * kOne / 10, tenths * kOne / 10));
    check_range(worked(chocolate).items()[2], 1.9, 1.9);
}

TEST_CASE("bounds: four above the line and three below (T2)") {
    const BoundsWork work = worked(list_of(7, 4));
    const std::vector<Range> expected = {{24.25, 97}, {1, 49}, {1, 33}, {1, 25}, {0, 1}, {0, 1}, {0, 1}};
    for (std::size_t i = 0; i < expected.size(); ++i)
        check_range(work.items()[i], expected[i].min, expected[i].max);
}

TEST_CASE("bounds: a stated 10 tightens to 13 where the others leave that much (T4)") {
    Problem problem = list_of(5, 4);
    problem.statements.push_back(reading::amount(1, 10 * kOne, 30 * kOne));
    problem.statements.push_back(reading::amount(0, std::nullopt, 60 * kOne));
    const BoundsWork work = worked(problem);
    const std::vector<Range> expected = {{24.75, 60}, {13, 30}, {4.5, 30}, {1, 25}, {0, 1}};
    for (std::size_t i = 0; i < expected.size(); ++i)
        check_range(work.items()[i], expected[i].min, expected[i].max);
    check_range(work.sums()[0], 13, 30);
    problem.statements[1].on = false;
    check_range(worked(problem).items()[0], 24.75, 88);
}

TEST_CASE("bounds: with the line unknown, the union over every place it may have") {
    for (const std::size_t n : {1U, 2U, 5U, 13U, 40U}) {
        const Problem open = list_of(n);
        const BoundsWork whole = worked(open, true);
        std::vector<Range> expected(n, {1e9, -1e9});
        std::size_t fits = 0;
        for (std::size_t after = 0; after <= n; ++after) {
            const BoundsWork part = worked(list_of(n, after));
            if (!part.feasible()) continue;
            fits += 1;
            for (std::size_t i = 0; i < n; ++i)
                expected[i] = {std::min(expected[i].min, part.items()[i].min),
                               std::max(expected[i].max, part.items()[i].max)};
        }
        REQUIRE(whole.branches().size() == fits);
        for (std::size_t i = 0; i < n; ++i)
            check_range(whole.items()[i], expected[i].min, expected[i].max);
    }
}

TEST_CASE("bounds: what is free stands anywhere, whatever the order says") {
    Problem problem = list_of(4, 3);
    problem.items[3].free = true;
    const BoundsWork work = worked(problem);
    check_range(work.items()[0], 1, 98);
    check_range(work.items()[3], 0, 97);
}

TEST_CASE("bounds: single points, and ways that are shut, are known as such") {
    Problem even = plain(4);
    even.statements.push_back(reading::amount(0, std::nullopt, 25 * kOne));
    const BoundsWork point = worked(even, true);
    for (const Range& range : point.items())
        check_range(range, 25, 25);
    REQUIRE(point.branches().size() == 1);
    CHECK(std::count(point.branches()[0].fixed.begin(), point.branches()[0].fixed.end(), true) == 4);

    Problem shut = plain(4);  // caps that add to exactly 100: two sums that cannot move, no item that cannot
    shut.statements.push_back(reading::group("one", {0, 3}, std::nullopt, 60 * kOne));
    shut.statements.push_back(reading::group("other", {1, 2}, std::nullopt, 40 * kOne));
    const BoundsWork flat = worked(shut, true);
    REQUIRE(flat.feasible());
    CHECK(flat.branches()[0].tight == std::vector<bool>{true, true});
    CHECK(std::count(flat.branches()[0].fixed.begin(), flat.branches()[0].fixed.end(), true) == 0);
    double sum = 0;
    for (const double one : flat.branches()[0].middle)
        sum += one;
    CHECK(sum == doctest::Approx(100));

    const BoundsWork one = worked(list_of(1), true);
    check_range(one.items()[0], 100, 100);
}

TEST_CASE("bounds: a density bounds the shares through the volumes, which add up") {
    // Oil at 0.9 and water at 1.0: 0.95 is 47.368 % of oil.
    Problem problem = plain(2);
    for (reading::Item& item : problem.items)
        item.free = true;
    Statement density;
    density.kind = reading::Kind::property;
    density.subject = "density";
    density.terms = {{0, 9000, 9000}, {1, 10000, 10000}};
    density.min = density.max = 9500;
    problem.statements.push_back(density);
    check_range(worked(problem).items()[0], 100 * (1 / 0.95 - 1) / (1 / 0.9 - 1),
                100 * (1 / 0.95 - 1) / (1 / 0.9 - 1));
    problem.statements[0].terms[0].high = 9200;  // the oil may be denser: then there is more of it
    check_range(worked(problem).items()[0], 100 * (1 / 0.95 - 1) / (1 / 0.9 - 1),
                100 * (1 / 0.95 - 1) / (1 / 0.92 - 1));
}

TEST_CASE(
    "bounds: an allergen on the list keeps its source from nought, one that is missing keeps it small") {
    // Lavender at the end: 0.01 to 0.5 % of coumarin; the threshold is 0.001 % of the product.
    Problem problem = list_of(4, 3);
    Statement declared;
    declared.kind = reading::Kind::declared;
    declared.subject = "coumarin";
    declared.terms = {{3, 100, 5000}};
    declared.min = 10;
    Statement missing = declared;
    missing.kind = reading::Kind::undeclared;
    missing.min.reset();
    missing.max = 10;
    problem.statements = {declared};
    check_range(worked(problem).items()[3], 0.2, 1);
    problem.statements = {missing};
    problem.statements[0].terms[0].low = 500;  // 0.05 %: at most 2 % of it, and the line says 1
    check_range(worked(problem).items()[3], 0, 1);
    problem.statements[0].terms[0].low = 10000;  // 1 %: at most 0.1 %
    check_range(worked(problem).items()[3], 0, 0.1);
}

TEST_CASE("bounds: a problem from outside is refused with its place") {
    CHECK(reading::checked(Problem{}).error().code == result::Code::list_empty);
    Problem problem = list_of(2, 3);
    CHECK(reading::checked(problem).error().code == result::Code::line_beyond);
    problem.line_after = 1;
    CHECK(reading::checked(problem).ok());
    problem.statements = {reading::amount(2, 0, 1)};
    CHECK(reading::checked(problem).error().place == "statements[0]");
    problem.statements = {reading::amount(1, 2 * kOne, 1 * kOne)};
    CHECK(reading::checked(problem).error().code == result::Code::range_crossed);
    problem.statements = {reading::amount(1, -1, {})};
    CHECK(reading::checked(problem).error().place == "statements[0].min");
    problem.statements = {reading::group("x", {0, 0}, 0, 1)};
    CHECK(reading::checked(problem).error().code == result::Code::item_twice);
    CHECK(reading::checked(list_of(201)).error().code == result::Code::too_many);
    CHECK(reading::printed(0, 2 * kOne, 0) == reading::amount(0, 15000, 25000));
    CHECK(reading::printed(0, 200, 2) == reading::amount(0, 150, 250));
}

}  // namespace test_reading_bounds
