#include "swap.h"

#include <algorithm>

#include "sorting.h"

namespace swap {
namespace {

using catalogue::Catalogue;
using catalogue::Ingredient;
using decimal::kOne;
using formula::Formula;
using quantity::Percent;
using result::Code;
using result::Error;

// Of what can be told by weight how much of another does as well.
constexpr std::string_view kByWeight[] = {"wax",      "soft_wax",   "hard_fat",  "butter",
                                          "soft_fat", "liquid_oil", "thickener", "water"};

bool in_a_row(const Catalogue& catalogue, std::string_view id) {
    for (const catalogue::StandIn& row : catalogue.stand_ins)
        if (row.of == id || row.by == id) return true;
    return false;
}

// The id that the rows may have: an own ingredient without a row counts as what it is based on.
std::string_view known_as(const Catalogue& catalogue, std::string_view id) {
    if (in_a_row(catalogue, id)) return id;
    const Ingredient* one = catalogue::find_ingredient(catalogue, id);
    return one && !one->based_on.empty() ? std::string_view(one->based_on) : id;
}

// The row that leads from one to the other, as it stands or turned round.
std::optional<StandIn> row_between(const Catalogue& catalogue, std::string_view from, std::string_view to) {
    for (const catalogue::StandIn& row : catalogue.stand_ins)
        if (row.of == from && row.by == to)
            return StandIn{row.by, row.factor, row.range,  Basis::factor,
                           "",     row.note,   row.source, row.standing};
    for (const catalogue::StandIn& row : catalogue.stand_ins)
        if (row.of == to && row.by == from) {
            const auto turned = [](std::int64_t factor) {
                return decimal::scale_nearest(kOne, kOne, factor);
            };
            return StandIn{row.of,
                           turned(row.factor),
                           {turned(row.range.max), turned(row.range.min)},
                           Basis::worked_out,
                           "",
                           "",
                           std::string(kWorkedOut),
                           source::Standing::estimate};
        }
    return std::nullopt;
}

std::optional<StandIn> over_a_third(const Catalogue& catalogue, std::string_view from, std::string_view to) {
    for (const catalogue::StandIn& row : catalogue.stand_ins) {
        if (row.of == row.by) continue;
        for (const std::string& third : {row.of, row.by}) {
            if (third == from || third == to) continue;
            const auto there = row_between(catalogue, from, third), on = row_between(catalogue, third, to);
            if (!there || !on) continue;
            const auto times = [](std::int64_t a, std::int64_t b) {
                return std::max<std::int64_t>(1, decimal::scale_nearest(a, b, kOne));
            };
            StandIn found = *on;
            found.factor = times(there->factor, on->factor);
            found.range = {times(there->range.min, on->range.min), times(there->range.max, on->range.max)};
            found.basis = Basis::worked_out;
            found.by_way_of = third;
            found.source = kWorkedOut;
            found.standing = source::Standing::estimate;
            return found;
        }
    }
    return std::nullopt;
}

std::optional<StandIn> between(const Catalogue& catalogue, const Ingredient& from, const Ingredient& to) {
    const std::string_view one = known_as(catalogue, from.id), other = known_as(catalogue, to.id);
    std::optional<StandIn> found = row_between(catalogue, one, other);
    if (!found && in_a_row(catalogue, one) && in_a_row(catalogue, other))
        found = over_a_third(catalogue, one, other);
    if (!found && from.role == to.role) {
        if (by_weight(from.role)) {
            found.emplace();
            found->source = kWorkedOut;
        }
        for (const catalogue::StandIn& row : catalogue.stand_ins)
            if (found && row.of == row.by && row.of == from.role) {
                found->factor = row.factor;
                found->range = row.range;
                found->basis = Basis::factor;
                found->note = row.note;
                found->source = row.source;
                found->standing = row.standing;
            }
    }
    if (found) found->ingredient = to.id;
    return found;
}

std::string place(std::size_t line) {
    return "lines[" + std::to_string(line) + "]";
}

std::string_view role_of(const Catalogue& catalogue, const formula::Line& line) {
    const Ingredient* one = catalogue::find_ingredient(catalogue, line.ingredient);
    return one ? std::string_view(one->role) : std::string_view();
}

// The line that takes up a difference; none: no line may.
std::optional<std::size_t> giver(const Formula& formula, const std::vector<bool>& out,
                                 const std::vector<Percent>& all, const Catalogue& catalogue) {
    std::optional<std::size_t> best;
    bool best_is_oil = false;
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        const formula::Line& line = formula.lines[i];
        if (out[i] || line.locked) continue;
        if (line.rest) return i;
        const bool oil = role_of(catalogue, line) == "liquid_oil";
        if (best && (best_is_oil != oil ? best_is_oil : all[*best] >= all[i])) continue;
        best = i;
        best_is_oil = oil;
    }
    return best;
}

// The unlocked line that holds it already, other than those that go.
std::optional<std::size_t> line_of(const Formula& formula, std::string_view ingredient,
                                   const std::vector<bool>& out) {
    for (std::size_t i = 0; i < formula.lines.size(); ++i)
        if (!out[i] && !formula.lines[i].locked && formula.lines[i].ingredient == ingredient) return i;
    return std::nullopt;
}

Percent scaled(Percent percent, std::int64_t factor) {
    if (factor == kOne) return percent;
    return {decimal::scale_nearest(percent.grid, factor, kOne * 100) * 100};  // to 0.01 %
}

}  // namespace

