// A kept question about a list of ingredients as JSON. Only store*.cpp include this.
#pragma once

#include "reading_kept.h"
#include "store_json.h"

namespace store_reading {

reading::Kept kept_from(const store_json::Json& value, const std::string& place,
                        store_json::Failure& failure);
void write(store_json::Writer& writer, const reading::Kept& kept);

}  // namespace store_reading
