// Oils with two and more double bonds in an acid go rancid first. Counted is what of the whole product is
// such an acid, by the typical profile of each oil; from a tenth on an antioxidant is asked for. That tenth
// is our estimate, no published limit. How long a product keeps is worked out elsewhere.
#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using quantity::Percent;

constexpr std::int64_t kWorthGuarding = 10 * decimal::kOne;  // % of the product

// % of all fatty acids with two double bonds or more, as the names of acids say ("18:2"); meadowfoam's lie
// far apart and are not counted: they are in "other".
std::int64_t polyunsaturated(const catalogue::FattyAcids& acids) {
    std::int64_t sum = 0;
    for (const auto& [acid, percent] : acids.percent) {
        const std::size_t colon = acid.find(':');
        if (colon != std::string::npos && colon + 1 < acid.size() && acid[colon + 1] >= '2') sum += percent;
    }
    return sum;
}

bool is_oil(const catalogue::Ingredient& one) {
    return one.role == "liquid_oil" || one.role == "butter" || one.role == "soft_fat";
}

void too_much(const Case& the, const Portion& first, Report& report) {
    Percent sum;
    for (const Portion& portion : the.portions)
        if (portion.ingredient == first.ingredient) sum = sum + portion.percent;
    const auto& usual = first.known->usual_leave_on_percent;
    if (!usual || sum.grid <= usual->value.max) return;
    report.findings.push_back(
        sourced(measured(about(Code::antioxidant_too_much, Severity::caution, first.line, subject(first)),
                         sum.grid, usual->value.max, "%"),
                usual->source, usual->standing));
}

}  // namespace

void antioxidant(const Case& the, Report& report) {
    std::int64_t sum = 0;
    bool guarded = false;
    const Portion* most = nullptr;
    std::int64_t most_grid = 0;
    std::vector<std::string> looked_at, unknown;
    for (const Portion& portion : the.portions) {
        if (portion.percent == Percent{0}) continue;
        if (portion.known == nullptr) {
            add_once(unknown, subject(portion));
            continue;
        }
        const catalogue::Ingredient& one = *portion.known;
        if (one.role == "antioxidant") {
            const std::size_t before = looked_at.size();
            add_once(looked_at, subject(portion));
            if (looked_at.size() > before) too_much(the, portion, report);
            guarded = guarded || portion.vouched_for;
        }
        if (!is_oil(one)) continue;
        if (!one.fatty_acids) {
            // Hydrocarbons and esters have none; of own entries nothing is known.
            if (portion.known == portion.own) add_once(unknown, subject(portion));
            continue;
        }
        add_once(looked_at, subject(portion));
        const std::int64_t here = decimal::scale_up(
            portion.percent.grid, polyunsaturated(one.fatty_acids->value), quantity::kHundred.grid);
        sum += here;
        if (here > most_grid) {
            most_grid = here;
            most = &portion;
        }
    }
    if (!guarded && sum >= kWorthGuarding)
        report.findings.push_back(
            sourced(measured(about(Code::antioxidant_missing, Severity::caution, most->line, subject(*most)),
                             decimal::scale_nearest(sum, 1, 1000) * 1000, kWorthGuarding, "%"),
                    kCommonPractice, source::Standing::estimate));
    made(report, Rule::antioxidant, std::move(looked_at));
    if (!unknown.empty()) not_made(report, Rule::antioxidant, Reason::no_figure, std::move(unknown));
}

}  // namespace safety
