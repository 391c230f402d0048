// Papers: each a function from a recipe and its analysis to readable HTML that prints on A4 and Letter in
// black and white.
#pragma once

#include <string>

#include "analysis.h"
#include "catalogue.h"
#include "labelling.h"
#include "result.h"
#include "words.h"
#include "workspace.h"

namespace documents {

// The batch sheet: lines by phase with grams, a box to tick and room for what was really weighed, steps,
// cautions. Fails as the batch fails. `bench`: what the analysis was made for.
result::Result<std::string> batch_sheet(const workspace::Recipe& recipe, const analysis::Analysis& analysis,
                                        const catalogue::Catalogue& catalogue, const words::Table& words,
                                        const scales::Bench& bench = {});

// Labels at their real size, with a bar to measure the print by, and beneath them what is missing, what is
// not certain and what a sale still needs.
struct LabelPaper {
    std::int64_t width = 60 * decimal::kOne,
                 height = 40 * decimal::kOne;  // mm on the grid; round: both alike
    bool round = false;
    bool leaflet = false;  // what the market lets stand elsewhere goes on a leaflet of its own
    std::size_t copies = 1;
    bool operator==(const LabelPaper&) const = default;
};
inline constexpr std::size_t kMostCopies = 200;
// The piece of paper that goes on a panel: around a cylinder all of its circumference.
LabelPaper paper_for(const type_height::Panel& panel);
std::string labels(const workspace::Recipe& recipe, const labelling::Labelled& labelled,
                   const LabelPaper& paper, const words::Table& words);

}  // namespace documents
