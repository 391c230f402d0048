// See picture_text.h. Leans on the library's count of frames: what this frame has drawn is not dropped.
#include "picture_text.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <map>
#include <string>
#include <tuple>
#include <utility>

#include "engine/utf8.h"
#include "platform.h"

namespace picture_text {
namespace {

constexpr std::size_t kMostBytes =
    8 << 20;  // of pictures: two full screens of a phone with three pixels to one
constexpr std::size_t kMostWidths = 600;

// What is not well formed, and what is no letter at all, the host need not guess about.
std::string well_formed(std::string_view text) {
    std::string out;
    out.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = utf8::length_at(text, at);
        if (length == 0)
            out += "\xEF\xBF\xBD";
        else if (length == 1 && static_cast<unsigned char>(text[at]) < 0x20)
            out += ' ';
        else
            out += text.substr(at, length);
        at += std::max<std::size_t>(1, length);
    }
    return out;
}

struct Key {
    std::string text;
    theme::Type type;
    bool right_to_left;
    std::uint32_t rgb;
    bool operator<(const Key& other) const {
        return std::tie(text, type, right_to_left, rgb) <
               std::tie(other.text, other.type, other.right_to_left, other.rgb);
    }
};
struct Picture {
    platform::LinePicture drawn;
    int seen = 0;  // in this frame
};
struct Width {
    float pixels = 0;
    int seen = 0;
};

struct State {
    std::map<Key, Picture> pictures;
    std::map<Key, Width> widths;
    std::size_t bytes = 0;
    float ratio = 0;  // of the device, that all of it was made for
};
State state;

platform::LineLook look_of(theme::Type type, bool right_to_left) {
    return {theme::letter_size(type), theme::is_strong(type), right_to_left};
}

std::size_t bytes_of(const platform::LinePicture& picture) {
    return static_cast<std::size_t>(picture.width) * static_cast<std::size_t>(picture.height) * 4;
}

void follow_ratio() {
    const float ratio = platform::window().pixel_ratio;
    if (ratio == state.ratio) return;
    start_over();
    state.ratio = ratio;
}

void make_room() {
    while (state.bytes > kMostBytes) {
        const auto last =
            std::min_element(state.pictures.begin(), state.pictures.end(),
                             [](const auto& a, const auto& b) { return a.second.seen < b.second.seen; });
        if (last == state.pictures.end() || last->second.seen == ImGui::GetFrameCount()) return;
        state.bytes -= bytes_of(last->second.drawn);
        if (last->second.drawn.texture != 0) platform::drop_picture(last->second.drawn.texture);
        state.pictures.erase(last);
    }
}

const platform::LinePicture& picture_of(Key key) {
    follow_ratio();
    auto found = state.pictures.find(key);
    if (found == state.pictures.end()) {
        make_room();
        const platform::LinePicture drawn =
            platform::draw_line(key.text, look_of(key.type, key.right_to_left), key.rgb);
        state.bytes += bytes_of(drawn);
        found = state.pictures.emplace(std::move(key), Picture{drawn, 0}).first;
    }
    found->second.seen = ImGui::GetFrameCount();
    return found->second.drawn;
}

}  // namespace

bool needed(std::string_view text, theme::Type type) {
    for (std::size_t at = 0; at < text.size();) {
        const auto byte = static_cast<unsigned char>(text[at]);
        if (byte < 0x80) {
            ++at;
            continue;
        }
        if (!theme::has_letter(type, utf8::code_at(text, at))) return true;
        at += std::max<std::size_t>(1, utf8::length_at(text, at));
    }
    return false;
}

float measure(std::string_view text, theme::Type type, bool right_to_left) {
    return platform::measure_line(well_formed(text), look_of(type, right_to_left));
}

float width(std::string_view text, theme::Type type, bool right_to_left) {
    follow_ratio();
    Key key{well_formed(text), type, right_to_left, 0};
    auto found = state.widths.find(key);
    if (found == state.widths.end()) {
        const int frame = ImGui::GetFrameCount();
        if (state.widths.size() >= kMostWidths)  // what the last frame still asked for may be more than that
            std::erase_if(state.widths, [&](const auto& one) { return one.second.seen < frame - 1; });
        const float pixels = platform::measure_line(key.text, look_of(type, right_to_left));
        found = state.widths.emplace(std::move(key), Width{pixels, 0}).first;
    }
    found->second.seen = ImGui::GetFrameCount();
    return found->second.pixels;
}

void draw(ImDrawList& list, ImVec2 at, std::string_view text, theme::Type type, ImU32 colour,
          bool right_to_left) {
    // Out of sight nothing is drawn, and no picture is made. Marks may reach beyond the line by as much
    // again.
    const float high_line = theme::line_height(type);
    const ImVec2 seen_low = list.GetClipRectMin(), seen_high = list.GetClipRectMax();
    if (at.y > seen_high.y + high_line || at.y + 2 * high_line < seen_low.y || at.x > seen_high.x ||
        at.x + width(text, type, right_to_left) + high_line < seen_low.x)
        return;
    const ImVec4 ink = ImGui::ColorConvertU32ToFloat4(colour);
    const auto part = [](float share) { return static_cast<std::uint32_t>(std::lround(share * 255.0f)); };
    const std::uint32_t rgb = part(ink.x) << 16 | part(ink.y) << 8 | part(ink.z);
    const platform::LinePicture picture = picture_of({well_formed(text), type, right_to_left, rgb});
    if (picture.texture == 0) return;
    // Pixel on pixel, or it would be blurred.
    const float ratio = state.ratio;
    const float x = std::round(std::floor(at.x) * ratio) + static_cast<float>(picture.left);
    const float y =
        std::round((std::floor(at.y) + theme::baseline(type)) * ratio) + static_cast<float>(picture.top);
    const ImVec2 low{x / ratio, y / ratio};
    const ImVec2 high{(x + static_cast<float>(picture.width)) / ratio,
                      (y + static_cast<float>(picture.height)) / ratio};
    // The library's name for a texture is a pointer. NOLINTNEXTLINE(performance-no-int-to-ptr)
    const auto texture = reinterpret_cast<ImTextureID>(picture.texture);
    list.AddImage(texture, low, high, {0, 0}, {1, 1}, theme::paint(0xFFFFFF, ink.w));
}

void start_over() {
    for (const auto& [key, picture] : state.pictures)
        if (picture.drawn.texture != 0) platform::drop_picture(picture.drawn.texture);
    state.pictures.clear();
    state.widths.clear();
    state.bytes = 0;
    state.ratio = 0;
}

std::size_t bytes_kept() {
    return state.bytes;
}

}  // namespace picture_text
