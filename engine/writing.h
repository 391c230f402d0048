// What a page must know of the world's writing to lay a text out: where a letter as a reader sees it ends,
// which way a text runs, where a line may break between two letters. Shapes and widths are for whoever draws.
// Sources: Unicode Standard Annexes #9 (P2 and P3), #14 (ideographs) and #29 (extended grapheme clusters),
// from which it takes what living scripts need.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace writing {

// Where the letter that starts at `at` ends: with its marks, joiners, the rest of a flag or family. Each byte
// that is not well formed counts as a letter.
std::size_t letter_end(std::string_view text, std::size_t at);
// The longest start of at most this many bytes that ends with a whole letter.
std::string_view start_within(std::string_view text, std::size_t most_bytes);

// By the first letter that has a direction of its own; false when none has.
bool right_to_left(std::string_view text);
bool has_right_to_left(std::string_view text);  // any letter of it

// Between the letter that ends here and the one that begins here, with no space between them.
bool may_break(std::string_view text, std::size_t at);

// Whether it holds letters of a script whose words only a dictionary tells apart: may_break() then says
// between which letters a line may end where there is none.
bool words_unmarked(std::string_view text);

// Ideographs, kana, hangul, pictures: as wide as they are high.
bool is_wide(std::string_view letter);

// Put around each part of a sentence that runs from right to left, so that what follows stays where it is
// (first strong isolate, pop directional isolate); a text without such letters is given back as it is.
std::string set_apart(std::string_view part);
// Without them: for what is kept.
std::string without_marks(std::string_view text);

}  // namespace writing
