// Bytes as UTF-8. Well-formed and ill-formed sequences: RFC 3629, section 4 and its examples in section 7.
#include <string>
#include <string_view>

#include "doctest/doctest.h"
#include "engine/utf8.h"

namespace test_utf8 {

using namespace std::string_view_literals;

TEST_CASE("a text is cut to a number of bytes at the end of a whole character") {
    CHECK(utf8::start_within("balm", 10) == "balm");
    CHECK(utf8::start_within("balm", 2) == "ba");
    CHECK(utf8::start_within("für", 2) == "f");  // f, and ü of two bytes
    CHECK(utf8::start_within("für", 3) == "fü");
    CHECK(utf8::start_within("手の", 5) == "手");
    CHECK(utf8::start_within("", 5).empty());
    CHECK(utf8::start_within("balm", 0).empty());
}

TEST_CASE("what is cut from a text that is no UTF-8 ends before the first such byte") {
    CHECK(utf8::start_within("ab\xFF"
                             "cd"sv,
                             10) == "ab");
    CHECK(utf8::start_within("ab\xC3"sv, 10) == "ab");
}

TEST_CASE("the examples of RFC 3629 are valid, and as long as it says") {
    for (const std::string_view text :
         {"A\xE2\x89\xA2\xCE\x91."sv, "\xED\x95\x9C\xEA\xB5\xAD\xEC\x96\xB4"sv,
          "\xE6\x97\xA5\xE6\x9C\xAC\xE8\xAA\x9E"sv, "\xEF\xBB\xBF\xF0\xA3\x8E\xB4"sv})
        CHECK(utf8::valid(text));
    CHECK(utf8::length_at("A\xE2\x89\xA2"sv, 0) == 1);
    CHECK(utf8::length_at("A\xE2\x89\xA2"sv, 1) == 3);
    CHECK(utf8::length_at("\xF0\xA3\x8E\xB4"sv, 0) == 4);
}

TEST_CASE("longer forms, surrogates, what lies beyond U+10FFFF and torn characters are not valid") {
    for (const std::string_view text :
         {"\xC0\x80"sv, "\xE0\x80\x80"sv, "\xF0\x80\x80\x80"sv, "\xED\xA0\x80"sv, "\xF4\x90\x80\x80"sv,
          "\x80"sv, "\xC3"sv, "\xE2\x89"sv, "\xC3("sv, "\xFE"sv, "\xFF"sv})
        CHECK_FALSE(utf8::valid(text));
    CHECK(utf8::length_at("\x80"sv, 0) == 0);
}

}  // namespace test_utf8
