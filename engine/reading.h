// What percentages can stand behind a list of ingredients: the question as plain values. The list in its
// order, where the 1 % line falls, and what else the person says or knows, each as a statement that can be
// switched off. Everything is a bound on a sum, so that all statements are read alike: reading_rows.
// The answers are worked out by reading_work, a step at a time; the sentences are reading_said's.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "quantity.h"
#include "result.h"
#include "source.h"

namespace reading {

struct Item {                         // one name of the list
    std::string ingredient, name;     // an id, or what was written
    bool free = false;                // stands outside the order: a colourant, a "parfum" at the end
    std::vector<std::string> may_be;  // ids, where the name fits several: what holds for all of them counts
    bool operator==(const Item&) const = default;
};

enum class Kind {
    amount,      // of one ingredient: from a claim, a data sheet, the list itself
    group,       // of several together
    limit,       // a rule's or a usual most: at its lowest content a source stays under it
    declared,    // an allergen on the list: at their highest content its sources can reach the threshold
    undeclared,  // one that had to be on it and is not: at their lowest content they stay under it
    property,    // a measured figure of the whole: "density", "iodine_value"
};
inline constexpr int kKinds = 6;

// What one part of an item counts for, from the least to the most it may be, on the grid of decimal.h: % of
// the item for an amount or a content, g/mL for the density, g/100 g for the iodine value.
struct Term {
    std::size_t item = 0;
    std::int64_t low = quantity::kHundred.grid, high = quantity::kHundred.grid;
    bool operator==(const Term&) const = default;
};

struct Statement {
    Kind kind = Kind::amount;
    bool on = true;
    std::vector<Term> terms;               // items that are not named count for nothing
    std::optional<std::int64_t> min, max;  // of the sum, on the grid; in % or the property's unit
    std::string subject;                   // group's name, constituent, rule's id, property; "" of an amount
    std::vector<std::size_t> unknown;      // items of which no figure is known: taken as anything at all
    std::string source;                    // key in the bibliography of what the figures are from
    source::Standing standing = source::Standing::estimate;
    bool operator==(const Statement&) const = default;
};

struct Problem {
    std::vector<Item> items;
    std::optional<std::size_t> line_after;  // so many of the list hold `line` or more; none: not known
    quantity::Percent line = quantity::percent(1);  // below it any order is allowed
    std::vector<Statement> statements;
    bool operator==(const Problem&) const = default;
};

inline constexpr std::size_t kMostItems = 200;
inline constexpr std::size_t kMostStatements = 100;

Statement amount(std::size_t item, std::optional<std::int64_t> min, std::optional<std::int64_t> max);
Statement group(std::string name, const std::vector<std::size_t>& items, std::optional<std::int64_t> min,
                std::optional<std::int64_t> max);
// A figure as it was printed stands for what rounds to it: "2 %" is 1.5 to 2.5, "2.0" 1.95 to 2.05. `places`
// behind the sign.
Statement printed(std::size_t item, std::int64_t percent, int places);

// What a stranger's problem must satisfy; place of the first fault ("limits[2].min").
result::Result<Problem> checked(Problem problem);

}  // namespace reading
