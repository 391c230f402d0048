// What a finger means: decided on release. A press that stays is a tap, a drag scrolls what lies under its
// start, a held press asks for the line's menu, two fingers are left to the browser. Pure: positions and
// times in, meanings out.
#pragma once

#include <optional>
#include <vector>

namespace gesture {

enum class Meaning {
    none,
    press_shown,   // finger is down and may become a tap: show it pressed at x, y
    tap,           // at x, y: where the finger came down
    long_press,    // at x, y
    scroll_start,  // at x, y: where the finger came down; scrolling belongs to what lies there
    scroll,        // dx, dy since the last scroll, content moves with the finger
    fling,         // dx, dy: velocity in CSS px per second on release
    cancel,        // nothing came of it
};

struct Answer {
    Meaning meaning = Meaning::none;
    double x = 0, y = 0, dx = 0, dy = 0;
};

inline constexpr double kSlopPx = 9;  // a finger wobbles less than this on a tap
inline constexpr double kLongPressMs = 500;
inline constexpr double kFlingDecayMs =
    325;  // v·exp(−t/τ), the usual kinetic scrolling constant (common practice)
inline constexpr double kFlingStopPxPerS = 10;

class Machine {
  public:
    Answer down(int id, double x, double y, double time_ms);
    std::vector<Answer> move(int id, double x, double y, double time_ms);
    Answer up(int id, double x, double y, double time_ms);
    Answer cancel(int id);
    Answer at(double time_ms);               // time passes: may become a long press
    std::optional<double> wakes_at() const;  // when at() has something to say

  private:
    enum class State { idle, pressed, scrolling, held, pinching };
    State state_ = State::idle;
    int id_ = 0, fingers_ = 0;
    double start_x_ = 0, start_y_ = 0, start_ms_ = 0, last_x_ = 0, last_y_ = 0;
    struct Sample {
        double x, y, time_ms;
    };
    std::vector<Sample> samples_;  // the last 100 ms, for the velocity on release
};

// Distance a fling of `velocity` px/s still covers within the next dt_ms, and the velocity after it.
struct Glide {
    double distance, velocity;
};
Glide glide(double velocity, double dt_ms);

}  // namespace gesture
