// Density of a blend. The sums are doubles of + − × / in the order of the lines, then brought to the grid by
// an explicit rule, so that both builds give the same integer. A figure without a temperature is taken as
// one at room temperature. A made part without a figure is the blend of its parts.
#include "density.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace density {
namespace {

constexpr double kPerDegree = 0.00068;  // g/mL per °C; 0.00064 to 0.00072 across oils
constexpr int kDeepest = 12;            // parts within parts; deeper ones are a loop
constexpr int kMostVisits = 2000;  // of parts within parts; what a hostile recipe asks beyond is not known

// Grows with warmth as an oil does.
bool is_fat(const catalogue::Ingredient& ingredient) {
    static constexpr std::string_view kFats[] = {"wax",      "soft_wax",   "hard_fat",    "butter",
                                                 "soft_fat", "liquid_oil", "antioxidant", "essential_oil"};
    if (std::find(std::begin(kFats), std::end(kFats), ingredient.role) != std::end(kFats)) return true;
    return !ingredient.own &&
           ingredient.phase == catalogue::Phase::oil;  // an own one has no phase of its own
}

struct Sums {
    double weight = 0, volume = 0;  // of the lines that are known; percent, and percent ÷ (g/mL)
    int visits = 0;
};

void add(Sums& sums, const catalogue::Catalogue& catalogue, std::string_view id, double percent,
         std::optional<std::int64_t> temp_c_grid, int depth = 0) {
    const catalogue::Ingredient* ingredient = catalogue::find_ingredient(catalogue, id);
    if (ingredient == nullptr || ++sums.visits > kMostVisits || depth > kDeepest) return;
    if (!ingredient->density) {
        for (const catalogue::Part& part : ingredient->parts)
            add(sums, catalogue, part.ingredient, percent * decimal::to_double(part.percent.grid) / 100,
                temp_c_grid, depth + 1);
        return;
    }
    if (temp_c_grid && !is_fat(*ingredient)) return;
    double density = decimal::to_double(ingredient->density->value.density.grid);
    if (is_fat(*ingredient)) {
        const std::int64_t from = ingredient->density->value.temp_c_grid.value_or(kRoom);
        density -= kPerDegree * decimal::to_double(temp_c_grid.value_or(kRoom) - from);
    }
    if (density <= 0) return;
    sums.weight += percent;
    sums.volume += percent / density;
}

std::int64_t to_grid(double value) {
    return static_cast<std::int64_t>(std::floor(value * static_cast<double>(decimal::kOne) + 0.5));
}

Blend blend(const formula::Formula& formula, const std::vector<quantity::Percent>& percents,
            const catalogue::Catalogue& catalogue, std::optional<std::int64_t> temp_c_grid) {
    Sums sums;
    for (std::size_t i = 0; i < formula.lines.size() && i < percents.size(); ++i) {
        if (percents[i] <= quantity::Percent{0}) continue;
        add(sums, catalogue, formula.lines[i].ingredient, decimal::to_double(percents[i].grid), temp_c_grid);
    }
    if (sums.volume <= 0) return {};
    return {{to_grid(sums.weight / sums.volume)}, {std::min(to_grid(sums.weight), quantity::kHundred.grid)}};
}

}  // namespace

Blend of(const formula::Formula& formula, const std::vector<quantity::Percent>& percents,
         const catalogue::Catalogue& catalogue) {
    return blend(formula, percents, catalogue, std::nullopt);
}

Blend warm(const formula::Formula& formula, const std::vector<quantity::Percent>& percents,
           const catalogue::Catalogue& catalogue, std::int64_t temp_c_grid) {
    return blend(formula, percents, catalogue, temp_c_grid);
}

bool is_watery(const catalogue::Ingredient& ingredient) {
    return ingredient.role == "water" || ingredient.role == "humectant" ||
           (!ingredient.own && ingredient.phase == catalogue::Phase::water);
}

std::optional<std::int64_t> pour_c(const formula::Formula& formula) {
    std::optional<std::int64_t> last;
    for (const formula::Phase& phase : formula.phases) {
        if (phase.hold_c) last = phase.hold_c;
        if (phase.add_below_c && (!last || *phase.add_below_c < *last)) last = phase.add_below_c;
    }
    return last;
}

Blend of(const catalogue::Ingredient& ingredient, const catalogue::Catalogue& catalogue) {
    if (ingredient.density) return {ingredient.density->value.density, quantity::kHundred};
    Sums sums;
    for (const catalogue::Part& part : ingredient.parts)
        add(sums, catalogue, part.ingredient, decimal::to_double(part.percent.grid), std::nullopt, 1);
    if (sums.volume <= 0) return {};
    return {{to_grid(sums.weight / sums.volume)}, {std::min(to_grid(sums.weight), quantity::kHundred.grid)}};
}

}  // namespace density
