// Each figure has one packed form only if it was packed here; share compares bytes, so another form is found
// out.
#include "share_figure.h"

#include <algorithm>

namespace share_figure {

std::int64_t power_of_ten(std::uint64_t power) {
    std::int64_t out = 1;
    for (; power > 0; --power)
        out *= 10;
    return out;
}

std::uint64_t packed(std::int64_t grid) {
    auto mantissa = static_cast<std::uint64_t>(std::max<std::int64_t>(0, grid));
    unsigned power = 0;
    while (power < 7 && mantissa != 0 && mantissa % 10 == 0) {
        mantissa /= 10;
        ++power;
    }
    return mantissa * 8 + power;
}

std::optional<std::int64_t> unpacked(std::uint64_t packed) {
    const std::uint64_t mantissa = packed / 8;
    const auto scale = static_cast<std::uint64_t>(power_of_ten(packed % 8));
    if (mantissa > kLargest / scale) return std::nullopt;
    return static_cast<std::int64_t>(mantissa * scale);
}

std::uint64_t packed_temperature(std::int64_t grid) {
    if (grid >= 0 && grid % decimal::kOne == 0) return static_cast<std::uint64_t>(grid / decimal::kOne) * 2;
    const std::uint64_t folded =  // 0, -1, 1, -2, … as 0, 1, 2, 3, …
        grid >= 0 ? static_cast<std::uint64_t>(grid) * 2 : static_cast<std::uint64_t>(-(grid + 1)) * 2 + 1;
    return folded * 2 + 1;
}

std::optional<std::int64_t> unpacked_temperature(std::uint64_t packed) {
    constexpr auto kWholeDegree = static_cast<std::uint64_t>(decimal::kOne);
    if (packed % 2 == 0) {
        if (packed / 2 > kLargest / kWholeDegree) return std::nullopt;
        return static_cast<std::int64_t>(packed / 2 * kWholeDegree);
    }
    const std::uint64_t folded = packed / 2;
    if (folded / 2 > kLargest) return std::nullopt;
    const auto half = static_cast<std::int64_t>(folded / 2);
    return folded % 2 == 0 ? half : -half - 1;
}

}  // namespace share_figure
