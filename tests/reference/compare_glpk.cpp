// compare_glpk [PROBLEMS]: random readings, all kinds of statements, worked out by the engine and by GLPK on
// the plain rows in percents: the same verdict, every bound within 1e-6, and of each conflict that GLPK too
// finds nothing that fits its set, and something as soon as one of the set is left out. Seeds are fixed.
// Prints what it saw; exit 1 when anything differs.
#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>

#include "by_glpk.h"
#include "engine/chance.h"
#include "engine/reading_work.h"

namespace {

using reading::Kind;
using reading::Problem;
using reading::Said;
using reading::Statement;

constexpr std::int64_t kOne = decimal::kOne;

// A formula that keeps to the list, so that about half of the problems have an answer.
std::vector<double> formula_of(chance::Generator& chance, const Problem& problem, std::size_t after) {
    const std::size_t n = problem.items.size();
    std::vector<double> percents(n, 0.0);
    double rest = 100;
    std::vector<double> gaps;
    std::vector<std::size_t> above;
    for (std::size_t i = 0; i < n; ++i) {
        if (problem.items[i].free) {
            percents[i] = static_cast<double>(chance.below(30)) / 10;
        } else if (i >= after) {
            percents[i] = static_cast<double>(chance.below(11)) / 10;
        } else {
            above.push_back(i);
            percents[i] = 1;
        }
        rest -= percents[i];
    }
    double sum = 0;
    for (std::size_t j = 0; j < above.size(); ++j)
        sum += gaps.emplace_back(chance.below(4) == 0 ? 0 : chance.unit());
    for (std::size_t j = 0; j < above.size() && sum > 0 && rest > 0; ++j)
        for (std::size_t i = 0; i <= j; ++i)
            percents[above[i]] += rest * gaps[j] / sum / static_cast<double>(j + 1);
    return percents;
}

std::int64_t near(double value) {
    return decimal::rounded(value);
}

Statement statement_of(chance::Generator& chance, std::size_t n, const std::vector<double>& percents) {
    Statement made;
    made.kind = static_cast<Kind>(chance.below(reading::kKinds));
    const bool property = made.kind == Kind::property;
    if (property) made.subject = chance.below(2) == 0 ? "density" : "iodine_value";
    const bool density = made.subject == "density";
    const std::size_t one = chance.below(n);
    double low = 0, high = 0;  // of the sum, for the formula
    for (std::size_t i = 0; i < n; ++i) {
        if (made.kind == Kind::amount ? i != one : !density && i != one && chance.below(3) != 0) continue;
        reading::Term term{i};
        if (density) {
            term.low = chance.between(7000, 12000);
            term.high = term.low + chance.between(0, 2) * 300;
        } else if (property) {
            term.low = chance.between(0, 150) * kOne;
            term.high = term.low + chance.between(0, 20) * kOne;
        } else if (made.kind != Kind::amount && made.kind != Kind::group) {
            term.low = chance.between(0, 20) * 500;
            term.high = term.low + chance.between(0, 200) * 500;
        }
        made.terms.push_back(term);
        const double a = decimal::to_double(term.low), b = decimal::to_double(term.high);
        low += density ? percents[i] / 100 / b : percents[i] / 100 * a;
        high += density ? percents[i] / 100 / a : percents[i] / 100 * b;
    }
    if (density) std::swap(low, high), low = 1 / low, high = 1 / high;
    // About where the formula stands, or anywhere.
    const double width = chance.below(3) == 0 ? 0.02 : property ? 2 : 8;
    double least = high - chance.unit() * width, most = low + chance.unit() * width;
    if (chance.below(5) == 0) least += width, most -= width / 2;
    const std::uint64_t sides = chance.below(4);
    if (made.kind == Kind::declared ||
        (made.kind != Kind::undeclared && made.kind != Kind::limit && sides != 1))
        made.min = std::clamp<std::int64_t>(near(least), 0, 100 * kOne);
    if (!made.min || (made.kind != Kind::declared && sides > 1))
        made.max = std::clamp<std::int64_t>(near(most), 0, 100 * kOne);
    if (made.min && made.max && *made.min > *made.max) std::swap(made.min, made.max);
    if (made.kind == Kind::amount && chance.below(4) == 0) made.min = made.max = near(percents[one]);
    made.on = chance.below(8) != 0;
    return made;
}

Problem problem_of(chance::Generator& chance) {
    Problem problem;
    const std::size_t n = 1 + chance.below(chance.below(10) == 0 ? 24 : 9);
    for (std::size_t i = 0; i < n; ++i)
        problem.items.push_back({"", std::to_string(i), i > 0 && chance.below(12) == 0, {}});
    const std::size_t after = 1 + chance.below(n);
    if (chance.below(3) != 0) problem.line_after = chance.below(20) == 0 ? chance.below(n + 1) : after;
    const std::vector<double> percents = formula_of(chance, problem, after);
    const std::size_t statements = chance.below(6);
    for (std::size_t i = 0; i < statements; ++i)
        problem.statements.push_back(statement_of(chance, n, percents));
    return problem;
}

int wrong = 0;
void complain(int number, const std::string& what) {
    if (++wrong <= 20) std::printf("problem %d: %s\n", number, what.c_str());
}

bool fits_by_reference(const Problem& problem) {
    const std::vector<reading::Row> rows = reading::rows_of(problem);
    for (const std::size_t after : reading::places_of(problem))
        if (reference::Glpk(reading::natural_of(problem, rows, after).percents).fits()) return true;
    return false;
}

bool has(const std::vector<Said>& list, const Said& said) {
    for (const Said& one : list)
        if (one == said) return true;
    return false;
}

Problem only(Problem problem, const std::vector<Said>& said) {
    for (std::size_t i = 0; i < problem.statements.size(); ++i) {
        if (!has(said, {Said::What::statement, i, false})) problem.statements[i].min.reset();
        if (!has(said, {Said::What::statement, i, true})) problem.statements[i].max.reset();
    }
    if (problem.line_after && !has(said, {Said::What::line, *problem.line_after, false}))
        problem.line_after.reset();
    return problem;
}

}  // namespace

