// Sun on expressed citrus and a few others: each oil has its own limit in what stays on skin that sees the
// sun, and of several the fractions are added (IFRA). Where a bottle's paper says its bergapten, the sum of
// bergapten is held against its own limit besides: the stricter of the two counts.
#include <algorithm>
#include <numeric>
#include "safety_bounds.h"
#include "safety_family.h"

#include "sorting.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;

struct Oil {
    std::size_t portion = 0;
    const limits::Row* row = nullptr;
    std::int64_t limit = 0;  // % on the grid
};

void add_fractions(const Case& the, const std::vector<Oil>& oils, Bounds& bounds) {
    std::int64_t whole = 1;
    for (const Oil& oil : oils)
        whole = std::lcm(whole, oil.limit);
    Bound bound;
    bound.rule = Rule::phototoxic;
    bound.over = bound.maybe = Code::phototoxic_over;
    bound.severity = Severity::stop;
    bound.most = bound.whole = whole;
    bound.limit = quantity::trace_of(quantity::kHundred, quantity::kHundred);
    Made made{Rule::phototoxic, "", {}};
    for (const Oil& oil : oils) {
        const std::int64_t weight = whole / oil.limit;
        bound.terms.push_back({oil.portion, weight, weight, true, false, oil.row->standing});
        made.looked_at.push_back(subject(the.portions[oil.portion]));
    }
    sorting::stable(bound.terms, [&](const Term& a, const Term& b) {
        return the.portions[a.portion].percent.grid * a.high > the.portions[b.portion].percent.grid * b.high;
    });
    for (const Oil& oil : oils)
        if (oil.portion == bound.terms.front().portion) bound.row = oil.row;
    bounds.made.push_back(std::move(made));
    bounds.all.push_back(std::move(bound));
}

}  // namespace

void add_phototoxic(const Case& the, const Contents& contents, Bounds& bounds) {
    if (the.product == nullptr) {
        bounds.not_made.push_back({Rule::phototoxic, "", Reason::product_unsaid, {}});
        return;
    }
    std::vector<Oil> oils;
    for (const limits::Row& row : the.book->phototoxic) {
        const limits::Cap* cap = limits::cap_for(*the.book, row.caps, *the.product);
        if (cap == nullptr) continue;  // rinsed off, or where no sun comes
        if (row.constituents.empty()) {
            for (const std::size_t place : those_of(the, contents, row.ingredients, row.names))
                oils.push_back({place, &row, cap->most.grid / quantity::kHundred.grid});
            continue;
        }
        Bound bound;
        bound.rule = Rule::phototoxic;
        bound.row = &row;
        bound.over = bound.maybe = Code::constituent_over;
        bound.severity = row.force == limits::Force::standard ? Severity::stop : Severity::caution;
        bound.constituent = row.constituents.front();
        bound.most = cap->most.grid;
        bound.limit = cap->most;
        bound.whole = quantity::kHundred.grid * quantity::kHundred.grid;
        Made made{Rule::phototoxic, row.id, {}};
        for (const composition::Term& term : composition::terms_of(contents.sums, row.constituents.front())) {
            if (!term.of_bottle) continue;
            bound.terms.push_back({term.held, term.high.grid, term.typical.grid, term.measured, true,
                                   source::Standing::supplier});
            made.looked_at.push_back(subject(the.portions[term.held]));
        }
        if (bound.terms.empty()) continue;
        bounds.made.push_back(std::move(made));
        bounds.all.push_back(std::move(bound));
    }
    if (oils.empty())
        bounds.made.push_back({Rule::phototoxic, "", {}});
    else
        add_fractions(the, oils, bounds);
}

}  // namespace safety
