// Steps back and forth over one value, by the clock they are given.
#include <string>

#include "doctest/doctest.h"
#include "web/undo.h"

namespace test_undo {

TEST_CASE("a step back gives the value before, a step forth the one after") {
    Undo<std::string> undo;
    undo.start("oil");
    undo.feed("oil, wax", 5000);
    REQUIRE(undo.can_back());
    CHECK(undo.back() == "oil");
    REQUIRE(undo.can_forth());
    CHECK(undo.forth() == "oil, wax");
    CHECK_FALSE(undo.can_forth());
}

TEST_CASE("a number typed without a pause is one step") {
    Undo<std::string> undo;
    undo.start("");
    undo.feed("1", 5000);
    undo.feed("12", 5400);
    undo.feed("12.", 6300);
    undo.feed("12.5", 7200);
    CHECK(undo.back().empty());
    CHECK_FALSE(undo.can_back());
}

TEST_CASE("after a second of stillness a new step begins") {
    Undo<std::string> undo;
    undo.start("");
    undo.feed("1", 5000);
    undo.feed("2", 6000);
    CHECK(undo.back() == "1");
    CHECK(undo.back().empty());
}

TEST_CASE("a deed is a step of its own however quickly it follows") {
    Undo<std::string> undo;
    undo.start("");
    undo.feed("1", 5000);
    undo.deed_done();
    undo.feed("1, wax", 5001);
    CHECK(undo.back() == "1");
}

TEST_CASE("a value fed again unchanged is no step and keeps what lies ahead") {
    Undo<std::string> undo;
    undo.start("a");
    undo.feed("a", 5000);
    CHECK_FALSE(undo.can_back());
    undo.feed("b", 5000);
    undo.back();
    undo.feed("a", 9000);
    CHECK(undo.can_forth());
}

TEST_CASE("a change after a step back ends what lay ahead, and can be taken back itself") {
    Undo<std::string> undo;
    undo.start("a");
    undo.feed("b", 5000);
    undo.back();
    undo.feed("c", 5100);
    CHECK_FALSE(undo.can_forth());
    CHECK(undo.back() == "a");
}

TEST_CASE("the oldest steps are given up after two hundred") {
    Undo<int> undo;
    undo.start(0);
    for (int i = 1; i <= 300; ++i)
        undo.feed(i, 5000.0 * i);
    int last = 300, steps = 0;
    for (; undo.can_back(); ++steps)
        last = undo.back();
    CHECK(steps == 200);
    CHECK(last == 100);
}

TEST_CASE("starting with another value forgets the steps of the one before") {
    Undo<std::string> undo;
    undo.start("a");
    undo.feed("b", 5000);
    undo.back();
    undo.start("z");
    CHECK_FALSE(undo.can_back());
    CHECK_FALSE(undo.can_forth());
}

}  // namespace test_undo
