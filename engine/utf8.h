// Whether bytes are UTF-8 (RFC 3629: shortest forms, no surrogates, up to U+10FFFF). Of letters it knows the
// small and the capital ones of the scripts that have both (Latin, Greek, Cyrillic, Armenian, as far as both
// take as many bytes), for searching and sorting; all others stay as they are.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace utf8 {

// Bytes of the character that starts at `at`: 1 to 4, or 0 when there is none that is well formed.
std::size_t length_at(std::string_view text, std::size_t at);
// The number of that character; U+FFFD when there is none that is well formed.
std::uint32_t code_at(std::string_view text, std::size_t at);
bool valid(std::string_view text);
// The longest start of at most this many bytes that ends with a whole character.
std::string_view start_within(std::string_view text, std::size_t most_bytes);
std::string lowered(std::string_view text);

}  // namespace utf8
