// From pointer events to the library: a finger's gestures become queued taps, scrolling and a line's menu; a
// mouse goes straight in. Scrolling moves the list under the finger's start, with inertia unless reduced
// motion is asked for.
#pragma once

#include "kit.h"
#include "platform.h"

namespace touch {

void receive(const platform::Event& event, kit::Kit& kit);
void time_passes(double now_ms, kit::Kit& kit);  // long press, gliding; asks for its own next frame or wake

bool moving();  // a list follows the finger or the wheel or glides: it will come to rest by a later step

}  // namespace touch
