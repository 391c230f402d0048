// Pictures of figures: shares of a whole as one bar, and the bars of one whole or of several laid over each
// other. Parts are told apart by strokes and by the words beside them, so that they are read in black and
// white too.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kit.h"

namespace widget {

// What a part is filled with; several together cross.
inline constexpr unsigned kEmpty = 0, kRising = 1, kFalling = 2, kUpright = 4, kLevel = 8, kFull = 16;

struct Share {
    std::string words;  // "Wax 22 %"
    double share = 0;   // of the whole, 0 to 1
    unsigned fill = kEmpty;
};
void shares(kit::Kit& kit, std::string_view key, std::string_view name, const std::vector<Share>& parts);

struct Length {
    double of = 0;  // of the longest, 0 to 1
    unsigned fill = kFull;
};
struct Bar {
    std::string title, figures;
    std::vector<Length> lengths;  // from top to bottom
};
void bar(kit::Kit& kit, std::string_view key, const Bar& spec);
void swatch(kit::Kit& kit, std::string_view key, unsigned fill, std::string_view words);  // which is which

}  // namespace widget
