// The only place with colours, type sizes and spacing. Warm paper, dark ink, one green-blue accent, amber for
// caution, brick for stop; a dark theme for the evening. Contrast is at least 4.5:1 for text, 3:1 for edges;
// 7:1 and 4.5:1 where more is wished for (tests/test_theme.cpp). Where the system forces its own colours on
// every page, those and no others.
#pragma once

#include <cstdint>
#include <optional>

#include "imgui.h"
#include "platform.h"

namespace theme {

struct Colours {  // 0xRRGGBB
    std::uint32_t paper, card, ink, ink_soft, hairline, edge, accent, on_accent, accent_soft, on_accent_soft,
        caution, caution_ground, stop, stop_ground, shade;
    // What only a system tells apart: words that lead somewhere, headings, what is chosen, buttons, fields.
    std::uint32_t link = 0, heading = 0, chosen = 0, on_chosen = 0, button = 0, on_button = 0, field = 0,
                  on_field = 0, on_field_soft = 0, faint = 0;
};
const Colours& colours();
Colours palette(bool dark, bool more_contrast);
Colours palette(const platform::SystemColours& system);
ImU32 paint(std::uint32_t rgb, float opacity = 1.0f);
ImU32 paint_disabled(std::uint32_t rgb, float opacity);  // fainter, or in the system's colour for it
// Grounds alone do not tell places apart: they have edges as well.
bool outlined();

enum class Type { body, strong, small, title, figure, hero, bench, label };  // bench: read from a metre
ImFont* font(Type type);
float line_height(Type type);
// For letters that others draw on the same line: their size (the em), where they stand below the line's top.
float letter_size(Type type);
float baseline(Type type);
bool is_strong(Type type);
bool has_letter(Type type, std::uint32_t code);  // whether the font holds it

inline constexpr float kTarget = 48;  // smallest height of anything to be pressed
inline constexpr float kMargin = 16;  // page edge
inline constexpr float kGap = 8;
inline constexpr float kRound = 10;

// What holds letters grows with them: 1 to 2, as large as the person has set the letters of the system or of
// the browser. Never below 1: targets stay what a finger needs.
float text_scale();
float grown(float points);  // a width that holds words
float mark(float points);   // a drawn mark beside words: less, it has no strokes that run together
// Letters so large for the column that what stands side by side goes one beneath the other.
bool tight(float column);
float field();           // height
float bar();             // bottom bar
float top_bar();         // title and what is done to the whole
float rail();            // left rail on a wide window
float wide_from();       // from this width on a rail instead of the bar
float two_panes_from();  // from this width on the answer stands beside the lines
float reading_width();

// Builds the font atlas for this device ratio (1 to 3; glyphs are rasterised that much denser, layout stays
// in CSS pixels) and size of letters, and sets colours and the library's style. Returns whether the atlas
// changed.
struct Wishes {
    bool dark = false, more_contrast = false;
    float pixel_ratio = 1, text_scale = 1;
    std::optional<platform::SystemColours> system;  // where it forces them
};
bool apply(const Wishes& wishes);
int fonts_built();  // how often; what was measured before holds no longer
bool is_dark();

}  // namespace theme
