// The book of limits in: from the JSON of presets/limits while building, and from its packed form the first
// time a report is asked for. It is no part of the presets, so that no start has to read it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "limits_book.h"
#include "result.h"
#include "store.h"

namespace store {

bool is_of_limits(std::string_view file);  // "limits/rows.json"
// From the files of `files` that are of limits; refuses them all at the first fault. A row must have a
// document, an edition, a product type, a source that is known and a standing not firmer than that; what it
// counts must be in the composition or in the catalogue.
result::Result<limits::Book> read_limits(const std::vector<File>& files, const catalogue::Catalogue& shipped);
std::string pack_limits(const limits::Book& book);
result::Result<limits::Book> unpack_limits(std::string_view bytes);  // damage is refused

}  // namespace store
