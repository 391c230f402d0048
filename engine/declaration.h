// The list of ingredients as a label must print it in one market: names, order, what may be moved, what is
// not known. Made parts and compound ingredients are split (made) and equal names added up. A name that is
// not known is shown as a gap, never made up. Which allergens have to be named is worked out elsewhere and
// handed in; the words around the list are the label's.
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

namespace declaration {

struct Named {  // an allergen that has to be named
    std::string label_name;
    quantity::Trace amount;
    std::string why, source;  // what it is in; key in the bibliography
    source::Standing standing = source::Standing::estimate;
    bool operator==(const Named&) const = default;
};

// Essential oils and what else is there for its scent: each by its own name, or together as "parfum".
enum class Scent { named, together };
struct Wish {
    market::Market market = market::Market::eu;
    Scent scent = Scent::named;
    bool lips = false;                     // scent is flavour there: "aroma"
    std::set<std::string> colours, nano;   // ids of what is there for its colour; of nanomaterials
    std::vector<std::string> may_contain;  // ids of colours of other shades that share the label
    bool operator==(const Wish&) const = default;
};

// Where an item stands. Ordered: by weight. Free: at so little that the law leaves the order open (EU and GB
// under 1 %, US and Canada at 1 % or less); printed by weight here all the same.
enum class Block { ordered, free, allergen, colour, scent_last, may_contain };
struct Item {
    std::string name;                          // as it is printed; "" when it is not known for this market
    std::vector<std::string> from;             // ids, or names, of what it comes from
    std::optional<quantity::Percent> percent;  // as added; none: within something else, or strained out
    std::optional<quantity::Trace> trace;      // of an allergen
    Block block = Block::ordered;
    bool nano = false, allergen = false;
    std::string source;  // of the name
    source::Standing standing = source::Standing::memory;
    bool operator==(const Item&) const = default;
};

enum class Doubt {
    name_missing,      // not known in this market
    shares_unknown,    // a bought blend whose parts are named and whose shares are not: its place is a guess
    plant_strained,    // the plant of an infusion: common practice names what came over as its extract
    parts_incomplete,  // an own entry that does not say all of its parts
    close_to_line,     // an ingredient at exactly 1 %: markets differ
    group_beside_oil,  // an allergen that is printed beside the oil it is in: whether both is not settled
};
struct Remark {
    Doubt doubt{};
    std::size_t item = 0;  // of the declaration
    bool operator==(const Remark&) const = default;
};
struct Declaration {
    market::Market market = market::Market::eu;
    std::vector<Item> items;  // in the order they are printed
    std::vector<Remark> remarks;
    bool operator==(const Declaration&) const = default;
};

// Strained lines are left out and the rest taken as the whole. Errors: those of
// made::percents_of_product and of made::split.
result::Result<Declaration> of(const formula::Formula& formula, const catalogue::Catalogue& shipped,
                               const std::vector<catalogue::Ingredient>& own, const Wish& wish,
                               const std::vector<Named>& allergens = {});

bool complete(const Declaration& declaration);  // no name is missing
// "Aqua, Cera Alba, …"; a gap as "[Dried marigold petals]". `may_contain` goes before what only some hold.
std::string text(const Declaration& declaration, std::string_view may_contain = "+/-");
// Whether the law lets the items stand in this order (a permutation of their places).
bool may_stand(const Declaration& declaration, const std::vector<std::size_t>& order);

// ---- names ----
inline constexpr std::string_view kCanadaSource = "crc_869";  // of names and order
// The names under which an ingredient is declared, several for a blend, none when not known; the key of the
// market that they were found under. Colours by colour index where the market wants it.
struct Names {
    std::vector<std::string> names;
    std::string source;
    source::Standing standing = source::Standing::memory;
    bool operator==(const Names&) const = default;
};
Names names_of(const catalogue::Ingredient& ingredient, const catalogue::Catalogue& shipped,
               market::Market market, bool as_colour = false);
std::string scent_name(market::Market market, bool flavour);  // "Parfum", "Aroma", "Fragrance", "Flavor"
// At commas that part two names: not within brackets, not "1,2-".
std::vector<std::string> at_commas(std::string_view names);
bool same_name(std::string_view a, std::string_view b);  // ASCII letters compared without case

}  // namespace declaration
