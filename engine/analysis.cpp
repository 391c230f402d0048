// The standing answers for one recipe, gathered: sums, percents, batch, and what is to be remarked. What the
// formula is asked stands in safety; here what the batch is asked: scales, containers, what is at hand.
// Figures for the batch come from the own entries, as the person means them.
#include "analysis.h"

#include <algorithm>
#include <utility>

#include "analysis_case.h"
#include "safety_family.h"

namespace analysis {
namespace {

using decimal::kOne;
using finding::Code;
using finding::Finding;
using finding::Severity;
using quantity::kHundred;
using quantity::Percent;
using safety::about;
using safety::kCommonPractice;
using safety::measured;
using safety::sourced;

struct Case {  // what the checks of the batch look at
    const workspace::Recipe& recipe;
    const catalogue::Catalogue& shipped;
    const scales::Bench& bench;

    std::string subject(std::size_t line) const {
        const formula::Line& said = recipe.formula.lines[line];
        return said.ingredient.empty() ? said.name : said.ingredient;
    }
};

// As finely as it can be meant.
std::int64_t to_place(std::int64_t grid, std::int64_t place) {
    return decimal::scale_nearest(grid, 1, place) * place;
}

void check_batch_lines(const Case& the, const batch::Batch& batch, std::vector<Finding>& found) {
    for (const batch::Line& line : batch.lines) {
        if (line.percent == Percent{0}) continue;
        const auto remark = [&](Code code) {
            return about(code, Severity::caution, line.line, the.subject(line.line));
        };
        if (!line.place.carried) {
            quantity::Mass strongest;
            for (const scales::Scale& scale : the.bench.scales)
                strongest = std::max(strongest, scale.capacity);
            found.push_back(
                measured(remark(Code::line_too_heavy), line.place.load.grid, strongest.grid, "g"));
        }
        const quantity::Mass share = quantity::share_of(batch.total, line.percent);
        if (line.grams == quantity::Mass{0}) {
            found.push_back(
                measured(remark(Code::line_rounds_to_zero), share.grid, line.place.division.grid, "g"));
        } else if (batch::reads_badly(line, batch.total)) {
            const std::int64_t step = to_place(decimal::scale_nearest(line.place.division.grid, kHundred.grid,
                                                                      std::max<std::int64_t>(1, share.grid)),
                                               kOne / 100);
            found.push_back(
                sourced(measured(remark(Code::line_error_large), step, scales::kTolerance.grid, "%"),
                        kCommonPractice, source::Standing::common_practice));
        }
    }
}

void check_containers(const Case& the, const batch::Batch& batch, std::vector<Finding>& found) {
    const bool by_volume = std::any_of(batch.fills.begin(), batch.fills.end(),
                                       [](const batch::Fill& fill) { return fill.share.has_value(); });
    if (by_volume && batch.density.known < kHundred)
        found.push_back(measured(about(Code::density_partly_known, Severity::caution, {}, ""),
                                 batch.density.known.grid, {}, "%"));
    for (const batch::Fill& fill : batch.fills) {
        const catalogue::Container* known = catalogue::find_container(the.shipped, fill.container);
        const std::string name = known != nullptr ? known->name : fill.container;
        if (fill.warm && fill.holds && *fill.warm > *fill.holds)
            found.push_back(sourced(
                measured(about(Code::warm_over_brim, Severity::caution, {}, name),
                         to_place(fill.warm->grid, kOne / 10), to_place(fill.holds->grid, kOne / 10), "mL"),
                density::kWarmSource, source::Standing::memory));
        if (known == nullptr || !known->max_pour_c || !batch.pour_c) continue;
        if (*batch.pour_c <= known->max_pour_c->value) continue;
        Finding hot = measured(about(Code::pour_too_hot, Severity::caution, {}, name), *batch.pour_c,
                               known->max_pour_c->value, "°C");
        hot.material = known->material;
        found.push_back(sourced(std::move(hot), known->max_pour_c->source, known->max_pour_c->standing));
    }
}

void check_stock(const Case& the, const batch::Batch& batch, std::vector<Finding>& found) {
    if (!batch.reach) return;
    for (const batch::Supply& supply : batch.reach->supplies)
        if (!supply.have) {
            const std::size_t line = supply.takes.front().line;
            const bool whole = the.subject(line) == supply.ingredient;
            found.push_back(about(Code::stock_unknown, Severity::note,
                                  whole ? std::optional(line) : std::nullopt, supply.ingredient));
        }
    for (const std::string& name : batch.reach->not_needed)
        found.push_back(about(Code::stock_not_needed, Severity::note, {}, name));
}

void check_batch(const Case& the, const batch::Batch& batch, std::vector<Finding>& found) {
    if (the.recipe.batch.amount == batch::Amount::grams && batch.total != batch.asked)
        found.push_back(measured(about(Code::batch_rounded, Severity::note, {}, ""), batch.total.grid,
                                 batch.asked.grid, "g"));
    check_containers(the, batch, found);
    check_batch_lines(the, batch, found);
    check_stock(the, batch, found);
}

}  // namespace

Analysis of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped, const scales::Bench& bench,
            const std::vector<catalogue::Ingredient>& mine) {
    // Only copied where there is something to lay over it: copying takes as long as all that follows.
    catalogue::Catalogue laid;
    if (!recipe.own.empty()) laid = catalogue::with_own(shipped, recipe.own);
    const catalogue::Catalogue& with_own = recipe.own.empty() ? shipped : laid;
    Analysis analysis{formula::stated_sum(recipe.formula),
                      std::nullopt,
                      formula::percents(recipe.formula),
                      batch::make(recipe.formula, recipe.batch, with_own, recipe.product, bench),
                      {},
                      {},
                      {}};
    if (formula::rest_line(recipe.formula)) analysis.rest = kHundred - analysis.stated_sum;

    analysis.findings = safety::at_hand(case_of(recipe, shipped, mine));
    if (analysis.batch) check_batch({recipe, shipped, bench}, *analysis.batch, analysis.findings);
    safety::sort(analysis.findings);
    if (!analysis.batch) return analysis;
    for (const batch::Line& line : analysis.batch->lines) {
        if (!batch::reads_badly(line, analysis.batch->total)) continue;
        for (remedy::Remedy& one : remedy::remedies_for(recipe, *analysis.batch, line.line, with_own, bench))
            analysis.remedies.push_back(std::move(one));
    }
    analysis.ahead = remedy::mixed_ahead(recipe, *analysis.batch, with_own);
    return analysis;
}

safety::Report checks(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                      const limits::Book* book, const scales::Bench& bench,
                      const std::vector<catalogue::Ingredient>& mine) {
    safety::Report report = safety::of(case_of(recipe, shipped, mine, book));
    catalogue::Catalogue laid;
    if (!recipe.own.empty()) laid = catalogue::with_own(shipped, recipe.own);
    const auto batch =
        batch::make(recipe.formula, recipe.batch, recipe.own.empty() ? shipped : laid, recipe.product, bench);
    if (!batch) return report;
    check_batch({recipe, shipped, bench}, *batch, report.findings);
    safety::sort(report.findings);
    return report;
}

}  // namespace analysis
