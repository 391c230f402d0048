// Rounding a batch to what its scales show, so that the lines add up to it exactly. Only batch*.cpp,
// workspace_weigh_out.cpp and tests include this.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "formula.h"
#include "quantity.h"
#include "result.h"

namespace batch {

struct Cap {  // one ingredient's, over all its lines
    std::vector<std::size_t> lines;
    quantity::Percent most;
};
// The caps that own ingredients bring for this product, by kind or by IFRA category: the smaller one where
// both are said.
std::vector<Cap> caps_of(const formula::Formula& formula, const catalogue::Catalogue& catalogue,
                         std::string_view product);

struct Wanted {
    quantity::Mass asked;
    bool may_exceed = true;  // rounded up, so that the pour suffices; false: down, so that the stock does
    const std::vector<quantity::Percent>& percents;
    const std::vector<quantity::Mass>& divisions;  // of each line's scale
    const std::vector<Cap>& caps;
};
struct Rounded {
    quantity::Mass total;
    std::vector<quantity::Mass> grams;  // add to total exactly
};
// Largest remainder among the lines of one division. Where lines stand on scales of different divisions, the
// finer ones get their share of what was asked and the coarsest lines fill up to the next of their steps: the
// batch grows by less than one step of the coarsest scale and no small line pays for a large one's rounding.
// A line with a cap is never rounded above it.
result::Result<Rounded> rounded(const Wanted& wanted);

}  // namespace batch
