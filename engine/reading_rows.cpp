// From statements to rows. A density is no sum of percents, its inverse is: volumes add up.
#include "reading_rows.h"

#include <algorithm>

namespace reading {
namespace {

constexpr double kGrid = 1.0 / static_cast<double>(decimal::kOne);

bool alike(const Statement& statement) {
    return std::all_of(statement.terms.begin(), statement.terms.end(),
                       [](const Term& term) { return term.low == term.high; });
}

void add_rows(const Statement& statement, std::size_t at, std::size_t items, std::vector<Row>& rows) {
    const bool inverse = statement.kind == Kind::property && statement.subject == "density";
    // Of the sum Σ w p / 100. The least density is the most volume.
    const auto bound = [&](const std::optional<std::int64_t>& grid, double none) {
        if (!grid) return none;
        return inverse ? 1 / (static_cast<double>(*grid) * kGrid) : static_cast<double>(*grid) * kGrid;
    };
    double low = bound(inverse ? statement.max : statement.min, -simplex::kInfinity);
    double high = bound(inverse ? statement.min : statement.max, simplex::kInfinity);
    const auto weights = [&](bool most) {
        std::vector<double> of(items, 0.0);
        for (const Term& term : statement.terms) {
            const double grid = static_cast<double>(most != inverse ? term.high : term.low) * kGrid;
            of[term.item] += inverse ? 0.01 / grid : grid / 100;
        }
        return of;
    };
    if (alike(statement)) {
        rows.push_back({weights(true), low, high, at});
        return;
    }
    if (low > -simplex::kInfinity) rows.push_back({weights(true), low, simplex::kInfinity, at});
    if (high < simplex::kInfinity) rows.push_back({weights(false), -simplex::kInfinity, high, at});
}

}  // namespace

double sum_of(const std::vector<double>& weights, const double* percents) {
    double sum = 0;
    for (std::size_t i = 0; i < weights.size(); ++i)
        sum += weights[i] * percents[i];
    return sum;
}

std::vector<Row> rows_of(const Problem& problem) {
    std::vector<Row> rows;
    for (std::size_t i = 0; i < problem.statements.size(); ++i) {
        const Statement& statement = problem.statements[i];
        if (statement.on && (statement.min || statement.max))
            add_rows(statement, i, problem.items.size(), rows);
    }
    return rows;
}

std::vector<std::size_t> places_of(const Problem& problem) {
    if (problem.line_after) return {*problem.line_after};
    std::vector<std::size_t> places{0};
    for (std::size_t i = 0; i < problem.items.size(); ++i)
        if (!problem.items[i].free) places.push_back(i + 1);
    return places;
}

std::vector<double> Shape::in_gaps(const std::vector<double>& weights, double& constant) const {
    std::vector<double> of;
    of.reserve(above.size() + below.size() + free.size());
    double sum = 0;
    for (std::size_t j = 0; j < above.size(); ++j) {
        sum += weights[above[j]];
        of.push_back(sum / static_cast<double>(j + 1));
    }
    constant = sum * line;
    for (const std::size_t item : below)
        of.push_back(weights[item]);
    for (const std::size_t item : free)
        of.push_back(weights[item]);
    return of;
}

void Shape::to_percents(const std::vector<double>& point, double* percents) const {
    double sum = line;
    for (std::size_t j = above.size(); j-- > 0;) {
        sum += point[j] / static_cast<double>(j + 1);
        percents[above[j]] = sum;
    }
    std::size_t at = above.size();
    for (const std::size_t item : below)
        percents[item] = point[at++];
    for (const std::size_t item : free)
        percents[item] = point[at++];
}

Shape shape_of(const Problem& problem, const std::vector<Row>& rows, std::size_t after) {
    Shape shape;
    shape.after = after;
    shape.line = static_cast<double>(problem.line.grid) * kGrid;
    for (std::size_t i = 0; i < problem.items.size(); ++i)
        (problem.items[i].free ? shape.free : i < after ? shape.above : shape.below).push_back(i);
    const std::size_t count = problem.items.size();
    shape.gaps = simplex::Problem(count);
    for (std::size_t j = 0; j < shape.below.size(); ++j)
        shape.gaps.high[shape.above.size() + j] = shape.line;
    for (std::size_t j = shape.above.size() + shape.below.size(); j < count; ++j)
        shape.gaps.high[j] = 100;
    double constant = 0;
    const double rest = 100 - shape.line * static_cast<double>(shape.above.size());
    std::fill_n(shape.gaps.add_row(rest, rest), count, 1.0);
    for (const Row& row : rows) {
        const std::vector<double> weights = shape.in_gaps(row.weights, constant);
        std::copy(weights.begin(), weights.end(),
                  shape.gaps.add_row(row.low - constant, row.high - constant));
    }
    return shape;
}

Natural natural_of(const Problem& problem, const std::vector<Row>& rows, std::size_t after) {
    const double line = static_cast<double>(problem.line.grid) * kGrid;
    Natural natural{simplex::Problem(problem.items.size(), 0, 100), {}};
    const auto add = [&](Claim claim, std::size_t at, double low, double high) {
        natural.rows.push_back({claim, at, low == -simplex::kInfinity});
        return natural.percents.add_row(low, high);
    };
    std::fill_n(add(Claim::total, 0, 100, 100), problem.items.size(), 1.0);
    std::optional<std::size_t> before;
    for (std::size_t i = 0; i < problem.items.size(); ++i) {
        if (problem.items[i].free) continue;
        if (i >= after) {
            add(Claim::below, i, -simplex::kInfinity, line)[i] = 1;
            continue;
        }
        if (before) {
            double* const row = add(Claim::order, *before, 0, simplex::kInfinity);
            row[*before] = 1;
            row[i] = -1;
        }
        before = i;
        add(Claim::above, i, line, simplex::kInfinity)[i] = 1;
    }
    for (std::size_t i = 0; i < rows.size(); ++i)
        for (const bool at_most : {false, true}) {
            if (at_most ? rows[i].high == simplex::kInfinity : rows[i].low == -simplex::kInfinity) continue;
            natural.rows.push_back({Claim::statement, i, at_most});
            double* const row = natural.percents.add_row(at_most ? -simplex::kInfinity : rows[i].low,
                                                         at_most ? rows[i].high : simplex::kInfinity);
            std::copy(rows[i].weights.begin(), rows[i].weights.end(), row);
        }
    return natural;
}

}  // namespace reading
