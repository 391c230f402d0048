// What the checks say of a batch as it is becoming on the scale, against what they said of the recipe; and
// why a phase is held or cooled to its temperature.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "finding.h"
#include "source.h"
#include "workspace.h"

namespace limits {
struct Book;
}

namespace weighed {

// What of the checks is new with these percents and this amount: not said of `recipe` itself.
std::vector<finding::Finding> remarks(const workspace::Recipe& recipe, const weigh_out::Standing& standing,
                                      const catalogue::Catalogue& shipped, const limits::Book* book,
                                      const std::vector<catalogue::Ingredient>& mine = {});

enum class Why {
    melts,      // ingredient, c: what is hardest to melt in it, and when it is molten
    clear,      // nothing known of what melts: until all is clear
    emulsion,   // two hot phases, one of water, one of oil
    flash,      // ingredient, c: what goes in then, and when its vapour can be lit
    sensitive,  // what goes in then is spoilt by heat, or goes off with it
};
struct Reason {
    Why why = Why::clear;
    std::string ingredient;         // id
    std::optional<std::int64_t> c;  // on the grid of decimal.h
    std::string source;
    source::Standing standing = source::Standing::common_practice;
    bool operator==(const Reason&) const = default;
};
// Of a phase with a temperature; nothing for one without. `known` with the recipe's own ingredients.
std::optional<Reason> reason_of(const formula::Formula& formula, std::size_t phase,
                                const catalogue::Catalogue& known);

// What is done at the bench for this formula, in order, as keys of the table of words (common practice).
std::vector<std::string_view> bench_order(const formula::Formula& formula, const catalogue::Catalogue& known);

// A phase with a temperature from which wax and oil burn (common practice).
inline constexpr std::int64_t kHot = 50 * decimal::kOne;  // °C
bool is_hot(const formula::Phase& phase);

}  // namespace weighed
