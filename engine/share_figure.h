// Figures of the grid as the unsigned integers of a link. Only share*.cpp and tests include this.
#pragma once

#include <cstdint>
#include <optional>

#include "decimal.h"

namespace share_figure {

inline constexpr auto kLargest = static_cast<std::uint64_t>(decimal::kLargest);

// mantissa * 8 + power of ten (0 to 7): 250 g, 0.01 g and 5 % take one or two bytes as CBOR. Not negative.
std::uint64_t packed(std::int64_t grid);
std::optional<std::int64_t> unpacked(std::uint64_t packed);  // nothing: over kLargest

// Whole degrees from 0 up are even numbers, everything else is odd.
std::uint64_t packed_temperature(std::int64_t grid);
std::optional<std::int64_t> unpacked_temperature(std::uint64_t packed);

std::int64_t power_of_ten(std::uint64_t power);

}  // namespace share_figure
