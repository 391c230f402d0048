// What the lines are by themselves: their sum, empty and double ones, names that nothing is known of. A
// negative percent cannot come here: reading and editing refuse it.
#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using quantity::kHundred;
using quantity::Percent;

void sum(const Case& the, Report& report) {
    const auto rest = formula::rest_line(*the.formula);
    if (the.formula->lines.empty()) {
        report.findings.push_back(about(Code::formula_empty, Severity::note, {}, ""));
    } else if (!rest && the.stated_sum != kHundred) {
        report.findings.push_back(measured(about(Code::sum_not_hundred, Severity::stop, {}, ""),
                                           the.stated_sum.grid, kHundred.grid, "%"));
    } else if (rest && the.stated_sum > kHundred) {
        report.findings.push_back(
            measured(about(Code::rest_negative, Severity::stop, *rest, subject(the, *rest)),
                     (kHundred - the.stated_sum).grid, 0, "%"));
    }
}

bool is_repeated(const formula::Formula& formula, std::size_t line) {
    const formula::Line& said = formula.lines[line];
    for (std::size_t before = 0; before < line; ++before) {
        const formula::Line& other = formula.lines[before];
        if (other.phase != said.phase || other.ingredient != said.ingredient) continue;
        if (!said.ingredient.empty() || other.name == said.name) return true;
    }
    return false;
}

}  // namespace

void sums(const Case& the, Report& report) {
    sum(the, report);
    std::vector<std::string> unknown;
    for (std::size_t i = 0; i < the.formula->lines.size(); ++i) {
        const bool below_zero = the.formula->lines[i].rest && the.rest && *the.rest < Percent{0};
        if (the.percents[i] == Percent{0} && !below_zero)
            report.findings.push_back(about(Code::line_empty, Severity::note, i, subject(the, i)));
        if (is_repeated(*the.formula, i))
            report.findings.push_back(about(Code::line_twice, Severity::note, i, subject(the, i)));
    }
    std::vector<bool> said(the.formula->lines.size());
    for (const Portion& portion : the.portions) {
        if (portion.known != nullptr) continue;
        add_once(unknown, subject(portion));
        if (said[portion.line]) continue;
        said[portion.line] = true;
        report.findings.push_back(
            about(Code::ingredient_unknown, Severity::note, portion.line, subject(portion)));
    }
    made(report, Rule::sums);
    if (unknown.empty())
        made(report, Rule::known_names);
    else
        not_made(report, Rule::known_names, Reason::name_unknown, std::move(unknown));
}

}  // namespace safety
