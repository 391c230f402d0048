// Papers: each a function from a recipe and its analysis to readable HTML that prints on A4 and Letter in
// black and white.
#pragma once

#include <string>
#include <vector>

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
// What one label bears, a line an entry, in its order.
struct Printed {
    enum class Sign { none, open_jar, hand_in_book };  // before the text
    std::string text;
    std::int64_t letters = 0;  // the font's size, mm on the grid
    bool strong = false;
    Sign sign = Sign::none;
    bool operator==(const Printed&) const = default;
};
std::vector<Printed> printed(const workspace::Recipe& recipe, const labelling::Labelled& labelled,
                             const LabelPaper& paper);
// The piece of paper that goes on a panel: around a cylinder all of its circumference.
LabelPaper paper_for(const type_height::Panel& panel);
std::string labels(const workspace::Recipe& recipe, const labelling::Labelled& labelled,
                   const LabelPaper& paper, const words::Table& words);

// What is answered at the stall, in large letters.
std::string customer_card(const ::customer_card::Card& card, const words::Table& words);

// What a safety assessor is handed: every raw material with its exact share, names, numbers and analysis, and
// the papers that are still missing, each with a box to tick.
std::string assessor_pack(const ::assessor_pack::Pack& pack, const catalogue::Catalogue& catalogue,
                          const words::Table& words);

}  // namespace documents
