// See weigh_out.h. The acts are gone through one by one; whole numbers on the grid, each share worked out
// from the percents anew, so that no rounding is carried along.
#include "weigh_out.h"

#include <algorithm>
#include <utility>

#include "sorting.h"
#include "weigh_out_replay.h"

namespace weigh_out {

using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;
using result::Code;
using result::Error;

namespace {

std::string place(const char* list, std::size_t index, const char* field) {
    return std::string(list) + "[" + std::to_string(index) + "]" + field;
}

}  // namespace

std::vector<Percent> percents_of(const std::vector<Mass>& masses) {
    std::vector<std::int64_t> weights;
    bool any = false;
    for (const Mass mass : masses) {
        weights.push_back(mass.grid);
        any = any || mass > kNothing;
    }
    if (!any) return {};
    std::vector<Percent> all;
    const auto parts = decimal::share_out(kHundred.grid, weights);
    for (const std::int64_t part : *parts)
        all.push_back({part});
    return all;
}

Replay::Replay(const WeighOut& weighing) : plan(weighing.plan), jug(weighing.plan.jug) {
    for (const Line& line : plan.lines) {
        percents.push_back(line.percent);
        targets.push_back(line.grams);
        batch = batch + line.grams;
    }
    poured.resize(targets.size());
    kept.resize(targets.size());
    closed.resize(targets.size());
    for (const Act& act : weighing.acts)
        take(act);
}

Mass Replay::tolerance(std::size_t line) const {
    const Line& of = plan.lines[line];
    if (of.capped) return of.division;
    return std::max(of.division, quantity::share_of(targets[line], kTolerance));
}

bool Replay::is_done(std::size_t line) const {
    if (closed[line]) return true;
    if (poured[line] < targets[line] - tolerance(line) || is_over(line)) return false;
    return poured[line] > kNothing || targets[line] == kNothing;
}

bool Replay::is_over(std::size_t line) const {
    return !kept[line] && !closed[line] && poured[line] > targets[line] + tolerance(line);
}

Mass Replay::in_end(std::size_t line) const {
    return is_done(line) ? poured[line] : std::max(targets[line], poured[line]);
}

Mass Replay::share(std::size_t line, Percent percent, Mass of) const {
    const std::int64_t step = plan.lines[line].division.grid;
    // share = percent · of / 100, counted in steps; in one rounding
    const std::int64_t whole = kHundred.grid * step;
    const std::int64_t steps = plan.lines[line].capped ? decimal::scale_down(percent.grid, of.grid, whole)
                                                       : decimal::scale_nearest(percent.grid, of.grid, whole);
    return {steps * step};
}

void Replay::retarget() {
    for (std::size_t i = 0; i < size(); ++i) {
        const Mass wanted = share(i, percents[i], batch);
        targets[i] = closed[i] || kept[i] ? std::max(closed[i] ? kNothing : wanted, poured[i]) : wanted;
    }
    Mass total;
    for (std::size_t i = 0; i < size(); ++i)
        total = total + in_end(i);
    for (std::size_t i = 0; i < size(); ++i) {  // the others may have been rounded down
        const auto& most = plan.lines[i].most;
        while (most && targets[i] > poured[i] &&
               targets[i] > Mass{decimal::scale_down(total.grid, most->grid, kHundred.grid)}) {
            const Mass less = std::min(plan.lines[i].division, targets[i] - poured[i]);
            targets[i] = targets[i] - less;
            total = total - less;
        }
    }
}

std::vector<Percent> Replay::adjusted(std::size_t line, Percent percent, bool rest) const {
    std::vector<Percent> to = percents;
    if (std::any_of(kept.begin(), kept.end(), [](char c) { return c != 0; }) ||
        std::any_of(closed.begin(), closed.end(), [](char c) { return c != 0; })) {
        std::vector<Mass> finals;  // what it has become, not what it once was to be
        for (std::size_t i = 0; i < size(); ++i)
            finals.push_back(in_end(i));
        to = percents_of(finals);
        if (to.empty()) return {};
    }
    std::vector<std::int64_t> weights(size());
    Percent stay = percent;
    bool any = false;
    for (const bool begun : {true, false}) {  // where nothing that is begun gives way, all the others do
        stay = percent;
        for (std::size_t i = 0; i < size(); ++i) {
            const bool gives = i != line && to[i] > Percent{0} &&
                               (rest ? plan.lines[i].rest : !begun || poured[i] > kNothing);
            weights[i] = gives ? to[i].grid : 0;
            any = any || gives;
            if (!gives && i != line) stay = stay + to[i];
        }
        if (any || rest) break;
    }
    if (!any || stay > kHundred) return {};
    const auto parts = decimal::share_out((kHundred - stay).grid, weights);
    if (!parts) return {};
    for (std::size_t i = 0; i < size(); ++i)
        if (weights[i] > 0) to[i] = {(*parts)[i]};
    to[line] = percent;
    return to;
}

void Replay::take(const Act& act) {
    switch (act.deed) {
        case Deed::pour:
            poured[act.line] = poured[act.line] + act.amount;
            in_jug = in_jug + act.amount;
            if (act.amount > kNothing) {
                if (std::exchange(closed[act.line], char{0}))
                    targets[act.line] = share(act.line, percents[act.line], batch);
                kept[act.line] = 0;
            }
            break;
        case Deed::proportion:
            batch = act.amount;
            retarget();
            for (std::size_t i = 0; i < size(); ++i)
                if (is_over(i)) {
                    kept[i] = 1;
                    targets[i] = poured[i];
                }
            if (act.line < size() && act.rest && !is_done(act.line)) {  // there is no more of it
                closed[act.line] = 1;
                targets[act.line] = poured[act.line];
            }
            break;
        case Deed::take_up: {
            const Percent now{decimal::scale_nearest(poured[act.line].grid, kHundred.grid,
                                                     std::max<std::int64_t>(1, batch.grid))};
            const Percent both = percents[act.line] + percents[act.other];
            const Mass left = targets[act.line] + targets[act.other] - poured[act.line];
            percents[act.line] = std::min(now, both);
            percents[act.other] = both - percents[act.line];
            targets[act.line] = poured[act.line];
            targets[act.other] = share(act.other, kHundred, std::max(kNothing, left));
            break;
        }
        case Deed::accept:
            (poured[act.line] < targets[act.line] ? closed : kept)[act.line] = 1;
            targets[act.line] = poured[act.line];
            break;
        case Deed::adjust: {
            auto to = adjusted(act.line, act.percent, act.rest);
            if (to.empty()) break;
            percents = std::move(to);
            batch = act.amount;
            std::fill(kept.begin(), kept.end(), char{0});
            retarget();
            break;
        }
        case Deed::jug:
            jug = act.amount;
            in_jug = {};
            break;
        case Deed::fill:
            first_fill = act.amount;
            break;
    }
}

Standing standing_of(const WeighOut& weighing) {
    const Replay at(weighing);
    Standing standing;
    standing.batch = at.batch;
    standing.in_jug = at.in_jug;
    standing.jug = at.jug;
    standing.first_fill = at.first_fill;
    standing.finished = at.size() > 0;
    std::vector<Mass> finals;
    for (std::size_t i = 0; i < at.size(); ++i) {
        Row row{at.percents[i],  at.targets[i], at.poured[i], {},
                at.tolerance(i), at.is_done(i), at.is_over(i)};
        if (!row.done) row.left = std::max(kNothing, row.target - row.poured);
        standing.finished = standing.finished && row.done;
        finals.push_back(at.in_end(i));
        standing.total = standing.total + finals.back();
        standing.poured = standing.poured + row.poured;
        standing.rows.push_back(row);
    }
    standing.percents = percents_of(finals);
    return standing;
}

std::vector<std::size_t> order(const Plan& plan) {
    std::vector<std::size_t> all;
    const auto of_phase = [&](const std::string& phase, bool waxes) {
        for (std::size_t i = 0; i < plan.lines.size(); ++i)
            if (plan.lines[i].phase == phase && (plan.lines[i].role == "wax") == waxes) all.push_back(i);
    };
    for (const formula::Phase& phase : plan.phases)
        for (const bool waxes : {true, false})
            of_phase(phase.id, waxes);
    return all;
}

std::optional<std::size_t> next(const WeighOut& weighing, const Standing& standing, std::size_t from) {
    const std::vector<std::size_t> all = order(weighing.plan);
    const auto here = static_cast<std::size_t>(std::find(all.begin(), all.end(), from) - all.begin());
    for (std::size_t step = 1; step <= all.size(); ++step) {
        const std::size_t line = all[(here + step) % all.size()];
        if (!standing.rows[line].done) return line;
    }
    return std::nullopt;
}

Shows shows(const WeighOut& weighing, const Standing& standing, std::size_t line,
            const std::vector<scales::Scale>& bench) {
    scales::Bench on{bench, std::nullopt};
    const Mass left = standing.rows[line].left;
    if (standing.jug) on.jug = scales::Jug{"", *standing.jug + standing.in_jug};
    Shows shows;
    shows.place = scales::assign({left}, weighing.plan.division, on).front();
    shows.zeroed = left;
    if (standing.jug && (shows.place.in_jug || bench.empty()))
        shows.not_zeroed = *standing.jug + standing.in_jug + left;
    return shows;
}

namespace {

result::Result<WeighOut> done(WeighOut weighing, Act act) {
    if (weighing.acts.size() >= kMostActs) return Error{Code::too_many, "acts", std::to_string(kMostActs)};
    weighing.acts.push_back(std::move(act));
    return weighing;
}

}  // namespace

result::Result<WeighOut> pour(WeighOut weighing, std::size_t line, Mass shown, bool zeroed, std::string at) {
    if (line >= weighing.plan.lines.size()) return Error{Code::line_missing, place("lines", line, ""), ""};
    Act act{Deed::pour, line, 0, shown, {}, false, zeroed, shown, std::move(at)};
    if (!zeroed) {
        const Standing standing = standing_of(weighing);
        if (!standing.jug) return Error{Code::field_missing, "jug_g", "jug_g"};
        act.amount = shown - *standing.jug - standing.in_jug;
    }
    if (act.amount < kNothing)
        return Error{Code::number_negative, place("lines", line, ".shows_g"), decimal::print(shown.grid)};
    if (act.amount > kLargest)
        return Error{Code::number_too_large, place("lines", line, ".shows_g"), decimal::print(kLargest.grid)};
    weighing.typed.reset();
    return done(std::move(weighing), std::move(act));
}

WeighOut take_back(WeighOut weighing) {
    if (weighing.acts.empty()) return weighing;
    if (weighing.acts.back().deed == Deed::pour) weighing.at = weighing.acts.back().line;
    weighing.acts.pop_back();
    weighing.typed.reset();
    return weighing;
}

WeighOut fill(WeighOut weighing, Mass net, std::string at) {
    if (!weighing.acts.empty() && weighing.acts.back().deed == Deed::fill) weighing.acts.pop_back();
    weighing.acts.push_back({Deed::fill, 0, 0, net, {}, false, true, net, std::move(at)});
    return weighing;
}

WeighOut take_jug(WeighOut weighing, Mass empty, std::string at) {
    weighing.acts.push_back({Deed::jug, 0, 0, empty, {}, false, true, empty, std::move(at)});
    return weighing;
}

std::optional<Error> fault_of(const WeighOut& weighing) {
    const std::size_t lines = weighing.plan.lines.size();
    if (lines == 0) return Error{Code::formula_empty, "lines", ""};
    if (lines > formula::kMostLines)
        return Error{Code::too_many, "lines", std::to_string(formula::kMostLines)};
    if (weighing.acts.size() > kMostActs) return Error{Code::too_many, "acts", std::to_string(kMostActs)};
    Mass total;
    Percent sum;
    for (std::size_t i = 0; i < lines; ++i) {
        const Line& line = weighing.plan.lines[i];
        if (line.division <= kNothing || line.division > kLargest)
            return Error{Code::division_invalid, place("lines", i, ".division_g"),
                         decimal::print(line.division.grid)};
        if (line.grams > kLargest)
            return Error{Code::batch_too_large, place("lines", i, ".grams"), decimal::print(kLargest.grid)};
        const auto is_its = [&](const formula::Phase& phase) { return phase.id == line.phase; };
        if (std::none_of(weighing.plan.phases.begin(), weighing.plan.phases.end(), is_its))
            return Error{Code::phase_missing, place("lines", i, ".phase"), line.phase};
        total = total + line.grams;
        sum = sum + line.percent;
    }
    if (sum != kHundred) return Error{Code::sum_not_hundred, "lines", decimal::print(sum.grid)};
    if (total <= kNothing) return Error{Code::batch_zero, "lines", ""};
    for (std::size_t i = 0; i < weighing.acts.size(); ++i) {
        const Act& act = weighing.acts[i];
        if (act.line >= lines || act.other >= lines || (act.deed == Deed::take_up && act.line == act.other))
            return Error{Code::line_missing, place("acts", i, ".line"),
                         std::to_string(std::max(act.line, act.other))};
        const bool whole = act.deed == Deed::proportion || act.deed == Deed::adjust;
        if (act.amount > kLargest || act.amount < kNothing || (whole && act.amount == kNothing))
            return Error{Code::batch_too_large, place("acts", i, ".grams"), decimal::print(kLargest.grid)};
    }
    if (weighing.at >= lines) return Error{Code::line_missing, "at", std::to_string(weighing.at)};
    return std::nullopt;
}

}  // namespace weigh_out