std::string_view basis_name(Basis basis) {
    constexpr std::string_view kNames[] = {"factor", "worked_out", "same_role"};
    return kNames[static_cast<int>(basis)];
}

bool by_weight(std::string_view role) {
    for (const std::string_view one : kByWeight)
        if (one == role) return true;
    return false;
}

std::vector<StandIn> stand_ins(const Catalogue& catalogue, std::string_view ingredient) {
    std::vector<StandIn> found;
    const Ingredient* from = catalogue::find_ingredient(catalogue, ingredient);
    if (!from) return found;
    std::vector<std::pair<const Ingredient*, StandIn>> all;
    for (const Ingredient& to : catalogue.ingredients)
        if (&to != from)
            if (auto one = between(catalogue, *from, to)) all.emplace_back(&to, std::move(*one));
    sorting::stable(all, [](const auto& a, const auto& b) {
        return a.second.basis != b.second.basis ? a.second.basis < b.second.basis
                                                : a.first->name < b.first->name;
    });
    for (auto& one : all)
        found.push_back(std::move(one.second));
    return found;
}

result::Result<Formula> taken(const Formula& before, std::size_t line, const StandIn& stand_in,
                              const Catalogue& catalogue) {
    if (line >= before.lines.size()) return Error{Code::line_missing, place(line), ""};
    if (before.lines[line].locked) return Error{Code::line_locked, place(line), ""};
    const auto all = formula::percents(before);
    if (!all) return all.error();
    Formula after = before;
    const Percent was = (*all)[line], is = scaled(was, stand_in.factor);
    std::vector<bool> out(before.lines.size(), false);
    out[line] = true;
    if (was != is) {
        const auto gives = giver(before, out, *all, catalogue);
        if (!gives) return Error{Code::nothing_gives_way, place(line), ""};
        const Percent left = (*all)[*gives] + was - is;
        if (left < Percent{0})
            return Error{Code::gives_too_little, place(line), decimal::print((was + (*all)[*gives]).grid)};
        if (!after.lines[*gives].rest) after.lines[*gives].percent = left;
    }
    formula::Line& changed = after.lines[line];
    if (const auto joins = line_of(after, stand_in.ingredient, out)) {
        if (changed.rest) {  // what it joins becomes the rest line
            after.lines[*joins].rest = true;
            after.lines[*joins].percent = {};
        } else if (!after.lines[*joins].rest) {
            after.lines[*joins].percent = after.lines[*joins].percent + is;
        }
        return formula::remove_line(std::move(after), line);
    }
    changed.ingredient = stand_in.ingredient;
    changed.name.clear();
    changed.hold.reset();
    changed.strained = false;
    if (!changed.rest) changed.percent = is;
    return after;
}

}  // namespace swap
