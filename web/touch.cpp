// See touch.h. Leans on the library's window list to find what lies under a point.
#include "touch.h"

#include <algorithm>
#include <cfloat>
#include <cmath>

#include "gesture.h"
#include "imgui.h"
#include "imgui_internal.h"
#include "mirror.h"

namespace touch {
namespace {

constexpr double kWheelRestMs = 120;  // longer than a turning wheel leaves between two events

struct State {
    gesture::Machine machine;
    ImGuiID scrolling = 0;  // window that belongs to the finger
    double velocity = 0;    // of the glide, CSS px per second
    double glide_ms = 0;    // when it was last moved
    bool gliding = false;
    bool dragging = false;
    double left_over = 0;       // part of a pixel not scrolled yet
    ImVec2 mouse{-1, -1};       // where the wheel turns: the library learns of it only with its next frame
    double wheel_rests_ms = 0;  // when it counts as at rest; 0: it does
};
State state;

ImGuiWindow* scrollable_at(ImVec2 at) {
    ImGuiContext& g = *GImGui;
    for (int i = g.Windows.Size - 1; i >= 0; --i) {
        ImGuiWindow* window = g.Windows[i];
        if (!window->WasActive || window->Hidden || (window->Flags & ImGuiWindowFlags_NoMouseInputs))
            continue;
        if (!window->OuterRectClipped.Contains(at)) continue;
        while (window && window->ScrollMax.y <= 0)
            window = window->ParentWindow;
        return window;
    }
    return nullptr;
}

// Moves the list; false at its end.
bool scroll_by(ImGuiID id, double pixels) {
    ImGuiWindow* window = ImGui::FindWindowByID(id);
    if (!window) return false;
    const double wanted = window->Scroll.y + pixels + state.left_over;
    const double clamped = std::clamp(wanted, 0.0, static_cast<double>(window->ScrollMax.y));
    const double whole = std::floor(clamped);
    state.left_over = clamped - whole;
    window->Scroll.y = static_cast<float>(whole);
    window->ScrollTarget.y = FLT_MAX;
    return wanted == clamped;
}

void tap(ImVec2 at) {
    if (mirror::focus() != 0) platform::blur_node();  // the finger leaves the field it was in
    ImGuiIO& io = ImGui::GetIO();
    io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
    io.AddMousePosEvent(at.x, at.y);
    io.AddMouseButtonEvent(ImGuiMouseButton_Left, true);
    io.AddMouseButtonEvent(ImGuiMouseButton_Left, false);
    io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);  // no hover is left behind
}

void mean(const gesture::Answer& answer, kit::Kit& kit) {
    const ImVec2 at(static_cast<float>(answer.x), static_cast<float>(answer.y));
    if (answer.meaning != gesture::Meaning::none) kit.finger_at = {-1, -1};
    if (answer.meaning == gesture::Meaning::fling || answer.meaning == gesture::Meaning::cancel)
        state.dragging = false;
    switch (answer.meaning) {
        case gesture::Meaning::press_shown:
            kit.finger_at = at;
            break;
        case gesture::Meaning::tap:
            tap(at);
            break;
        case gesture::Meaning::long_press:
            kit.long_press_at = at;
            break;
        case gesture::Meaning::scroll_start: {
            ImGuiWindow* window = scrollable_at(at);
            state.scrolling = window ? window->ID : 0;
            state.left_over = 0;
            state.dragging = true;
            break;
        }
        case gesture::Meaning::scroll:
            scroll_by(state.scrolling, -answer.dy);
            break;
        case gesture::Meaning::fling:
            // Whoever wishes for less motion gets none that goes on by itself, however short: a list moves
            // while a finger moves it, and stands still when it is let go.
            if (platform::window().reduced_motion) break;
            state.velocity = -answer.dy;
            state.gliding = state.scrolling != 0;
            state.glide_ms = platform::now_ms();
            break;
        case gesture::Meaning::cancel:
        case gesture::Meaning::none:
            break;
    }
}

void mouse(const platform::Event& event, kit::Kit& kit) {
    ImGuiIO& io = ImGui::GetIO();
    state.mouse = {static_cast<float>(event.x), static_cast<float>(event.y)};
    io.AddMouseSourceEvent(ImGuiMouseSource_Mouse);
    io.AddMousePosEvent(state.mouse.x, state.mouse.y);
    if (event.kind == platform::Kind::pointer_down) {
        kit.finger = false;
        io.AddMouseButtonEvent(ImGuiMouseButton_Left, true);
    } else if (event.kind == platform::Kind::pointer_up) {
        io.AddMouseButtonEvent(ImGuiMouseButton_Left, false);
    } else if (event.kind == platform::Kind::pointer_cancel) {
        io.AddMouseButtonEvent(ImGuiMouseButton_Left, false);
        io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
    }
}

}  // namespace

void receive(const platform::Event& event, kit::Kit& kit) {
    if (event.kind == platform::Kind::wheel) {
        state.gliding = false;
        state.wheel_rests_ms = event.time_ms + kWheelRestMs;
        if (ImGuiWindow* window = scrollable_at(state.mouse)) scroll_by(window->ID, event.y);
        return;
    }
    if (event.pointer == platform::Pointer::mouse) return mouse(event, kit);
    switch (event.kind) {
        case platform::Kind::pointer_down:
            kit.finger = true;
            state.gliding = false;
            mean(state.machine.down(event.pointer_id, event.x, event.y, event.time_ms), kit);
            break;
        case platform::Kind::pointer_move:
            for (const gesture::Answer& answer :
                 state.machine.move(event.pointer_id, event.x, event.y, event.time_ms))
                mean(answer, kit);
            break;
        case platform::Kind::pointer_up:
            mean(state.machine.up(event.pointer_id, event.x, event.y, event.time_ms), kit);
            break;
        default:
            mean(state.machine.cancel(event.pointer_id), kit);
            break;
    }
}

void time_passes(double now_ms, kit::Kit& kit) {
    mean(state.machine.at(now_ms), kit);
    if (const auto wake = state.machine.wakes_at()) platform::request_wake(std::max(1.0, *wake - now_ms));
    if (state.wheel_rests_ms > now_ms)
        platform::request_wake(state.wheel_rests_ms - now_ms + 1);
    else
        state.wheel_rests_ms = 0;
    if (platform::window().reduced_motion) state.gliding = false;  // may be wished for meanwhile
    if (!state.gliding) return;
    const gesture::Glide glide = gesture::glide(state.velocity, now_ms - state.glide_ms);
    state.glide_ms = now_ms;
    state.velocity = glide.velocity;
    const bool moved = scroll_by(state.scrolling, glide.distance);
    if (!moved || std::abs(state.velocity) < gesture::kFlingStopPxPerS)
        state.gliding = false;
    else
        platform::request_frame();
}

bool moving() {
    return state.gliding || state.dragging || state.wheel_rests_ms > 0;
}

}  // namespace touch
