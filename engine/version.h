// What differs between two states of a formula, line by line. Lines are the same that have one ingredient (or
// name), those of one phase first; what a rest line comes to counts.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "formula.h"
#include "quantity.h"

namespace version {

enum class Change { same, percent, added, gone };

struct Line {
    std::optional<std::size_t> one, other;  // places in the two formulas
    std::optional<quantity::Percent> was,
        is;  // none: the line is not there, or its formula has no sum of 100
    Change change = Change::same;
    bool moved = false;  // to another phase
    bool operator==(const Line&) const = default;
};

// All lines in the order of `other`, those that are gone at the end.
std::vector<Line> compare(const formula::Formula& one, const formula::Formula& other);
std::size_t changes(const std::vector<Line>& lines);  // how many are not as they were

}  // namespace version
