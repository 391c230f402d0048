// Linear programs with published or hand-made answers: those that circle under the plain rule, certificates
// that can be checked by hand, and what is degenerate. Answers: GLPK 5.0, agreed by CLP 1.17.6.
#include <array>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/chance.h"
#include "engine/simplex.h"

namespace test_simplex {

using simplex::kInfinity;
using simplex::Problem;
using simplex::Solver;
using simplex::Verdict;

namespace {

Problem rows(std::size_t variables, const std::vector<std::vector<double>>& weights,
             const std::vector<double>& low, const std::vector<double>& high) {
    Problem problem(variables);
    for (std::size_t i = 0; i < weights.size(); ++i) {
        double* const row = problem.add_row(low[i], high[i]);
        for (std::size_t j = 0; j < variables; ++j)
            row[j] = weights[i][j];
    }
    return problem;
}

Problem at_most(std::size_t variables, const std::vector<std::vector<double>>& weights,
                const std::vector<double>& most) {
    return rows(variables, weights, std::vector<double>(most.size(), -kInfinity), most);
}

void check_point(const Solver& solver, const std::vector<double>& point) {
    for (std::size_t j = 0; j < point.size(); ++j)
        CHECK(solver.point()[j] == doctest::Approx(point[j]).epsilon(1e-9));
}

// Whether the multipliers prove that nothing fits, and which rows they need.
std::vector<std::size_t> proven(const Solver& solver) {
    CHECK(simplex::contradiction(solver.problem(), solver.certificate()) < 0);
    std::vector<std::size_t> needed;
    for (std::size_t i = 0; i < solver.problem().rows(); ++i)
        if (solver.certificate().of_rows[i] != 0) needed.push_back(i);
    return needed;
}

}  // namespace

TEST_CASE("simplex: the furniture of Winston's textbook is worth 280 at 2, 0 and 8 (R5)") {
    Problem problem = at_most(3, {{8, 6, 1}, {4, 2, 1.5}, {2, 1.5, 0.5}}, {48, 20, 8});
    problem.high[1] = 5;
    Solver solver(problem);
    REQUIRE(solver.maximise({60, 30, 20}) == Verdict::optimal);
    CHECK(solver.value() == doctest::Approx(280).epsilon(1e-12));
    check_point(solver, {2, 0, 8});
}

TEST_CASE(
    "simplex: programs that circle under the plain rule come to their end (R1 Beale, R2 Chvátal, R3 Kuhn)") {
    Problem beale = at_most(4, {{0.25, -60, -0.04, 9}, {0.5, -90, -0.02, 3}}, {0, 0});
    beale.high[2] = 1;
    Solver one(beale);
    REQUIRE(one.minimise({-0.75, 150, -0.02, 6}) == Verdict::optimal);
    CHECK(one.value() == doctest::Approx(-0.05).epsilon(1e-12));
    check_point(one, {0.04, 0, 1, 0});

    Problem chvatal = at_most(4, {{0.5, -5.5, -2.5, 9}, {0.5, -1.5, -0.5, 1}}, {0, 0});
    chvatal.high[0] = 1;
    Solver two(chvatal);
    REQUIRE(two.maximise({10, -57, -9, -24}) == Verdict::optimal);
    CHECK(two.value() == doctest::Approx(1).epsilon(1e-12));
    check_point(two, {1, 0, 1, 0});

    Solver three(at_most(4, {{-2, -9, 1, 9}, {1.0 / 3, 1, -1.0 / 3, -2}, {2, 3, -1, -12}}, {0, 0, 2}));
    REQUIRE(three.minimise({-2, -3, 1, 12}) == Verdict::optimal);
    CHECK(three.value() == doctest::Approx(-2).epsilon(1e-12));
    check_point(three, {2, 0, 2, 0});
}

TEST_CASE("simplex: the cube of Klee and Minty in three dimensions (R4)") {
    Solver solver(at_most(3, {{1, 0, 0}, {20, 1, 0}, {200, 20, 1}}, {1, 100, 10000}));
    REQUIRE(solver.maximise({100, 10, 1}) == Verdict::optimal);
    CHECK(solver.value() == doctest::Approx(10000).epsilon(1e-12));
    check_point(solver, {0, 0, 10000});
}

TEST_CASE("simplex: one table answers one question after another, and each as if it were the first") {
    chance::Generator chance(5);
    for (int round = 0; round < 60; ++round) {
        const std::size_t n = 2 + chance.below(9), m = 1 + chance.below(7);
        Problem problem(n, -10, 10);
        for (std::size_t i = 0; i < m; ++i) {
            const double middle = static_cast<double>(chance.between(-4, 4));
            double* const row = problem.add_row(chance.below(4) == 0 ? -kInfinity : middle - 3, middle + 3);
            for (std::size_t j = 0; j < n; ++j)
                row[j] = chance.below(3) == 0 ? 0 : static_cast<double>(chance.between(-3, 3));
        }
        Solver warm(problem);
        for (int question = 0; question < 12; ++question) {
            std::vector<double> weights(n);
            for (double& one : weights)
                one = static_cast<double>(chance.between(-2, 2));
            Solver cold(problem);
            const Verdict verdict = warm.minimise(weights);
            REQUIRE(verdict == cold.minimise(weights));
            if (verdict != Verdict::optimal) {
                proven(warm);
                break;
            }
            CHECK(warm.value() == doctest::Approx(cold.value()).epsilon(1e-9));
        }
    }
}

TEST_CASE("simplex: what has no end is said to have none") {
    Problem open(2);
    double* const row = open.add_row(0, 5);
    row[0] = 1;
    row[1] = -1;
    Solver solver(open);
    CHECK(solver.maximise({1, 1}) == Verdict::unbounded);
    REQUIRE(solver.minimise({1, 1}) == Verdict::optimal);
    CHECK(solver.value() == 0);
}

TEST_CASE("simplex: equations that say the same twice, single points, and no rows at all") {
    Solver twice(rows(2, {{1, 1}, {1, 1}, {2, 2}}, {100, 100, 200}, {100, 100, 200}));
    REQUIRE(twice.maximise({1, 0}) == Verdict::optimal);
    CHECK(twice.value() == 100);
    REQUIRE(twice.minimise({1, 0}) == Verdict::optimal);
    CHECK(twice.value() == 0);

    Solver point(rows(2, {{1, 1}, {1, -1}}, {100, 0}, {100, 0}));
    REQUIRE(point.maximise({1, 0}) == Verdict::optimal);
    CHECK(point.value() == 50);

    Solver bare{Problem(3, 1, 4)};
    REQUIRE(bare.maximise({1, 1, -1}) == Verdict::optimal);
    CHECK(bare.value() == 7);
    Solver nothing{Problem(0)};
    CHECK(nothing.fit() == Verdict::optimal);
}

TEST_CASE("simplex: a list in order with B at 10 and D from 15 up contradicts itself in four rows (I1)") {
    // A>=B, B>=C, C>=D, the sum, B, D
    Solver solver(
        rows(4, {{1, -1, 0, 0}, {0, 1, -1, 0}, {0, 0, 1, -1}, {1, 1, 1, 1}, {0, 1, 0, 0}, {0, 0, 0, 1}},
             {0, 0, 0, 100, 10, 15}, {kInfinity, kInfinity, kInfinity, 100, 10, kInfinity}));
    REQUIRE(solver.fit() == Verdict::infeasible);
    CHECK(proven(solver) == std::vector<std::size_t>{1, 2, 4, 5});
}

TEST_CASE("simplex: three in order, the first at most 30, cannot make 100 (I2)") {
    Solver solver(rows(3, {{1, -1, 0}, {0, 1, -1}, {1, 1, 1}, {1, 0, 0}}, {0, 0, 100, -kInfinity},
                       {kInfinity, kInfinity, 100, 30}));
    REQUIRE(solver.fit() == Verdict::infeasible);
    CHECK(proven(solver) == std::vector<std::size_t>{0, 1, 2, 3});
    const auto& of = solver.certificate().of_rows;  // 3(30 - A) + 2(A - B) + (B - C) + (sum - 100) = -10
    CHECK(of[3] / of[2] == doctest::Approx(-3));
    CHECK(of[0] / of[2] == doctest::Approx(2));
    CHECK(of[1] / of[2] == doctest::Approx(1));
}

TEST_CASE("simplex: four above a line at 1, one below, the first at most 20, lack 19 (I3)") {
    Problem problem =
        rows(5, {{1, -1, 0, 0, 0}, {0, 1, -1, 0, 0}, {0, 0, 1, -1, 0}, {1, 1, 1, 1, 1}, {1, 0, 0, 0, 0}},
             {0, 0, 0, 100, -kInfinity}, {kInfinity, kInfinity, kInfinity, 100, 20});
    problem.low[3] = 1;
    problem.high[4] = 1;
    Solver solver(problem);
    REQUIRE(solver.fit() == Verdict::infeasible);
    CHECK(proven(solver) == std::vector<std::size_t>{0, 1, 2, 3, 4});
    const auto& of = solver.certificate().of_rows;
    CHECK(simplex::contradiction(problem, solver.certificate()) / -of[3] == doctest::Approx(-19));
}

}  // namespace test_simplex
