// Rows out of sight are taken over from the frame before while a list is scrolled; what is told of them is
// the same as if they had been drawn.
#include "web/kept_rows.h"

#include <algorithm>
#include <cmath>

#include "hand.h"
#include "many_lines.h"

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
    std::vector<ImDrawVert> corners;
    std::vector<ImDrawIdx> triangles;
};
Seen seen() {
    Seen now{mirror::nodes(), {}, {}};
    for (const ImDrawList* list : ImGui::GetDrawData()->CmdLists) {
        now.corners.insert(now.corners.end(), list->VtxBuffer.begin(), list->VtxBuffer.end());
        now.triangles.insert(now.triangles.end(), list->IdxBuffer.begin(), list->IdxBuffer.end());
    }
    return now;
}
// But for what comes of adding up in another order.
bool same_picture(const Seen& one, const Seen& other) {
    const auto alike = [](const ImDrawVert& a, const ImDrawVert& b) {
        return std::abs(a.pos.x - b.pos.x) < 0.01f && std::abs(a.pos.y - b.pos.y) < 0.01f &&
               a.uv.x == b.uv.x && a.uv.y == b.uv.y && a.col == b.col;
    };
    return one.triangles == other.triangles && std::equal(one.corners.begin(), one.corners.end(),
                                                          other.corners.begin(), other.corners.end(), alike);
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
        CHECK(kept_rows::drawn() < 30);
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
        CHECK(same_picture(scrolled, anew));
    }
}

TEST_CASE_FIXTURE(FirstVisit,
                  "kept rows: in sight only those are drawn anew that are cut off or pointed at") {
    open_recipe(app, many_lines::recipe(app.presets.catalogue, 30));
    turn_wheel(200);
    turn_wheel(200);
    turn_wheel(12);
    CHECK(kept_rows::drawn() <= 4);
    CHECK(kept_rows::drawn() >= 1);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "kept rows: a row lights up when the mouse comes to it, and no longer when it leaves") {
    open_recipe(app, many_lines::recipe(app.presets.catalogue, 30));
    turn_wheel(100);
    for (const double y : {300.0, 370.0, 450.0, 451.0, 250.0, 20.0, 620.0}) {
        CAPTURE(y);
        platform::Event event;
        event.kind = platform::Kind::pointer_move;
        event.pointer = platform::Pointer::mouse;
        event.x = 100;
        event.y = y;
        platform::native::push(event);
        hand::settle();
        const Seen moved = seen();
        CHECK(same_picture(moved, drawn_anew()));
    }
}

TEST_CASE_FIXTURE(FirstVisit, "kept rows: a step that only scrolls makes one frame") {
    open_recipe(app, many_lines::recipe(app.presets.catalogue, 30));
    turn_wheel(100);
    const int before = ImGui::GetFrameCount();
    turn_wheel(12);
    CHECK(ImGui::GetFrameCount() == before + 1);
}

TEST_CASE_FIXTURE(FirstVisit, "kept rows: a number changed out of sight is told at once") {
    workspace::Recipe recipe = many_lines::recipe(app.presets.catalogue, 30);
    open_recipe(app, recipe);
    const std::string name = "Percent of " + workspace::display_name(app.known(), recipe.formula.lines[20]);
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
    const std::string name = workspace::display_name(app.known(), recipe.formula.lines[25]);
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
