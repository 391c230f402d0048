// What a person typed into a number field, to the grid: a number with or without its unit, or plain
// arithmetic.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "engine/result.h"

namespace typed {

std::string words(std::string_view text);  // without the space around them

result::Result<std::int64_t> percent(std::string_view text);       // 0 to 100
result::Result<std::int64_t> loss(std::string_view text);          // 0 to under 100 %
result::Result<std::int64_t> mass(std::string_view text);          // grams, above 0, to 1 t; "2 oz" too
result::Result<std::int64_t> mass_or_none(std::string_view text);  // grams, 0 allowed
result::Result<std::int64_t> volume(std::string_view text);        // millilitres, above 0; "2 fl oz" too
result::Result<std::int64_t> amount(std::string_view text);   // of money, minutes, percent: 0 to 100 million
result::Result<std::int64_t> whole(std::string_view text);    // a count, whole
result::Result<std::int64_t> density(std::string_view text);  // g/mL, above 0, under 30
result::Result<std::int64_t> of_fat(std::string_view text);   // iodine or saponification value, 0 to 1000
result::Result<std::int64_t> millimetres(std::string_view text);  // above 0, to 1 m
result::Result<std::int64_t> celsius(std::string_view text);      // −50 to 300
result::Result<std::int64_t> ph(std::string_view text);           // 0 to 14

}  // namespace typed
