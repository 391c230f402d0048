// What of a recipe goes into a link as a number. Only share*.cpp and tests include this.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "catalogue.h"
#include "workspace.h"

namespace share_reference {

// How something of the catalogue travels: as its link number, or as the text the recipe has for it. Kept
// apart from the recipe, because a link must read the same whether or not the receiver's catalogue knows the
// number.
struct Reference {
    bool numbered = false;
    std::uint64_t number = 0;
    bool named = false;  // lines only: numbered, and a name was written beside it
    bool operator==(const Reference&) const = default;
};
struct References {
    Reference product;
    std::vector<Reference> lines;  // own ingredients take the first numbers, the catalogue those after
    std::vector<Reference> containers, stock;
    bool operator==(const References&) const = default;
};
enum class Kind { ingredient, container, product };

References references_of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped);
std::optional<std::string> id_of(const catalogue::Catalogue& shipped, Kind kind, std::uint32_t number);

// "#70": how a number this catalogue does not know is named.
std::string number_name(std::uint64_t number);

}  // namespace share_reference
