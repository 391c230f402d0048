// The edits on a formula and the sum that makes it whole.
// A locked line keeps its amount, its ingredient and its being the rest line or not; it may be moved. An edit
// that would change one is refused with line_locked, also where the change comes by way of another line.
// Knows no catalogue: whether an ingredient exists is for others to say.
#include "formula.h"

#include <algorithm>
#include <utility>

#include "sorting.h"

namespace formula {
namespace {

using quantity::Percent;
using result::Code;
using result::Error;

// Kettles on a bench: from a freezer to hot oil, with room on both sides.
constexpr std::int64_t kColdest = -100 * decimal::kOne, kHottest = 500 * decimal::kOne;

std::string place(std::string_view list, std::size_t index, std::string_view field = "") {
    std::string text = std::string(list) + "[" + std::to_string(index) + "]";
    if (!field.empty()) text += "." + std::string(field);
    return text;
}

std::optional<std::size_t> phase_index(const Formula& formula, std::string_view id) {
    for (std::size_t i = 0; i < formula.phases.size(); ++i)
        if (formula.phases[i].id == id) return i;
    return std::nullopt;
}

std::optional<Error> fault_of_percent(Percent percent, std::size_t line) {
    if (percent < Percent{0})
        return Error{Code::number_negative, place("lines", line, "percent"), decimal::print(percent.grid)};
    if (percent > quantity::kHundred)
        return Error{Code::number_too_large, place("lines", line, "percent"), decimal::print(percent.grid)};
    return std::nullopt;
}

std::optional<Error> fault_of_name(const std::string& ingredient, const std::string& name, std::size_t line) {
    if (ingredient.empty() && name.empty()) return Error{Code::name_empty, place("lines", line), ""};
    if (ingredient.size() > kMostNameBytes)
        return Error{Code::text_too_long, place("lines", line, "ingredient"), std::to_string(kMostNameBytes)};
    if (name.size() > kMostNameBytes)
        return Error{Code::text_too_long, place("lines", line, "name"), std::to_string(kMostNameBytes)};
    return std::nullopt;
}

std::optional<Error> fault_of_hold(const std::optional<Hold>& hold, std::size_t line) {
    if (!hold) return std::nullopt;
    if (hold->constituent.empty())
        return Error{Code::name_empty, place("lines", line, "hold.constituent"), ""};
    if (hold->constituent.size() > kMostNameBytes)
        return Error{Code::text_too_long, place("lines", line, "hold.constituent"),
                     std::to_string(kMostNameBytes)};
    if (hold->percent < Percent{0})
        return Error{Code::number_negative, place("lines", line, "hold.percent"),
                     decimal::print(hold->percent.grid)};
    if (hold->percent > quantity::kHundred)
        return Error{Code::number_too_large, place("lines", line, "hold.percent"),
                     decimal::print(hold->percent.grid)};
    return std::nullopt;
}

std::optional<Error> fault_of_line(const Line& line, std::size_t at) {
    if (auto fault = fault_of_name(line.ingredient, line.name, at)) return fault;
    if (auto fault = fault_of_percent(line.percent, at)) return fault;
    return fault_of_hold(line.hold, at);
}

std::optional<Error> fault_of_phase(const Phase& phase, std::size_t at) {
    if (phase.id.empty()) return Error{Code::name_empty, place("phases", at, "id"), ""};
    if (phase.id.size() > kMostNameBytes)
        return Error{Code::text_too_long, place("phases", at, "id"), std::to_string(kMostNameBytes)};
    const std::pair<std::string_view, std::optional<std::int64_t>> degrees[] = {
        {"hold_c", phase.hold_c}, {"add_below_c", phase.add_below_c}};
    for (const auto& [field, value] : degrees) {
        if (value && *value < kColdest)
            return Error{Code::number_negative, place("phases", at, field), decimal::print(*value)};
        if (value && *value > kHottest)
            return Error{Code::number_too_large, place("phases", at, field), decimal::print(*value)};
    }
    return std::nullopt;
}

Error no_line(std::size_t line) {
    return {Code::line_missing, place("lines", line), ""};
}
Error locked(std::size_t line) {
    return {Code::line_locked, place("lines", line), ""};
}
Error no_phase(std::string_view phase) {
    return {Code::phase_missing, "phases", std::string(phase)};
}

// What the rest line comes to, as a plain line may hold it.
Percent rest_kept(const Formula& formula) {
    const Percent rest = quantity::kHundred - stated_sum(formula);
    return std::clamp(rest, Percent{0}, quantity::kHundred);
}

std::optional<Error> free_rest(Formula& formula) {
    const auto rest = rest_line(formula);
    if (!rest) return std::nullopt;
    if (formula.lines[*rest].locked) return locked(*rest);
    formula.lines[*rest].percent = rest_kept(formula);
    formula.lines[*rest].rest = false;
    return std::nullopt;
}

std::size_t end_of_phase(const Formula& formula, std::string_view phase) {
    const std::size_t wanted = phase_index(formula, phase).value_or(formula.phases.size());
    std::size_t end = 0;
    for (std::size_t i = 0; i < formula.lines.size(); ++i)
        if (phase_index(formula, formula.lines[i].phase).value_or(formula.phases.size()) <= wanted)
            end = i + 1;
    return end;
}

void insert(Formula& formula, std::size_t at, Line line) {
    formula.lines.insert(formula.lines.begin() + static_cast<std::ptrdiff_t>(at), std::move(line));
}

Line take(Formula& formula, std::size_t at) {
    Line line = std::move(formula.lines[at]);
    formula.lines.erase(formula.lines.begin() + static_cast<std::ptrdiff_t>(at));
    return line;
}

}  // namespace

Changed add_line(Formula formula, Line line) {
    const std::size_t at = formula.lines.size();
    if (at >= kMostLines) return Error{Code::too_many, "lines", std::to_string(kMostLines)};
    if (line.rest) line.percent = {};
    if (auto fault = fault_of_line(line, at)) return *fault;
    if (!phase_index(formula, line.phase)) {
        auto with_phase = add_phase(std::move(formula), Phase{line.phase, {}, {}});
        if (!with_phase) return with_phase;
        formula = std::move(with_phase).value();
    }
    if (line.rest)
        if (auto fault = free_rest(formula)) return *fault;
    const std::size_t end = end_of_phase(formula, line.phase);
    insert(formula, end, std::move(line));
    return formula;
}

// A percent written into the rest line makes it a plain line: what is written is what is meant.
Changed set_percent(Formula formula, std::size_t line, Percent percent) {
    if (line >= formula.lines.size()) return no_line(line);
    if (formula.lines[line].locked) return locked(line);
    if (auto fault = fault_of_percent(percent, line)) return *fault;
    formula.lines[line].percent = percent;
    formula.lines[line].rest = false;
    return formula;
}

Changed set_ingredient(Formula formula, std::size_t line, std::string ingredient, std::string name) {
    if (line >= formula.lines.size()) return no_line(line);
    if (formula.lines[line].locked) return locked(line);
    if (auto fault = fault_of_name(ingredient, name, line)) return *fault;
    formula.lines[line].ingredient = std::move(ingredient);
    formula.lines[line].name = std::move(name);
    return formula;
}

Changed set_rest(Formula formula, std::size_t line, bool rest) {
    if (line >= formula.lines.size()) return no_line(line);
    if (formula.lines[line].rest == rest) return formula;
    if (formula.lines[line].locked) return locked(line);
    if (auto fault = free_rest(formula)) return *fault;
    if (rest) {
        formula.lines[line].percent = {};
        formula.lines[line].rest = true;
    }
    return formula;
}

Changed set_locked(Formula formula, std::size_t line, bool is_locked) {
    if (line >= formula.lines.size()) return no_line(line);
    formula.lines[line].locked = is_locked;
    return formula;
}

Changed set_strained(Formula formula, std::size_t line, bool strained) {
    if (line >= formula.lines.size()) return no_line(line);
    formula.lines[line].strained = strained;
    return formula;
}

Changed set_hold(Formula formula, std::size_t line, std::optional<Hold> hold) {
    if (line >= formula.lines.size()) return no_line(line);
    formula.lines[line].hold = std::move(hold);
    return formula;
}

// Between two phases the line stays in its own if that is one of them; coming from further away it joins the
// one it met first.
Changed move_line(Formula formula, std::size_t from, std::size_t to) {
    if (from >= formula.lines.size()) return no_line(from);
    if (to >= formula.lines.size()) return no_line(to);
    if (from == to) return formula;
    Line line = take(formula, from);
    const Line* before = to > 0 ? &formula.lines[to - 1] : nullptr;
    const Line* after = to < formula.lines.size() ? &formula.lines[to] : nullptr;
    const bool stays = (before != nullptr && before->phase == line.phase) ||
                       (after != nullptr && after->phase == line.phase);
    if (!stays) {
        const Line* met = to > from ? before : after;
        if (met == nullptr) met = before != nullptr ? before : after;
        line.phase = met->phase;
    }
    insert(formula, to, std::move(line));
    return formula;
}

Changed move_to_phase(Formula formula, std::size_t line, std::string_view phase) {
    if (line >= formula.lines.size()) return no_line(line);
    if (!phase_index(formula, phase)) return no_phase(phase);
    if (formula.lines[line].phase == phase) return formula;
    Line moved = take(formula, line);
    moved.phase = phase;
    const std::size_t end = end_of_phase(formula, phase);
    insert(formula, end, std::move(moved));
    return formula;
}

Changed remove_line(Formula formula, std::size_t line) {
    if (line >= formula.lines.size()) return no_line(line);
    if (formula.lines[line].locked) return locked(line);
    take(formula, line);
    return formula;
}

Changed add_phase(Formula formula, Phase phase) {
    const std::size_t at = formula.phases.size();
    if (at >= kMostPhases) return Error{Code::too_many, "phases", std::to_string(kMostPhases)};
    if (auto fault = fault_of_phase(phase, at)) return *fault;
    if (phase_index(formula, phase.id)) return Error{Code::phase_twice, place("phases", at, "id"), phase.id};
    formula.phases.push_back(std::move(phase));
    return formula;
}

Changed set_phase(Formula formula, std::size_t phase, Phase changed) {
    if (phase >= formula.phases.size()) return Error{Code::phase_missing, place("phases", phase), ""};
    if (auto fault = fault_of_phase(changed, phase)) return *fault;
    const auto other = phase_index(formula, changed.id);
    if (other && *other != phase) return Error{Code::phase_twice, place("phases", phase, "id"), changed.id};
    for (Line& line : formula.lines)
        if (line.phase == formula.phases[phase].id) line.phase = changed.id;
    formula.phases[phase] = std::move(changed);
    return formula;
}

Changed remove_phase(Formula formula, std::string_view phase) {
    const auto at = phase_index(formula, phase);
    if (!at) return no_phase(phase);
    for (const Line& line : formula.lines)
        if (line.phase == phase) return Error{Code::phase_in_use, place("phases", *at), std::string(phase)};
    formula.phases.erase(formula.phases.begin() + static_cast<std::ptrdiff_t>(*at));
    return formula;
}

std::optional<std::size_t> rest_line(const Formula& formula) {
    for (std::size_t i = 0; i < formula.lines.size(); ++i)
        if (formula.lines[i].rest) return i;
    return std::nullopt;
}

Percent stated_sum(const Formula& formula) {
    Percent sum;
    for (const Line& line : formula.lines)
        if (!line.rest) sum = sum + line.percent;
    return sum;
}

result::Result<std::vector<Percent>> percents(const Formula& formula) {
    if (formula.lines.empty()) return Error{Code::formula_empty, "lines", ""};
    const auto rest = rest_line(formula);
    std::vector<Percent> all;
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        const Line& line = formula.lines[i];
        if (line.rest && i != *rest) return Error{Code::rest_twice, place("lines", i, "rest"), ""};
        if (!line.rest)
            if (auto fault = fault_of_percent(line.percent, i)) return *fault;
        all.push_back(line.rest ? Percent{} : line.percent);
    }
    const Percent sum = stated_sum(formula);
    if (rest && sum > quantity::kHundred)
        return Error{Code::sum_over_hundred, "lines", decimal::print(sum.grid)};
    if (!rest && sum != quantity::kHundred)
        return Error{Code::sum_not_hundred, "lines", decimal::print(sum.grid)};
    if (rest) all[*rest] = quantity::kHundred - sum;
    return all;
}

