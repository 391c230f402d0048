// The nearest formula without an ingredient, as a problem of least squares. A column is a line that may
// change: what comes in the ingredient's place, the line that takes up differences, and with others_move the
// other waxes, fats and oils. The line that takes up differences stands in no row of roles: that the shares
// of roles stay is the wish, that the sum is 100 is its part.
#include <algorithm>
#include <cmath>

#include "least_squares.h"
#include "swap.h"

namespace swap {
namespace {

using catalogue::Catalogue;
using catalogue::Ingredient;
using decimal::kOne;
using formula::Formula;
using quantity::Percent;
using result::Code;
using result::Error;

constexpr double kStay = 1e-3;  // of a percent: how much it counts that nothing moves without need
constexpr std::int64_t kStep = kOne / 10;
constexpr std::string_view kFatty[] = {"wax", "soft_wax", "hard_fat", "butter", "soft_fat", "liquid_oil"};

struct Column {
    const Ingredient* of = nullptr;   // null: a line nobody knows
    std::optional<std::size_t> line;  // of the formula as it was; none: comes in the ingredient's place
    std::string role;                 // whose share it counts for
    double counts = 1;                // for how much of it
    bool profiled = false, takes_up = false;
    bool asked = false;         // may come in its place
    double was = 0, stays = 0;  // percent; where it stays if nothing else is to be said
    Percent is;
};

struct Ask {
    const Formula& before;
    const Catalogue& catalogue;
    std::vector<Percent> all;
    std::vector<bool> out;  // the lines that go
    Percent gone;           // what they hold
    const Ingredient* without = nullptr;
    bool profile = false;  // it has one, so that fatty acids count
    std::vector<Column> columns;

    const Ingredient* known(std::size_t line) const {
        return catalogue::find_ingredient(catalogue, before.lines[line].ingredient);
    }
};

bool fatty(std::string_view role) {
    for (const std::string_view one : kFatty)
        if (one == role) return true;
    return false;
}

void add_line(Ask& ask, std::size_t line) {
    for (const Column& there : ask.columns)
        if (there.line == line) return;
    Column column;
    column.of = ask.known(line);
    column.line = line;
    if (column.of) column.role = column.of->role;
    column.profiled = ask.profile && column.of && column.of->fatty_acids;
    column.was = column.stays = decimal::to_double(ask.all[line].grid);
    ask.columns.push_back(std::move(column));
}

// What may come in: a line that holds it already, or a new one; counts for what goes by its factor.
std::optional<Error> add_by(Ask& ask, const Wish& wish) {
    const std::vector<StandIn> known =
        ask.without ? stand_ins(ask.catalogue, ask.without->id) : std::vector<StandIn>{};
    for (std::size_t i = 0; i < wish.by.size(); ++i) {
        const std::string at = "by[" + std::to_string(i) + "]";
        const Ingredient* one = catalogue::find_ingredient(ask.catalogue, wish.by[i]);
        if (!one || one == ask.without) return Error{Code::field_unknown_value, at, wish.by[i]};
        for (std::size_t line = 0; line < ask.out.size(); ++line)
            if (ask.known(line) == one && !ask.out[line] && !ask.before.lines[line].locked)
                add_line(ask, line);
        Column* column = nullptr;
        for (Column& there : ask.columns)
            if (there.of == one) column = &there;
        if (!column) {
            column = &ask.columns.emplace_back();
            column->of = one;
            column->role = one->role;
            column->profiled = ask.profile && one->fatty_acids;
        }
        for (const StandIn& stand_in : known) {
            if (stand_in.ingredient != one->id) continue;
            column->role = ask.without->role;
            column->counts = 1 / decimal::to_double(stand_in.factor);
        }
        column->asked = true;
        column->stays +=
            decimal::to_double(ask.gone.grid) / static_cast<double>(wish.by.size()) / column->counts;
    }
    return std::nullopt;
}

void add_once(std::vector<std::string>& list, const std::string& one) {
    for (const std::string& there : list)
        if (there == one) return;
    list.push_back(one);
}

double acid_of(const Ingredient& one, const std::string& acid) {
    const auto at = one.fatty_acids->value.percent.find(acid);
    return at == one.fatty_acids->value.percent.end() ? 0 : decimal::to_double(at->second) / 100;
}

// What is compared: of each acid and each role what there was, the row of it, and how much it counts.
struct Compared {
    std::vector<std::string> acids, roles;

