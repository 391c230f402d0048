// Allergens that the declaration has to name: strictly above 0.001 % in what stays on, 0.01 % in what is
// rinsed off, in the worst case, summed over every source and the members of a group. Which list holds
// follows from market and day. An oil that is an entry itself is tested beside its constituents.
#include <algorithm>
#include "safety_bounds.h"
#include "safety_family.h"

#include "sorting.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using limits::List;
using quantity::Trace;

bool is_listed(const std::vector<std::string>& list, std::string_view one) {
    return std::find(list.begin(), list.end(), one) != list.end();
}

constexpr std::string_view kLastDay = "9999-12-31";  // no day said: the list that will hold

struct Sum {
    Trace amount;
    source::Standing standing = source::Standing::document;
    std::vector<std::size_t> from;  // portions

    void add(std::size_t portion, Trace trace, source::Standing of) {
        amount = amount + trace;
        standing = std::max(standing, of);
        from.push_back(portion);
    }
};

void add_up(const Case& the, const Contents& contents, const limits::Allergen& allergen, Sum& sum) {
    for (const composition::Id id : allergen.constituents)
        for (const composition::Term& term : composition::terms_of(contents.sums, id)) {
            const Portion& portion = the.portions[term.held];
            // benzyl alcohol as a preservative is declared as that (entry 45)
            if (portion.known != nullptr && portion.known->role == "preservative") continue;
            if (term.high.grid == 0) continue;
            sum.add(term.held, quantity::trace_of(portion.percent, term.high),
                    term.of_bottle        ? source::Standing::supplier
                    : term.row != nullptr ? term.row->standing
                                          : source::Standing::document);
        }
    for (const std::size_t place : those_of(the, contents, allergen.ingredients, allergen.names))
        sum.add(place, quantity::trace_of(the.portions[place].percent, quantity::kHundred),
                source::Standing::document);
}

}  // namespace

Allergens allergens_of(const Case& the) {
    return the.book == nullptr ? Allergens{} : allergens_of(the, contents_of(the));
}

Allergens allergens_of(const Case& the, const Contents& contents) {
    Allergens all;
    if (the.product == nullptr) return all;
    all.regime = limits::regime_on(*the.book, market_of(the), the.date.empty() ? kLastDay : the.date);
    if (all.regime == nullptr || all.regime->list == List::none) return all;
    const Trace above =
        the.product->contact == "rinse_off" ? the.book->rinse_off_above : the.book->leave_on_above;
    Sum sum;
    for (const limits::Allergen& allergen : the.book->allergens) {
        if (all.regime->list == List::old_24 && !allergen.old) continue;
        sum.amount = {};
        sum.standing = source::Standing::document;
        sum.from.clear();
        add_up(the, contents, allergen, sum);
        if (sum.amount <= above) continue;
        declaration::Named named;
        named.label_name = allergen.label;
        named.amount = sum.amount;
        std::vector<std::size_t> said;
        for (const std::size_t place : sum.from) {
            const std::size_t first = contents.same_as[place];
            if (std::find(said.begin(), said.end(), first) != said.end()) continue;
            said.push_back(first);
            if (!named.why.empty()) named.why += ", ";
            named.why += contents.subjects[first];
        }
        named.source = allergen.source;
        named.standing = std::max(sum.standing, allergen.standing);
        all.named.push_back(std::move(named));
    }
    sorting::stable(all.named, [](const auto& a, const auto& b) { return a.amount > b.amount; });
    for (const std::size_t place : contents.sums.unknown)
        if (std::string name = subject(the.portions[place]); !is_listed(all.unknown, name))
            all.unknown.push_back(std::move(name));
    for (const std::string& name : the.strained)
        if (!is_listed(all.unknown, name)) all.unknown.push_back(name);
    return all;
}

void allergens(const Case& the, const Contents& contents, Report& report) {
    if (the.product == nullptr) {
        report.not_made.push_back({Rule::allergens, "", Reason::product_unsaid, {}});
        return;
    }
    const Allergens all = allergens_of(the, contents);
    if (all.regime == nullptr) {
        report.not_made.push_back({Rule::allergens, "", Reason::market_not_covered, {}});
        return;
    }
    if (the.market.empty()) report.not_made.push_back({Rule::allergens, "", Reason::market_unsaid, {}});
    if (!all.unknown.empty())
        report.not_made.push_back({Rule::allergens, all.regime->document, Reason::no_figure, all.unknown});
    Made made{Rule::allergens, all.regime->document, {}};
    for (const declaration::Named& one : all.named)
        made.looked_at.push_back(one.label_name);
    if (!all.named.empty()) {
        finding::Finding one = about(Code::allergens_to_name, Severity::note, std::nullopt, "");
        one.value = static_cast<std::int64_t>(all.named.size()) * decimal::kOne;
        one.trace_limit =
            the.product->contact == "rinse_off" ? the.book->rinse_off_above : the.book->leave_on_above;
        one.unit = "%";
        one.rule = all.regime->document;
        report.findings.push_back(sourced(std::move(one), all.regime->source, all.regime->standing));
    }
    report.made.push_back(std::move(made));
}

}  // namespace safety
