#include "reading_statements.h"

#include <algorithm>
#include <array>

#include "declaration.h"
#include "density.h"

namespace reading {
namespace {

using catalogue::Catalogue;
using catalogue::Ingredient;

constexpr std::string_view kLastDay = "9999-12-31";  // no day said: the list that will hold
constexpr std::int64_t kStepsOfTrace = 1'000'000;    // of a trace in one of a percent

// What the plain roles hold no scent of: fats, waxes and the like, of which no row is needed.
bool holds_scent(const Ingredient& one) {
    return one.role == "essential_oil" || one.role == "extract";
}

// What an item is, or may be; none: nobody knows.
std::vector<const Ingredient*> candidates(const Item& item, const Catalogue& known) {
    std::vector<const Ingredient*> found;
    if (const Ingredient* const one = catalogue::find_ingredient(known, item.ingredient)) return {one};
    for (const std::string& id : item.may_be)
        if (const Ingredient* const one = catalogue::find_ingredient(known, id)) found.push_back(one);
    return found;
}

struct Contents {
    std::vector<composition::Held> held;
    std::vector<std::size_t> item_of;      // of each held: several where an item may be several
    std::vector<const Ingredient*> known;  // likewise; null: a mere name
    composition::Sums sums;
};
Contents contents_of(const std::vector<Item>& items, const Catalogue& known, const limits::Book& book) {
    Contents contents;
    const auto add = [&](std::size_t item, const Ingredient* one) {
        composition::Held held;
        held.percent = quantity::kHundred;
        if (one != nullptr) held.ingredient = one->id;
        held.carries = one == nullptr || holds_scent(*one);
        contents.held.push_back(held);
        contents.item_of.push_back(item);
        contents.known.push_back(one);
    };
    for (std::size_t i = 0; i < items.size(); ++i) {
        const std::vector<const Ingredient*> all = candidates(items[i], known);
        for (const Ingredient* const one : all)
            add(i, one);
        if (all.empty()) add(i, nullptr);
    }
    contents.sums = composition::sums_of(book.composition, contents.held);
    return contents;
}

bool is_one_of(std::string_view id, const std::vector<std::string>& ids) {
    return std::find(ids.begin(), ids.end(), id) != ids.end();
}

// What each item holds of all these together; of what it may be the least and the most. An item can be one of
// the ingredients, or have one of the names, itself.
std::vector<Term> terms_of(const std::vector<Item>& items, const Contents& contents,
                           const std::vector<composition::Id>& constituents,
                           const std::vector<std::string>& ingredients, const std::vector<std::string>& names,
                           std::vector<std::size_t>& unknown) {
    const std::size_t count = contents.held.size();
    std::vector<quantity::Percent> low(count), high(count);
    for (const composition::Id id : constituents)
        for (const composition::Term& term : composition::terms_of(contents.sums, id)) {
            // Benzyl alcohol as a preservative is declared as that.
            const Ingredient* const one = contents.known[term.held];
            if (one != nullptr && one->role == "preservative") continue;
            low[term.held] = low[term.held] + term.low;
            high[term.held] = high[term.held] + term.high;
        }
    std::vector<Term> terms;
    for (std::size_t i = 0; i < count; ++i) {
        const Item& item = items[contents.item_of[i]];
        const bool whole = contents.known[i] != nullptr
                               ? is_one_of(contents.known[i]->id, ingredients)
                               : std::any_of(names.begin(), names.end(), [&](const std::string& name) {
                                     return declaration::same_name(item.name, name);
                                 });
        const auto& blank = contents.sums.unknown;
        if (whole) {
            low[i] = high[i] = quantity::kHundred;
        } else if (std::find(blank.begin(), blank.end(), i) != blank.end()) {
            high[i] = quantity::kHundred;
            if (unknown.empty() || unknown.back() != contents.item_of[i])
                unknown.push_back(contents.item_of[i]);
        }
        const Term term{contents.item_of[i], std::min(low[i], quantity::kHundred).grid,
                        std::min(high[i], quantity::kHundred).grid};
        if (i > 0 && contents.item_of[i - 1] == term.item) {
            terms.back().low = std::min(terms.back().low, term.low);
            terms.back().high = std::max(terms.back().high, term.high);
        } else {
            terms.push_back(term);
        }
    }
    std::erase_if(terms, [](const Term& term) { return term.high == 0; });
    return terms;
}

Statement about(Kind kind, const std::vector<Item>& items, const Allergen& allergen, const Catalogue& known,
                const limits::Book& book) {
    Statement made;
    made.kind = kind;
    made.subject = allergen.name;
    made.source = allergen.source;
    made.standing = allergen.standing;
    made.terms = terms_of(items, contents_of(items, known, book), allergen.constituents, allergen.ingredients,
                          allergen.names, made.unknown);
    return made;
}

std::int64_t threshold(const Sold& sold, const Catalogue& known, const limits::Book& book) {
    const catalogue::Product* const product = catalogue::find_product(known, sold.product);
    const bool rinsed = product != nullptr && product->contact == "rinse_off";
    return (rinsed ? book.rinse_off_above : book.leave_on_above).grid / kStepsOfTrace;
}

const limits::Regime* regime_of(const Sold& sold, const limits::Book& book) {
    return limits::regime_on(book, sold.market, sold.date.empty() ? kLastDay : std::string_view(sold.date));
}

bool is_required(const limits::Allergen& one, const limits::Regime* regime) {
    return regime != nullptr &&
           (regime->list == limits::List::extended_81 || (regime->list == limits::List::old_24 && one.old));
}

// The least and the most that a figure can be where none is known: what any such substance has.
struct Property {
    std::string_view name;
    std::int64_t least = 0, most = 0;
    const catalogue::Known<catalogue::Range> Ingredient::*range = nullptr;
};
const std::array<Property, 4> kProperties{
    {{"density", decimal::kOne / 2, 6 * decimal::kOne, nullptr},  // spirits to heavy mineral powders
     {"iodine_value", 0, 270 * decimal::kOne, &Ingredient::iodine_value},
     {"saponification_value", 0, 800 * decimal::kOne, &Ingredient::saponification_value},
     {"wax_share", 0, quantity::kHundred.grid, nullptr}}};

// Nothing in it that takes up iodine or lye.
bool no_fat(const Ingredient& one) {
    return one.role == "water" || one.role == "powder" || one.role == "humectant";
}

std::optional<Term> figure_of(const Property& property, const Ingredient& one, const Catalogue& known) {
    if (property.name == "wax_share") {
        const std::int64_t share = one.role == "wax" ? quantity::kHundred.grid : 0;
        return Term{0, share, share};
    }
    if (property.name == "density") {
        const density::Blend blend = density::of(one, known);
        if (blend.density.grid <= 0) return std::nullopt;
        return Term{0, blend.density.grid, blend.density.grid};
    }
    const auto& range = one.*property.range;
    if (range) return Term{0, range->value.min, range->value.max};
    if (no_fat(one)) return Term{0, 0, 0};
    return std::nullopt;
}

void add_limit(std::vector<Statement>& made, std::vector<Term> terms, std::int64_t most, std::string subject,
               bool on, std::string source, source::Standing standing) {
    // At its lowest content nothing is left of a term: the limit says nothing about it.
    std::erase_if(terms, [](const Term& term) { return term.low == 0; });
    if (terms.empty()) return;
    Statement one;
    one.kind = Kind::limit;
    one.on = on;
    one.terms = std::move(terms);
    one.max = most;
    one.subject = std::move(subject);
    one.source = std::move(source);
    one.standing = standing;
    made.push_back(std::move(one));
}

std::int64_t upward(quantity::Trace trace) {
    return (trace.grid + kStepsOfTrace - 1) / kStepsOfTrace;
}

}  // namespace

std::optional<Allergen> find_allergen(std::string_view name, const Sold& sold, const limits::Book& book) {
    const composition::Id id = composition::find_named(book.composition, name);
    const limits::Regime* const regime = regime_of(sold, book);
    for (const limits::Allergen& one : book.allergens) {
        const bool named =
            declaration::same_name(one.label, name) ||
            (id != composition::kNone &&
             std::find(one.constituents.begin(), one.constituents.end(), id) != one.constituents.end());
        if (named)
            return Allergen{one.label,
                            one.constituents,
                            one.ingredients,
                            one.names,
                            sold.market.empty() || is_required(one, regime),
                            one.source,
                            one.standing};
    }
    if (id == composition::kNone) return std::nullopt;
    return Allergen{book.composition.constituents[id].name,
                    {id},
                    {},
                    {},
                    sold.market.empty(),
                    "",
                    source::Standing::estimate};
}

std::vector<std::string> required_allergens(const Sold& sold, const limits::Book& book) {
    std::vector<std::string> names;
    const limits::Regime* const regime = regime_of(sold, book);
    for (const limits::Allergen& one : book.allergens)
        if (is_required(one, regime)) names.push_back(one.label);
    return names;
}

Statement declared(const std::vector<Item>& items, const Allergen& allergen, const Sold& sold,
                   const Catalogue& known, const limits::Book& book) {
    Statement made = about(Kind::declared, items, allergen, known, book);
    made.min = threshold(sold, known, book);
    return made;
}

Statement undeclared(const std::vector<Item>& items, const Allergen& allergen, const Sold& sold,
                     const Catalogue& known, const limits::Book& book) {
    Statement made = about(Kind::undeclared, items, allergen, known, book);
    std::erase_if(made.terms, [](const Term& term) { return term.low == 0; });
    made.unknown.clear();  // at the lowest they hold nothing
    made.max = threshold(sold, known, book);
    return made;
}

std::optional<Statement> property(std::string_view name, const std::vector<Item>& items,
                                  std::optional<std::int64_t> min, std::optional<std::int64_t> max,
                                  const Catalogue& known) {
    const auto found = std::find_if(kProperties.begin(), kProperties.end(),
                                    [&](const Property& one) { return one.name == name; });
    if (found == kProperties.end()) return std::nullopt;
    Statement made;
    made.kind = Kind::property;
    made.subject = std::string(name);
    made.min = min;
    made.max = max;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const std::vector<const Ingredient*> all = candidates(items[i], known);
        std::optional<Term> figure;
        for (std::size_t j = 0; j < all.size(); ++j) {
            const std::optional<Term> one = figure_of(*found, *all[j], known);
            if (one && figure) {
                figure->low = std::min(figure->low, one->low);
                figure->high = std::max(figure->high, one->high);
            }
            if (j == 0 || !one) figure = one;
            if (!figure) break;
        }
        if (!figure) made.unknown.push_back(i);
        Term term = figure.value_or(Term{0, found->least, found->most});
        term.item = i;
        made.terms.push_back(term);
    }
    return made;
}

