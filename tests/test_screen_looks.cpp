// What an eye looks for on every screen and a list of faults does not say: words broken without need, titles
// cut although there is room, a message that lies over what was opened after it.
#include <algorithm>

#include "web/drawn_items.h"
#include "web/theme.h"
#include "whole.h"

namespace test_screen_looks {

using hand::press;
using hand::see;
using mirror::Role;

struct Salve : hand::FirstVisit {
    Salve() { open("potting_shed_hand_salve"); }
    ~Salve() { platform::native::window().text_scale = 1; }
    void open(const char* stem, std::string title = {}) {
        workspace::Recipe recipe = shipped::recipe(stem);
        if (!title.empty()) recipe.title = std::move(title);
        app::keep(app, recipe);
        hand::settle();
        hand::go(app.say("nav.formula"));
    }
    bool cut(const std::string& words) {
        const auto& all = drawn_items::cut_words();
        return std::find(all.begin(), all.end(), words) != all.end();
    }
};

TEST_CASE_FIXTURE(Salve, "looks: a button as wide as its words has them in one line") {
    for (const char* key : {"amounts.title", "adjust.firmness", "formula.add_phase"}) {
        CAPTURE(key);
        CHECK(hand::button(app.say(key)).height == theme::kTarget);
    }
}

TEST_CASE_FIXTURE(Salve, "looks: on a phone what is pressed most lies in the half that a thumb reaches") {
    const float half = platform::window().height / 2;
    for (const char* place : {"nav.book", "nav.formula", "nav.batch", "nav.stock", "nav.more"})
        CHECK(see(Role::tab, app.say(place))->y > half);
    hand::go(app.say("nav.book"));
    CHECK(hand::button(app.say("book.new")).y > half);
    for (const app::Sheet sheet :
         {app::Sheet::rename, app::Sheet::tags, app::Sheet::phase, app::Sheet::firmness}) {
        CAPTURE(static_cast<int>(sheet));
        whole::open_sheet(app, sheet);
        float lowest = 0;
        bool within = false;  // what lies beneath it comes first
        for (const mirror::Node& node : mirror::nodes()) {
            within = within || node.role == Role::dialog;
            if (within && node.role == Role::button && node.visible) lowest = std::max(lowest, node.y);
        }
        CHECK(lowest > half);
        app::close_sheet(app);
    }
}

TEST_CASE_FIXTURE(Salve, "looks: a sheet that is opened takes a message with it, but not a problem") {
    app::tell(app, "In the bin.");
    app::show(app, app::Sheet::bin);
    hand::settle();
    CHECK(app.ui.message == "");
    app::tell(app, "Nothing can be stored.", true);
    app::show(app, app::Sheet::bin);
    hand::settle();
    CHECK(app.ui.message == "Nothing can be stored.");
}

TEST_CASE_FIXTURE(
    Salve,
    "looks: the bar grows for a long title, in letters of any size, and then the list begins below it") {
    const std::string title = "Kitchen-garden hand lotion for the winter market";
    open("kitchen_garden_hand_lotion", title);
    for (const float scale : {1.0f, 1.3f, 2.0f}) {
        CAPTURE(scale);
        platform::native::window().text_scale = scale;
        hand::resize(360, 640);
        CHECK_FALSE(cut(title));
        CHECK(whole::faults() == "");
        CHECK(whole::overlaps() == "");
    }
    const mirror::Node heading = *see(Role::heading, title);
    CHECK(heading.height > theme::top_bar());
    CHECK(hand::button(app.say("top.undo")).y > heading.y + 20);
}

TEST_CASE_FIXTURE(
    Salve, "looks: a title longer than a third of the window is cut, and read whole in the recipe's sheet") {
    const std::string title =
        "Rosemary, marigold, chamomile, plantain, yarrow, comfrey and elderflower salve";
    open("potting_shed_hand_salve", title);
    platform::native::window().text_scale = 2;
    hand::resize(320, 568);
    CHECK(cut(title));
    CHECK(whole::faults() == "");
    press(app.say("top.recipe"));
    CHECK(see(Role::dialog, title) != nullptr);
}

TEST_CASE_FIXTURE(Salve, "looks: the reason why a percent cannot be read has the whole column") {
    const auto fields = [] {
        std::vector<mirror::Node> all;
        for (const mirror::Node& node : mirror::nodes())
            if (node.role == Role::field_decimal) all.push_back(node);
        return all;
    };
    const float before = fields()[1].y - fields()[0].y;
    hand::write(fields()[0].name, "12..3");
    const float room = fields()[1].y - fields()[0].y - before;
    CHECK(room > 0);
    CHECK(room <= 2 * theme::line_height(theme::Type::small) + 12);
}

TEST_CASE_FIXTURE(Salve,
                  "looks: another recipe begins at the top of its screens, the same one where it was left") {
    const auto scrolled = [](std::string_view place) {
        float found = -1;
        for (const ImGuiWindow* window : GImGui->Windows)
            if (std::string_view(window->Name).find(place) != std::string_view::npos)
                found = window->Scroll.y;
        return found;
    };
    for (const char* place : {"nav.formula", "nav.batch"}) {
        hand::go(app.say(place));
        hand::drag(180, 500, 180, 100);
        REQUIRE(scrolled(place) > 100);
    }
    hand::go(app.say("nav.book"));
    hand::go(app.say("nav.formula"));
    CHECK(scrolled("nav.formula") > 100);
    hand::go(app.say("nav.book"));
    press(app.presets.recipes.front().second.title);
    CHECK(scrolled("nav.formula") == 0);
    hand::go(app.say("nav.batch"));
    CHECK(scrolled("nav.batch") == 0);
}

TEST_CASE_FIXTURE(Salve, "looks: the sheet of a phase is called after it") {
    whole::open_sheet(app, app::Sheet::phase);
    CHECK(see(Role::dialog, app.say("phase.name", {{"id", "A"}})) != nullptr);
}

}  // namespace test_screen_looks
