// What a text or a number that came from outside may not go over: nothing, or the error to give with its
// place.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "decimal.h"
#include "result.h"

namespace bounds {

using Fault = std::optional<result::Error>;

inline Fault too_long(std::string_view text, std::size_t most, std::string at) {
    if (text.size() <= most) return std::nullopt;
    return result::Error{result::Code::text_too_long, std::move(at), std::to_string(most)};
}

// A name is not empty, and at most so many bytes long.
inline Fault unnamed(std::string_view text, std::size_t most, std::string at) {
    if (text.empty()) return result::Error{result::Code::name_empty, std::move(at), ""};
    return too_long(text, most, std::move(at));
}

// An id becomes part of a key of the device's store: short and plain, or it is none.
inline bool is_id(std::string_view id) {
    for (const char c : id) {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
        if (!letter && !(c >= '0' && c <= '9') && c != '-' && c != '_') return false;
    }
    return !id.empty() && id.size() <= 80;
}

// Both on the grid of decimal.
inline Fault outside(std::int64_t grid, std::int64_t most, std::string at) {
    if (grid < 0) return result::Error{result::Code::number_negative, std::move(at), decimal::print(grid)};
    if (grid > most)
        return result::Error{result::Code::number_too_large, std::move(at), decimal::print(grid)};
    return std::nullopt;
}

inline Fault whole_outside(std::int64_t count, std::int64_t most, std::string at) {
    if (count < 0) return result::Error{result::Code::number_negative, std::move(at), std::to_string(count)};
    if (count > most)
        return result::Error{result::Code::number_too_large, std::move(at), std::to_string(count)};
    return std::nullopt;
}

}  // namespace bounds
