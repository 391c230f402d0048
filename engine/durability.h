// Which date or mark of keeping a label carries: a date of minimum durability, or the months after opening
// (Regulation (EC) 1223/2009, Art. 19(1)(c): 30 months decide). How long a product really keeps is told by
// tests, not here; nothing is guessed.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "market.h"
#include "source.h"

namespace durability {

enum class Mark {
    best_before,     // date: up to and with 30 months
    after_opening,   // open jar and months: over 30 months
    none_needed,     // nothing to spoil after opening: single use, never opened
    none_asked,      // no rule of this market is known that asks for one
    unknown,         // how long it keeps is not said
    opened_unknown,  // over 30 months, and how long after opening is not said
};
struct Keeping {
    std::optional<std::int64_t> months;  // sealed, from the day it was made
    std::optional<std::int64_t> opened_months;
    bool never_opened = false;
    bool operator==(const Keeping&) const = default;
};
struct Durability {
    Mark mark = Mark::unknown;
    std::string date;         // "10/2028": before the end of this month; "" when the day made is not known
    std::int64_t months = 0;  // after opening
    std::string_view source = "eu_1223_19";
    source::Standing standing = source::Standing::document;
    bool operator==(const Durability&) const = default;
};

inline constexpr std::int64_t kMostMonths = 30;  // up to here a date

Durability of(market::Market market, const Keeping& keeping, std::string_view made_on);
// The last month that is over within `months` of the day YYYY-MM-DD, as MM/YYYY; "" for what is no day.
std::string last_month_within(std::string_view made_on, std::int64_t months);

}  // namespace durability
