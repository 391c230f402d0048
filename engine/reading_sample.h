// What is likely, if everything that fits is equally likely: a cloud of formulas and what it says of each
// ingredient. Exact draws where one attempt in twenty-five fits or more, else walks until they agree. Same
// seed, same cloud, in every build. In slices; may be dropped at any time.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "reading_draws.h"
#include "reading_spread.h"
#include "reading_walk.h"

namespace reading {

enum class Method {
    none,
    exact,   // independent draws
    walk,    // hit-and-run
    single,  // only one formula fits
};

class SampleWork {
  public:
    // What is handed in must outlive it. `walking`: walk although it could be drawn exactly, to hold one
    // against the other.
    SampleWork(std::size_t items, const std::vector<Branch>& branches, const std::vector<Row>& rows,
               std::size_t draws, std::uint64_t seed, bool walking = false);
    bool work(std::size_t slices);  // whether there is more to do; a slice is a few tenths of a millisecond
    double progress() const;
    Method method() const { return method_; }
    bool settled() const { return settled_; }  // R-hat below 1.01 and 400 effective draws, for every item
    bool partial() const { return partial_; }  // places of the line that fit as well were left out
    // Formulas one after another; only when done.
    const std::vector<double>& draws() const { return draws_; }
    const std::vector<std::size_t>& of_branch() const { return of_branch_; }  // of each of them
    const std::vector<Likely>& likely() const { return likely_; }
    const std::vector<double>& shares() const { return shares_; }  // of the branches
    std::size_t attempts() const { return attempts_; }             // exact: draws and what was thrown away
    std::size_t steps() const { return steps_; }                   // walk: in all

  private:
    void draw_some();
    void walk_some();
    void look_at_next();
    void begin_walk(Hull hull);
    void keep(const double* percents, std::size_t branch);

    const std::size_t items_;
    const std::vector<Branch>& branches_;
    const std::vector<Row>& rows_;
    const std::size_t wanted_;
    const std::uint64_t seed_;
    Method method_ = Method::none;
    bool settled_ = true, partial_ = false, enough_ = false;
    std::unique_ptr<ExactDraws> exact_;
    std::unique_ptr<Walk> walk_;
    Hull hull_;
    std::size_t attempts_ = 0, steps_ = 0, thin_ = 1, round_ = 0, at_ = 0;
    std::vector<double> draws_, scratch_, shares_;
    std::vector<std::size_t> of_branch_;
    std::vector<Likely> likely_;
};

}  // namespace reading
