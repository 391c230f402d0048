// A sum of money as a person reads it: "12.50 EUR".
#pragma once

#include <string>
#include <string_view>

#include "money.h"
#include "words.h"

namespace money {

std::string say(const words::Table& table, Amount amount, std::string_view currency);

}  // namespace money
