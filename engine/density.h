// Density of a blend from its parts, taking volumes as additive (no shrinkage on mixing: good to about 1 %
// for oils, waxes and butters; not for foams or whipped butters). Says how much of the weight it is known
// for.
#pragma once

#include <optional>
#include <string_view>
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

inline constexpr std::int64_t kRoom = 20 * decimal::kOne;      // °C
inline constexpr std::string_view kWarmSource = "oil_warm";    // key in presets/sources.json: memory
inline constexpr std::string_view kWaterSource = "crc_water";  // Handbook of Chemistry and Physics
inline constexpr quantity::Density kWater{9982};               // 0.9982 g/mL at 20 °C

// 1/ρ = Σ wᵢ/ρᵢ over the lines with a known density, wᵢ scaled to add to 1; at room temperature. Fats are
// brought there from the temperature of their figure; everything else is taken as the catalogue gives it.
Blend of(const formula::Formula& formula, const std::vector<quantity::Percent>& percents,
         const catalogue::Catalogue& catalogue);

// The same at another temperature, by ρ(T) = ρ(T₀) − 0.00068 (T − T₀) g/mL for oils, fats and waxes. Only
// these have a rule, so powders and waters count as not known. What waxes and butters grow by melting comes
// on top.
Blend warm(const formula::Formula& formula, const std::vector<quantity::Percent>& percents,
           const catalogue::Catalogue& catalogue, std::int64_t temp_c_grid);

// Whether it holds water: then no rule says how its volume grows.
bool is_watery(const catalogue::Ingredient& ingredient);

// The last temperature that the phases say, which is how warm the batch is poured: a hold, or the ceiling
// below which a later phase is added.
std::optional<std::int64_t> pour_c(const formula::Formula& formula);

// Of one ingredient: its own figure, or worked out from its parts where it says none (a made part).
Blend of(const catalogue::Ingredient& ingredient, const catalogue::Catalogue& catalogue);

}  // namespace density
