// How much of one line may be in a formula: the largest percent of the grid at which every limit that the
// line counts towards still passes, as percent and as what the scales make of it, while the next step of the
// grid does not. A ceiling, never a target: upward the usual amount is offered. And the percent of another
// bottle that brings the same amount of a constituent, checked again.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "finding.h"
#include "formula.h"
#include "quantity.h"
#include "result.h"
#include "safety.h"
#include "scales.h"
#include "workspace.h"

namespace ceiling {

// The case with the line at this percent and everything else as it is (the rest line gives way).
using With = std::function<safety::Case(quantity::Percent)>;
// What each line then weighs in the batch, rounded to the scales; empty, or giving nothing: no batch yet.
using Weighed = std::function<std::vector<quantity::Mass>(quantity::Percent)>;

struct Ceiling {
    quantity::Percent most;
    bool bound = false;                      // a limit binds; else only that all is 100 %
    bool by_grams = false;                   // the next step would pass as percent, but not as it is weighed
    std::optional<finding::Finding> why;     // what the next step goes beyond: limit, rule, source, standing
    std::optional<quantity::Percent> usual;  // what is offered upward; never above most
    std::vector<safety::NotMade> gaps;       // limits that count it and whose figure is not known
};

// line_missing: no such line in what `with` gives. no_figure of the limits is not an error but a gap.
result::Result<Ceiling> of(const With& with, std::size_t line, const Weighed& weighed = {});

struct Kept {
    quantity::Percent percent;             // of the line
    quantity::Trace comes_to;              // of the constituent, by this line
    std::vector<finding::Finding> beyond;  // limits that the line then goes beyond
};
// The percent at which the line brings as much of a constituent as is to be held, by the typical content of
// the bottle that is in it; to the nearest step. line_missing; gives_too_little: nothing is known of the
// constituent in it, or it holds none; sum_over_hundred (detail: the percent it would take).
result::Result<Kept> keeping(const With& with, std::size_t line, const formula::Hold& hold);

// The same of a line of a recipe, with its batch where it has one that can be made. `mine`: what this device
// has of its own. A rest line is looked at as a plain one, with nothing to take what is left.
struct Asked {
    const workspace::Recipe& recipe;
    std::size_t line = 0;
    const catalogue::Catalogue& shipped;
    const limits::Book* book = nullptr;
    scales::Bench bench = {};
    std::vector<catalogue::Ingredient> mine = {};
};
result::Result<Ceiling> of(const Asked& asked);
result::Result<Kept> keeping(const Asked& asked, const formula::Hold& hold);

// What a line of a recipe brings of each constituent now, by its typical content, the most first: what can be
// held. Empty where nothing is known of what is in it.
std::vector<formula::Hold> brought(const Asked& asked);

}  // namespace ceiling
