// The GNU Linear Programming Kit as an independent reference, for tests and benchmarks alone: a linear
// program of ours handed over row by row, asked for the least and the most of one sum after another, each
// from the basis where the last one ended.
#pragma once

#include <glpk.h>

#include <cstddef>
#include <limits>
#include <vector>

#include "engine/simplex.h"

namespace reference {

class Glpk {
  public:
    explicit Glpk(const simplex::Problem& problem) : problem_(glp_create_prob()) {
        glp_term_out(GLP_OFF);
        glp_init_smcp(&how_);
        how_.msg_lev = GLP_MSG_OFF;
        how_.tol_bnd = how_.tol_dj = 1e-9;
        const int columns = static_cast<int>(problem.variables()), rows = static_cast<int>(problem.rows());
        if (rows > 0) glp_add_rows(problem_, rows);
        glp_add_cols(problem_, columns);
        std::vector<int> at_row(1), at_column(1);
        std::vector<double> values(1);
        for (int i = 1; i <= rows; ++i) {
            const auto row = static_cast<std::size_t>(i - 1);
            const double low = problem.row_low[row], high = problem.row_high[row];
            glp_set_row_bnds(problem_, i, kind_of(low, high), low, high);
            for (int j = 1; j <= columns; ++j)
                if (const double value = problem.row(row)[j - 1]; value != 0)
                    at_row.push_back(i), at_column.push_back(j), values.push_back(value);
        }
        for (int j = 1; j <= columns; ++j) {
            const auto column = static_cast<std::size_t>(j - 1);
            const double low = problem.low[column], high = problem.high[column];
            glp_set_col_bnds(problem_, j, kind_of(low, high), low, high);
        }
        glp_load_matrix(problem_, static_cast<int>(values.size()) - 1, at_row.data(), at_column.data(),
                        values.data());
        glp_std_basis(problem_);
    }
    ~Glpk() { glp_delete_prob(problem_); }
    Glpk(const Glpk&) = delete;

    // False: nothing fits. What it cannot tell comes out as NaN.
    bool best(const std::vector<double>& weights, bool most, double& value) {
        glp_set_obj_dir(problem_, most ? GLP_MAX : GLP_MIN);
        for (std::size_t j = 0; j < weights.size(); ++j)
            glp_set_obj_coef(problem_, static_cast<int>(j) + 1, weights[j]);
        int state = glp_simplex(problem_, &how_) == 0 ? glp_get_status(problem_) : GLP_UNDEF;
        if (state != GLP_OPT && state != GLP_NOFEAS) {  // once more from the beginning
            glp_std_basis(problem_);
            state = glp_simplex(problem_, &how_) == 0 ? glp_get_status(problem_) : GLP_UNDEF;
        }
        value = state == GLP_OPT ? glp_get_obj_val(problem_) : std::numeric_limits<double>::quiet_NaN();
        return state != GLP_NOFEAS;
    }
    bool fits() {
        double value = 0;
        return best(std::vector<double>(static_cast<std::size_t>(glp_get_num_cols(problem_)), 0.0), false,
                    value);
    }

  private:
    static int kind_of(double low, double high) {
        if (low == high) return GLP_FX;
        if (low == -simplex::kInfinity) return high == simplex::kInfinity ? GLP_FR : GLP_UP;
        return high == simplex::kInfinity ? GLP_LO : GLP_DB;
    }
    glp_prob* problem_;
    glp_smcp how_;
};

}  // namespace reference
