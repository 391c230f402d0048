// Required HLB of oils, HLB of emulsifiers, and sums over both by weight. Only for emulsifiers without a
// charge. What an oil requires differs by source by one and more; a place to begin a trial, no answer.
#pragma once

#include <optional>
#include <string_view>

#include "blend.h"

namespace blend {

struct Hlb {
    std::string_view ingredient;  // id
    std::int64_t hlb;             // grid; required by an oil, or of an emulsifier
    std::string_view source;
    source::Standing standing;
};
const Hlb* required_hlb(const catalogue::Ingredient& ingredient);  // null: not known
const Hlb* hlb_of_emulsifier(std::string_view ingredient);

struct Weighed {
    quantity::Percent percent;
    std::int64_t hlb;  // grid
};
std::optional<std::int64_t> mean_hlb(const std::vector<Weighed>& parts);  // none: nothing weighs anything
// % of the emulsifier with the higher HLB, of two, that comes to `required`; none where it does not lie
// between them.
std::optional<quantity::Percent> share_of_higher(std::int64_t required, std::int64_t low, std::int64_t high);

// Water and oils of at least 3 % each, as the checks count them; none for anything else.
std::optional<Emulsion> emulsion_of(const std::vector<Part>& parts);

}  // namespace blend