// Two things are put right rather than refused, since what is meant is plain: a rest line's own percent is 0,
// and lines are brought into the order of their phases, those of one phase staying in the order they had.
result::Result<Formula> checked(Formula formula) {
    if (formula.phases.size() > kMostPhases)
        return Error{Code::too_many, "phases", std::to_string(kMostPhases)};
    if (formula.lines.size() > kMostLines) return Error{Code::too_many, "lines", std::to_string(kMostLines)};
    for (std::size_t i = 0; i < formula.phases.size(); ++i) {
        if (auto fault = fault_of_phase(formula.phases[i], i)) return *fault;
        if (*phase_index(formula, formula.phases[i].id) != i)
            return Error{Code::phase_twice, place("phases", i, "id"), formula.phases[i].id};
    }
    std::optional<std::size_t> rest;
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        Line& line = formula.lines[i];
        if (line.rest && rest) return Error{Code::rest_twice, place("lines", i, "rest"), ""};
        if (line.rest) rest = i;
        if (line.rest) line.percent = {};
        if (auto fault = fault_of_line(line, i)) return *fault;
        if (!phase_index(formula, line.phase))
            return Error{Code::phase_missing, place("lines", i, "phase"), line.phase};
    }
    sorting::stable(formula.lines, [&](const Line& a, const Line& b) {
        return *phase_index(formula, a.phase) < *phase_index(formula, b.phase);
    });
    return formula;
}

}  // namespace formula
