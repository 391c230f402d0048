// A pasted text as lines that can be understood: one kind of space, of hyphen and of digit, no emoji, and for
// each byte the column where it stood. Part of pasted; knows nothing of ingredients.
#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace pasted_text {

inline constexpr char kBullet = '\x1f';  // a bullet within a line

struct Line {
    std::size_t number = 0;              // from 1
    std::string raw;                     // as pasted, valid UTF-8, without the space around it
    std::string text;                    // to be understood
    std::vector<std::uint32_t> columns;  // of each byte of text, from 1, in characters
};

// Lines with nothing on them are left out. Breaks: LF, CR, CR LF, VT, FF, U+0085, U+2028, U+2029.
std::vector<Line> lines_of(std::string_view bytes);

std::string_view trimmed(std::string_view text);
std::string lowered(std::string_view text);  // ASCII letters, and those of Latin-1
bool is_digit(char c);
bool is_letter(char c);  // or a byte of a letter beyond ASCII

}  // namespace pasted_text
