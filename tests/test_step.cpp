// In which order one step of the program does what it does: what is seen comes before what is saved.
#include "hand.h"

namespace test_step {

using hand::FirstVisit;

namespace {

void press_stock() {
    hand::push(platform::Kind::node_click, hand::found(hand::see(hand::Role::tab, "Stock"), "Stock").id);
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit,
                  "step: what a press changes is seen first, and saved in the drawn step that follows") {
    const auto stored = platform::native::store();
    press_stock();
    app::step(false);
    CHECK(app.ui.screen == app::Screen::stock);
    CHECK(platform::native::store() == stored);
    CHECK(platform::native::frame_wanted());
    app::step(true);
    CHECK(platform::native::store() != stored);
}

TEST_CASE_FIXTURE(FirstVisit, "step: what was changed is saved at once where the page is left") {
    const auto stored = platform::native::store();
    press_stock();
    app::step(false);
    hand::push(platform::Kind::hidden);
    app::step(false);
    CHECK(platform::native::store() != stored);
}

}  // namespace test_step
