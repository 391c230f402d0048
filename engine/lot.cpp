#include "lot.h"

#include <algorithm>
#include <utility>

#include "bounds.h"
#include "date.h"

namespace lot {

using result::Code;
using result::Error;

std::optional<Error> fault_of(const Lot& lot) {
    if (auto fault = bounds::unnamed(lot.ingredient, kMostTextBytes, "ingredient")) return fault;
    if (auto fault = bounds::unnamed(lot.number, kMostTextBytes, "number")) return fault;
    if (auto fault = bounds::too_long(lot.supplier, kMostTextBytes, "supplier")) return fault;
    for (const auto& [day, field] :
         {std::pair(&lot.best_before, "best_before"), std::pair(&lot.opened, "opened"),
          std::pair(&lot.counted, "counted"), std::pair(&lot.used_up, "used_up")})
        if (!day->empty() && !date::is_day(*day))
            return Error{Code::field_unknown_value, field, day->substr(0, kMostTextBytes)};
    if (auto fault = bounds::too_long(lot.counted_at, kMostTextBytes, "counted_at")) return fault;
    if (lot.left)
        if (auto fault = bounds::outside(lot.left->grid, decimal::kLargest, "left_g")) return fault;
    if (lot.opened_months)
        if (auto fault = bounds::whole_outside(*lot.opened_months, kMostOpenedMonths, "opened_months"))
            return fault;
    if (lot.earlier.size() > kMostEarlier)
        return Error{Code::too_many, "earlier", std::to_string(kMostEarlier)};
    for (const std::string& number : lot.earlier)
        if (auto fault = bounds::unnamed(number, kMostTextBytes, "earlier")) return fault;
    return std::nullopt;
}

std::optional<Error> fault_of(const std::vector<Threshold>& thresholds, const std::string& at) {
    if (thresholds.size() > kMostThresholds)
        return Error{Code::too_many, at, std::to_string(kMostThresholds)};
    for (const Threshold& one : thresholds) {
        if (auto fault = bounds::unnamed(one.ingredient, kMostTextBytes, at)) return fault;
        if (auto fault = bounds::outside(one.grams.grid, decimal::kLargest, at)) return fault;
    }
    return std::nullopt;
}

Lot corrected(const Lot& before, Lot changed) {
    changed.earlier = before.earlier;
    if (changed.number != before.number) {
        changed.earlier.push_back(before.number);
        std::erase(changed.earlier, changed.number);
    }
    return changed;
}

std::vector<std::string> numbers(const Lot& lot) {
    std::vector<std::string> all{lot.number};
    all.insert(all.end(), lot.earlier.begin(), lot.earlier.end());
    return all;
}

}  // namespace lot
