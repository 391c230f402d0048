// A finger and a mouse on the canvas of the real page: what is a tap, what scrolls, what is held. The rules
// alone are tested in test_gesture.cpp.
#include <algorithm>
#include <vector>

#include "hand.h"
#include "imgui_internal.h"

namespace test_touch {

using hand::FirstVisit;
using platform::Kind;

namespace {

// How far the page's list is scrolled.
float scrolled() {
    float most = 0;
    for (const ImGuiWindow* window : GImGui->Windows)
        if (window->WasActive && window->Scroll.y > most) most = window->Scroll.y;
    return most;
}

// Room to scroll: the settings, which are longer than a phone.
struct LongList : FirstVisit {
    LongList() {
        hand::go("More");
        for (ImGuiWindow* window : GImGui->Windows)
            window->Scroll.y = 0;
        hand::push(Kind::resized);
        hand::settle();
    }
};

// 120 px up within 48 ms, all of it within one frame.
void flick() {
    platform::Event event;
    event.pointer = platform::Pointer::touch;
    event.pointer_id = 1;
    event.x = 180;
    const double start = platform::now_ms();
    for (int i = 0; i <= 7; ++i) {
        event.kind = i == 0 ? Kind::pointer_down : i == 7 ? Kind::pointer_up : Kind::pointer_move;
        event.y = 500 - 20 * std::min(i, 6);
        event.time_ms = start + 8 * std::min(i, 6);
        platform::native::push(event);
    }
    platform::native::advance(48);
    app::step(true);
}

void mouse(Kind kind, double x, double y) {
    platform::Event event;
    event.kind = kind;
    event.x = x;
    event.y = y;
    platform::native::push(std::move(event));
    hand::settle();
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "a tap on a button presses it") {
    hand::tap(hand::button("New recipe"));
    CHECK(app.ui.sheet == app::Sheet::new_recipe);
}

TEST_CASE_FIXTURE(FirstVisit, "a tap is decided on release, and shown from the start") {
    const mirror::Node button = hand::button("New recipe");
    hand::finger(Kind::pointer_down, button.x + 20, button.y + 20);
    CHECK(app.ui.sheet == app::Sheet::none);
    CHECK(app.kit.finger_at.x > 0);
    hand::finger(Kind::pointer_up, button.x + 20, button.y + 20);
    CHECK(app.ui.sheet == app::Sheet::new_recipe);
    CHECK(app.kit.finger_at.x < 0);
}

TEST_CASE_FIXTURE(FirstVisit, "a finger that was taken away by the browser presses nothing") {
    const mirror::Node button = hand::button("New recipe");
    hand::finger(Kind::pointer_down, button.x + 20, button.y + 20);
    hand::finger(Kind::pointer_cancel, button.x + 20, button.y + 20);
    hand::wait(1000);
    CHECK(app.ui.sheet == app::Sheet::none);
    CHECK(app.kit.finger_at.x < 0);
}

TEST_CASE_FIXTURE(LongList, "a drag scrolls the list under it by the way of the finger and presses nothing") {
    platform::native::window().reduced_motion = true;  // no gliding on
    const workspace::Settings before = app.work.settings;
    hand::drag(180, 500, 180, 300);
    CHECK(scrolled() == doctest::Approx(200 - 9).epsilon(0.02));  // less the wobble a tap is allowed
    CHECK(app.work.settings == before);
    CHECK(app.ui.sheet == app::Sheet::none);
    hand::drag(180, 300, 180, 600);
    CHECK(scrolled() == 0);
}

TEST_CASE_FIXTURE(LongList, "a flick goes on by itself, slows down and comes to rest") {
    flick();
    CHECK(scrolled() == doctest::Approx(120 - 9).epsilon(0.02));
    std::vector<float> way;  // frame by frame
    for (int i = 0; i < 300; ++i) {
        const float before = scrolled();
        platform::native::advance(16);
        if (platform::native::take_wanted_frame()) app::step(true);
        way.push_back(scrolled() - before);
    }
    CHECK(way[1] > 4);
    CHECK(way[1] > way[10]);
    CHECK(way.back() == 0);
    const float rest = scrolled();
    for (int i = 0; i < 60; ++i)
        hand::wait(16);
    CHECK(scrolled() == rest);
    CHECK_FALSE(platform::native::frame_wanted());
}

TEST_CASE_FIXTURE(LongList, "a finger put down stops a flick") {
    flick();
    hand::finger(Kind::pointer_down, 180, 400);
    const float held = scrolled();
    for (int i = 0; i < 10; ++i)
        hand::wait(16);
    CHECK(scrolled() == held);
    hand::finger(Kind::pointer_cancel, 180, 400);
}

TEST_CASE_FIXTURE(LongList, "with reduced motion nothing glides") {
    platform::native::window().reduced_motion = true;
    flick();
    const float released = scrolled();
    for (int i = 0; i < 60; ++i)
        hand::wait(16);
    CHECK(scrolled() == released);
}

TEST_CASE_FIXTURE(LongList, "a glide under way ends when less motion is wished for") {
    flick();
    platform::native::window().reduced_motion = true;
    const float then = scrolled();
    for (int i = 0; i < 60; ++i)
        hand::wait(16);
    CHECK(scrolled() == then);
    CHECK_FALSE(platform::native::frame_wanted());
}

TEST_CASE_FIXTURE(FirstVisit,
                  "a finger held on a recipe opens its menu, and lifting it presses nothing more") {
    app::keep(app, app.presets.recipes.front().second);
    hand::push(Kind::resized);
    hand::go("Book");
    const std::string title = app.work.recipes.front().recipe.title;
    const mirror::Node row = hand::button(title);
    hand::finger(Kind::pointer_down, row.x + 30, row.y + row.height / 2);
    hand::wait(600);
    CHECK(app.ui.sheet == app::Sheet::recipe);
    CHECK(app.ui.recipe == app.work.recipes.front().id);
    hand::finger(Kind::pointer_up, row.x + 30, row.y + row.height / 2);
    CHECK(app.ui.sheet == app::Sheet::recipe);
    CHECK(app.ui.screen == app::Screen::book);
}

TEST_CASE_FIXTURE(FirstVisit, "two fingers are the browser's") {
    const mirror::Node button = hand::button("New recipe");
    hand::finger(Kind::pointer_down, button.x + 20, button.y + 20);
    platform::Event second;
    second.kind = Kind::pointer_down;
    second.pointer = platform::Pointer::touch;
    second.pointer_id = 2;
    second.x = button.x + 80;
    second.y = button.y + 90;
    platform::native::push(second);
    hand::settle();
    hand::finger(Kind::pointer_up, button.x + 20, button.y + 20);
    second.kind = Kind::pointer_up;
    platform::native::push(second);
    hand::settle();
    CHECK(app.ui.sheet == app::Sheet::none);
    hand::tap(button);  // and the next tap is one again
    CHECK(app.ui.sheet == app::Sheet::new_recipe);
}

TEST_CASE_FIXTURE(FirstVisit, "a tap beside a sheet closes it, one on its ground does not") {
    hand::press("New recipe");
    const mirror::Node heading = *hand::see(mirror::Role::heading, app.say("new.title"));
    hand::tap(heading.x + 60, heading.y + 4);
    CHECK(app.ui.sheet == app::Sheet::new_recipe);
    hand::tap(180, 12);
    CHECK(app.ui.sheet == app::Sheet::none);
}

TEST_CASE_FIXTURE(FirstVisit, "what lies beneath a sheet can't be pressed through it") {
    hand::press("New recipe");
    const mirror::Node* below = hand::see(mirror::Role::tab, "More");
    REQUIRE(below != nullptr);
    hand::tap(below->x + below->width / 2, below->y + below->height / 2);
    CHECK(app.ui.screen != app::Screen::more);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "the elements of the page stay while the wheel turns and follow when it rests") {
    hand::go("More");
    mouse(Kind::pointer_move, 180, 400);
    const std::string before = platform::native::mirror();
    platform::Event wheel;
    wheel.kind = Kind::wheel;
    wheel.y = 60;
    wheel.time_ms = platform::now_ms();
    platform::native::push(wheel);
    hand::settle();
    CHECK(platform::native::mirror() == before);
    hand::wait(200);
    CHECK(platform::native::mirror() != before);
}

TEST_CASE_FIXTURE(FirstVisit, "a mouse presses on release and turns the wheel") {
    hand::go("More");
    for (ImGuiWindow* window : GImGui->Windows)
        window->Scroll.y = 0;
    mouse(Kind::pointer_move, 180, 400);
    platform::Event wheel;
    wheel.kind = Kind::wheel;
    wheel.y = 120;
    platform::native::push(wheel);
    hand::settle();
    CHECK(scrolled() == 120);

    hand::wait(500);
    hand::go("Book");
    const mirror::Node button = hand::button("New recipe");
    mouse(Kind::pointer_move, button.x + 20, button.y + 20);
    mouse(Kind::pointer_down, button.x + 20, button.y + 20);
    CHECK(app.ui.sheet == app::Sheet::none);
    mouse(Kind::pointer_up, button.x + 20, button.y + 20);
    CHECK(app.ui.sheet == app::Sheet::new_recipe);
    mouse(Kind::pointer_move, -10, -10);
}

}  // namespace test_touch
