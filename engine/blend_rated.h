// What a person felt of a product that was made, and what set it: kept on the device, so that a rough number
// for firmness (blend_firmness.h) comes to mean something on this bench.
#pragma once

#include <string>

#include "quantity.h"

namespace blend {

struct Body {                              // % of the product
    quantity::Percent wax;                 // waxes, hard fats and thickeners, as beeswax
    quantity::Percent hard, soft, liquid;  // butters; soft fats; oils
    bool operator==(const Body&) const = default;
};

inline constexpr int kMostRating = 5;  // 1 runs, 2 soft, 3 salve-like, 4 firm, 5 hard
inline constexpr std::size_t kMostRated = 40;
inline constexpr std::size_t kMostRatedBytes = 80;
struct Rated {  // what a person felt, and of what; of this device
    std::string title;
    Body body;
    int rating = 0;
    bool operator==(const Rated&) const = default;
};

}  // namespace blend
