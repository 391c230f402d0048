// The gallery of widgets: opened by the page's address, whole wherever it is opened, left to the Book. How it
// looks is for eyes: tests/page/screenshots.mjs.
#include "engine/share.h"
#include "web/theme.h"
#include "whole.h"

namespace test_widget_gallery {

using hand::press;
using hand::push;
using hand::see;
using hand::settle;
using mirror::Role;
using platform::Kind;

struct Gallery : hand::FirstVisit {
    Gallery() { open(); }
    ~Gallery() {
        platform::native::window().text_scale = 1;
        platform::native::window().forced_colours = false;
    }
    void open() {
        push(Kind::fragment, 0, "gallery");
        settle();
    }
    bool is_open() { return see(Role::heading, app.say("gallery.title")) != nullptr; }
};

TEST_CASE_FIXTURE(Gallery, "gallery: the fragment opens it and no link can be read that way") {
    CHECK(is_open());
    CHECK(app.ui.message == "");
    CHECK_FALSE(share::read("gallery", app.presets.catalogue));
}

TEST_CASE_FIXTURE(Gallery, "gallery: Escape, the browser's back and the bar leave it to the Book") {
    push(Kind::node_escape);
    settle();
    CHECK(app.ui.screen == app::Screen::book);
    open();
    hand::go(app.say("nav.book"));
    CHECK(see(Role::heading, app.say("book.title")) != nullptr);
}

TEST_CASE_FIXTURE(Gallery, "gallery: no screen leads there, and the page opens anew on the Book") {
    for (const mirror::Node& node : mirror::nodes())
        if (node.role == Role::tab) CHECK(node.name != app.say("gallery.title"));
    hand::open_page();
    CHECK(app.ui.screen == app::Screen::book);
}

TEST_CASE_FIXTURE(Gallery, "gallery: asked for by the address it is shown, whatever was open last") {
    hand::go(app.say("nav.more"));
    hand::wait(2000);
    platform::native::start_over();
    hand::open_page();
    REQUIRE(app.ui.screen == app::Screen::more);
    open();
    CHECK(is_open());
}

TEST_CASE_FIXTURE(
    Gallery, "gallery: whole in every size, light and dark, in large letters and in the system's colours") {
    whole::in_every_size(app, [&] {
        for (const float scale : {1.0f, 2.0f})
            for (const bool forced : {false, true}) {
                platform::native::window().text_scale = scale;
                platform::native::window().forced_colours = forced;
                CAPTURE(scale);
                CAPTURE(forced);
                push(Kind::preferences);
                settle();
                CHECK(is_open());
                CHECK(whole::faults() == "");
                CHECK(whole::overlaps() == "");
            }
    });
}

TEST_CASE_FIXTURE(Gallery, "gallery: what can be tried out answers") {
    REQUIRE(see(Role::checkbox, "tick")->checked);
    press("tick", Role::checkbox);
    CHECK_FALSE(see(Role::checkbox, "tick")->checked);
    hand::write("unit, hint", "250/4");
    CHECK(hand::field("large").value == "62.5");
    CHECK(hand::field("problem").invalid);
    hand::write("problem", "12.3");
    CHECK_FALSE(hand::field("problem").invalid);
    press("Role::alert");
    CHECK(app.ui.message_is_problem);
    press("begin_sheet");
    REQUIRE(see(Role::dialog, app.say("sources.title")) != nullptr);
    press(app.say("sheet_ui.close"));
    CHECK(is_open());
}

TEST_CASE_FIXTURE(Gallery, "gallery: a field that a finger has opened has the keypad for itself") {
    const auto keypads = [&](const char* field) {
        int found = 0;
        for (const mirror::Node& node : mirror::nodes())
            found += node.role == Role::region && node.name == app.say("keypad.name", {{"field", field}});
        return found;
    };
    CHECK(keypads("name") == 1);
    hand::tap(180, 3);  // by finger from here on
    push(Kind::node_click, hand::field("large").id);
    settle();
    CHECK(keypads("large") == 1);
    CHECK(keypads("name") == 0);
}

TEST_CASE_FIXTURE(Gallery, "gallery: every mark, look and type of letters is there by its name") {
    for (const char* name : {"back", "rub_out", "onward", "primary", "danger, disabled", "chosen"})
        CHECK(see(Role::button, name) != nullptr);
    for (const char* name : {"hero", "label", "paper", "faint"})
        CHECK(see(Role::text, name) != nullptr);
}

}  // namespace test_widget_gallery
