// Sums of money: whole minor units of a currency by its ISO 4217 code (cents of EUR, yen of JPY). No sum is
// ever a fraction of what can be paid. Two currencies meet only through a dated rate (price.h).
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "result.h"

namespace money {

struct Amount {  // in minor units of a currency that the place makes clear
    std::int64_t minor = 0;
    auto operator<=>(const Amount&) const = default;
    friend Amount operator+(Amount a, Amount b) { return {a.minor + b.minor}; }
    friend Amount operator-(Amount a, Amount b) { return {a.minor - b.minor}; }
};

struct Sum {  // one that says its currency
    Amount amount;
    std::string currency;
    bool operator==(const Sum&) const = default;
};

inline constexpr std::int64_t kMostMinor = 10'000'000'000;  // of one price: beyond it a slip is likelier
inline constexpr int kMostPlaces = 4;

// Digits after the decimal sign, by the list of active codes of ISO 4217 (2024-06-25); nothing for another
// code. Precious metals, test codes and units of account that no one pays with are left out.
std::optional<int> places(std::string_view currency);

// A figure on the grid of decimal.h as an amount: number_too_fine where the currency has no such coin,
// number_negative, number_too_large, field_unknown_value for a currency that is none.
result::Result<Amount> amount_of(std::int64_t grid, std::string_view currency);
std::int64_t grid_of(Amount amount,
                     std::string_view currency);  // for what is no more than cost::kMostFine comes to

}  // namespace money
