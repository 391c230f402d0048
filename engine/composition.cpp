// Sums of constituents. One walk over the sources gathers every row once; a limit then only looks up its own.
#include "composition.h"

#include <algorithm>
#include <map>
#include <set>

#include "sorting.h"

namespace composition {
namespace {

using catalogue::Content;
using quantity::Percent;
using quantity::Trace;

char lowered(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

// "alpha-Pinene", "alpha_pinene" and "Alpha Pinene" are one name.
bool same_name(std::string_view a, std::string_view b) {
    const auto plain = [](char c) { return c == '-' || c == '_' ? ' ' : lowered(c); };
    return std::equal(a.begin(), a.end(), b.begin(), b.end(),
                      [&](char x, char y) { return plain(x) == plain(y); });
}

struct Figures {
    Percent low, typical, high;
    bool measured = false;
};

// A printed typical figure outside its own range is one lot's: the range is what counts.
Figures figures_of(const Content& content) {
    Figures figures;
    figures.high = content.max ? *content.max : content.typical ? *content.typical : quantity::kHundred;
    figures.low = content.min ? *content.min : Percent{};
    figures.measured = content.typical.has_value();
    figures.typical = figures.measured
                          ? std::clamp(*content.typical, figures.low, std::max(figures.low, figures.high))
                          : Percent{(figures.low.grid + figures.high.grid) / 2};
    return figures;
}

// What a bottle's paper says: one figure alone is what was measured in it. What it leaves open stays as it is
// shipped, or open.
Figures of_paper(const Content& paper, const Figures* shipped) {
    Content content = paper;
    if (!content.max && !content.typical)
        content.max = shipped != nullptr ? shipped->high : quantity::kHundred;
    if (!content.min && content.typical && !content.max) content.min = content.typical;
    if (!content.min && shipped != nullptr && content.max && shipped->low <= *content.max)
        content.min = shipped->low;
    if (!content.max) content.max = content.typical;
    return figures_of(content);
}

// Somebody else's paper may only make it worse.
Figures worse(const Figures& shipped, const Figures& claimed) {
    Figures figures = shipped;
    figures.low = std::max(shipped.low, claimed.low);
    figures.high = std::max(shipped.high, claimed.high);
    return figures;
}

Term term_of(Id constituent, std::size_t held, const Figures& figures) {
    Term term;
    term.constituent = constituent;
    term.held = held;
    term.low = figures.low;
    term.typical = figures.typical;
    term.high = figures.high;
    term.measured = figures.measured;
    return term;
}

Figures figures_of(const Term& term) {
    return {term.low, term.typical, term.high, term.measured};
}

// The terms of one source, by constituent.
using OfSource = std::map<Id, Term>;

// Where the paper names members of a group but not the group, the group is their sum; members it does not
// name stay as shipped. Where one of them is known from nowhere, the group's shipped maximum still counts.
void add_up_groups(const Table& table, const std::map<Id, Figures>& paper, bool trusted, std::size_t held,
                   OfSource& terms) {
    std::set<Id> groups;
    for (const auto& [id, figures] : paper)
        if (const Id group = table.constituents[id].sums_into; group != kNone && paper.count(group) == 0)
            groups.insert(group);
    for (const Id group : groups) {
        Figures sum;
        sum.measured = true;
        bool whole = true;
        for (Id id = 0; id < table.constituents.size(); ++id) {
            if (table.constituents[id].sums_into != group) continue;
            const auto at = terms.find(id);
            if (at == terms.end()) {
                whole = false;
                continue;
            }
            sum.low = sum.low + at->second.low;
            sum.typical = sum.typical + at->second.typical;
            sum.high = sum.high + at->second.high;
            sum.measured = sum.measured && at->second.measured;
        }
        sum.high = std::min(sum.high, quantity::kHundred);
        const auto shipped = terms.find(group);
        if (shipped != terms.end() && (!trusted || !whole)) sum = worse(sum, figures_of(shipped->second));
        const Row* row = shipped != terms.end() ? shipped->second.row : nullptr;
        Term term = term_of(group, held, sum);
        term.of_bottle = true;
        term.row = row;
        terms[group] = term;
    }
}

OfSource terms_of(const Table& table, const Held& held, std::size_t place) {
    OfSource terms;
    if (const Carrier* carrier = find_carrier(table, held.ingredient); carrier != nullptr)
        for (const Row& row : carrier->rows) {
            Term term = term_of(row.constituent, place, figures_of(row.percent));
            term.row = &row;
            terms.emplace_hint(terms.end(), row.constituent, term);
        }
    if (held.analysis == nullptr) return terms;
    std::map<Id, Figures> paper;
    for (const auto& [name, content] : held.analysis->constituents) {
        const Id id = find_named(table, name);
        if (id == kNone) continue;
        const auto at = terms.find(id);
        const Figures shipped = at != terms.end() ? figures_of(at->second) : Figures{};
        const Figures* known = at != terms.end() ? &shipped : nullptr;
        Figures figures = of_paper(content, known);
        if (!held.trusted && known != nullptr) figures = worse(shipped, figures);
        paper[id] = figures;
        Term term = term_of(id, place, figures);
        term.of_bottle = true;
        term.row = at != terms.end() ? at->second.row : nullptr;
        terms[id] = term;
    }
    add_up_groups(table, paper, held.trusted, place, terms);
    return terms;
}

}  // namespace

Id find(const Table& table, std::string_view constituent) {
    const auto at = std::lower_bound(table.constituents.begin(), table.constituents.end(), constituent,
                                     [](const Constituent& one, std::string_view id) { return one.id < id; });
    return at != table.constituents.end() && at->id == constituent
               ? static_cast<Id>(at - table.constituents.begin())
               : kNone;
}

Id find_named(const Table& table, std::string_view written) {
    if (const Id id = find(table, written); id != kNone) return id;
    for (std::size_t i = 0; i < table.constituents.size(); ++i) {
        const Constituent& one = table.constituents[i];
        if (same_name(one.id, written) || same_name(one.name, written) ||
            std::find(one.cas.begin(), one.cas.end(), written) != one.cas.end())
            return static_cast<Id>(i);
    }
    return kNone;
}

const Carrier* find_carrier(const Table& table, std::string_view ingredient) {
    const auto at =
        std::lower_bound(table.carriers.begin(), table.carriers.end(), ingredient,
                         [](const Carrier& one, std::string_view id) { return one.ingredient < id; });
    return at != table.carriers.end() && at->ingredient == ingredient ? &*at : nullptr;
}

Sums sums_of(const Table& table, const std::vector<Held>& held) {
    Sums sums;
    for (std::size_t i = 0; i < held.size(); ++i) {
        if (held[i].percent.grid <= 0) continue;
        const Carrier* carrier = find_carrier(table, held[i].ingredient);
        if (carrier == nullptr && !held[i].carries && held[i].analysis == nullptr) continue;
        if (held[i].analysis == nullptr) {  // the usual case, without a map
            if (carrier == nullptr || carrier->rows.empty()) {
                sums.unknown.push_back(i);
                continue;
            }
            for (const Row& row : carrier->rows) {
                Term term = term_of(row.constituent, i, figures_of(row.percent));
                term.row = &row;
                sums.terms.push_back(term);
            }
            if (!held[i].trusted) sums.unknown.push_back(i);
            continue;
        }
        const OfSource terms = terms_of(table, held[i], i);
        if (terms.empty() || !held[i].trusted) sums.unknown.push_back(i);
        for (const auto& [id, term] : terms)
            sums.terms.push_back(term);
    }
    sorting::stable(sums.terms, [](const Term& a, const Term& b) {
        return a.constituent != b.constituent ? a.constituent < b.constituent : a.held < b.held;
    });
    return sums;
}

std::span<const Term> terms_of(const Sums& sums, Id constituent) {
    const auto from = std::lower_bound(sums.terms.begin(), sums.terms.end(), constituent,
                                       [](const Term& term, Id id) { return term.constituent < id; });
    auto to = from;
    while (to != sums.terms.end() && to->constituent == constituent)
        ++to;
    return {sums.terms.data() + (from - sums.terms.begin()), static_cast<std::size_t>(to - from)};
}

Total total_of(const Sums& sums, const std::vector<Held>& held, Id constituent) {
    Total total;
    for (const Term& term : terms_of(sums, constituent)) {
        const Percent line = held[term.held].percent;
        total.low = total.low + quantity::trace_of(line, term.low);
        total.typical = total.typical + quantity::trace_of(line, term.typical);
        total.high = total.high + quantity::trace_of(line, term.high);
        total.measured = total.measured && term.measured;
        total.shares.push_back(term);
    }
    sorting::stable(total.shares, [&](const Term& a, const Term& b) {
        return quantity::trace_of(held[a.held].percent, a.high) >
               quantity::trace_of(held[b.held].percent, b.high);
    });
    std::vector<bool> speaks(held.size()), says(held.size());
    for (const Term& term : sums.terms)
        speaks[term.held] = true;
    for (const Term& term : total.shares)
        says[term.held] = true;
    for (std::size_t i = 0; i < held.size(); ++i)
        if (speaks[i] && !says[i]) total.silent.push_back(i);
    return total;
}

}  // namespace composition
