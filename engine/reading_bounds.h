// The least and the most of every ingredient, and of every sum that is asked for, by linear programming over
// each place where the 1 % line may fall; what holds for all is the union. Meanwhile it is noted which rows
// leave no room, and a point well inside is kept: what the sampler starts from.
#pragma once

#include <memory>
#include <vector>

#include "reading_rows.h"

namespace reading {

struct Range {
    double min = 0, max = 0;
    bool operator==(const Range&) const = default;
};

// One place of the line at which something fits.
struct Branch {
    Shape shape;
    std::vector<double> middle;  // percents, of a point inside: the mean of corners from every side
    std::vector<bool> fixed;     // coordinates of the shape that cannot move
    std::vector<bool> tight;     // rows of the statements whose sum cannot move
    std::size_t freedom = 0;     // how many ways there are left to move
};

// In slices: work() does one search at a time, each well under a millisecond at a few dozen ingredients.
class BoundsWork {
  public:
    // `inside`: whether branches are wanted too.
    BoundsWork(const Problem& problem, std::vector<Row> rows, bool inside);
    bool work(std::size_t searches);  // whether there is more to do
    double progress() const;
    // ---- when done ----
    bool feasible() const { return feasible_; }
    bool stuck() const { return stuck_; }  // some search came to no end: nothing is claimed
    const std::vector<Range>& items() const { return items_; }  // zeros when nothing fits
    const std::vector<Range>& sums() const { return sums_; }    // of each row
    const std::vector<Branch>& branches() const { return branches_; }
    std::vector<Branch>& branches() { return branches_; }

  private:
    void open();
    void ask();
    void look(const std::vector<double>& point);
    void close();
    std::size_t questions() const { return 2 * (count_ + rows_.size()); }

    const Problem problem_;
    const std::vector<Row> rows_;
    const bool inside_;
    const std::size_t count_;
    std::vector<std::size_t> places_;
    std::size_t place_ = 0, question_ = 0;
    bool open_ = false, feasible_ = false, stuck_ = false;
    std::unique_ptr<simplex::Solver> solver_;
    Branch branch_;
    std::vector<double> least_, most_, sum_;  // of the coordinates, over the corners seen; their sum
    std::vector<Range> row_seen_;
    std::size_t seen_ = 0;
    std::vector<Range> items_, sums_;
    std::vector<Branch> branches_;
};

}  // namespace reading
