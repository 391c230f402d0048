// What is paid: packs of ingredients, containers, labels and boxes with price and delivery, rates of exchange
// with their days, an hour of work, overhead, and how a price follows from a cost. Of this device, never in a
// link. What a recipe comes to is worked out in cost.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "money.h"
#include "quantity.h"
#include "result.h"

namespace price {

enum class Of { ingredient, container, label, box };
enum class Unit { g, ml, pieces };

struct Pack {  // as it is bought; several of one thing may be known
    Of of = Of::ingredient;
    std::string what;  // id, or the name of a line without one; "" for labels and boxes
    Unit unit = Unit::g;
    std::int64_t size = 0;      // grams, millilitres or pieces on the grid of decimal.h
    std::string currency;       // of the two below
    money::Amount paid;         // for the pack
    money::Amount delivery;     // what of the delivery falls to it
    std::string day, supplier;  // when; as typed; "" not said
    bool chosen = false;        // reckoned with whatever its day is; of one thing one at the most
    bool operator==(const Pack&) const = default;
};

struct Rate {  // "100 JPY = 0.61 EUR", of one day
    std::string from, to;
    std::int64_t amount = 0, gives = 0;  // of `from`, of `to`; on the grid of decimal.h, above 0
    std::string day, source;             // as typed
    bool operator==(const Rate&) const = default;
};

// A price from a cost: margin is the share of the price that is not cost, mark-up what is put on the cost.
enum class By { margin, mark_up };
struct Step {
    By by = By::margin;
    std::int64_t percent = 0;  // on the grid; a margin is under 100 %
    bool operator==(const Step&) const = default;
};

struct Making {          // what one recipe takes beside its ingredients
    std::string recipe;  // id in the book; "" for those that have no entry of their own
    std::optional<std::int64_t> minutes_batch, minutes_unit;  // of work, on the grid
    bool label = true, box = false;                           // each unit gets one
    bool operator==(const Making&) const = default;
};

struct Book {
    std::string currency;     // that everything is reckoned in; "" not said yet
    std::vector<Pack> packs;  // in the order they were entered
    std::vector<Rate> rates;
    std::optional<money::Sum> hour;            // of work
    std::optional<money::Sum> overhead_batch;  // of each batch: power, rent, what is used up
    std::int64_t overhead_percent = 0;         // on ingredients, containers and work together, on the grid
    std::optional<Step> wholesale, retail;     // retail is from the wholesale price, where that is said
    std::optional<money::Sum> fixed;           // to be earned before anything is: a stall, a course, a month
    std::vector<Making> makings;
    bool operator==(const Book&) const = default;
};

inline constexpr std::size_t kMostPacks = 1000, kMostRates = 200, kMostMakings = 500;
inline constexpr std::size_t kMostTextBytes = 120;
inline constexpr std::int64_t kMostMinutes = 10'000 * decimal::kOne;
inline constexpr std::int64_t kMostStep = 1000 * decimal::kOne;  // percent

std::optional<result::Error> fault_of(const Book& book, const std::string& at);

// The pack that is reckoned with: the chosen one, else that of the latest day, the one entered last of
// several; null where there is none.
const Pack* pack_of(const Book& book, Of of, std::string_view what);
// Of the pair, in either direction: the last one up to `day`, else the first after it; of no day the last of
// all. Null where there is none.
const Rate* rate_of(const Book& book, std::string_view from, std::string_view to, std::string_view day);
Making making_of(const Book& book, std::string_view recipe);  // its own, else that for all, else the default

// --- edits; what would be wrong is refused with its place ---
result::Result<Book> with_pack(Book book, std::optional<std::size_t> at, Pack pack);  // none: a further one
result::Result<Book> without_pack(Book book, std::size_t at);
result::Result<Book> with_rate(Book book, Rate rate);  // in place of one of the same pair and day
result::Result<Book> without_rate(Book book, std::size_t at);
result::Result<Book> with_making(Book book, Making making);
result::Result<Book> checked(Book book);

}  // namespace price
