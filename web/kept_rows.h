// Rows of a long list that lie out of sight: while nothing happens but scrolling they need not be drawn to be
// known. Their room and their nodes in the mirror are those of the frame before, elsewhere.
#pragma once

#include <functional>
#include <string_view>

#include "kit.h"

namespace kept_rows {

// Whether something has happened since the frame before that a row may answer to, other than scrolling.
void begin_frame(bool happened);

// A row that `draw` draws, from the left edge of the column down to where it leaves the cursor. It must
// change nothing while it is out of sight, and stand in a window that does not scroll sideways.
void row(kit::Kit& kit, std::string_view key, const std::function<void()>& draw);

int drawn();  // rows in this frame so far; for tests

}  // namespace kept_rows
