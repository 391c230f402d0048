// See weighed.h. Leans on analysis for the checks themselves.
#include "weighed.h"

#include <algorithm>

#include "analysis.h"
#include "density.h"
#include "workspace_weigh_out.h"

namespace weighed {
namespace {

bool same(const finding::Finding& a, const finding::Finding& b) {
    return a.code == b.code && a.line == b.line && a.subject == b.subject && a.rule == b.rule &&
           a.constituent == b.constituent;
}

}  // namespace

std::vector<finding::Finding> remarks(const workspace::Recipe& recipe, const weigh_out::Standing& standing,
                                      const catalogue::Catalogue& shipped, const limits::Book* book,
                                      const std::vector<catalogue::Ingredient>& mine) {
    workspace::Recipe meant = recipe;  // the batch's own remarks are not asked for
    meant.batch = {};
    workspace::Recipe become = workspace::as_weighed(recipe, standing);
    become.batch = {};
    const safety::Report before = analysis::checks(meant, shipped, book, {}, mine);
    std::vector<finding::Finding> fresh;
    for (finding::Finding& one : analysis::checks(become, shipped, book, {}, mine).findings)
        if (std::none_of(before.findings.begin(), before.findings.end(), [&](const finding::Finding& known) {
                return same(known, one) && known.severity >= one.severity;
            }))
            fresh.push_back(std::move(one));
    return fresh;
}

std::vector<std::string_view> bench_order(const formula::Formula& formula,
                                          const catalogue::Catalogue& known) {
    bool wax = false;
    for (const formula::Line& line : formula.lines)
        if (const auto* one = catalogue::find_ingredient(known, line.ingredient))
            wax = wax || one->role == "wax";
    const auto any = [&](bool (*is)(const formula::Phase&)) {
        return std::any_of(formula.phases.begin(), formula.phases.end(), is);
    };
    const bool hot = any([](const formula::Phase& phase) { return phase.hold_c.has_value(); });
    const bool cool = any([](const formula::Phase& phase) { return phase.add_below_c.has_value(); });
    std::vector<std::string_view> all{"weigh_step.dates", "weigh_step.clean", "weigh_step.containers",
                                      "weigh_step.jug"};
    if (wax) all.push_back("weigh_step.wax");
    if (hot) all.push_back("weigh_step.melt");
    if (wax) all.push_back("weigh_step.spoon");
    if (hot) all.push_back("weigh_step.off_heat");
    if (cool) all.push_back("weigh_step.cool");
    for (const char* one : {"weigh_step.test_fill", "weigh_step.pour", "weigh_step.rest", "weigh_step.check",
                            "weigh_step.label", "weigh_step.keep", "weigh_step.release"})
        all.push_back(one);
    return all;
}

bool is_hot(const formula::Phase& phase) {
    return phase.hold_c && *phase.hold_c >= kHot;
}

std::optional<Reason> reason_of(const formula::Formula& formula, std::size_t phase,
                                const catalogue::Catalogue& known) {
    if (phase >= formula.phases.size()) return std::nullopt;
    const formula::Phase& of = formula.phases[phase];
    if (!of.hold_c && !of.add_below_c) return std::nullopt;
    Reason reason;
    reason.why = of.hold_c ? Why::clear : Why::sensitive;
    bool water = false, hot_oil = false;
    for (const formula::Line& line : formula.lines) {
        const catalogue::Ingredient* one = catalogue::find_ingredient(known, line.ingredient);
        if (!one) continue;
        const bool here = line.phase == of.id;
        if (here && density::is_watery(*one)) water = true;
        if (!here && one->role == "emulsifier") hot_oil = true;
        if (!here) continue;
        if (of.hold_c && one->melting_c) {
            const std::int64_t melts = one->melting_c->value.max;
            if (!reason.c || melts > *reason.c)
                reason = {Why::melts, one->id, melts, one->melting_c->source, one->melting_c->standing};
        } else if (!of.hold_c && one->flash_point_c) {
            const std::int64_t lit = one->flash_point_c->value;
            if (!reason.c || lit < *reason.c)
                reason = {Why::flash, one->id, lit, one->flash_point_c->source, one->flash_point_c->standing};
        }
    }
    if (of.hold_c && water && hot_oil) return Reason{Why::emulsion, "", std::nullopt, "", {}};
    return reason;
}

}  // namespace weighed
