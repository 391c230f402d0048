// Rows out of sight are taken over from the frame before while a list is scrolled; what is told of them is
// the same as if they had been drawn.
#include "web/kept_rows.h"

#include "hand.h"
#include "many_lines.h"
#include "web/picture.h"

namespace test_kept_rows {

using hand::FirstVisit;
using mirror::Node;

namespace {

void turn_wheel(float pixels) {
    platform::Event event;
    event.kind = platform::Kind::pointer_move;
    event.pointer = platform::Pointer::mouse;
    event.x = 180;
    event.y = 300;
    platform::native::push(event);
    event.kind = platform::Kind::wheel;
    event.x = 0;
    event.y = pixels;
    platform::native::push(event);
    hand::settle();
}

void open_recipe(app::App& app, const workspace::Recipe& recipe) {
    app::keep(app, recipe);
    hand::push(platform::Kind::resized);
    hand::settle();
}

struct Seen {
    std::vector<Node> nodes;
    picture::Picture picture;
    bool operator==(const Seen&) const = default;
};
Seen seen() {
    Seen now{mirror::nodes(), {}};
    picture::follow(now.picture, *ImGui::GetDrawData());
    return now;
}
Seen drawn_anew() {
    hand::push(platform::Kind::preferences);  // whatever happens, every row is drawn
    app::step(false);
    return seen();
}

}  // namespace

TEST_CASE_FIXTURE(
    FirstVisit,
    "kept rows: while a list is scrolled few of its rows are drawn, and all are told as if they were") {
    open_recipe(app, many_lines::recipe(app.presets.catalogue, 30));
    const std::size_t whole = mirror::nodes().size();
    for (const float pixels : {40.0f, 7.0f, 300.0f, 600.0f, -250.0f, 3000.0f, 11.0f, -90.0f, -5000.0f}) {
        CAPTURE(pixels);
        turn_wheel(pixels);
        CHECK(kept_rows::drawn() < 20);
        const Seen scrolled = seen();
        CHECK(scrolled.nodes.size() == whole);
        const Seen anew = drawn_anew();
        CHECK(kept_rows::drawn() >= 30);
        REQUIRE(scrolled.nodes.size() == anew.nodes.size());
        for (std::size_t i = 0; i < anew.nodes.size(); ++i) {
            Node moved = scrolled.nodes[i];
            if (std::abs(moved.y - anew.nodes[i].y) < 0.01f)
                moved.y = anew.nodes[i].y;  // added up in another order
            CAPTURE(moved.name);
            CHECK(moved == anew.nodes[i]);
        }
        CHECK(scrolled.picture == anew.picture);
    }
}

TEST_CASE_FIXTURE(FirstVisit, "kept rows: a number changed out of sight is told at once") {
    workspace::Recipe recipe = many_lines::recipe(app.presets.catalogue, 30);
    open_recipe(app, recipe);
    const std::string name = "Percent of " + workspace::display_name(app.known, recipe.formula.lines[20]);
    CHECK_FALSE(hand::field(name).visible);
    turn_wheel(30);
    hand::push(platform::Kind::node_input, hand::field(name).id, "4.25");
    hand::settle();
    CHECK(hand::field(name).value == "4.25");
    turn_wheel(-30);
    hand::key("z", true);
    CHECK(hand::field(name).value != "4.25");
}

TEST_CASE_FIXTURE(FirstVisit, "kept rows: a button out of sight does what it says") {
    const workspace::Recipe recipe = many_lines::recipe(app.presets.catalogue, 30);
    open_recipe(app, recipe);
    turn_wheel(30);
    const std::string name = workspace::display_name(app.known, recipe.formula.lines[25]);
    CHECK_FALSE(hand::button(name).visible);
    hand::press(name);
    CHECK(app.ui.sheet == app::Sheet::line);
    CHECK(app.ui.line == 25);
}

TEST_CASE_FIXTURE(FirstVisit, "kept rows: the next number's field is found though it is out of sight") {
    const workspace::Recipe recipe = many_lines::recipe(app.presets.catalogue, 30);
    open_recipe(app, recipe);
    turn_wheel(0);
    turn_wheel(30);
    turn_wheel(-30);
    CHECK(app.kit.order.size() == 29);  // all but the rest line's
}

}  // namespace test_kept_rows
