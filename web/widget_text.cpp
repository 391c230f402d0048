// See widget_text.h.
#include "widget_text.h"

#include <algorithm>
#include <cfloat>
#include <functional>

#include "widget_press.h"

namespace widget {

std::uint32_t rgb(Ink ink) {
    const theme::Colours& c = theme::colours();
    switch (ink) {
        case Ink::soft:
            return c.ink_soft;
        case Ink::accent:
            return c.accent;
        case Ink::caution:
            return c.caution;
        case Ink::stop:
            return c.stop;
        case Ink::plain:
            break;
    }
    return c.ink;
}

namespace {

float width_of(std::string_view words, theme::Type type) {
    ImFont* font = theme::font(type);
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, 0, words.data(), words.data() + words.size()).x;
}

// Longest start of `word` that fits, in whole letters, at least one.
std::size_t fitting(std::string_view word, theme::Type type, float width) {
    std::size_t fits = 0;
    for (std::size_t i = 1; i <= word.size(); ++i) {
        if (i < word.size() && (static_cast<unsigned char>(word[i]) & 0xC0) == 0x80) continue;
        if (fits > 0 && width_of(word.substr(0, i), type) > width) break;
        fits = i;
    }
    return fits;
}

// Lines broken at spaces only: the library also breaks after a point, which tears figures apart. A word
// longer than the line (a link) is broken between letters.
void each_line(std::string_view words, theme::Type type, float width,
               const std::function<void(std::string_view)>& take) {
    while (true) {
        const std::size_t end = std::min(words.find('\n'), words.size());
        std::string_view line = words.substr(0, end);
        while (width > 0 &&
               (line.size() > 400 || width_of(line, type) > width)) {  // so long a line never fits
            std::size_t fits = 0;
            for (std::size_t space = line.find(' '); space != line.npos; space = line.find(' ', space + 1)) {
                if (width_of(line.substr(0, space), type) > width) break;
                fits = space;
            }
            const std::size_t cut = fits > 0 ? fits : fitting(line.substr(0, line.find(' ')), type, width);
            take(line.substr(0, cut));
            line.remove_prefix(std::min(line.size(), cut + (cut < line.size() && line[cut] == ' ' ? 1 : 0)));
        }
        take(line);
        if (end == words.size()) return;
        words.remove_prefix(end + 1);
    }
}

}  // namespace

ImVec2 measure(std::string_view words, theme::Type type, float wrap_width) {
    ImVec2 size{0, 0};
    each_line(words, type, wrap_width, [&](std::string_view line) {
        size.x = std::max(size.x, width_of(line, type));
        size.y += theme::line_height(type);
    });
    return size;
}

void draw_wrapped(ImVec2 at, std::string_view words, theme::Type type, ImU32 colour, float wrap_width) {
    ImFont* font = theme::font(type);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    each_line(words, type, wrap_width, [&](std::string_view line) {
        list.AddText(font, font->FontSize, at, colour, line.data(), line.data() + line.size());
        at.y += theme::line_height(type);
    });
}

float draw_cut(ImVec2 at, std::string_view words, theme::Type type, ImU32 colour, float width) {
    const ImVec2 whole = measure(words, type);
    if (whole.x <= width) {
        draw_wrapped(at, words, type, colour, 0);
        return whole.x;
    }
    constexpr std::string_view kEllipsis = "\xE2\x80\xA6";
    const std::size_t fits = fitting(words, type, width - width_of(kEllipsis, type));
    draw_wrapped(at, std::string(words.substr(0, fits)) + std::string(kEllipsis), type, colour, 0);
    return width;
}

namespace {

void placed(kit::Kit& kit, std::string_view words, theme::Type type, Ink ink, mirror::Node node) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 size = measure(words, type, kit.width);
    node.id = id_of(words);
    while (!kit.texts.insert(node.id).second)
        ++node.id;  // the same words twice on one screen
    node.name = std::string(words);
    ImGui::Dummy({kit.width, size.y});
    fill_place(node, ImRect(at, {at.x + kit.width, at.y + size.y}));
    mirror::add(node);
    draw_wrapped(at, words, type, theme::paint(rgb(ink)), kit.width);
}

}  // namespace

void text(kit::Kit& kit, std::string_view words, theme::Type type, Ink ink) {
    mirror::Node node;
    node.role = mirror::Role::text;
    placed(kit, words, type, ink, node);
}

void heading(kit::Kit& kit, int level, std::string_view words) {
    mirror::Node node;
    node.role = mirror::Role::heading;
    node.level = level;
    placed(kit, words, level == 1 ? theme::Type::title : theme::Type::strong, Ink::plain, node);
}

void live(kit::Kit& kit, mirror::Role role, std::string_view key, std::string_view words) {
    (void)kit;
    mirror::Node node;
    node.id = id_of(key);
    node.role = role;
    node.name = std::string(words);
    mirror::add(node);
}

}  // namespace widget
