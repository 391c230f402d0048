// Words on the page: paragraphs, headings, labels. Wraps at the column; joins the mirror so that it is read
// aloud.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "kit.h"
#include "mirror.h"
#include "theme.h"

namespace widget {

enum class Ink { plain, soft, accent, caution, stop };
std::uint32_t rgb(Ink ink);

void text(kit::Kit& kit, std::string_view words, theme::Type type = theme::Type::body, Ink ink = Ink::plain);
void heading(kit::Kit& kit, int level, std::string_view words);  // 1: of the screen; 2: of a section
// A message that is spoken when it changes.
void live(kit::Kit& kit, mirror::Role role, std::string_view key, std::string_view words);

// Drawing only, nothing for the mirror: `words` cut with an ellipsis at `width`; returns the width used.
float draw_cut(ImVec2 at, std::string_view words, theme::Type type, ImU32 colour, float width);
ImVec2 measure(std::string_view words, theme::Type type, float wrap_width = 0);
struct Placing {
    float width = 0;  // at whose far side lines from right to left begin; 0: that of the text itself
    ImDrawList* list = nullptr;  // nothing: the window's
};
void draw_wrapped(ImVec2 at, std::string_view words, theme::Type type, ImU32 colour, float wrap_width,
                  const Placing& placing = {});
// How far from the left of a place `width` wide a text begins: 0 but for one from right to left.
float far_side(std::string_view words, theme::Type type, float width);

}  // namespace widget
