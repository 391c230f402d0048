// A box to tick beside its words: one of several that may hold together.
#pragma once

#include <string_view>

#include "kit.h"

namespace widget {

// True: it was pressed, and whoever holds the value turns it over.
bool tick(kit::Kit& kit, std::string_view key, std::string_view label, bool ticked);

}  // namespace widget
