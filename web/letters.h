// The texture that the letters are drawn from, in place of the library's own way to make it. That one draws
// every letter of every font before the first frame, thirteen hundred of them: on a slow phone a third of the
// whole start. Here what is known of each letter (its width, its box) is there at once, and a letter is drawn
// when a text first has it. Leans on the library's stb_truetype and on what it keeps of a font.
#pragma once

#include <string_view>
#include <vector>

#include "imgui.h"

namespace letters {

// In place of ImFontAtlas::Build, for fonts of TrueType of which none is merged into another.
void build(ImFontAtlas& atlas);

// Draws those of the text's letters that are not there yet. What the texture has no more room for makes it
// twice as high: what was drawn in the frame until then has moved, and the next frame puts it right.
void need(ImFont& font, std::string_view words);

// Where the texture was drawn in since the last call. All that was ever drawn, where the texture is another.
struct Part {
    int x = 0, y = 0, width = 0, height = 0;
};
std::vector<Part> take_drawn();
void forget_taken();  // all of it is to be taken again

int grown();  // how often the texture became another: what was drawn before lies elsewhere in it

}  // namespace letters
