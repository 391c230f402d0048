#include "reading_work.h"

#include <algorithm>
#include <utility>

namespace reading {
namespace {

constexpr std::size_t kSearches = 16;  // of linear programming, in a slice

}  // namespace

Work::Work(Problem problem, Wish wish)
    : problem_(std::move(problem)), wish_(wish), rows_(rows_of(problem_)), bounds_(problem_, rows_, true) {}

void Work::end_bounds() {
    if (!bounds_.feasible()) {
        answer_.state = bounds_.stuck() ? State::unknown : State::nothing_fits;
        if (answer_.state == State::nothing_fits) conflict_ = std::make_unique<ConflictWork>(problem_);
        stage_ = conflict_ ? Stage::conflict : Stage::done;
        return;
    }
    // A search that came to no end leaves a bound that may be too narrow: then none is claimed.
    answer_.state = bounds_.stuck() ? State::unknown : State::fits;
    if (bounds_.stuck()) {
        stage_ = Stage::done;
        return;
    }
    answer_.items = bounds_.items();
    answer_.statements.assign(problem_.statements.size(), {});
    for (std::size_t i = 0; i < rows_.size(); ++i) {  // of two rows: the least of one, the most of the other
        Range& range = answer_.statements[rows_[i].statement];
        const bool second = i > 0 && rows_[i - 1].statement == rows_[i].statement;
        range = {second ? std::min(range.min, bounds_.sums()[i].min) : bounds_.sums()[i].min,
                 second ? std::max(range.max, bounds_.sums()[i].max) : bounds_.sums()[i].max};
    }
    for (std::size_t i = 0; i < problem_.statements.size(); ++i) {
        const Statement& of = problem_.statements[i];
        Range& range = answer_.statements[i];
        if (of.kind == Kind::property && of.subject == "density" && range.max > 0)
            range = {1 / range.max, range.min > 0 ? 1 / range.min : simplex::kInfinity};
    }
    for (const Branch& branch : bounds_.branches())
        answer_.places.push_back({branch.shape.after, 0});
    sample_ = std::make_unique<SampleWork>(problem_.items.size(), bounds_.branches(), rows_, wish_.draws,
                                           wish_.seed);
    stage_ = Stage::sample;
}

void Work::end_sample() {
    answer_.likely = sample_->likely();
    answer_.method = sample_->method();
    answer_.settled = sample_->settled();
    answer_.partial = sample_->partial();
    answer_.attempts = sample_->attempts();
    answer_.steps = sample_->steps();
    for (std::size_t i = 0; i < answer_.places.size(); ++i)
        answer_.places[i].share = sample_->shares()[i];
    suggest_ = std::make_unique<SuggestWork>(problem_, rows_, answer_.items, *sample_, wish_.suggestions);
    stage_ = Stage::suggestions;
}

// The bounds once more without one statement; then the next.
void Work::step_gains() {
    const std::size_t count = problem_.statements.size();
    if (!without_) {
        while (gain_ < count && (!problem_.statements[gain_].on ||
                                 (!problem_.statements[gain_].min && !problem_.statements[gain_].max)))
            ++gain_;
        if (gain_ > count || (gain_ == count && !problem_.line_after)) {
            stage_ = Stage::done;
            return;
        }
        Problem less = problem_;
        if (gain_ == count)
            less.line_after.reset();
        else
            less.statements[gain_].on = false;
        without_ = std::make_unique<BoundsWork>(less, rows_of(less), false);
    }
    if (without_->work(kSearches)) return;
    Gain gain;
    gain.said = gain_ == count
                    ? Said{Said::What::line, *problem_.line_after, false}
                    : Said{Said::What::statement, gain_, problem_.statements[gain_].max.has_value()};
    if (!without_->stuck()) {
        gain.without = without_->items();
        for (std::size_t i = 0; i < answer_.items.size(); ++i) {
            const double now = answer_.items[i].max - answer_.items[i].min;
            const double by = gain.without[i].max - gain.without[i].min - now;
            if (by > gain.narrower) gain.narrower = by, gain.item = i;
        }
        answer_.gains.push_back(std::move(gain));
    }
    without_.reset();
    ++gain_;
}

void Work::step() {
    switch (stage_) {
        case Stage::bounds:
            if (!bounds_.work(kSearches)) end_bounds();
            break;
        case Stage::conflict:
            if (conflict_->work(1)) break;
            answer_.conflict = conflict_->conflict();
            stage_ = Stage::done;
            break;
        case Stage::sample:
            if (!sample_->work(1)) end_sample();
            break;
        case Stage::suggestions:
            if (suggest_->work(1)) break;
            answer_.suggestions = suggest_->suggestions();
            stage_ = wish_.gains ? Stage::gains : Stage::done;
            break;
        case Stage::gains:
            step_gains();
            break;
        case Stage::done:
            break;
    }
}

bool Work::work(std::size_t slices) {
    for (; slices > 0 && stage_ != Stage::done; --slices)
        step();
    return stage_ != Stage::done;
}

double Work::progress() const {
    const double gains = static_cast<double>(gain_) / static_cast<double>(problem_.statements.size() + 1);
    switch (stage_) {
        case Stage::bounds:
            return 0.1 * bounds_.progress();
        case Stage::conflict:
            return 0.1 + 0.9 * conflict_->progress();
        case Stage::sample:
            return 0.1 + 0.6 * sample_->progress();
        case Stage::suggestions:
            return 0.7 + 0.1 * suggest_->progress();
        case Stage::gains:
            return 0.8 + 0.2 * gains;
        case Stage::done:
            break;
    }
    return 1;
}

Answer answer(const Problem& problem, const Wish& wish) {
    Work work(problem, wish);
    while (work.work(64)) {
    }
    return work.answer();
}

}  // namespace reading
