// A search between a percent that passes and one that does not: each step is the whole check of the changed
// formula, so that the ceiling is what the checks say, whatever a line is made of. 20 steps reach the grid.
#include "ceiling.h"

#include <algorithm>

#include "analysis_case.h"
#include "batch.h"
#include "limits_book.h"
#include "safety_bounds.h"
#include "safety_family.h"
#include "sorting.h"

namespace ceiling {
namespace {

using quantity::Mass;
using quantity::Percent;
using safety::Bound;
using safety::Case;

__extension__ typedef __int128 Wide;

constexpr Percent kStep{1};

bool counts(const Case& the, const Bound& bound, std::size_t line) {
    return std::any_of(bound.terms.begin(), bound.terms.end(),
                       [&](const safety::Term& term) { return the.portions[term.portion].line == line; });
}

// As it is weighed: grams of a line times what of it counts, over the grams of all lines that stay. Parts of
// a made part are taken as they were split, rounded up.
bool goes_beyond_weighed(const Case& the, const Bound& bound, const std::vector<Mass>& grams) {
    std::vector<std::int64_t> of_line(grams.size());
    for (const safety::Portion& portion : the.portions)
        if (portion.line < of_line.size()) of_line[portion.line] += portion.percent.grid;
    Wide whole = 0, sum = 0;
    for (std::size_t i = 0; i < grams.size(); ++i)
        if (of_line[i] > 0) whole += grams[i].grid;
    for (const safety::Term& term : bound.terms) {
        const safety::Portion& portion = the.portions[term.portion];
        if (portion.line >= grams.size() || of_line[portion.line] == 0) continue;
        const Wide top = static_cast<Wide>(grams[portion.line].grid) * portion.percent.grid * term.high *
                         quantity::kHundred.grid;
        sum += (top + of_line[portion.line] - 1) / of_line[portion.line];
    }
    return sum > bound.most * whole;
}

struct Search {
    const With& with;
    const Weighed& weighed;
    std::size_t line;
    std::optional<finding::Finding> why;
    bool by_grams = false;

    bool passes(Percent percent) {
        const Case the = with(percent);
        if (the.book == nullptr || percent.grid == 0) return true;
        const safety::Contents contents = safety::contents_of(the);
        const safety::Bounds bounds = safety::bounds_of(the, contents);
        for (const Bound& bound : bounds.all)
            if (counts(the, bound, line) && safety::goes_beyond(the, bound))
                return fails(safety::told(the, bound), false);
        safety::Report persons;
        safety::persons(the, contents, persons);
        for (finding::Finding& one : persons.findings)
            if (one.line == line && one.severity == finding::Severity::stop)
                return fails(std::move(one), false);
        const std::vector<Mass> grams = weighed ? weighed(percent) : std::vector<Mass>{};
        if (grams.empty()) return true;
        for (const Bound& bound : bounds.all)
            if (counts(the, bound, line) && goes_beyond_weighed(the, bound, grams))
                return fails(safety::told(the, bound), true);
        return true;
    }

