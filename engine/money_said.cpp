#include "money_said.h"

namespace money {

std::string say(const words::Table& table, Amount amount, std::string_view currency) {
    return words::say(
        table, "money.amount",
        {{"n", words::figure_fixed(table, grid_of(amount, currency), places(currency).value_or(2))},
         {"currency", std::string(currency)}});
}

}  // namespace money
