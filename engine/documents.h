// Papers: each a function from a recipe and its analysis to readable HTML that prints on A4 and Letter in
// black and white.
#pragma once

#include <string>

#include "analysis.h"
#include "catalogue.h"
#include "result.h"
#include "words.h"
#include "workspace.h"

namespace documents {

// The batch sheet: lines by phase with grams, a box to tick and room for what was really weighed, steps,
// cautions. Fails as the batch fails. `bench`: what the analysis was made for.
result::Result<std::string> batch_sheet(const workspace::Recipe& recipe, const analysis::Analysis& analysis,
                                        const catalogue::Catalogue& catalogue, const words::Table& words,
                                        const scales::Bench& bench = {});

}  // namespace documents
