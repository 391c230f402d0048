// How much of a preservative, and at which pH. The most is the law of the EU and Great Britain (Annex V);
// elsewhere the same figure is told as a caution and the check as not made, for no other law was read. The
// least and the pH are what makers go by.
#include "limits_book.h"
#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Finding;
using finding::Severity;
using limits::Preservative;
using quantity::Percent;
using quantity::Trace;

struct Used {
    const Portion* first = nullptr;
    Percent percent;
    const Preservative* row = nullptr;
};

std::vector<Used> used_in(const Case& the) {
    std::vector<Used> all;
    for (const Portion& portion : the.portions) {
        if (portion.known == nullptr || portion.known->role != "preservative") continue;
        Used* found = nullptr;
        for (Used& one : all)
            if (one.first->known == portion.known) found = &one;
        if (found == nullptr) found = &all.emplace_back(Used{&portion, {}, nullptr});
        found->percent = found->percent + portion.percent;
        if (the.book != nullptr) found->row = limits::find_preservative(*the.book, portion.known->id);
    }
    return all;
}

Trace whole(Percent percent) {
    return quantity::trace_of(percent, quantity::kHundred);
}

Finding compared(Code code, Severity severity, const Used& used, Trace limit) {
    Finding told = about(code, severity, used.first->line, subject(*used.first));
    told.unit = "%";
    told.trace = whole(used.percent);
    told.trace_limit = limit;
    return told;
}

// The cap for this product kind; of one that is not known, the strictest.
const limits::Cap* cap_of(const Case& the, const Preservative& row) {
    if (the.product != nullptr) return limits::cap_for(*the.book, row.caps, *the.product);
    const limits::Cap* strictest = nullptr;
    for (const limits::Cap& cap : row.caps)
        if (strictest == nullptr || cap.most < strictest->most) strictest = &cap;
    return strictest;
}

void at_most(const Case& the, const std::vector<Used>& all, Report& report) {
    const bool covered = under_law_of(the, "eu") || under_law_of(the, "gb");
    std::vector<std::string> without;
    for (const Used& used : all) {
        const limits::Cap* cap = used.row == nullptr ? nullptr : cap_of(the, *used.row);
        if (cap == nullptr || cap->verdict == limits::Verdict::gap) {
            without.push_back(subject(*used.first));
            continue;
        }
        const Trace most = cap->verdict == limits::Verdict::prohibited ? Trace{} : cap->most;
        if (cap->verdict != limits::Verdict::unlimited && whole(used.percent) > most) {
            Finding told = compared(Code::preservative_over_limit,
                                    covered ? Severity::stop : Severity::caution, used, most);
            told.rule = used.row->id;
            told.edition = used.row->document + ", " + used.row->edition;
            report.findings.push_back(sourced(std::move(told), used.row->source, used.row->standing));
        }
        if (covered) report.made.push_back({Rule::preservative_limit, used.row->id, {subject(*used.first)}});
    }
    if (!without.empty()) not_made(report, Rule::preservative_limit, Reason::no_figure, std::move(without));
    if (!covered && !all.empty()) not_made(report, Rule::preservative_limit, Reason::market_not_covered);
    if (all.empty()) made(report, Rule::preservative_limit);
}

void at_least(const std::vector<Used>& all, Report& report) {
    std::vector<std::string> looked_at, without;
    for (const Used& used : all) {
        const bool known = used.row != nullptr && used.row->working_percent;
        (known ? looked_at : without).push_back(subject(*used.first));
        if (!known || used.percent.grid >= used.row->working_percent->min) continue;
        report.findings.push_back(sourced(measured(about(Code::preservative_below_working, Severity::caution,
                                                         used.first->line, subject(*used.first)),
                                                   used.percent.grid, used.row->working_percent->min, "%"),
                                          used.row->working_source, used.row->working_standing));
    }
    made(report, Rule::preservative_working, std::move(looked_at));
    if (!without.empty()) not_made(report, Rule::preservative_working, Reason::no_figure, std::move(without));
}

bool has_ph(const Preservative* row) {
    return row != nullptr && (row->ph_low || row->ph_high);
}
// The bound that this pH lies beyond, if one.
std::optional<std::int64_t> bound_left(const Preservative& row, std::int64_t ph) {
    if (row.ph_high && ph > *row.ph_high) return row.ph_high;
    if (row.ph_low && ph < *row.ph_low) return row.ph_low;
    return std::nullopt;
}

void at_ph(const Case& the, const std::vector<Used>& all, Report& report) {
    if (all.empty() || water_in(the) == Percent{0}) return made(report, Rule::preservative_ph);
    std::vector<std::string> looked_at, without, unmeasured;
    // One that is not beyond its bounds, so far as they are known, may still guard.
    bool another_works = false;
    if (the.ph)
        for (const Used& used : all) {
            const bool beyond = has_ph(used.row) && bound_left(*used.row, *the.ph);
            another_works = another_works || (used.first->vouched_for && !beyond);
        }
    for (const Used& used : all) {
        const bool known = has_ph(used.row);
        (!known ? without : the.ph ? looked_at : unmeasured).push_back(subject(*used.first));
        if (!known || !the.ph) continue;
        const auto bound = bound_left(*used.row, *the.ph);
        if (!bound) continue;
        report.findings.push_back(sourced(
            measured(about(Code::preservative_at_wrong_ph, another_works ? Severity::caution : Severity::stop,
                           used.first->line, subject(*used.first)),
                     *the.ph, *bound, ""),
            used.row->ph_source, used.row->ph_standing));
    }
    if (!looked_at.empty()) made(report, Rule::preservative_ph, std::move(looked_at));
    if (!unmeasured.empty())
        not_made(report, Rule::preservative_ph, Reason::ph_unsaid, std::move(unmeasured));
    if (!without.empty()) not_made(report, Rule::preservative_ph, Reason::no_figure, std::move(without));
}

}  // namespace

void preservatives(const Case& the, Report& report) {
    const std::vector<Used> all = used_in(the);
    if (the.book == nullptr && !all.empty()) {
        for (const Rule rule : {Rule::preservative_limit, Rule::preservative_working, Rule::preservative_ph})
            not_made(report, rule, Reason::no_book);
        return;
    }
    at_most(the, all, report);
    at_least(all, report);
    at_ph(the, all, report);
}

}  // namespace safety
