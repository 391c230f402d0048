// Ways on from a line of which too much or too little is in the jug, and adjusting while it is warm: each
// worked out in full before it is taken, and taken by going on with `after`. All of them only add: where a
// line has too much, the others grow, or one that is not all in gives way.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "weigh_out.h"

namespace weigh_out {

// One way on from a line with too much or too little, worked out in full.
enum class Way { add_more, proportion, take_up, accept };
struct Option {
    Way way = Way::accept;
    std::optional<std::size_t> other;     // the line that takes it up
    bool possible = true;                 // false: nothing is gained by it, and the two below say why
    bool whole = true;                    // false: in proportion as far as it goes, not all the way
    std::optional<std::size_t> short_of;  // the line there is too little of for going all the way
    bool pot_full = false;                // or the jug holds no more
    quantity::Mass beyond;                // of the batch: more than the containers take, loss included
    WeighOut after;                       // when it is taken
    Standing then;
    bool operator==(const Option&) const = default;
};
// In the order they are offered. Empty for a line that is right.
std::vector<Option> options(const WeighOut& weighing, std::size_t line);

// `line` brought to `percent` by adding alone: lines that are not begun keep their percent, the others give
// way in proportion, or the rest line alone. nothing_gives_way: also where those hold less than is asked of
// them; batch_too_large: more than the pot or what is at hand allows (place: the line, detail: grams).
result::Result<Option> adjusted(const WeighOut& weighing, std::size_t line, quantity::Percent percent,
                                bool rest_gives);

// How many containers what was weighed fills, loss off, at what the first one took or was meant to take.
std::int64_t count_of(const Plan& plan, const Standing& standing);

}  // namespace weigh_out
