// As much of a recipe as a QR code takes: all of it, else without notes, else without steps too.
#pragma once

#include <optional>
#include <string>

#include "qr.h"
#include "share.h"

namespace share_code {

struct Coded {
    share::Extent extent = share::Extent::all;
    std::string address;  // what the code says
    qr::Code code;
};

// `before` stands before the link's '#': the page's address; "" where it has none. None: even without notes
// and steps it is too long, or the recipe cannot travel.
std::optional<Coded> of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                        const std::string& before);

}  // namespace share_code
