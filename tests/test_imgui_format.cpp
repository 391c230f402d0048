// The formatter that the screen library is given, beside the C library's.
#include <cstdio>
#include <string>

#include "doctest/doctest.h"
#include "web/imgui_format.h"

namespace test_imgui_format {

namespace {

int print(char* buffer, std::size_t room, const char* format, ...) {
    std::va_list values;
    va_start(values, format);
    const int length = imgui_format::print(buffer, room, format, values);
    va_end(values);
    return length;
}

template <class... Values>
void check_same(std::size_t room, const char* format, Values... values) {
    CAPTURE(format);
    std::string ours(room, 'x'), theirs(room, 'x');
    const int length = std::snprintf(theirs.data(), room, format, values...);
    CHECK(print(ours.data(), room, format, values...) == length);
    CHECK(std::string(ours.c_str()) == theirs.c_str());
    CHECK(print(nullptr, 0, format, values...) == length);
}

}  // namespace

TEST_CASE("what the library puts together is put together as by the C library") {
    check_same(64, "%s/%s_%08X", "page", "list", 0xBEEFu);
    check_same(64, "%s/%08X", "page", 0xFFFFFFFFu);
    check_same(64, "##Menu_%02d", 7);
    check_same(64, "%d,%d", -2147483647 - 1, 2147483647);
    check_same(64, "%u %X", 4000000000u, 0u);
    check_same(64, "%.*s|%c", 3, "abcdef", 'q');
    check_same(64, "100 %%");
    check_same(64, "");
}

TEST_CASE("what has no room is cut off, with its end marked") {
    check_same(5, "%s", "abcdefgh");
    check_same(5, "%d", 123456);
    check_same(1, "%s", "a");
}

}  // namespace test_imgui_format
