// What a sale still needs beside the label, by market: who must have looked at the product, who must be told,
// what must be kept. A list to go through, with where each point is from and how far that may be trusted; no
// advice on law, and not everything: states, provinces and towns have rules of their own.
#pragma once

#include <array>
#include <cstdint>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "market.h"
#include "quantity.h"
#include "source.h"

namespace sale_needs {

struct Need {
    std::string_view id;  // the sentence is "sale.<id>"
    std::string_view rule, source;
    source::Standing standing = source::Standing::memory;
    bool done = false;  // as the maker says
    bool operator==(const Need&) const = default;
};
// In the order they come up.
std::vector<Need> of(market::Market market, const std::set<std::string, std::less<>>& done = {});

// Canada, C.R.C., c. 869, s. 30: the number of the range that an exact share falls in, 1 to 13; 0 for
// nothing.
int canada_range(quantity::Percent percent);

// FD&C Act s. 612: sales of cosmetics in the US over the last three years, in whole dollars, under 1,000,000
// on average. The limit is adjusted for inflation; the figure of this year is not known here.
inline constexpr std::int64_t kSmallBelow = 1'000'000;
bool is_small_business(const std::array<std::int64_t, 3>& sales);

}  // namespace sale_needs
