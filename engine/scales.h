// The balances of one bench: which of them carries and shows a load, how small a load one can be trusted
// with, and what its steps leave unknown of a percentage. Belongs to the device; never travels in a link.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "quantity.h"

namespace scales {

struct Scale {
    std::string name;
    quantity::Mass division, capacity;  // capacity 0: not said, taken to carry anything
    bool operator==(const Scale&) const = default;
};
struct Jug {
    std::string name;
    quantity::Mass empty;
    bool operator==(const Jug&) const = default;
};
struct Bench {
    std::vector<Scale> scales;  // none: a scale of the asked division that carries anything
    std::optional<Jug> jug;     // what the lines are weighed into one after another, tared between
    bool operator==(const Bench&) const = default;
};

// Where one load is weighed.
struct Place {
    std::optional<std::size_t> scale;  // index into the bench; none on a bench without scales
    quantity::Mass division;           // what the load is rounded to
    bool in_jug = false;               // on top of the jug and what it holds; else by itself, in a dish
    quantity::Mass load;               // what the scale carries then
    bool carried = true;               // false: more than any scale carries; it is weighed in portions
    bool operator==(const Place&) const = default;
};

// A place for each load, in the order they are weighed. Preferred is the coarsest scale that still shows
// `division`, into the jug where it carries that, else by itself; where none of them carries the load, the
// finest of the coarser ones.
std::vector<Place> assign(const std::vector<quantity::Mass>& loads, quantity::Mass division,
                          const Bench& bench);

// One step of the scale may be this much of a line before it is remarked on (common practice): a line needs
// 100 / 5 = 20 steps.
inline constexpr quantity::Percent kTolerance{5 * decimal::kOne};
bool reads(quantity::Mass load, quantity::Mass division, quantity::Percent tolerance = kTolerance);
quantity::Mass least_load(quantity::Mass division, quantity::Percent tolerance = kTolerance);
// The smallest batch in which a line of `share` reads well: 10000 · division / (tolerance · share), so
// 2000 · division / share at 5 %. share > 0.
quantity::Mass least_batch(quantity::Mass division, quantity::Percent share,
                           quantity::Percent tolerance = kTolerance);

// --- what a scale can really tell; grams as double, for these are statistics ---
// Standard deviation that rounding alone gives a net weight, tare and load: d / √6.
double rounding_sd(double division_g);
// USP <41> Balances: 2 s / m ≤ tolerance, s from ten repeats but at least 0.41 d. 820 d at 0.10 %.
double least_weight(double division_g, double tolerance_percent, double repeatability_g = 0);
// u(m) = √(d²/6 + s² + L²/3): rounding, repeatability, linearity ± L.
double uncertainty(double division_g, double repeatability_g, double linearity_g);
// ± of each percentage (k = 2) that weighing with these divisions leaves; weights not all 0.
std::vector<quantity::Percent> percent_uncertainty(const std::vector<quantity::Mass>& weights,
                                                   const std::vector<quantity::Mass>& divisions);

}  // namespace scales
