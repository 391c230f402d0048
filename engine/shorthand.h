// Text in about half its bytes: a fixed code of bits for each byte and for the fragments that recipes are
// full of. Only links use it; the code never changes, because links are for ever.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace shorthand {

// The one shortest form of a text (ties: the shorter fragment first); its bits are filled up with ones.
std::string pack(std::string_view text);
// Nothing where the bytes are no such form, or the text would be longer than this.
std::optional<std::string> unpack(std::string_view packed, std::size_t most_bytes);

// --- the table (shorthand_table.cpp) ---
inline constexpr std::size_t kByteCount = 256, kFragmentCount = 200;
inline constexpr std::size_t kSymbolCount = kByteCount + kFragmentCount;
inline constexpr std::size_t kLongestFragment = 12;
extern const std::string_view kFragments[kFragmentCount];  // sorted as bytes
extern const std::string_view kLengths;                    // of each symbol's code, 'a' for 0

}  // namespace shorthand
