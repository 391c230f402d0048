// Where a product is sold: the markets whose rules for the label are known, by the ids that a recipe carries.
// GB and Northern Ireland are two: they name alike and differ in lists and dates.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

namespace market {

enum class Market { eu, gb, ni, us, ca };

inline constexpr std::array<std::pair<Market, std::string_view>, 5> kAll{
    {{Market::eu, "eu"}, {Market::gb, "gb"}, {Market::ni, "ni"}, {Market::us, "us"}, {Market::ca, "ca"}}};

constexpr std::string_view id_of(Market market) {
    return kAll[static_cast<std::size_t>(market)].second;
}
constexpr std::optional<Market> of_id(std::string_view id) {
    for (const auto& [one, name] : kAll)
        if (name == id) return one;
    return std::nullopt;
}
// The three under Regulation (EC) 1223/2009 or its British copy.
constexpr bool as_in_europe(Market market) {
    return market == Market::eu || market == Market::gb || market == Market::ni;
}

}  // namespace market
