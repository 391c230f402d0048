// Why nothing fits: certificates worked out by hand (I1 to I3), sets of which nothing can be left out, and
// the smallest change that mends it.
#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/chance.h"
#include "engine/reading_work.h"

namespace test_reading_conflict {

using reading::Conflict;
using reading::Problem;
using reading::Said;
using reading::State;
using What = reading::Said::What;

namespace {

constexpr std::int64_t kOne = decimal::kOne;

Problem list_of(std::size_t items, std::optional<std::size_t> line_after = std::nullopt) {
    Problem problem;
    for (std::size_t i = 0; i < items; ++i)
        problem.items.push_back({"", std::string(1, static_cast<char>('A' + i % 26)), false, {}});
    problem.line_after = line_after;
    return problem;
}

Problem plain(std::size_t items) {
    Problem problem = list_of(items, items);
    problem.line = {};
    return problem;
}

Conflict conflict_of(const Problem& problem) {
    const reading::Answer answer = reading::answer(problem, {});
    REQUIRE(answer.state == State::nothing_fits);
    return answer.conflict;
}

bool has(const std::vector<Said>& list, Said said) {
    return std::find(list.begin(), list.end(), said) != list.end();
}

const reading::Mend* mend_of(const Conflict& conflict, Said said) {
    for (const reading::Mend& one : conflict.mends)
        if (one.said == said) return &one;
    return nullptr;
}

bool feasible(const Problem& problem) {
    reading::BoundsWork work(problem, reading::rows_of(problem), false);
    while (work.work(1000)) {
    }
    CHECK(!work.stuck());
    return work.feasible();
}

// The problem with only these sides of statements, and the line open unless it is among them.
Problem only(Problem problem, const std::vector<Said>& said) {
    for (std::size_t i = 0; i < problem.statements.size(); ++i) {
        if (!has(said, {What::statement, i, false})) problem.statements[i].min.reset();
        if (!has(said, {What::statement, i, true})) problem.statements[i].max.reset();
    }
    if (problem.line_after && problem.line.grid > 0 && !has(said, {What::line, *problem.line_after, false}))
        problem.line_after.reset();
    return problem;
}

void check_irreducible(const Problem& problem, const Conflict& conflict) {
    CHECK_FALSE(feasible(only(problem, conflict.said)));
    for (std::size_t i = 0; i < conflict.said.size(); ++i) {
        std::vector<Said> less = conflict.said;
        less.erase(less.begin() + static_cast<std::ptrdiff_t>(i));
        CHECK(feasible(only(problem, less)));
    }
}

// Whether the change alone makes everything fit.
Problem mended(Problem problem, const reading::Mend& mend) {
    if (mend.said.what == What::line) {
        problem.line_after = static_cast<std::size_t>(mend.figure);
        return problem;
    }
    reading::Statement& of = problem.statements[mend.said.at];
    (mend.said.at_most ? of.max : of.min) = mend.figure;
    return problem;
}

}  // namespace

TEST_CASE("conflict: B at 10 and D from 15 up cannot be in order; the sum has nothing to do with it (I1)") {
    Problem problem = plain(4);
    problem.statements = {reading::amount(1, 10 * kOne, 10 * kOne), reading::amount(3, 15 * kOne, {})};
    const Conflict conflict = conflict_of(problem);
    CHECK(conflict.said == std::vector<Said>{{What::statement, 0, true}, {What::statement, 1, false}});
    CHECK(conflict.beside == std::vector<Said>{{What::order, 1, false}, {What::order, 2, false}});
    REQUIRE(conflict.mends.size() == 2);
    CHECK(mend_of(conflict, {What::statement, 0, true})->figure == 15 * kOne);
    CHECK(mend_of(conflict, {What::statement, 1, false})->figure == 10 * kOne);
    check_irreducible(problem, conflict);
}

TEST_CASE("conflict: three in order make no 100 with the first at most 30; it takes a third (I2)") {
    Problem problem = plain(3);
    problem.statements = {reading::amount(0, {}, 30 * kOne)};
    const Conflict conflict = conflict_of(problem);
    CHECK(conflict.said == std::vector<Said>{{What::statement, 0, true}});
    CHECK(conflict.beside.size() == 3);
    CHECK(has(conflict.beside, {What::total, 0, false}));
    CHECK(has(conflict.beside, {What::order, 0, false}));
    CHECK(has(conflict.beside, {What::order, 1, false}));
    CHECK(conflict.mends.front().figure == 333334);  // 33.3334, so that it is enough
}

TEST_CASE(
    "conflict: four above the line, one below, the first at most 20: 24.75, or the line elsewhere (I3)") {
    Problem problem = list_of(5, 4);
    problem.statements = {reading::amount(0, {}, 20 * kOne)};
    const Conflict conflict = conflict_of(problem);
    CHECK(conflict.said == std::vector<Said>{{What::statement, 0, true}, {What::line, 4, false}});
    CHECK(conflict.beside.size() == 5);
    CHECK(has(conflict.beside, {What::below, 4, true}));
    REQUIRE(conflict.mends.size() == 2);
    CHECK(mend_of(conflict, {What::statement, 0, true})->figure == 247500);
    CHECK(mend_of(conflict, {What::line, 4, false})->figure == 5);
    check_irreducible(problem, conflict);
}

TEST_CASE("conflict: with the line unknown, what cannot be true wherever it falls") {
    Problem problem = list_of(6);
    problem.statements = {reading::amount(1, {}, 5 * kOne), reading::amount(3, 6 * kOne, {}),
                          reading::amount(0, 40 * kOne, {})};
    const Conflict conflict = conflict_of(problem);
    CHECK(conflict.said == std::vector<Said>{{What::statement, 0, true}, {What::statement, 1, false}});
    CHECK(conflict.beside.empty());
    CHECK(mend_of(conflict, {What::statement, 1, false})->figure == 5 * kOne);
    check_irreducible(problem, conflict);
}

TEST_CASE("conflict: the smaller of two contradictions is told") {
    // A under 10 contradicts the list by itself; three sums contradict each other as well.
    Problem problem = plain(4);
    problem.statements = {reading::group("ab", {0, 1}, {}, 60 * kOne),
                          reading::group("cd", {2, 3}, {}, 30 * kOne), reading::amount(0, {}, 10 * kOne)};
    const Conflict conflict = conflict_of(problem);
    CHECK(conflict.said == std::vector<Said>{{What::statement, 2, true}});
    CHECK(conflict.mends.empty());  // more than one thing has to change
}

TEST_CASE("conflict: a list that cannot stand above the line says so") {
    const Conflict none = conflict_of(list_of(3, 0));
    CHECK(none.said == std::vector<Said>{{What::line, 0, false}});
    CHECK(none.mends.front().figure == 1);
    const Conflict many = conflict_of(list_of(120, 120));
    CHECK(many.said == std::vector<Said>{{What::line, 120, false}});
    CHECK(many.mends.front().figure == 100);
}

TEST_CASE("conflict: a density out of reach is mended to the nearest that can be") {
    Problem problem = plain(2);
    reading::Statement density;
    density.kind = reading::Kind::property;
    density.subject = "density";
    density.terms = {{0, 9000, 9000}, {1, 10000, 10000}};  // the first makes up half or more
    density.min = 9600;
    problem.statements = {density};
    const Conflict conflict = conflict_of(problem);
    CHECK(conflict.said == std::vector<Said>{{What::statement, 0, false}});
    CHECK(conflict.mends.front().figure == 9473);  // 1/(0.5/0.9 + 0.5) = 0.947368
    CHECK(feasible(mended(problem, conflict.mends.front())));
}

TEST_CASE("conflict: whatever is said at random, the set contradicts itself and each of it is needed") {
    chance::Generator chance(17);
    int told = 0, mends = 0;
    for (int round = 0; round < 400; ++round) {
        const std::size_t n = 2 + chance.below(9);
        Problem problem = list_of(n);
        if (chance.below(3) > 0) problem.line_after = chance.below(n + 1);
        const std::size_t count = 1 + chance.below(5);
        for (std::size_t i = 0; i < count; ++i) {
            const std::int64_t low = chance.between(0, 60) * kOne / 2,
                               high = low + chance.between(0, 20) * kOne;
            std::vector<std::size_t> items;
            for (std::size_t j = 0; j < n; ++j)
                if (chance.below(3) == 0) items.push_back(j);
            if (items.empty()) items.push_back(chance.below(n));
            problem.statements.push_back(
                reading::group("", items, chance.below(3) == 0 ? std::optional<std::int64_t>() : low,
                               chance.below(3) == 0 ? std::optional<std::int64_t>() : high));
        }
        if (feasible(problem)) continue;
        ++told;
        const Conflict conflict = conflict_of(problem);
        CAPTURE(round);
        check_irreducible(problem, conflict);
        for (const reading::Mend& mend : conflict.mends) {
            ++mends;
            if (mend.said.what == What::statement && mend.said.at_most &&
                problem.statements[mend.said.at].min)
                CHECK(mend.figure >= *problem.statements[mend.said.at].min);
            CHECK(feasible(mended(problem, mend)));
        }
    }
    CHECK(told > 100);
    CHECK(mends > 50);
}

}  // namespace test_reading_conflict
