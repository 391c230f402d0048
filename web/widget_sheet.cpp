// See widget_sheet.h. The dim ground is a window of its own that takes presses beside the sheet.
#include "widget_sheet.h"

#include <algorithm>
#include <string>

#include "theme.h"
#include "widget_button.h"
#include "widget_press.h"
#include "widget_text.h"

namespace widget {
namespace {
constexpr ImGuiWindowFlags kFlags = ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                                    ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoNav |
                                    ImGuiWindowFlags_NoBringToFrontOnFocus;
constexpr float kPad = 16, kHead = 56, kCorner = 16;

// With an edge: in the dark theme the dimmed page is hardly darker than the sheet.
void draw_ground(ImVec2 low, ImVec2 high, bool to_the_foot) {
    const theme::Colours& c = theme::colours();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImDrawFlags corners = to_the_foot ? ImDrawFlags_RoundCornersTop : ImDrawFlags_RoundCornersAll;
    list.AddRectFilled(low, high, theme::paint(c.paper), kCorner, corners);
    const ImU32 edge = theme::paint(theme::outlined() ? c.ink : c.hairline);
    const float weight = theme::outlined() ? 2.0f : 1.0f;
    if (!to_the_foot) return list.AddRect(low, high, edge, kCorner, corners, weight);
    const float in = kCorner + weight / 2,
                y = low.y + in;  // as wide as the window: its sides are the window's
    list.PathArcTo({low.x + in, y}, kCorner, IM_PI, 1.5f * IM_PI, 10);
    list.PathArcTo({high.x - in, y}, kCorner, 1.5f * IM_PI, 2 * IM_PI, 10);
    list.PathStroke(edge, 0, weight);
}
}  // namespace

bool begin_sheet(kit::Kit& kit, std::string_view key, std::string_view title, const SheetPlace& place,
                 bool escape) {
    const bool phone = place.window.x < theme::wide_from();
    const float width =
        phone ? place.window.x : std::min(theme::grown(place.wide ? 860 : 560), place.window.x - 80);
    const float left = (place.window.x - width) / 2;
    const float highest = place.top + (phone ? 40.0f : 48.0f);
    const float lowest = place.window.y - place.bottom - (phone ? 0.0f : 48.0f);
    const float words = measure(title, theme::Type::strong, width - 2 * kPad - theme::kTarget).y;
    const float head = std::max(kHead, words + 16);  // a long title is read whole
    const bool fresh = kit.sheet != key;
    if (fresh) {
        kit.sheet = key;
        kit.sheet_height = 0;
    }
    const float needed = place.whole || kit.sheet_height <= 0 ? lowest - highest : head + kit.sheet_height;
    const float spare = std::max(0.0f, lowest - highest - needed);
    const float top = phone ? highest + spare : highest + spare / 2;
    const float bottom = phone ? lowest : lowest - spare / 2;

    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize(place.window);
    ImGui::PushStyleColor(ImGuiCol_WindowBg,
                          ImGui::ColorConvertU32ToFloat4(theme::paint(theme::colours().shade, 0.5f)));
    ImGui::Begin("##shade", nullptr, kFlags);
    ImGui::BringWindowToDisplayFront(ImGui::GetCurrentWindow());
    const bool beside = ImGui::IsWindowHovered() && ImGui::IsMouseClicked(ImGuiMouseButton_Left);
    ImGui::End();
    ImGui::PopStyleColor();

    const std::string name = "##sheet_" + std::string(key);
    ImGui::SetNextWindowPos({left, top});
    ImGui::SetNextWindowSize({width, std::max(120.0f, bottom - top)});
    ImGui::Begin(name.c_str(), nullptr, kFlags | ImGuiWindowFlags_NoBackground);
    ImGui::BringWindowToDisplayFront(ImGui::GetCurrentWindow());
    draw_ground({left, top}, {left + width, bottom}, phone);
    mirror::Node dialog;
    dialog.id = id_of("dialog");
    dialog.role = mirror::Role::dialog;
    dialog.name = std::string(title);
    mirror::open(dialog);

    kit.width = width - 2 * kPad - theme::kTarget;
    ImGui::SetCursorScreenPos({left + kPad, top + (head - words) / 2});
    heading(kit, 2, title);
    ImGui::SetCursorScreenPos({left + width - theme::kTarget - 4, top + (head - theme::kTarget) / 2});
    const bool closed = mark_button(kit, "close", Mark::close, kit.say("sheet_ui.close"));
    if (closed || beside || escape) {
        kit.sheet.clear();
        mirror::close();
        ImGui::End();
        return false;
    }
    ImGui::GetWindowDrawList()->AddLine({left, top + head - 1}, {left + width, top + head - 1},
                                        theme::paint(theme::colours().hairline));
    ImGui::SetCursorScreenPos({left, top + head});
    ImGui::BeginChild("content", {width, std::max(60.0f, bottom - top - head)}, 0,
                      ImGuiWindowFlags_NoScrollbar | ImGuiWindowFlags_NoNav);
    if (fresh) ImGui::SetScrollY(0);
    kit.width = width - 2 * kPad;
    ImGui::SetCursorPos({kPad, 12});
    ImGui::BeginGroup();
    return true;
}

void end_sheet(kit::Kit& kit) {
    gap(24);
    ImGui::EndGroup();
    kit.sheet_height = ImGui::GetItemRectSize().y + 12;
    ImGui::EndChild();
    mirror::close();
    ImGui::End();
}

}  // namespace widget
