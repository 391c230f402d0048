// Formulas drawn at random from everything that fits, each as likely as any other, where the structure allows
// it exactly: in gaps the ordered part is a simplex, spacings of sorted chances fill it evenly, and what
// breaks a statement or the sum is thrown away. The places of the line are drawn by the volume that each
// could have at most, so that what is kept weighs them by their true volume. Independent draws, no running
// in. Says how many were thrown away; where that is nearly all, reading_walk goes instead.
#pragma once

#include <cstddef>
#include <vector>

#include "chance.h"
#include "reading_bounds.h"

namespace reading {

class ExactDraws {
  public:
    ExactDraws(std::size_t items, const std::vector<Branch>& branches, const std::vector<Row>& rows,
               std::uint64_t seed);
    bool possible() const { return !ways_.empty(); }
    // One attempt; whether it fits. `way`: of which branch.
    bool draw(double* percents, std::size_t& way);

  private:
    struct Way {
        const Branch* branch = nullptr;
        std::size_t at = 0;          // among the branches
        std::size_t simplex = 0;     // coordinates without an upper bound: gaps and what is free
        double rest = 0, up_to = 0;  // what the sum leaves; share of this and the ways before it
    };
    const std::vector<Row>& rows_;
    std::vector<Way> ways_;
    std::vector<double> gaps_, sorted_;
    chance::Generator chance_;
};

}  // namespace reading
