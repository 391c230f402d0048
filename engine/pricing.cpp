#include "pricing.h"

#include "decimal.h"
#include "quantity.h"

namespace pricing {
namespace {

using money::Amount;
using quantity::kHundred;

Offer offer_at(Amount cost, Amount price, const std::optional<Amount>& fixed) {
    return {price, price - cost, margin_of(cost, price), mark_up_of(cost, price),
            fixed ? break_even(*fixed, cost, price) : std::nullopt};
}

}  // namespace

Offers offers(Amount cost, const price::Book& book, const std::optional<Amount>& fixed) {
    Offers all;
    if (book.wholesale) all.wholesale = offer_at(cost, price_of(cost, *book.wholesale), fixed);
    if (book.retail)
        all.retail =
            offer_at(cost, price_of(all.wholesale ? all.wholesale->price : cost, *book.retail), fixed);
    return all;
}

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
