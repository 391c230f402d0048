// The active set of Lawson and Hanson (1974), with a row that holds the sum. Columns are let in one at a
// time, the one along which the residual falls most steeply; the best of those that are in is found by
// orthogonalising, not by normal equations, which would square what is lost. One that would go below nought
// stops the step and leaves. After each letting in the residual is truly smaller, so that no set comes twice
// and it ends.
#include "least_squares.h"

#include <cmath>

namespace least_squares {
namespace {

constexpr double kSlope = 1e-10;  // flatter than this, of the columns' own size, is level
constexpr double kAlike = 1e-9;   // so little of a column left over: it says what the others say

struct Work {
    const Problem& problem;
    std::vector<double> x, gap;       // gap: wanted - weights · x
    std::vector<std::size_t> in;      // the columns that may be above nought; the first takes up the sum
    std::vector<double> best;         // of those
    std::vector<double> basis, part;  // the orthogonal columns, and how a column is made of them

    explicit Work(const Problem& given) : problem(given), x(given.columns, 0.0) {}

    double at(std::size_t row, std::size_t column) const { return problem.row(row)[column]; }

    void measure() {
        gap = problem.wanted;
        for (std::size_t i = 0; i < gap.size(); ++i)
            for (std::size_t j = 0; j < x.size(); ++j)
                gap[i] -= at(i, j) * x[j];
    }

    // How much a step from `from` to `to` lessens half the sum of squares, and the length of that step.
    double slope(std::size_t from, std::size_t to, double& size) const {
        double sum = 0;
        size = 0;
        for (std::size_t i = 0; i < gap.size(); ++i) {
            const double way = at(i, to) - at(i, from);
            sum += way * gap[i];
            size += way * way;
        }
        size = std::sqrt(size);
        return sum;
    }

    // The best point of those that are in, whatever its signs: the first column is the rest of the sum, the
    // others are told by how they differ from it. False: the last one says what the others say.
    bool solve() {
        const std::size_t rows = gap.size(), count = in.size() - 1;
        basis.assign(rows * count, 0);
        part.assign(count * count, 0);
        std::vector<double> aim(rows), along(count, 0.0);
        for (std::size_t i = 0; i < rows; ++i)
            aim[i] = problem.wanted[i] - problem.total * at(i, in[0]);
        for (std::size_t k = 0; k < count; ++k) {
            double* const own = basis.data() + k * rows;
            double whole = 0, left = 0;
            for (std::size_t i = 0; i < rows; ++i) {
                own[i] = at(i, in[k + 1]) - at(i, in[0]);
                whole += own[i] * own[i];
            }
            for (const bool again : {false, true}) {  // the second time takes off what rounding left
                for (std::size_t j = 0; j < k; ++j) {
                    const double* const other = basis.data() + j * rows;
                    double share = 0;
                    for (std::size_t i = 0; i < rows; ++i)
                        share += other[i] * own[i];
                    for (std::size_t i = 0; i < rows; ++i)
                        own[i] -= share * other[i];
                    part[j * count + k] += share;
                }
                if (again) break;
            }
            for (std::size_t i = 0; i < rows; ++i)
                left += own[i] * own[i];
            if (left <= kAlike * kAlike * whole || left == 0) return false;
            const double length = std::sqrt(left);
            part[k * count + k] = length;
            for (std::size_t i = 0; i < rows; ++i) {
                own[i] /= length;
                along[k] += own[i] * aim[i];
            }
            for (std::size_t i = 0; i < rows; ++i)
                aim[i] -= along[k] * own[i];
        }
        best.assign(in.size(), 0);
        best[0] = problem.total;
        for (std::size_t k = count; k-- > 0;) {
            double value = along[k];
            for (std::size_t j = k + 1; j < count; ++j)
                value -= part[k * count + j] * best[j + 1];
            best[k + 1] = value / part[k * count + k];
            best[0] -= best[k + 1];
        }
        return true;
    }

    void leave(std::size_t place) {
        x[in[place]] = 0;
        in.erase(in.begin() + static_cast<std::ptrdiff_t>(place));
    }

    // To the best point of those that are in, letting go of those that would fall below nought on the way.
    bool settle() {
        while (solve()) {
            double far = 1;
            std::size_t stops = in.size();
            for (std::size_t k = 0; k < in.size(); ++k) {
                if (best[k] >= 0) continue;
                const double share = x[in[k]] / (x[in[k]] - best[k]);
                if (stops == in.size() || share < far) far = share, stops = k;
            }
            for (std::size_t k = 0; k < in.size(); ++k)
                x[in[k]] += (best[k] - x[in[k]]) * far;
            if (stops == in.size()) return true;
            leave(stops);
        }
        return false;
    }
};

}  // namespace

Answer nearest(const Problem& problem) {
    Answer answer;
    const std::size_t columns = problem.columns;
    Work work(problem);
    if (columns == 0 || !(problem.total > 0)) {
        work.measure();
        answer.settled = !(problem.total > 0);
    } else {
        // From the best single one.
        double least = 0;
        for (std::size_t j = 0; j < columns; ++j) {
            double sum = 0;
            for (std::size_t i = 0; i < problem.rows(); ++i) {
                const double off = problem.wanted[i] - work.at(i, j) * problem.total;
                sum += off * off;
            }
            if (j > 0 && !(sum < least)) continue;
            least = sum;
            work.in.assign(1, j);
        }
        work.x[work.in[0]] = problem.total;
        double before = least;
        std::vector<bool> barred(columns, false);  // let in and found to bring nothing
        const std::size_t most = 50 + 20 * columns;
        while (answer.steps < most) {
            work.measure();
            double length = 0;
            for (const double one : work.gap)
                length += one * one;
            std::size_t enters = columns;
            double steepest = 0;
            for (std::size_t j = 0; j < columns; ++j) {
                if (barred[j] || work.x[j] > 0) continue;
                double size = 0;
                const double slope = work.slope(work.in[0], j, size);
                if (size == 0 || slope <= kSlope * size * std::sqrt(length)) continue;
                if (slope / size > steepest) steepest = slope / size, enters = j;
            }
            if (enters == columns) {
                answer.settled = true;
                break;
            }
            ++answer.steps;
            const std::vector<double> kept = work.x;
            const std::vector<std::size_t> stood = work.in;
            work.in.push_back(enters);
            bool better = work.settle();
            if (better) {
                work.measure();
                double now = 0;
                for (const double one : work.gap)
                    now += one * one;
                better = now < before;
                if (better) before = now;
            }
            if (better) {
                barred.assign(columns, false);
            } else {
                work.x = kept;
                work.in = stood;
                barred[enters] = true;
            }
        }
        work.measure();
    }
    answer.point = work.x;
    for (const double one : work.gap)
        answer.residual += one * one;
    return answer;
}

}  // namespace least_squares