    bool fails(finding::Finding found, bool grams) {
        why = std::move(found);
        by_grams = grams;
        return false;
    }
};

bool has_line(const Case& the, std::size_t line) {
    return the.formula != nullptr && line < the.formula->lines.size();
}

const safety::Portion* portion_on(const Case& the, std::size_t line) {
    const auto at = std::find_if(the.portions.begin(), the.portions.end(),
                                 [&](const safety::Portion& one) { return one.line == line; });
    return at == the.portions.end() ? nullptr : &*at;
}

// What may be offered upward.
std::optional<Percent> usual_of(const Case& the, std::size_t line, Percent most) {
    const safety::Portion* portion = portion_on(the, line);
    if (portion == nullptr || portion->known == nullptr || !portion->known->usual_leave_on_percent ||
        the.product == nullptr || the.product->contact != "leave_on")
        return std::nullopt;
    Percent usual{portion->known->usual_leave_on_percent->value.max};
    for (const catalogue::UsualShare& share : the.product->usual)
        if (share.role == portion->known->role) usual = std::min(usual, Percent{share.percent.max});
    return std::min(usual, most);
}

bool is_about(const safety::NotMade& gap, const std::string& subject) {
    return gap.reason == safety::Reason::no_figure && !gap.row.empty() &&
           std::find(gap.about.begin(), gap.about.end(), subject) != gap.about.end();
}

}  // namespace

result::Result<Ceiling> of(const With& with, std::size_t line, const Weighed& weighed) {
    const Case without = with(Percent{0});
    if (!has_line(without, line)) return result::Code::line_missing;
    Search search{with, weighed, line, {}, false};
    Ceiling found;
    const Percent room = std::max(Percent{0}, quantity::kHundred - without.stated_sum);
    if (room.grid == 0 || search.passes(room)) {
        found.most = room;
    } else {
        Percent passing{0}, failing = room;
        while (failing - passing > kStep) {
            const Percent middle{(passing.grid + failing.grid) / 2};
            (search.passes(middle) ? passing : failing) = middle;
        }
        search.passes(failing);  // so that what it says is about the next step
        found.most = passing;
        found.bound = true;
        found.by_grams = search.by_grams;
        found.why = search.why;
    }
    const Case the = with(std::max(kStep, found.most));
    found.usual = usual_of(the, line, found.most);
    if (the.book != nullptr)
        if (const safety::Portion* portion = portion_on(the, line); portion != nullptr)
            for (safety::NotMade& gap : safety::bounds_of(the).not_made)
                if (is_about(gap, safety::subject(*portion))) found.gaps.push_back(std::move(gap));
    return found;
}

result::Result<Kept> keeping(const With& with, std::size_t line, const formula::Hold& hold) {
    constexpr Percent kProbe = quantity::percent(1);
    const Case probe = with(kProbe);
    if (!has_line(probe, line)) return result::Code::line_missing;
    if (probe.book == nullptr) return result::Code::gives_too_little;
    const composition::Id id = composition::find_named(probe.book->composition, hold.constituent);
    const safety::Contents contents = safety::contents_of(probe);
    std::int64_t brings = 0, whole = 0;  // by the line at the probe
    for (const safety::Portion& portion : probe.portions)
        if (portion.line == line) whole += portion.percent.grid;
    if (id != composition::kNone)
        for (const composition::Term& term : composition::terms_of(contents.sums, id))
            if (probe.portions[term.held].line == line)
                brings += probe.portions[term.held].percent.grid * term.typical.grid;
    if (brings == 0 || whole == 0) return result::Code::gives_too_little;
    Kept kept;
    kept.percent = {decimal::scale_nearest(hold.percent.grid * quantity::kHundred.grid, whole, brings)};
    if (kept.percent > quantity::kHundred - with(Percent{0}).stated_sum)
        return {result::Code::sum_over_hundred, "", decimal::print(kept.percent.grid)};
    kept.comes_to = {decimal::scale_nearest(kept.percent.grid, brings, whole)};
    const Case the = with(kept.percent);
    for (const Bound& bound : safety::bounds_of(the).all)
        if (counts(the, bound, line) && safety::goes_beyond(the, bound))
            kept.beyond.push_back(safety::told(the, bound));
    return kept;
}

namespace {

// A copy of the recipe that is changed, so that every case points into something that stands.
struct Trial {
    const Asked& asked;
    workspace::Recipe recipe = asked.recipe;
    catalogue::Catalogue laid =
        recipe.own.empty() ? catalogue::Catalogue{} : catalogue::with_own(asked.shipped, recipe.own);

    void put(Percent percent) {
        recipe.formula.lines[asked.line].rest = false;
        recipe.formula.lines[asked.line].percent = percent;
    }
    Case with(Percent percent) {
        put(percent);
        return analysis::case_of(recipe, asked.shipped, asked.mine, asked.book);
    }
    std::vector<Mass> weighed(Percent percent) {
        put(percent);
        const auto made = batch::make(recipe.formula, recipe.batch, recipe.own.empty() ? asked.shipped : laid,
                                      recipe.product, asked.bench);
        std::vector<Mass> grams;
        if (made)
            for (const batch::Line& one : made->lines)
                grams.push_back(one.grams);
        return grams;
    }
};

}  // namespace

result::Result<Ceiling> of(const Asked& asked) {
    if (asked.line >= asked.recipe.formula.lines.size()) return result::Code::line_missing;
    Trial trial{asked};
    return of([&](Percent percent) { return trial.with(percent); }, asked.line,
              [&](Percent percent) { return trial.weighed(percent); });
}

result::Result<Kept> keeping(const Asked& asked, const formula::Hold& hold) {
    if (asked.line >= asked.recipe.formula.lines.size()) return result::Code::line_missing;
    Trial trial{asked};
    return keeping([&](Percent percent) { return trial.with(percent); }, asked.line, hold);
}

std::vector<formula::Hold> brought(const Asked& asked) {
    const Case the = analysis::case_of(asked.recipe, asked.shipped, asked.mine, asked.book);
    std::vector<formula::Hold> found;
    if (!has_line(the, asked.line) || the.book == nullptr) return found;
    const safety::Contents contents = safety::contents_of(the);
    composition::Id last = composition::kNone;
    for (const composition::Term& term : contents.sums.terms) {
        const safety::Portion& portion = the.portions[term.held];
        const Percent brings{
            decimal::scale_nearest(portion.percent.grid, term.typical.grid, quantity::kHundred.grid)};
        if (portion.line != asked.line || brings.grid == 0) continue;
        if (term.constituent == last)
            found.back().percent = found.back().percent + brings;
        else
            found.push_back({the.book->composition.constituents[term.constituent].id, brings});
        last = term.constituent;
    }
    sorting::stable(found,
                    [](const formula::Hold& a, const formula::Hold& b) { return a.percent > b.percent; });
    return found;
}

}  // namespace ceiling
