// A lot of a bought ingredient as it stands on the shelf: of this device, never in a link. What was counted
// stands here; what went out of it since is worked out from the batch records (workspace_stock.h).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity.h"
#include "result.h"

namespace lot {

struct Lot {
    std::string ingredient;  // id
    std::string number;      // as printed
    std::vector<std::string>
        earlier;  // numbers it was entered under before a correction; records may have them
    std::string best_before, opened;            // days; "" not known, not opened
    std::string supplier;                       // as typed
    std::optional<quantity::Mass> left;         // as counted; none: not known
    std::string counted;                        // day
    std::string counted_at;                     // instant; "" by an older version of the page
    std::string used_up;                        // day; "" there is some left
    std::optional<std::int64_t> opened_months;  // it keeps once open, as its supplier says; none: not known
    bool operator==(const Lot&) const = default;
};

struct Threshold {  // under which an ingredient runs low
    std::string ingredient;
    quantity::Mass grams;
    bool operator==(const Threshold&) const = default;
};

inline constexpr std::size_t kMostThresholds = 500;
inline constexpr std::size_t kMostTextBytes = 120;
inline constexpr std::size_t kMostEarlier = 20;
inline constexpr std::int64_t kMostOpenedMonths = 120;

std::optional<result::Error> fault_of(const Lot& lot);
std::optional<result::Error> fault_of(const std::vector<Threshold>& thresholds, const std::string& at);
// `changed` in place of `before`: a number that is another now stays among the earlier ones.
Lot corrected(const Lot& before, Lot changed);
std::vector<std::string> numbers(const Lot& lot);  // its own first

}  // namespace lot
