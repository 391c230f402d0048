// See kept_rows.h. Holds for every row where it stood in the frame before; who is not drawn for a frame is
// forgotten.
#include "kept_rows.h"

#include <cstdint>
#include <unordered_map>
#include <vector>

#include "imgui_internal.h"
#include "mirror.h"
#include "widget_press.h"

namespace kept_rows {
namespace {

struct Row {
    int frame = -1;  // that it stood in
    float left = 0, top = 0, width = 0, height = 0;
    std::size_t first_node = 0, nodes = 0;
    std::vector<std::uint32_t> fields;  // those of kit.order
    bool out_of_sight = false;
};

struct State {
    std::unordered_map<std::uint32_t, Row> rows;  // by id
    bool happened = true;
    int drawn = 0;
};
State state;

constexpr std::size_t kMostRows = 1000;

bool meets_sight(float top, float height) {
    const ImRect& seen = ImGui::GetCurrentWindow()->ClipRect;
    return top + height >= seen.Min.y && top <= seen.Max.y;
}

}  // namespace

void begin_frame(bool happened) {
    state.happened = happened;
    state.drawn = 0;
    const int before = ImGui::GetFrameCount() - 1;
    if (state.rows.size() > kMostRows)
        std::erase_if(state.rows, [&](const auto& one) { return one.second.frame < before; });
}

void row(kit::Kit& kit, std::string_view key, const std::function<void()>& draw) {
    const int frame = ImGui::GetFrameCount();
    const ImVec2 start = ImGui::GetCursorScreenPos();
    Row& row = state.rows[widget::id_of(key)];
    const std::size_t first_node = mirror::count(), first_field = kit.order.size();
    const bool stands = !state.happened && row.frame == frame - 1 && row.out_of_sight &&
                        row.width == kit.width && !meets_sight(start.y, row.height);
    if (stands) {
        mirror::repeat(row.first_node, row.nodes, start.x - row.left, start.y - row.top);
        kit.order.insert(kit.order.end(), row.fields.begin(), row.fields.end());
        widget::go_to(start.x, start.y + row.height);
    } else {
        draw();
        ++state.drawn;
        row.height = ImGui::GetCursorScreenPos().y - start.y;
        row.width = kit.width;
        row.nodes = mirror::count() - first_node;
        row.fields.assign(kit.order.begin() + static_cast<std::ptrdiff_t>(first_field), kit.order.end());
        row.out_of_sight = !meets_sight(start.y, row.height);
    }
    row.frame = frame;
    row.left = start.x;
    row.top = start.y;
    row.first_node = first_node;
}

int drawn() {
    return state.drawn;
}

}  // namespace kept_rows
