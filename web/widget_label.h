// A label as it will be printed, as large as on paper or smaller, and a bar to hold a ruler against. The
// letters are the page's own, so that a line may break a word earlier or later than in print.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kit.h"

namespace widget {

inline constexpr float kPixelsAMm = 96 / 25.4f;  // CSS: an inch is 96 pixels

struct LabelLine {
    enum class Sign { none, open_jar, book };  // before the words
    std::string words;
    float letters = 0;  // the font's size, mm
    bool strong = false;
    Sign sign = Sign::none;
};
struct LabelSpec {
    float scale = 1;  // 1: true size
    float along = 0;  // CSS pixels: how much of a wide label lies to the left of the column
    bool round = false;
    float width = 0, height = 0;  // mm
    std::string_view name;        // read aloud, with what is printed
};
// How high what is printed comes, mm; more than there is room for when it does not fit.
float label_picture(kit::Kit& kit, std::string_view key, const LabelSpec& spec,
                    const std::vector<LabelLine>& lines);

void millimetre_bar(kit::Kit& kit, std::string_view words, float mm);

}  // namespace widget
