// Fields for words and for numbers. The canvas draws them; while one is edited, the mirror's real input lies
// over it and is the field. A finger on a number opens the keypad instead. What can't be read stays in the
// field with the reason.
#pragma once

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "engine/result.h"
#include "kit.h"

namespace widget {

struct TextSpec {
    std::string name;  // drawn above the field and read aloud; with `bare` only read aloud
    std::string hint;  // drawn in the empty field
    bool bare = false;
    bool note = false;  // several lines
    bool search = false;
    bool last = false;  // the phone's enter key says "done"
    int most_bytes = 0;
    std::size_t most_drawn =
        0;                 // bytes that the canvas shows; 0: all. The field being edited holds everything
    bool address = false;  // of the web: the phone's keyboard for it
};
// The new text after each change, letter by letter.
std::optional<std::string> text_field(kit::Kit& kit, std::string_view key, std::string_view value,
                                      const TextSpec& spec);

struct NumberSpec {
    std::string name;   // read aloud, and drawn above unless `label` or `bare`
    std::string label;  // drawn above instead, where the place makes clear what it belongs to
    std::string unit;   // drawn after the number
    std::function<result::Result<std::int64_t>(std::string_view)>
        read;          // text to the grid; arithmetic included
    std::string hint;  // drawn when there is no number
    bool bare = false;
    bool may_be_empty = false;
    bool large = false;
    bool disabled = false;
    float width = 0;  // 0: the column
};
struct NumberChange {
    bool changed = false;
    std::optional<std::int64_t> value;  // nothing: emptied
};
NumberChange number_field(kit::Kit& kit, std::string_view key, std::optional<std::int64_t> value,
                          const NumberSpec& spec);

}  // namespace widget
