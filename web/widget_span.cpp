// See widget_span.h.
#include "widget_span.h"

#include <algorithm>

#include "theme.h"
#include "widget_press.h"
#include "widget_text.h"

namespace widget {
namespace {

constexpr float kHigh = 12;  // of the bar

void draw_span(ImVec2 start, float width, const SpanSpec& spec) {
    const theme::Colours& c = theme::colours();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const auto at = [&](double share) {
        return start.x + width * static_cast<float>(std::clamp(share, 0.0, 1.0));
    };
    const float middle = start.y + kHigh / 2;
    list.AddLine({start.x, middle}, {start.x + width, middle}, theme::paint(c.hairline), 1);
    const float left = at(spec.low), right = std::max(at(spec.high), left + 2);
    list.AddLine({left, middle}, {right, middle}, theme::paint(c.edge), 2);
    for (const float end : {left, right})
        list.AddLine({end, start.y + 2}, {end, start.y + kHigh - 2}, theme::paint(c.edge), 2);
    if (!spec.inner) return;
    list.AddRectFilled({at(spec.inner->low), start.y + 2},
                       {std::max(at(spec.inner->high), at(spec.inner->low) + 2), start.y + kHigh - 2},
                       theme::paint(c.accent), 2);
    const float mean = at(spec.inner->mean);
    list.AddLine({mean, start.y - 2}, {mean, start.y + kHigh + 2}, theme::paint(c.ink), 3);
}

}  // namespace

bool span(kit::Kit& kit, std::string_view key, const SpanSpec& spec) {
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const ImVec2 title = measure(spec.title, theme::Type::body, kit.width),
                 under = measure(spec.under, theme::Type::small, kit.width);
    const float height = std::max(theme::kTarget, title.y + under.y + kHigh + 20);
    mirror::Node node;
    node.name = spec.title;
    node.description = spec.under;
    ImRect box(start, {start.x + kit.width, start.y + height});
    bool pressed = false;
    if (spec.plain) {
        node.role = mirror::Role::text;
        node.name += ", " + spec.under;
        node.description.clear();
        node.id = id_of(key);
        fill_place(node, box);
        mirror::add(node);
        ImGui::Dummy(box.GetSize());
    } else {
        node.role = mirror::Role::button;
        const Press press = press_area(kit, key, box.GetSize(), node);
        if (press.down || press.hovered)
            ImGui::GetWindowDrawList()->AddRectFilled(
                {box.Min.x - 8, box.Min.y}, {box.Max.x + 8, box.Max.y},
                theme::paint(theme::colours().ink, press.down ? 0.12f : 0.05f), theme::kRound);
        focus_ring({{box.Min.x - 8, box.Min.y}, {box.Max.x + 8, box.Max.y}}, theme::kRound, press.id);
        pressed = press.clicked;
    }
    if (ImGui::IsRectVisible(box.Min, box.Max)) {
        const theme::Colours& c = theme::colours();
        const float top = start.y + 6;
        draw_wrapped({start.x, top}, spec.title, theme::Type::body, theme::paint(c.ink), kit.width);
        draw_span({start.x, top + title.y + 3}, kit.width, spec);
        draw_wrapped({start.x, top + title.y + kHigh + 8}, spec.under, theme::Type::small,
                     theme::paint(c.ink_soft), kit.width);
    }
    go_to(start.x, start.y + height);
    return pressed;
}

}  // namespace widget
