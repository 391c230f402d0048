// The inside of a link: one recipe as an array of unsigned integers and short texts. share puts version,
// checksum and letters around it. Only share.cpp and tests include this.
#pragma once

#include <string>
#include <string_view>

#include "catalogue.h"
#include "result.h"
#include "share_reference.h"
#include "workspace.h"

namespace share_body {

inline constexpr unsigned char kPlain = 1, kMore = 2;  // versions of the layout

struct Body {
    workspace::Recipe recipe;
    share_reference::References references;
};

// The lowest version that can carry the recipe.
unsigned char lowest_version(const workspace::Recipe& recipe);
std::string encode(const workspace::Recipe& recipe, const share_reference::References& references,
                   unsigned char version);

// Reads what encode writes, within bounds; does not insist on the one form (share compares bytes for that).
result::Result<Body> decode(std::string_view bytes, unsigned char version,
                            const catalogue::Catalogue& shipped);

}  // namespace share_body
