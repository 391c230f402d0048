// Essential oils as wholes: each against its own maximum and against what forbids it, all together against
// the level for the use, the age and the person; and which oils are not for a child, not in pregnancy.
#include <algorithm>
#include "safety_bounds.h"
#include "safety_family.h"

#include "sorting.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using limits::Force;
using limits::Verdict;
using limits::Whom;

constexpr std::int64_t kWholeProduct = quantity::kHundred.grid * quantity::kHundred.grid;
constexpr std::int64_t kMonths = 12;

bool is_among(const std::vector<std::string>& list, std::string_view one) {
    return std::find(list.begin(), list.end(), one) != list.end();
}

Bound whole_portions(const Case& the, const std::vector<std::size_t>& portions) {
    Bound bound;
    bound.whole = kWholeProduct;
    for (const std::size_t place : portions)
        bound.terms.push_back({place, quantity::kHundred.grid, quantity::kHundred.grid, true, false,
                               source::Standing::document});
    sorting::stable(bound.terms, [&](const Term& a, const Term& b) {
        return the.portions[a.portion].percent > the.portions[b.portion].percent;
    });
    return bound;
}

std::vector<std::string> names_of(const Case& the, const std::vector<std::size_t>& portions) {
    std::vector<std::string> names;
    for (const std::size_t place : portions)
        if (std::string name = subject(the.portions[place]); !is_among(names, name))
            names.push_back(std::move(name));
    return names;
}

void add_level(const Case& the, const limits::Level& level, const std::vector<std::size_t>& oils, Code over,
               Severity severity, Bounds& bounds) {
    Bound bound = whole_portions(the, oils);
    bound.rule = Rule::oil_total;
    bound.level = &level;
    bound.over = bound.maybe = over;
    bound.severity = severity;
    bound.limit = level.most;
    bound.most = level.most.grid;
    bounds.all.push_back(std::move(bound));
    bounds.made.push_back({Rule::oil_total, level.id, names_of(the, oils)});
}

}  // namespace

void add_ingredients(const Case& the, const Contents& contents, Bounds& bounds) {
    if (the.product == nullptr) {
        bounds.not_made.push_back({Rule::oils, "", Reason::product_unsaid, {}});
        return;
    }
    const auto age = age_of(the);
    std::vector<bool> looked_at(the.portions.size());
    for (const limits::Row& row : the.book->rows) {
        if (!row.constituents.empty()) continue;
        const std::vector<std::size_t> of = those_of(the, contents, row.ingredients, row.names);
        if (of.empty() || !limits::is_in(row, market_of(the)) || !limits::is_for(row, age)) continue;
        const limits::Cap* cap = limits::cap_for(*the.book, row.caps, *the.product);
        if (cap == nullptr) continue;
        for (const std::size_t place : of)
            looked_at[place] = true;
        if (cap->verdict == Verdict::gap) {
            bounds.not_made.push_back({Rule::oils, row.id, Reason::no_figure, names_of(the, of)});
            continue;
        }
        bounds.made.push_back({Rule::oils, row.id, names_of(the, of)});
        if (cap->verdict == Verdict::unlimited) continue;
        Bound bound = whole_portions(the, of);
        bound.rule = Rule::oils;
        bound.row = &row;
        bound.over = bound.maybe = cap->verdict == Verdict::prohibited ? Code::ingredient_prohibited
                                   : row.force == Force::warning       ? Code::warning_due
                                                                       : Code::ingredient_over;
        bound.severity =
            row.force == Force::law || row.force == Force::standard ? Severity::stop : Severity::caution;
        bound.most = cap->verdict == Verdict::prohibited ? 0 : cap->most.grid;
        bound.limit = {bound.most};
        bounds.all.push_back(std::move(bound));
    }
    std::vector<std::size_t> without;  // oils about which no row says anything
    for (const std::size_t place : contents.oils)
        if (!looked_at[place]) without.push_back(place);
    if (!without.empty())
        bounds.not_made.push_back({Rule::oils, "", Reason::no_figure, names_of(the, without)});
    else if (contents.oils.empty())
        bounds.made.push_back({Rule::oils, "", {}});
}

