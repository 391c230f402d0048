// A recipe's own ingredient inside a link. Only share*.cpp include this.
#pragma once

#include <optional>

#include "catalogue.h"
#include "cbor.h"

namespace share_own {

void encode(cbor::Writer& writer, const catalogue::Ingredient& own);

// Nothing when a figure or a word is impossible; faults of the packing stay in the reader.
std::optional<catalogue::Ingredient> decode(cbor::Reader& reader);

}  // namespace share_own
