// A formula in grams for a given amount: from a mass, from containers, for so many people or from what is at
// hand, with loss on top, rounded to what the scales show so that the lines add up to the batch exactly.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "batch_fill.h"
#include "batch_stock.h"
#include "catalogue.h"
#include "density.h"
#include "formula.h"
#include "quantity.h"
#include "result.h"
#include "scales.h"

namespace batch {

enum class Amount { none, grams, containers, people, stock };

struct Request {
    Amount amount = Amount::none;
    quantity::Mass grams;                   // Amount::grams: what is to be weighed, loss included
    std::vector<Containers> containers;     // Amount::containers
    std::int64_t people = 0, each = 0;      // Amount::people: so many units for each of them
    std::vector<Stock> stock;               // Amount::stock: goes as far as the first that runs out
    std::optional<quantity::Percent> loss;  // not said: kUsualLoss on what is filled, else none
    quantity::Mass division{100};           // 0.01 g
    std::optional<Containers> unit;         // what one unit for a person is; not said: `each` is grams
    bool operator==(const Request&) const = default;
};

// `request` for a mass instead of what it said; what its other ways of saying it held is kept.
Request of_grams(Request request, quantity::Mass grams);

inline constexpr quantity::Percent kUsualLoss{5 * decimal::kOne};  // common practice, no source

struct Line {
    std::size_t line = 0;         // index into the formula
    quantity::Percent percent;    // as the formula says
    quantity::Mass grams;         // as the scale will show
    quantity::Percent actual;     // percent of the batch that these grams are, nearest on the grid
    std::int64_t error_grid = 0;  // (grams ÷ exact share − 1) in %, nearest on the grid; 0 for a share of 0
    scales::Place place;          // the scale it goes to
    quantity::Percent uncertain;  // ± of `actual` that the scales' steps leave, k = 2
    bool operator==(const Line&) const = default;
};

struct Batch {
    quantity::Mass total, asked;  // asked: before rounding to the division
    quantity::Mass fill;          // what the containers take; for a mass or stock total less loss
    quantity::Percent loss;
    bool loss_usual = false;  // the loss was not said, common practice was taken
    quantity::Mass division;  // as asked; a line on a coarser scale has that one's
    std::vector<Fill> fills;
    density::Blend density;              // at room temperature
    std::optional<std::int64_t> pour_c;  // as the phases say
    std::optional<density::Blend> warm;  // when it is poured; not where there is water in it
    std::optional<Reach> reach;          // Amount::stock
    std::vector<Line> lines;  // one per line of the formula, in its order; grams add to total exactly
    bool operator==(const Batch&) const = default;
};

// asked = fill ÷ (1 − loss) for containers and people, request.grams for a mass, as far as the stock goes for
// stock; total = asked rounded up to the division (down for stock); lines by largest remainder. A line that
// none of the bench's scales carries at the division goes to a coarser one and is rounded to that
// (batch_rounding.h). A line with a cap for `product` (own ingredients) is never rounded above it.
result::Result<Batch> make(const formula::Formula& formula, const Request& request,
                           const catalogue::Catalogue& catalogue, std::string_view product,
                           const scales::Bench& bench = {});

// One step of its scale is more of this line than the tolerance allows.
bool reads_badly(const Line& line, quantity::Mass total);

}  // namespace batch
