// See adjustment.h. All of it goes through one thing: hand new percents to some lines, keep the rest line a
// rest line, and list what changed. Leans on decimal::share_out for every proportion.
#include "adjustment.h"

#include <algorithm>
#include <utility>

namespace adjustment {
namespace {

using formula::Formula;
using quantity::Percent;
using result::Code;
using result::Error;

// What each line holds now; the rest line what it comes to, which may be below nothing.
std::vector<Percent> held(const Formula& formula) {
    std::vector<Percent> all;
    for (const formula::Line& line : formula.lines)
        all.push_back(line.rest ? quantity::kHundred - formula::stated_sum(formula) : line.percent);
    return all;
}

std::string place(std::size_t line) {
    return "lines[" + std::to_string(line) + "]";
}

Adjusted taken(const Formula& before, const std::vector<Percent>& to) {
    const std::vector<Percent> from = held(before);
    Adjusted adjusted{before, {}};
    for (std::size_t i = 0; i < to.size(); ++i) {
        if (!before.lines[i].rest) adjusted.formula.lines[i].percent = to[i];
        if (from[i] != to[i]) adjusted.changes.push_back({i, from[i], to[i]});
    }
    return adjusted;
}

// Shares `units` over some lines in proportion to what they hold, or evenly where none holds anything.
std::vector<std::int64_t> shares(std::int64_t units, const std::vector<Percent>& all,
                                 const std::vector<std::size_t>& lines) {
    std::vector<std::int64_t> weights;
    bool any = false;
    for (const std::size_t line : lines) {
        weights.push_back(std::max<std::int64_t>(0, all[line].grid));
        any = any || weights.back() > 0;
    }
    if (!any) std::fill(weights.begin(), weights.end(), 1);
    return decimal::share_out(units, weights).value();
}

std::int64_t sum_of(const std::vector<Percent>& all, const std::vector<std::size_t>& lines) {
    std::int64_t sum = 0;
    for (const std::size_t line : lines)
        sum += all[line].grid;
    return sum;
}

// Moves `difference` (above 0: onto `takers`) between two groups of lines. Fails where the giving group holds
// less.
result::Result<std::vector<Percent>> moved(std::vector<Percent> all, const std::vector<std::size_t>& takers,
                                           const std::vector<std::size_t>& givers, std::int64_t difference) {
    const auto& giving = difference >= 0 ? givers : takers;
    const std::int64_t amount = difference >= 0 ? difference : -difference;
    const std::int64_t there = sum_of(all, giving);
    if (amount > there) {
        const std::int64_t most = sum_of(all, takers) + (difference >= 0 ? there : -there);
        return Error{Code::gives_too_little, "", decimal::print(most)};
    }
    // What the givers keep is shared out, so that each keeps its proportion; the takers likewise what they
    // then hold.
    for (const auto* group : {&takers, &givers}) {
        const std::int64_t after = sum_of(all, *group) + (group == &takers ? difference : -difference);
        const std::vector<std::int64_t> part = shares(after, all, *group);
        for (std::size_t i = 0; i < group->size(); ++i)
            all[(*group)[i]] = {part[i]};
    }
    return all;
}

}  // namespace

result::Result<Adjusted> to_hundred(const Formula& formula) {
    if (formula.lines.empty()) return Error{Code::formula_empty, "lines", ""};
    std::vector<Percent> all = held(formula);
    std::vector<std::size_t> free;
    std::int64_t locked = 0;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (formula.lines[i].rest) continue;
        if (formula.lines[i].locked)
            locked += all[i].grid;
        else
            free.push_back(i);
    }
    const auto rest = formula::rest_line(formula);
    if (rest && all[*rest] >= Percent{0}) return taken(formula, all);
    if (!rest && formula::stated_sum(formula) == quantity::kHundred) return taken(formula, all);
    const std::int64_t wanted = quantity::kHundred.grid - locked;
    if (wanted < 0) return Error{Code::locked_over_hundred, "lines", decimal::print(locked)};
    if (sum_of(all, free) == 0) return Error{Code::nothing_gives_way, "lines", ""};
    const std::vector<std::int64_t> part = shares(wanted, all, free);
    for (std::size_t i = 0; i < free.size(); ++i)
        all[free[i]] = {part[i]};
    if (rest) all[*rest] = {};
    return taken(formula, all);
}

