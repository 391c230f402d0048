// Buttons, switches and the row of choices of which one holds.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "kit.h"

namespace widget {

enum class Look { primary, plain, quiet, danger };

// `key` tells it apart within the scope; `label` is what is read. width 0: as wide as its words need.
bool button(kit::Kit& kit, std::string_view key, std::string_view label, Look look = Look::plain,
            float width = 0, bool disabled = false);

enum class Mark {
    back,
    close,
    undo,
    redo,
    dots,
    plus,
    minus,
    share,
    book,
    formula,
    batch,
    stock,
    more,
    lock,
    check,
    rub_out,
    search,
    onward
};
// A square button with a drawn mark; `name` is read aloud.
bool mark_button(kit::Kit& kit, std::string_view key, Mark mark, std::string_view name,
                 bool disabled = false);
void draw_mark(Mark mark, ImVec2 centre, float size, ImU32 colour, float weight = 2.0f);

// One of several; returns the index pressed, or -1. Wraps onto further lines where the column is narrow.
int choice(kit::Kit& kit, std::string_view key, std::string_view name,
           const std::vector<std::string>& options, int chosen);

// A place of the bottom bar or left rail.
bool tab(kit::Kit& kit, std::string_view key, Mark mark, std::string_view label, bool current, ImVec2 size,
         bool rail);

}  // namespace widget
