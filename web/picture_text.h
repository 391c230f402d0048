// A text as a picture: a line with letters beyond the shipped font, drawn whole by the host so that joined
// and right-to-left scripts are right, and shown in its place on the same baseline. Kept: widths and pictures
// of the lines seen last; a line is drawn once for each type and colour. Costs nothing while no text needs
// it.
#pragma once

#include <cstddef>
#include <string_view>

#include "imgui.h"
#include "theme.h"

namespace picture_text {

// Whether the text holds a letter that the type's font has not.
bool needed(std::string_view text, theme::Type type);
// CSS pixels. Asks the host each time: for looking where a line may end.
float measure(std::string_view text, theme::Type type, bool right_to_left);
// Likewise, kept: for lines that are drawn.
float width(std::string_view text, theme::Type type, bool right_to_left);
// `at`: top left of the line, as for letters of the font. The colour's opacity holds for the whole picture.
void draw(ImDrawList& list, ImVec2 at, std::string_view text, theme::Type type, ImU32 colour,
          bool right_to_left);

// Everything is measured and drawn anew: the graphics were lost, or other letters arrived.
void start_over();
std::size_t bytes_kept();  // of pictures

}  // namespace picture_text
