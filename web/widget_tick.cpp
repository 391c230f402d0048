// See widget_tick.h.
#include "widget_tick.h"

#include <algorithm>

#include "theme.h"
#include "widget_button.h"
#include "widget_press.h"
#include "widget_text.h"

namespace widget {

bool tick(kit::Kit& kit, std::string_view key, std::string_view label, bool ticked) {
    const float box = theme::mark(24), indent = box + 16;
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const ImVec2 words = measure(label, theme::Type::body, kit.width - indent);
    mirror::Node node;
    node.role = mirror::Role::checkbox;
    node.name = std::string(label);
    node.checked = ticked;
    const Press press = press_area(kit, key, {kit.width, std::max(theme::kTarget + 4, words.y + 16)}, node);
    if (!press.shown) return press.clicked;
    const theme::Colours& c = theme::colours();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (press.down || press.hovered)
        list.AddRectFilled(press.box.Min, press.box.Max, theme::paint(c.ink, press.down ? 0.12f : 0.05f),
                           theme::kRound);
    const float middle = press.box.GetCenter().y;
    const ImVec2 low{start.x + 4, middle - box / 2}, high{low.x + box, low.y + box};
    if (ticked) list.AddRectFilled(low, high, theme::paint(c.accent), 5);
    list.AddRect(low, high, theme::paint(ticked ? c.link : c.ink_soft), 5, 0, 1.6f);
    if (ticked)
        draw_mark(Mark::check, {low.x + box / 2, middle}, theme::mark(14), theme::paint(c.on_accent), 2.4f);
    draw_wrapped({start.x + indent, middle - words.y / 2}, label, theme::Type::body, theme::paint(c.ink),
                 kit.width - indent);
    focus_ring(press.box, theme::kRound, press.id);
    return press.clicked;
}

}  // namespace widget
