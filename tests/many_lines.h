// A recipe of many lines, for what has to hold or to be quick with a long list.
#pragma once

#include "engine/workspace.h"

namespace many_lines {

// Ingredients from all over the shelf at 3 % and more, the last of them the rest line; 500 g.
inline workspace::Recipe recipe(const catalogue::Catalogue& catalogue, std::size_t lines) {
    workspace::Recipe recipe;
    recipe.title = "Many lines";
    recipe.formula.phases.push_back({"A", {}, {}});
    const auto& shelf = catalogue.ingredients;
    for (std::size_t i = 0; i < lines; ++i) {
        formula::Line line;
        line.ingredient = shelf[i * shelf.size() / lines].id;
        line.rest = i + 1 == lines;
        if (!line.rest) line.percent = {30000 + static_cast<std::int64_t>(i) * 137};
        recipe.formula.lines.push_back(line);
    }
    recipe.batch.amount = batch::Amount::grams;
    recipe.batch.grams = quantity::grams(500);
    recipe.batch.division = {100};
    return recipe;
}

}  // namespace many_lines
