// The touch rules in gesture.h. Knows nothing of widgets, of the library that draws, or of a clock: whoever
// feeds it hands in times and asks at() when wakes_at() has come. One finger is followed; a second makes the
// gesture the browser's until all are up again.
#include "web/gesture.h"

#include <algorithm>
#include <cmath>

namespace gesture {

namespace {

constexpr double kVelocityWindowMs = 100;
constexpr double kRestMs =
    60;  // a finger that lay still this long before lifting throws nothing (common practice)

}  // namespace

Answer Machine::down(int id, double x, double y, double time_ms) {
    fingers_ += 1;
    if (fingers_ > 1) {
        const bool open = state_ == State::pressed || state_ == State::scrolling || state_ == State::held;
        state_ = State::pinching;
        return open ? Answer{Meaning::cancel, start_x_, start_y_, 0, 0} : Answer{};
    }
    state_ = State::pressed;
    id_ = id;
    start_x_ = last_x_ = x;
    start_y_ = last_y_ = y;
    start_ms_ = time_ms;
    samples_.assign(1, {x, y, time_ms});
    return {Meaning::press_shown, x, y, 0, 0};
}

std::vector<Answer> Machine::move(int id, double x, double y, double time_ms) {
    std::vector<Answer> answers;
    if (id != id_ || (state_ != State::pressed && state_ != State::scrolling)) return answers;

    std::erase_if(samples_, [&](const Sample& s) { return time_ms - s.time_ms > kVelocityWindowMs; });
    samples_.push_back({x, y, time_ms});

    if (state_ == State::pressed) {
        const double way = std::hypot(x - start_x_, y - start_y_);
        if (way <= kSlopPx) {
            if (const Answer held = at(time_ms); held.meaning != Meaning::none) answers.push_back(held);
            return answers;
        }
        state_ = State::scrolling;
        answers.push_back({Meaning::scroll_start, start_x_, start_y_, 0, 0});
        // What lies under the finger starts to move from here, without jumping by the slop.
        last_x_ = start_x_ + (x - start_x_) * kSlopPx / way;
        last_y_ = start_y_ + (y - start_y_) * kSlopPx / way;
    }
    answers.push_back({Meaning::scroll, x, y, x - last_x_, y - last_y_});
    last_x_ = x;
    last_y_ = y;
    return answers;
}

Answer Machine::up(int id, double x, double y, double time_ms) {
    fingers_ = std::max(0, fingers_ - 1);
    if (state_ == State::pinching) {
        if (fingers_ == 0) state_ = State::idle;
        return {};
    }
    if (id != id_) return {};
    const State was = state_;
    state_ = State::idle;
    if (was == State::pressed) {
        // A busy machine may not have asked at() in time; the finger's own clock decides.
        const bool long_enough = time_ms - start_ms_ >= kLongPressMs;
        return {long_enough ? Meaning::long_press : Meaning::tap, start_x_, start_y_, 0, 0};
    }
    if (was != State::scrolling) return {};

    Answer fling{Meaning::fling, x, y, 0, 0};
    std::erase_if(samples_, [&](const Sample& s) { return time_ms - s.time_ms > kVelocityWindowMs; });
    if (samples_.size() >= 2) {
        const Sample& first = samples_.front();
        const Sample& last = samples_.back();
        const double seconds = (last.time_ms - first.time_ms) / 1000;
        if (seconds > 0 && time_ms - last.time_ms < kRestMs) {
            fling.dx = (last.x - first.x) / seconds;
            fling.dy = (last.y - first.y) / seconds;
        }
    }
    return fling;
}

Answer Machine::cancel(int id) {
    fingers_ = std::max(0, fingers_ - 1);
    if (state_ == State::pinching) {
        if (fingers_ == 0) state_ = State::idle;
        return {};
    }
    if (id != id_ || state_ == State::idle) return {};
    state_ = State::idle;
    return {Meaning::cancel, start_x_, start_y_, 0, 0};
}

Answer Machine::at(double time_ms) {
    if (state_ != State::pressed || time_ms - start_ms_ < kLongPressMs) return {};
    state_ = State::held;
    return {Meaning::long_press, start_x_, start_y_, 0, 0};
}

std::optional<double> Machine::wakes_at() const {
    if (state_ != State::pressed) return std::nullopt;
    return start_ms_ + kLongPressMs;
}

Glide glide(double velocity, double dt_ms) {
    if (std::abs(velocity) < kFlingStopPxPerS || dt_ms <= 0) return {0, dt_ms <= 0 ? velocity : 0};
    const double left = std::exp(-dt_ms / kFlingDecayMs);
    const double after = velocity * left;
    return {velocity * (1 - left) * kFlingDecayMs / 1000, std::abs(after) < kFlingStopPxPerS ? 0 : after};
}

}  // namespace gesture