    explicit Compared(const Ask& ask) {
        const auto take = [&](const Ingredient* one) {
            for (const auto& [acid, percent] : one->fatty_acids->value.percent)
                if (percent > 0) add_once(acids, acid);
        };
        if (ask.profile) take(ask.without);
        if (ask.without) add_once(roles, ask.without->role);
        for (const Column& column : ask.columns) {
            if (column.profiled) take(column.of);
            if (!column.role.empty() && !column.takes_up) add_once(roles, column.role);
        }
    }
};

Percent percent_of(double value) {
    return {decimal::rounded(value)};
}

}  // namespace

result::Result<Nearest> nearest(const Formula& before, const Wish& wish, const Catalogue& catalogue) {
    if (wish.without >= before.lines.size())
        return Error{Code::line_missing, "lines[" + std::to_string(wish.without) + "]", ""};
    if (wish.by.empty()) return Error{Code::name_empty, "by", ""};
    if (wish.by.size() > kMostBy) return Error{Code::too_many, "by", std::to_string(kMostBy)};
    const auto percents = formula::percents(before);
    if (!percents) return percents.error();
    Ask ask{before, catalogue, *percents, std::vector<bool>(before.lines.size(), false),
            {},     nullptr,   false,     {}};
    const formula::Line& left = before.lines[wish.without];
    bool rest_goes = false;
    for (std::size_t i = 0; i < before.lines.size(); ++i) {
        const formula::Line& line = before.lines[i];
        if (i != wish.without && (line.ingredient != left.ingredient || line.name != left.name)) continue;
        if (line.locked) return Error{Code::line_locked, "lines[" + std::to_string(i) + "]", ""};
        ask.out[i] = true;
        ask.gone = ask.gone + ask.all[i];
        rest_goes = rest_goes || line.rest;
    }
    ask.without = ask.known(wish.without);
    ask.profile = ask.without && ask.without->fatty_acids;

    if (auto fault = add_by(ask, wish)) return *fault;
    std::optional<std::size_t> takes_up;
    bool oil_takes = false;
    for (std::size_t i = 0; i < before.lines.size(); ++i) {
        const formula::Line& line = before.lines[i];
        if (ask.out[i] || line.locked) continue;
        const Ingredient* one = ask.known(i);
        if (wish.others_move && one && fatty(one->role)) add_line(ask, i);
        const bool oil = one && one->role == "liquid_oil";
        const bool better = !takes_up || line.rest ||
                            (!before.lines[*takes_up].rest &&
                             (oil != oil_takes ? oil : oil && ask.all[i] > ask.all[*takes_up]));
        if (!better || (!line.rest && !oil)) continue;
        takes_up = i;
        oil_takes = oil;
    }
    if (takes_up) {
        add_line(ask, *takes_up);
        for (Column& column : ask.columns)
            column.takes_up = column.line == takes_up;
    }

    // What they hold together, and what is wished of it.
    Percent sum = ask.gone;
    for (const Column& column : ask.columns)
        if (column.line) sum = sum + ask.all[*column.line];
    const Compared compared(ask);
    const double gone = decimal::to_double(ask.gone.grid);
    least_squares::Problem problem;
    problem.columns = ask.columns.size();
    problem.total = decimal::to_double(sum.grid);
    const auto acid_row = [&](const std::string& acid, const auto& held) {
        double all = 0;
        for (const Column& column : ask.columns)
            if (column.profiled) all += acid_of(*column.of, acid) * held(column);
        return all;
    };
    const auto role_row = [&](const std::string& role, const auto& held) {
        double all = 0;
        for (const Column& column : ask.columns)
            if (column.role == role && !column.takes_up) all += column.counts * held(column);
        return all;
    };
    const auto was = [](const Column& column) { return column.was; };
    const auto is = [](const Column& column) { return decimal::to_double(column.is.grid); };
    std::vector<double> acids_were, roles_were;
    for (const std::string& acid : compared.acids) {
        acids_were.push_back(acid_row(acid, was) + (ask.profile ? acid_of(*ask.without, acid) * gone : 0));
        double* row = problem.add_row(acids_were.back());
        for (std::size_t j = 0; j < ask.columns.size(); ++j)
            if (ask.columns[j].profiled) row[j] = acid_of(*ask.columns[j].of, acid);
    }
    for (const std::string& role : compared.roles) {
        roles_were.push_back(role_row(role, was) + (ask.without && ask.without->role == role ? gone : 0));
        double* row = problem.add_row(kRoleWeight * roles_were.back());
        for (std::size_t j = 0; j < ask.columns.size(); ++j)
            if (ask.columns[j].role == role && !ask.columns[j].takes_up)
                row[j] = kRoleWeight * ask.columns[j].counts;
    }
    for (std::size_t j = 0; j < ask.columns.size(); ++j)
        if (!ask.columns[j].takes_up) problem.add_row(kStay * ask.columns[j].stays)[j] = kStay;
    const least_squares::Answer found = least_squares::nearest(problem);

    // In whole steps; what is no whole step stays with the line that there is most of.
    std::vector<std::int64_t> weights;
    std::size_t most = 0;
    for (std::size_t j = 0; j < found.point.size(); ++j) {
        weights.push_back(decimal::rounded(found.point[j]));
        if (weights[j] > weights[most]) most = j;
    }
    Nearest made;
    if (sum.grid > 0) {
        const auto shared = decimal::share_out(sum.grid / kStep, weights);
        if (!shared) return shared.error();
        for (std::size_t j = 0; j < weights.size(); ++j)
            ask.columns[j].is = {(*shared)[j] * kStep + (j == most ? sum.grid % kStep : 0)};
    }

    made.formula = before;
    std::vector<formula::Line> come;
    for (const Column& column : ask.columns) {
        if (column.line) {
            formula::Line& line = made.formula.lines[*column.line];
            if (!line.rest) line.percent = column.is;
            if (rest_goes && column.takes_up) line.rest = true, line.percent = {};
        } else if (column.is > Percent{0}) {
            formula::Line line;
            line.ingredient = column.of->id;
            line.percent = column.is;
            line.phase = left.phase;
            come.push_back(std::move(line));
        }
        if (ask.profile && !column.profiled && column.asked) made.unprofiled.push_back(column.of->id);
    }
    for (std::size_t i = before.lines.size(); i-- > 0;) {
        if (!ask.out[i]) continue;
        const auto at = made.formula.lines.begin() + static_cast<std::ptrdiff_t>(i);
        made.formula.lines.erase(at);
        if (i == wish.without) made.formula.lines.insert(at, come.begin(), come.end());
    }
    if (made.formula.lines.size() > formula::kMostLines)
        return Error{Code::too_many, "lines", std::to_string(formula::kMostLines)};

    double other = 0, whole = 0;
    for (std::size_t i = 0; i < compared.acids.size(); ++i) {
        const double now = acid_row(compared.acids[i], is);
        made.acids.push_back({compared.acids[i], percent_of(acids_were[i]), percent_of(now)});
        other += std::abs(now - acids_were[i]) / 2;
        whole += acids_were[i];
    }
    for (std::size_t i = 0; i < compared.roles.size(); ++i)
        made.roles.push_back(
            {compared.roles[i], percent_of(roles_were[i]), percent_of(role_row(compared.roles[i], is))});
    if (whole > 0) made.apart = percent_of(100 * other / whole);
    return made;
}

}  // namespace swap
