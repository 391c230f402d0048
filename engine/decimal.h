// Exact decimals: text to an integer on a grid of 10^-places and back. The only place where rounding is
// decided. Comma and point are read alike; what could mean two numbers is refused. Knows no unit and no
// locale.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "result.h"

namespace decimal {

inline constexpr int kPlaces = 4;            // percent, gram and millilitre are kept to 0.0001
inline constexpr std::int64_t kOne = 10000;  // 1 on that grid
inline constexpr std::int64_t kLargest = 100'000'000LL * kOne;

// Reads "12", "12.5", "12,5", ".5", "1/2", "1 1/2", "½", "−3"; spaces around are fine, a space or thin space
// or apostrophe between groups of three digits too ("1 234,5"). Refused: "1,234.5", "1.234,5", "1,234,567",
// "12..3", "", "nan", "1e400", letters. The error's place is "character N" (1-based). Fractions that do not
// end on the grid are rounded half away from zero; decimals finer than the grid are refused
// (number_too_fine).
result::Result<std::int64_t> read(std::string_view text);

// Plain arithmetic as typed on the keypad: + - * / × ÷ ( ) over numbers as above, e.g. "250/12".
// Worked out exactly as a fraction and rounded once, half away from zero.
result::Result<std::int64_t> calculate(std::string_view text);

// A double that came out of JSON; refused when it is not finite or lies off the grid.
result::Result<std::int64_t> from_double(double value);
double to_double(std::int64_t grid);
// What was worked out in double, to a multiple of `step` on the grid: to the nearest, or outward on one side,
// so that a bound stays true. A thousandth of the grid counts as lying on it. Finite, within kLargest.
enum class Toward { nearest, below, above };
std::int64_t rounded(double value, Toward toward = Toward::nearest, std::int64_t step = 1);

enum class Sign { point, comma };

// Shortest form ("12.5") or with exactly `places` digits after the sign, rounded half away from zero.
std::string print(std::int64_t grid, Sign sign = Sign::point);
std::string print_fixed(std::int64_t grid, int places, Sign sign = Sign::point);
// Shortest form of a number kept in steps of 10^-places instead.
std::string print_fine(std::int64_t steps, int places, Sign sign = Sign::point);

// a * b / c, rounded half away from zero / down / up, without overflow for |a*b| up to 2^126. c > 0.
std::int64_t scale_nearest(std::int64_t a, std::int64_t b, std::int64_t c);
std::int64_t scale_down(std::int64_t a, std::int64_t b, std::int64_t c);
std::int64_t scale_up(std::int64_t a, std::int64_t b, std::int64_t c);

// Largest remainder (Hamilton): shares `units` over `weights` (non-negative, not all 0) so that the parts add
// up exactly and each is less than one unit off its share. Left-over units go to the largest remainders; ties
// to the larger weight, then to the earlier place. `most[i]` (empty: none) is the most units part i may get;
// when the rest cannot be placed one unit each, cap_leaves_no_room.
result::Result<std::vector<std::int64_t>> share_out(std::int64_t units,
                                                    const std::vector<std::int64_t>& weights,
                                                    const std::vector<std::int64_t>& most = {});

}  // namespace decimal
