// A handful of formulas worth making, out of a cloud of all that fit: first its centre, then each as
// different as can be from those before, but none from the fringe, where every figure is at its end. Rounded
// to steps that a scale and a head can hold, as far as they still fit.
#pragma once

#include <cstddef>
#include <vector>

#include "quantity.h"
#include "reading_bounds.h"
#include "reading_sample.h"

namespace reading {

struct Suggestion {
    std::vector<quantity::Percent> percents;  // add to 100 exactly
    std::int64_t step = 1;                    // the coarsest step in it, on the grid
    bool fits = true;  // false: what fits is finer than the grid, and this is the nearest on it
    bool operator==(const Suggestion&) const = default;
};

// Whether percents on the grid keep to the list and to every statement.
bool fits(const Problem& problem, const std::vector<Row>& rows,
          const std::vector<quantity::Percent>& percents);

class SuggestWork {
  public:
    // What is handed in must outlive it.
    SuggestWork(const Problem& problem, const std::vector<Row>& rows, const std::vector<Range>& ranges,
                const SampleWork& sample, std::size_t wanted);
    bool work(std::size_t slices);
    double progress() const;
    const std::vector<Suggestion>& suggestions() const { return made_; }

  private:
    void gather();
    void choose();
    Suggestion rounded(const double* percents) const;

    const Problem& problem_;
    const std::vector<Row>& rows_;
    const std::vector<Range>& ranges_;
    const SampleWork& sample_;
    const std::size_t wanted_;
    std::vector<std::size_t> middle_;  // draws
    std::vector<double> distance_, latest_;
    std::size_t tried_ = 0;
    bool gathered_ = false;
    std::vector<Suggestion> made_;
};

}  // namespace reading