result::Result<Adjusted> give_way(const Formula& formula, std::size_t line, Percent percent,
                                  const std::vector<std::size_t>& givers) {
    if (line >= formula.lines.size()) return Error{Code::line_missing, place(line), ""};
    if (formula.lines[line].locked) return Error{Code::line_locked, place(line), ""};
    for (const std::size_t giver : givers) {
        if (giver >= formula.lines.size()) return Error{Code::line_missing, place(giver), ""};
        if (formula.lines[giver].locked) return Error{Code::line_locked, place(giver), ""};
        if (giver == line) return Error{Code::nothing_gives_way, place(line), ""};
    }
    if (givers.empty()) return Error{Code::nothing_gives_way, place(line), ""};
    if (percent < Percent{0})
        return Error{Code::number_negative, place(line) + ".percent", decimal::print(percent.grid)};
    if (percent > quantity::kHundred)
        return Error{Code::number_too_large, place(line) + ".percent", decimal::print(percent.grid)};
    const std::vector<Percent> all = held(formula);
    for (const Percent one : all)
        if (one < Percent{0})
            return Error{Code::sum_over_hundred, "lines", decimal::print(formula::stated_sum(formula).grid)};
    const auto to = moved(all, {line}, givers, percent.grid - all[line].grid);
    if (!to) return Error{to.error().code, place(line), to.error().detail};
    return taken(formula, *to);
}

result::Result<Adjusted> firmer(const Formula& formula, const catalogue::Catalogue& catalogue, int steps) {
    const auto role = [&](std::size_t line) -> std::string_view {
        const catalogue::Ingredient* one =
            catalogue::find_ingredient(catalogue, formula.lines[line].ingredient);
        return one ? std::string_view(one->role) : std::string_view();
    };
    const std::vector<Percent> all = held(formula);
    std::vector<std::size_t> waxes, oil;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const formula::Line& line = formula.lines[i];
        if (line.locked || all[i] < Percent{0}) continue;
        if (role(i) == "wax" && !line.rest && all[i] > Percent{0}) waxes.push_back(i);
        if (role(i) != "liquid_oil") continue;
        if (oil.empty() || line.rest || (!formula.lines[oil[0]].rest && all[i] > all[oil[0]])) oil = {i};
    }
    if (waxes.empty()) return Error{Code::no_wax, "lines", ""};
    if (oil.empty()) return Error{Code::no_oil, "lines", ""};
    const auto to = moved(all, waxes, oil, steps * kFirmnessStep.grid);
    if (!to) return to.error();
    return taken(formula, *to);
}

result::Result<quantity::Mass> batch_for(const Formula& formula, std::size_t line, quantity::Mass amount,
                                         quantity::Mass division, quantity::Mass most) {
    if (line >= formula.lines.size()) return Error{Code::line_missing, place(line), ""};
    if (division.grid <= 0)
        return Error{Code::division_invalid, "batch.division_g", decimal::print(division.grid)};
    const auto percents = formula::percents(formula);
    if (!percents) return percents.error();
    const std::int64_t part = (*percents)[line].grid;
    if (part == 0 || amount.grid <= 0) return Error{Code::batch_zero, place(line), ""};
    const std::int64_t exact_most = decimal::scale_down(most.grid, part, quantity::kHundred.grid);
    if (amount.grid > exact_most) return Error{Code::batch_too_large, place(line), decimal::print(most.grid)};
    const std::int64_t units =
        decimal::scale_nearest(amount.grid, quantity::kHundred.grid, part * division.grid);
    return quantity::Mass{std::max<std::int64_t>(1, units) * division.grid};
}

}  // namespace adjustment
