// One piece of a pasted line: its amount, and the name that is left. Part of pasted.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

#include "pasted_amount.h"
#include "pasted_names.h"

namespace pasted_piece {

enum class Lean { unknown, first, last };  // where the list writes numbers without a unit

struct Piece {
    std::optional<pasted_amount::Number> amount;  // places are bytes of the piece
    bool rest_word = false;                       // q.s. and the like, without a number
    std::string name, aside;
    bool other = false;        // has a temperature or a time
    std::string unknown_unit;  // "5 blobs": what stands where a unit belongs
    std::size_t unknown_at = 0;
    bool has_amount() const { return amount.has_value() || rest_word; }
};
Piece read(std::string_view text, Lean lean, const pasted_names::Matcher& matcher);

// Where a number without a unit stands, when there is just one number: votes for the lean of a list.
Lean lean_of(std::string_view text);

}  // namespace pasted_piece
