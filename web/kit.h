// What every widget needs of the moment: where a finger presses, which field has a draft, which focus is
// wished for. One Kit lives in the app; widgets know this and the mirror, never the app.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "engine/decimal.h"
#include "engine/words.h"
#include "imgui.h"

namespace kit {

struct Draft {  // what stands in a field that is being edited or can't be read yet
    std::string text;
    std::string problem;  // sentence, "" when readable
    std::optional<std::int64_t>
        before;  // the number before editing began: holds while the text can't be read
};

struct Keypad {
    std::uint32_t target = 0;  // field it writes to; 0: closed
    std::string name;          // of that field
    std::string text;
    bool fresh = false;     // the next key replaces the text
    bool changed = false;   // the field has not taken the text yet
    bool arriving = false;  // the field is to hand over its text
    bool open() const { return target != 0; }
};

struct Kit {
    const words::Table* words = nullptr;
    float width = 0;               // of the column being drawn
    bool finger = false;           // the last press was a finger: numbers open the keypad
    ImVec2 finger_at{-1, -1};      // a finger is down here and may become a tap
    ImVec2 long_press_at{-1, -1};  // a long press happened here in this frame
    std::map<std::uint32_t, Draft> drafts;
    Keypad keypad;
    std::vector<std::uint32_t> order;  // decimal fields of this frame, as drawn
    std::uint32_t wish_focus = 0;      // field whose native twin shall take the focus after this frame
    bool wish_all = false;             // and select its text
    bool wish_blur = false;            // leave the field: the phone's keyboard goes down
    std::uint32_t step_from = 0;       // go from this number field to the next one
    bool step_back = false;            // or to the one before
    std::uint32_t wish_view = 0;       // widget to be scrolled into view
    std::string sheet;                 // key of the sheet that was measured
    float sheet_height = 0;            // of what it holds; 0: not measured yet
    bool beneath_sheet = false;        // what is drawn now lies under a sheet

    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return words::say(*words, key, arguments);
    }
};

}  // namespace kit
