// What a workshop costs a head: what its plan takes, by this device's prices.
#pragma once

#include <string>
#include <string_view>

#include "cost.h"
#include "words.h"
#include "workshop.h"

namespace workshop {

// `recipe_id`: in the book, for what its making takes. Errors: those of cost::per_head.
result::Result<cost::PerHead> per_head(const Recipe& recipe, std::string_view recipe_id, const Plan& plan,
                                       const Workshop& made, const catalogue::Catalogue& known,
                                       const price::Book& book);
// "4.71 EUR each, 33.00 EUR in all …" with what is not known of it.
std::string per_head_said(const words::Table& words, const cost::PerHead& made, std::int64_t people);

}  // namespace workshop
