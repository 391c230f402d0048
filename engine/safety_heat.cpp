// What heat does in the phases of a recipe: to what does not bear it, to what must melt, and to what gives
// off vapour that can be lit. A phase says at most how hot it is held, or below what it is added; where it
// says nothing while another one is heated, nothing is checked and the report says so. How hot a pour a
// container bears is asked with the batch, for there stand the containers.
#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using quantity::Percent;
using source::Standing;

// From memory, common at the bench: below about 50 °C; balms as cool as they still pour, so for a phase that
// is only added below some heat it counts where there is water to bring it down with.
constexpr std::int64_t kFragileBears = 50 * decimal::kOne;
constexpr std::int64_t kNear = 5 * decimal::kOne;

bool is_scent(const catalogue::Ingredient& one) {
    return one.role == "essential_oil" || one.role == "extract";
}
bool is_fragile(const catalogue::Ingredient& one) {
    return is_scent(one) || one.phase == catalogue::Phase::cool_down;
}
// What a maker melts; butters may also be whipped, and then stand in a phase without heat.
bool must_melt(const catalogue::Ingredient& one) {
    return one.role == "wax" || one.role == "hard_fat" || one.role == "thickener" || one.role == "emulsifier";
}
bool may_melt(const catalogue::Ingredient& one) {
    return must_melt(one) || one.role == "butter" || one.role == "soft_wax" || one.role == "soft_fat";
}

bool heated_at_all(const Case& the) {
    for (const formula::Phase& phase : the.formula->phases)
        if (phase.hold_c) return true;
    return false;
}

struct Looked {
    std::vector<std::string> made, no_heat_said, no_figure;
};

void tell(Report& report, Rule rule, Looked& looked) {
    made(report, rule, std::move(looked.made));
    if (!looked.no_heat_said.empty())
        not_made(report, rule, Reason::temperature_unsaid, std::move(looked.no_heat_said));
    if (!looked.no_figure.empty()) not_made(report, rule, Reason::no_figure, std::move(looked.no_figure));
}

finding::Finding too_hot(Code code, Severity severity, const Portion& portion, std::int64_t at,
                         std::int64_t bears) {
    return measured(about(code, severity, portion.line, subject(portion)), at, bears, "°C");
}

void spoiled(const Case& the, Report& report) {
    const bool heated = heated_at_all(the), wet = water_in(the) > Percent{0};
    Looked looked;
    for (const Portion& portion : the.portions) {
        if (portion.known == nullptr || portion.percent == Percent{0} || !is_fragile(*portion.known))
            continue;
        const formula::Phase* phase = phase_of(the, portion.line);
        const bool silent = phase == nullptr || (!phase->hold_c && !phase->add_below_c);
        add_once(silent && heated ? looked.no_heat_said : looked.made, subject(portion));
        if (silent) continue;
        const std::int64_t at = phase->hold_c ? *phase->hold_c : *phase->add_below_c;
        if (at <= kFragileBears || (!phase->hold_c && !wet)) continue;
        report.findings.push_back(
            sourced(too_hot(Code::heated_too_hot, Severity::caution, portion, at, kFragileBears), kMemory,
                    Standing::memory));
    }
    tell(report, Rule::heat, looked);
}

void molten(const Case& the, Report& report) {
    Looked looked;
    for (const Portion& portion : the.portions) {
        if (portion.known == nullptr || portion.percent == Percent{0} || !may_melt(*portion.known)) continue;
        const catalogue::Ingredient& one = *portion.known;
        const formula::Phase* phase = phase_of(the, portion.line);
        if (phase == nullptr || !phase->hold_c) {
            if (must_melt(one)) add_once(looked.no_heat_said, subject(portion));
            continue;
        }
        if (!one.melting_c) {
            if (must_melt(one)) add_once(looked.no_figure, subject(portion));
            continue;
        }
        add_once(looked.made, subject(portion));
        const catalogue::Range& melting = one.melting_c->value;
        if (*phase->hold_c >= melting.max) continue;
        const Severity severity = *phase->hold_c < melting.min ? Severity::caution : Severity::note;
        report.findings.push_back(
            sourced(too_hot(Code::hold_below_melting, severity, portion, *phase->hold_c, melting.max),
                    one.melting_c->source, one.melting_c->standing));
    }
    tell(report, Rule::melting, looked);
}

void lit(const Case& the, Report& report) {
    const bool heated = heated_at_all(the);
    Looked looked;
    for (const Portion& portion : the.portions) {
        if (portion.known == nullptr || portion.percent == Percent{0} || !is_scent(*portion.known)) continue;
        const auto& flash = portion.known->flash_point_c;
        const formula::Phase* phase = phase_of(the, portion.line);
        const bool silent = phase == nullptr || (!phase->hold_c && !phase->add_below_c);
        if (silent && !heated) {
            add_once(looked.made, subject(portion));
            continue;
        }
        if (!flash || silent) {
            add_once(!flash ? looked.no_figure : looked.no_heat_said, subject(portion));
            continue;
        }
        add_once(looked.made, subject(portion));
        // Held hot it goes on for long; what is only added below some heat cools on.
        const std::int64_t at = phase->hold_c ? *phase->hold_c : *phase->add_below_c;
        const std::int64_t from = phase->hold_c ? flash->value - kNear : flash->value;
        if (at < from) continue;
        report.findings.push_back(
            sourced(too_hot(Code::near_flash_point, phase->hold_c ? Severity::caution : Severity::note,
                            portion, at, flash->value),
                    flash->source, flash->standing));
    }
    tell(report, Rule::flash_point, looked);
}

}  // namespace

void heat(const Case& the, Report& report) {
    spoiled(the, report);
    molten(the, report);
    lit(the, report);
}

}  // namespace safety