void add_levels(const Case& the, const Contents& contents, Bounds& bounds) {
    const std::vector<std::size_t>& oils = contents.oils;
    if (oils.empty()) {
        bounds.made.push_back({Rule::oil_total, "", {}});
        return;
    }
    const limits::Level* use =
        the.product != nullptr ? limits::level_for_use(*the.book, the.product->id) : nullptr;
    if (use != nullptr)
        add_level(the, *use, oils, Code::oils_over_for_use, Severity::caution, bounds);
    else
        bounds.not_made.push_back({Rule::oil_total, "",
                                   the.product == nullptr ? Reason::product_unsaid : Reason::no_figure,
                                   names_of(the, oils)});
    if (const auto age = age_of(the); age) {
        if (const limits::Level* level = limits::level_for_age(*the.book, *age); level != nullptr) {
            const bool none = level->most.grid == 0, child = level->until_months != 0;
            add_level(the, *level, oils, none ? Code::oils_not_for_baby : Code::oils_over_for_age,
                      child ? Severity::stop : Severity::caution, bounds);
        }
    } else if (the.person == "child") {
        bounds.not_made.push_back({Rule::oil_total, "", Reason::age_unsaid, names_of(the, oils)});
    }
    if (const limits::Level* level = limits::level_for_person(*the.book, the.person); level != nullptr)
        add_level(the, *level, oils, Code::oils_over_for_person, Severity::caution, bounds);
}

void persons(const Case& the, const Contents& contents, Report& report) {
    const std::vector<std::size_t>& oils = contents.oils;
    const auto age = age_of(the);
    if (age) {  // between the usual and the most for this age
        const limits::Level* level = limits::level_for_age(*the.book, *age);
        if (level != nullptr && level->until_months != 0 && !oils.empty()) {
            std::int64_t sum = 0;
            for (const std::size_t place : oils)
                sum += the.portions[place].percent.grid * quantity::kHundred.grid;
            if (sum > level->usual.grid && sum <= level->most.grid) {
                finding::Finding one =
                    about(Code::oils_above_usual_for_age, Severity::caution, std::nullopt, "");
                one.trace = quantity::Trace{sum};
                one.trace_limit = level->usual;
                one.unit = "%";
                one.rule = level->document;
                one.edition = level->edition;
                report.findings.push_back(sourced(std::move(one), level->source, level->standing));
            }
        }
    }
    const bool pregnant = the.person == "pregnant";
    for (const limits::Caution& caution : the.book->cautions) {
        const bool child = age && *age < caution.warn_months;
        if (!child && !(pregnant && caution.pregnancy)) continue;
        std::vector<std::string> told;
        for (const std::size_t place : oils) {
            const Portion& portion = the.portions[place];
            std::string name = subject(portion);
            if (!is_among(caution.ingredients, portion.known->id) || is_among(told, name)) continue;
            told.push_back(name);
            const bool never = child && *age < caution.stop_months;
            finding::Finding one =
                about(!child  ? Code::oil_not_in_pregnancy
                      : never ? Code::oil_not_for_child
                              : Code::oil_with_care_for_child,
                      child && !never ? Severity::caution : Severity::stop, portion.line, std::move(name));
            if (child) {
                one.limit = (never ? caution.stop_months : caution.warn_months) * decimal::kOne / kMonths;
                one.value = *age * decimal::kOne / kMonths;
            }
            one.rule = caution.id;
            report.findings.push_back(sourced(std::move(one), caution.source, caution.standing));
        }
    }
    if (the.person == "child" && !age)
        report.not_made.push_back({Rule::persons, "", Reason::age_unsaid, names_of(the, oils)});
    else if (the.person.empty() && !age && !oils.empty())
        report.not_made.push_back({Rule::persons, "", Reason::person_unsaid, names_of(the, oils)});
    else
        report.made.push_back({Rule::persons, "", names_of(the, oils)});
}

std::vector<const limits::Caution*> cautions_of(const Case& the) {
    std::vector<const limits::Caution*> at_hand;
    if (the.book == nullptr) return at_hand;
    const std::vector<std::size_t> oils = contents_of(the).oils;
    if (oils.empty()) return at_hand;
    for (const limits::Caution& caution : the.book->cautions) {
        const bool here =
            caution.places.empty() || the.product == nullptr || is_among(caution.places, the.product->place);
        const bool of_these =
            caution.ingredients.empty() || std::any_of(oils.begin(), oils.end(), [&](std::size_t place) {
                return is_among(caution.ingredients, the.portions[place].known->id);
            });
        if (here && of_these) at_hand.push_back(&caution);
    }
    return at_hand;
}

}  // namespace safety
