// Density of a blend. The sums are doubles of + and / in the order of the lines, then brought to the grid by
// an explicit rule, so that both builds give the same integer. Each density is taken as the catalogue gives
// it, whatever its temperature: between 20 and 80 °C oils lose about 4 %, so a fill by volume holds for the
// temperature of the figures, not for the pour.
#include "density.h"

#include <cmath>
#include <cstddef>

namespace density {

// w_i / rho_i is a volume per weight of blend; their sum is 1 / rho where every line is known.
Blend of(const formula::Formula& formula, const std::vector<quantity::Percent>& percents,
         const catalogue::Catalogue& catalogue) {
    Blend blend;
    double volume = 0;
    for (std::size_t i = 0; i < formula.lines.size() && i < percents.size(); ++i) {
        if (percents[i] <= quantity::Percent{0}) continue;
        const catalogue::Ingredient* ingredient =
            catalogue::find_ingredient(catalogue, formula.lines[i].ingredient);
        if (ingredient == nullptr || !ingredient->density) continue;
        const quantity::Density density = ingredient->density->value.density;
        if (density.grid <= 0) continue;
        blend.known = blend.known + percents[i];
        volume += decimal::to_double(percents[i].grid) / decimal::to_double(density.grid);
    }
    if (volume > 0)
        blend.density.grid = static_cast<std::int64_t>(std::floor(
            decimal::to_double(blend.known.grid) / volume * static_cast<double>(decimal::kOne) + 0.5));
    return blend;
}

}  // namespace density
