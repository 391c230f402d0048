// One call that works out every standing answer for one recipe; screens, papers, mirror and tests read this
// report.
#pragma once

#include <optional>
#include <vector>

#include "batch.h"
#include "catalogue.h"
#include "finding.h"
#include "workspace.h"

namespace analysis {

struct Analysis {
    quantity::Percent stated_sum;                             // without the rest line
    std::optional<quantity::Percent> rest;                    // what the rest line comes to; may be below 0
    result::Result<std::vector<quantity::Percent>> percents;  // or why there are none
    result::Result<batch::Batch> batch;                       // or why there is none
    std::vector<finding::Finding> findings;  // stops first, then cautions, then notes; by line
};

// Tolerance of a line's rounding before it is remarked on: 5 % of the line (common practice).
inline constexpr std::int64_t kLineErrorTolerance = 5 * decimal::kOne;

Analysis of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped);

}  // namespace analysis
