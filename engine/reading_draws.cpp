// The volume of a branch, before what is thrown away: rest^(s-1) line^k / (m! (s-1)!) with m above the line,
// k below it and s coordinates of the simplex; the m! is what the way from gaps to percents shrinks. Neither
// a logarithm nor a power function: both differ between the libraries of the two builds.
#include "reading_draws.h"

#include <algorithm>
#include <cmath>

namespace reading {
namespace {

struct Large {  // mantissa and exponent: volumes go far beyond what a double holds
    double mantissa = 1;
    int exponent = 0;
    void times(double factor) {
        int shift = 0;
        mantissa = std::frexp(mantissa * factor, &shift);
        exponent += shift;
    }
};

Large volume_of(const Shape& shape, std::size_t simplex, double rest) {
    Large volume;
    for (std::size_t i = 1; i < simplex; ++i)
        volume.times(rest / static_cast<double>(i));
    for (std::size_t i = 1; i <= shape.above.size(); ++i)
        volume.times(1 / static_cast<double>(i));
    for (std::size_t i = 0; i < shape.below.size(); ++i)
        volume.times(shape.line);
    return volume;
}

double power(double base, std::size_t exponent) {
    double product = 1;
    for (; exponent > 0; exponent /= 2, base *= base)
        if (exponent % 2 == 1) product *= base;
    return product;
}

}  // namespace

ExactDraws::ExactDraws(std::size_t items, const std::vector<Branch>& branches, const std::vector<Row>& rows,
                       std::uint64_t seed)
    : rows_(rows), gaps_(items), chance_(seed) {
    std::vector<Large> volumes;
    for (std::size_t i = 0; i < branches.size(); ++i) {
        const Shape& shape = branches[i].shape;
        Way way{&branches[i], i, shape.above.size() + shape.free.size(), shape.gaps.row_low[0], 0};
        // What is shut in one direction has no volume beside what is open, or a sampler of its own.
        if (way.simplex == 0 || way.rest <= 0) continue;
        volumes.push_back(volume_of(shape, way.simplex, way.rest));
        ways_.push_back(way);
    }
    int most = volumes.empty() ? 0 : volumes[0].exponent;
    for (const Large& volume : volumes)
        if (volume.mantissa > 0) most = std::max(most, volume.exponent);
    double sum = 0;
    for (std::size_t i = 0; i < ways_.size(); ++i)
        ways_[i].up_to = sum += std::ldexp(volumes[i].mantissa, std::max(volumes[i].exponent - most, -1000));
    if (!(sum > 0)) ways_.clear();
    for (Way& way : ways_)
        way.up_to /= sum;
}

bool ExactDraws::draw(double* percents, std::size_t& place) {
    const double which = chance_.unit();
    std::size_t at = 0;
    while (at + 1 < ways_.size() && which >= ways_[at].up_to)
        ++at;
    const Way& way = ways_[at];
    place = way.at;
    const Shape& shape = way.branch->shape;
    const std::size_t above = shape.above.size(), below = shape.below.size();
    double rest = way.rest;
    for (std::size_t j = 0; j < below; ++j)
        rest -= gaps_[above + j] = shape.line * chance_.unit();
    if (rest <= 0) return false;
    if (below > 0 && chance_.unit() >= power(rest / way.rest, way.simplex - 1)) return false;
    sorted_.resize(way.simplex - 1);
    for (double& one : sorted_)
        one = chance_.unit();
    std::sort(sorted_.begin(), sorted_.end());
    double before = 0;
    for (std::size_t j = 0; j < way.simplex; ++j) {
        const double next = j + 1 < way.simplex ? sorted_[j] : 1;
        gaps_[j < above ? j : j + below] = (next - before) * rest;
        before = next;
    }
    shape.to_percents(gaps_, percents);
    for (const Row& row : rows_) {
        const double sum = sum_of(row.weights, percents);
        if (sum < row.low || sum > row.high) return false;
    }
    return true;
}

}  // namespace reading
