// One table for each place of the line; its first search finds a point, the next ones go on from the last
// corner. Every question is asked twice, for the least and for the most.
#include "reading_bounds.h"

#include <algorithm>
#include <utility>

namespace reading {
namespace {

constexpr double kStill = 1e-7;  // a narrower range counts as a single figure

}  // namespace

BoundsWork::BoundsWork(const Problem& problem, std::vector<Row> rows, bool inside)
    : problem_(problem),
      rows_(std::move(rows)),
      inside_(inside),
      count_(problem.items.size()),
      places_(places_of(problem)),
      items_(count_),
      sums_(rows_.size()) {}

double BoundsWork::progress() const {
    const double of_place = static_cast<double>(question_) / static_cast<double>(questions() + 1);
    return (static_cast<double>(place_) + of_place) / static_cast<double>(places_.size());
}

void BoundsWork::open() {
    branch_ = Branch{shape_of(problem_, rows_, places_[place_]), {}, {}, {}, 0};
    solver_ = std::make_unique<simplex::Solver>(branch_.shape.gaps);
    const simplex::Verdict verdict = solver_->fit();
    if (verdict != simplex::Verdict::optimal) {
        stuck_ = stuck_ || verdict != simplex::Verdict::infeasible;
        ++place_;
        return;
    }
    open_ = true;
    question_ = 0;
    seen_ = 0;
    least_ = most_ = sum_ = solver_->point();
    std::fill(sum_.begin(), sum_.end(), 0.0);
    row_seen_.assign(rows_.size(), {simplex::kInfinity, -simplex::kInfinity});
    look(solver_->point());
}

void BoundsWork::look(const std::vector<double>& point) {
    if (!inside_) return;
    ++seen_;
    for (std::size_t j = 0; j < count_; ++j) {
        least_[j] = std::min(least_[j], point[j]);
        most_[j] = std::max(most_[j], point[j]);
        sum_[j] += point[j];
    }
}

// The next question of this place: every item's least, every row's, then the most of all.
void BoundsWork::ask() {
    const bool most = question_ >= questions() / 2;
    const std::size_t at = question_ % (questions() / 2);
    ++question_;
    double constant = 0;
    std::vector<double> weights;
    if (at < count_) {
        std::vector<double> own(count_, 0.0);
        own[at] = 1;
        weights = branch_.shape.in_gaps(own, constant);
    } else {
        weights = branch_.shape.in_gaps(rows_[at - count_].weights, constant);
    }
    const simplex::Verdict verdict = most ? solver_->maximise(weights) : solver_->minimise(weights);
    if (verdict != simplex::Verdict::optimal) {
        stuck_ = true;
        return;
    }
    look(solver_->point());
    const double value = solver_->value() + constant;
    Range& range = at < count_ ? items_[at] : sums_[at - count_];
    double& bound = most ? range.max : range.min;
    if (!feasible_ || (most ? value > bound : value < bound)) bound = value;
    if (at >= count_) (most ? row_seen_[at - count_].max : row_seen_[at - count_].min) = value;
}

// Coordinates that no corner moved so far are asked for by themselves; then the branch is known.
void BoundsWork::close() {
    open_ = false;
    feasible_ = true;
    ++place_;
    if (!inside_) return;
    std::vector<double> own(count_, 0.0);
    for (std::size_t j = 0; j < count_; ++j) {
        if (most_[j] - least_[j] > kStill) continue;
        own[j] = 1;
        if (solver_->maximise(own) == simplex::Verdict::optimal) look(solver_->point());
        if (solver_->minimise(own) == simplex::Verdict::optimal) look(solver_->point());
        own[j] = 0;
    }
    std::vector<double> middle(count_);
    for (std::size_t j = 0; j < count_; ++j) {
        branch_.fixed.push_back(most_[j] - least_[j] <= kStill);
        middle[j] = sum_[j] / static_cast<double>(seen_);
    }
    branch_.middle.resize(count_);
    branch_.shape.to_percents(middle, branch_.middle.data());
    for (const Range& range : row_seen_)
        branch_.tight.push_back(range.max - range.min <= kStill);
    branches_.push_back(std::move(branch_));
}

bool BoundsWork::work(std::size_t searches) {
    for (; searches > 0 && place_ < places_.size(); --searches) {
        if (!open_)
            open();
        else if (question_ < questions())
            ask();
        else
            close();
    }
    return place_ < places_.size();
}

}  // namespace reading
