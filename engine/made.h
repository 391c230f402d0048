// Made parts: an infusion, a blend or a pre-dilution made beforehand and used as one ingredient. What such an
// ingredient is made of, how much has to be made, and a formula split into what it holds in the end.
// Knows formulas and the catalogue; which recipe a made part comes from is workspace's business.
#pragma once

#include <string>
#include <vector>

#include "catalogue.h"
#include "formula.h"
#include "quantity.h"
#include "result.h"

namespace made {

inline constexpr std::size_t kDeepest = 8;  // made parts within made parts

// Every line's percent of what stays: strained lines are 0 and the others add to exactly 100.
// Errors: those of formula::percents; made_empty.
result::Result<std::vector<quantity::Percent>> percents_of_product(const formula::Formula& formula);

struct Share {
    std::string ingredient, name;  // as a line has them: an id, or only a name
    quantity::Percent percent;
    bool operator==(const Share&) const = default;
};
struct Split {
    std::vector<Share>
        shares;  // each once, those of plain lines first; add to what the lines add to, exactly
    quantity::Percent unsplit;  // of parts that do not say all: in shares it stands under their holder's id
    bool operator==(const Split&) const = default;
};

// The formula's lines with every own ingredient that says its parts split into them, down to what is not made
// from others. A shipped ingredient is never split by what an own entry of its id says. Strained lines are
// split as if they stayed; leave them out before. Errors: made_loop, made_too_deep.
result::Result<Split> split(const formula::Formula& formula, const std::vector<quantity::Percent>& percents,
                            const catalogue::Catalogue& shipped,
                            const std::vector<catalogue::Ingredient>& own);

// made_loop for the first entry that holds itself, at once or by way of others; made_too_deep.
std::optional<result::Error> fault_of_parts(const std::vector<catalogue::Ingredient>& own);

// The ingredient that a formula comes to when it is made: its lines without the strained ones as parts that
// add to exactly 100, caps of its parts as caps of the whole, INCI names where nothing was strained out and
// all are known. made_empty when nothing stays. Id, names, source and standing are left to the caller.
result::Result<catalogue::Ingredient> ingredient_of(const formula::Formula& formula, catalogue::MadeAs as,
                                                    quantity::Percent yield,
                                                    const catalogue::Catalogue& known);

// What has to be weighed in all, strained lines included, to have this much of it; rounded up.
// yield: strained mass ÷ what was put in and stays ("80 g of oil from 100 g of oil").
result::Result<quantity::Mass> to_weigh(const formula::Formula& formula, quantity::Percent yield,
                                        quantity::Mass wanted);

}  // namespace made
