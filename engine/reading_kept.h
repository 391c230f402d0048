// A question about a list of ingredients as a person left it, so that it can be taken up again: the list's
// text, and what was decided and said of it. The names are read anew, by a catalogue that may know more by
// then.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "reading.h"

namespace reading {

struct Decided {
    std::size_t entry = 0;   // place on the list
    std::string ingredient;  // id, "" one that is not known
    std::size_t as = 0;      // reading_list::As, by its place there
    bool operator==(const Decided&) const = default;
};

struct Kept {
    std::string text, title;            // "" nothing is kept
    std::string product, market, date;  // of whom it is sold: ids; YYYY-MM-DD
    std::vector<Decided> decided;       // none: the text was not read yet
    std::optional<std::size_t> line_after;
    std::vector<Statement> said;      // amount, group, property; Term::item is a place on the list
    std::vector<std::string> turned;  // other statements, by key, that are not as they come
    bool operator==(const Kept&) const = default;
};

}  // namespace reading
