// How high letters on a label must be at least, by market, and the area of the panel they hang on. Exact: a
// length is in 0.0001 mm, an inch is 25.4 mm. Where a market's law gives no height, none is given here.
#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

#include "market.h"
#include "source.h"

namespace type_height {

// The panel a buyer sees first (21 CFR 701.10): a rectangle whole, a cylinder 40 % of height times
// circumference, a round top whole, another shape 40 % of its surface without top, bottom, shoulders, neck.
enum class Shape { rectangle, cylinder, round_top, other };
struct Panel {  // mm on the grid of decimal.h; of `other` the surface is height times width
    Shape shape = Shape::rectangle;
    std::int64_t height = 0, width = 0;  // cylinder: width is the circumference; round_top: the diameter
    bool moulded = false;                // letters blown or moulded into the container
    bool operator==(const Panel&) const = default;
};
// mm² on the grid, rounded up (a larger panel asks for higher letters); none over 10 m or not above 0.
std::optional<std::int64_t> area(const Panel& panel);

struct Height {
    std::int64_t mm = 0;       // grid, not less than the rule
    std::string_view printed;  // as the rule says it: "1/16 in", "1.6 mm"
    std::string_view source;
    source::Standing standing = source::Standing::document;
    bool operator==(const Height&) const = default;
};
struct Heights {
    std::optional<Height> net;   // of the figures of the net contents
    std::optional<Height> list;  // of the list of ingredients
    std::optional<Height> warnings;
    bool at_the_foot = false;  // US: net contents in the bottom 30 % of the panel
    bool bold = false;         // net contents (CA: the number)
    bool operator==(const Heights&) const = default;
};
// `labelling_area`: of all that can carry letters, mm² on the grid (US: 1/32 in below 12 square inches);
// `net_grid`: nominal g or mL, by which EU and GB go.
Heights heights(market::Market market, std::int64_t area, std::optional<std::int64_t> labelling_area,
                bool moulded, std::int64_t net_grid);

}  // namespace type_height
