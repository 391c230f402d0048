// What people measure with in lists and old recipes: weights, volumes, spoons, drops, parts. One table with
// what each holds, between which figures, and where that comes from. Old measures are read here and become
// grams; nothing of ours ever prints a spoon or a drop.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "quantity.h"
#include "source.h"

namespace measures {

enum class Kind {
    percent,  // of the whole, by weight
    parts,    // a number that only counts beside the others of its list
    mass,
    volume,  // becomes grams through a density
    vague,   // known as a word, but nobody can say how much it is: a pinch, a capsule
};

inline constexpr std::int64_t kUnit = 10'000'000;  // figures below are g or mL times this

struct Measure {
    std::string_view id;  // "teaspoon"
    Kind kind = Kind::vague;
    std::int64_t low = 0, usual = 0, high = 0;  // g or mL of one; equal when the measure is firm
    std::string_view source;                    // key in the bibliography
    source::Standing standing = source::Standing::document;
    bool firm() const { return low == high; }
};

const std::vector<Measure>& all();
const Measure* find(std::string_view id);

// The measure whose name stands at the beginning of `text`, the longest that fits ("fl oz" before "fl"), and
// how many bytes it takes. Names in English and some neighbouring languages, ASCII letters without regard to
// case except T and t.
struct Found {
    const Measure* measure = nullptr;
    std::size_t bytes = 0;
};
Found at_start(std::string_view text);

// Grams, or millilitres of a volume, with the least and most they may be.
struct Span {
    std::int64_t low = 0, usual = 0, high = 0;  // on the grid of decimal.h
    bool operator==(const Span&) const = default;
};
Span times(Span count, const Measure& measure);
Span grams_of(Span millilitres, quantity::Density density);

}  // namespace measures
