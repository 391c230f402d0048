// The only place with colours, type sizes and spacing. Warm paper, dark ink, one green-blue accent, amber for
// caution, brick for stop; a dark theme for the evening. Contrast is at least 4.5:1 for text, 3:1 for edges
// (tests/test_theme.cpp).
#pragma once

#include <cstdint>

#include "imgui.h"

namespace theme {

struct Colours {  // 0xRRGGBB
    std::uint32_t paper, card, ink, ink_soft, hairline, edge, accent, on_accent, accent_soft, on_accent_soft,
        caution, caution_ground, stop, stop_ground, pressed, shade;
};
const Colours& colours();
Colours palette(bool dark, bool more_contrast);
ImU32 paint(std::uint32_t rgb, float opacity = 1.0f);

enum class Type { body, strong, small, title, figure, hero };
ImFont* font(Type type);
float line_height(Type type);
// For letters that others draw on the same line: their size (the em), where they stand below the line's top.
float letter_size(Type type);
float baseline(Type type);
bool is_strong(Type type);
bool has_letter(Type type, std::uint32_t code);  // whether the font holds it

inline constexpr float kTarget = 48;  // smallest height of anything to be pressed
inline constexpr float kField = 48;
inline constexpr float kMargin = 16;  // page edge
inline constexpr float kGap = 8;
inline constexpr float kRound = 10;
inline constexpr float kBar = 60;  // bottom bar
inline constexpr float kTopBar = 56;
inline constexpr float kRail = 188;       // left rail on a wide window
inline constexpr float kWide = 760;       // from here on a rail instead of the bar
inline constexpr float kTwoPanes = 1040;  // from here on the answer stands beside the lines
inline constexpr float kReadingWidth = 720;

// Builds the font atlas for this device ratio (1 to 3; glyphs are rasterised that much denser, layout stays
// in CSS pixels) and sets colours and the library's style. Returns whether the atlas changed.
bool apply(bool dark, bool more_contrast, float pixel_ratio);
bool is_dark();

}  // namespace theme
