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

struct Body {
    workspace::Recipe recipe;
    share_reference::References references;
};

std::string encode(const workspace::Recipe& recipe, const share_reference::References& references);

// Reads what encode writes, within bounds; does not insist on the one form (share compares bytes for that).
result::Result<Body> decode(std::string_view bytes, const catalogue::Catalogue& shipped);

}  // namespace share_body
