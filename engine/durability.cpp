#include "durability.h"

#include <array>

namespace durability {
namespace {

struct Day {
    std::int64_t year = 0, month = 0, day = 0;
};

std::optional<std::int64_t> figure(std::string_view text) {
    std::int64_t value = 0;
    for (const char c : text) {
        if (c < '0' || c > '9') return std::nullopt;
        value = value * 10 + (c - '0');
    }
    return value;
}

std::optional<Day> read(std::string_view text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
    const auto year = figure(text.substr(0, 4)), month = figure(text.substr(5, 2)),
               day = figure(text.substr(8, 2));
    if (!year || !month || !day || *month < 1 || *month > 12 || *day < 1 || *day > 31) return std::nullopt;
    return Day{*year, *month, *day};
}

std::int64_t days_of(std::int64_t year, std::int64_t month) {
    static constexpr std::array<int, 12> kDays{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    const bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    return kDays[static_cast<std::size_t>(month - 1)] + (month == 2 && leap ? 1 : 0);
}

}  // namespace

std::string last_month_within(std::string_view made_on, std::int64_t months) {
    const std::optional<Day> made = read(made_on);
    if (!made || months < 0 || months > 1200) return "";
    std::int64_t whole = made->year * 12 + made->month - 1 + months;
    // A month that is begun is not over: the end of the month on the label must not lie beyond the time.
    if (made->day < days_of(whole / 12, whole % 12 + 1)) whole -= 1;
    const std::string month = std::to_string(whole % 12 + 1), year = std::to_string(whole / 12);
    return (month.size() < 2 ? "0" : "") + month + "/" + year;
}

Durability of(market::Market market, const Keeping& keeping, std::string_view made_on) {
    Durability made;
    if (!market::as_in_europe(market)) {
        made.mark = Mark::none_asked;
        made.source = "memory";
        made.standing = source::Standing::memory;
        return made;
    }
    if (!keeping.months) return made;
    if (*keeping.months <= kMostMonths) {
        made.mark = Mark::best_before;
        made.date = last_month_within(made_on, *keeping.months);
    } else if (keeping.never_opened) {
        made.mark = Mark::none_needed;
        made.source = "memory";
        made.standing = source::Standing::memory;
    } else if (!keeping.opened_months) {
        made.mark = Mark::opened_unknown;
    } else {
        made.mark = Mark::after_opening;
        made.months = *keeping.opened_months;
    }
    return made;
}

}  // namespace durability
