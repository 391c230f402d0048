// See kept_rows.h. Holds for every row where it stood in the frame before, and its triangles when it was
// drawn last; who is not drawn for a frame is forgotten.
#include "kept_rows.h"

#include <algorithm>
#include <cstdint>
#include <unordered_map>
#include <vector>

#include "drawn_items.h"
#include "imgui_internal.h"
#include "letters.h"
#include "mirror.h"
#include "widget_press.h"

namespace kept_rows {
namespace {

// What was added to a list of triangles, as it lies there. The library leaves out what would be out of sight:
// whole is only the picture of what was wholly seen.
struct Picture {
    bool whole = false;
    float top = 0;  // of the row, when it was drawn
    std::vector<ImDrawVert> corners;
    std::vector<ImDrawIdx> triangles;  // counted from the first of these corners
};

struct Row {
    int frame = -1;  // that it stood in
    float left = 0, top = 0, width = 0, height = 0;
    std::size_t first_node = 0, nodes = 0;
    std::vector<std::uint32_t> fields;  // those of kit.order
    std::vector<std::uint32_t> items;   // those of drawn_items
    bool out_of_sight = false;
    Picture picture;
};

struct State {
    std::unordered_map<std::uint32_t, Row> rows;  // by id
    bool happened = true;
    int grown = 0;  // see letters
    int drawn = 0;
};
State state;

constexpr std::size_t kMostRows = 1000;

bool meets_sight(float top, float height) {
    const ImRect& seen = ImGui::GetCurrentWindow()->ClipRect;
    return top + height >= seen.Min.y && top <= seen.Max.y;
}

bool within_sight(float top, float height) {
    const ImRect& seen = ImGui::GetCurrentWindow()->ClipRect;
    return top >= seen.Min.y && top + height <= seen.Max.y;
}

bool pointed_at(const kit::Kit& kit, float top, float height) {
    const float mouse = ImGui::GetIO().MousePos.y;
    for (const float y : {mouse, kit.finger_at.y, kit.long_press_at.y})
        if (y >= top && y <= top + height) return true;
    return false;
}

// Triangles with another texture, as a text has that the browser draws, begin a command of their own: of such
// a row no picture is kept.
class Taking {
  public:
    explicit Taking(const ImDrawList& list)
        : list_(list),
          corners_(list.VtxBuffer.Size),
          triangles_(list.IdxBuffer.Size),
          commands_(list.CmdBuffer.Size),
          base_(list._VtxCurrentIdx) {}
    bool into(Picture& picture) const {
        if (list_.CmdBuffer.Size != commands_) return false;
        picture.corners.assign(list_.VtxBuffer.Data + corners_, list_.VtxBuffer.Data + list_.VtxBuffer.Size);
        picture.triangles.assign(list_.IdxBuffer.Data + triangles_,
                                 list_.IdxBuffer.Data + list_.IdxBuffer.Size);
        for (ImDrawIdx& corner : picture.triangles)
            corner = static_cast<ImDrawIdx>(corner - base_);
        return true;
    }

  private:
    const ImDrawList& list_;
    int corners_, triangles_, commands_;
    unsigned int base_;
};

void draw_again(const Picture& picture, float down) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    const std::size_t corners = picture.corners.size();
    list.PrimReserve(static_cast<int>(picture.triangles.size()), static_cast<int>(corners));
    for (const ImDrawIdx corner : picture.triangles)
        *list._IdxWritePtr++ = static_cast<ImDrawIdx>(list._VtxCurrentIdx + corner);
    for (const ImDrawVert& corner : picture.corners) {
        *list._VtxWritePtr = corner;
        list._VtxWritePtr++->pos.y += down;
    }
    list._VtxCurrentIdx += static_cast<unsigned int>(corners);
}

}  // namespace

void begin_frame(bool happened) {
    state.happened = happened || letters::grown() != state.grown;
    state.grown = letters::grown();
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
    const bool stands = !state.happened && row.frame == frame - 1 && row.width == kit.width;
    const bool unseen = stands && row.out_of_sight && !meets_sight(start.y, row.height);
    const bool as_before = stands && row.picture.whole && row.left == start.x &&
                           within_sight(start.y, row.height) && !pointed_at(kit, start.y, row.height) &&
                           ImGui::GetActiveID() == 0;
    if (unseen || as_before) {
        if (as_before) {
            draw_again(row.picture, start.y - row.picture.top);
            drawn_items::repeat(row.items);
        }
        mirror::repeat(row.first_node, row.nodes, start.x - row.left, start.y - row.top);
        kit.order.insert(kit.order.end(), row.fields.begin(), row.fields.end());
        widget::go_to(start.x, start.y + row.height);
    } else {
        const std::size_t first_item = drawn_items::ids().size();
        const Taking taking(*ImGui::GetWindowDrawList());
        draw();
        ++state.drawn;
        row.height = ImGui::GetCursorScreenPos().y - start.y;
        row.width = kit.width;
        row.nodes = mirror::count() - first_node;
        row.fields.assign(kit.order.begin() + static_cast<std::ptrdiff_t>(first_field), kit.order.end());
        row.items.assign(drawn_items::ids().begin() + static_cast<std::ptrdiff_t>(first_item),
                         drawn_items::ids().end());
        row.out_of_sight = !meets_sight(start.y, row.height);
        row.picture.top = start.y;
        row.picture.whole = within_sight(start.y, row.height) && !pointed_at(kit, start.y, row.height) &&
                            taking.into(row.picture);
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
