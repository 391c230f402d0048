// What a frame would put on the canvas, as plain values: a picture that is the same as the one before is not
// drawn.
#pragma once

#include <cstdint>
#include <vector>

struct ImDrawData;

namespace picture {

// Size, clip rectangles, textures by name, corners and indices. A texture that was given other contents under
// its old name looks the same here: whoever does that has the picture drawn anyway.
using Picture = std::vector<std::uint32_t>;

Picture of(const ImDrawData& data);

}  // namespace picture
