// The large keypad for numbers at the bench: digits, decimal sign, plain arithmetic such as 250/12, on to the
// next line or back.
#pragma once

#include <string_view>

#include "kit.h"

namespace widget {

float keypad_height();
// Draws it in the current window at the cursor, `kit.width` wide.
void keypad(kit::Kit& kit);
// A key of a real keyboard while the keypad is open; false when it means nothing to it. With `shift` Enter
// and Tab go back.
bool keypad_key(kit::Kit& kit, std::string_view key, bool shift);
// After the fields were drawn: a wish to go on or back is turned into that field's keypad or focus.
void keypad_go_on(kit::Kit& kit);

}  // namespace widget
