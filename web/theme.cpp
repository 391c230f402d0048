// Colours, fonts and the library's style in one place. Leans on fonts_data, which the build makes from the
// font package. Holds no layout.
#include "theme.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "fonts_data.h"
#include "letters.h"

namespace theme {
namespace {

constexpr Colours with_the_rest(Colours c) {
    c.link = c.heading = c.accent;
    c.chosen = c.accent_soft;
    c.on_chosen = c.on_accent_soft;
    c.button = c.field = c.card;
    c.on_button = c.on_field = c.faint = c.ink;
    c.on_field_soft = c.ink_soft;
    return c;
}

constexpr Colours kLight =
    with_the_rest({0xF7F2E8, 0xFFFDF8, 0x22211E, 0x5A564E, 0xDDD5C6, 0x867E6E, 0x0B6467, 0xFFFFFF, 0xDCEBE8,
                   0x0A4F52, 0x7A4E00, 0xFBEBC8, 0x9C2F1B, 0xF9E1D9, 0x1A1712});
constexpr Colours kDark =
    with_the_rest({0x1B1A18, 0x262421, 0xF2ECE2, 0xBBB4A8, 0x3B3833, 0x857E73, 0x66C9BF, 0x0B1F1E, 0x1F3F3D,
                   0xBDEAE4, 0xF2C566, 0x3C2F16, 0xF6A08B, 0x45251D, 0x000000});
constexpr Colours kLightMore =
    with_the_rest({0xFFFFFF, 0xFFFFFF, 0x000000, 0x33302A, 0x5A564E, 0x33302A, 0x00474A, 0xFFFFFF, 0xE4F1EF,
                   0x003A3C, 0x573600, 0xFFF2D6, 0x7A1E0E, 0xFFEBE5, 0x000000});
constexpr Colours kDarkMore =
    with_the_rest({0x0C0B0A, 0x161513, 0xFFFFFF, 0xE2DDD3, 0x9A948A, 0xE2DDD3, 0x86E3D9, 0x001212, 0x15302E,
                   0xD6F6F2, 0xFFD98A, 0x2C220E, 0xFFBDAC, 0x351A13, 0x000000});

// As the eye weighs the three parts; near enough to tell a dark ground from a light one.
bool is_dark_ground(std::uint32_t rgb) {
    return 2 * (rgb >> 16 & 255) + 5 * (rgb >> 8 & 255) + (rgb & 255) < 8 * 128;
}

constexpr int kTypes = static_cast<int>(Type::label) + 1;

struct State {
    Colours colours = kLight;
    bool dark = false, outlined = false, forced = false;
    float density = 0;  // of the letters drawn; 0: none yet
    float scale = 1;
    ImFont* fonts[kTypes] = {};
    int built = 0;
};
State state;

// Latin, Latin-1, Latin Extended-A, and the few signs the words and figures need.
constexpr ImWchar kLetters[] = {0x20,   0x17F,  0x3BC,  0x3BC,  0x2009, 0x202F, 0x2030,
                                0x203A, 0x20AC, 0x20AC, 0x2190, 0x2193, 0x2212, 0x2212,
                                0x2248, 0x2248, 0x2260, 0x2265, 0};
// What is set in large type are figures, and what may be typed for them.
constexpr ImWchar kFigureLetters[] = {0x20,   0x7E,   0xA0,   0xBF,   0xD7,   0xD7,   0xF7, 0xF7,
                                      0x2009, 0x2009, 0x2012, 0x2014, 0x2212, 0x2212, 0};
constexpr ImWchar kHeroLetters[] = {0x20, 0x20, 0x2B, 0x39, 0};  // a figure and nothing else

// Of Open Sans: units of the em, and from the highest letter to the lowest, which is the library's size.
constexpr float kEm = 2048, kLine = 2189 + 600;

// What is read grows as wished. What is large already grows less, or a weight in grams would not fit a phone:
// at twice the size a figure is still larger than the words beside it. The five words of the bottom bar have
// a fifth of the window each and no second line: they grow as far as that lets them, their marks go on.
struct Size {
    float pixels, growth;
    bool strong;
    const ImWchar* letters;
};
constexpr Size kSizes[] = {{17, 1, false, kLetters},         {17, 1, true, kLetters},
                           {14, 1, false, kLetters},         {21, 0.75f, true, kLetters},
                           {25, 0.6f, true, kFigureLetters}, {40, 0.4f, true, kHeroLetters},
                           {84, 0, true, kHeroLetters},      {14, 0.35f, false, kLetters}};
static_assert(std::size(kSizes) == kTypes);
constexpr float kMostScale = 2;
// Large letters of a fine screen are drawn less densely than it could show: what they take of the texture
// grows by the square, and old phones take none higher than 4096. At three pixels a point and twice the size
// a letter is still made of twice as many pixels as one of the usual size on a plain screen.
constexpr float kDensest = 4;

float pixels(int type) {
    const Size& size = kSizes[type];
    return size.pixels * (1 + size.growth * (state.scale - 1));
}

void build_fonts(float density) {
    ImFontAtlas& atlas = *ImGui::GetIO().Fonts;
    atlas.Clear();
    atlas.Flags |= ImFontAtlasFlags_NoMouseCursors;
    atlas.TexDesiredWidth = 2048;  // wider textures fail on old phones
    for (int i = 0; i < kTypes; ++i) {
        if (i == static_cast<int>(Type::label) && state.scale == 1) {  // letters that are there already
            state.fonts[i] = state.fonts[static_cast<int>(Type::small)];
            continue;
        }
        ImFontConfig config;
        config.FontDataOwnedByAtlas = false;
        config.OversampleH = density < 1.5f ? 2 : 1;
        config.OversampleV = 1;
        config.RasterizerDensity = density;
        const bool strong = kSizes[i].strong;
        const unsigned char* data = strong ? fonts_data::kSemibold : fonts_data::kRegular;
        const auto size = static_cast<int>(strong ? fonts_data::kSemiboldSize : fonts_data::kRegularSize);
        state.fonts[i] = atlas.AddFontFromMemoryTTF(const_cast<unsigned char*>(data), size, pixels(i) * 1.2f,
                                                    &config, kSizes[i].letters);
    }
    letters::build(atlas);
    state.built += 1;
}

void set_style() {
    ImGuiStyle& style = ImGui::GetStyle();
    style = ImGuiStyle();
    style.WindowPadding = style.FramePadding = style.ItemSpacing = style.ItemInnerSpacing =
        style.CellPadding = {0, 0};
    style.WindowBorderSize = style.ChildBorderSize = style.PopupBorderSize = 0;
    style.WindowRounding = style.ChildRounding = 0;
    style.WindowMinSize = {1, 1};
    style.Colors[ImGuiCol_WindowBg] = ImGui::ColorConvertU32ToFloat4(paint(state.colours.paper));
    style.Colors[ImGuiCol_ChildBg] = {0, 0, 0, 0};
    style.Colors[ImGuiCol_Text] = ImGui::ColorConvertU32ToFloat4(paint(state.colours.ink));
}

}  // namespace

const Colours& colours() {
    return state.colours;
}
bool is_dark() {
    return state.dark;
}

Colours palette(bool dark, bool more_contrast) {
    if (more_contrast) return dark ? kDarkMore : kLightMore;
    return dark ? kDark : kLight;
}

// Every pair of ink and ground is one that the system means for one another. Caution and stop have no colour
// of their own there: their shapes and words tell them.
Colours palette(const platform::SystemColours& system) {
    Colours c{};
    c.paper = c.card = c.accent_soft = c.caution_ground = c.stop_ground = c.shade = system.canvas;
    c.ink = c.ink_soft = c.hairline = c.on_accent_soft = c.caution = c.stop = c.heading = system.canvas_text;
    c.edge = system.button_border;
    c.accent = c.chosen = system.highlight;
    c.on_accent = c.on_chosen = system.highlight_text;
    c.link = system.link_text;
    c.button = system.button_face;
    c.on_button = system.button_text;
    c.field = system.field;
    c.on_field = c.on_field_soft = system.field_text;
    c.faint = system.gray_text;
    return c;
}

ImU32 paint(std::uint32_t rgb, float opacity) {
    return IM_COL32((rgb >> 16) & 255, (rgb >> 8) & 255, rgb & 255,
                    static_cast<int>(std::lround(opacity * 255.0f)));
}

ImU32 paint_disabled(std::uint32_t rgb, float opacity) {
    return state.forced ? paint(state.colours.faint) : paint(rgb, opacity);
}
bool outlined() {
    return state.outlined;
}

ImFont* font(Type type) {
    return state.fonts[static_cast<int>(type)];
}
float line_height(Type type) {
    return font(type)->FontSize;
}

float letter_size(Type type) {
    return font(type)->FontSize * kEm / kLine;
}
float baseline(Type type) {
    return std::floor(font(type)->Ascent + 0.5f);  // as the library places its own letters
}
bool is_strong(Type type) {
    return kSizes[static_cast<int>(type)].strong;
}
bool has_letter(Type type, std::uint32_t code) {
    return code <= 0xFFFF && font(type)->FindGlyphNoFallback(static_cast<ImWchar>(code)) != nullptr;
}

float text_scale() {
    return state.scale;
}
float grown(float points) {
    return points * state.scale;
}
float mark(float points) {
    return points * (1 + 0.6f * (state.scale - 1));
}
bool tight(float column) {
    return state.scale > 1 && column < grown(250);
}
float field() {
    return std::max(48.0f, line_height(Type::body) + 16);
}
float bar() {
    return 60 + 20 * (state.scale - 1);
}
float top_bar() {
    return 56 + 28 * (state.scale - 1);
}
float rail() {
    return grown(188);
}
float wide_from() {
    return grown(760);
}
float two_panes_from() {
    return grown(1040);
}
float reading_width() {
    return grown(720);
}

int fonts_built() {
    return state.built;
}

bool apply(const Wishes& wishes) {
    state.forced = wishes.system.has_value();
    state.outlined = state.forced || wishes.more_contrast;
    state.colours = state.forced ? palette(*wishes.system) : palette(wishes.dark, wishes.more_contrast);
    state.dark = state.forced ? is_dark_ground(state.colours.paper) : wishes.dark;
    const float scale = std::clamp(wishes.text_scale, 1.0f, kMostScale);
    const float density = std::clamp(wishes.pixel_ratio, 1.0f, std::min(3.0f, kDensest / scale));
    const bool rebuilt = density != state.density || scale != state.scale;
    state.density = density;
    state.scale = scale;
    if (rebuilt) build_fonts(density);
    set_style();
    return rebuilt;
}

}  // namespace theme
