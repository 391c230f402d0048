// From the lines of a pasted text to entries: which line is an ingredient, a heading, a total, a note or a
// step, and where its amount and its name stand. Part of pasted; what amounts come to is worked out later.
#pragma once

#include <string>
#include <vector>

#include "pasted.h"
#include "pasted_names.h"
#include "pasted_text.h"

namespace pasted_lines {

struct Entries {
    std::string title;
    std::vector<pasted::Entry> all;  // at most pasted::kMostEntries
    std::size_t first_left = 0;      // line from which on nothing was read; 0: all was
};
Entries read(const std::vector<pasted_text::Line>& lines, const pasted_names::Matcher& matcher);

}  // namespace pasted_lines
