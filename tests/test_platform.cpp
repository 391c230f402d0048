// The platform's two halves: that the native one keeps the promises of platform.h, and that the page's
// scripts name the arrivals in the same order as the header.
#include <fstream>
#include <iterator>
#include <regex>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "web/platform_native.h"

namespace test_platform {

using platform::Kind;

namespace {

struct Fresh {
    Fresh() {
        platform::native::start_over();
        platform::native::store().clear();
        platform::native::set_storage(platform::native::Storage::works);
    }
};

std::string file(const std::string& path) {
    std::ifstream stream(std::string(TAREBENCH_SOURCE_DIR) + "/" + path, std::ios::binary);
    return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

// The words in `text` between two marks, comments taken out.
std::vector<std::string> names_between(const std::string& text, const std::string& from,
                                       const std::string& to) {
    const auto start = text.find(from);
    REQUIRE(start != std::string::npos);
    const auto end = text.find(to, start);
    REQUIRE(end != std::string::npos);
    const std::string part = std::regex_replace(text.substr(start + from.size(), end - start - from.size()),
                                                std::regex("//[^\n]*"), "");
    const std::regex word("[a-z_]+");
    return {std::sregex_token_iterator(part.begin(), part.end(), word), std::sregex_token_iterator()};
}

int steps_drawn = 0;
void step(bool draw) {
    if (draw) steps_drawn += 1;
    platform::take_events();
}

}  // namespace

TEST_CASE_FIXTURE(Fresh, "what is pushed arrives once, in order, and asks for a step") {
    platform::Event event;
    event.kind = Kind::key_down;
    event.text = "7";
    platform::native::push(event);
    event.text = "8";
    platform::native::push(event);
    CHECK(platform::native::frame_wanted());
    const auto events = platform::take_events();
    REQUIRE(events.size() == 2);
    CHECK(events[0].text == "7");
    CHECK(events[1].text == "8");
    CHECK(platform::take_events().empty());
}

TEST_CASE_FIXTURE(Fresh, "no step is made unless it was asked for") {
    steps_drawn = 0;
    platform::native::settle(step);
    CHECK(steps_drawn == 0);
    platform::request_frame();
    platform::request_frame();
    platform::native::settle(step);
    CHECK(steps_drawn == 1);
}

TEST_CASE_FIXTURE(Fresh, "the earliest wish to be woken wins and brings one step") {
    platform::request_wake(500);
    platform::request_wake(100);
    platform::request_wake(900);
    platform::native::advance(99);
    CHECK_FALSE(platform::native::frame_wanted());
    platform::native::advance(1);
    CHECK(platform::native::frame_wanted());
}

TEST_CASE_FIXTURE(Fresh, "records come back with their keys, those of others stay out") {
    platform::save("tarebench:a", "one");
    platform::native::store()["someone:b"] = "two";
    CHECK(platform::take_events().back().kind == Kind::saved);
    platform::load_stored("tarebench:");
    const auto events = platform::take_events();
    REQUIRE(events.size() == 2);
    CHECK(events[0].kind == Kind::stored);
    CHECK(events[0].key == "tarebench:a");
    CHECK(events[0].text == "one");
    CHECK(events[1].kind == Kind::stored_all);
}

TEST_CASE_FIXTURE(Fresh, "a store that is full or refuses says so and keeps what it had") {
    platform::save("tarebench:a", "old");
    platform::native::set_storage(platform::native::Storage::full);
    platform::save("tarebench:a", "new");
    CHECK(platform::take_events().back().text == "full");
    CHECK(platform::native::store().at("tarebench:a") == "old");
    platform::native::set_storage(platform::native::Storage::refuses);
    platform::load_stored("tarebench:");
    CHECK(platform::take_events().front().kind == Kind::storage_refused);
}

TEST_CASE_FIXTURE(Fresh, "focusing one node takes the focus from the other") {
    platform::focus_node(4, false);
    platform::focus_node(5, true);
    const auto events = platform::take_events();
    REQUIRE(events.size() == 3);
    CHECK(events[0].node == 4);
    CHECK(events[1].kind == Kind::node_blur);
    CHECK(events[1].node == 4);
    CHECK(events[2].kind == Kind::node_focus);
    CHECK(events[2].node == 5);
}

TEST_CASE_FIXTURE(Fresh, "chance differs each time and is the same in every run") {
    const auto first = platform::chance();
    CHECK(platform::chance() != first);
    platform::native::start_over();
    CHECK(platform::chance() == first);
}

TEST_CASE("the page's scripts name the arrivals in the order of platform.h") {
    const auto header = names_between(file("web/platform.h"), "enum class Kind {", "};");
    const auto script = names_between(file("shell/lib_arrivals.js"), "kinds: [", "],");
    CHECK(header.size() > 25);
    CHECK(header == script);
    const auto pointers = names_between(file("web/platform.h"), "enum class Pointer {", "}");
    CHECK(pointers == names_between(file("shell/lib_arrivals.js"), "pointers: [", "]"));
}

TEST_CASE("every role of the mirror has an element") {
    const auto roles = names_between(file("web/mirror.h"), "enum class Role {", "};");
    const std::string script = file("shell/lib_mirror.js");
    for (const std::string& role : roles) {
        CAPTURE(role);
        CHECK(script.find("'" + role + "'") != std::string::npos);
    }
    // The record's roles are the enumerators' own names, in order.
    CHECK(roles == names_between(file("web/mirror.cpp"), "kRoleNames[] = {", "};"));
}

}  // namespace test_platform
