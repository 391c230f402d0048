// The point nearest to what is wanted: of all that hold nothing below nought and add to a given sum, the one
// whose rows come closest to their wanted values, in the sum of squares. Works in double; meant for some
// dozens of columns and rows; knows nothing of what they stand for.
#pragma once

#include <cstddef>
#include <vector>

namespace least_squares {

// Least of the sum of (weights · x - wanted)² over the rows, x >= 0, all x together = total.
struct Problem {
    std::size_t columns = 0;
    std::vector<double> weights;  // row after row
    std::vector<double> wanted;   // of each row
    double total = 1;             // not below nought

    std::size_t rows() const { return wanted.size(); }
    const double* row(std::size_t at) const { return weights.data() + at * columns; }
    // Its weights, all nought to begin with; the pointer holds until the next row.
    double* add_row(double value) {
        wanted.push_back(value);
        weights.resize(weights.size() + columns, 0.0);
        return weights.data() + weights.size() - columns;
    }
};

struct Answer {
    std::vector<double> point;
    double residual = 0;    // the sum of squares that is left
    bool settled = false;   // no other point is nearer, within the arithmetic
    std::size_t steps = 0;  // for those who measure
};

// Where several points are equally near, one of them. No columns: no point, settled where total is nought.
Answer nearest(const Problem& problem);

}  // namespace least_squares
