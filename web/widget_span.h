// What something may be, on one scale for a whole list: the line from the least to the most, the bar that
// most of it lies in, a stroke at the mean. Each has a shape of its own, so that it is read in black and
// white too.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "kit.h"

namespace widget {

struct SpanSpec {
    std::string title, under;  // the figures in words
    double low = 0, high = 0;  // shares of the scale, 0 to 1
    struct Inner {
        double low = 0, high = 0, mean = 0;
    };
    std::optional<Inner> inner;
    bool plain = false;  // not to be pressed
};
// True: it was pressed.
bool span(kit::Kit& kit, std::string_view key, const SpanSpec& spec);

}  // namespace widget
