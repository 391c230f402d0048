// Changes to a whole formula that a maker asks for in one breath: bring it to 100, change one line and let
// others give way, firmer or softer by a step. Each is worked out in full before it is taken; a locked line
// never changes. Exact: what is shared out goes by largest remainder, so that a formula that added to 100
// still does.
#pragma once

#include <string>
#include <vector>

#include "catalogue.h"
#include "formula.h"
#include "quantity.h"
#include "result.h"

namespace adjustment {

struct Change {
    std::size_t line = 0;
    quantity::Percent from, to;  // of the rest line: what it comes to
    bool operator==(const Change&) const = default;
};
struct Adjusted {
    formula::Formula formula;
    std::vector<Change> changes;  // only the lines that change, in their order
    bool operator==(const Adjusted&) const = default;
};

// The unlocked lines in proportion, so that all lines add to 100. With a rest line this is only needed when
// the others leave less than nothing for it: they are brought down until it comes to 0. formula_empty;
// nothing_gives_way: no unlocked line holds anything; locked_over_hundred (detail: their sum).
result::Result<Adjusted> to_hundred(const formula::Formula& formula);

// `line` at `percent`; what it takes or leaves is taken from or given to `givers` in proportion to what they
// hold (evenly where none holds anything); the rest line may be one of them. The sum stays as it was.
// line_missing, line_locked (also of a giver), nothing_gives_way: no givers, or `line` is one;
// gives_too_little (detail: the most the line could be), sum_over_hundred: the rest line is below nothing
// already.
result::Result<Adjusted> give_way(const formula::Formula& formula, std::size_t line,
                                  quantity::Percent percent, const std::vector<std::size_t>& givers);

// One step of firmness is one percent of wax: a change that a thumb notices on a cold spoon in a balm of a
// fifth wax (common practice, no source).
inline constexpr quantity::Percent kFirmnessStep = quantity::percent(1);

// The waxes in proportion by `steps` (below 0: softer) against the rest line where that is a liquid oil, else
// against the liquid oil there is most of. no_wax; no_oil; gives_too_little (detail: the wax it could have at
// most, or 0).
result::Result<Adjusted> firmer(const formula::Formula& formula, const catalogue::Catalogue& catalogue,
                                int steps);

// The batch in which `line` comes to `amount`: the nearest multiple of `division`, at least one.
// formula's own errors; line_missing; batch_zero: the line holds nothing; batch_too_large (over `most`).
result::Result<quantity::Mass> batch_for(const formula::Formula& formula, std::size_t line,
                                         quantity::Mass amount, quantity::Mass division, quantity::Mass most);

}  // namespace adjustment
