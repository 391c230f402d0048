// Names, the few things every family does, and the report: one family after the other, in the order in which
// a maker would ask. A family that finds nothing of its kind in a product still says that it looked.
#include "safety.h"

#include <algorithm>
#include <utility>

namespace safety {

using finding::Finding;

std::string_view rule_name(Rule rule) {
    switch (rule) {
        case Rule::sums:
            return "sums";
        case Rule::known_names:
            return "known_names";
        case Rule::usual_ingredient:
            return "usual_ingredient";
        case Rule::usual_share:
            return "usual_share";
        case Rule::water_preserved:
            return "water_preserved";
        case Rule::water_gets_in:
            return "water_gets_in";
        case Rule::preservative_limit:
            return "preservative_limit";
        case Rule::preservative_working:
            return "preservative_working";
        case Rule::preservative_ph:
            return "preservative_ph";
        case Rule::emulsion:
            return "emulsion";
        case Rule::powders:
            return "powders";
        case Rule::antioxidant:
            return "antioxidant";
        case Rule::heat:
            return "heat";
        case Rule::melting:
            return "melting";
        case Rule::flash_point:
            return "flash_point";
        case Rule::origin:
            return "origin";
        case Rule::sun_protection:
            return "sun_protection";
        case Rule::claims:
            return "claims";
        case Rule::colours:
            return "colours";
        case Rule::bought_scents:
            return "bought_scents";
        case Rule::peroxide:
            return "peroxide";
    }
    return "";
}

std::string_view reason_name(Reason reason) {
    switch (reason) {
        case Reason::not_yet_written:
            return "not_yet_written";
        case Reason::no_figure:
            return "no_figure";
        case Reason::no_book:
            return "no_book";
        case Reason::product_unsaid:
            return "product_unsaid";
        case Reason::market_unsaid:
            return "market_unsaid";
        case Reason::market_not_covered:
            return "market_not_covered";
        case Reason::ph_unsaid:
            return "ph_unsaid";
        case Reason::temperature_unsaid:
            return "temperature_unsaid";
        case Reason::name_unknown:
            return "name_unknown";
        case Reason::certificate_unsaid:
            return "certificate_unsaid";
    }
    return "";
}

bool under_law_of(const Case& the, std::string_view market) {
    return the.market.empty() || the.market == market || (the.market == "ni" && market == "eu");
}

std::string subject(const Portion& portion) {
    return portion.ingredient.empty() ? portion.name : portion.ingredient;
}

std::string subject(const Case& the, std::size_t line) {
    const formula::Line& said = the.formula->lines[line];
    return said.ingredient.empty() ? said.name : said.ingredient;
}

Finding about(finding::Code code, finding::Severity severity, std::optional<std::size_t> line,
              std::string subject) {
    Finding finding;
    finding.code = code;
    finding.severity = severity;
    finding.line = line;
    finding.subject = std::move(subject);
    return finding;
}

Finding measured(Finding finding, std::int64_t value, std::optional<std::int64_t> limit, std::string unit) {
    finding.value = value;
    finding.limit = limit;
    finding.unit = std::move(unit);
    return finding;
}

Finding sourced(Finding finding, std::string_view source, source::Standing standing) {
    finding.source = source;
    finding.standing = standing;
    return finding;
}

// Stops first, then cautions, then notes; within each what concerns the whole, then line by line.
void sort(std::vector<Finding>& findings) {
    std::stable_sort(findings.begin(), findings.end(), [](const Finding& a, const Finding& b) {
        if (a.severity != b.severity) return a.severity > b.severity;
        return a.line < b.line;  // none before any
    });
}

Report of(const Case& the) {
    (void)the;
    Report report;
    for (int i = 0; i < kRules; ++i)
        report.not_made.push_back({static_cast<Rule>(i), "", Reason::not_yet_written, {}});
    sort(report.findings);
    return report;
}

}  // namespace safety
