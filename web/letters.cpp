// See letters.h. A letter that is not drawn yet has no place in the texture: all its corners are at 0.
// Letters are laid in rows as they come, each in the lowest row that it fits.
#include "letters.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <utility>
#include <vector>

#include "engine/utf8.h"
#include "imgui_internal.h"

#define STBTT_STATIC
#define STBTT_assert(what) IM_ASSERT(what)
#define STB_TRUETYPE_IMPLEMENTATION
#include "imstb_truetype.h"

namespace letters {
namespace {

// Of the texture; old phones take none higher. The first is what a screen or two need: of finer letters,
// twice that.
constexpr int kFirstHeight = 256, kMostHeight = 4096;
constexpr float kFine = 2.5f;  // pixels a point
constexpr int kApart = 1;      // pixels between two letters

struct Face {  // how a font's letters are drawn
    stbtt_fontinfo info{};
    float scale_x = 0, scale_y = 0;
    int oversampled = 1;
};
struct Row {
    int top, height;
    int used = 0;   // from the left
    int taken = 0;  // of that, see take_drawn()
};
struct State {
    std::vector<Face> faces;  // as the atlas's fonts
    std::vector<Row> rows;
    int next_row = 0;
    int grown = 0;
};
State state;

struct Box {
    int left = 0, top = 0, width = 0, height = 0;
};
Box box_of(const Face& face, int glyph) {
    Box box;
    int right = 0, bottom = 0;
    stbtt_GetGlyphBitmapBox(&face.info, glyph, face.scale_x, face.scale_y, &box.left, &box.top, &right,
                            &bottom);
    if (right > box.left && bottom > box.top) {
        box.width = right - box.left + face.oversampled - 1;
        box.height = bottom - box.top;
    }
    return box;
}

void set_height(ImFontAtlas& atlas, int height) {
    const auto bytes = [&](int rows) {
        return static_cast<std::size_t>(atlas.TexWidth) * static_cast<std::size_t>(rows);
    };
    auto* pixels = static_cast<unsigned char*>(IM_ALLOC(bytes(height)));
    const std::size_t kept = atlas.TexPixelsAlpha8 != nullptr ? bytes(atlas.TexHeight) : 0;
    if (kept > 0) std::memcpy(pixels, atlas.TexPixelsAlpha8, kept);
    std::memset(pixels + kept, 0, bytes(height) - kept);
    IM_FREE(atlas.TexPixelsAlpha8);
    atlas.TexPixelsAlpha8 = pixels;
    atlas.TexHeight = height;
    atlas.TexUvScale = {1.0f / static_cast<float>(atlas.TexWidth), 1.0f / static_cast<float>(height)};
    forget_taken();
    state.grown += 1;
}

// Everything that is given by its place stays where it is in a texture twice as high.
void grow(ImFontAtlas& atlas) {
    set_height(atlas, atlas.TexHeight * 2);
    atlas.TexUvWhitePixel.y /= 2;
    for (ImVec4& line : atlas.TexUvLines) {
        line.y /= 2;
        line.w /= 2;
    }
    for (ImFont* font : atlas.Fonts)
        for (ImFontGlyph& glyph : font->Glyphs) {
            glyph.V0 /= 2;
            glyph.V1 /= 2;
        }
}

struct Place {
    int x = -1, y = 0;
};
Place place(ImFontAtlas& atlas, int width, int height) {
    width += kApart;
    height += kApart;
    Row* best = nullptr;
    for (Row& row : state.rows)
        if (row.height >= height && row.height * 3 <= height * 4 && row.used + width <= atlas.TexWidth &&
            (best == nullptr || row.height < best->height))
            best = &row;
    if (best == nullptr) {
        while (state.next_row + height > atlas.TexHeight) {
            if (atlas.TexHeight >= kMostHeight) return {};
            grow(atlas);
        }
        state.rows.push_back({state.next_row, height});
        best = &state.rows.back();
        state.next_row += height;
    }
    const Place found{best->used, best->top};
    best->used += width;
    return found;
}

void draw(ImFontAtlas& atlas, const Face& face, ImFontGlyph& letter) {
    const int glyph = stbtt_FindGlyphIndex(&face.info, static_cast<int>(letter.Codepoint));
    const Box box = box_of(face, glyph);
    const Place at = place(atlas, box.width, box.height);
    if (at.x < 0) return;
    unsigned char* pixels = atlas.TexPixelsAlpha8 + static_cast<std::ptrdiff_t>(at.y) * atlas.TexWidth + at.x;
    stbtt_MakeGlyphBitmap(&face.info, pixels, box.width - face.oversampled + 1, box.height, atlas.TexWidth,
                          face.scale_x, face.scale_y, glyph);
    if (face.oversampled > 1)
        stbtt__h_prefilter(pixels, box.width, box.height, atlas.TexWidth,
                           static_cast<unsigned int>(face.oversampled));
    const auto x = static_cast<float>(at.x), y = static_cast<float>(at.y);
    letter.U0 = x * atlas.TexUvScale.x;
    letter.V0 = y * atlas.TexUvScale.y;
    letter.U1 = (x + static_cast<float>(box.width)) * atlas.TexUvScale.x;
    letter.V1 = (y + static_cast<float>(box.height)) * atlas.TexUvScale.y;
}

void add_letters(ImFontAtlas& atlas, ImFont& font, const Face& face) {
    ImFontConfig& config = *const_cast<ImFontConfig*>(font.ConfigData);
    int ascent = 0, descent = 0, gap = 0;
    stbtt_GetFontVMetrics(&face.info, &ascent, &descent, &gap);
    const float points = stbtt_ScaleForPixelHeight(&face.info, config.SizePixels);
    const auto whole = [&](int units, float more) {
        return ImTrunc(static_cast<float>(units) * points + more);
    };
    ImFontAtlasBuildSetupFont(&atlas, &font, &config, whole(ascent, ascent > 0 ? 1.0f : -1.0f),
                              whole(descent, descent > 0 ? 1.0f : -1.0f));
    const float down = IM_ROUND(font.Ascent), pixel = 1 / config.RasterizerDensity;
    const float pixel_x = pixel / static_cast<float>(face.oversampled);
    const float shift = face.oversampled > 1 ? stbtt__oversample_shift(face.oversampled) * pixel : 0;
    for (const ImWchar* range = config.GlyphRanges; range[0] != 0; range += 2)
        for (unsigned int code = range[0]; code <= range[1]; ++code) {
            const int glyph = stbtt_FindGlyphIndex(&face.info, static_cast<int>(code));
            if (glyph == 0) continue;
            const Box box = box_of(face, glyph);
            int advance = 0, bearing = 0;
            stbtt_GetGlyphHMetrics(&face.info, glyph, &advance, &bearing);
            const float left = static_cast<float>(box.left) * pixel_x + shift;
            const float top = static_cast<float>(box.top) * pixel + down;
            const float right = static_cast<float>(box.left + box.width) * pixel_x + shift;
            font.AddGlyph(&config, static_cast<ImWchar>(code), left, top, right,
                          top + static_cast<float>(box.height) * pixel, 0, 0, 0, 0,
                          static_cast<float>(advance) * face.scale_y * pixel);
        }
}

}  // namespace

void build(ImFontAtlas& atlas) {
    ImFontAtlasBuildInit(&atlas);
    const int grown = state.grown;
    state = {};
    state.grown = grown;
    atlas.TexWidth = atlas.TexDesiredWidth;
    const bool fine = !atlas.ConfigData.empty() && atlas.ConfigData[0].RasterizerDensity >= kFine;
    set_height(atlas, fine ? 2 * kFirstHeight : kFirstHeight);
    for (ImFont* font : atlas.Fonts) {
        const ImFontConfig& config = *font->ConfigData;
        const auto* data = static_cast<const unsigned char*>(config.FontData);
        Face face;
        stbtt_InitFont(&face.info, data, stbtt_GetFontOffsetForIndex(data, config.FontNo));
        face.scale_y = stbtt_ScaleForPixelHeight(&face.info, config.SizePixels * config.RasterizerDensity);
        face.oversampled = config.OversampleH;
        face.scale_x = face.scale_y * static_cast<float>(face.oversampled);
        add_letters(atlas, *font, face);
        state.faces.push_back(face);
    }
    for (ImFontAtlasCustomRect& own : atlas.CustomRects) {  // a white spot, lines of every width
        const Place at = place(atlas, own.Width, own.Height);
        own.X = static_cast<unsigned short>(at.x);
        own.Y = static_cast<unsigned short>(at.y);
    }
    ImFontAtlasBuildFinish(&atlas);
    for (ImFont* font : atlas.Fonts)  // drawn for what a font has not, whatever it is
        need(*font, "?");
}

void need(ImFont& font, std::string_view words) {
    ImFontAtlas& atlas = *font.ContainerAtlas;
    for (std::size_t at = 0; at < words.size();) {
        const std::uint32_t code = utf8::code_at(words, at);
        at += std::max<std::size_t>(1, utf8::length_at(words, at));
        if (code >= static_cast<std::uint32_t>(font.IndexLookup.Size)) continue;
        const ImWchar index = font.IndexLookup[static_cast<int>(code)];
        if (index == static_cast<ImWchar>(-1)) continue;
        ImFontGlyph& letter = font.Glyphs[index];
        if (letter.Visible == 0 || letter.U1 > 0) continue;
        const auto face = std::find(atlas.Fonts.begin(), atlas.Fonts.end(), &font) - atlas.Fonts.begin();
        draw(atlas, state.faces[static_cast<std::size_t>(face)], letter);
    }
}

std::vector<Part> take_drawn() {
    std::vector<Part> parts;
    for (Row& row : state.rows)
        if (const int from = std::exchange(row.taken, row.used); from < row.used)
            parts.push_back({from, row.top, row.used - from, row.height});
    return parts;
}

void forget_taken() {
    for (Row& row : state.rows)
        row.taken = 0;
}

int grown() {
    return state.grown;
}

}  // namespace letters
