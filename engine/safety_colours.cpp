// Colours near lips and eyes. Which colour a market allows there is in no paper that was read, so this check
// is never made: it says which colours to ask about.
#include "safety_family.h"

namespace safety {
namespace {

bool is_colour(const Portion& portion) {
    if (portion.known == nullptr) return false;
    const std::string& role = portion.known->role;
    return catalogue::has_trait(*portion.known, "colour") || role == "colour" || role == "colorant" ||
           role == "color" || role == "pigment";
}

}  // namespace

void colours(const Case& the, Report& report) {
    std::vector<std::string> found;
    for (const Portion& portion : the.portions) {
        if (portion.percent == quantity::Percent{0} || !is_colour(portion)) continue;
        const std::size_t before = found.size();
        add_once(found, subject(portion));
        if (found.size() == before || the.product == nullptr || the.product->place != "lips") continue;
        auto told = about(finding::Code::colour_not_checked_here, finding::Severity::caution, portion.line,
                          subject(portion));
        told.unit = the.product->place;
        report.findings.push_back(sourced(std::move(told), kMemory, source::Standing::memory));
    }
    if (found.empty()) return made(report, Rule::colours);
    not_made(report, Rule::colours, Reason::no_figure, std::move(found));
}

}  // namespace safety
