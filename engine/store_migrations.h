// How a stored document of an older format becomes one of today's, step by step. Only store*.cpp and tests
// include this.
#pragma once

#include <string_view>
#include <vector>

#include "result.h"
#include "store_json.h"

namespace store_migrations {

// Lifts a document from format i + 1 to i + 2; refuses what cannot be lifted. It may be a formula, a kept
// recipe or the settings: see "kind".
using Step = result::Result<store_json::Json> (*)(store_json::Json document);

// The steps to today's format, oldest first; none yet, as format 1 is the first.
const std::vector<Step>& steps();

// A document of today's format, with its two heading keys checked: "tarebench" a whole number from 1, "kind"
// as asked. version_newer when it says more than steps.size() + 1.
result::Result<store_json::Json> lifted(store_json::Json document, std::string_view kind,
                                        const std::string& place, const std::vector<Step>& steps);

}  // namespace store_migrations
