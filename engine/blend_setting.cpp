// Volumes are added as they are when cold, each grown by what it loses on setting; the rule for warmth is
// density's. What has no density counts by its weight, and as losing nothing.
#include "blend_setting.h"

#include <algorithm>
#include <cmath>

#include "density.h"

namespace blend {
namespace {

using source::Standing;

struct Lost {  // shares of the volume as it was poured
    double least = 0;
    std::optional<double> most;
};

bool is_beeswax(const Part& part) {
    return part.id == "beeswax_yellow" || part.id == "beeswax_white";
}

// Stays liquid at room temperature, so that the rule for warmth says all.
bool stays_liquid(const Part& part) {
    const Kind kind = kind_of(part.known);
    return kind == Kind::liquid || kind == Kind::volatile_oil ||
           (part.known != nullptr && part.known->role == "antioxidant");
}

// `cold`: of the part alone.
Lost lost_by(const Part& part, const formula::Formula& alone, const density::Blend& cold,
             const catalogue::Catalogue& known) {
    if (is_beeswax(part)) return {volume_lost(kCastLeast), volume_lost(kCastMost)};
    const density::Blend warm = density::warm(alone, {quantity::kHundred}, known, kCastFrom);
    if (cold.known != quantity::kHundred || warm.known != quantity::kHundred) return {};
    const double lost = 1 - decimal::to_double(warm.density.grid) / decimal::to_double(cold.density.grid);
    return {lost, stays_liquid(part) ? std::optional(lost) : std::nullopt};
}

quantity::Percent percent_of(double share) {
    return {static_cast<std::int64_t>(std::floor(share * 100 * static_cast<double>(decimal::kOne) + 0.5))};
}

}  // namespace

double volume_lost(double linear) {
    return 1 - (1 - linear) * (1 - linear) * (1 - linear);
}

std::optional<Setting> setting_of(const std::vector<Part>& parts, const catalogue::Catalogue& known) {
    const auto holds = [&](Kind kind) {
        return std::any_of(parts.begin(), parts.end(),
                           [&](const Part& part) { return kind_of(part.known) == kind; });
    };
    if (!holds(Kind::wax) || holds(Kind::water)) return {};
    Setting setting;
    double cold_volume = 0, least = 0, most = 0;
    for (const Part& part : parts) {
        formula::Formula alone;
        alone.lines.emplace_back();
        alone.lines[0].ingredient = part.id;
        const density::Blend cold = density::of(alone, {quantity::kHundred}, known);
        const Lost lost = lost_by(part, alone, cold, known);
        ask(setting.of, part, lost.most ? std::optional(Standing::estimate) : std::nullopt);
        const double volume = decimal::to_double(part.percent.grid) /
                              (cold.density.grid > 0 ? decimal::to_double(cold.density.grid) : 1);
        cold_volume += volume;
        least += volume / (1 - lost.least);
        most += volume / (1 - lost.most.value_or(lost.least));
    }
    setting.at_least = percent_of(1 - cold_volume / least);
    if (setting.of.missing.empty()) setting.at_most = percent_of(1 - cold_volume / most);
    return setting;
}

}  // namespace blend
