// Looking things up in the book of limits. A product kind may fall under several types of a document (a
// cleansing balm is rinsed off and takes make-up off): then the strictest counts.
#include "limits_book.h"

#include <algorithm>

namespace limits {
namespace {

bool is_listed(const std::vector<std::string>& list, std::string_view one) {
    return std::find(list.begin(), list.end(), one) != list.end();
}

bool falls_under(const Book& book, const std::string& where, const catalogue::Product& product) {
    if (where == "any") return true;
    if (where[0] >= '0' && where[0] <= '9')
        return product.ifra_category && product.ifra_category->value == where;
    const auto type =
        std::find_if(book.types.begin(), book.types.end(), [&](const Type& one) { return one.id == where; });
    return type != book.types.end() && is_listed(type->products, product.id);
}

// Prohibited before any figure, a lower figure before a higher one, a gap before "no limit".
bool stricter(const Cap& a, const Cap& b) {
    const auto rank = [](const Cap& cap) {
        switch (cap.verdict) {
            case Verdict::prohibited:
                return 0;
            case Verdict::at_most:
                return 1;
            case Verdict::gap:
                return 2;
            case Verdict::unlimited:
                break;
        }
        return 3;
    };
    return rank(a) != rank(b) ? rank(a) < rank(b) : a.most < b.most;
}

bool within(std::int64_t months, std::int64_t from, std::int64_t until) {
    return months >= from && (until == 0 || months < until);
}

}  // namespace

const Cap* cap_for(const Book& book, const std::vector<Cap>& caps, const catalogue::Product& product) {
    const Cap* strictest = nullptr;
    for (const Cap& cap : caps)
        if (falls_under(book, cap.where, product) && (strictest == nullptr || stricter(cap, *strictest)))
            strictest = &cap;
    return strictest;
}

bool is_for(const Row& row, std::optional<std::int64_t> age_months) {
    if (row.from_months == 0 && row.until_months == 0) return true;
    return age_months && within(*age_months, row.from_months, row.until_months);
}

bool is_in(const Row& row, std::string_view market) {
    return row.markets.empty() || market.empty() || is_listed(row.markets, market);
}

// Days are compared as text: YYYY-MM-DD is in order.
const Regime* regime_on(const Book& book, std::string_view market, std::string_view date) {
    const auto at = std::find_if(book.regimes.begin(), book.regimes.end(), [&](const Regime& one) {
        return one.market == market && (one.from.empty() || one.from <= date) &&
               (one.until.empty() || date <= one.until);
    });
    return at == book.regimes.end() ? nullptr : &*at;
}

const Level* level_for_use(const Book& book, std::string_view product) {
    for (const Level& level : book.levels)
        if (level.whom == Whom::use && is_listed(level.products, product)) return &level;
    return nullptr;
}

const Level* level_for_age(const Book& book, std::int64_t months) {
    for (const Level& level : book.levels)
        if (level.whom == Whom::age && within(months, level.from_months, level.until_months)) return &level;
    return nullptr;
}

const Level* level_for_person(const Book& book, std::string_view person) {
    for (const Level& level : book.levels)
        if (level.whom == Whom::person && level.id == person) return &level;
    return nullptr;
}

const Preservative* find_preservative(const Book& book, std::string_view ingredient) {
    for (const Preservative& one : book.preservatives)
        if (one.ingredient == ingredient) return &one;
    return nullptr;
}

const source::Entry* find_source(const Book& book, std::string_view key) {
    const auto at =
        std::lower_bound(book.sources.begin(), book.sources.end(), key,
                         [](const source::Entry& one, std::string_view k) { return one.key < k; });
    return at != book.sources.end() && at->key == key ? &*at : nullptr;
}

}  // namespace limits
