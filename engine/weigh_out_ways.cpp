// See weigh_out_ways.h. A full rescue is f = max(1, poured ÷ target) over the lines with too much; it goes as
// far as what is at hand and the pot let it.
#include "weigh_out_ways.h"

#include <algorithm>
#include <utility>

#include "weigh_out_replay.h"

namespace weigh_out {
namespace {

using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;
using result::Code;
using result::Error;

// The batch in which this much is this percent of it; beyond the largest where it cannot be said.
Mass batch_of(Mass mass, Percent percent) {
    if (percent.grid <= 0 || decimal::scale_down(kLargest.grid, percent.grid, kHundred.grid) < mass.grid)
        return kLargest + Mass{1};
    return {decimal::scale_nearest(mass.grid, kHundred.grid, percent.grid)};
}

// Of all lines of one ingredient.
template <class Value>
Value of_all(const Plan& plan, std::size_t line, const std::vector<Value>& values) {
    Value sum;
    const Line& one = plan.lines[line];
    for (std::size_t i = 0; i < values.size(); ++i) {
        const Line& other = plan.lines[i];
        if (other.ingredient == one.ingredient && (!one.ingredient.empty() || other.name == one.name))
            sum = sum + values[i];
    }
    return sum;
}

struct Limit {
    Mass batch = kLargest;
    std::optional<std::size_t> line;
    bool pot = false;
};

// The largest batch of these percents that what is at hand and the pot allow, before any rounding.
Limit limit_of(const Replay& at, const std::vector<Percent>& percents) {
    Limit limit;
    if (at.plan.pot && *at.plan.pot < limit.batch) limit = {*at.plan.pot, std::nullopt, true};
    for (std::size_t i = 0; i < at.size(); ++i) {
        const auto& have = at.plan.lines[i].have;
        const Percent sum = of_all(at.plan, i, percents);
        if (!have || at.closed[i] || sum <= Percent{0}) continue;
        if (decimal::scale_down(kLargest.grid, sum.grid, kHundred.grid) < have->grid) continue;
        const Mass most{decimal::scale_down(have->grid, kHundred.grid, sum.grid)};
        if (most < limit.batch) limit = {most, i, false};
    }
    return limit;
}

// And after it.
bool suffices(const Plan& plan, const Standing& standing) {
    std::vector<Mass> needed;
    for (const Row& row : standing.rows)
        needed.push_back(row.poured + row.left);
    for (std::size_t i = 0; i < needed.size(); ++i)
        if (plan.lines[i].have && standing.rows[i].left > kNothing &&
            of_all(plan, i, needed) > *plan.lines[i].have)
            return false;
    return !plan.pot || standing.total <= *plan.pot;
}

// More than the containers take, with the loss on top; for a plan without containers more than was meant.
Mass beyond(const Plan& plan, Mass total) {
    Mass meant;
    for (const Line& line : plan.lines)
        meant = meant + line.grams;
    return std::max(kNothing, total - meant);
}

void work_out(Option& option, const WeighOut& weighing, Act act) {
    option.after = weighing;
    option.after.typed.reset();
    option.after.acts.push_back(std::move(act));
    option.then = standing_of(option.after);
    option.beyond = beyond(weighing.plan, option.then.total);
}

Option in_proportion(const WeighOut& weighing, const Replay& at, std::size_t line) {
    Option option;
    option.way = Way::proportion;
    const bool over = at.is_over(line);
    Mass wanted = over ? at.batch : kNothing;
    for (std::size_t i = 0; i < at.size(); ++i) {
        const bool counts = over ? at.is_over(i) : i == line || (!at.kept[i] && !at.closed[i]);
        const bool as_is = i == line || at.is_over(i);  // else right within its tolerance
        if (counts && at.poured[i] > kNothing)
            wanted = std::max(wanted, batch_of(as_is ? at.poured[i] : std::min(at.poured[i], at.targets[i]),
                                               at.percents[i]));
    }
    const auto gains = [&](Mass batch) {
        return batch > kNothing && batch <= kLargest && (over ? batch > at.batch : batch < at.batch) &&
               at.share(line, at.percents[line], batch) != at.targets[line];
    };
    const Limit limit = limit_of(at, at.percents);
    for (Mass batch = wanted;; batch = std::min(batch, limit.batch)) {
        option.possible = gains(batch);
        if (!option.possible) break;
        work_out(option, weighing, {Deed::proportion, line, 0, batch, {}, !over, true, {}, ""});
        if (!over || suffices(weighing.plan, option.then)) break;
        option.short_of = limit.line;
        option.pot_full = limit.pot;
        if (batch > limit.batch) continue;
        const std::size_t finest = limit.line.value_or(line);  // rounding took a step too much
        batch = batch - std::max(Mass{1}, batch_of(at.plan.lines[finest].division, at.percents[finest]));
    }
    if (!option.possible) {
        option.after = weighing;
        option.then = standing_of(weighing);
        option.whole = false;
        if (over && wanted > limit.batch) {
            option.short_of = limit.line;
            option.pot_full = limit.pot;
        }
        return option;
    }
    const Replay then(option.after);
    option.whole = !then.kept[line] && !then.closed[line];
    return option;
}

std::optional<Option> taken_up(const WeighOut& weighing, const Replay& at, std::size_t line,
                               std::size_t other) {
    const Mass left = at.targets[line] + at.targets[other] - at.poured[line];
    const Line& taker = at.plan.lines[other];
    if (at.closed[other] || at.is_over(other) || left < kNothing || at.targets[other] == kNothing)
        return std::nullopt;
    if (at.poured[other] > left || (taker.have && left > *taker.have && left > at.targets[other]))
        return std::nullopt;
    Option option;
    option.way = Way::take_up;
    option.other = other;
    work_out(option, weighing, {Deed::take_up, line, other, {}, {}, false, true, {}, ""});
    if (option.then.rows[other].over || (taker.most && option.then.percents[other] > *taker.most))
        return std::nullopt;
    return option;
}

}  // namespace

std::vector<Option> options(const WeighOut& weighing, std::size_t line) {
    std::vector<Option> all;
    if (line >= weighing.plan.lines.size() || weighing.acts.size() >= kMostActs) return all;
    const Replay at(weighing);
    if (at.is_done(line)) return all;
    if (!at.is_over(line)) {
        Option more;
        more.way = Way::add_more;
        more.after = weighing;
        more.then = standing_of(weighing);
        all.push_back(std::move(more));
    }
    all.push_back(in_proportion(weighing, at, line));
    const Line& of = weighing.plan.lines[line];
    for (const bool rest : {true, false})
        for (std::size_t other = 0; other < at.size(); ++other) {
            const Line& taker = weighing.plan.lines[other];
            if (other == line || taker.rest != rest || (!rest && (of.role.empty() || taker.role != of.role)))
                continue;
            if (auto option = taken_up(weighing, at, line, other)) all.push_back(std::move(*option));
        }
    Option accept;
    work_out(accept, weighing, {Deed::accept, line, 0, {}, {}, false, true, {}, ""});
    all.push_back(std::move(accept));
    return all;
}

result::Result<Option> adjusted(const WeighOut& weighing, std::size_t line, Percent percent,
                                bool rest_gives) {
    const std::string place = "lines[" + std::to_string(line) + "]";
    if (line >= weighing.plan.lines.size()) return Error{Code::line_missing, place, ""};
    if (weighing.acts.size() >= kMostActs) return Error{Code::too_many, "acts", std::to_string(kMostActs)};
    if (percent < Percent{0} || percent > kHundred)
        return Error{Code::number_too_large, place + ".percent", decimal::print(percent.grid)};
    const Replay at(weighing);
    const std::vector<Percent> to = at.adjusted(line, percent, rest_gives);
    if (to.empty()) return Error{Code::nothing_gives_way, place, ""};
    Mass batch;
    for (std::size_t i = 0; i < at.size(); ++i)
        batch = batch + at.in_end(i);
    const std::vector<char> none(at.size());
    if (at.kept == none && at.closed == none) batch = at.batch;
    for (std::size_t i = 0; i < at.size(); ++i) {
        const Mass there = at.is_over(i) ? at.poured[i] : std::min(at.poured[i], at.targets[i]);
        if (there > kNothing) batch = std::max(batch, batch_of(there, to[i]));
    }
    const Limit limit = limit_of(at, to);
    Option option;
    option.way = Way::proportion;
    if (batch <= kLargest)
        work_out(option, weighing, {Deed::adjust, line, 0, batch, percent, rest_gives, true, {}, ""});
    if (batch > kLargest || !suffices(weighing.plan, option.then))
        return Error{Code::batch_too_large, limit.line ? "lines[" + std::to_string(*limit.line) + "]" : place,
                     decimal::print(std::min(batch, limit.batch).grid)};
    return option;
}

std::int64_t count_of(const Plan& plan, const Standing& standing) {
    const Mass each = standing.first_fill.value_or(plan.each);
    if (each <= kNothing) return 0;
    const Mass filled{decimal::scale_down(standing.poured.grid, (kHundred - plan.loss).grid, kHundred.grid)};
    return filled.grid / each.grid;
}

}  // namespace weigh_out
