// Amounts in a piece of pasted text: numbers with or without a unit, ranges, "2 x 15 g", and words for "what
// is left": q.s., ad 100, rest. Part of pasted; knows measures, not ingredients.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measures.h"
#include "pasted.h"

namespace pasted_amount {

struct Number {
    std::size_t start = 0, end = 0;  // bytes it takes, with "about" before and the unit after
    measures::Span value;
    const measures::Measure* measure = nullptr;  // null: no unit said
    bool rest = false;                           // fills up to the value
    bool range = false;
    bool in_brackets = false;
    std::optional<pasted::Code> fault;
    std::string detail;        // of the fault
    std::size_t fault_at = 0;  // byte
};

// From left to right. Numbers that belong to a name (PEG-40, B5), and temperatures and times, are not among
// them; `other` says that there were such.
struct Numbers {
    std::vector<Number> all;
    bool other = false;  // a temperature or a time
};
Numbers in(std::string_view text);

// A word for "what is left" without a number, at either end or in brackets: where it stands.
struct Place {
    std::size_t start = 0, end = 0;
};
std::optional<Place> rest_word(std::string_view text);

}  // namespace pasted_amount
