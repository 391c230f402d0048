// Powders: starch and clay bring germs into water and feed them; every fine powder dusts while it is handled.
// Limits for what may be breathed from loose powders and sprays are not in our data: no product kind is one.
#include "safety_family.h"

namespace safety {

void powder(const Case& the, Report& report) {
    using finding::Code;
    using finding::Severity;
    const bool wet = water_in(the) > quantity::Percent{0};
    std::vector<std::string> looked_at;
    for (const Portion& portion : the.portions) {
        if (portion.known == nullptr || portion.percent == quantity::Percent{0}) continue;
        const catalogue::Ingredient& one = *portion.known;
        if (one.role != "powder") continue;
        const std::size_t before = looked_at.size();
        add_once(looked_at, subject(portion));
        if (looked_at.size() == before) continue;
        const bool feeds = catalogue::has_trait(one, "spores");
        if (wet && feeds)
            report.findings.push_back(
                sourced(about(Code::powder_feeds_germs, Severity::caution, portion.line, subject(portion)),
                        one.traits->source, one.traits->standing));
        report.findings.push_back(
            sourced(about(Code::powder_dusts, Severity::note, portion.line, subject(portion)),
                    kCommonPractice, source::Standing::common_practice));
    }
    made(report, Rule::powders, std::move(looked_at));
}

}  // namespace safety
