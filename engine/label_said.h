// What a label needs that no formula says: by the recipe (what it is called, how long it keeps, cautions, the
// panel), and by the device (who answers for it). Plain values with their bounds.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "durability.h"
#include "result.h"
#include "type_height.h"

namespace label {

struct Maker {                  // of this device; never travels with a recipe
    std::string name, address;  // who answers for the product; in the US with city, state and ZIP
    std::string contact;        // telephone, mail or page
    std::string country;        // where it was made, when it is imported; "" not imported
    bool operator==(const Maker&) const = default;
};

struct Said {                               // travels with the recipe
    std::string identity, identity_french;  // "Lip balm"; "" the product kind's own name
    durability::Keeping keeping;
    bool scent_together = false;  // essential oils as "parfum", not by name
    bool leaflet = false;         // what may stand on one does
    std::vector<std::string> colours, nano,
        may_contain;                                // ids: for their colour; nanomaterials; other shades
    std::vector<std::string> warnings, directions;  // sentences
    std::optional<type_height::Panel> panel;
    bool operator==(const Said&) const = default;
};

inline constexpr std::size_t kMostLineBytes = 160;  // names, addresses, contacts
inline constexpr std::size_t kMostIds = 30;         // of each list
inline constexpr std::size_t kMostSentences = 12;
inline constexpr std::size_t kMostSentenceBytes = 400;
inline constexpr std::int64_t kMostMonths = 600;

// The first fault, with its place; `at` stands before the field: "label.", "maker.".
std::optional<result::Error> fault_of(const Said& said, const std::string& at);
std::optional<result::Error> fault_of(const Maker& maker, const std::string& at);

}  // namespace label
