// A text as lines: broken at the column's width, or cut at it. A line in letters of the shipped font is drawn
// as ever; one with others is a picture (picture_text). How a text with such letters falls into lines is kept
// while it is seen.
#pragma once

#include <functional>
#include <string>
#include <string_view>

#include "theme.h"

namespace text_lines {

struct Line {
    std::string_view words;      // a part of the text that was given
    float width = 0;             // of letters of the font
    bool pictured = false;       // drawn by the host
    bool right_to_left = false;  // as its paragraph runs
};
// Width 0: only where the text itself begins a new line. Breaks at spaces, since the library's own breaks
// after points tear figures apart; where there are none between the letters of a script or the letters of a
// word that is longer than the line.
void each(std::string_view words, theme::Type type, float width,
          const std::function<void(const Line&)>& take);
float width(const Line& line, theme::Type type);

// As much of the text's first line as has room before an ellipsis.
std::string cut(std::string_view words, theme::Type type, float width);

void start_over();  // see picture_text

}  // namespace text_lines
