// Names of findings and their sentences. The sentence is data (presets/words); here its figures are filled
// in. Figures are written in full on the grid; how many places a screen shows beside it is the screen's
// affair.
#include "finding.h"

namespace finding {

std::string_view code_name(Code code) {
    switch (code) {
        case Code::sum_not_hundred:
            return "sum_not_hundred";
        case Code::rest_negative:
            return "rest_negative";
        case Code::formula_empty:
            return "formula_empty";
        case Code::line_empty:
            return "line_empty";
        case Code::line_twice:
            return "line_twice";
        case Code::ingredient_unknown:
            return "ingredient_unknown";
        case Code::usual_range_left:
            return "usual_range_left";
        case Code::line_rounds_to_zero:
            return "line_rounds_to_zero";
        case Code::line_error_large:
            return "line_error_large";
        case Code::batch_rounded:
            return "batch_rounded";
        case Code::density_partly_known:
            return "density_partly_known";
        case Code::line_too_heavy:
            return "line_too_heavy";
        case Code::warm_over_brim:
            return "warm_over_brim";
        case Code::pour_too_hot:
            return "pour_too_hot";
        case Code::stock_unknown:
            return "stock_unknown";
        case Code::stock_not_needed:
            return "stock_not_needed";
        case Code::water_without_preservative:
            return "water_without_preservative";
    }
    return "";
}

std::string_view severity_name(Severity severity) {
    switch (severity) {
        case Severity::note:
            return "note";
        case Severity::caution:
            return "caution";
        case Severity::stop:
            return "stop";
    }
    return "";
}

std::string say(const words::Table& table, const Finding& finding, std::string_view subject_name) {
    const auto figure = [&](const std::optional<std::int64_t>& grid) {
        return grid ? words::figure(table, *grid) : std::string();
    };
    return words::say(
        table, "finding." + std::string(code_name(finding.code)),
        {{"subject", std::string(subject_name)},
         {"value", figure(finding.value)},
         {"limit", figure(finding.limit)},
         {"unit", finding.unit},
         {"material",
          finding.material.empty() ? std::string() : words::say(table, "material." + finding.material)}});
}

}  // namespace finding
