// A row of a list: words at the left, a figure or mark at the right, a menu behind three dots or a long
// press.
#pragma once

#include <string>
#include <string_view>

#include "engine/finding.h"
#include "kit.h"

namespace widget {

struct RowSpec {
    std::string title, under;  // under: small, soft
    std::string right;         // a figure at the right edge
    std::string menu_name;     // read aloud for the three dots; "" when the row has no menu
    bool chosen = false;
    bool plain = false;   // not to be pressed
    bool onward = false;  // leads to a sheet: shows it at the right edge
};
struct RowPress {
    bool pressed = false, menu = false;
};
RowPress row(kit::Kit& kit, std::string_view key, const RowSpec& spec);

// A remark of the checks: shape and word for its severity, sentence, what to do, source with standing.
void finding_badge(kit::Kit& kit, finding::Severity severity, std::string_view sentence,
                   std::string_view source, std::string_view advice = {});

void hairline(kit::Kit& kit);

// Draws a card behind what comes between begin and end, and insets the column.
void begin_card(kit::Kit& kit);
void end_card(kit::Kit& kit);

}  // namespace widget
