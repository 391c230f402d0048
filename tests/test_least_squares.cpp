// The nearest point: worked by hand, by the conditions that only a nearest point meets, and where columns say
// the same. Hundreds of random cases against an independent library: tests/compare_quadprog.mjs.
#include <cmath>
#include <vector>

#include "doctest/doctest.h"
#include "engine/chance.h"
#include "engine/least_squares.h"

namespace test_least_squares {

using least_squares::Answer;
using least_squares::Problem;

namespace {

Problem problem_of(const std::vector<std::vector<double>>& rows, const std::vector<double>& wanted,
                   double total) {
    Problem problem;
    problem.columns = rows.front().size();
    problem.total = total;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        double* row = problem.add_row(wanted[i]);
        for (std::size_t j = 0; j < problem.columns; ++j)
            row[j] = rows[i][j];
    }
    return problem;
}

double residual_at(const Problem& problem, const std::vector<double>& x) {
    double sum = 0;
    for (std::size_t i = 0; i < problem.rows(); ++i) {
        double off = problem.wanted[i];
        for (std::size_t j = 0; j < problem.columns; ++j)
            off -= problem.row(i)[j] * x[j];
        sum += off * off;
    }
    return sum;
}

// No step from a column that holds something to another one lessens the sum of squares: since that is convex,
// nothing is nearer.
void check_nearest(const Problem& problem, const Answer& answer) {
    REQUIRE(answer.settled);
    double sum = 0, scale = 1;
    for (const double one : answer.point) {
        CHECK(one >= 0);
        sum += one;
    }
    CHECK(sum == doctest::Approx(problem.total).epsilon(1e-10));
    CHECK(answer.residual == doctest::Approx(residual_at(problem, answer.point)).epsilon(1e-9));
    std::vector<double> slope(problem.columns, 0.0);
    for (std::size_t i = 0; i < problem.rows(); ++i) {
        double off = problem.wanted[i];
        for (std::size_t j = 0; j < problem.columns; ++j)
            off -= problem.row(i)[j] * answer.point[j];
        for (std::size_t j = 0; j < problem.columns; ++j) {
            slope[j] += off * problem.row(i)[j];
            scale += std::abs(problem.wanted[i] * problem.row(i)[j]);
        }
    }
    for (std::size_t from = 0; from < problem.columns; ++from)
        for (std::size_t to = 0; to < problem.columns; ++to)
            if (answer.point[from] > 1e-9) CHECK(slope[to] - slope[from] <= 1e-7 * scale);
}

}  // namespace

TEST_CASE(
    "least squares: of two columns the point between them that is nearest, and no further than an end") {
    // (x - 30)² + (y - 50)² with x + y = 100: x = 40, y = 60.
    Answer answer = least_squares::nearest(problem_of({{1, 0}, {0, 1}}, {30, 50}, 100));
    REQUIRE(answer.settled);
    CHECK(answer.point[0] == doctest::Approx(40));
    CHECK(answer.point[1] == doctest::Approx(60));
    CHECK(answer.residual == doctest::Approx(200));
    // Wanted beyond the end: x would be -35, so it is 0.
    answer = least_squares::nearest(problem_of({{1, 0}, {0, 1}}, {-20, 150}, 100));
    CHECK(answer.point == std::vector<double>{0, 100});
    CHECK(answer.residual == doctest::Approx(400 + 2500));
}

TEST_CASE("least squares: what can be met is met") {
    const Problem problem =
        problem_of({{0.7, 0.2, 0.1}, {0.1, 0.6, 0.2}, {0.2, 0.2, 0.7}}, {34, 29, 37}, 100);
    const Answer answer = least_squares::nearest(problem);
    check_nearest(problem, answer);
    CHECK(answer.residual < 1e-18);
}

TEST_CASE("least squares: columns that say the same, or nothing, are no trouble") {
    const Problem same = problem_of({{1, 1, 0, 1}, {2, 2, 1, 2}}, {40, 70}, 50);
    check_nearest(same, least_squares::nearest(same));
    const Problem nothing = problem_of({{0, 0, 0}}, {7}, 10);
    check_nearest(nothing, least_squares::nearest(nothing));
    Problem one;
    one.columns = 1;
    one.total = 3;
    one.add_row(1)[0] = 1;
    CHECK(least_squares::nearest(one).point == std::vector<double>{3});
    Problem no_rows;
    no_rows.columns = 2;
    check_nearest(no_rows, least_squares::nearest(no_rows));
    CHECK_FALSE(least_squares::nearest(Problem{}).settled);
    Problem no_total = problem_of({{1, 1}}, {5}, 0);
    CHECK(least_squares::nearest(no_total).point == std::vector<double>{0, 0});
}

TEST_CASE(
    "least squares: two thousand random cases, wide and narrow, each meet the conditions of a nearest "
    "point") {
    chance::Generator chance(17);
    std::size_t most = 0;
    for (int round = 0; round < 2000; ++round) {
        Problem problem;
        problem.columns = 1 + chance.below(20);
        problem.total = chance.below(5) == 0 ? 1 : 100;
        const std::size_t rows = 1 + chance.below(25);
        const bool coarse = chance.below(3) == 0;  // ties and columns that are sums of others
        for (std::size_t i = 0; i < rows; ++i) {
            double* row = problem.add_row(chance.unit() * problem.total);
            for (std::size_t j = 0; j < problem.columns; ++j)
                row[j] = coarse ? static_cast<double>(chance.between(-2, 3)) : chance.unit();
        }
        if (problem.columns > 2 && chance.below(4) == 0)
            for (std::size_t i = 0; i < rows; ++i)
                problem.weights[i * problem.columns + 1] = problem.weights[i * problem.columns];
        const Answer answer = least_squares::nearest(problem);
        check_nearest(problem, answer);
        if (answer.steps > most) most = answer.steps;
    }
    CHECK(most < 60);
}

}  // namespace test_least_squares
