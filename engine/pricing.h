// From a cost to a price, and back: margin, mark-up, break-even. Whole minor units of one currency; taxes on
// sales are no part of it.
#pragma once

#include <cstdint>
#include <optional>

#include "money.h"
#include "price.h"

namespace pricing {

// cost ÷ (1 − margin), or cost × (1 + mark-up), to the nearest minor unit.
money::Amount price_of(money::Amount cost, const price::Step& step);

// Share of the price, and of the cost, that is not cost; on the grid of decimal.h, below 0 for a loss.
// Nothing where price or cost is 0.
std::optional<std::int64_t> margin_of(money::Amount cost, money::Amount price);
std::optional<std::int64_t> mark_up_of(money::Amount cost, money::Amount price);

// The fewest units whose price, less their own cost, brings in `fixed`; nothing where one brings in nothing.
std::optional<std::int64_t> break_even(money::Amount fixed, money::Amount cost, money::Amount price);

struct Offer {
    money::Amount price, earned;                  // earned: on one, sold at it by the maker
    std::optional<std::int64_t> margin, mark_up;  // over the cost
    std::optional<std::int64_t> break_even;       // units; none: nothing fixed is said, or one earns nothing
    bool operator==(const Offer&) const = default;
};
struct Offers {
    std::optional<Offer> wholesale, retail;  // none: not asked for
    bool operator==(const Offers&) const = default;
};
// By the steps of the book; retail is put on the wholesale price where there is one, else on the cost.
Offers offers(money::Amount cost, const price::Book& book, const std::optional<money::Amount>& fixed);

}  // namespace pricing
