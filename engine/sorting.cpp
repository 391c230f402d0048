// See sorting.h.
#include "sorting.h"

#include <algorithm>
#include <numeric>

namespace sorting {

std::vector<std::size_t> order(std::size_t count, Before before, const void* what) {
    std::vector<std::size_t> places(count);
    std::iota(places.begin(), places.end(), std::size_t{0});
    std::stable_sort(places.begin(), places.end(),
                     [&](std::size_t one, std::size_t other) { return before(what, one, other); });
    return places;
}

}  // namespace sorting
