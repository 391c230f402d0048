// The bounded-variable primal simplex on a table without a right-hand side: the sum of each row is a variable
// with the row's bounds, so that rows, equations and ranges are all alike, and "resting at a bound" is all
// there is to know about what is not basic. First the sum of all overruns is brought to nought, then the
// asked sum goes down. The steepest column goes first; after some steps in place, Bland's rule (1977), under
// which none of them can come round again, until there is progress.
#include "simplex.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace simplex {
namespace {

constexpr double kPivot = 1e-9;       // smaller ones are noise
constexpr double kSlope = 1e-9;       // flatter columns are not worth a step
constexpr std::size_t kIdle = 30;     // steps in place before the careful rule
constexpr std::size_t kRework = 150;  // pivots after which the table is made anew from the rows
constexpr std::size_t kNobody = static_cast<std::size_t>(-1);

// Power of two, so that scaling rounds nothing.
double scale_of(const double* row, std::size_t count) {
    double most = 0;
    for (std::size_t j = 0; j < count; ++j)
        most = std::max(most, std::abs(row[j]));
    if (most == 0) return 1;
    int exponent = 0;
    std::frexp(most, &exponent);
    return std::ldexp(1.0, -exponent);
}

}  // namespace

double contradiction(const Problem& problem, const Certificate& certificate) {
    double most = 0;
    const auto add = [&](double multiplier, double low, double high) {
        if (multiplier > 0) most += multiplier * high;
        if (multiplier < 0) most += multiplier * low;
    };
    for (std::size_t i = 0; i < problem.rows(); ++i)
        add(certificate.of_rows[i], problem.row_low[i], problem.row_high[i]);
    for (std::size_t j = 0; j < problem.variables(); ++j) {
        double sum = 0, size = 0;
        for (std::size_t i = 0; i < problem.rows(); ++i) {
            const double part = certificate.of_rows[i] * problem.row(i)[j];
            sum += part;
            size += std::abs(part);
        }
        if (std::abs(sum) > size * 1e-12) add(-sum, problem.low[j], problem.high[j]);
    }
    return most;
}

Solver::Solver(Problem problem) : problem_(std::move(problem)) {
    columns_ = problem_.variables();
    lines_ = problem_.rows();
    low_ = problem_.low;
    high_ = problem_.high;
    for (std::size_t i = 0; i < lines_; ++i) {
        scale_.push_back(scale_of(problem_.row(i), columns_));
        low_.push_back(problem_.row_low[i] * scale_[i]);
        high_.push_back(problem_.row_high[i] * scale_[i]);
    }
    start();
}

// Every row's sum is basic, every variable rests.
void Solver::start() {
    table_ = problem_.weights;
    basic_.resize(lines_);
    resting_.resize(columns_);
    rests_at_.resize(columns_);
    value_of_.assign(lines_, 0);
    for (std::size_t i = 0; i < lines_; ++i) {
        basic_[i] = columns_ + i;
        for (std::size_t j = 0; j < columns_; ++j)
            line(i)[j] *= scale_[i];
    }
    for (std::size_t j = 0; j < columns_; ++j) {
        resting_[j] = j;
        rests_at_[j] = low_[j] > -kInfinity ? low_[j] : high_[j] < kInfinity ? high_[j] : 0;
    }
    since_rework_ = 0;
    fitted_ = false;
    settle();
}

void Solver::settle() {
    for (std::size_t i = 0; i < lines_; ++i) {
        const double* at = line(i);
        double sum = 0;
        for (std::size_t j = 0; j < columns_; ++j)
            sum += at[j] * rests_at_[j];
        value_of_[i] = sum;
    }
}

// The table anew from the rows, for the same who are basic: what the pivots gathered in rounding is gone.
void Solver::rework() {
    std::vector<double> kept(columns_ + lines_, 0);
    std::vector<bool> wanted(columns_ + lines_, false);
    for (std::size_t j = 0; j < columns_; ++j)
        kept[resting_[j]] = rests_at_[j];
    for (const std::size_t one : basic_)
        wanted[one] = true;
    start();
    for (std::size_t j = 0; j < columns_; ++j) {
        if (!wanted[j]) continue;
        std::size_t best = kNobody;
        for (std::size_t i = 0; i < lines_; ++i) {
            const bool leaves = basic_[i] >= columns_ && !wanted[basic_[i]];
            if (leaves && std::abs(line(i)[j]) > (best == kNobody ? kPivot : std::abs(line(best)[j])))
                best = i;
        }
        if (best != kNobody) pivot(best, j);
    }
    for (std::size_t j = 0; j < columns_; ++j) {
        const std::size_t one = resting_[j];
        const double was = wanted[one] ? low_[one] : kept[one];
        rests_at_[j] = std::clamp(was == -kInfinity ? 0 : was, low_[one], std::max(low_[one], high_[one]));
    }
    since_rework_ = 0;
    settle();
}

