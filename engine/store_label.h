// What a recipe says for its label, and who answers for products on this device, as JSON. Only store*.cpp
// include this.
#pragma once

#include "label_said.h"
#include "store_json.h"

namespace store_label {

label::Said said_from(const store_json::Json& value, const std::string& place, store_json::Failure& failure);
void write(store_json::Writer& writer, const label::Said& said);

label::Maker maker_from(const store_json::Json& value, const std::string& place,
                        store_json::Failure& failure);
void write(store_json::Writer& writer, const label::Maker& maker);

}  // namespace store_label
