// See widget_list.h.
#include "widget_list.h"

#include <algorithm>

#include "theme.h"
#include "widget_button.h"
#include "widget_press.h"
#include "widget_text.h"

namespace widget {

RowPress row(kit::Kit& kit, std::string_view key, const RowSpec& spec) {
    ImGui::PushID(key.data(), key.data() + key.size());
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const bool has_menu = !spec.menu_name.empty();
    const float width = kit.width - (has_menu ? theme::kTarget : 0);
    const float inset = spec.chosen ? 12.0f : 0.0f;  // words stand in one line with headings and cards
    const float arrow = spec.onward ? theme::mark(14) + 10 : 0.0f;
    const bool beneath = !spec.right.empty() && theme::tight(width);  // the figure under the words
    const bool beside = !spec.right.empty() && !beneath;
    const float figure_width = beside ? measure(spec.right, theme::Type::strong).x : 0;
    const float right = arrow + (beside ? figure_width + 12 : 0);
    const float room = width - 2 * inset - right;
    const ImVec2 title = measure(spec.title, theme::Type::strong, room);
    const ImVec2 figure = beneath ? measure(spec.right, theme::Type::strong, room) : ImVec2(0, 0);
    const ImVec2 under = spec.under.empty() ? ImVec2(0, 0) : measure(spec.under, theme::Type::small, room);
    const float height = std::max(56.0f, title.y + figure.y + under.y + 20);
    RowPress result;
    const theme::Colours& c = theme::colours();
    const ImU32 ink = theme::paint(spec.chosen ? c.on_chosen : c.ink);
    const ImU32 soft = theme::paint(spec.chosen ? c.on_chosen : c.ink_soft);
    ImRect box(start, {start.x + width, start.y + height});
    if (spec.plain) {
        mirror::Node node;
        node.role = mirror::Role::text;
        node.id = id_of("row");
        node.name = spec.title + (spec.right.empty() ? "" : ", " + spec.right) +
                    (spec.under.empty() ? "" : ", " + spec.under);
        fill_place(node, box);
        mirror::add(node);
        ImGui::Dummy(box.GetSize());
    } else {
        mirror::Node node;
        node.role = mirror::Role::button;
        node.name = spec.title;
        node.description =
            spec.under + (spec.right.empty() ? "" : (spec.under.empty() ? "" : ", ") + spec.right);
        node.current = spec.chosen;
        const Press press = press_area(kit, "row", box.GetSize(), node);
        const float over = spec.chosen ? 0.0f : 8.0f;  // what lights up reaches past the words
        if (press.down || press.hovered || spec.chosen)
            ImGui::GetWindowDrawList()->AddRectFilled(
                {box.Min.x - over, box.Min.y}, {box.Max.x + (has_menu ? 0.0f : over), box.Max.y},
                spec.chosen ? theme::paint(c.chosen) : theme::paint(c.ink, press.down ? 0.12f : 0.05f),
                theme::kRound);
        if (spec.chosen && theme::outlined())
            ImGui::GetWindowDrawList()->AddRect(box.Min, box.Max, theme::paint(c.accent), theme::kRound, 0,
                                                2);
        result.pressed = press.clicked;
        result.menu = press.menu && has_menu;
        focus_ring({{box.Min.x - over, box.Min.y}, box.Max}, theme::kRound, press.id);
    }
    const bool in_view = ImGui::IsRectVisible(box.Min, box.Max);  // a long list draws what is seen of it
    const float y = box.GetCenter().y - (title.y + figure.y + under.y) / 2;
    if (in_view) draw_wrapped({start.x + inset, y}, spec.title, theme::Type::strong, ink, room);
    if (in_view && under.y > 0)
        draw_wrapped({start.x + inset, y + title.y + figure.y}, spec.under, theme::Type::small, soft, room);
    if (in_view && beneath)
        draw_wrapped({start.x + inset, y + title.y}, spec.right, theme::Type::strong, ink, room);
    if (in_view && spec.onward)
        draw_mark(Mark::onward, {box.Max.x - arrow / 2, box.GetCenter().y}, theme::mark(14), soft);
    if (in_view && beside)
        draw_wrapped({box.Max.x - inset - arrow - figure_width,
                      box.GetCenter().y - theme::line_height(theme::Type::strong) / 2},
                     spec.right, theme::Type::strong, ink, 0);
    if (has_menu) {
        ImGui::SetCursorScreenPos({box.Max.x, box.GetCenter().y - theme::kTarget / 2});
        result.menu = mark_button(kit, "menu", Mark::dots, spec.menu_name) || result.menu;
    }
    go_to(start.x, start.y + height);
    ImGui::PopID();
    return result;
}

void finding_badge(kit::Kit& kit, finding::Severity severity, std::string_view sentence,
                   std::string_view source, std::string_view advice) {
    const theme::Colours& c = theme::colours();
    const bool stop = severity == finding::Severity::stop, caution = severity == finding::Severity::caution;
    const std::uint32_t ink = stop ? c.stop : caution ? c.caution : c.ink_soft;
    const std::uint32_t ground = stop ? c.stop_ground : caution ? c.caution_ground : c.card;
    const std::string word = kit.say(stop ? "severity.stop" : caution ? "severity.caution" : "severity.note");
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const float size = theme::mark(10), indent = 22 + 2 * size;
    const bool tight = theme::tight(kit.width);  // the sentence begins beneath the shape
    const float aside = tight ? 12 : indent, room = kit.width - aside - 10;
    const ImVec2 head = measure(word, theme::Type::strong), body = measure(sentence, theme::Type::body, room);
    const ImVec2 deed = advice.empty() ? ImVec2(0, 0) : measure(advice, theme::Type::body, room);
    const float above_deed = advice.empty() ? 0 : 6;
    const ImVec2 foot = source.empty() ? ImVec2(0, 0) : measure(source, theme::Type::small, room);
    const float height = head.y + body.y + above_deed + deed.y + foot.y + 24;
    const ImRect box(start, {start.x + kit.width, start.y + height});
    mirror::Node node;
    node.role = mirror::Role::text;
    node.name = word + ": " + std::string(sentence);
    for (const std::string_view more : {advice, source})
        if (!more.empty()) node.name += " " + std::string(more);
    node.id = id_of(node.name);
    while (mirror::used(node.id))
        ++node.id;
    fill_place(node, box);
    mirror::add(node);
    ImGui::Dummy(box.GetSize());
    if (!ImGui::IsRectVisible(box.Min, box.Max)) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.AddRectFilled(box.Min, box.Max, theme::paint(ground), theme::kRound);
    list.AddRect(box.Min, box.Max, theme::paint(stop || caution ? ink : c.hairline), theme::kRound, 0, 1);
    // Octagon, triangle, circle: never colour alone.
    const ImVec2 m{start.x + 12 + size, start.y + 12 + head.y / 2};
    if (stop) {  // on a side, as the road sign stands
        list.PathArcTo(m, size, IM_PI / 8, 15 * IM_PI / 8, 7);
        list.PathFillConvex(theme::paint(ink));
    } else if (caution)
        list.AddTriangleFilled({m.x, m.y - size}, {m.x + 1.1f * size, m.y + 0.9f * size},
                               {m.x - 1.1f * size, m.y + 0.9f * size}, theme::paint(ink));
    else
        list.AddCircle(m, 0.8f * size, theme::paint(ink), 24, 2);
    draw_wrapped({start.x + indent, start.y + 12}, word, theme::Type::strong, theme::paint(ink), 0);
    const float x = start.x + aside;
    draw_wrapped({x, start.y + 12 + head.y}, sentence, theme::Type::body, theme::paint(c.ink), room);
    float y = start.y + 12 + head.y + body.y + above_deed;
    if (deed.y > 0) draw_wrapped({x, y}, advice, theme::Type::body, theme::paint(c.ink), room);
    y += deed.y;
    if (foot.y > 0) draw_wrapped({x, y}, source, theme::Type::small, theme::paint(c.ink_soft), room);
}

void hairline(kit::Kit& kit) {
    const ImVec2 at = ImGui::GetCursorScreenPos();
    if (ImGui::IsRectVisible(at, {at.x + kit.width, at.y + 1}))
        ImGui::GetWindowDrawList()->AddLine(at, {at.x + kit.width, at.y},
                                            theme::paint(theme::colours().hairline), 1);
    ImGui::Dummy({kit.width, 1});
}

namespace {
constexpr float kCardPad = 12;
}

void begin_card(kit::Kit& kit) {
    ImGui::GetWindowDrawList()->ChannelsSplit(2);
    ImGui::GetWindowDrawList()->ChannelsSetCurrent(1);
    const ImVec2 at = ImGui::GetCursorScreenPos();
    ImGui::SetCursorScreenPos({at.x + kCardPad, at.y + kCardPad});
    ImGui::BeginGroup();
    kit.width -= 2 * kCardPad;
}

void end_card(kit::Kit& kit) {
    ImGui::EndGroup();
    const ImVec2 low = ImGui::GetItemRectMin(), high = ImGui::GetItemRectMax();
    kit.width += 2 * kCardPad;
    const ImVec2 start{low.x - kCardPad, low.y - kCardPad};
    ImDrawList& list = *ImGui::GetWindowDrawList();
    list.ChannelsSetCurrent(0);
    const ImVec2 end{start.x + kit.width, high.y + kCardPad};
    list.AddRectFilled(start, end, theme::paint(theme::colours().card), theme::kRound + 2);
    list.AddRect(start, end, theme::paint(theme::colours().hairline), theme::kRound + 2, 0, 1);
    list.ChannelsMerge();
    go_to(start.x, end.y);
}

}  // namespace widget
