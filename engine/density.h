// Density of a blend from its parts, taking volumes as additive (no shrinkage on mixing: good to about 1 %
// for oils, waxes and butters; not for foams or whipped butters). Says how much of the weight it is known
// for.
#pragma once

#include <vector>

#include "catalogue.h"
#include "formula.h"
#include "quantity.h"

namespace density {

struct Blend {
    quantity::Density density;  // of the part that is known; 0 when nothing is
    quantity::Percent known;    // share of the weight that has a density
    bool operator==(const Blend&) const = default;
};

// 1/ρ = Σ wᵢ/ρᵢ over the lines with a known density, wᵢ scaled to add to 1.
Blend of(const formula::Formula& formula, const std::vector<quantity::Percent>& percents,
         const catalogue::Catalogue& catalogue);

}  // namespace density
