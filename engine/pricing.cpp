#include "pricing.h"

#include "decimal.h"
#include "quantity.h"

namespace pricing {
namespace {

using money::Amount;
using quantity::kHundred;

}  // namespace

Amount price_of(Amount cost, const price::Step& step) {
    if (step.by == price::By::mark_up)
        return {decimal::scale_nearest(cost.minor, kHundred.grid + step.percent, kHundred.grid)};
    return {decimal::scale_nearest(cost.minor, kHundred.grid, kHundred.grid - step.percent)};
}

std::optional<std::int64_t> margin_of(Amount cost, Amount price) {
    if (price.minor <= 0) return std::nullopt;
    return decimal::scale_nearest((price - cost).minor, kHundred.grid, price.minor);
}

std::optional<std::int64_t> mark_up_of(Amount cost, Amount price) {
    if (cost.minor <= 0) return std::nullopt;
    return decimal::scale_nearest((price - cost).minor, kHundred.grid, cost.minor);
}

std::optional<std::int64_t> break_even(Amount fixed, Amount cost, Amount price) {
    const Amount each = price - cost;
    if (each.minor <= 0) return std::nullopt;
    return decimal::scale_up(fixed.minor, 1, each.minor);
}

}  // namespace pricing
