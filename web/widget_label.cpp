// See widget_label.h. Letters of any size: they are drawn in one of the page's own, then all corners of what
// was drawn are moved together and cut off at the label's edge.
#include "widget_label.h"

#include <algorithm>
#include <cmath>

#include "mirror.h"
#include "text_lines.h"
#include "theme.h"
#include "widget_button.h"
#include "widget_press.h"
#include "widget_text.h"

namespace widget {
namespace {

// As the paper has them (documents_labels.cpp), mm.
constexpr float kPadding = 1.7f, kBetween = 0.6f, kPitch = 1.2f, kRoundPadding = 0.08f;
constexpr float kBarHeight = 8;

// A quarter of what was drawn is one letter or picture: its corners left top, right top, right bottom, left
// bottom.
void fit_into(ImDrawVert* corner, const ImRect& box) {
    ImVec2 &low = corner[0].pos, &high = corner[2].pos;
    ImVec2 &from = corner[0].uv, &to = corner[2].uv;
    const auto cut = [](float& at, float& source, float other, float other_source, float edge) {
        if (other != at) source += (other_source - source) * (edge - at) / (other - at);
        at = edge;
    };
    if (low.x >= box.Max.x || high.x <= box.Min.x || low.y >= box.Max.y || high.y <= box.Min.y) {
        low = high = box.Min;
    } else {
        if (low.x < box.Min.x) cut(low.x, from.x, high.x, to.x, box.Min.x);
        if (low.y < box.Min.y) cut(low.y, from.y, high.y, to.y, box.Min.y);
        if (high.x > box.Max.x) cut(high.x, to.x, low.x, from.x, box.Max.x);
        if (high.y > box.Max.y) cut(high.y, to.y, low.y, from.y, box.Max.y);
    }
    corner[1].pos = {high.x, low.y}, corner[1].uv = {to.x, from.y};
    corner[3].pos = {low.x, high.y}, corner[3].uv = {from.x, to.y};
}

// Draws words at `at` with letters `letters` high (the em, CSS pixels) into a column; returns the height.
// Without a list nothing is drawn.
struct Setting {
    float letters, width;
    bool strong, centred;
    theme::Type type() const { return strong ? theme::Type::strong : theme::Type::body; }
    float scale() const { return letters / theme::letter_size(type()); }
};
float set_words(const Setting& how, std::string_view words, ImVec2 at, ImDrawList* list, const ImRect& edge) {
    const float scale = how.scale(), room = how.width / scale;
    const float pitch = kPitch * theme::letter_size(how.type());
    const int first = list ? list->VtxBuffer.Size : 0;
    float y = 0;
    text_lines::each(words, how.type(), room, [&](const text_lines::Line& line) {
        const float wide = text_lines::width(line, how.type());
        const float x = how.centred ? std::max(0.0f, (room - wide) / 2) : 0;
        if (list)
            draw_wrapped({at.x + x, at.y + y + (pitch - theme::line_height(how.type())) / 2}, line.words,
                         how.type(), theme::paint(theme::colours().ink), 0, {how.centred ? 0 : room, list});
        y += pitch;
    });
    if (list)
        for (int i = first; i < list->VtxBuffer.Size; ++i) {
            ImVec2& corner = list->VtxBuffer[i].pos;
            corner = {at.x + (corner.x - at.x) * scale, at.y + (corner.y - at.y) * scale};
            if ((i - first) % 4 == 3) fit_into(&list->VtxBuffer[i - 3], edge);
        }
    return y * scale;
}

// The jar with its lid off, within a square.
void open_jar(ImDrawList& list, ImVec2 at, float size, ImU32 ink) {
    const auto point = [&](float x, float y) { return ImVec2(at.x + x * size / 24, at.y + y * size / 24); };
    const ImVec2 jar[] = {point(5, 11), point(19, 11), point(19, 22), point(5, 22)};
    const ImVec2 lid[] = {point(4, 8), point(19, 3), point(20, 6), point(5, 11)};
    list.AddPolyline(jar, 4, ink, ImDrawFlags_Closed, std::max(1.0f, size / 15));
    list.AddPolyline(lid, 4, ink, ImDrawFlags_Closed, std::max(1.0f, size / 15));
}

// Open at the side where the label goes on.
void edges(ImDrawList& list, const ImRect& box, bool goes_on_left, bool goes_on_right) {
    const ImU32 ink = theme::paint(theme::colours().edge);
    list.AddLine(box.Min, {box.Max.x, box.Min.y}, ink);
    list.AddLine({box.Min.x, box.Max.y}, box.Max, ink);
    if (!goes_on_left) list.AddLine(box.Min, {box.Min.x, box.Max.y}, ink);
    if (!goes_on_right) list.AddLine({box.Max.x, box.Min.y}, box.Max, ink);
}

}  // namespace

float label_picture(kit::Kit& kit, std::string_view key, const LabelSpec& spec,
                    const std::vector<LabelLine>& lines) {
    const theme::Colours& c = theme::colours();
    const float mm = kPixelsAMm * spec.scale;
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const ImVec2 whole{spec.width * mm, spec.height * mm};
    const ImRect box(start, {start.x + std::min(kit.width, whole.x - spec.along), start.y + whole.y});
    mirror::Node node;
    node.id = id_of(key);
    node.role = mirror::Role::text;
    node.name = spec.name;
    for (const LabelLine& one : lines)
        if (!one.words.empty()) node.name += "\n" + one.words;
    std::replace(node.name.begin(), node.name.end(), '\n', ' ');
    fill_place(node, box);
    mirror::add(node);
    ImGui::Dummy({kit.width, whole.y});

    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImRect clip(list.GetClipRectMin(), list.GetClipRectMax());
    ImRect edge = box;
    edge.ClipWith(clip);
    const bool shown = edge.GetHeight() > 0 && edge.GetWidth() > 0;
    const float aside = spec.round ? kRoundPadding * whole.x : kPadding * mm;
    const float left = start.x - spec.along + aside, room = whole.x - 2 * aside;
    const auto set = [&](const LabelLine& one, float y, bool draw) {
        const float letters = one.letters * mm;
        const float sign = one.sign == LabelLine::Sign::none ? 0 : 5 * mm;
        const float beside = sign > 0 ? sign + mm : 0;
        const Setting how{letters, std::max(mm, room - beside), one.strong, spec.round && sign == 0};
        if (draw && sign > 0 && edge.Contains(ImRect(left, y, left + sign, y + sign))) {
            const ImU32 ink = theme::paint(c.ink);
            if (one.sign == LabelLine::Sign::open_jar)
                open_jar(list, {left, y}, sign, ink);
            else
                draw_mark(Mark::book, {left + sign / 2, y + sign / 2}, sign, ink);
        }
        const float words = one.words.empty()
                                ? 0
                                : set_words(how, one.words, {left + beside, y}, draw ? &list : nullptr, edge);
        return std::max(words, sign);
    };
    float needed = 0;
    for (const LabelLine& one : lines)
        needed += set(one, 0, false) + kBetween * mm;
    if (shown) {
        if (spec.round)
            list.AddCircle({start.x - spec.along + whole.x / 2, start.y + whole.y / 2}, whole.x / 2,
                           theme::paint(c.edge), 0, 1);
        else
            edges(list, box, spec.along > 0, whole.x - spec.along > kit.width);
        // What is drawn large and moved afterwards must not be left out for lying beyond the window's edge.
        list.PushClipRect({-1e6f, -1e6f}, {1e6f, 1e6f});
        float y = start.y + (spec.round ? std::max(0.0f, (whole.y - needed) / 2) : kPadding * mm);
        for (const LabelLine& one : lines)
            y += set(one, y, true) + kBetween * mm;
        list.PopClipRect();
    }
    return needed / mm + 2 * (spec.round ? kRoundPadding * spec.height : kPadding);
}

void millimetre_bar(kit::Kit& kit, std::string_view words, float mm) {
    text(kit, words, theme::Type::small, Ink::soft);
    gap(4);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    const float end = at.x + mm * kPixelsAMm;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = theme::paint(theme::colours().ink);
    list.AddRectFilled({at.x, at.y + kBarHeight / 2 - 1}, {end, at.y + kBarHeight / 2 + 1}, ink);
    for (float x = 0; x <= mm; x += 10)
        list.AddRectFilled({std::min(at.x + x * kPixelsAMm, end - 1), at.y},
                           {std::min(at.x + x * kPixelsAMm, end - 1) + 1, at.y + kBarHeight}, ink);
    ImGui::Dummy({kit.width, kBarHeight});
}

}  // namespace widget
