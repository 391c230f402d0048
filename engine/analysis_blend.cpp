#include "analysis_blend.h"

namespace analysis {
namespace {

bool holds_infusion(const workspace::Recipe& recipe) {
    for (const catalogue::Ingredient& own : recipe.own) {
        if (!own.made || own.made->infused_with.empty()) continue;
        for (const formula::Line& line : recipe.formula.lines)
            if (line.ingredient == own.id) return true;
    }
    return false;
}

}  // namespace

result::Result<Blended> blended(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                                const Shelf& shelf, std::optional<std::int64_t> temp_c_grid) {
    auto blend = blend::of(recipe.formula, shipped, recipe.own, temp_c_grid);
    if (!blend) return blend.error();
    const auto parts = blend::parts_of(recipe.formula, shipped, recipe.own);
    if (!parts) return parts.error();
    Blended made;
    made.blend = std::move(blend).value();
    made.firm = blend::firm(*parts);
    made.storing =
        storing::of({*parts, catalogue::find_product(shipped, recipe.product), shelf.lots, shelf.made_on,
                     shelf.margin_months, market::of_id(recipe.market).value_or(market::Market::eu),
                     recipe.label.keeping, holds_infusion(recipe)});
    return made;
}

std::vector<blend::Rung> ladder(const Starters& starters, const catalogue::Catalogue& shipped,
                                std::string_view but) {
    std::vector<blend::Rung> rungs;
    for (const auto& [name, recipe] : starters) {
        const auto parts = blend::parts_of(recipe.formula, shipped, recipe.own);
        if (!parts || recipe.title == but) continue;
        const blend::Firm firm = blend::firm(*parts);
        if (firm.rough == blend::Rough::fits) rungs.push_back({recipe.title, firm.firmness});
    }
    return rungs;
}

}  // namespace analysis
