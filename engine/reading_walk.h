// Formulas drawn from everything that fits by walking through it, where drawing them one by one would throw
// nearly all away, or where equations leave no volume: hit-and-run (Smith 1984). From a point along a random
// line to an even chance on what of the line fits. The lines exchange between two runs of neighbours in the
// list, which in gaps are its own axes; a line may cross several places of the 1 % line, so that these are
// weighed by their volume too. Four walks from different sides; whether they agree is measured.
#pragma once

#include <cstddef>
#include <vector>

#include "chance.h"
#include "reading_bounds.h"

namespace reading {

inline constexpr std::size_t kWalks = 4;

// What can still move, of one or several branches that agree in it.
struct Hull {
    std::vector<std::size_t> block;              // of each item: those of one block move alike
    std::vector<std::vector<double>> equations;  // over the blocks, independent, the sum among them
    std::vector<std::size_t> branches;           // which of them
    std::size_t blocks = 0;
    std::size_t freedom() const { return blocks - equations.size(); }
};
inline constexpr std::size_t kFixed = static_cast<std::size_t>(-1);
// The one with the most freedom, and of those the one with the most branches; `others`: whether there was
// another as free, which is then left out.
Hull hull_of(std::size_t items, const std::vector<Branch>& branches, const std::vector<Row>& rows,
             bool& others);

class Walk {
  public:
    Walk(std::size_t items, const std::vector<Branch>& branches, const std::vector<Row>& rows, Hull hull,
         std::uint64_t seed);
    void step(std::size_t walk);
    const double* at(std::size_t walk) const { return points_.data() + walk * items_; }
    std::size_t branch_of(const double* percents) const;  // the first one it fits

  private:
    struct Span {
        double low, high;
    };
    struct Run {
        std::size_t from, to;  // blocks, the last one beyond
    };
    bool add_run(std::size_t line);
    std::size_t below(std::size_t bound) { return static_cast<std::size_t>(chance_.below(bound)); }
    bool choose_direction();

    const std::size_t items_;
    const std::vector<Row>& rows_;
    const Hull hull_;
    double line_ = 1;
    std::vector<std::size_t> ordered_, free_;  // items
    std::vector<std::size_t> branch_at_;       // by how many of the ordered are above; kFixed: none of ours
    std::size_t first_ = 0, last_ = 0;         // of these
    std::vector<std::size_t> movable_;         // rows that are no equations
    std::vector<std::size_t> single_;          // of each of these: the only block it is about, or kFixed
    std::vector<std::size_t> blocks_above_;    // by how many of the ordered are above
    std::vector<bool> shut_;                   // blocks that no run of this line touches
    std::vector<std::vector<double>> up_to_;   // of each equation, then of these rows: sums over blocks
    std::vector<double> points_, moves_, of_blocks_;  // moves: of each item, along the line that is tried
    std::vector<Run> runs_;
    std::vector<std::size_t> held_;
    std::vector<double> table_, rates_;
    std::vector<Span> below_, spans_;
    chance::Generator chance_;
};

}  // namespace reading
