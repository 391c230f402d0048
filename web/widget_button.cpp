// See widget_button.h. The marks are drawn, not taken from a font, so that they are crisp at any ratio and
// ours.
#include "widget_button.h"

#include <algorithm>

#include "theme.h"
#include "widget_press.h"
#include "widget_text.h"

namespace widget {
namespace {

struct Paint {
    std::uint32_t ground, edge, ink;
    bool filled, edged;
};

Paint paint_of(Look look) {
    const theme::Colours& c = theme::colours();
    switch (look) {
        case Look::primary:
            return {c.accent, c.accent, c.on_accent, true, false};
        case Look::plain:
            return {c.button, c.edge, c.on_button, true, true};
        case Look::danger:
            return {c.card, c.stop, c.stop, true, true};
        case Look::quiet:
            break;
    }
    return {c.paper, c.paper, c.link, false, false};
}

}  // namespace

bool button(kit::Kit& kit, std::string_view key, std::string_view label, Look look, float width,
            bool disabled) {
    const float inner = measure(label, theme::Type::strong).x;
    const float pad = look == Look::quiet ? 4.0f : 18.0f;  // a quiet one's words stand at the column's edge
    if (width <= 0) width = std::min(inner + 2 * pad, kit.width);
    // One just as wide as its words must not be broken by a rounding error.
    const float wrap = inner > width - 7.5f ? width - 8 : 0;
    const ImVec2 words = measure(label, theme::Type::strong, wrap);
    const float height = std::max(theme::kTarget, words.y + 16);
    mirror::Node node;
    node.role = mirror::Role::button;
    node.name = std::string(label);
    node.disabled = disabled;
    const Press press = press_area(kit, key, {width, height}, node);
    if (press.shown) {
        Paint paint = paint_of(look);
        if (disabled && paint.filled && theme::outlined())
            paint = {theme::colours().paper, theme::colours().ink, theme::colours().ink, true, true};
        const float opacity = disabled ? 0.45f : 1.0f;
        const auto ink = [&](std::uint32_t rgb) {
            return disabled ? theme::paint_disabled(rgb, opacity) : theme::paint(rgb);
        };
        ImDrawList& list = *ImGui::GetWindowDrawList();
        if (paint.filled)
            list.AddRectFilled(press.box.Min, press.box.Max, theme::paint(paint.ground, opacity),
                               theme::kRound);
        if (press.down || press.hovered)
            list.AddRectFilled(press.box.Min, press.box.Max,
                               theme::paint(theme::colours().ink, press.down ? 0.16f : 0.06f), theme::kRound);
        if (paint.edged) list.AddRect(press.box.Min, press.box.Max, ink(paint.edge), theme::kRound, 0, 1.2f);
        const ImVec2 at{press.box.Min.x + (width - words.x) / 2, press.box.Min.y + (height - words.y) / 2};
        draw_wrapped(at, label, theme::Type::strong, ink(paint.ink), wrap);
        focus_ring(press.box, theme::kRound, press.id);
    }
    return press.clicked && !disabled;
}

void draw_mark(Mark mark, ImVec2 c, float s, ImU32 colour, float w) {
    if (!ImGui::IsRectVisible({c.x - s, c.y - s}, {c.x + s, c.y + s})) return;
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const float h = s / 2;
    auto line = [&](float x1, float y1, float x2, float y2) {
        list.AddLine({c.x + x1 * h, c.y + y1 * h}, {c.x + x2 * h, c.y + y2 * h}, colour, w);
    };
    auto path = [&](std::initializer_list<ImVec2> points) {
        for (const ImVec2& p : points)
            list.PathLineTo({c.x + p.x * h, c.y + p.y * h});
        list.PathStroke(colour, 0, w);
    };
    switch (mark) {
        case Mark::back:
            path({{0.35f, -0.8f}, {-0.45f, 0}, {0.35f, 0.8f}});
            break;
        case Mark::close:
            line(-0.7f, -0.7f, 0.7f, 0.7f);
            line(-0.7f, 0.7f, 0.7f, -0.7f);
            break;
        case Mark::plus:
            line(-0.8f, 0, 0.8f, 0);
            line(0, -0.8f, 0, 0.8f);
            break;
        case Mark::minus:
            line(-0.8f, 0, 0.8f, 0);
            break;
        case Mark::check:
            path({{-0.8f, 0.05f}, {-0.2f, 0.65f}, {0.85f, -0.6f}});
            break;
        case Mark::undo:
        case Mark::redo: {
            const float d = mark == Mark::undo ? 1.0f : -1.0f;
            path({{-0.35f * d, -0.95f}, {-0.9f * d, -0.4f}, {-0.35f * d, 0.15f}});
            list.PathLineTo({c.x - 0.9f * d * h, c.y - 0.4f * h});
            list.PathBezierCubicCurveTo({c.x + 1.15f * d * h, c.y - 0.55f * h},
                                        {c.x + 1.15f * d * h, c.y + 0.85f * h},
                                        {c.x - 0.3f * d * h, c.y + 0.85f * h}, 14);
            list.PathStroke(colour, 0, w);
            break;
        }
        case Mark::dots:
            for (float x : {-0.75f, 0.0f, 0.75f})
                list.AddCircleFilled({c.x + x * h, c.y}, w * 1.05f, colour, 12);
            break;
        case Mark::share:
            path({{-0.35f, -0.2f},
                  {-0.75f, -0.2f},
                  {-0.75f, 0.95f},
                  {0.75f, 0.95f},
                  {0.75f, -0.2f},
                  {0.35f, -0.2f}});
            line(0, 0.4f, 0, -0.9f);
            path({{-0.4f, -0.5f}, {0, -0.95f}, {0.4f, -0.5f}});
            break;
        case Mark::book:
            list.AddRect({c.x - 0.8f * h, c.y - 0.9f * h}, {c.x + 0.8f * h, c.y + 0.9f * h}, colour, 2, 0, w);
            line(-0.4f, -0.9f, -0.4f, 0.9f);
            line(0, -0.4f, 0.5f, -0.4f);
            break;
        case Mark::formula:
            for (float y : {-0.7f, 0.0f, 0.7f}) {
                line(-0.9f, y, 0.15f, y);
                line(0.55f, y, 0.9f, y);
            }
            break;
        case Mark::batch:  // a scale: pan, stand, foot
            line(-0.9f, -0.35f, 0.9f, -0.35f);
            path({{-0.7f, -0.35f}, {-0.5f, 0.85f}, {0.5f, 0.85f}, {0.7f, -0.35f}});
            line(-0.2f, 0.35f, 0.2f, 0.35f);
            line(0, -0.35f, 0, -0.85f);
            break;
        case Mark::stock:  // a jar: lid, shoulder, what is in it
            list.AddRect({c.x - 0.55f * h, c.y - 0.95f * h}, {c.x + 0.55f * h, c.y - 0.55f * h}, colour, 1, 0,
                         w);
            list.AddRect({c.x - 0.75f * h, c.y - 0.4f * h}, {c.x + 0.75f * h, c.y + 0.95f * h}, colour, 3, 0,
                         w);
            line(-0.75f, 0.2f, 0.75f, 0.2f);
            break;
        case Mark::more:
            for (float y : {-0.65f, 0.0f, 0.65f})
                line(-0.85f, y, 0.85f, y);
            list.AddCircleFilled({c.x - 0.3f * h, c.y - 0.65f * h}, w * 1.5f, colour, 12);
            list.AddCircleFilled({c.x + 0.4f * h, c.y}, w * 1.5f, colour, 12);
            list.AddCircleFilled({c.x - 0.1f * h, c.y + 0.65f * h}, w * 1.5f, colour, 12);
            break;
        case Mark::rub_out:
            path({{-0.45f, -0.7f}, {1.0f, -0.7f}, {1.0f, 0.7f}, {-0.45f, 0.7f}, {-1.1f, 0}, {-0.45f, -0.7f}});
            line(0.05f, -0.3f, 0.6f, 0.3f);
            line(0.05f, 0.3f, 0.6f, -0.3f);
            break;
        case Mark::search:  // a glass with its handle
            list.AddCircle({c.x - 0.2f * h, c.y - 0.2f * h}, 0.65f * h, colour, 0, w);
            line(0.28f, 0.28f, 0.9f, 0.9f);
            break;
        case Mark::onward:
            path({{-0.3f, -0.7f}, {0.4f, 0}, {-0.3f, 0.7f}});
            break;
        case Mark::lock:
            list.AddRectFilled({c.x - 0.6f * h, c.y - 0.1f * h}, {c.x + 0.6f * h, c.y + 0.85f * h}, colour,
                               2);
            list.PathArcTo({c.x, c.y - 0.1f * h}, 0.4f * h, IM_PI, 2 * IM_PI, 12);
            list.PathStroke(colour, 0, w);
            break;
    }
}

bool mark_button(kit::Kit& kit, std::string_view key, Mark mark, std::string_view name, bool disabled) {
    mirror::Node node;
    node.role = mirror::Role::button;
    node.name = std::string(name);
    node.disabled = disabled;
    const Press press = press_area(kit, key, {theme::kTarget, theme::kTarget}, node);
    if (press.shown) {
        if (press.down || press.hovered)
            ImGui::GetWindowDrawList()->AddRectFilled(
                press.box.Min, press.box.Max, theme::paint(theme::colours().ink, press.down ? 0.16f : 0.06f),
                theme::kRound);
        draw_mark(mark, press.box.GetCenter(), theme::mark(18),
                  disabled ? theme::paint_disabled(theme::colours().ink, 0.3f)
                           : theme::paint(theme::colours().ink));
        focus_ring(press.box, theme::kRound, press.id);
    }
    return press.clicked && !disabled;
}

int choice(kit::Kit& kit, std::string_view key, std::string_view name,
           const std::vector<std::string>& options, int chosen) {
    ImGui::PushID(key.data(), key.data() + key.size());
    mirror::Node group;
    group.id = id_of("group");
    group.role = mirror::Role::region;
    group.name = std::string(name);
    mirror::open(group);
    int pressed = -1;
    const ImVec2 start = ImGui::GetCursorScreenPos();
    ImVec2 at = start;
    float total = 0;
    for (const std::string& option : options)
        total += std::max(theme::kTarget, measure(option, theme::Type::strong).x + 32) + 8;
    float below = start.y;
    const bool one_row = total - 8 <= kit.width;
    for (std::size_t i = 0; i < options.size(); ++i) {
        const float width =
            std::min(std::max(theme::kTarget, measure(options[i], theme::Type::strong).x + 32), kit.width);
        // One that is wider than the column has a row of its own, and as many lines as it needs.
        const ImVec2 words = measure(options[i], theme::Type::strong, kit.width - 20);
        if (!one_row && at.x > start.x && at.x + width > start.x + kit.width) at = {start.x, below + 8};
        const float height = std::max(theme::kTarget, words.y + 16);
        below = at.y + height;
        ImGui::SetCursorScreenPos(at);
        mirror::Node node;
        node.role = mirror::Role::button;
        node.name = options[i];
        const bool on = static_cast<int>(i) == chosen;
        node.toggle = true;
        node.checked = on;
        node.current = on;
        const Press press = press_area(kit, std::to_string(i), {width, height}, node);
        if (press.clicked) pressed = static_cast<int>(i);
        at.x += width + 8;
        if (!press.shown) continue;
        const theme::Colours& c = theme::colours();
        ImDrawList& list = *ImGui::GetWindowDrawList();
        list.AddRectFilled(press.box.Min, press.box.Max, theme::paint(on ? c.chosen : c.button),
                           theme::kRound);
        if (press.down || press.hovered)
            list.AddRectFilled(press.box.Min, press.box.Max, theme::paint(c.ink, press.down ? 0.16f : 0.06f),
                               theme::kRound);
        list.AddRect(press.box.Min, press.box.Max, theme::paint(on ? c.accent : c.edge), theme::kRound, 0,
                     on ? 2.0f : 1.2f);
        draw_wrapped({press.box.Min.x + (width - words.x) / 2, press.box.Min.y + (height - words.y) / 2},
                     options[i], theme::Type::strong, theme::paint(on ? c.on_chosen : c.on_button),
                     kit.width - 20);
        focus_ring(press.box, theme::kRound, press.id);
    }
    mirror::close();
    go_to(start.x, below);
    ImGui::PopID();
    return pressed;
}

bool tab(kit::Kit& kit, std::string_view key, Mark mark, std::string_view label, bool current, ImVec2 size,
         bool rail) {
    mirror::Node node;
    node.role = mirror::Role::tab;
    node.name = std::string(label);
    node.current = current;
    const Press press = press_area(kit, key, size, node);
    const theme::Colours& c = theme::colours();
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const ImU32 ink = theme::paint(current ? c.link : c.ink_soft);
    if (press.down || press.hovered)
        list.AddRectFilled(press.box.Min, press.box.Max, theme::paint(c.ink, press.down ? 0.12f : 0.05f),
                           theme::kRound);
    if (rail) {
        if (current) list.AddRectFilled(press.box.Min, press.box.Max, theme::paint(c.chosen), theme::kRound);
        draw_mark(mark, {press.box.Min.x + theme::grown(26), press.box.GetCenter().y}, theme::mark(18),
                  current ? theme::paint(c.on_chosen) : ink);
        draw_cut({press.box.Min.x + theme::grown(50),
                  press.box.GetCenter().y - theme::line_height(theme::Type::strong) / 2},
                 label, theme::Type::strong, current ? theme::paint(c.on_chosen) : ink,
                 size.x - theme::grown(50) - 6);
    } else {
        if (current)
            list.AddRectFilled({press.box.Min.x + 14, press.box.Min.y},
                               {press.box.Max.x - 14, press.box.Min.y + 3}, theme::paint(c.link), 2);
        const float square = theme::mark(17), low = press.box.Min.y + 11.5f + square;
        draw_mark(mark, {press.box.GetCenter().x, low - square / 2}, square, ink);
        const theme::Type type = size.x < theme::grown(80) ? theme::Type::label : theme::Type::small;
        const float width = measure(label, type).x;
        draw_cut({press.box.GetCenter().x - std::min(width, size.x) / 2, low + 5.5f}, label, type, ink,
                 size.x);
    }
    focus_ring(ImRect({press.box.Min.x + 3, press.box.Min.y + 3}, {press.box.Max.x - 3, press.box.Max.y - 3}),
               theme::kRound, press.id);
    return press.clicked;
}

}  // namespace widget
