// See formula_amounts.h. Sharing out is decimal's.
#include "formula_amounts.h"

namespace formula {

Changed set_amounts(Formula formula, const std::vector<std::int64_t>& amounts) {
    using result::Code;
    const auto place = [](std::size_t line) { return "lines[" + std::to_string(line) + "]"; };
    if (amounts.size() != formula.lines.size())
        return {Code::line_missing,
                place(amounts.size() < formula.lines.size() ? amounts.size() : formula.lines.size())};
    for (std::size_t i = 0; i < amounts.size(); ++i)
        if (amounts[i] < 0) return {Code::number_negative, place(i), decimal::print(amounts[i])};
    const auto shares = decimal::share_out(quantity::kHundred.grid, amounts);
    if (!shares) return {shares.error().code, "lines"};
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        Line& line = formula.lines[i];
        if (line.rest) continue;
        const quantity::Percent share{(*shares)[i]};
        if (line.locked && line.percent != share) return {Code::line_locked, place(i)};
        line.percent = share;
    }
    return formula;
}

}  // namespace formula
