// From a Case to sums that must not go beyond their limits, and from such a sum to what is said about it.
#include "safety_bounds.h"

#include <algorithm>

#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Finding;
using finding::Severity;
using quantity::Trace;

__extension__ typedef __int128 Wide;

constexpr std::int64_t kYoungest = 3;  // months: below that there are no oils at all

char small(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool holds(std::string_view text, std::string_view part) {
    return std::search(text.begin(), text.end(), part.begin(), part.end(),
                       [](char a, char b) { return small(a) == b; }) != text.end();
}

bool is_oil(const Portion& portion) {
    return portion.known != nullptr &&
           (portion.known->role == "essential_oil" || portion.known->role == "extract");
}

// Roles of which nothing with a scent is known: wax, oil, powder, … A bought scent, or what no role is said
// of, may hold anything.
bool is_plain(std::string_view role) {
    constexpr std::string_view kPlain[] = {
        "wax",       "soft_wax",     "hard_fat",    "butter",      "soft_fat",         "liquid_oil",
        "thickener", "emulsifier",   "solubiliser", "antioxidant", "skin_conditioner", "water",
        "humectant", "preservative", "powder"};
    return std::find(std::begin(kPlain), std::end(kPlain), role) != std::end(kPlain);
}

bool is_shipped(const Portion& portion) {
    return portion.known != nullptr && portion.known != portion.own;
}

bool is_called(const Portion& portion, const std::vector<std::string>& names) {
    return std::any_of(names.begin(), names.end(), [&](const std::string& name) {
        if (holds(portion.name, name)) return true;
        if (portion.own == nullptr) return false;
        if (holds(portion.own->name, name) || holds(portion.own->botanical, name)) return true;
        return std::any_of(portion.own->inci.begin(), portion.own->inci.end(),
                           [&](const auto& inci) { return holds(inci.second, name); });
    });
}

std::int64_t sum_of(const Case& the, const Bound& bound, std::int64_t Term::*weight) {
    std::int64_t sum = 0;
    for (const Term& term : bound.terms)
        sum += the.portions[term.portion].percent.grid * term.*weight;
    return sum;
}

// As a share of the product, or of what is allowed; rounded up, so that what is beyond shows as beyond.
Trace shown(const Bound& bound, std::int64_t sum) {
    constexpr std::int64_t kAll = quantity::kHundred.grid * quantity::kHundred.grid;
    if (bound.whole == kAll) return {sum};
    const Wide scaled = static_cast<Wide>(sum) * kAll;
    return {static_cast<std::int64_t>((scaled + bound.whole - 1) / bound.whole)};
}

bool is_coming(const Case& the, const Bound& bound) {
    return bound.row != nullptr && !bound.row->from.empty() && the.date < bound.row->from;
}

}  // namespace

std::optional<std::int64_t> age_of(const Case& the) {
    if (the.age_months) return the.age_months;
    if (the.product != nullptr && the.product->place == "baby") return kYoungest;
    return std::nullopt;
}

std::string_view market_of(const Case& the) {
    return the.market.empty() ? std::string_view("eu") : std::string_view(the.market);
}

std::int64_t high_of(const Case& the, const Bound& bound) {
    return sum_of(the, bound, &Term::high);
}

std::int64_t typical_of(const Case& the, const Bound& bound) {
    return sum_of(the, bound, &Term::typical);
}

bool goes_beyond(const Case& the, const Bound& bound) {
    return high_of(the, bound) > bound.most;
}

