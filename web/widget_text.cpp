// See widget_text.h.
#include "widget_text.h"

#include "widget_press.h"

namespace widget {

std::uint32_t rgb(Ink ink) {
    const theme::Colours& c = theme::colours();
    switch (ink) {
        case Ink::soft: return c.ink_soft;
        case Ink::accent: return c.accent;
        case Ink::caution: return c.caution;
        case Ink::stop: return c.stop;
        case Ink::plain: break;
    }
    return c.ink;
}

ImVec2 measure(std::string_view words, theme::Type type, float wrap_width) {
    ImFont* font = theme::font(type);
    return font->CalcTextSizeA(font->FontSize, FLT_MAX, wrap_width, words.data(), words.data() + words.size());
}

void draw_wrapped(ImVec2 at, std::string_view words, theme::Type type, ImU32 colour, float wrap_width) {
    ImFont* font = theme::font(type);
    ImGui::GetWindowDrawList()->AddText(font, font->FontSize, at, colour, words.data(), words.data() + words.size(),
                                        wrap_width);
}

float draw_cut(ImVec2 at, std::string_view words, theme::Type type, ImU32 colour, float width) {
    const ImVec2 whole = measure(words, type);
    if (whole.x <= width) {
        draw_wrapped(at, words, type, colour, 0);
        return whole.x;
    }
    constexpr std::string_view kEllipsis = "\xE2\x80\xA6";
    const float room = width - measure(kEllipsis, type).x;
    std::size_t fits = 0;
    for (std::size_t i = 1; i <= words.size(); ++i) {
        const bool inside_letter = i < words.size() && (static_cast<unsigned char>(words[i]) & 0xC0) == 0x80;
        if (inside_letter) continue;
        if (measure(words.substr(0, i), type).x > room) break;
        fits = i;
    }
    draw_wrapped(at, std::string(words.substr(0, fits)) + std::string(kEllipsis), type, colour, 0);
    return width;
}

namespace {

void placed(kit::Kit& kit, std::string_view words, theme::Type type, Ink ink, mirror::Node node) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 size = measure(words, type, kit.width);
    node.id = id_of(words);
    while (!kit.texts.insert(node.id).second) ++node.id;  // the same words twice on one screen
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
