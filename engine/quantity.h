// Percent, mass and volume as types that do not mix. Integers on the grid of decimal.h (0.0001 %, g, mL).
// Adding a mass to a percent does not compile; mass and volume meet only through a density.
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "decimal.h"
#include "result.h"

namespace quantity {

struct Percent {
    std::int64_t grid = 0;
    auto operator<=>(const Percent&) const = default;
    friend Percent operator+(Percent a, Percent b) { return {a.grid + b.grid}; }
    friend Percent operator-(Percent a, Percent b) { return {a.grid - b.grid}; }
};
struct Mass {
    std::int64_t grid = 0;
    auto operator<=>(const Mass&) const = default;
    friend Mass operator+(Mass a, Mass b) { return {a.grid + b.grid}; }
    friend Mass operator-(Mass a, Mass b) { return {a.grid - b.grid}; }
};
struct Volume {
    std::int64_t grid = 0;
    auto operator<=>(const Volume&) const = default;
    friend Volume operator+(Volume a, Volume b) { return {a.grid + b.grid}; }
    friend Volume operator-(Volume a, Volume b) { return {a.grid - b.grid}; }
};
// A share of the whole product in steps of 0.0000000001 %, fine enough that a percent of a percent is exact:
// what a constituent of one line comes to in the product.
struct Trace {
    std::int64_t grid = 0;
    auto operator<=>(const Trace&) const = default;
    friend Trace operator+(Trace a, Trace b) { return {a.grid + b.grid}; }
    friend Trace operator-(Trace a, Trace b) { return {a.grid - b.grid}; }
};
inline constexpr int kTracePlaces = 10;
constexpr Trace trace_of(Percent line, Percent content) {
    return {line.grid * content.grid};
}
struct Density {  // g/mL on the same grid
    std::int64_t grid = 0;
    auto operator<=>(const Density&) const = default;
};

inline constexpr Percent kHundred{100 * decimal::kOne};
constexpr Percent percent(std::int64_t whole) {
    return {whole * decimal::kOne};
}
constexpr Mass grams(std::int64_t whole) {
    return {whole * decimal::kOne};
}
constexpr Volume millilitres(std::int64_t whole) {
    return {whole * decimal::kOne};
}

// "250", "250 g", "0,5 kg", "2 oz", "1 lb" / "60 mL", "0.5 L", "2 fl oz"; no unit means g / mL.
// US customary factors of 16 CFR 500.19(a): 1 oz = 28.3495 g, 1 lb = 453.592 g, 1 fl oz = 29.5735 mL.
result::Result<Mass> read_mass(std::string_view text);
result::Result<Volume> read_volume(std::string_view text);
result::Result<Percent> read_percent(
    std::string_view text);  // "21", "21 %", "21%"; not negative, at most 100

Mass mass_of(Volume volume, Density density);   // nearest on the grid
Volume volume_of(Mass mass, Density density);   // density > 0
Mass share_of(Mass whole, Percent part);        // nearest on the grid
std::int64_t ounces_grid(Mass mass);            // 0.0001 oz, by 16 CFR 500.19(a): 1 g = 0.0352740 oz
std::int64_t fluid_ounces_grid(Volume volume);  // 1 mL = 0.0338140 fl oz

}  // namespace quantity
