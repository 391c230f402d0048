// Exact decimals: printing, scaling and sharing out in whole steps of the grid. Reading is in
// decimal_read.cpp. Products are taken in 128 bits, which g++ and clang have on every target we build for,
// wasm32 included. No floating point except at the named crossings from_double, to_double and rounded.
#include "decimal.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <limits>

#include "sorting.h"

namespace decimal {
namespace {

__extension__ typedef __int128 Wide;

constexpr std::int64_t kMost = std::numeric_limits<std::int64_t>::max();
constexpr std::int64_t kLeast = std::numeric_limits<std::int64_t>::min();

// Floor of a * b / c and what is left over, 0 <= rest < c.
struct Divided {
    Wide quotient, rest;
};
Divided floored(std::int64_t a, std::int64_t b, Wide c) {
    assert(c > 0);
    const Wide product = static_cast<Wide>(a) * b;
    Divided divided{product / c, product % c};
    if (divided.rest < 0) {
        divided.quotient -= 1;
        divided.rest += c;
    }
    return divided;
}

// A result outside 64 bits stops at the end of the range: it is far beyond kLargest, which callers check.
std::int64_t narrowed(Wide value) {
    if (value > kMost) return kMost;
    if (value < kLeast) return kLeast;
    return static_cast<std::int64_t>(value);
}

std::string digits_of(std::uint64_t value) {
    std::string reversed;
    do {
        reversed.push_back(static_cast<char>('0' + value % 10));
        value /= 10;
    } while (value != 0);
    return {reversed.rbegin(), reversed.rend()};
}

std::uint64_t magnitude_of(std::int64_t grid) {
    return grid < 0 ? ~static_cast<std::uint64_t>(grid) + 1 : static_cast<std::uint64_t>(grid);
}

std::string joined(bool negative, std::string_view digits, std::size_t places, Sign sign) {
    std::string text = negative ? "-" : "";
    text += digits.substr(0, digits.size() - places);
    if (places > 0) {
        text += sign == Sign::comma ? ',' : '.';
        text += digits.substr(digits.size() - places);
    }
    return text;
}

}  // namespace

std::int64_t scale_nearest(std::int64_t a, std::int64_t b, std::int64_t c) {
    const Wide product = static_cast<Wide>(a) * b;
    const Divided divided = floored(a, b, c);
    const Wide twice = divided.rest * 2;
    const bool up = product < 0 ? twice > c : twice >= c;  // a half goes away from zero
    return narrowed(divided.quotient + (up ? 1 : 0));
}

std::int64_t scale_down(std::int64_t a, std::int64_t b, std::int64_t c) {
    return narrowed(floored(a, b, c).quotient);
}

std::int64_t scale_up(std::int64_t a, std::int64_t b, std::int64_t c) {
    const Divided divided = floored(a, b, c);
    return narrowed(divided.quotient + (divided.rest > 0 ? 1 : 0));
}

result::Result<std::int64_t> from_double(double value) {
    if (!std::isfinite(value)) return result::Code::number_malformed;
    if (value > to_double(kLargest) || value < -to_double(kLargest)) return result::Code::number_too_large;
    // A decimal of the grid, read from text by any correct reader, is the double nearest to grid / kOne, and
    // the division below gives that same double: up to kLargest there are 12 digits, a double holds 15.
    const auto grid = static_cast<std::int64_t>(std::floor(value * static_cast<double>(kOne) + 0.5));
    if (to_double(grid) != value) return result::Code::number_too_fine;
    return grid;
}

double to_double(std::int64_t grid) {
    return static_cast<double>(grid) / static_cast<double>(kOne);
}

std::int64_t rounded(double value, Toward toward, std::int64_t step) {
    constexpr double kHair = 1e-3;
    const double steps = value * static_cast<double>(kOne) / static_cast<double>(step);
    const double hair = kHair / static_cast<double>(step);
    const double whole = toward == Toward::below   ? std::floor(steps + hair)
                         : toward == Toward::above ? std::ceil(steps - hair)
                                                   : std::floor(steps + 0.5);
    return static_cast<std::int64_t>(whole) * step;
}

std::string print_fixed(std::int64_t grid, int places, Sign sign) {
    const auto shown = static_cast<std::size_t>(std::clamp(places, 0, 18));
    constexpr auto kept = static_cast<std::size_t>(kPlaces);
    std::uint64_t magnitude = magnitude_of(grid);
    if (shown < kept) {
        std::uint64_t step = 1;
        for (std::size_t place = shown; place < kept; ++place)
            step *= 10;
        magnitude = magnitude / step + (magnitude % step >= step / 2 ? 1 : 0);
    }
    std::string digits = digits_of(magnitude);
    if (shown > kept) digits.append(shown - kept, '0');
    if (digits.size() <= shown) digits.insert(0, shown + 1 - digits.size(), '0');
    return joined(grid < 0 && magnitude != 0, digits, shown, sign);
}

std::string print(std::int64_t grid, Sign sign) {
    return print_fine(grid, kPlaces, sign);
}

std::string print_fine(std::int64_t steps, int places, Sign sign) {
    const auto kept = static_cast<std::size_t>(std::clamp(places, 0, 18));
    std::string digits = digits_of(magnitude_of(steps));
    if (digits.size() <= kept) digits.insert(0, kept + 1 - digits.size(), '0');
    std::string text = joined(steps < 0, digits, kept, sign);
    if (kept == 0) return text;
    while (text.back() == '0')
        text.pop_back();
    if (text.back() == '.' || text.back() == ',') text.pop_back();
    return text;
}

// Hamilton 1791: q_i = units * w_i / sum(w); everybody gets floor(q_i), the rest goes one by one to the
// largest remainders. A part without remainder never gets one, so no part is a whole unit off its share.
result::Result<std::vector<std::int64_t>> share_out(std::int64_t units,
                                                    const std::vector<std::int64_t>& weights,
                                                    const std::vector<std::int64_t>& most) {
    assert(most.empty() || most.size() == weights.size());
    if (units < 0) return result::Code::number_negative;
    Wide sum = 0;
    for (const std::int64_t weight : weights) {
        if (weight < 0) return result::Code::number_negative;
        sum += weight;
    }
    if (sum == 0) return result::Code::formula_empty;

    std::vector<std::int64_t> parts(weights.size());
    std::vector<Wide> rests(weights.size());
    std::vector<std::size_t> takers;
    Wide left = units;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const Divided divided = floored(units, weights[i], sum);
        parts[i] = narrowed(divided.quotient);
        rests[i] = divided.rest;
        left -= parts[i];
        if (!most.empty() && parts[i] > most[i]) return result::Code::cap_leaves_no_room;
        if (rests[i] > 0 && (most.empty() || parts[i] < most[i])) takers.push_back(i);
    }
    if (left > static_cast<Wide>(takers.size())) return result::Code::cap_leaves_no_room;
    sorting::stable(takers, [&](std::size_t a, std::size_t b) {
        return rests[a] != rests[b] ? rests[a] > rests[b] : weights[a] > weights[b];
    });
    for (std::size_t i = 0; i < static_cast<std::size_t>(left); ++i)
        parts[takers[i]] += 1;
    return parts;
}

}  // namespace decimal
