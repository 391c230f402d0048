// What reading a list costs: all bounds of twenty ingredients with three limits and a group, by our linear
// programming and, natively, by GLPK on the same rows, each search from where the last one ended; forty
// ingredients with the 1 % line unknown; four thousand draws. One line of JSON; natively and as wasm under
// node from one source. Medians of batches, as in bench_analysis.
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <memory>
#include <optional>
#include <vector>

#include "engine/reading_work.h"
#ifdef TAREBENCH_GLPK
#include "reference/by_glpk.h"
#endif

namespace {

using Clock = std::chrono::steady_clock;
using reading::Problem;

constexpr std::int64_t kOne = decimal::kOne;
double sink = 0;

// Median over batches of the seconds for one run.
template <class Work>
double seconds(int batches, double least, const Work& work) {
    int runs = 1;
    const auto batch = [&] {
        const Clock::time_point start = Clock::now();
        for (int i = 0; i < runs; ++i)
            sink += work();
        return std::chrono::duration<double>(Clock::now() - start).count();
    };
    while (batch() < least)
        runs *= 2;
    std::vector<double> taken;
    for (int i = 0; i < batches; ++i)
        taken.push_back(batch() / runs);
    std::sort(taken.begin(), taken.end());
    return taken[taken.size() / 2];
}

Problem list_of(std::size_t items, std::optional<std::size_t> line_after) {
    Problem problem;
    for (std::size_t i = 0; i < items; ++i)
        problem.items.push_back({"", "x", false, {}});
    problem.line_after = line_after;
    return problem;
}

Problem with_limits(std::optional<std::size_t> line_after) {
    Problem problem = list_of(20, line_after);
    problem.statements = {reading::amount(0, 20 * kOne, 45 * kOne), reading::amount(4, {}, 8 * kOne),
                          reading::amount(9, {}, 2 * kOne),
                          reading::group("waxes", {1, 3, 6}, 20 * kOne, 35 * kOne)};
    return problem;
}

// The least and the most of every sum, warm. A factory makes the solver, so that its setting up counts too.
template <class Make, class Best>
double all_bounds(const std::vector<std::vector<double>>& sums, const Make& make, const Best& best) {
    auto solver = make();
    double total = 0;
    for (const bool most : {false, true})
        for (const std::vector<double>& weights : sums)
            total += best(*solver, weights, most);
    return total;
}

double ours(const simplex::Problem& problem, const std::vector<std::vector<double>>& sums) {
    return all_bounds(
        sums, [&] { return std::make_unique<simplex::Solver>(problem); },
        [](simplex::Solver& solver, const std::vector<double>& weights, bool most) {
            most ? solver.maximise(weights) : solver.minimise(weights);
            return solver.value();
        });
}

#ifdef TAREBENCH_GLPK
double by_glpk(const simplex::Problem& problem, const std::vector<std::vector<double>>& sums) {
    return all_bounds(
        sums, [&] { return std::make_unique<reference::Glpk>(problem); },
        [](reference::Glpk& solver, const std::vector<double>& weights, bool most) {
            double value = 0;
            solver.best(weights, most, value);
            return value;
        });
}
#endif

double bounds_of(const Problem& problem) {
    reading::BoundsWork work(problem, reading::rows_of(problem), false);
    while (work.work(1000)) {
    }
    return work.items()[0].max;
}

struct Drawn {
    double ms = 0;
    reading::Method method = reading::Method::none;
    double effective = 0;
};
Drawn draws_of(const Problem& problem, int batches) {
    const std::vector<reading::Row> rows = reading::rows_of(problem);
    reading::BoundsWork bounds(problem, rows, true);
    while (bounds.work(1000)) {
    }
    Drawn drawn;
    drawn.ms = 1e3 * seconds(batches, 1e-3, [&] {
                   reading::SampleWork sample(problem.items.size(), bounds.branches(), rows, 4000, 7);
                   while (sample.work(100)) {
                   }
                   drawn.method = sample.method();
                   drawn.effective = 1e9;
                   for (const reading::Likely& one : sample.likely())
                       drawn.effective = std::min(drawn.effective, one.effective);
                   return sample.likely()[0].mean;
               });
    return drawn;
}

}  // namespace

int main() {
    const Problem problem = with_limits(12);
    const std::vector<reading::Row> rows = reading::rows_of(problem);
    const reading::Shape shape = reading::shape_of(problem, rows, 12);
    const simplex::Problem percents = reading::natural_of(problem, rows, 12).percents;
    std::vector<std::vector<double>> plain, gaps;
    for (std::size_t i = 0; i < 20; ++i) {
        double constant = 0;
        plain.emplace_back(20, 0.0)[i] = 1;
        gaps.push_back(shape.in_gaps(plain.back(), constant));
    }
    const double in_gaps = 1e6 * seconds(21, 0.01, [&] { return ours(shape.gaps, gaps); });
    const double in_percents = 1e6 * seconds(21, 0.01, [&] { return ours(percents, plain); });
    double glpk_gaps = 0, glpk_percents = 0;
#ifdef TAREBENCH_GLPK
    glpk_gaps = 1e6 * seconds(21, 0.01, [&] { return by_glpk(shape.gaps, gaps); });
    glpk_percents = 1e6 * seconds(21, 0.01, [&] { return by_glpk(percents, plain); });
    if (std::abs(ours(percents, plain) - by_glpk(percents, plain)) > 1e-4 ||
        std::abs(ours(shape.gaps, gaps) - by_glpk(shape.gaps, gaps)) > 1e-4)
        return std::fputs("bench: the two do not agree\n", stderr), 1;
#endif
    const Problem forty = list_of(40, {});
    const double unknown = 1e3 * seconds(11, 0.02, [&] { return bounds_of(forty); });
    const Drawn drawn = draws_of(list_of(20, {}), 11), limited = draws_of(with_limits({}), 3);
    std::printf(
        "{\"bounds_us\":%.1f,\"bounds_percents_us\":%.1f,\"glpk_us\":%.1f,\"glpk_percents_us\":%.1f,"
        "\"forty_ms\":%.2f,\"draws_ms\":%.2f,\"draws_method\":%d,\"limited_ms\":%.1f,\"limited_method\":%d,"
        "\"limited_effective\":%.0f,\"sink\":%d}\n",
        in_gaps, in_percents, glpk_gaps, glpk_percents, unknown, drawn.ms, static_cast<int>(drawn.method),
        limited.ms, static_cast<int>(limited.method), limited.effective, sink > 0 ? 1 : 0);
    return 0;
}
