// The standing answers for one recipe, gathered: sums, percents, batch, and what is to be remarked.
// Remarks take what an ingredient is from the shipped catalogue first, then from the shipped ingredient that
// an own entry is based on, and from the recipe's own entry only where there is neither: what a stranger's
// recipe brings along never loosens a check. A made part is looked into: water in it is water in the product;
// a preservative in an own entry counts only where the entry is the person's own. Figures for the batch come
// from the own entries, as the person means them.
#include "analysis.h"

#include <algorithm>
#include <utility>

#include "made.h"
#include "workspace_own.h"

namespace analysis {
namespace {

using decimal::kOne;
using finding::Code;
using finding::Finding;
using finding::Severity;
using quantity::kHundred;
using quantity::Percent;

constexpr std::string_view kCommonPractice = "common_practice";  // key in presets/sources.json

struct Case {  // what the checks look at
    const workspace::Recipe& recipe;
    const Analysis& analysis;
    const catalogue::Catalogue& shipped;
    const catalogue::Catalogue& with_own;
    const scales::Bench& bench;
    const std::vector<catalogue::Ingredient>& mine;

    const catalogue::Ingredient* ingredient(std::size_t line) const {
        const std::string& id = recipe.formula.lines[line].ingredient;
        if (id.empty()) return nullptr;
        return known(id);
    }
    const catalogue::Ingredient* known(const std::string& id) const {
        if (const auto* one = catalogue::find_ingredient(shipped, id)) return one;
        const catalogue::Ingredient* own = catalogue::find_ingredient(with_own, id);
        const catalogue::Ingredient* base =
            own == nullptr ? nullptr : catalogue::find_ingredient(shipped, own->based_on);
        return base != nullptr ? base : own;
    }
    // Shipped, or an own entry that is the same on this device.
    bool vouched_for(const std::string& id) const {
        if (catalogue::find_ingredient(shipped, id) != nullptr) return true;
        const catalogue::Ingredient* own = workspace::own_of(recipe, id);
        return own != nullptr && std::find(mine.begin(), mine.end(), *own) != mine.end();
    }
    // What is in the line in the end, the line itself included.
    std::vector<std::string> held_in(std::size_t line) const {
        const std::string& id = recipe.formula.lines[line].ingredient;
        std::vector<std::string> all;
        if (id.empty()) return all;
        all.push_back(id);
        const catalogue::Ingredient* own = workspace::own_of(recipe, id);
        if (own == nullptr || own->parts.empty()) return all;
        formula::Formula alone;
        alone.lines.push_back(recipe.formula.lines[line]);
        if (const auto split = made::split(alone, {kHundred}, shipped, recipe.own))
            for (const made::Share& share : split->shares)
                all.push_back(share.ingredient);
        return all;
    }
    std::string subject(std::size_t line) const {
        const formula::Line& said = recipe.formula.lines[line];
        return said.ingredient.empty() ? said.name : said.ingredient;
    }
    // What the line comes to; of a rest line that leaves nothing or less, 0.
    Percent percent(std::size_t line) const {
        const formula::Line& said = recipe.formula.lines[line];
        if (!said.rest) return said.percent;
        return std::max(Percent{0}, analysis.rest.value_or(Percent{0}));
    }
};

Finding about(Code code, Severity severity, std::optional<std::size_t> line, std::string subject) {
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

void check_sum(const Case& the, std::vector<Finding>& found) {
    const auto rest = formula::rest_line(the.recipe.formula);
    const Percent sum = the.analysis.stated_sum;
    if (the.recipe.formula.lines.empty()) {
        found.push_back(about(Code::formula_empty, Severity::note, {}, ""));
    } else if (!rest && sum != kHundred) {
        found.push_back(
            measured(about(Code::sum_not_hundred, Severity::stop, {}, ""), sum.grid, kHundred.grid, "%"));
    } else if (rest && sum > kHundred) {
        found.push_back(measured(about(Code::rest_negative, Severity::stop, *rest, the.subject(*rest)),
                                 (kHundred - sum).grid, 0, "%"));
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

void check_lines(const Case& the, std::vector<Finding>& found) {
    const catalogue::Product* product = catalogue::find_product(the.shipped, the.recipe.product);
    const bool leave_on = product != nullptr && product->contact == "leave_on";
    for (std::size_t i = 0; i < the.recipe.formula.lines.size(); ++i) {
        const Percent percent = the.percent(i);
        const bool below_zero =
            the.recipe.formula.lines[i].rest && the.analysis.rest && *the.analysis.rest < Percent{0};
        if (percent == Percent{0} && !below_zero)
            found.push_back(about(Code::line_empty, Severity::note, i, the.subject(i)));
        if (is_repeated(the.recipe.formula, i))
            found.push_back(about(Code::line_twice, Severity::note, i, the.subject(i)));

        const catalogue::Ingredient* ingredient = the.ingredient(i);
        if (ingredient == nullptr) {
            found.push_back(about(Code::ingredient_unknown, Severity::note, i, the.subject(i)));
            continue;
        }
        const auto& usual = ingredient->usual_leave_on_percent;
        if (!leave_on || !usual || percent == Percent{0}) continue;
        const bool over = percent.grid > usual->value.max;
        if (!over && percent.grid >= usual->value.min) continue;
        found.push_back(sourced(measured(about(Code::usual_range_left,
                                               over ? Severity::caution : Severity::note, i, the.subject(i)),
                                         percent.grid, over ? usual->value.max : usual->value.min, "%"),
                                usual->source, usual->standing));
    }
}

// Water feeds what grows. Ingredients that hold water are the ones of role "water" wherever they stand, and
// solvents and aqueous ones of the water phase; whether the preservative fits and suffices is not asked here.
void check_water(const Case& the, std::vector<Finding>& found) {
    std::optional<std::size_t> wet;
    for (std::size_t i = 0; i < the.recipe.formula.lines.size(); ++i) {
        if (the.percent(i) == Percent{0}) continue;
        const bool trusted = the.vouched_for(the.recipe.formula.lines[i].ingredient);
        for (const std::string& id : the.held_in(i)) {
            const catalogue::Ingredient* ingredient = the.known(id);
            if (ingredient == nullptr) continue;
            if (ingredient->role == "preservative" && trusted) return;
            const bool watery = ingredient->role == "water" ||
                                (ingredient->phase == catalogue::Phase::water &&
                                 (ingredient->role == "solvent" || ingredient->role == "aqueous"));
            if (watery && !wet) wet = i;
        }
    }
    if (wet)
        found.push_back(
            sourced(about(Code::water_without_preservative, Severity::stop, *wet, the.subject(*wet)),
                    kCommonPractice, source::Standing::common_practice));
}

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

void check_batch(const Case& the, std::vector<Finding>& found) {
    if (!the.analysis.batch) return;
    const batch::Batch& batch = *the.analysis.batch;
    if (the.recipe.batch.amount == batch::Amount::grams && batch.total != batch.asked)
        found.push_back(measured(about(Code::batch_rounded, Severity::note, {}, ""), batch.total.grid,
                                 batch.asked.grid, "g"));
    check_containers(the, batch, found);
    check_batch_lines(the, batch, found);
    check_stock(the, batch, found);
}

// Stops first, then cautions, then notes; within each what concerns the whole, then line by line.
bool comes_before(const Finding& a, const Finding& b) {
    if (a.severity != b.severity) return a.severity > b.severity;
    return a.line < b.line;  // none before any
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

    std::vector<Finding> found;
    const Case the{recipe, analysis, shipped, with_own, bench, mine};
    check_sum(the, found);
    check_lines(the, found);
    check_water(the, found);
    check_batch(the, found);
    std::stable_sort(found.begin(), found.end(), comes_before);
    analysis.findings = std::move(found);
    if (!analysis.batch) return analysis;
    for (const batch::Line& line : analysis.batch->lines) {
        if (!batch::reads_badly(line, analysis.batch->total)) continue;
        for (remedy::Remedy& one : remedy::remedies_for(recipe, *analysis.batch, line.line, with_own, bench))
            analysis.remedies.push_back(std::move(one));
    }
    analysis.ahead = remedy::mixed_ahead(recipe, *analysis.batch, with_own);
    return analysis;
}

}  // namespace analysis
