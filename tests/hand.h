// What a person does on the page, for tests without a browser: opens it, presses by name, writes into fields,
// puts a finger on the canvas. Everything goes the way it goes in a browser, through the platform's queue and
// the program's own step. The page is one for the whole test program, so opening it anew empties what there
// was; the library's context and its fonts stay, because they take long to make.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "doctest/doctest.h"
#include "imgui.h"
#include "web/app.h"
#include "web/mirror.h"
#include "web/platform_native.h"

namespace hand {

using mirror::Role;

inline void settle() {
    platform::native::settle(app::step);
}

inline void push(platform::Kind kind, std::uint32_t node = 0, std::string text = {}) {
    platform::Event event;
    event.kind = kind;
    event.node = node;
    event.text = std::move(text);
    platform::native::push(std::move(event));
}

// As if the page had been opened; what is stored stays stored.
inline void open_page(float width = 360, float height = 640, std::string fragment = {}) {
    static bool started = false;
    platform::native::start_over();
    platform::native::window().width = width;
    platform::native::window().height = height;
    mirror::start_over();
    app::App& app = app::state();
    if (started) {
        app::App fresh;
        fresh.presets = std::move(app.presets);
        app = std::move(fresh);
        app.kit.words = &app.words;
        ImGui::GetIO().ClearEventsQueue();
        app.keeping.start();
    } else {
        app::start();
        started = true;
    }
    push(platform::Kind::resized);
    if (!fragment.empty()) push(platform::Kind::fragment, 0, std::move(fragment));
    settle();
}

// Test fixture: nothing stored, the page just opened on a phone.
struct FirstVisit {
    FirstVisit() {
        platform::native::store().clear();
        platform::native::set_storage(platform::native::Storage::works);
        open_page();
    }
    app::App& app = app::state();
};

inline void resize(float width, float height) {
    platform::native::window().width = width;
    platform::native::window().height = height;
    push(platform::Kind::resized);
    settle();
}

inline bool is_field(Role role) {
    return role == Role::field_text || role == Role::field_decimal || role == Role::field_search ||
           role == Role::field_note;
}
inline bool is_pressed(Role role) {
    return role == Role::button || role == Role::tab || role == Role::checkbox;
}

inline const mirror::Node* see(Role role, std::string_view name) {
    for (const mirror::Node& node : mirror::nodes())
        if (node.role == role && node.name == name) return &node;
    return nullptr;
}
inline const mirror::Node* see_field(std::string_view name) {
    for (const mirror::Node& node : mirror::nodes())
        if (is_field(node.role) && node.name == name) return &node;
    return nullptr;
}
inline const mirror::Node& found(const mirror::Node* node, std::string_view name) {
    REQUIRE_MESSAGE(node != nullptr, "there is no ", name);
    return *node;
}
inline const mirror::Node& button(std::string_view name) {
    return found(see(Role::button, name), name);
}
inline const mirror::Node& field(std::string_view name) {
    return found(see_field(name), name);
}
// Is a text or message that contains these words on the page?
inline bool reads(std::string_view words) {
    for (const mirror::Node& node : mirror::nodes())
        if (node.name.find(words) != std::string::npos) return true;
    return false;
}

// By the mirror, as assistive technology and the keyboard do it.
inline void press(std::string_view name, Role role = Role::button) {
    push(platform::Kind::node_click, found(see(role, name), name).id);
    settle();
}
inline void go(std::string_view place) {
    press(place, Role::tab);
}
// Puts the whole text into a field, letter by letter, and leaves it.
inline void write(std::string_view name, const std::string& text) {
    const std::uint32_t id = field(name).id;
    push(platform::Kind::node_focus, id);
    settle();
    if (text.empty()) push(platform::Kind::node_input, id, "");
    for (std::size_t end = 1; end <= text.size(); ++end)
        if (end == text.size() || (static_cast<unsigned char>(text[end]) & 0xC0) != 0x80) {
            push(platform::Kind::node_input, id, text.substr(0, end));
            settle();
        }
    push(platform::Kind::node_blur, id);
    settle();
}
inline void key(const std::string& name, bool control = false, bool shift = false) {
    platform::Event event;
    event.kind = platform::Kind::key_down;
    event.text = name;
    event.control = control;
    event.shift = shift;
    platform::native::push(std::move(event));
    settle();
}

// By a finger on the canvas.
inline void finger(platform::Kind kind, double x, double y) {
    platform::Event event;
    event.kind = kind;
    event.pointer = platform::Pointer::touch;
    event.pointer_id = 1;
    event.x = x;
    event.y = y;
    platform::native::push(std::move(event));
    settle();
}
inline void tap(double x, double y) {
    finger(platform::Kind::pointer_down, x, y);
    finger(platform::Kind::pointer_up, x, y);
}
inline void tap(const mirror::Node& node) {
    REQUIRE_MESSAGE(node.visible, node.name, " is not in view");
    tap(node.x + node.width / 2, node.y + node.height / 2);
}
inline void drag(double x, double y, double to_x, double to_y) {
    finger(platform::Kind::pointer_down, x, y);
    for (int i = 1; i <= 8; ++i)
        finger(platform::Kind::pointer_move, x + (to_x - x) * i / 8, y + (to_y - y) * i / 8);
    finger(platform::Kind::pointer_up, to_x, to_y);
}

// Time passes and what it brings is drawn.
inline void wait(double ms) {
    platform::native::advance(ms);
    settle();
}

}  // namespace hand