// Line and column change places; `slope_` goes along.
void Solver::pivot(std::size_t at, std::size_t column) {
    double* const own = line(at);
    const double by = 1 / own[column];
    own[column] = -1;
    for (std::size_t j = 0; j < columns_; ++j)
        own[j] *= -by;
    const auto carry = [&](double* other) {
        const double factor = other[column];
        if (factor == 0) return;
        other[column] = 0;
        for (std::size_t j = 0; j < columns_; ++j)
            other[j] += factor * own[j];
    };
    for (std::size_t i = 0; i < lines_; ++i)
        if (i != at) carry(line(i));
    if (!slope_.empty()) carry(slope_.data());
    std::swap(basic_[at], resting_[column]);
    ++pivots_;
    ++since_rework_;
}

// The column to move along, and which way; kNobody: there is none.
std::size_t Solver::enter(bool& up) const {
    std::size_t best = kNobody;
    double steepest = kSlope;
    for (std::size_t j = 0; j < columns_; ++j) {
        const double slope = slope_[j];
        if (std::abs(slope) <= steepest && !(careful_ && std::abs(slope) > kSlope)) continue;
        const std::size_t one = resting_[j];
        if (slope < 0 ? rests_at_[j] >= high_[one] : rests_at_[j] <= low_[one]) continue;
        if (careful_ && best != kNobody && resting_[best] < one) continue;
        best = j;
        up = slope < 0;
        steepest = std::abs(slope);
    }
    return best;
}

// Moves along a column until something comes to its bound, which then rests there. False: nothing stops it.
bool Solver::step(std::size_t column, bool up, bool fitting, bool& unbounded) {
    const double sign = up ? 1 : -1;
    const std::size_t entering = resting_[column];
    // How far until line i meets a bound; beyond it already (while fitting): until it is back, or never.
    const auto room = [&](std::size_t i, double rate, bool& at_high) {
        const std::size_t one = basic_[i];
        at_high = rate > 0;
        double bound = at_high ? high_[one] : low_[one];
        if (fitting && value_of_[i] < low_[one] - kFits) {
            if (rate < 0) return kInfinity;
            bound = low_[one];
            at_high = false;
        } else if (fitting && value_of_[i] > high_[one] + kFits) {
            if (rate > 0) return kInfinity;
            bound = high_[one];
            at_high = true;
        }
        return (bound - value_of_[i]) / rate;
    };
    double least = kInfinity;
    for (std::size_t i = 0; i < lines_; ++i) {
        const double rate = line(i)[column] * sign;
        if (std::abs(rate) <= kPivot) continue;
        bool at_high = false;
        const double slack = careful_ ? 0 : kFits / std::abs(rate);
        least = std::min(least, std::max(0.0, room(i, rate, at_high)) + slack);
    }
    std::size_t leaving = kNobody;
    double far = high_[entering] - low_[entering], largest = 0;
    bool leaves_high = false;
    if (far == kInfinity && least == kInfinity) {
        unbounded = true;
        return false;
    }
    if (far > least) {
        for (std::size_t i = 0; i < lines_; ++i) {
            const double rate = line(i)[column] * sign;
            if (std::abs(rate) <= kPivot) continue;
            bool at_high = false;
            const double meets = std::max(0.0, room(i, rate, at_high));
            if (meets > least) continue;
            const bool better = leaving == kNobody ? true
                                : careful_         ? basic_[i] < basic_[leaving]
                                                   : std::abs(rate) > largest;
            if (!better) continue;
            leaving = i;
            leaves_high = at_high;
            largest = std::abs(rate);
            far = meets;
        }
    }
    idle_ = far > kFits ? 0 : idle_ + 1;
    careful_ = idle_ > kIdle;
    for (std::size_t i = 0; i < lines_; ++i)
        value_of_[i] += line(i)[column] * sign * far;
    if (leaving == kNobody) {
        rests_at_[column] = up ? high_[entering] : low_[entering];
        return true;
    }
    const std::size_t one = basic_[leaving];
    const double moved = rests_at_[column] + sign * far;
    pivot(leaving, column);
    value_of_[leaving] = moved;
    rests_at_[column] = leaves_high ? high_[one] : low_[one];
    return true;
}

void Solver::certify(const std::vector<double>& slope) {
    std::vector<double> all(columns_ + lines_, 0);
    for (std::size_t i = 0; i < lines_; ++i) {
        const std::size_t one = basic_[i];
        all[one] = value_of_[i] < low_[one] - kFits ? -1 : value_of_[i] > high_[one] + kFits ? 1 : 0;
    }
    for (std::size_t j = 0; j < columns_; ++j)
        all[resting_[j]] = std::abs(slope[j]) > kSlope ? -slope[j] : 0;
    certificate_.of_variables.assign(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(columns_));
    certificate_.of_rows.assign(lines_, 0);
    for (std::size_t i = 0; i < lines_; ++i)
        certificate_.of_rows[i] = all[columns_ + i] * scale_[i];
}

