// A value together with where it comes from and how far that may be trusted.
#pragma once

#include <string>
#include <string_view>
#include <utility>

namespace source {

// How a figure came here. Ordered from firmest to loosest.
enum class Standing { document, supplier, common_practice, memory, estimate };

constexpr std::string_view standing_name(Standing standing) {  // as files have it
    constexpr std::string_view kNames[] = {"document", "supplier", "common_practice", "memory", "estimate"};
    return kNames[static_cast<int>(standing)];
}

template <class T>
struct Sourced {
    T value{};
    std::string source;  // key in presets/sources.json
    Standing standing = Standing::estimate;
    bool operator==(const Sourced&) const = default;
};

// One entry of the bibliography.
struct Entry {
    std::string key, title, section, address, note;
    Standing standing = Standing::estimate;
    bool operator==(const Entry&) const = default;
};

}  // namespace source
