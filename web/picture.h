// What a frame would put on the canvas: a picture that is the same as the one before is not drawn.
#pragma once

#include <vector>

struct ImDrawData;

namespace picture {

// Size, clip rectangles, textures by name, corners and indices, one after the other. A texture that was given
// other contents under its old name looks the same here: whoever does that has the picture drawn anyway.
using Picture = std::vector<char>;

// Brings `picture` to what `data` shows; whether it was something else before.
bool follow(Picture& picture, const ImDrawData& data);

}  // namespace picture