int main(int count, char** arguments) {
    const int problems = count > 1 ? std::atoi(arguments[1]) : 10000;
    chance::Generator chance(20261126);
    int fit = 0, conflicts = 0, bounds = 0, kinds[reading::kKinds] = {};
    double farthest = 0;
    for (int number = 0; number < problems; ++number) {
        const Problem problem = problem_of(chance);
        if (!reading::checked(problem)) {
            complain(number, "refused");
            continue;
        }
        for (const Statement& one : problem.statements)
            kinds[static_cast<int>(one.kind)] += one.on ? 1 : 0;
        const std::size_t n = problem.items.size();
        const std::vector<reading::Row> rows = reading::rows_of(problem);
        reading::BoundsWork ours(problem, rows, false);
        while (ours.work(1000)) {
        }
        if (ours.stuck()) complain(number, "stuck");
        bool feasible = false;
        std::vector<double> least(n, 1e9), most(n, -1e9), own(n, 0.0);
        for (const std::size_t after : reading::places_of(problem)) {
            reference::Glpk other(reading::natural_of(problem, rows, after).percents);
            if (!other.fits()) continue;
            feasible = true;
            for (std::size_t i = 0; i < n; ++i) {
                own[i] = 1;
                double value = 0;
                if (!other.best(own, false, value) || std::isnan(value)) complain(number, "no least by GLPK");
                least[i] = std::min(least[i], value);
                if (!other.best(own, true, value) || std::isnan(value)) complain(number, "no most by GLPK");
                most[i] = std::max(most[i], value);
                own[i] = 0;
            }
        }
        if (feasible != ours.feasible()) {
            complain(number, feasible ? "fits by GLPK, not by ours" : "fits by ours, not by GLPK");
            continue;
        }
        if (feasible) {
            ++fit;
            for (std::size_t i = 0; i < n; ++i) {
                bounds += 2;
                const double off = std::max(std::abs(least[i] - ours.items()[i].min),
                                            std::abs(most[i] - ours.items()[i].max));
                farthest = std::max(farthest, off);
                if (!(off <= 1e-6)) complain(number, "a bound differs by " + std::to_string(off));
            }
            continue;
        }
        reading::ConflictWork why(problem);
        while (why.work(1000)) {
        }
        const std::vector<Said>& said = why.conflict().said;
        ++conflicts;
        if (fits_by_reference(only(problem, said))) complain(number, "the conflict's set fits by GLPK");
        for (std::size_t i = 0; i < said.size(); ++i) {
            std::vector<Said> less = said;
            less.erase(less.begin() + static_cast<std::ptrdiff_t>(i));
            if (!fits_by_reference(only(problem, less)))
                complain(number, "one of the conflict's set is not needed");
        }
    }
    std::printf("%d problems: %d fit, %d conflicts, %d bounds, farthest apart %.2g; statements by kind",
                problems, fit, conflicts, bounds, farthest);
    for (const int one : kinds)
        std::printf(" %d", one);
    std::printf("\n");
    return wrong == 0 && fit > problems / 4 && conflicts > problems / 20 ? 0 : 1;
}
