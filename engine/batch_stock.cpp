// Stock against need. Shares of made parts are rounded up on the grid, so that the reach is never told too
// far.
#include "batch_stock.h"

#include <algorithm>

namespace batch {
namespace {

using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;

constexpr int kDeepest = 12;       // of parts within parts
constexpr int kMostVisits = 2000;  // beyond, a part is taken as one ingredient

std::string lowered(std::string_view text) {
    std::string low(text);
    for (char& c : low)
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    return low;
}

struct Shelf {
    const std::vector<Stock>& stock;
    const catalogue::Catalogue& catalogue;
    std::vector<bool> used;
    int visits = 0;

    // What is at hand of it; nothing when it is not said.
    std::optional<Mass> find(const std::string& key) {
        const catalogue::Ingredient* known = catalogue::find_ingredient(catalogue, key);
        const std::string name = known != nullptr ? lowered(known->name) : lowered(key);
        std::optional<Mass> sum;
        for (std::size_t i = 0; i < stock.size(); ++i) {
            if (stock[i].ingredient != key && lowered(stock[i].ingredient) != name) continue;
            used[i] = true;
            sum = sum.value_or(Mass{0}) + stock[i].grams;
        }
        return sum;
    }
};

struct Wanted {
    std::string key;
    Percent share;  // of the batch
    Take take;
};

void need(Reach& reach, Shelf& shelf, const Wanted& wanted, int depth) {
    const auto have = shelf.find(wanted.key);
    const catalogue::Ingredient* known = catalogue::find_ingredient(shelf.catalogue, wanted.key);
    // What takes weeks to infuse is not made out of its oil at the bench.
    const bool mixed = known != nullptr && !known->parts.empty() &&
                       !(known->made && known->made->as == catalogue::MadeAs::infusion);
    if (!have && mixed && depth < kDeepest && ++shelf.visits < kMostVisits) {
        const auto part_of = [](Percent whole, Percent part) {
            return Percent{decimal::scale_up(whole.grid, part.grid, kHundred.grid)};
        };
        for (const catalogue::Part& part : known->parts)
            need(reach, shelf,
                 {part.ingredient,
                  part_of(wanted.share, part.percent),
                  {wanted.take.line, part_of(wanted.take.of_line, part.percent)}},
                 depth + 1);
        return;
    }
    for (Supply& supply : reach.supplies) {
        if (supply.ingredient != wanted.key) continue;
        supply.share = supply.share + wanted.share;
        supply.takes.push_back(wanted.take);
        return;
    }
    reach.supplies.push_back({wanted.key, wanted.share, {wanted.take}, have, {}, {}, false});
}

// The batch at which this supply is used up.
std::optional<Mass> bound_of(const Supply& supply, Mass division) {
    if (!supply.have || supply.share <= Percent{0}) return std::nullopt;
    const std::int64_t whole_steps = supply.have->grid / division.grid * division.grid;
    return Mass{decimal::scale_down(whole_steps, kHundred.grid, supply.share.grid)};
}

}  // namespace

Reach supplies_of(const formula::Formula& formula, const std::vector<Percent>& percents,
                  const std::vector<Stock>& stock, const catalogue::Catalogue& catalogue) {
    Reach reach;
    Shelf shelf{stock, catalogue, std::vector<bool>(stock.size(), false)};
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        const formula::Line& line = formula.lines[i];
        if (percents[i] <= Percent{0}) continue;
        need(reach, shelf,
             {line.ingredient.empty() ? line.name : line.ingredient, percents[i], {i, kHundred}}, 0);
    }
    for (std::size_t i = 0; i < stock.size(); ++i)
        if (!shelf.used[i]) reach.not_needed.push_back(stock[i].ingredient);
    return reach;
}

std::optional<Mass> reach_of(const Reach& reach, Mass division) {
    std::optional<Mass> furthest;
    for (const Supply& supply : reach.supplies)
        if (const auto bound = bound_of(supply, division); bound && (!furthest || *bound < *furthest))
            furthest = bound;
    return furthest;
}

bool settle(Reach& reach, const std::vector<Mass>& grams, Mass total, Mass division) {
    bool suffices = true;
    const auto furthest = reach_of(reach, division);
    for (Supply& supply : reach.supplies) {
        supply.need = Mass{0};
        for (const Take& take : supply.takes)
            supply.need = supply.need +
                          Mass{decimal::scale_up(grams[take.line].grid, take.of_line.grid, kHundred.grid)};
        if (!supply.have) continue;
        supply.left = *supply.have - supply.need;
        suffices = suffices && *supply.left >= Mass{0};
        const auto bound = bound_of(supply, division);
        supply.first_out = bound && (*bound < total + division || bound == furthest);
    }
    return suffices;
}

}  // namespace batch