Verdict Solver::to_fit() {
    for (std::size_t j = 0; j < columns_ + lines_; ++j)
        if (low_[j] > high_[j] + kFits) {  // not even by itself
            certificate_.of_variables.assign(columns_, 0);
            certificate_.of_rows.assign(lines_, 0);
            if (j >= columns_) certificate_.of_rows[j - columns_] = 1;
            return Verdict::infeasible;
        }
    const std::size_t most = 200 + 50 * (columns_ + lines_);
    idle_ = 0;
    careful_ = false;
    for (std::size_t tries = 0; tries < most; ++tries) {
        if (since_rework_ > kRework) rework();
        slope_.assign(columns_, 0);
        bool fits = true;
        for (std::size_t i = 0; i < lines_; ++i) {
            const std::size_t one = basic_[i];
            const bool below = value_of_[i]<low_[one] - kFits, above = value_of_[i]> high_[one] + kFits;
            if (!below && !above) continue;
            fits = false;
            const double* at = line(i);
            for (std::size_t j = 0; j < columns_; ++j)
                slope_[j] += below ? -at[j] : at[j];
        }
        if (fits) return Verdict::optimal;
        bool up = false, unbounded = false;
        const std::size_t column = enter(up);
        if (column == kNobody) {
            certify(slope_);
            return contradiction(problem_, certificate_) < 0 ? Verdict::infeasible : Verdict::stuck;
        }
        slope_.clear();
        if (!step(column, up, true, unbounded)) return Verdict::stuck;
    }
    return Verdict::stuck;
}

Verdict Solver::to_best() {
    slope_.assign(columns_, 0);
    for (std::size_t j = 0; j < columns_; ++j)
        if (resting_[j] < columns_) slope_[j] = objective_[resting_[j]];
    for (std::size_t i = 0; i < lines_; ++i) {
        if (basic_[i] >= columns_ || objective_[basic_[i]] == 0) continue;
        const double weight = objective_[basic_[i]];
        const double* at = line(i);
        for (std::size_t j = 0; j < columns_; ++j)
            slope_[j] += weight * at[j];
    }
    const std::size_t most = 200 + 50 * (columns_ + lines_);
    idle_ = 0;
    careful_ = false;
    for (std::size_t tries = 0; tries < most; ++tries) {
        bool up = false, unbounded = false;
        const std::size_t column = enter(up);
        if (column == kNobody) return Verdict::optimal;
        if (!step(column, up, false, unbounded)) return unbounded ? Verdict::unbounded : Verdict::stuck;
    }
    return Verdict::stuck;
}

// The point of the table, held against the rows as they were given.
bool Solver::reached() {
    point_.assign(columns_, 0);
    for (std::size_t j = 0; j < columns_; ++j)
        if (resting_[j] < columns_) point_[resting_[j]] = rests_at_[j];
    for (std::size_t i = 0; i < lines_; ++i)
        if (basic_[i] < columns_) {
            const std::size_t one = basic_[i];
            if (value_of_[i] < low_[one] - kTrust || value_of_[i] > high_[one] + kTrust) return false;
            point_[one] = std::clamp(value_of_[i], low_[one], high_[one]);
        }
    for (std::size_t i = 0; i < lines_; ++i) {
        const double* at = problem_.row(i);
        double sum = 0;
        for (std::size_t j = 0; j < columns_; ++j)
            sum += at[j] * point_[j];
        sum *= scale_[i];
        if (!(sum >= low_[columns_ + i] - kTrust && sum <= high_[columns_ + i] + kTrust)) return false;
    }
    return true;
}

Verdict Solver::search() {
    Verdict verdict = Verdict::stuck;
    for (int tries = 0; tries < 4; ++tries) {
        if (tries > 0 || since_rework_ > kRework) rework(), fitted_ = false;
        if (tries == 3) start();  // with nothing left of what came before
        if (!fitted_) {
            verdict = to_fit();
            if (verdict == Verdict::infeasible) return verdict;
            if (verdict != Verdict::optimal) continue;
            fitted_ = true;
        }
        verdict = objective_.empty() ? Verdict::optimal : to_best();
        slope_.clear();
        if (verdict == Verdict::unbounded) return verdict;
        settle();
        if (verdict == Verdict::optimal && reached()) break;
        fitted_ = false;
        verdict = Verdict::stuck;
    }
    value_ = 0;
    for (std::size_t j = 0; j < objective_.size(); ++j)
        value_ += objective_[j] * point_[j];
    return verdict;
}

Verdict Solver::fit() {
    objective_.clear();
    return search();
}

Verdict Solver::minimise(const std::vector<double>& weights) {
    assert(weights.size() == columns_);
    objective_ = weights;
    return search();
}

Verdict Solver::maximise(const std::vector<double>& weights) {
    assert(weights.size() == columns_);
    objective_.resize(columns_);
    for (std::size_t j = 0; j < columns_; ++j)
        objective_[j] = -weights[j];
    const Verdict verdict = search();
    value_ = -value_;
    return verdict;
}

}  // namespace simplex
