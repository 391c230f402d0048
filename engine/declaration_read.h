// A finished list of ingredients, as it stands on a package or a page, read back into its names in their
// order and, where it is clear, into ingredients of the catalogue. A name that fits several, or is a slip
// away from one, is offered and never taken. What a list says about shares or free blocks is not worked out
// here.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "pasted_names.h"
#include "quantity.h"

namespace declaration_read {

struct Item {
    std::string written;               // the name alone, as it was written
    std::string ingredient;            // id, when one is meant
    std::vector<std::string> offered;  // ids, when several fit or something comes near
    bool exact = false;                // all words of a name and no others
    bool nano = false;
    bool may_contain = false;  // behind "may contain" or "+/-"
    bool within = false;       // named in brackets behind the item before: "Parfum (Limonene, Linalool)"
    std::optional<quantity::Percent> percent;  // where the list says one: "Shea Butter 20 %"
    bool operator==(const Item&) const = default;
};
struct Reading {
    std::vector<Item> items;         // in their order
    std::string heading;             // "Ingredients", as written; "" when there was none
    std::vector<std::string> aside;  // footnotes and other text that is no name
    bool cut = false;                // longer than what is read
    bool operator==(const Reading&) const = default;
};

inline constexpr std::size_t kMostBytes = 20'000;
inline constexpr std::size_t kMostItems = 200;
inline constexpr std::size_t kMostNameBytes = 160;  // a longer piece is prose and set aside

Reading read(std::string_view text, const pasted_names::Matcher& names);
Reading read(std::string_view text, const catalogue::Catalogue& catalogue);

}  // namespace declaration_read
