// The texture that the letters are drawn from, in place of the library's own way to make it. That one draws
// every letter of every font before the first frame, thirteen hundred of them: on a slow phone a third of the
// whole start. Here what is known of each letter (its width, its box) is there at once, and a letter is drawn
// when a text first has it. Leans on the library's stb_truetype and on what it keeps of a font.
#pragma once

#include <string_view>

#include "imgui.h"

namespace letters {

// In place of ImFontAtlas::Build, for fonts of TrueType of which none is merged into another.
void build(ImFontAtlas& atlas);

// Draws those of the text's letters that are not there yet. What the texture has no more room for makes it
// twice as high: what was drawn in the frame until then has moved, and the next frame puts it right.
void need(ImFont& font, std::string_view words);

// What was drawn since the last call; no rows where nothing was. All where the texture is another.
struct Rows {
    int first = 0, count = 0;
};
Rows take_drawn();

int grown();  // how often the texture became another: what was drawn before lies elsewhere in it

}  // namespace letters
