// A person's ratings of firmness in the device's settings. A list, the oldest first; absent when there is
// none.
#pragma once

#include <vector>

#include "blend_rated.h"
#include "store_json.h"

namespace store_blend {

void write(store_json::Writer& writer, const std::vector<blend::Rated>& list);
std::vector<blend::Rated> rated_from(const store_json::Json& list, const std::string& place,
                                     store_json::Failure& failure);

}  // namespace store_blend
