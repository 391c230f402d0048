// Papers: each a function from a recipe and its analysis to readable HTML that prints on A4 and Letter in
// black and white.
#pragma once

#include <string>
#include <vector>

#include "analysis.h"
#include "catalogue.h"
#include "label_sheet.h"
#include "labelling.h"
#include "record.h"
#include "result.h"
#include "safety.h"
#include "words.h"
#include "workshop.h"
#include "workshop_cost.h"
#include "workspace.h"

namespace documents {

// The batch sheet: lines by phase with grams, a box to tick and room for what was really weighed, steps, what
// usually goes wrong, cautions. Fails as the batch fails. `bench`: what the analysis was made for.
result::Result<std::string> batch_sheet(const workspace::Recipe& recipe, const analysis::Analysis& analysis,
                                        const catalogue::Catalogue& catalogue, const words::Table& words,
                                        const scales::Bench& bench = {});

// Labels at their real size: to be cut out, with a bar to measure the print by, or in the cells of a bought
// sheet; beneath them what is missing, what is not certain and what a sale still needs.
struct LabelPaper {
    std::int64_t width = 60 * decimal::kOne,
                 height = 40 * decimal::kOne;  // mm on the grid; round: both alike
    bool round = false;
    bool leaflet = false;  // what the market lets stand elsewhere goes on a leaflet of its own
    std::size_t copies = 1;
    std::int64_t flap = 0;                    // of a wrap, to be glued under: mm beyond its width
    std::int64_t strip = 0;                   // height of a strip around the side of a round tin; 0: none
    std::optional<label_sheet::Sheet> sheet;  // none: to be cut out
    std::size_t used = 0;                     // cells of the first sheet that are gone
    bool operator==(const LabelPaper&) const = default;
};
inline constexpr std::size_t kMostCopies = 200;
// What one label bears, a line an entry, in its order; of a tin with a strip, the lid or the strip.
enum class Part { whole, lid, strip };
struct Printed {
    enum class Sign { none, open_jar, hand_in_book };  // before the text
    std::string text;
    std::int64_t letters = 0;  // the font's size, mm on the grid
    bool strong = false;
    Sign sign = Sign::none;
    bool operator==(const Printed&) const = default;
};
std::vector<Printed> printed(const workspace::Recipe& recipe, const labelling::Labelled& labelled,
                             const LabelPaper& paper, Part part = Part::whole);
// The piece of paper that goes on a panel: around a cylinder all of its circumference.
LabelPaper paper_for(const type_height::Panel& panel);
std::string labels(const workspace::Recipe& recipe, const labelling::Labelled& labelled,
                   const LabelPaper& paper, const words::Table& words);
// To be printed first and held against the sheet: its cells as outlines, numbered, and a ruler each way.
std::string test_print(const label_sheet::Sheet& sheet, bool round, const words::Table& words);

// What somebody takes home to make it again: percents, grams for one unit, steps, cautions, and a QR code
// with the recipe.
struct Handout {
    quantity::Mass unit;                // 0: 100 g
    std::string unit_name;              // "Tin, 30 mL"
    std::vector<std::string> cautions;  // keys
    std::string before;                 // the page's address, before a link's '#'; "" none
    std::string from;                   // who hands it out; ""
    std::size_t copies = 1;             // more than one: each with room for a name, on a page of its own
};
Handout handout_of(const analysis::Analysis& analysis, const catalogue::Catalogue& shipped,
                   const safety::Report& report);
result::Result<std::string> handout(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                                    const Handout& given, const words::Table& words);

// Each ingredient once, what is at hand and what is to be bought. Fails as the batch fails.
result::Result<std::string> shopping_list(const workspace::Recipe& recipe, const analysis::Analysis& analysis,
                                          const catalogue::Catalogue& catalogue,
                                          const std::vector<::workshop::Pack>& packs,
                                          const words::Table& words);

// For who leads a workshop. `cautions`: keys. `head`: what it costs each, where prices are known.
std::string workshop(const workspace::Recipe& recipe, const ::workshop::Plan& plan,
                     const ::workshop::Workshop& made, const catalogue::Catalogue& catalogue,
                     const std::vector<std::string>& cautions, const words::Table& words,
                     const std::optional<cost::PerHead>& head = std::nullopt);

// What happened to one batch: what holds, what was weighed of which lot, and every entry that was ever
// written.
std::string batch_record(const ::record::Record& record, const catalogue::Catalogue& catalogue,
                         const words::Table& words);

// What is answered at the stall, in large letters.
std::string customer_card(const ::customer_card::Card& card, const words::Table& words);

// What a safety assessor is handed: every raw material with its exact share, names, numbers and analysis, and
// the papers that are still missing, each with a box to tick.
std::string assessor_pack(const ::assessor_pack::Pack& pack, const catalogue::Catalogue& catalogue,
                          const words::Table& words);

}  // namespace documents
