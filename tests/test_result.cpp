// A value or the one reason why there is none.
#include <string>

#include "doctest/doctest.h"
#include "engine/result.h"

namespace test_result {

namespace {

result::Result<int> half(int number) {
    if (number % 2 != 0) return {result::Code::number_too_fine, "character 1", std::to_string(number)};
    return number / 2;
}

}  // namespace

TEST_CASE("a result holds a value or an error with its place") {
    const auto good = half(8);
    REQUIRE(good.ok());
    CHECK(*good == 4);
    const auto bad = half(7);
    REQUIRE_FALSE(bad);
    CHECK(bad.error() == result::Error{result::Code::number_too_fine, "character 1", "7"});
}

TEST_CASE("a code alone is an error that concerns the whole") {
    const result::Result<std::string> bad = result::Code::formula_empty;
    REQUIRE_FALSE(bad.ok());
    CHECK(bad.error().place.empty());
    CHECK(bad.error().detail.empty());
}

TEST_CASE("a value can be moved out") {
    result::Result<std::string> good = std::string("salve");
    CHECK(good->size() == 5);
    const std::string taken = std::move(good).value();
    CHECK(taken == "salve");
}

}  // namespace test_result
