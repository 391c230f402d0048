// How far a melt sinks in its pot: what its volume loses from pouring at 70 °C until it has set at room
// temperature. Measured of beeswax alone, worked out for a blend by adding volumes: an estimate. No such
// figure is known of any other wax, of butters or of hard fats, so that with these in it only "at least" can
// be said.
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "blend.h"

namespace blend {

inline constexpr std::string_view kCastingSource = "pmc_11876593";  // key in presets/sources.json
inline constexpr std::int64_t kCastFrom = 70 * decimal::kOne;       // °C, as the beeswax was poured
inline constexpr double kCastLeast = 0.025, kCastMost = 0.034;      // of its length, in an open mould

// What a cube loses of its volume when each edge loses `linear` of its length: 1 − (1 − s)³; shares of one.
double volume_lost(double linear);

// Of what holds wax and no water; none for anything else.
std::optional<Setting> setting_of(const std::vector<Part>& parts, const catalogue::Catalogue& known);

}  // namespace blend
