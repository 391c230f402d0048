// What ingredients hold: the constituents of essential oils and of whatever else carries some, in % of the
// ingredient, and what they come to in a product, summed over every source. Exact: whole steps of
// quantity::Trace, no floating point. What is not known is said and never counts as nothing. The limits that
// these sums are held against are in limits.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "quantity.h"
#include "source.h"

namespace composition {

using Id = std::uint16_t;  // place of a constituent in Table::constituents
inline constexpr Id kNone = 0xFFFF;

struct Constituent {
    std::string id, name;
    Id sums_into = kNone;  // the group it is counted with: geranial with citral
    std::vector<std::string> cas;
    bool operator==(const Constituent&) const = default;
};

struct Row {  // of one ingredient
    Id constituent = kNone;
    catalogue::Content percent;  // of the ingredient; a shipped row has a minimum and a maximum
    std::string source;          // where the maximum is from
    source::Standing standing = source::Standing::estimate;
    bool operator==(const Row&) const = default;
};
struct Carrier {  // an ingredient that carries constituents
    std::string ingredient;
    std::vector<Row> rows;  // sorted by constituent, a group beside its members; none: it is not known which
    bool operator==(const Carrier&) const = default;
};

struct Table {
    std::vector<Constituent> constituents;  // sorted by id
    std::vector<Carrier> carriers;          // sorted by ingredient
    bool operator==(const Table&) const = default;
};

Id find(const Table& table, std::string_view constituent);  // kNone when there is no such
// By id, name or registry number, as a paper may word it; ASCII letters compared without case.
Id find_named(const Table& table, std::string_view written);
const Carrier* find_carrier(const Table& table, std::string_view ingredient);

// One source in a product: a line, or one thing that a made part on that line holds.
struct Held {
    std::string_view ingredient;  // the shipped one whose rows count; "": none does
    quantity::Percent percent;
    bool carries = false;  // may hold constituents though no row says so: an oil of flowers, a mere name
    const catalogue::LotAnalysis* analysis = nullptr;  // of this very bottle
    bool trusted = true;  // what is said of it is this person's own; another's may add to a row, never take
                          // away, and leaves it unknown
};

struct Term {  // of one constituent in one source, % of that source
    Id constituent = kNone;
    std::size_t held = 0;
    quantity::Percent low, typical, high;
    bool measured = false;     // typical was printed or measured; else it is the middle of the range
    bool of_bottle = false;    // from the bottle's own paper
    const Row* row = nullptr;  // the shipped row, if there is one
    bool operator==(const Term&) const = default;
};
// Every constituent of every source; by constituent, then source. `unknown`: sources of which nothing at all
// is known, so that no sum is complete.
struct Sums {
    std::vector<Term> terms;
    std::vector<std::size_t> unknown;
};
Sums sums_of(const Table& table, const std::vector<Held>& held);
std::span<const Term> terms_of(const Sums& sums, Id constituent);  // a group has terms of its own

struct Total {
    quantity::Trace low, typical, high;
    bool measured = true;             // every typical share was
    std::vector<Term> shares;         // the largest worst case first
    std::vector<std::size_t> silent;  // sources that hold something, of which nothing is said about this
};
// What a constituent (a group with its members) comes to over all sources.
Total total_of(const Sums& sums, const std::vector<Held>& held, Id constituent);

}  // namespace composition
