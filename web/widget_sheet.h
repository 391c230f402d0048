// A sheet over the page: from the bottom on a phone, in the middle of a wide window. One at a time; what lies
// beneath is inert. Closed by its cross, by Escape, by the browser's back and by a press beside it.
#pragma once

#include <string_view>

#include "kit.h"

namespace widget {

struct SheetPlace {
    ImVec2 window;       // whole canvas
    float bottom = 0;    // taken at the bottom: keypad, phone keyboard, safe area
    float top = 0;       // safe area
    bool wide = false;   // as wide as a paper needs, where there is room
    bool whole = false;  // keeps its height whatever it holds: a list that a search shortens
};
// False: it was asked to close (nothing more is to be drawn, end_sheet is not to be called).
bool begin_sheet(kit::Kit& kit, std::string_view key, std::string_view title, const SheetPlace& place,
                 bool escape);
void end_sheet(kit::Kit& kit);

}  // namespace widget
