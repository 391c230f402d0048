// See widget_chart.h.
#include "widget_chart.h"

#include <algorithm>

#include "mirror.h"
#include "theme.h"
#include "widget_press.h"
#include "widget_text.h"

namespace widget {
namespace {

constexpr float kHigh = 32, kBar = 9, kStep = 6;  // of the bar of shares, of another; between strokes

void fill_with(ImRect box, unsigned fill) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const theme::Colours& c = theme::colours();
    const ImU32 ink = theme::paint(c.ink);
    list.AddRectFilled(box.Min, box.Max, fill & kFull ? theme::paint(c.accent) : theme::paint(c.card));
    const float width = box.GetWidth(), height = box.GetHeight();
    for (float at = kStep / 2; at < width + height; at += kStep) {
        // Where a slanting stroke enters and leaves the box, from its left edge.
        const float in = std::max(0.0f, at - height), out = std::min(width, at), rise = height - at;
        const auto stroke = [&](float x, float y, float to_x, float to_y) {
            list.AddLine({box.Min.x + x, box.Min.y + y}, {box.Min.x + to_x, box.Min.y + to_y}, ink, 1.5f);
        };
        if (fill & kRising) stroke(in, height - in - rise, out, height - out - rise);
        if (fill & kFalling) stroke(in, in + rise, out, out + rise);
        if (fill & kUpright && at < width) stroke(at, 0, at, height);
        if (fill & kLevel && at < height) stroke(0, at, width, at);
    }
    list.AddRect(box.Min, box.Max, ink, 0, 0, 1.5f);
}

void told(std::string_view key, ImRect box, std::string words) {
    mirror::Node node;
    node.id = id_of(key);
    node.role = mirror::Role::text;
    node.name = std::move(words);
    fill_place(node, box);
    mirror::add(node);
    ImGui::Dummy(box.GetSize());
}

// A filled square and words; the height they took.
float legend(kit::Kit& kit, ImVec2 at, unsigned fill, std::string_view words) {
    const float side = theme::mark(18), indent = side + 10;
    const ImVec2 size = measure(words, theme::Type::body, kit.width - indent);
    const float height = std::max(side, size.y) + 6, middle = at.y + height / 2;
    fill_with({{at.x, middle - side / 2}, {at.x + side, middle + side / 2}}, fill);
    draw_wrapped({at.x + indent, middle - size.y / 2}, words, theme::Type::body,
                 theme::paint(theme::colours().ink), kit.width - indent);
    return height;
}

float legend_height(const kit::Kit& kit, std::string_view words) {
    const float side = theme::mark(18);
    return std::max(side, measure(words, theme::Type::body, kit.width - side - 10).y) + 6;
}

}  // namespace

void shares(kit::Kit& kit, std::string_view key, std::string_view name, const std::vector<Share>& parts) {
    const ImVec2 start = ImGui::GetCursorScreenPos();
    float height = kHigh + 8;
    std::string words(name);
    for (std::size_t i = 0; i < parts.size(); ++i) {
        words += (i == 0 ? ": " : ", ") + parts[i].words;
        height += legend_height(kit, parts[i].words);
    }
    const ImRect box(start, {start.x + kit.width, start.y + height});
    told(key, box, std::move(words));
    if (!ImGui::IsRectVisible(box.Min, box.Max)) return;
    double before = 0;
    float y = start.y + kHigh + 8;
    for (const Share& part : parts) {
        const float left = start.x + kit.width * static_cast<float>(std::min(before, 1.0));
        before += part.share;
        const float right = start.x + kit.width * static_cast<float>(std::min(before, 1.0));
        fill_with({{left, start.y}, {std::max(right, left + 2), start.y + kHigh}}, part.fill);
        y += legend(kit, {start.x, y}, part.fill, part.words);
    }
}

void bar(kit::Kit& kit, std::string_view key, const Bar& spec) {
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const ImVec2 figures = measure(spec.figures, theme::Type::body, kit.width),
                 title = measure(spec.title, theme::Type::body, kit.width);
    const bool beneath = title.x + figures.x + 12 > kit.width;  // not on one line
    const float line = beneath ? title.y + figures.y : std::max(title.y, figures.y);
    const float height = line + 4 + kBar * static_cast<float>(spec.lengths.size()) + 8;
    const ImRect box(start, {start.x + kit.width, start.y + height});
    told(key, box, spec.title + ", " + spec.figures);
    if (!ImGui::IsRectVisible(box.Min, box.Max)) return;
    const ImU32 ink = theme::paint(theme::colours().ink);
    draw_wrapped(start, spec.title, theme::Type::body, ink, kit.width);
    draw_wrapped({start.x + kit.width - figures.x, start.y + line - figures.y}, spec.figures,
                 theme::Type::body, ink, kit.width);
    float y = start.y + line + 4;
    for (const Length& one : spec.lengths) {
        const float width = kit.width * static_cast<float>(std::clamp(one.of, 0.0, 1.0));
        if (one.of > 0) fill_with({{start.x, y}, {start.x + std::max(width, 2.0f), y + kBar}}, one.fill);
        y += kBar;
    }
}

void swatch(kit::Kit& kit, std::string_view key, unsigned fill, std::string_view words) {
    const ImVec2 start = ImGui::GetCursorScreenPos();
    told(key, {start, {start.x + kit.width, start.y + legend_height(kit, words)}}, std::string(words));
    legend(kit, start, fill, words);
}

}  // namespace widget
