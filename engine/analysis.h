// One call that works out every standing answer for one recipe; screens, papers, mirror and tests read this
// report. The whole of the checks is a second call: it reads tables that are unpacked only when first asked
// for, and takes ten times as long, so that it is made when somebody looks at it and not with every key.
#pragma once

#include <optional>
#include <vector>

#include "batch.h"
#include "catalogue.h"
#include "finding.h"
#include "remedy.h"
#include "safety.h"
#include "scales.h"
#include "workspace.h"

namespace analysis {

struct Analysis {
    quantity::Percent stated_sum;                             // without the rest line
    std::optional<quantity::Percent> rest;                    // what the rest line comes to; may be below 0
    result::Result<std::vector<quantity::Percent>> percents;  // or why there are none
    result::Result<batch::Batch> batch;                       // or why there is none
    std::vector<finding::Finding>
        findings;  // those at hand while lines are typed: stops first, then cautions, then notes; by line
    std::vector<remedy::Remedy> remedies;  // for lines that are too small for their scale, by line
    std::vector<remedy::Ahead> ahead;      // what is mixed before the batch is weighed
};

// `bench`: the scales of this device; none: one of the recipe's division that carries anything.
// `mine`: what this device has of its own (workspace::mine). An own entry of the recipe that is not the same
// as one of these came with the recipe; what it claims may add a remark, never take one away.
Analysis of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
            const scales::Bench& bench = {}, const std::vector<catalogue::Ingredient>& mine = {});

// Everything that is checked, what was looked at and what could not be: the findings above are among them.
// `book`: the limits; none: what needs them is listed as not made.
safety::Report checks(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                      const limits::Book* book, const scales::Bench& bench = {},
                      const std::vector<catalogue::Ingredient>& mine = {});

}  // namespace analysis
