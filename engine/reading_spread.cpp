#include "reading_spread.h"

#include <algorithm>
#include <cmath>

namespace reading {
namespace {

// Linear between the two nearest in order; puts those from `from` on into a rough order around them.
double quantile(std::vector<double>& values, double share, std::size_t from) {
    const double at = share * static_cast<double>(values.size() - 1);
    const auto below = static_cast<std::size_t>(at);
    const auto place = values.begin() + static_cast<std::ptrdiff_t>(below);
    std::nth_element(values.begin() + static_cast<std::ptrdiff_t>(from), place, values.end());
    if (place + 1 == values.end()) return *place;
    const double above = *std::min_element(place + 1, values.end());
    return *place + (at - static_cast<double>(below)) * (above - *place);
}

double mean_of(const double* from, std::size_t count) {
    double sum = 0;
    for (std::size_t i = 0; i < count; ++i)
        sum += from[i];
    return sum / static_cast<double>(count);
}

}  // namespace

Likely likely_of(const std::vector<double>& draws, std::size_t items, std::size_t item) {
    Likely likely;
    std::vector<double> own;
    for (std::size_t at = item; at < draws.size(); at += items)
        own.push_back(draws[at]);
    if (own.empty()) return likely;
    likely.mean = mean_of(own.data(), own.size());
    double squares = 0;
    for (const double one : own)
        squares += (one - likely.mean) * (one - likely.mean);
    if (own.size() > 1) likely.deviation = std::sqrt(squares / static_cast<double>(own.size() - 1));
    likely.effective = static_cast<double>(own.size());
    const std::size_t twentieth = own.size() / 20;
    likely.p05 = quantile(own, 0.05, 0);
    likely.median = quantile(own, 0.5, twentieth > 0 ? twentieth - 1 : 0);
    likely.p95 = quantile(own, 0.95, (own.size() - 1) / 2);
    return likely;
}

void compare_walks(const std::vector<double>& draws, std::size_t items, std::size_t item, std::size_t walks,
                   Likely& likely) {
    const std::size_t pieces = 2 * walks, length = draws.size() / items / pieces;
    if (length < 4) return;
    const auto n = static_cast<double>(length), m = static_cast<double>(pieces);
    std::vector<double> own(pieces * length), means;
    for (std::size_t i = 0; i < own.size(); ++i)
        own[i] = draws[i * items + item];
    for (std::size_t p = 0; p < pieces; ++p) {
        means.push_back(mean_of(&own[p * length], length));
        for (std::size_t i = 0; i < length; ++i)
            own[p * length + i] -= means[p];
    }
    // Mean over the pieces of the products of what lies `lag` apart.
    const auto covariance = [&](std::size_t lag) {
        double sum = 0;
        for (std::size_t p = 0; p < pieces; ++p) {
            const double* const piece = &own[p * length];
            for (std::size_t i = 0; i + lag < length; ++i)
                sum += piece[i] * piece[i + lag];
        }
        return sum / (n * m);
    };
    const double whole = mean_of(means.data(), pieces);
    double between = 0;
    for (const double one : means)
        between += (one - whole) * (one - whole) / (m - 1);
    const double within = covariance(0) * n / (n - 1), variance = within * (n - 1) / n + between;
    if (!(within > 1e-24)) return;  // it does not move
    likely.r_hat = std::sqrt(variance / within);
    double sum = 0, last = 2;
    for (std::size_t lag = 0; lag + 1 < length; lag += 2) {
        const double first = lag == 0 ? 1 : 1 - (within - covariance(lag)) / variance;
        const double pair = first + 1 - (within - covariance(lag + 1)) / variance;
        if (pair <= 0) break;
        last = std::min(last, pair);
        sum += last;
    }
    likely.effective = std::min(n * m, n * m / std::max(2 * sum - 1, 1e-3));
}

}  // namespace reading
