// Sorting that leaves equals in their order. In place of std::stable_sort, which for every list and every
// order makes three kilobytes of the page; here what is asked of two places is all that differs.
#pragma once

#include <cstddef>
#include <functional>
#include <utility>
#include <vector>

namespace sorting {

using Before = bool (*)(const void* what, std::size_t one, std::size_t other);
// The places 0 to count - 1 in their order.
std::vector<std::size_t> order(std::size_t count, Before before, const void* what);

template <class Value, class Less = std::less<>>
void stable(std::vector<Value>& list, const Less& less = {}) {
    struct Asked {
        const std::vector<Value>& list;
        const Less& less;
    };
    const Asked asked{list, less};
    const Before before = [](const void* what, std::size_t one, std::size_t other) {
        const Asked& of = *static_cast<const Asked*>(what);
        return static_cast<bool>(of.less(of.list[one], of.list[other]));
    };
    std::vector<Value> sorted;
    sorted.reserve(list.size());
    for (const std::size_t place : order(list.size(), before, &asked))
        sorted.push_back(std::move(list[place]));
    list = std::move(sorted);
}

}  // namespace sorting
