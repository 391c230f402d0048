// Parts of the page (rows of a long list, a bar, a group of buttons) that need not be drawn anew while
// nothing happens but scrolling. One out of sight is not drawn to be known: its room and its nodes in the
// mirror are those of the frame before, elsewhere. Of one wholly in sight, with nothing pointing at it, the
// triangles are too.
#pragma once

#include <functional>
#include <string_view>

#include "kit.h"

namespace kept_rows {

// Whether something has happened since the frame before that a row may answer to, other than scrolling.
void begin_frame(bool happened);

// A row that `draw` draws, from the left edge of the column down to where it leaves the cursor, by what the
// recipe, the words and the theme say and by what presses it, nothing else. It must change nothing while
// nothing does, begin no window, and stand in one that does not scroll sideways.
void row(kit::Kit& kit, std::string_view key, const std::function<void()>& draw);

int drawn();  // rows in this frame so far; for tests

}  // namespace kept_rows
