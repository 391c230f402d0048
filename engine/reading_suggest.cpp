// Farthest point first (Gonzalez 1985), in percents divided by what each ingredient's range is wide.
#include "reading_suggest.h"

#include <algorithm>
#include <cmath>

#include "sorting.h"

namespace reading {
namespace {

constexpr std::size_t kFewest = 100;  // draws in the middle, for it to count as one
constexpr double kClose = 1e-7;

// From 5 % up, from 1 % up, below: steps on the grid, coarse to fine.
constexpr std::int64_t kRoundings[][3] = {{5000, 1000, 500}, {1000, 1000, 100}, {1000, 100, 100},
                                          {100, 100, 100},   {10, 10, 10},      {1, 1, 1}};

}  // namespace

bool fits(const Problem& problem, const std::vector<Row>& rows,
          const std::vector<quantity::Percent>& percents) {
    std::vector<double> plain;
    std::int64_t sum = 0;
    for (const quantity::Percent one : percents) {
        if (one.grid < 0) return false;
        sum += one.grid;
        plain.push_back(decimal::to_double(one.grid));
    }
    if (sum != quantity::kHundred.grid) return false;
    for (const Row& row : rows) {
        const double value = sum_of(row.weights, plain.data());
        if (value < row.low - kClose || value > row.high + kClose) return false;
    }
    // How many lead in order and hold the line or more; how few must, for the rest to be below it.
    std::size_t leading = 0, needed = 0;
    bool in_order = true;
    std::int64_t before = quantity::kHundred.grid;
    for (std::size_t i = 0; i < percents.size(); ++i) {
        if (problem.items[i].free) {
            if (in_order) leading = i + 1;
            continue;
        }
        in_order = in_order && percents[i].grid <= before && percents[i] >= problem.line;
        before = percents[i].grid;
        if (in_order) leading = i + 1;
        if (percents[i] > problem.line) needed = i + 1;
    }
    if (problem.line_after) return needed <= *problem.line_after && *problem.line_after <= leading;
    return needed <= leading;
}

SuggestWork::SuggestWork(const Problem& problem, const std::vector<Row>& rows,
                         const std::vector<Range>& ranges, const SampleWork& sample, std::size_t wanted)
    : problem_(problem), rows_(rows), ranges_(ranges), sample_(sample), wanted_(wanted) {}

double SuggestWork::progress() const {
    return wanted_ == 0 ? 1 : static_cast<double>(tried_) / static_cast<double>(wanted_);
}

// The centre is the mean of the likeliest place of the line: what fits one place is convex, all of it is not.
void SuggestWork::gather() {
    const std::size_t items = problem_.items.size(), count = sample_.of_branch().size();
    const double* const draws = sample_.draws().data();
    const auto& shares = sample_.shares();
    const auto likeliest =
        static_cast<std::size_t>(std::max_element(shares.begin(), shares.end()) - shares.begin());
    latest_.assign(items, 0.0);
    std::size_t own = 0;
    for (std::size_t i = 0; i < count; ++i) {
        if (sample_.of_branch()[i] == likeliest) {
            ++own;
            for (std::size_t j = 0; j < items; ++j)
                latest_[j] += draws[i * items + j];
        }
        bool inside = true;
        for (std::size_t j = 0; j < items && inside; ++j) {
            const Likely& likely = sample_.likely()[j];
            inside =
                draws[i * items + j] >= likely.p05 - kClose && draws[i * items + j] <= likely.p95 + kClose;
        }
        if (inside) middle_.push_back(i);
    }
    for (double& one : latest_)
        one /= static_cast<double>(own);
    if (middle_.size() < kFewest) {  // with many ingredients something is at its end nearly always
        std::vector<std::pair<double, std::size_t>> order;
        for (std::size_t i = 0; i < count; ++i) {
            double far = 0;
            for (std::size_t j = 0; j < items; ++j) {
                const Likely& likely = sample_.likely()[j];
                if (likely.deviation <= kClose) continue;
                const double off = (draws[i * items + j] - likely.mean) / likely.deviation;
                far += off * off;
            }
            order.emplace_back(far, i);
        }
        sorting::stable(order);
        middle_.clear();
        for (std::size_t i = 0; i < (count + 1) / 2; ++i)
            middle_.push_back(order[i].second);
    }
    distance_.assign(middle_.size(), simplex::kInfinity);
    gathered_ = true;
}

void SuggestWork::choose() {
    const std::size_t items = problem_.items.size();
    ++tried_;
    Suggestion suggestion = rounded(latest_.data());
    if (std::find(made_.begin(), made_.end(), suggestion) == made_.end())
        made_.push_back(std::move(suggestion));
    std::size_t farthest = 0;
    for (std::size_t i = 0; i < middle_.size(); ++i) {
        double far = 0;
        for (std::size_t j = 0; j < items; ++j) {
            const double width = ranges_[j].max - ranges_[j].min;
            if (width <= kClose) continue;
            const double off = (sample_.draws()[middle_[i] * items + j] - latest_[j]) / width;
            far += off * off;
        }
        distance_[i] = std::min(distance_[i], far);
        if (distance_[i] > distance_[farthest]) farthest = i;
    }
    if (middle_.empty() || !(distance_[farthest] > 0)) {
        tried_ = wanted_;
        return;
    }
    const double* const next = &sample_.draws()[middle_[farthest] * items];
    latest_.assign(next, next + items);
}

// What rounding leaves over goes to the largest that takes it without breaking anything.
Suggestion SuggestWork::rounded(const double* percents) const {
    const std::size_t items = problem_.items.size();
    Suggestion made;
    std::vector<std::size_t> by_size(items);
    for (std::size_t i = 0; i < items; ++i)
        by_size[i] = i;
    sorting::stable(by_size, [&](std::size_t a, std::size_t b) { return percents[a] > percents[b]; });
    for (const auto& steps : kRoundings) {
        std::vector<quantity::Percent> near;
        std::int64_t left = quantity::kHundred.grid;
        for (std::size_t i = 0; i < items; ++i) {
            std::int64_t step = percents[i] >= 5 ? steps[0] : percents[i] >= 1 ? steps[1] : steps[2];
            // What is on the list is in the formula, be it ever so little.
            while (step > 1 && percents[i] < 2 * decimal::to_double(step))
                step = std::max<std::int64_t>(step / 10, 1);
            near.push_back({decimal::rounded(percents[i], decimal::Toward::nearest, step)});
            left -= near.back().grid;
        }
        made.step = steps[0];
        for (std::size_t place = 0; place < std::min<std::size_t>(items, 4); ++place) {
            made.percents = near;
            made.percents[by_size[place]].grid += left;
            if (fits(problem_, rows_, made.percents)) return made;
        }
    }
    made.fits = false;
    made.percents[by_size[0]].grid = quantity::kHundred.grid;
    for (std::size_t i = 1; i < items; ++i) {
        made.percents[by_size[i]].grid = decimal::rounded(percents[by_size[i]]);
        made.percents[by_size[0]].grid -= made.percents[by_size[i]].grid;
    }
    return made;
}

bool SuggestWork::work(std::size_t slices) {
    for (; slices > 0 && tried_ < wanted_ && !sample_.draws().empty(); --slices) {
        if (!gathered_)
            gather();
        else
            choose();
    }
    return tried_ < wanted_ && !sample_.draws().empty();
}

}  // namespace reading
