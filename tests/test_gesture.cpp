// What fingers mean: every rule of web/gesture.h once, and long random gestures for what must always hold.
#include <cmath>
#include <random>

#include "doctest/doctest.h"
#include "web/gesture.h"

namespace test_gesture {

using gesture::Machine;
using gesture::Meaning;

TEST_CASE("a finger that comes down and leaves where it was is a tap where it came down") {
    Machine machine;
    CHECK(machine.down(1, 100, 200, 0).meaning == Meaning::press_shown);
    CHECK(machine.move(1, 104, 203, 50).empty());
    const gesture::Answer answer = machine.up(1, 104, 203, 90);
    CHECK(answer.meaning == Meaning::tap);
    CHECK(answer.x == 100);
    CHECK(answer.y == 200);
}

TEST_CASE("a finger that moves further than the slop scrolls what lay under its start and taps nothing") {
    Machine machine;
    machine.down(1, 100, 200, 0);
    const auto begun = machine.move(1, 100, 180, 20);
    REQUIRE(begun.size() == 2);
    CHECK(begun[0].meaning == Meaning::scroll_start);
    CHECK(begun[0].y == 200);
    CHECK(begun[1].meaning == Meaning::scroll);
    CHECK(begun[1].dy == doctest::Approx(-20 + gesture::kSlopPx));
    const auto further = machine.move(1, 100, 150, 40);
    REQUIRE(further.size() == 1);
    CHECK(further[0].dy == doctest::Approx(-30));
    CHECK(machine.up(1, 100, 150, 45).meaning == Meaning::fling);
}

TEST_CASE("a scroll ends with the finger's velocity over its last tenth of a second") {
    Machine machine;
    machine.down(1, 0, 1000, 0);
    for (int ms = 10; ms <= 400; ms += 10)
        machine.move(1, 0, 1000 - ms * 0.5, ms);
    const gesture::Answer fling = machine.up(1, 0, 800, 405);
    CHECK(fling.meaning == Meaning::fling);
    CHECK(fling.dy == doctest::Approx(-500));
    CHECK(fling.dx == doctest::Approx(0));
}

TEST_CASE("a finger that rests before it leaves throws nothing") {
    Machine machine;
    machine.down(1, 0, 500, 0);
    machine.move(1, 0, 400, 20);
    machine.move(1, 0, 300, 40);
    const gesture::Answer fling = machine.up(1, 0, 300, 140);
    CHECK(fling.meaning == Meaning::fling);
    CHECK(fling.dy == 0);
}

TEST_CASE("a held finger is a long press once, and no tap follows") {
    Machine machine;
    machine.down(1, 10, 10, 1000);
    REQUIRE(machine.wakes_at().has_value());
    CHECK(*machine.wakes_at() == 1000 + gesture::kLongPressMs);
    CHECK(machine.at(1499).meaning == Meaning::none);
    CHECK(machine.at(1500).meaning == Meaning::long_press);
    CHECK(machine.at(1600).meaning == Meaning::none);
    CHECK_FALSE(machine.wakes_at().has_value());
    CHECK(machine.up(1, 10, 10, 1700).meaning == Meaning::none);
}

TEST_CASE("a long press is one even if nobody asked in time") {
    Machine machine;
    machine.down(1, 10, 10, 0);
    CHECK(machine.up(1, 10, 10, 800).meaning == Meaning::long_press);
    machine.down(2, 10, 10, 1000);
    const auto moved = machine.move(2, 12, 10, 1700);
    REQUIRE(moved.size() == 1);
    CHECK(moved[0].meaning == Meaning::long_press);
}

TEST_CASE("a second finger leaves the gesture to the browser until all are up") {
    Machine machine;
    machine.down(1, 100, 100, 0);
    CHECK(machine.down(2, 200, 100, 30).meaning == Meaning::cancel);
    CHECK(machine.move(1, 50, 100, 60).empty());
    CHECK(machine.up(2, 250, 100, 90).meaning == Meaning::none);
    CHECK(machine.up(1, 50, 100, 95).meaning == Meaning::none);
    machine.down(3, 10, 10, 200);
    CHECK(machine.up(3, 10, 10, 220).meaning == Meaning::tap);
}

TEST_CASE("a cancelled press taps nothing and the next one does") {
    Machine machine;
    machine.down(1, 10, 10, 0);
    CHECK(machine.cancel(1).meaning == Meaning::cancel);
    CHECK(machine.up(1, 10, 10, 20).meaning == Meaning::none);
    machine.down(1, 10, 10, 100);
    CHECK(machine.up(1, 10, 10, 120).meaning == Meaning::tap);
}

TEST_CASE("a glide covers velocity times the decay in all, however it is cut into frames") {
    for (const double frame_ms : {4.0, 8.3, 16.7, 50.0}) {
        double velocity = 1500, way = 0;
        for (int i = 0; i < 2000 && velocity != 0; ++i) {
            const gesture::Glide glide = gesture::glide(velocity, frame_ms);
            way += glide.distance;
            velocity = glide.velocity;
        }
        CHECK(velocity == 0);
        CHECK(way == doctest::Approx(1500 * gesture::kFlingDecayMs / 1000).epsilon(0.01));
    }
    CHECK(gesture::glide(800, 0).velocity == 800);
    CHECK(gesture::glide(-1500, 16).distance < 0);
}

TEST_CASE("whatever fingers do, each press has at most one meaning and scrolling adds up to the way moved") {
    std::mt19937 dice(20261125);  // the generator alone: its numbers are the same everywhere
    const auto roll = [&](unsigned sides) { return dice() % sides; };
    for (int round = 0; round < 3000; ++round) {
        Machine machine;
        double t = roll(1000), x = 200, y = 300, scrolled_y = 0, start_y = 0;
        int meanings = 0, scroll_starts = 0;
        machine.down(7, x, y, t);
        const double from_y = y;
        const unsigned moves = roll(12);
        for (unsigned i = 0; i < moves; ++i) {
            t += 1 + roll(60);
            x += static_cast<double>(roll(13)) - 6;
            y += static_cast<double>(roll(31)) - 15;
            for (const auto& answer : machine.move(7, x, y, t)) {
                if (answer.meaning == Meaning::scroll_start) scroll_starts += 1;
                if (answer.meaning == Meaning::long_press) meanings += 1;
                if (answer.meaning == Meaning::scroll) scrolled_y += answer.dy;
            }
        }
        start_y = y - from_y;
        const auto last = machine.up(7, x, y, t + roll(40));
        if (last.meaning != Meaning::none) meanings += 1;
        CHECK(meanings == 1);
        CHECK(scroll_starts <= 1);
        if (scroll_starts == 1) {
            CHECK(last.meaning == Meaning::fling);
            CHECK(std::abs(scrolled_y - start_y) <= gesture::kSlopPx + 1e-9);
        }
        CHECK(std::isfinite(last.dx));
        CHECK(std::isfinite(last.dy));
    }
}

}  // namespace test_gesture
