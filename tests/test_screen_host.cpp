// What the browser offers around the page: a newer version is taken without losing anything, and the page
// asks to be kept once there is something to keep.
#include "doctest/doctest.h"
#include "hand.h"

namespace test_screen_host {

using hand::button;
using hand::press;
using hand::see;
using mirror::Role;

// A page on the web, not opened from a file.
struct Hosted : hand::FirstVisit {
    Hosted() {
        platform::native::window().from_disk = false;
        hand::push(platform::Kind::resized);
        hand::settle();
    }
    std::string say(std::string_view key) { return app.say(key); }
    void new_version() {
        hand::push(platform::Kind::page_update);
        hand::settle();
    }
};

TEST_CASE_FIXTURE(Hosted, "host: a new version is offered at the head of the book and loaded by one press") {
    CHECK(see(Role::button, say("page.update_take")) == nullptr);
    new_version();
    CHECK_FALSE(platform::native::update_taken());
    press(say("page.update_take"));
    CHECK(platform::native::update_taken());
}

TEST_CASE_FIXTURE(Hosted, "host: wherever one is, it is said that a new version waits and where to load it") {
    app::keep(app, app::blank_recipe(app));
    hand::settle();
    hand::go(say("nav.formula"));
    new_version();
    CHECK(see(Role::button, say("page.update_take")) == nullptr);
    CHECK(app.ui.message == say("page.update_told"));
    hand::go(say("nav.book"));
    CHECK(see(Role::button, say("page.update_take")) != nullptr);
}

TEST_CASE_FIXTURE(Hosted,
                  "host: what was changed in the same moment is stored before a new version is loaded") {
    app::keep(app, app::blank_recipe(app));
    hand::settle();
    hand::go(say("nav.more"));
    new_version();
    app.work.recipes[0].recipe.title = "Orchard balm";
    press(say("page.update_take"));
    REQUIRE(platform::native::update_taken());
    bool stored = false;
    for (const auto& [key, text] : platform::native::store())
        stored = stored || text.find("Orchard balm") != std::string::npos;
    CHECK(stored);
}

TEST_CASE_FIXTURE(Hosted, "host: a new version waits while something is looked at and not kept yet") {
    new_version();
    app.ui.incoming = app::blank_recipe(app);
    press(say("page.update_take"));
    CHECK_FALSE(platform::native::update_taken());
    CHECK(hand::reads(say("page.update_unfinished")));
}

TEST_CASE_FIXTURE(Hosted, "host: a new version is not loaded while nothing can be stored") {
    platform::native::set_storage(platform::native::Storage::full);
    app::keep(app, app::blank_recipe(app));
    hand::settle();
    hand::go(say("nav.more"));
    new_version();
    press(say("page.update_take"));
    CHECK_FALSE(platform::native::update_taken());
    CHECK(hand::reads(say("page.update_unkept")));
}

TEST_CASE_FIXTURE(Hosted,
                  "host: the browser is asked to keep what is stored with the first recipe, and no more once "
                  "it has agreed") {
    CHECK(platform::native::asked_to_keep() == 0);
    app::keep(app, app::blank_recipe(app));
    CHECK(platform::native::asked_to_keep() == 1);
    hand::push(platform::Kind::storage_stands, 0, "yes");
    hand::settle();
    app::keep(app, app::blank_recipe(app));
    CHECK(platform::native::asked_to_keep() == 1);
    hand::go(say("nav.more"));
    CHECK(hand::reads(say("storage.lasts")));
}

TEST_CASE_FIXTURE(Hosted,
                  "host: a browser that has not agreed is shown as one that may clear, with the seven days "
                  "where the page is not installed") {
    hand::push(platform::Kind::storage_stands, 0, "no");
    hand::go(say("nav.more"));
    CHECK(hand::reads(say("storage.may_go")));
    CHECK(hand::reads(say("storage.seven_days")));
    platform::native::window().installed = true;
    hand::push(platform::Kind::resized);
    hand::settle();
    CHECK_FALSE(hand::reads(say("storage.seven_days")));
}

TEST_CASE_FIXTURE(
    Hosted, "host: where the book asks for a backup it says why, unless the browser has agreed to keep") {
    hand::push(platform::Kind::storage_stands, 0, "no");
    while (!app::backup_due(app))
        app::keep(app, app::blank_recipe(app));
    hand::go(say("nav.book"));
    REQUIRE(see(Role::button, say("backup.make")) != nullptr);
    CHECK(hand::reads(say("storage.may_go")));
    CHECK(hand::reads(say("storage.seven_days")));
    hand::push(platform::Kind::storage_stands, 0, "yes");
    hand::settle();
    CHECK_FALSE(hand::reads(say("storage.seven_days")));
}

TEST_CASE_FIXTURE(hand::FirstVisit,
                  "host: opened from a file, the page asks nothing and says nothing of the web's rules") {
    app::keep(app, app::blank_recipe(app));
    CHECK(platform::native::asked_to_keep() == 0);
    hand::go(app.say("nav.more"));
    CHECK_FALSE(hand::reads(app.say("storage.seven_days")));
}

}  // namespace test_screen_host
