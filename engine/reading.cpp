// The builders of statements, and what a problem that came from outside must satisfy.
#include "reading.h"

#include <algorithm>

#include "bounds.h"

namespace reading {
namespace {

using result::Code;
using result::Error;

constexpr std::size_t kMostNameBytes = 160;

std::optional<Error> fault_of(const Statement& statement, std::size_t items, const std::string& at) {
    if (statement.terms.empty()) return Error{Code::item_missing, at, ""};
    for (const Term& term : statement.terms) {
        if (term.item >= items) return Error{Code::item_missing, at, std::to_string(term.item)};
        if (term.low < 0 || term.low > term.high) return Error{Code::range_crossed, at, ""};
    }
    for (std::size_t i = 0; i < statement.terms.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (statement.terms[i].item == statement.terms[j].item)
                return Error{Code::item_twice, at, std::to_string(statement.terms[i].item)};
    const std::int64_t most =
        statement.kind == Kind::property ? 1000 * decimal::kOne : quantity::kHundred.grid;
    if (statement.min)
        if (const auto fault = bounds::outside(*statement.min, most, at + ".min")) return fault;
    if (statement.max)
        if (const auto fault = bounds::outside(*statement.max, most, at + ".max")) return fault;
    if (statement.min && statement.max && *statement.min > *statement.max)
        return Error{Code::range_crossed, at, decimal::print(*statement.min)};
    return bounds::too_long(statement.subject, kMostNameBytes, at);
}

}  // namespace

Statement amount(std::size_t item, std::optional<std::int64_t> min, std::optional<std::int64_t> max) {
    Statement made;
    made.terms = {{item}};
    made.min = min;
    made.max = max;
    return made;
}

Statement group(std::string name, const std::vector<std::size_t>& items, std::optional<std::int64_t> min,
                std::optional<std::int64_t> max) {
    Statement made;
    made.kind = Kind::group;
    for (const std::size_t item : items)
        made.terms.push_back({item});
    made.subject = std::move(name);
    made.min = min;
    made.max = max;
    return made;
}

Statement printed(std::size_t item, std::int64_t percent, int places) {
    std::int64_t half = decimal::kOne / 2;
    for (int i = 0; i < places; ++i)
        half /= 10;
    return amount(item, std::max<std::int64_t>(percent - half, 0),
                  std::min(percent + half, quantity::kHundred.grid));
}

result::Result<Problem> checked(Problem problem) {
    if (problem.items.empty()) return Error{Code::list_empty, "listed", ""};
    if (problem.items.size() > kMostItems) return Error{Code::too_many, "listed", std::to_string(kMostItems)};
    if (problem.statements.size() > kMostStatements)
        return Error{Code::too_many, "statements", std::to_string(kMostStatements)};
    for (std::size_t i = 0; i < problem.items.size(); ++i) {
        const Item& item = problem.items[i];
        const std::string at = "listed[" + std::to_string(i) + "]";
        if (const auto fault =
                bounds::unnamed(item.ingredient.empty() ? item.name : item.ingredient, kMostNameBytes, at))
            return *fault;
    }
    if (problem.line_after && *problem.line_after > problem.items.size())
        return Error{Code::line_beyond, "one_percent_after", std::to_string(*problem.line_after)};
    if (const auto fault = bounds::outside(problem.line.grid, quantity::kHundred.grid, "line")) return *fault;
    for (std::size_t i = 0; i < problem.statements.size(); ++i)
        if (const auto fault = fault_of(problem.statements[i], problem.items.size(),
                                        "statements[" + std::to_string(i) + "]"))
            return *fault;
    return problem;
}

}  // namespace reading
