#include "type_height.h"

#include <array>

#include "decimal.h"

namespace type_height {
namespace {

using decimal::kOne;
using market::Market;
using source::Standing;

constexpr std::int64_t kMostMm = 10'000 * kOne;
constexpr std::int64_t kSquareInch = 6'451'600;  // mm² on the grid: 25.4 times 25.4
constexpr std::int64_t kSquareCm = 100 * kOne;

struct Step {
    std::int64_t most;  // area or amount up to which it holds
    std::int64_t mm;
    std::string_view printed;
};
constexpr std::int64_t kNoEnd = INT64_MAX;

// 21 CFR 701.13(i); letters blown or moulded are 1/16 in higher.
constexpr std::array<Step, 5> kUs{{{5 * kSquareInch, 15'875, "1/16 in"},
                                   {25 * kSquareInch, 31'750, "1/8 in"},
                                   {100 * kSquareInch, 47'625, "3/16 in"},
                                   {400 * kSquareInch, 63'500, "1/4 in"},
                                   {kNoEnd, 127'000, "1/2 in"}}};
constexpr std::array<Step, 5> kUsMoulded{{{5 * kSquareInch, 31'750, "1/8 in"},
                                          {25 * kSquareInch, 47'625, "3/16 in"},
                                          {100 * kSquareInch, 63'500, "1/4 in"},
                                          {400 * kSquareInch, 79'375, "5/16 in"},
                                          {kNoEnd, 142'875, "9/16 in"}}};
// C.R.C., c. 417, s. 14: the number of the net quantity.
constexpr std::array<Step, 5> kCa{{{32 * kSquareCm, 16'000, "1.6 mm"},
                                   {258 * kSquareCm, 32'000, "3.2 mm"},
                                   {645 * kSquareCm, 64'000, "6.4 mm"},
                                   {2580 * kSquareCm, 95'000, "9.5 mm"},
                                   {kNoEnd, 127'000, "12.7 mm"}}};
// Directive 76/211/EEC, annex I, as remembered: by nominal g or mL.
constexpr std::array<Step, 4> kEu{{{50 * kOne, 20'000, "2 mm"},
                                   {200 * kOne, 30'000, "3 mm"},
                                   {1000 * kOne, 40'000, "4 mm"},
                                   {kNoEnd, 60'000, "6 mm"}}};

template <std::size_t kCount>
Height of(const std::array<Step, kCount>& steps, std::int64_t value, std::string_view source,
          Standing standing) {
    for (const Step& step : steps)
        if (value <= step.most) return {step.mm, step.printed, source, standing};
    return {};
}

}  // namespace

std::optional<std::int64_t> area(const Panel& panel) {
    const bool round = panel.shape == Shape::round_top;
    if (panel.width <= 0 || panel.width > kMostMm) return std::nullopt;
    if (!round && (panel.height <= 0 || panel.height > kMostMm)) return std::nullopt;
    if (round) {
        // π/4 to fifteen digits: over any lid the difference is far below the grid.
        const std::int64_t square = decimal::scale_up(panel.width, panel.width, kOne);
        return decimal::scale_up(square, 785'398'163'397'449, 1'000'000'000'000'000);
    }
    if (panel.shape == Shape::rectangle) return decimal::scale_up(panel.height, panel.width, kOne);
    return decimal::scale_up(panel.height, panel.width * 2, kOne * 5);
}

Heights heights(Market market, std::int64_t area, std::optional<std::int64_t> labelling_area, bool moulded,
                std::int64_t net_grid) {
    Heights made;
    switch (market) {
        case Market::us: {
            made.net = of(moulded ? kUsMoulded : kUs, area, "cfr_701_13", Standing::document);
            const bool small = labelling_area && *labelling_area < 12 * kSquareInch;
            made.list = small ? Height{7'938, "1/32 in", "cfr_701_3", Standing::document}
                              : Height{15'875, "1/16 in", "cfr_701_3", Standing::document};
            made.warnings = Height{15'875, "1/16 in", "cfr_740", Standing::document};
            made.at_the_foot = area > 5 * kSquareInch;
            made.bold = true;
            break;
        }
        case Market::ca: {
            made.net = of(kCa, area, "crc_417", Standing::document);
            made.list = area <= 10 * kSquareCm ? Height{8'000, "0.8 mm", "crc_417", Standing::document}
                                               : Height{16'000, "1.6 mm", "crc_417", Standing::document};
            made.warnings = made.list;
            made.bold = true;
            break;
        }
        default:
            made.net = of(kEu, net_grid, "eu_76_211", Standing::memory);
    }
    return made;
}

}  // namespace type_height
