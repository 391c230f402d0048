// See widget_press.h. Leans on the library's internal ButtonBehavior, whose rules for mouse and queued taps
// are sound.
#include "widget_press.h"

#include <algorithm>

#include "theme.h"

namespace widget {

std::uint32_t id_of(std::string_view key) {
    return ImGui::GetCurrentWindow()->GetID(key.data(), key.data() + key.size());
}

void fill_place(mirror::Node& node, ImRect box) {
    node.x = box.Min.x;
    node.y = box.Min.y;
    node.width = box.GetWidth();
    node.height = box.GetHeight();
    node.visible = ImGui::GetCurrentWindow()->ClipRect.Contains(box.GetCenter());
}

void focus_ring(ImRect box, float rounding, std::uint32_t id) {
    if (!mirror::focused(id)) return;
    box.Expand(2);
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRect(box.Min, box.Max, theme::paint(theme::colours().paper), rounding + 2, 0, 5);
    list.AddRect(box.Min, box.Max, theme::paint(theme::colours().ink), rounding + 2, 0, 2.5f);
}

void draw_panel(ImRect box, std::uint32_t ground_rgb, std::uint32_t edge_rgb) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(box.Min, box.Max, theme::paint(ground_rgb), theme::kRound);
    if (theme::outlined()) list.AddRect(box.Min, box.Max, theme::paint(edge_rgb), theme::kRound, 0, 1.5f);
}

void gap(float pixels) {
    ImGui::Dummy({0, pixels});
}

void go_to(float left, float y) {
    ImGui::SetCursorScreenPos({left, y});
    ImGui::Dummy({0, 0});
}

namespace {
constexpr float kColumnGap = 12;
}

Columns begin_columns(kit::Kit& kit) {
    const Columns columns{ImGui::GetCursorScreenPos(), kit.width, 0, theme::tight(kit.width)};
    if (!columns.stacked) kit.width = (kit.width - kColumnGap) / 2;
    return columns;
}

void next_column(kit::Kit& kit, Columns& columns) {
    columns.low = ImGui::GetCursorScreenPos().y;
    if (columns.stacked)
        ImGui::SetCursorScreenPos({columns.start.x, columns.low + kColumnGap});
    else
        ImGui::SetCursorScreenPos({columns.start.x + kit.width + kColumnGap, columns.start.y});
    ImGui::BeginGroup();  // keeps the left edge of this column
}

void end_columns(kit::Kit& kit, Columns& columns) {
    ImGui::EndGroup();
    const float low = std::max(columns.low, ImGui::GetCursorScreenPos().y);
    kit.width = columns.width;
    go_to(columns.start.x, low);
}

Press press_area(kit::Kit& kit, std::string_view key, ImVec2 size, mirror::Node node) {
    ImGuiWindow* window = ImGui::GetCurrentWindow();
    Press press;
    press.id = id_of(key);
    press.box =
        ImRect(window->DC.CursorPos, {window->DC.CursorPos.x + size.x, window->DC.CursorPos.y + size.y});
    ImGui::ItemSize(size);
    press.shown = ImGui::ItemAdd(press.box, press.id);
    node.id = press.id;
    fill_place(node, press.box);
    mirror::add(node);

    if (mirror::take_focus_arrived(press.id) || kit.wish_view == press.id) {
        ImGui::ScrollToRect(window,
                            {press.box.Min.x, press.box.Min.y - 24, press.box.Max.x, press.box.Max.y + 24},
                            ImGuiScrollFlags_KeepVisibleEdgeY);
        if (kit.wish_view == press.id) kit.wish_view = 0;
    }
    if (node.disabled) return press;

    bool held = false;
    if (press.shown && !kit.beneath_sheet) {
        press.clicked = ImGui::ButtonBehavior(press.box, press.id, &press.hovered, &held, 0);
        const ImRect seen(ImMax(press.box.Min, window->ClipRect.Min),
                          ImMin(press.box.Max, window->ClipRect.Max));
        press.down = (held && press.hovered) || seen.Contains(kit.finger_at);
        press.menu = seen.Contains(kit.long_press_at) ||
                     (press.hovered && ImGui::IsMouseReleased(ImGuiMouseButton_Right));
        if (kit.finger) press.hovered = false;
    }
    press.clicked = mirror::take_click(press.id) || press.clicked;
    press.menu = mirror::take_menu(press.id) || press.menu;
    return press;
}

}  // namespace widget
