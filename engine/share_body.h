// The inside of a link: one recipe as an array of unsigned integers and short texts. share puts version, checksum and
// letters around it. Only share.cpp and tests include this.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "result.h"
#include "workspace.h"

namespace share_body {

// How something of the catalogue travels: as its link number, or as the text the recipe has for it. Kept apart from
// the recipe, because a link must read the same whether or not the receiver's catalogue knows the number.
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
struct Body {
    workspace::Recipe recipe;
    References references;
};

References references_of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped);
std::string encode(const workspace::Recipe& recipe, const References& references);

// Reads what encode writes, within bounds; does not insist on the one form (share compares bytes for that).
result::Result<Body> decode(std::string_view bytes, const catalogue::Catalogue& shipped);

}  // namespace share_body