std::vector<Statement> limits_of(const std::vector<Item>& items, const Sold& sold, const Catalogue& known,
                                 const limits::Book& book) {
    std::vector<Statement> made;
    const catalogue::Product* const product = catalogue::find_product(known, sold.product);
    if (product == nullptr) return made;
    const Contents contents = contents_of(items, known, book);
    std::vector<std::size_t> unknown;
    for (const limits::Row& row : book.rows) {
        if (!limits::is_in(row, sold.market) || !limits::is_for(row, std::nullopt) || !row.within.empty())
            continue;
        if (!row.from.empty() && !sold.date.empty() && sold.date < row.from) continue;
        const limits::Cap* const cap = limits::cap_for(book, row.caps, *product);
        if (cap == nullptr || cap->verdict != limits::Verdict::at_most) continue;
        add_limit(made, terms_of(items, contents, row.constituents, row.ingredients, row.names, unknown),
                  upward(cap->most), row.id, row.force == limits::Force::law && !sold.market.empty(),
                  row.source, row.standing);
    }
    for (std::size_t i = 0; i < items.size(); ++i) {
        const Ingredient* const one = catalogue::find_ingredient(known, items[i].ingredient);
        if (one == nullptr) continue;
        const limits::Preservative* const preservative = limits::find_preservative(book, one->id);
        if (preservative != nullptr) {
            const limits::Cap* const cap = limits::cap_for(book, preservative->caps, *product);
            const auto market = market::of_id(sold.market);
            if (cap != nullptr && cap->verdict == limits::Verdict::at_most)
                add_limit(made, {{i}}, upward(cap->most), preservative->id,
                          market && market::as_in_europe(*market), preservative->source,
                          preservative->standing);
        }
        if (one->usual_leave_on_percent && product->contact == "leave_on") {
            Statement usual =
                amount(i, one->usual_leave_on_percent->value.min, one->usual_leave_on_percent->value.max);
            usual.kind = Kind::limit;
            usual.on = false;
            usual.subject = "usual";
            usual.source = one->usual_leave_on_percent->source;
            usual.standing = one->usual_leave_on_percent->standing;
            made.push_back(std::move(usual));
        }
    }
    return made;
}

}  // namespace reading
