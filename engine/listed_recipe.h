// A formula that stands behind a list of ingredients, as a recipe to be made: fats and powders first, water
// apart, what bears no heat last; a carrier goes with what it carries, as it is bought.
#pragma once

#include <vector>

#include "catalogue.h"
#include "quantity.h"
#include "reading_list.h"
#include "workspace.h"

namespace listed_recipe {

// `entries`: of the items, in their order; those of 0 % are left out.
workspace::Recipe of(const std::vector<reading_list::Entry>& entries,
                     const std::vector<quantity::Percent>& percents, const catalogue::Catalogue& known);

}  // namespace listed_recipe
