// Prices in JSON: the settings of this device and the command line write and read them alike. Amounts stand
// in the currency's main unit ("12.5"), sizes under their unit.
#pragma once

#include <string>

#include "price.h"
#include "store_json.h"

namespace store_prices {

void write(store_json::Writer& writer, const price::Book& book);
// Refused: what price::fault_of refuses, and an amount that the currency has no coin for.
price::Book book_from(const store_json::Json& value, const std::string& place, store_json::Failure& failure);

}  // namespace store_prices
