// What usually goes wrong with a product of this kind, and what helps: common practice, no source. Chosen by
// what is in the formula.
#pragma once

#include <string_view>
#include <vector>

#include "catalogue.h"
#include "formula.h"

namespace documents_faults {

// Keys of sentences, in the order in which the faults show.
std::vector<std::string_view> of(const formula::Formula& formula, std::string_view product,
                                 const catalogue::Catalogue& known);

}  // namespace documents_faults
