// Every limit that a formula touches as one sum that must not go beyond a figure: percent of each portion
// times what of it counts. The families check these sums, and ceiling asks how far one line may be raised
// under them. Exact: whole numbers on the grids of quantity.h.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "composition.h"
#include "declaration.h"
#include "limits_book.h"
#include "safety.h"

namespace safety {

struct Term {
    std::size_t portion = 0;             // of the Case
    std::int64_t high = 0, typical = 0;  // weight of its percent: content in % of it, on the grid
    bool measured = false;               // typical was printed or measured
    bool of_bottle = false;              // from the bottle's own paper
    source::Standing standing = source::Standing::document;  // of the content
};

struct Bound {
    Rule rule{};
    const limits::Row* row = nullptr;      // what it is from: a row …
    const limits::Level* level = nullptr;  // … or a level of all oils together
    finding::Code over{}, maybe{};         // beyond it for sure or usually; only in the worst case
    finding::Severity severity = finding::Severity::caution;
    composition::Id constituent = composition::kNone;
    std::vector<Term> terms;  // the largest worst case first
    std::int64_t most = 0;    // of the sum of percent times weight
    std::int64_t whole = 0;   // what the sum is when it is 100 % of the product, or of what is allowed
    quantity::Trace limit;    // as it is said
};

std::int64_t high_of(const Case& the, const Bound& bound);
std::int64_t typical_of(const Case& the, const Bound& bound);
bool goes_beyond(const Case& the, const Bound& bound);
finding::Finding told(const Case& the, const Bound& bound);  // of one that goes beyond

// What the sources of a product hold, worked out once for all families.
struct Contents {
    std::vector<composition::Held> held;  // one for each portion of the Case
    composition::Sums sums;
    std::vector<std::size_t> oils;      // portions that are essential oils or extracts …
    std::vector<std::size_t> named;     // … and those of which no shipped entry tells what they are
    std::vector<std::string> subjects;  // of each portion
    std::vector<std::size_t> same_as;   // the first portion of the same subject
};
Contents contents_of(const Case& the);  // the.book is there

struct Bounds {
    std::vector<Bound> all;
    std::vector<Made> made;
    std::vector<NotMade> not_made;
};
Bounds bounds_of(const Case& the);
Bounds bounds_of(const Case& the, const Contents& contents);

// ---- the families ----
void add_constituents(const Case& the, const Contents& contents, Bounds& bounds);
void add_ingredients(const Case& the, const Contents& contents, Bounds& bounds);  // whole oils
void add_levels(const Case& the, const Contents& contents, Bounds& bounds);       // all oils together
void add_phototoxic(const Case& the, const Contents& contents, Bounds& bounds);
// Beside them, within `limited` of safety_family.h:
void persons(const Case& the, const Contents& contents, Report& report);
void allergens(const Case& the, const Contents& contents, Report& report);

// The allergens to be named on a market on a day: strictly above the threshold, in the worst case, the
// largest first. `regime` says which list holds and why; null: this market is not covered.
struct Allergens {
    const limits::Regime* regime = nullptr;
    std::vector<declaration::Named> named;
    std::vector<std::string> unknown;  // sources of which nothing is known
};
Allergens allergens_of(const Case& the);
Allergens allergens_of(const Case& the, const Contents& contents);

// The cautions that are at hand for this formula: those for every oil, and those of the oils in it.
std::vector<const limits::Caution*> cautions_of(const Case& the);

// ---- for the families ----
std::optional<std::int64_t> age_of(const Case& the);  // in months; a product for babies is for the youngest
std::string_view market_of(const Case& the);          // where none is said, the strictest
// The portions that are one of these ingredients, or are called one of these names though no shipped entry
// stands for them.
std::vector<std::size_t> those_of(const Case& the, const Contents& contents,
                                  const std::vector<std::string>& ingredients,
                                  const std::vector<std::string>& names);

}  // namespace safety
