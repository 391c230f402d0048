// For tests: the library's own account of what can be pressed, the ids it was given for items in this frame,
// through the hooks meant for test engines. Compared with the mirror's register it proves that nothing
// interactive is drawn unregistered. And which words found too little room.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace drawn_items {

void begin_frame();
const std::vector<std::uint32_t>& ids();  // of the running or last frame; windows of the library left out
void repeat(const std::vector<std::uint32_t>& some);  // stand in this frame too, drawn as they were before

void cut(std::string_view words);  // were drawn with an ellipsis
const std::vector<std::string>& cut_words();

}  // namespace drawn_items
