// What a safety assessor is handed: every raw material with its exact share, names, function and papers, the
// product as it is used, and the papers that are still missing. Facts and gaps only; whether a product is
// safe is the assessor's word. A paper that cannot be known to be there is asked for.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "formula.h"
#include "market.h"
#include "quantity.h"
#include "result.h"
#include "source.h"

namespace assessor_pack {

// "paper.<name>" is its line in the table of words.
enum class Paper {
    // of a raw material
    safety_sheet,
    specification,
    lot_analysis,      // of an essential oil or extract: what this lot holds
    ifra_certificate,  // of essential oils and scents
    allergen_sheet,    // likewise
    composition,       // of a bought blend, or of a name that is not in the list
    origin,            // nut, gluten, animal or plant: where it depends on the lot
    germ_count,        // of powders, waters and plants
    // of the product
    method,
    stability,
    challenge,  // with water in it: that its preservative holds
    ph,         // likewise
    keeping_opened,
    packaging,
    label,
    claims,
    unwanted_effects,
};
inline constexpr int kPapers = static_cast<int>(Paper::unwanted_effects) + 1;
std::string_view paper_name(Paper paper);

struct Material {
    std::string ingredient, name;   // an id or ""; what it is called
    quantity::Percent percent;      // of the whole product, exact
    std::vector<std::string> inci;  // for this market; empty: not known
    std::string inci_source;
    source::Standing inci_standing = source::Standing::memory;
    std::string function;  // role; "role.<role>" is its word
    std::vector<std::string> cas;
    std::string botanical, part;
    std::optional<catalogue::LotAnalysis> analysis;  // of one's own bottle
    std::vector<Paper> wanted;                       // in the order of Paper
    bool operator==(const Material&) const = default;
};
struct Pack {
    std::string title, product, contact, place;  // of the product kind: "leave_on", "lips"
    market::Market market = market::Market::eu;
    bool holds_water = false;
    std::vector<Material> materials;    // largest first; their shares add to exactly 100
    std::vector<std::string> strained;  // plants that were taken out again
    std::vector<Paper> wanted;          // of the product
    bool operator==(const Pack&) const = default;
};

// Errors: those of made::percents_of_product and made::split.
result::Result<Pack> of(const formula::Formula& formula, const catalogue::Catalogue& shipped,
                        const std::vector<catalogue::Ingredient>& own, std::string_view title,
                        std::string_view product, market::Market market);

}  // namespace assessor_pack
