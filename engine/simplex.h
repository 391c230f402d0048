// Linear programming, dense and small: the least and the most of many sums under the same rows, each search
// from where the last one ended; and when no point keeps to all rows, multipliers that prove it. Works in
// double; every answer is held against the rows as they were given before it is called optimal. Meant for up
// to a few hundred variables and rows; knows nothing of what they stand for.
#pragma once

#include <cstddef>
#include <limits>
#include <vector>

namespace simplex {

inline constexpr double kInfinity = std::numeric_limits<double>::infinity();
inline constexpr double kFits =
    1e-9;  // how far a point may lie outside a bound, rows at a largest weight of 1
inline constexpr double kTrust = 1e-7;  // … and how far off its rows an answer may be, before it is reworked

// low <= x <= high for each variable and row_low <= weights · x <= row_high for each row.
struct Problem {
    std::vector<double> low, high;          // of the variables
    std::vector<double> weights;            // row after row
    std::vector<double> row_low, row_high;  // equal: the row is an equation

    Problem() = default;
    explicit Problem(std::size_t variables, double least = 0, double most = kInfinity)
        : low(variables, least), high(variables, most) {}
    std::size_t variables() const { return low.size(); }
    std::size_t rows() const { return row_low.size(); }
    const double* row(std::size_t at) const { return weights.data() + at * low.size(); }
    // Its weights, all nought to begin with; the pointer holds until the next row.
    double* add_row(double least, double most) {
        row_low.push_back(least);
        row_high.push_back(most);
        weights.resize(weights.size() + low.size(), 0.0);
        return weights.data() + weights.size() - low.size();
    }
};

enum class Verdict {
    optimal,
    infeasible,
    unbounded,
    stuck,  // the figures are too far apart for this arithmetic; nothing is claimed
};

// A sum of bounds that contradicts itself: each row and each variable times its multiplier adds up to nought
// whatever the point, and yet to something below nought by the bounds. A positive multiplier uses the upper
// bound, a negative one the lower; what has nought is not needed.
struct Certificate {
    std::vector<double> of_variables, of_rows;
};
// The most that the sum can be, by the bounds; below nought it proves that nothing fits. Multipliers of
// variables are taken from those of the rows, so that they add up to nought by construction.
double contradiction(const Problem& problem, const Certificate& certificate);

class Solver {
  public:
    explicit Solver(Problem problem);
    Verdict fit();  // any point: optimal or infeasible
    Verdict minimise(const std::vector<double>& weights);
    Verdict maximise(const std::vector<double>& weights);
    double value() const { return value_; }                          // of the last optimal search
    const std::vector<double>& point() const { return point_; }      // where it is reached
    const Certificate& certificate() const { return certificate_; }  // after infeasible
    const Problem& problem() const { return problem_; }
    std::size_t pivots() const { return pivots_; }  // so far, for those who measure

  private:
    // Every variable and every row's sum is either basic, one to a line of the table, or rests at a bound,
    // one to a column: basic = table × resting.
    Verdict search();
    Verdict to_fit();
    Verdict to_best();
    void start();
    void rework();
    void settle();
    bool step(std::size_t column, bool up, bool fitting, bool& unbounded);
    void pivot(std::size_t line, std::size_t column);
    std::size_t enter(bool& up) const;
    void certify(const std::vector<double>& slope);
    bool reached();
    double* line(std::size_t at) { return table_.data() + at * columns_; }
    const double* line(std::size_t at) const { return table_.data() + at * columns_; }

    Problem problem_;
    std::size_t columns_ = 0, lines_ = 0;
    std::vector<double> scale_;                 // of the rows: what a row was multiplied by
    std::vector<double> low_, high_;            // of the variables, then of the rows' sums
    std::vector<double> table_, slope_;         // slope: of what is minimised, along each column
    std::vector<std::size_t> basic_, resting_;  // who stands on a line, at a column
    std::vector<double> value_of_, rests_at_;   // of the lines, of the columns
    std::vector<double> objective_, point_;
    Certificate certificate_;
    double value_ = 0;
    std::size_t pivots_ = 0, since_rework_ = 0, idle_ = 0;
    bool fitted_ = false, careful_ = false;
};

}  // namespace simplex
