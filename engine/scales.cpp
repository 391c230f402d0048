// Choosing scales, and the small statistics of weighing. Where a line stands in the jug is taken as if all
// lines went into one jug in their order; a bench that uses several is never overloaded by that.
#include "scales.h"

#include <algorithm>
#include <cmath>

#include "sorting.h"

namespace scales {

using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;

namespace {

bool carries(const Scale& scale, Mass load) {
    return scale.capacity <= Mass{0} || load <= scale.capacity;
}

bool shows(const Scale& scale, Mass division) {
    return scale.division > Mass{0} && division.grid % scale.division.grid == 0;
}

// Indices: first the scales that show `division`, coarsest first, then the others, finest first.
std::vector<std::size_t> by_preference(const Bench& bench, Mass division) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < bench.scales.size(); ++i)
        if (bench.scales[i].division > Mass{0}) order.push_back(i);
    sorting::stable(order, [&](std::size_t a, std::size_t b) {
        const Scale &one = bench.scales[a], &other = bench.scales[b];
        if (shows(one, division) != shows(other, division)) return shows(one, division);
        return shows(one, division) ? one.division > other.division : one.division < other.division;
    });
    return order;
}

Place place_of(Mass load, Mass in_jug, Mass division, const Bench& bench,
               const std::vector<std::size_t>& order) {
    const auto at = [&](std::size_t scale, bool jug) {
        const Mass steps = shows(bench.scales[scale], division) ? division : bench.scales[scale].division;
        return Place{scale, steps, jug, jug ? in_jug + load : load, true};
    };
    for (const bool fine : {true, false})
        for (const bool jug : {true, false})
            for (const std::size_t scale : order) {
                if (shows(bench.scales[scale], division) != fine || (jug && !bench.jug)) continue;
                if (carries(bench.scales[scale], jug ? in_jug + load : load)) return at(scale, jug);
            }
    std::size_t strongest = order.front();
    for (const std::size_t scale : order)
        if (bench.scales[scale].capacity > bench.scales[strongest].capacity) strongest = scale;
    Place place = at(strongest, false);
    place.carried = false;
    return place;
}

}  // namespace

std::vector<Place> assign(const std::vector<Mass>& loads, Mass division, const Bench& bench) {
    const std::vector<std::size_t> order = by_preference(bench, division);
    std::vector<Place> places;
    Mass in_jug = bench.jug ? bench.jug->empty : Mass{0};
    for (const Mass load : loads) {
        places.push_back(order.empty() ? Place{{}, division, false, load, true}
                                       : place_of(load, in_jug, division, bench, order));
        in_jug = in_jug + load;
    }
    return places;
}

bool reads(Mass load, Mass division, Percent tolerance) {
    return load >= least_load(division, tolerance);
}

Mass least_load(Mass division, Percent tolerance) {
    return Mass{decimal::scale_up(division.grid, kHundred.grid, tolerance.grid)};
}

Mass least_batch(Mass division, Percent share, Percent tolerance) {
    return Mass{decimal::scale_up(least_load(division, tolerance).grid, kHundred.grid, share.grid)};
}

double rounding_sd(double division_g) {
    return division_g / std::sqrt(6.0);
}

double least_weight(double division_g, double tolerance_percent, double repeatability_g) {
    constexpr double kFloor = 0.41;  // of a division; d / √6 = 0.408 d, rounded as the chapter has it
    return 2 * std::max(repeatability_g, kFloor * division_g) / (tolerance_percent / 100);
}

double uncertainty(double division_g, double repeatability_g, double linearity_g) {
    return std::sqrt(division_g * division_g / 6 + repeatability_g * repeatability_g +
                     linearity_g * linearity_g / 3);
}

// u(p_i) = √((1 − p_i)² u_i² + p_i² Σ_{j≠i} u_j²) / Σm
std::vector<Percent> percent_uncertainty(const std::vector<Mass>& weights,
                                         const std::vector<Mass>& divisions) {
    double sum = 0, all = 0;
    std::vector<double> squares;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        sum += decimal::to_double(weights[i].grid);
        const double sd = rounding_sd(decimal::to_double(divisions[i].grid));
        squares.push_back(weights[i] == Mass{0} ? 0 : sd * sd);  // nothing is weighed for it
        all += squares[i];
    }
    std::vector<Percent> out;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const double part = decimal::to_double(weights[i].grid) / sum;
        const double one =
            std::sqrt((1 - part) * (1 - part) * squares[i] + part * part * (all - squares[i])) / sum;
        out.push_back({static_cast<std::int64_t>(
            std::floor(2 * one * decimal::to_double(kHundred.grid) * decimal::kOne + 0.5))});
    }
    return out;
}

}  // namespace scales
