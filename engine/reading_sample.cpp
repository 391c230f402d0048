// The walks go in rounds of one length; the round before is the running in of the next, which takes twice as
// many steps from one kept draw to the next, until all figures have settled or it has taken long enough.
#include "reading_sample.h"

#include <algorithm>
#include <utility>

namespace reading {
namespace {

constexpr std::size_t kTrial = 1000, kOfTrial = 40;  // of so many attempts so many must fit
constexpr std::size_t kAttempts = 64, kSteps = 256;  // in a slice
constexpr std::size_t kMostMoves = 30'000'000;       // of items, in all walks: about half a second natively
constexpr double kAgreed = 1.01, kEffective = 400;

}  // namespace

SampleWork::SampleWork(std::size_t items, const std::vector<Branch>& branches, const std::vector<Row>& rows,
                       std::size_t draws, std::uint64_t seed, bool walking)
    : items_(items),
      branches_(branches),
      rows_(rows),
      wanted_(std::max<std::size_t>(draws, 16) / kWalks * kWalks),
      seed_(seed),
      scratch_(items),
      shares_(branches.size(), 0.0) {
    if (branches.empty()) {
        enough_ = true;
        at_ = items;
        return;
    }
    hull_ = hull_of(items, branches, rows, partial_);
    if (hull_.freedom() == 0) {
        method_ = Method::single;
        keep(branches[hull_.branches[0]].middle.data(), hull_.branches[0]);
        enough_ = true;
        return;
    }
    draws_.reserve(wanted_ * items);
    if (!walking && hull_.freedom() + 1 == items) {  // room on every side
        method_ = Method::exact;
        exact_ = std::make_unique<ExactDraws>(items, branches, rows, seed);
        if (exact_->possible()) return;
    }
    begin_walk(std::move(hull_));
}

void SampleWork::begin_walk(Hull hull) {
    method_ = Method::walk;
    exact_.reset();
    draws_.clear();
    of_branch_.clear();
    thin_ = std::max<std::size_t>(1, hull.freedom() / 2);
    walk_ = std::make_unique<Walk>(items_, branches_, rows_, std::move(hull), seed_);
    round_ = 0;
}

void SampleWork::keep(const double* percents, std::size_t branch) {
    draws_.insert(draws_.end(), percents, percents + items_);
    of_branch_.push_back(branch);
}

double SampleWork::progress() const {
    const double kept = static_cast<double>(of_branch_.size()) / static_cast<double>(wanted_);
    const double looked = static_cast<double>(at_) / static_cast<double>(items_);
    if (method_ != Method::walk) return enough_ ? 0.9 + 0.1 * looked : 0.9 * kept;
    // Nobody knows how many rounds: each takes half of what is left.
    double done = 0, share = 0.5;
    for (std::size_t i = 0; i < round_; ++i, share /= 2)
        done += share;
    return done + share * (enough_ ? 0.9 + 0.1 * looked : 0.9 * kept);
}

void SampleWork::draw_some() {
    for (std::size_t i = 0; i < kAttempts && of_branch_.size() < wanted_; ++i) {
        std::size_t branch = 0;
        ++attempts_;
        if (exact_->draw(scratch_.data(), branch)) keep(scratch_.data(), branch);
        if (attempts_ == kTrial && of_branch_.size() < std::min(kOfTrial, wanted_)) {
            begin_walk(std::move(hull_));
            return;
        }
    }
    enough_ = of_branch_.size() == wanted_;
}

// One walk after the other, so that each one's draws lie together.
void SampleWork::walk_some() {
    const std::size_t each = wanted_ / kWalks;
    for (std::size_t steps = 0; steps < kSteps && of_branch_.size() < wanted_;) {
        const std::size_t walk = of_branch_.size() / each;
        for (std::size_t i = 0; i < thin_; ++i)
            walk_->step(walk);
        steps += thin_;
        steps_ += thin_;
        keep(walk_->at(walk), walk_->branch_of(walk_->at(walk)));
    }
    enough_ = of_branch_.size() == wanted_;
}

void SampleWork::look_at_next() {
    if (at_ == 0) {
        settled_ = true;
        likely_.clear();
        std::fill(shares_.begin(), shares_.end(), 0.0);
        for (const std::size_t branch : of_branch_)
            shares_[branch] += 1 / static_cast<double>(of_branch_.size());
    }
    likely_.push_back(likely_of(draws_, items_, at_));
    ++at_;
    if (method_ != Method::walk) return;
    compare_walks(draws_, items_, at_ - 1, kWalks, likely_.back());
    if (likely_.back().r_hat < kAgreed &&
        likely_.back().effective >= std::min(kEffective, 0.5 * static_cast<double>(wanted_)))
        return;
    settled_ = false;
    if (3 * steps_ * items_ > kMostMoves) return;  // the next round takes twice the last one
    ++round_;
    thin_ *= 2;
    at_ = 0;
    enough_ = false;
    draws_.clear();
    of_branch_.clear();
}

bool SampleWork::work(std::size_t slices) {
    for (; slices > 0 && (!enough_ || at_ < items_); --slices) {
        if (enough_)
            look_at_next();
        else if (method_ == Method::exact)
            draw_some();
        else
            walk_some();
    }
    return !enough_ || at_ < items_;
}

}  // namespace reading
