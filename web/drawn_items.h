// The library's own account of what can be pressed: the ids it was given for items in this frame, through the
// hooks meant for test engines. Compared with the mirror's register it proves that nothing interactive is
// drawn unregistered.
#pragma once

#include <cstdint>
#include <vector>

namespace drawn_items {

void begin_frame();
const std::vector<std::uint32_t>& ids();  // of the running or last frame; windows of the library left out

}  // namespace drawn_items
