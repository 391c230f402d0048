// Sorting leaves equals in their order.
#include <string>
#include <utility>
#include <vector>

#include "doctest/doctest.h"
#include "engine/sorting.h"

namespace test_sorting {

TEST_CASE("what comes out even stays in its order, whatever else is moved") {
    std::vector<std::pair<int, std::string>> list = {
        {3, "c"}, {1, "first"}, {2, "b"}, {1, "second"}, {1, "third"}};
    sorting::stable(list, [](const auto& one, const auto& other) { return one.first < other.first; });
    CHECK(list == std::vector<std::pair<int, std::string>>{
                      {1, "first"}, {1, "second"}, {1, "third"}, {2, "b"}, {3, "c"}});
}

TEST_CASE("nothing, one thing, and things without an order of their own are sorted by themselves") {
    std::vector<std::string> none, one = {"x"}, some = {"b", "", "a"};
    sorting::stable(none);
    sorting::stable(one);
    sorting::stable(some);
    CHECK(none.empty());
    CHECK(one == std::vector<std::string>{"x"});
    CHECK(some == std::vector<std::string>{"", "a", "b"});
}

TEST_CASE("the places are told, nothing is moved") {
    const std::vector<int> values = {5, 3, 4};
    const auto before = [](const void* what, std::size_t a, std::size_t b) {
        const auto& list = *static_cast<const std::vector<int>*>(what);
        return list[a] < list[b];
    };
    CHECK(sorting::order(values.size(), before, &values) == std::vector<std::size_t>{1, 2, 0});
}

}  // namespace test_sorting
