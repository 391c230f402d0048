// Which ingredient of the catalogue a written name means. Exact name, id or declaration name first; else one
// clear best by its words; several that fit alike are offered, and nothing is ever guessed between them.
// Part of pasted.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"

namespace pasted_names {

struct Match {
    const catalogue::Ingredient* ingredient = nullptr;  // the one that is meant
    std::vector<const catalogue::Ingredient*> offered;  // when several fit, or something comes near
    bool exact = false;  // all words of a name were typed and no others, but for words like "organic"
};

// Prepares the catalogue once for many names. Keeps pointers into it.
class Matcher {
  public:
    explicit Matcher(const catalogue::Catalogue& catalogue);
    Match match(std::string_view name) const;

  private:
    struct Names {
        const catalogue::Ingredient* ingredient = nullptr;
        std::vector<std::vector<std::string>> exact, others;  // names as sorted words
        std::vector<std::vector<std::string>> heavy;          // of both, the words that tell them apart
    };
    std::vector<Names> all_;
};

}  // namespace pasted_names
