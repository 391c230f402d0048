// What version 2 of a link adds to version 1. Only share*.cpp include this.
#pragma once

#include <optional>

#include "cbor.h"
#include "result.h"
#include "workspace.h"

namespace share_more {

// Whether the recipe holds anything that version 1 has no place for.
bool holds_more(const workspace::Recipe& recipe);
void encode(cbor::Writer& writer, const workspace::Recipe& recipe);

// Adds to a recipe that version 1's part was read into. Faults of the packing stay in the reader.
std::optional<result::Error> decode(cbor::Reader& reader, workspace::Recipe& recipe);

}  // namespace share_more
