// A formula in grams for a given amount: from a mass or from containers, with loss on top, rounded to what
// the scale shows so that the lines add up to the batch exactly.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "catalogue.h"
#include "density.h"
#include "formula.h"
#include "quantity.h"
#include "result.h"

namespace batch {

enum class Amount { none, grams, containers, people, stock };

// How the fill of one container is said: by weight (fill_g), else by volume (fill_percent of the nominal
// volume, through the blend's density), else the container's usual weight from the catalogue (upper end, so
// that the pour suffices).
struct Containers {
    std::string id;
    std::int64_t count = 1;
    std::optional<quantity::Mass> fill_g;
    std::optional<quantity::Percent> fill_percent;
    bool operator==(const Containers&) const = default;
};
struct Stock {
    std::string ingredient;  // id or name
    quantity::Mass grams;
    bool operator==(const Stock&) const = default;
};

struct Request {
    Amount amount = Amount::none;
    quantity::Mass grams;                   // Amount::grams: what is to be weighed, loss included
    std::vector<Containers> containers;     // Amount::containers
    std::int64_t people = 0, each = 0;      // kept, worked out by a later version
    std::vector<Stock> stock;               // kept, worked out by a later version
    std::optional<quantity::Percent> loss;  // not said: kUsualLoss for containers
    quantity::Mass division{100};           // 0.01 g
    bool operator==(const Request&) const = default;
};

// `request` for a mass instead of what it said; what its other ways of saying it held is kept.
Request of_grams(Request request, quantity::Mass grams);

inline constexpr quantity::Percent kUsualLoss{5 * decimal::kOne};  // common practice, no source
inline constexpr quantity::Mass kLargest{1'000'000 *
                                         decimal::kOne};  // 1 t: beyond it a typing slip is likelier
inline constexpr std::int64_t kMostContainers = 10000;

enum class FillFrom { said_weight, said_volume, usual_weight };
struct Fill {  // one kind of container
    std::string container;
    std::int64_t count = 0;
    quantity::Mass each;
    FillFrom from = FillFrom::usual_weight;
    bool operator==(const Fill&) const = default;
};

struct Line {
    std::size_t line = 0;         // index into the formula
    quantity::Percent percent;    // as the formula says
    quantity::Mass grams;         // as the scale will show
    quantity::Percent actual;     // percent of the batch that these grams are, nearest on the grid
    std::int64_t error_grid = 0;  // (grams ÷ exact share − 1) in %, nearest on the grid; 0 for a share of 0
    bool operator==(const Line&) const = default;
};

struct Batch {
    quantity::Mass total, asked;  // asked: before rounding up to the division
    quantity::Mass fill;          // what the containers take; for Amount::grams total less loss
    quantity::Percent loss;
    bool loss_usual = false;  // the loss was not said, common practice was taken
    quantity::Mass division;
    std::vector<Fill> fills;
    density::Blend density;
    std::vector<Line> lines;  // one per line of the formula, in its order; grams add to total exactly
    bool operator==(const Batch&) const = default;
};

// asked = fill ÷ (1 − loss) for containers, request.grams for a mass; total = asked rounded up to the
// division; lines by largest remainder. A line with a cap for `product` (own ingredients) is never rounded
// above it.
result::Result<Batch> make(const formula::Formula& formula, const Request& request,
                           const catalogue::Catalogue& catalogue, std::string_view product);

}  // namespace batch
