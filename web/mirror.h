// The register of everything a person can perceive or use on the canvas, kept in step with real DOM elements
// by the shell. Every widget adds itself each frame, rows scrolled out of sight included, in reading order;
// what assistive technology, keyboard or tests do to the elements comes back as clicks and texts for the same
// widget.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "platform.h"

namespace mirror {

enum class Role {
    // containers: open(…) … close()
    navigation,
    main,
    region,
    list,
    item,
    table,
    row,
    dialog,
    // leaves: add(…)
    heading,
    text,
    button,
    checkbox,
    tab,
    cell,
    column_header,
    row_header,
    field_text,     // one line of text
    field_decimal,  // one line, inputmode decimal
    field_search,   // one line, enter key "search"
    field_address,  // one line, inputmode url
    field_note,     // several lines
    status,
    alert,  // live messages: spoken when the text changes
};

struct Node {
    std::uint32_t id = 0;  // the same from frame to frame; ImGui's id of the widget; 0: given by place
    Role role = Role::text;
    std::string name;                           // accessible name
    std::string value;                          // of a field: its text
    std::string description;                    // read after the name: an error, a unit, a hint
    float x = 0, y = 0, width = 0, height = 0;  // CSS pixels in the canvas
    int level = 0;                              // of a heading
    bool disabled = false, checked = false, current = false, expanded = false, has_popup = false,
         invalid = false;
    bool toggle = false;      // of a button: said to be pressed or not pressed, by `checked`
    bool visible = true;      // not clipped away; a field that is not can't show its native twin
    bool large = false;       // of a field: drawn in the large type
    int most_bytes = 0;       // of a text field: 0 no bound
    bool last_field = false;  // enter key "done" instead of "next"
    bool operator==(const Node&) const = default;
};

void begin_frame();
void open(Node container);
void close();
void add(Node leaf);
bool used(std::uint32_t id);  // given to a node of this frame already

// Nodes of the frame before stand in this one as well, elsewhere: `first` and `count` as count() gave them.
std::size_t count();  // nodes of this frame so far
void repeat(std::size_t first, std::size_t count, float right, float down);
bool answered();  // nothing that came back is still waiting for its widget

// After a settled frame: hands the register to the shell if it differs from what was handed before.
// While a dialog is open, everything outside it is inert.
void end_frame(bool settled);

// What came back since the last frame. take_* answer once.
void receive(const platform::Event& event);  // node_* events
bool take_click(std::uint32_t id);
bool take_menu(std::uint32_t id);
std::optional<std::string> take_input(std::uint32_t id);  // the newest text
int take_enter(std::uint32_t id);  // 1: on to the next, -1: back to the one before, 0: was not pressed
bool take_blur(std::uint32_t id);
bool focused(std::uint32_t id);             // DOM focus is there: draw the ring
bool is_field(std::uint32_t id);            // of the last finished frame
std::uint32_t focus();                      // 0: nowhere
bool take_focus_arrived(std::uint32_t id);  // once, on arrival: scroll it into view

const std::vector<Node>& nodes();                      // of the last finished frame, for tests
std::uint32_t find(Role role, std::string_view name);  // 0: not there; for tests and moving the focus
int clashes();      // ids given twice in the last finished frame; a fault, tests want 0
void start_over();  // an empty register; for tests

}  // namespace mirror
