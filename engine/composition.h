// What ingredients hold: the constituents of essential oils and of whatever else carries some, as ranges in %
// of the ingredient, and what they come to in a product, summed over every source. Exact: whole steps of
// quantity::Trace, no floating point. What is not known is said and never counts as nothing. The limits that
// these sums are held against are in limits.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "quantity.h"
#include "source.h"

namespace composition {

struct Constituent {
    std::string id, name;
    std::string sums_into;  // the group it is counted with: "geranial" -> "citral"; "" none
    std::vector<std::string> cas;
    bool operator==(const Constituent&) const = default;
};

struct Row {  // of one ingredient
    std::string constituent;
    catalogue::Content percent;  // of the ingredient; a shipped row has at least a maximum
    std::string source;          // where the maximum is from
    source::Standing standing = source::Standing::estimate;
    bool operator==(const Row&) const = default;
};
struct Carrier {  // an ingredient that carries constituents
    std::string ingredient;
    std::vector<Row> rows;  // sorted by constituent; a group has a row of its own beside its members
    bool operator==(const Carrier&) const = default;
};

struct Table {
    std::vector<Constituent> constituents;  // sorted by id
    std::vector<Carrier> carriers;          // sorted by ingredient
    bool operator==(const Table&) const = default;
};

const Constituent* find_constituent(const Table& table, std::string_view id);
// By id, name or registry number, as a paper may word it; ASCII letters compared without case.
const Constituent* find_named(const Table& table, std::string_view written);
const Carrier* find_carrier(const Table& table, std::string_view ingredient);

// One source in a product: a line, or what a made part on that line holds.
struct Held {
    std::string ingredient;  // of which the rows are taken: a shipped id, or "" (only a name)
    quantity::Percent percent;
    std::size_t line = 0;                              // of the formula
    const catalogue::LotAnalysis* analysis = nullptr;  // of this very bottle
    bool trusted = false;  // the analysis is this person's own; another one may add, never take away
    bool carries = true;   // may hold constituents at all: an oil of flowers does, a wax does not
};

struct Share {  // what one source brings
    std::size_t held = 0;
    quantity::Trace low, high;
    std::optional<quantity::Trace> typical;
    std::string source;
    source::Standing standing = source::Standing::estimate;
    bool own = false;  // from the bottle's own paper
    bool operator==(const Share&) const = default;
};
struct Total {
    quantity::Trace low, high;               // high: the worst case that is known
    std::optional<quantity::Trace> typical;  // only when every share has one
    std::vector<Share> shares;               // the largest first
    std::vector<std::size_t> unknown;        // sources of which nothing at all is known: high may be too low
    bool operator==(const Total&) const = default;
};

// What `constituent` (or a group, its members summed) comes to over all sources.
Total total_of(const Table& table, const std::vector<Held>& held, std::string_view constituent);
// % of `constituent` in one source; absent: nothing is said about it there.
std::optional<Row> row_of(const Table& table, const Held& held, std::string_view constituent);

}  // namespace composition
