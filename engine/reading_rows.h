// A reading as linear rows, in two coordinates. In percents: the sum, each pair of neighbours, each
// statement. In gaps: above the line a list in order is p_j = line + y_j/j + y_(j+1)/(j+1) + …, with every
// y from nought up, so that order is no row at all and only the sum and the statements are left. For one
// place of the 1 % line at a time.
#pragma once

#include <cstddef>
#include <vector>

#include "reading.h"
#include "simplex.h"

namespace reading {

// The side of a statement: a bound on a sum of percents.
struct Row {
    std::vector<double> weights;  // an item each
    double low = -simplex::kInfinity, high = simplex::kInfinity;
    std::size_t statement = 0;
};
// Of the statements that are on. One that counts alike at its lowest and its highest gives one row, others
// one for each side.
std::vector<Row> rows_of(const Problem& problem);
double sum_of(const std::vector<double>& weights, const double* percents);

// Where the line may fall: the known place, or every place that makes a difference.
std::vector<std::size_t> places_of(const Problem& problem);

struct Shape {
    std::size_t after = 0;  // place of the line in the list
    double line = 1;
    std::vector<std::size_t> above, below, free;  // items; the coordinates are theirs in this order
    simplex::Problem gaps;                        // the sum is its first row, the others follow
    // A sum of percents as one of gaps, without its constant part, and that.
    std::vector<double> in_gaps(const std::vector<double>& weights, double& constant) const;
    void to_percents(const std::vector<double>& gaps, double* percents) const;
};
Shape shape_of(const Problem& problem, const std::vector<Row>& rows, std::size_t after);

// The same in percents. A row's claim says what it stands for, so that a contradiction can be told.
enum class Claim { total, order, above, below, statement };
struct Stated {
    Claim claim = Claim::total;
    std::size_t at = 0;    // order: of the earlier item, above, below: of the item; of a statement's row
    bool at_most = false;  // the upper side
};
struct Natural {
    simplex::Problem percents;  // 0 to 100 each
    std::vector<Stated> rows;
};
Natural natural_of(const Problem& problem, const std::vector<Row>& rows, std::size_t after);

}  // namespace reading
