// The register of the mirror: what it hands over, what comes back and how long it is kept. The elements made
// from it are tested in a browser.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "web/mirror.h"
#include "web/platform_native.h"

namespace test_mirror {

using mirror::Node;
using mirror::Role;

namespace {

struct Fresh {
    Fresh() {
        platform::native::start_over();
        mirror::start_over();
    }
};

Node node(std::uint32_t id, Role role, std::string name) {
    Node made;
    made.id = id;
    made.role = role;
    made.name = std::move(name);
    made.width = 100;
    made.height = 48;
    return made;
}

std::vector<std::string> split(const std::string& text, char at) {
    std::vector<std::string> parts(1);
    for (const char c : text) {
        if (c == at)
            parts.emplace_back();
        else
            parts.back() += c;
    }
    return parts;
}

std::vector<std::vector<std::string>> records() {
    std::vector<std::vector<std::string>> all;
    for (const std::string& record : split(platform::native::mirror(), '\x1e'))
        all.push_back(split(record, '\x1f'));
    return all;
}

std::vector<std::string> record(const std::string& name) {
    for (auto& one : records()) {
        if (one.size() == 13 && one[10] == name) return one;
    }
    return std::vector<std::string>(13);
}

void arrive(platform::Kind kind, std::uint32_t id, std::string text = {}) {
    platform::Event event;
    event.kind = kind;
    event.node = id;
    event.text = std::move(text);
    mirror::receive(event);
}

void page() {
    mirror::begin_frame();
    mirror::open(node(1, Role::main, "Orchard lip balm"));
    mirror::add(node(2, Role::button, "Add a line"));
    mirror::open(node(3, Role::list, "Lines"));
    mirror::open(node(4, Role::item, ""));
    mirror::add(node(5, Role::field_decimal, "Percent"));
    mirror::close();
    mirror::close();
    mirror::close();
}

}  // namespace

TEST_CASE_FIXTURE(Fresh, "a widget adds itself to the register and takes the click that comes back") {
    mirror::begin_frame();
    mirror::add(node(42, Role::button, "Press me"));
    mirror::end_frame(true);
    CHECK(mirror::find(Role::button, "Press me") == 42);
    CHECK(record("Press me")[0] == "42");

    arrive(platform::Kind::node_click, 42);
    CHECK(mirror::take_click(42));
    CHECK_FALSE(mirror::take_click(42));
}

TEST_CASE_FIXTURE(Fresh, "a record names its parent, its place in quarter pixels and its state") {
    mirror::begin_frame();
    mirror::open(node(1, Role::main, "Page"));
    Node field = node(9, Role::field_decimal, "Percent");
    field.value = "12,5";
    field.description = "%";
    field.x = 10.25f;
    field.y = -3.5f;
    field.invalid = true;
    field.large = true;
    field.most_bytes = 20;
    mirror::add(field);
    mirror::close();
    mirror::end_frame(true);
    const std::vector<std::string> expected{"9", "1",  "field_decimal", "ivl",  "41", "-14", "400", "192",
                                            "0", "20", "Percent",       "12,5", "%"};
    CHECK(record("Percent") == expected);
}

TEST_CASE_FIXTURE(Fresh, "the register is handed over when it is settled and differs, and not otherwise") {
    page();
    mirror::end_frame(false);
    CHECK(platform::native::mirrors() == 0);
    for (int i = 0; i < 3; ++i) {
        page();
        mirror::end_frame(true);
    }
    CHECK(platform::native::mirrors() == 1);
}

TEST_CASE_FIXTURE(Fresh, "a field with the focus takes its native twin along while the page still moves") {
    page();
    mirror::end_frame(true);
    arrive(platform::Kind::node_focus, 5);
    mirror::begin_frame();
    mirror::open(node(1, Role::main, "Orchard lip balm"));
    Node moved = node(5, Role::field_decimal, "Percent");
    moved.y = 30;
    mirror::add(moved);
    mirror::close();
    mirror::end_frame(false);
    CHECK(platform::native::mirrors() == 2);
    CHECK(record("Percent")[5] == "120");
}

TEST_CASE_FIXTURE(Fresh, "outside the dialog opened last everything is inert except what holds it") {
    mirror::begin_frame();
    mirror::add(node(1, Role::button, "Outside"));
    mirror::open(node(2, Role::main, "Page"));
    mirror::add(node(3, Role::button, "Beside"));
    mirror::open(node(4, Role::dialog, "Sure?"));
    mirror::open(node(5, Role::list, "Choices"));
    mirror::add(node(6, Role::button, "Yes"));
    mirror::close();
    mirror::close();
    mirror::add(node(7, Role::button, "After"));
    mirror::close();
    mirror::end_frame(true);
    const auto inert = [&](const std::string& name) {
        return record(name)[3].find('n') != std::string::npos;
    };
    CHECK(inert("Outside"));
    CHECK(inert("Beside"));
    CHECK(inert("After"));
    CHECK_FALSE(inert("Page"));
    CHECK_FALSE(inert("Sure?"));
    CHECK_FALSE(inert("Choices"));
    CHECK_FALSE(inert("Yes"));
}

TEST_CASE_FIXTURE(Fresh, "of several texts the newest counts, and it comes before Enter") {
    page();
    mirror::end_frame(true);
    arrive(platform::Kind::node_input, 5, "1");
    arrive(platform::Kind::node_input, 5, "12");
    arrive(platform::Kind::node_enter, 5);
    CHECK(mirror::take_input(5) == std::optional<std::string>("12"));
    CHECK_FALSE(mirror::take_input(5).has_value());
    CHECK(mirror::take_enter(5));
}

TEST_CASE_FIXTURE(Fresh, "an emptied field is a text, not the lack of one") {
    arrive(platform::Kind::node_input, 5, "");
    CHECK(mirror::take_input(5) == std::optional<std::string>(""));
}

TEST_CASE_FIXTURE(Fresh, "the focus is where it last arrived and announces its arrival once") {
    arrive(platform::Kind::node_focus, 2);
    CHECK(mirror::focused(2));
    CHECK(mirror::take_focus_arrived(2));
    CHECK_FALSE(mirror::take_focus_arrived(2));
    arrive(platform::Kind::node_focus, 5);  // some browsers tell the arrival before the leaving
    arrive(platform::Kind::node_blur, 2);
    CHECK(mirror::focus() == 5);
    arrive(platform::Kind::node_blur, 5);
    CHECK(mirror::focus() == 0);
    CHECK(mirror::take_blur(5));
    CHECK_FALSE(mirror::focused(0));
}

TEST_CASE_FIXTURE(Fresh, "a click that nobody takes lapses, so that it cannot press something later") {
    arrive(platform::Kind::node_click, 2);
    for (int i = 0; i < 2; ++i) {
        page();
        mirror::end_frame(true);
    }
    CHECK_FALSE(mirror::take_click(2));
}

TEST_CASE_FIXTURE(Fresh, "an id given twice is counted as a fault and the second keeps an id of its own") {
    mirror::begin_frame();
    mirror::add(node(2, Role::button, "One"));
    mirror::add(node(2, Role::button, "Two"));
    mirror::end_frame(true);
    CHECK(mirror::clashes() == 1);
    CHECK(mirror::find(Role::button, "One") == 2);
    CHECK(mirror::find(Role::button, "Two") != 2);
    CHECK(mirror::find(Role::button, "Two") != 0);
}

TEST_CASE_FIXTURE(Fresh, "what gives no id gets one by its place, the same from frame to frame") {
    std::vector<std::uint32_t> ids[2];
    for (auto& seen : ids) {
        mirror::begin_frame();
        mirror::open(node(1, Role::main, "Page"));
        for (const char* words : {"One", "Two", "Three"})
            mirror::add(node(0, Role::text, words));
        mirror::close();
        mirror::end_frame(true);
        for (const Node& one : mirror::nodes())
            seen.push_back(one.id);
    }
    CHECK(ids[0] == ids[1]);
    CHECK(ids[0].size() == 4);
    CHECK(ids[0][1] != ids[0][2]);
    CHECK(mirror::clashes() == 0);
}

TEST_CASE_FIXTURE(Fresh, "no text can break the records apart") {
    mirror::begin_frame();
    Node nasty = node(2, Role::text,
                      std::string("a\x1e"
                                  "b\x1f"
                                  "c\0d",
                                  7));
    nasty.x = 1e30f;
    nasty.y = -0.0f / 0.0f;
    mirror::add(nasty);
    mirror::add(node(3, Role::text, "after"));
    mirror::end_frame(true);
    REQUIRE(records().size() == 2);
    CHECK(records()[0].size() == 13);
    CHECK(records()[0][10] == "abcd");
    CHECK(records()[1][10] == "after");
}

TEST_CASE_FIXTURE(Fresh, "closing more than was opened does no harm") {
    mirror::begin_frame();
    mirror::close();
    mirror::add(node(3, Role::text, "words"));
    mirror::close();
    mirror::end_frame(true);
    CHECK(mirror::nodes().size() == 1);
}

}  // namespace test_mirror
