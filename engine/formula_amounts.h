// A formula said in amounts instead of percent: grams on a scale or parts of an old recipe, one for each
// line, all in one unit.
#pragma once

#include <cstdint>
#include <vector>

#include "formula.h"

namespace formula {

// The formula with the percents that these amounts are, by largest remainder, so that they add to exactly
// 100. The rest line stays the rest line: it comes to the percent of its amount. Refused: a count of amounts
// that is not the count of lines (line_missing), a negative amount, nothing but zeros (formula_empty), and a
// locked line whose percent would change (line_locked). Place: "lines[2]".
Changed set_amounts(Formula formula, const std::vector<std::int64_t>& amounts);

}  // namespace formula
