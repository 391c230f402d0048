// How firm, openly rough: one number from what sets (waxes, fats, butters), which places a formula among
// others that one knows. Strengths of waxes against beeswax are rules of the trade from memory, the rest is
// our estimate; cooling, lots and eutectics are not in it. One's own ratings calibrate it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "blend.h"
#include "blend_rated.h"

namespace blend {

// How much beeswax one part of it stands for: candelilla 2, of which half as much is taken.
double setting_strength(const catalogue::Ingredient& ingredient);

enum class Rough { fits, watery, powdery, unknown };  // what the number is not for
struct Firm {
    Rough rough = Rough::fits;
    Body body;
    std::int64_t firmness = 0;  // grid: as a balm with so many % of beeswax in oil
    bool operator==(const Firm&) const = default;
};
std::int64_t firmness(const Body& body);
Firm firm(const std::vector<Part>& parts);

struct Rung {  // one that a person may know
    std::string title;
    std::int64_t firmness = 0;
};
struct Between {  // places in the list; none: there is nothing softer, or firmer
    std::optional<std::size_t> softer, firmer, same;
};
Between between(std::int64_t firmness, const std::vector<Rung>& ladder);

std::optional<result::Error> fault_of(const Rated& rated, const std::string& place);
// In place of the rating of the same title and body; else at the end, the oldest goes when there are too
// many. Rating 0 takes it away.
std::vector<Rated> rate(std::vector<Rated> list, Rated rated);
// What one would rate this, by the nearest ratings on both sides, made to rise with firmness by pooling those
// that go the other way; grid. None: nothing near was rated on both sides.
std::optional<std::int64_t> expected_rating(std::int64_t firmness, const std::vector<Rated>& list);

}  // namespace blend
