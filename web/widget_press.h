// The base of everything that can be pressed: takes its place, joins the mirror, reacts to finger, mouse,
// keyboard and assistive technology alike, and draws the focus ring.
#pragma once

#include "imgui.h"
#include "imgui_internal.h"
#include "kit.h"
#include "mirror.h"

namespace widget {

struct Press {
    ImRect box;
    std::uint32_t id = 0;
    bool clicked = false;  // released inside, or pressed by other means
    bool down = false;     // show it pressed
    bool menu = false;     // long press, right button or menu key
    bool hovered = false;  // by a mouse
    bool shown = false;    // not clipped away
};

// Takes `size` at the cursor. `node` gives role, name, state; its id and rectangle are filled in here.
Press press_area(kit::Kit& kit, std::string_view key, ImVec2 size, mirror::Node node);

std::uint32_t id_of(std::string_view key);        // within the current ID scope
void fill_place(mirror::Node& node, ImRect box);  // rectangle and visibility
void focus_ring(ImRect box, float rounding, std::uint32_t id);

// The ground of a part that stands out, with an edge where grounds alone do not tell.
void draw_panel(ImRect box, std::uint32_t ground_rgb, std::uint32_t edge_rgb);

void gap(float pixels);
// Two columns of equal width: begin, draw the first, turn, draw the second, end. Where the letters are too
// large for that, the second goes beneath the first.
struct Columns {
    ImVec2 start;
    float width = 0, low = 0;
    bool stacked = false;
};
Columns begin_columns(kit::Kit& kit);
void next_column(kit::Kit& kit, Columns& columns);
void end_columns(kit::Kit& kit, Columns& columns);
// Leaves the cursor at the left edge `left` on `y`, having used the height down to there.
void go_to(float left, float y);

}  // namespace widget
