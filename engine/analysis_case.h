// What the checks look at, made from a recipe: what is in the product in the end, line by line, and what may
// be believed about it. Takes what an ingredient is from the shipped catalogue first, then from the shipped
// ingredient that an own entry is based on, and from the recipe's own entry only where there is neither: what
// a stranger's recipe brings along never loosens a check.
#pragma once

#include <vector>

#include "catalogue.h"
#include "safety.h"
#include "workspace.h"

namespace analysis {

// Points into all it is given; use it while they stand. `mine`: what this device has of its own
// (workspace::mine). An own entry of the recipe that is not the same as one of these came with the recipe.
safety::Case case_of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                     const std::vector<catalogue::Ingredient>& mine = {}, const limits::Book* book = nullptr);

}  // namespace analysis
