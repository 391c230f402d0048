// The large keypad: opened by a finger on a number, typed on by finger or keyboard, going on from number to
// number.
#include <string>

#include "hand.h"

namespace test_keypad {

using hand::FirstVisit;

namespace {

// A recipe of three lines, open on the formula's screen; every percent empty.
struct ThreeLines : FirstVisit {
    ThreeLines() {
        hand::press("New recipe");
        hand::press("Blank");
        workspace::Recipe& recipe = *app::open_recipe(app);
        for (const char* id : {"beeswax_yellow", "shea", "water"}) {
            formula::Line line;
            line.ingredient = id;
            recipe.formula = formula::add_line(recipe.formula, line).value();
        }
        hand::push(platform::Kind::resized);
        hand::settle();
    }
    const formula::Line& line(std::size_t at) { return app::open_recipe(app)->formula.lines.at(at); }
    std::string percent_of(std::size_t at) {
        return app.say("line.percent_of",
                       {{"name", workspace::display_name(app.presets.catalogue, line(at))}});
    }
    void open_keypad(std::size_t at) { hand::tap(hand::field(percent_of(at))); }
    void type(const std::string& keys) {
        for (const char key : keys) {
            const char* names[][2] = {{"/", "keypad.divide"},  {"*", "keypad.times"},
                                      {"-", "keypad.minus"},   {"+", "keypad.plus"},
                                      {".", "keypad.decimal"}, {",", "keypad.decimal"}};
            std::string name(1, key);
            for (const auto& [sign, word] : names)
                if (name == sign) {
                    name = app.say(word);
                    break;
                }
            hand::press(name);
        }
    }
};

}  // namespace

TEST_CASE_FIXTURE(ThreeLines, "a finger on a number opens the keypad, and what it types is the number") {
    open_keypad(0);
    REQUIRE(app.kit.keypad.open());
    type("12.5");
    CHECK(line(0).percent.grid == 125000);
    hand::press("Done");
    CHECK_FALSE(app.kit.keypad.open());
    CHECK(hand::field(percent_of(0)).value == "12.5");
}

TEST_CASE_FIXTURE(ThreeLines, "the keypad names its field, so that one knows where the number goes") {
    open_keypad(1);
    CHECK(hand::see(mirror::Role::region, app.say("keypad.name", {{"field", percent_of(1)}})) != nullptr);
}

TEST_CASE_FIXTURE(ThreeLines, "the first key replaces the number, later ones add to it") {
    open_keypad(0);
    type("12");
    hand::press("Done");
    open_keypad(0);
    type("7");
    CHECK(hand::field(percent_of(0)).value == "7");
    type("5");
    CHECK(line(0).percent.grid == 750000);
}

TEST_CASE_FIXTURE(ThreeLines, "a sign of arithmetic goes on from the number that is there") {
    open_keypad(0);
    type("25");
    hand::press("Done");
    open_keypad(0);
    type("/4");
    CHECK(line(0).percent.grid == 62500);
    hand::press("Done");
    CHECK(hand::field(percent_of(0)).value == "6.25");
}

TEST_CASE_FIXTURE(ThreeLines, "arithmetic is worked out as it is typed") {
    open_keypad(0);
    type("250/12");
    CHECK(hand::field(percent_of(0)).value == "250/12");
    CHECK(line(0).percent.grid == 208333);
}

TEST_CASE_FIXTURE(ThreeLines, "rubbing out takes one sign at a time, and at first the whole number") {
    open_keypad(0);
    type("125");
    hand::press("Rub out");
    CHECK(line(0).percent.grid == 120000);
    hand::press("Done");
    open_keypad(0);
    hand::press("Rub out");
    CHECK(hand::field(percent_of(0)).value.empty());
    CHECK(line(0).percent.grid == 0);
}

TEST_CASE_FIXTURE(ThreeLines, "next goes on to the next number and closes after the last") {
    open_keypad(0);
    type("20");
    hand::press(app.say("keypad.next_line"));
    REQUIRE(app.kit.keypad.open());
    type("30");
    hand::press(app.say("keypad.next_line"));
    type("50");
    hand::press(app.say("keypad.next_line"));
    CHECK_FALSE(app.kit.keypad.open());
    CHECK(line(0).percent.grid == 200000);
    CHECK(line(1).percent.grid == 300000);
    CHECK(line(2).percent.grid == 500000);
}

TEST_CASE_FIXTURE(ThreeLines, "back goes to the number before, and closes at the first") {
    open_keypad(1);
    type("30");
    hand::press(app.say("keypad.previous_line"));
    REQUIRE(app.kit.keypad.open());
    type("20");
    CHECK(line(0).percent.grid == 200000);
    CHECK(line(1).percent.grid == 300000);
    hand::press(app.say("keypad.previous_line"));
    CHECK_FALSE(app.kit.keypad.open());
}

TEST_CASE_FIXTURE(ThreeLines, "next leaves out what can't be typed into") {
    workspace::Recipe& recipe = *app::open_recipe(app);
    recipe.formula = formula::set_rest(recipe.formula, 1, true).value();
    hand::push(platform::Kind::resized);
    hand::settle();
    open_keypad(0);
    type("20");
    hand::press(app.say("keypad.next_line"));
    type("30");
    CHECK(line(2).percent.grid == 300000);
    CHECK(line(1).rest);
}

TEST_CASE_FIXTURE(ThreeLines, "a real keyboard types on the keypad too") {
    open_keypad(0);
    for (const char* key : {"1", "2", ",", "5"})
        hand::key(key);
    CHECK(line(0).percent.grid == 125000);
    hand::key("Backspace");
    hand::key("Backspace");
    CHECK(line(0).percent.grid == 120000);
    hand::key("Enter");
    hand::key("8");
    CHECK(line(1).percent.grid == 80000);
    hand::key("Escape");
    CHECK_FALSE(app.kit.keypad.open());
}

TEST_CASE_FIXTURE(ThreeLines,
                  "what can't be read stays in the field with the reason, and the number stays as it was") {
    open_keypad(0);
    type("12");
    hand::press("Done");
    open_keypad(0);
    type("1..2");
    CHECK(line(0).percent.grid != 12000);
    hand::press("Done");
    const mirror::Node& field = hand::field(percent_of(0));
    CHECK(field.value == "1..2");
    CHECK(field.invalid);
    CHECK_FALSE(field.description.empty());
}

TEST_CASE_FIXTURE(ThreeLines, "the decimal key shows and types the sign that the settings ask for") {
    app.work.settings.sign = workspace::DecimalSign::comma;
    open_keypad(0);
    type("7,5");
    CHECK(hand::field(percent_of(0)).value == "7,5");
    CHECK(line(0).percent.grid == 75000);
}

TEST_CASE_FIXTURE(ThreeLines, "the number being typed stays in view above the keypad") {
    for (std::size_t at = 0; at < 3; ++at) {
        hand::push(platform::Kind::node_focus, hand::field(percent_of(at)).id);  // brings it into view
        hand::settle();
        hand::push(platform::Kind::node_blur, hand::field(percent_of(at)).id);
        hand::settle();
        open_keypad(at);
        REQUIRE(app.kit.keypad.open());
        const mirror::Node& field = hand::field(percent_of(at));
        const mirror::Node& keypad = *hand::see(mirror::Role::button, "7");
        CHECK(field.visible);
        CHECK(field.y + field.height <= keypad.y);
        hand::press("Done");
    }
}

TEST_CASE_FIXTURE(ThreeLines, "a mouse on a number asks for the native field instead") {
    const mirror::Node field = hand::field(percent_of(0));
    platform::Event event;
    event.x = field.x + field.width / 2;
    event.y = field.y + field.height / 2;
    for (const platform::Kind kind :
         {platform::Kind::pointer_move, platform::Kind::pointer_down, platform::Kind::pointer_up}) {
        event.kind = kind;
        platform::native::push(event);
        hand::settle();
    }
    CHECK_FALSE(app.kit.keypad.open());
    CHECK(platform::native::focus_asked_for() == field.id);
}

TEST_CASE_FIXTURE(ThreeLines, "focus that comes to a field by the mirror closes the keypad") {
    open_keypad(0);
    hand::push(platform::Kind::node_focus, hand::field(percent_of(1)).id);
    hand::settle();
    CHECK_FALSE(app.kit.keypad.open());
}

TEST_CASE_FIXTURE(ThreeLines, "the keypad closes when its field is taken away") {
    open_keypad(2);
    type("5");
    workspace::Recipe& recipe = *app::open_recipe(app);
    app::edit(app, formula::remove_line(recipe.formula, 2));
    hand::push(platform::Kind::resized);
    hand::settle();
    CHECK_FALSE(app.kit.keypad.open());
    CHECK_FALSE(platform::native::frame_wanted());
}

TEST_CASE_FIXTURE(ThreeLines, "Enter in a native field goes on to the next one") {
    const std::uint32_t second = hand::field(percent_of(1)).id;
    hand::write(percent_of(0), "12");
    hand::push(platform::Kind::node_enter, hand::field(percent_of(0)).id);
    hand::settle();
    CHECK(platform::native::focus_asked_for() == second);
}

TEST_CASE_FIXTURE(ThreeLines, "Enter with shift goes back to the one before") {
    const std::uint32_t first = hand::field(percent_of(0)).id;
    hand::write(percent_of(1), "12");
    platform::Event event;
    event.kind = platform::Kind::node_enter;
    event.node = hand::field(percent_of(1)).id;
    event.shift = true;
    platform::native::push(event);
    hand::settle();
    CHECK(platform::native::focus_asked_for() == first);
}

}  // namespace test_keypad