Finding told(const Case& the, const Bound& bound) {
    const std::int64_t high = high_of(the, bound), typical = typical_of(the, bound);
    const Term& first = bound.terms.front();
    Finding one = about(typical > bound.most ? bound.over : bound.maybe, bound.severity,
                        the.portions[first.portion].line, subject(the.portions[first.portion]));
    if (is_coming(the, bound)) {
        one.code = Code::constituent_over_later;
        one.severity = Severity::caution;
        one.unit = bound.row->from;
    }
    one.trace = shown(bound, high);
    one.trace_limit = bound.limit;
    one.trace_typical = shown(bound, typical);
    if (one.unit.empty()) one.unit = "%";
    if (bound.constituent != composition::kNone)
        one.constituent = the.book->composition.constituents[bound.constituent].id;
    source::Standing standing = source::Standing::document;
    for (const Term& term : bound.terms) {
        standing = std::max(standing, term.standing);
        const std::int64_t percent = the.portions[term.portion].percent.grid;
        one.shares.push_back({subject(the.portions[term.portion]), shown(bound, percent * term.high),
                              shown(bound, percent * term.typical), term.of_bottle});
    }
    if (bound.row != nullptr) {
        one.rule = bound.row->id;
        one.edition = bound.row->edition;
        one = sourced(std::move(one), bound.row->source, std::max(standing, bound.row->standing));
    } else if (bound.level != nullptr) {
        one.rule = bound.level->document;
        one.edition = bound.level->edition;
        one = sourced(std::move(one), bound.level->source, bound.level->standing);
    }
    return one;
}

Contents contents_of(const Case& the) {
    Contents contents;
    contents.held.reserve(the.portions.size());
    for (const Portion& portion : the.portions) {
        composition::Held held;
        held.percent = portion.percent;
        if (is_shipped(portion)) held.ingredient = portion.known->id;
        held.carries = portion.known == nullptr || !is_plain(portion.known->role) ||
                       !portion.vouched_for;  // a stranger may call an oil of flowers a wax
        held.trusted = portion.own == nullptr || portion.vouched_for;
        if (portion.own != nullptr && portion.own->analysis) held.analysis = &*portion.own->analysis;
        if (portion.percent.grid > 0 && is_oil(portion)) contents.oils.push_back(contents.held.size());
        if (portion.percent.grid > 0 && (!is_shipped(portion) || !held.trusted))
            contents.named.push_back(contents.held.size());
        contents.held.push_back(held);
        contents.subjects.push_back(subject(portion));
        const auto first =
            std::find(contents.subjects.begin(), contents.subjects.end(), contents.subjects.back());
        contents.same_as.push_back(static_cast<std::size_t>(first - contents.subjects.begin()));
    }
    contents.sums = composition::sums_of(the.book->composition, contents.held);
    return contents;
}

std::vector<std::size_t> those_of(const Case& the, const Contents& contents,
                                  const std::vector<std::string>& ingredients,
                                  const std::vector<std::string>& names) {
    std::vector<std::size_t> found;
    if (!ingredients.empty())
        for (const std::size_t place : contents.oils) {
            const Portion& portion = the.portions[place];
            if (is_shipped(portion) &&
                std::find(ingredients.begin(), ingredients.end(), portion.known->id) != ingredients.end())
                found.push_back(place);
        }
    if (!names.empty())
        for (const std::size_t place : contents.named)
            if (std::find(found.begin(), found.end(), place) == found.end() &&
                is_called(the.portions[place], names))
                found.push_back(place);
    return found;
}

Bounds bounds_of(const Case& the, const Contents& contents) {
    Bounds bounds;
    add_constituents(the, contents, bounds);
    add_ingredients(the, contents, bounds);
    add_levels(the, contents, bounds);
    add_phototoxic(the, contents, bounds);
    return bounds;
}

Bounds bounds_of(const Case& the) {
    return bounds_of(the, contents_of(the));
}

void limited(const Case& the, Report& report) {
    if (the.book == nullptr) {
        for (const Rule rule : {Rule::constituents, Rule::oils, Rule::oil_total, Rule::persons,
                                Rule::phototoxic, Rule::allergens})
            report.not_made.push_back({rule, "", Reason::no_book, {}});
        return;
    }
    const Contents contents = contents_of(the);
    Bounds bounds = bounds_of(the, contents);
    for (const Bound& bound : bounds.all)
        if (goes_beyond(the, bound)) report.findings.push_back(told(the, bound));
    std::move(bounds.made.begin(), bounds.made.end(), std::back_inserter(report.made));
    std::move(bounds.not_made.begin(), bounds.not_made.end(), std::back_inserter(report.not_made));
    persons(the, contents, report);
    allergens(the, contents, report);
}

}  // namespace safety
