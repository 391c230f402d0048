// How far what is at hand goes: the ingredient that runs out first, and what is left of the others.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "catalogue.h"
#include "formula.h"
#include "quantity.h"

namespace batch {

struct Stock {
    std::string ingredient;  // id or name
    quantity::Mass grams;
    bool operator==(const Stock&) const = default;
};

struct Take {  // out of one supply for one line
    std::size_t line = 0;
    quantity::Percent of_line;  // 100 % unless it is inside a made part
    bool operator==(const Take&) const = default;
};
struct Supply {              // one ingredient that the formula needs, over all its lines
    std::string ingredient;  // id, or the name of a line without one
    quantity::Percent share;
    std::vector<Take> takes;
    std::optional<quantity::Mass> have;  // not said: not known, and then it does not limit
    quantity::Mass need;                 // of the batch that was worked out
    std::optional<quantity::Mass> left;
    bool first_out = false;  // too little is left for one more step of the batch
    bool operator==(const Supply&) const = default;
};

struct Reach {
    std::vector<Supply> supplies;         // in the order of the lines
    std::vector<std::string> not_needed;  // at hand, but in no line of the formula
    bool operator==(const Reach&) const = default;
};

// What the formula needs, against what is at hand: matched by id, by a line's own name, or by the catalogue's
// name, ASCII letters without case; several entries for one ingredient are added. A made part that is not at
// hand itself is looked for as its parts, unless it is an infusion. need, left and first_out stay open.
Reach supplies_of(const formula::Formula& formula, const std::vector<quantity::Percent>& percents,
                  const std::vector<Stock>& stock, const catalogue::Catalogue& catalogue);

// The batch at which the first ingredient is used up, before any rounding; nothing when none is known.
std::optional<quantity::Mass> reach_of(const Reach& reach, quantity::Mass division);

// Fills in need, left and first_out for these weights of the lines; false when more than is at hand is
// needed.
bool settle(Reach& reach, const std::vector<quantity::Mass>& grams, quantity::Mass total,
            quantity::Mass division);

}  // namespace batch
