// What a label says is in the package: a mass or a volume in the units and the words of a market, never more
// than there is. Every figure is cut off at its last digit and never rounded up (16 CFR 500.8 to 500.19: all
// printed conversions are). Factors are those of 16 CFR 500.19(a) alone. Knows no recipe.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "decimal.h"
#include "market.h"
#include "quantity.h"
#include "source.h"

namespace net_contents {

enum class Unit { mg, g, kg, ml, l, oz, lb, fl_oz, pt, qt, gal };

// A mass or a volume finer than the grid: 0.00000001 g or mL, so that ounces times their factor are exact.
struct Fine {
    std::int64_t grid = 0;
    auto operator<=>(const Fine&) const = default;
    friend Fine operator+(Fine a, Fine b) { return {a.grid + b.grid}; }
};
Fine fine_of(std::int64_t grid, Unit unit);  // `grid`: of the unit, 0.0001
std::int64_t in(Fine amount, Unit unit);     // on the grid of the unit, cut off

// Three digits; for a figure below 100 two are allowed as well (16 CFR 500.19(b)).
enum class Digits { three, two_below_hundred };
struct Figure {
    std::int64_t grid = 0;  // 0.0001 of the unit
    Unit unit = Unit::g;
    bool operator==(const Figure&) const = default;
};
// Metric, cut off, with the prefix that puts the number between 1 and 1000 (16 CFR 500.23).
Figure metric(Fine amount, bool volume, Digits digits = Digits::three);
std::string print(Figure figure, decimal::Sign sign = decimal::Sign::point);  // "4.25 g", no-break space

// Ounces before pounds, pints and gallons as 21 CFR 701.13(j) and (k) have them, at most two decimals:
// "Net wt. 20 oz. (1 lb. 4 oz.)", "Net contents 56 fl. oz. (1 qt. 1 pt. 8 oz.)".
// An amount that was kept to 0.0001 g or mL counts as whole when less than that is missing.
std::int64_t hundredths(Fine amount, Unit unit);  // on the grid of the unit, cut to 0.01
std::string customary(Fine amount, bool volume);

enum class Form { solid, semisolid, viscous, liquid };  // what the market's choice of measure hangs on
std::optional<Form> form_of(std::string_view product);  // of a product kind; none: not known, take weight
enum class Doubt {
    none,
    volume_unknown,  // the market wants a volume and none is known: the weight stands for now
    zero,            // nothing is left after cutting off
};
struct Statement {
    bool volume = false;
    bool required = true;  // EU and GB: not under 5 g or 5 mL
    std::string text;      // as it is printed
    Doubt doubt = Doubt::none;
    std::string source;
    source::Standing standing = source::Standing::document;
    bool operator==(const Statement&) const = default;
};
Statement statement(market::Market market, std::optional<Form> form, quantity::Mass mass,
                    std::optional<quantity::Volume> volume, Digits digits = Digits::three);

}  // namespace net_contents
