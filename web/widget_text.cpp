// See widget_text.h.
#include "widget_text.h"

#include <algorithm>

#include "drawn_items.h"
#include "picture_text.h"
#include "text_lines.h"
#include "widget_press.h"

namespace widget {

std::uint32_t rgb(Ink ink) {
    const theme::Colours& c = theme::colours();
    switch (ink) {
        case Ink::soft:
            return c.ink_soft;
        case Ink::accent:
            return c.heading;
        case Ink::caution:
            return c.caution;
        case Ink::stop:
            return c.stop;
        case Ink::plain:
            break;
    }
    return c.ink;
}

ImVec2 measure(std::string_view words, theme::Type type, float wrap_width) {
    ImVec2 size{0, 0};
    text_lines::each(words, type, wrap_width, [&](const text_lines::Line& line) {
        size.x = std::max(size.x, text_lines::width(line, type));
        size.y += theme::line_height(type);
    });
    return size;
}

float far_side(std::string_view words, theme::Type type, float width) {
    bool right_to_left = false;
    text_lines::each(words, type, 0,
                     [&](const text_lines::Line& line) { right_to_left |= line.right_to_left; });
    return right_to_left ? std::max(0.0f, width - measure(words, type).x) : 0;
}

void draw_wrapped(ImVec2 at, std::string_view words, theme::Type type, ImU32 colour, float wrap_width,
                  const Placing& placing) {
    ImDrawList& list = placing.list ? *placing.list : *ImGui::GetWindowDrawList();
    float widest = placing.width;
    text_lines::each(words, type, wrap_width, [&](const text_lines::Line& line) {
        float x = at.x;
        if (line.right_to_left) {
            if (widest <= 0) widest = measure(words, type, wrap_width).x;
            x += std::max(0.0f, widest - text_lines::width(line, type));
        }
        if (line.pictured) {
            picture_text::draw(list, {x, at.y}, line.words, type, colour, line.right_to_left);
        } else {
            ImFont* font = theme::font(type);
            list.AddText(font, font->FontSize, {x, at.y}, colour, line.words.data(),
                         line.words.data() + line.words.size());
        }
        at.y += theme::line_height(type);
    });
}

float draw_cut(ImVec2 at, std::string_view words, theme::Type type, ImU32 colour, float width) {
    const ImVec2 whole = measure(words, type);
    if (whole.x <= width) {
        draw_wrapped(at, words, type, colour, 0);
        return whole.x;
    }
    drawn_items::cut(words);
    draw_wrapped(at, text_lines::cut(words, type, width), type, colour, 0);
    return width;
}

namespace {

void placed(kit::Kit& kit, std::string_view words, theme::Type type, Ink ink, mirror::Node node,
            const Placing& placing = {}) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const ImVec2 size = measure(words, type, kit.width);
    node.id = id_of(words);
    while (mirror::used(node.id))
        ++node.id;  // the same words twice on one screen
    node.name = std::string(words);
    ImGui::Dummy({kit.width, size.y});
    fill_place(node, ImRect(at, {at.x + kit.width, at.y + size.y}));
    mirror::add(node);
    draw_wrapped(at, words, type, theme::paint(rgb(ink)), kit.width, placing);
}

}  // namespace

void text(kit::Kit& kit, std::string_view words, theme::Type type, Ink ink) {
    mirror::Node node;
    node.role = mirror::Role::text;
    placed(kit, words, type, ink, node, {kit.width});
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
