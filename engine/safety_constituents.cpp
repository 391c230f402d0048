// Constituents against the limits in force: EU Annexes by product type, IFRA standards by category, guidance.
// Summed over every source. A row of which no source says anything is not made; neither is one whose figure
// is a gap, for what does hold it.
#include <algorithm>
#include "safety_bounds.h"
#include "safety_family.h"

#include "sorting.h"

namespace safety {
namespace {

using composition::Id;
using finding::Code;
using finding::Severity;
using limits::Force;
using limits::Row;
using limits::Verdict;

constexpr std::int64_t kWhole = quantity::kHundred.grid * quantity::kHundred.grid;

Severity severity_of(Force force) {
    return force == Force::law || force == Force::standard ? Severity::stop : Severity::caution;
}

// Portions may be many for one ingredient; each is named once.
std::vector<std::string> names_of(const Contents& contents, const std::vector<std::size_t>& portions) {
    std::vector<std::string> names;
    names.reserve(portions.size());
    for (std::size_t i = 0; i < portions.size(); ++i) {
        const std::size_t first = contents.same_as[portions[i]];
        bool named = false;
        for (std::size_t j = 0; j < i && !named; ++j)
            named = contents.same_as[portions[j]] == first;
        if (!named) names.push_back(contents.subjects[first]);
    }
    return names;
}

struct Family {
    const Case& the;
    const Contents& contents;
    Bounds& bounds;
    std::vector<bool> carries = {};  // portions that hold constituents, known or not
    // of the row at hand, kept for their room
    std::vector<std::size_t> with = {}, without = {};
    std::vector<bool> says = {};

    void of_product(const Row& row, const limits::Cap& cap) {
        Bound bound;
        bound.rule = Rule::constituents;
        bound.row = &row;
        bound.severity = severity_of(row.force);
        bound.constituent = row.constituents.front();
        bound.over =
            cap.verdict == Verdict::prohibited ? Code::constituent_not_for_age : Code::constituent_over;
        bound.maybe = cap.verdict == Verdict::prohibited ? Code::constituent_not_for_age
                                                         : Code::constituent_may_be_over;
        bound.most = cap.verdict == Verdict::prohibited ? 0 : cap.most.grid;
        bound.limit = {bound.most};
        bound.whole = kWhole;
        with.clear();
        without.clear();
        says.assign(the.portions.size(), false);
        for (const Id id : row.constituents)
            for (const composition::Term& term : composition::terms_of(contents.sums, id)) {
                says[term.held] = contents.held[term.held].trusted;
                if (term.high.grid == 0) continue;  // known to be free of it
                bound.terms.push_back(
                    {term.held, term.high.grid, term.typical.grid, term.measured, term.of_bottle,
                     term.row != nullptr ? term.row->standing : source::Standing::document});
                with.push_back(term.held);
            }
        for (std::size_t i = 0; i < the.portions.size(); ++i)
            if (carries[i] && !says[i]) without.push_back(i);
        NotMade missing{Rule::constituents, row.id, Reason::no_figure, {}};
        if (cap.verdict == Verdict::gap) {
            missing.about = names_of(contents, with);
            bounds.not_made.push_back(std::move(missing));
            return;
        }
        if (!without.empty()) {
            if (!with.empty()) missing.about = names_of(contents, without);
            bounds.not_made.push_back(std::move(missing));
        }
        if (bound.terms.empty()) return;
        sorting::stable(bound.terms, [&](const Term& a, const Term& b) {
            return the.portions[a.portion].percent.grid * a.high >
                   the.portions[b.portion].percent.grid * b.high;
        });
        bounds.made.push_back({Rule::constituents, row.id, names_of(contents, with)});
        bounds.all.push_back(std::move(bound));
    }

    // % of the oil itself: pulegone in peppermint. A range that lies on both sides of the figure cannot say.
    void of_oil(const Row& row, const limits::Cap& cap) {
        for (const composition::Term& term : contents.sums.terms) {
            const Portion& portion = the.portions[term.held];
            if (term.constituent != row.constituents.front() || portion.known == nullptr ||
                portion.known->id != row.within)
                continue;
            const std::int64_t most = cap.most.grid / quantity::kHundred.grid;
            if (term.low.grid <= most && term.high.grid > most) {
                bounds.not_made.push_back(
                    {Rule::constituents, row.id, Reason::certificate_unsaid, {subject(portion)}});
                continue;
            }
            bounds.made.push_back({Rule::constituents, row.id, {subject(portion)}});
            Bound bound;
            bound.rule = Rule::constituents;
            bound.row = &row;
            bound.over = bound.maybe = Code::oil_impure;
            bound.severity = Severity::caution;
            bound.constituent = term.constituent;
            bound.terms.push_back({term.held, term.low.grid, term.low.grid, term.measured, term.of_bottle,
                                   source::Standing::document});
            bound.most = portion.percent.grid * most;
            bound.whole = portion.percent.grid * quantity::kHundred.grid;
            bound.limit = cap.most;
            bounds.all.push_back(std::move(bound));
        }
    }
};

}  // namespace

void add_constituents(const Case& the, const Contents& contents, Bounds& bounds) {
    if (contents.sums.terms.empty() && contents.sums.unknown.empty()) {
        bounds.made.push_back({Rule::constituents, "", {}});
        return;
    }
    if (the.product == nullptr) {
        bounds.not_made.push_back({Rule::constituents, "", Reason::product_unsaid, {}});
        return;
    }
    if (the.market.empty()) bounds.not_made.push_back({Rule::constituents, "", Reason::market_unsaid, {}});
    if (the.market == "us")
        bounds.not_made.push_back({Rule::constituents, "", Reason::market_not_covered, {}});
    Family family{the, contents, bounds};
    family.carries.resize(the.portions.size());
    for (const composition::Term& term : contents.sums.terms)
        family.carries[term.held] = true;
    for (const std::size_t unknown : contents.sums.unknown)
        family.carries[unknown] = true;
    const auto age = age_of(the);
    for (const Row& row : the.book->rows) {
        if (row.constituents.empty() || !limits::is_in(row, market_of(the)) || !limits::is_for(row, age))
            continue;
        const limits::Cap* cap = limits::cap_for(*the.book, row.caps, *the.product);
        if (cap == nullptr || cap->verdict == Verdict::unlimited) continue;
        if (row.within.empty())
            family.of_product(row, *cap);
        else
            family.of_oil(row, *cap);
    }
}

}  // namespace safety
