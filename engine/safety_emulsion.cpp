// Water and oil in one pot without anything that holds them together. Whether an emulsifier is enough, and
// the right one for these oils, is not asked: that is for a trial.
#include "safety_family.h"

namespace safety {
namespace {

using quantity::Percent;

constexpr Percent kWorthMixing{3 * decimal::kOne};  // below it a drop or two is stirred in, and stays

bool counts_as_oil(const catalogue::Ingredient& one) {
    return one.role == "liquid_oil" || one.role == "butter" || one.role == "soft_fat" || one.role == "wax" ||
           one.role == "soft_wax" || one.role == "hard_fat";
}

}  // namespace

void emulsion(const Case& the, Report& report) {
    const Percent water = water_in(the);
    Percent oils;
    bool held = false;
    std::vector<std::string> looked_at;
    std::optional<std::size_t> line;
    for (const Portion& portion : the.portions) {
        if (portion.known == nullptr || portion.percent == Percent{0}) continue;
        const catalogue::Ingredient& one = *portion.known;
        const bool holds = one.role == "emulsifier" || one.role == "solubiliser";
        held = held || (holds && portion.vouched_for);
        if (counts_as_oil(one)) oils = oils + portion.percent;
        if (holds_water(one) && !line) line = portion.line;
        if (holds || counts_as_oil(one) || holds_water(one)) add_once(looked_at, subject(portion));
    }
    const bool parts = water >= kWorthMixing && oils >= kWorthMixing && !held;
    if (parts)
        report.findings.push_back(
            sourced(measured(about(finding::Code::water_without_emulsifier, finding::Severity::caution, line,
                                   line ? subject(the, *line) : std::string()),
                             water.grid, oils.grid, "%"),
                    kCommonPractice, source::Standing::common_practice));
    made(report, Rule::emulsion, water > Percent{0} ? std::move(looked_at) : std::vector<std::string>{});
}

}  // namespace safety
