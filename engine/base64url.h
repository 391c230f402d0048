// base64url without padding (RFC 4648 section 5): bytes to the letters that survive in an address, and back.
#pragma once

#include <string>
#include <string_view>

#include "result.h"

namespace base64url {

std::string encode(std::string_view bytes);

// Refuses letters outside the alphabet (place "character N"), an impossible length, and stray bits in the
// last letter, so that one text has one meaning: link_altered, link_truncated, link_not_canonical.
result::Result<std::string> decode(std::string_view text);

}  // namespace base64url
