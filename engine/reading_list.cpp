#include "reading_list.h"

#include <algorithm>

#include "declaration.h"

namespace reading_list {
namespace {

using declaration::same_name;

// Whether what is written is, or may be, such a thing.
template <class Is>
bool may_be(const Entry& entry, const catalogue::Catalogue& known, const Is& is) {
    if (const auto* const one = catalogue::find_ingredient(known, entry.ingredient)) return is(*one);
    return std::any_of(entry.offered.begin(), entry.offered.end(), [&](const std::string& id) {
        const auto* const one = catalogue::find_ingredient(known, id);
        return one != nullptr && is(*one);
    });
}

bool is_colourant(const Entry& entry, const catalogue::Catalogue& known) {
    if (entry.written.size() > 3 && same_name(entry.written.substr(0, 3), "CI ")) return true;
    return may_be(entry, known,
                  [](const catalogue::Ingredient& one) { return catalogue::has_trait(one, "colour"); });
}

bool is_scent(const Entry& entry) {
    return std::any_of(market::kAll.begin(), market::kAll.end(), [&](const auto& one) {
        return same_name(entry.written, declaration::scent_name(one.first, false)) ||
               same_name(entry.written, declaration::scent_name(one.first, true));
    });
}

bool is_allergen(const std::string& written, const limits::Book& book) {
    return std::any_of(book.allergens.begin(), book.allergens.end(), [&](const limits::Allergen& one) {
        return !one.constituents.empty() && same_name(one.label, written);
    });
}

// Comes dissolved in an oil, as it is bought.
bool is_carried(const catalogue::Ingredient& one) {
    return one.role == "extract" || one.role == "antioxidant" || one.role == "skin_conditioner";
}
bool carries(const catalogue::Ingredient& one) {
    return one.role == "liquid_oil" || one.role == "essential_oil";
}

// As it was printed, so far as a figure tells: 20 stands for 19.5 to 20.5, 2.5 for 2.45 to 2.55.
int places_of(std::int64_t grid) {
    int places = 4;
    while (places > 0 && grid % 10 == 0)
        grid /= 10, --places;
    return places;
}

}  // namespace

std::vector<Entry> entries_of(const declaration_read::Reading& reading, const catalogue::Catalogue& known,
                              const limits::Book& book) {
    std::vector<Entry> entries;
    std::vector<bool> within;
    for (const declaration_read::Item& item : reading.items) {
        Entry entry{item.written, item.ingredient, item.offered, As::added, {}, item.percent, false};
        if (item.may_contain) entry.as = As::aside, entry.other = As::free;
        for (const Entry& earlier : entries)
            entry.twice = entry.twice || same_name(earlier.written, entry.written) ||
                          (!entry.ingredient.empty() && earlier.ingredient == entry.ingredient);
        entries.push_back(std::move(entry));
        within.push_back(item.within);
    }
    // From the end: allergens that came along, then what the law lets stand last.
    bool at_end = true;
    for (std::size_t i = entries.size(); i-- > 0;) {
        Entry& entry = entries[i];
        if (entry.as == As::aside) continue;
        const bool added_too = catalogue::find_ingredient(known, entry.ingredient) != nullptr;
        if (is_allergen(entry.written, book)) {
            // A preservative of the same name may as well have been added.
            entry.as = (at_end || within[i]) && !(added_too && !within[i]) ? As::incidental : As::added;
            entry.other = entry.as == As::added ? As::incidental : As::added;
            if (entry.as == As::added && !added_too) at_end = false;
            continue;
        }
        if (within[i]) {
            entry.as = As::aside;
            entry.other = As::added;
            continue;
        }
        if (at_end && is_colourant(entry, known)) {
            entry.as = As::free;
            entry.other = As::added;
            continue;
        }
        if (at_end && is_scent(entry)) entry.other = As::free;
        at_end = at_end && is_scent(entry);
        if (i == 0 || entry.as != As::added) continue;
        if (may_be(entry, known, carries) && may_be(entries[i - 1], known, is_carried))
            entry.other = As::carrier;
    }
    return entries;
}

Made problem_of(const std::vector<Entry>& entries, const reading::Sold& sold,
                const catalogue::Catalogue& known, const limits::Book& book, bool more) {
    Made made;
    std::vector<std::string> named;
    std::vector<reading::Statement>& statements = made.problem.statements;
    for (std::size_t i = 0; i < entries.size(); ++i) {
        const Entry& entry = entries[i];
        if (entry.as == As::incidental) named.push_back(entry.written);
        if (entry.as == As::incidental || entry.as == As::aside) continue;
        made.problem.items.push_back({entry.ingredient, entry.written, entry.as == As::free, entry.offered});
        made.entry_of.push_back(i);
        if (entry.percent)
            statements.push_back(reading::printed(made.problem.items.size() - 1, entry.percent->grid,
                                                  places_of(entry.percent->grid)));
    }
    const std::vector<reading::Item>& items = made.problem.items;
    std::vector<std::string> found;
    for (const std::string& name : named) {
        const auto allergen = reading::find_allergen(name, sold, book);
        reading::Statement statement;
        if (allergen) statement = reading::declared(items, *allergen, sold, known, book);
        if (statement.terms.empty()) {
            made.not_said.push_back(name);
            continue;
        }
        found.push_back(allergen->name);
        statements.push_back(std::move(statement));
    }
    // What the market wants named and is neither declared nor added. Without a market nothing is missing.
    for (const std::string& name : reading::required_allergens(sold, book)) {
        const auto same = [&](const std::string& other) { return same_name(other, name); };
        const bool there =
            std::any_of(found.begin(), found.end(), same) || std::any_of(named.begin(), named.end(), same) ||
            std::any_of(items.begin(), items.end(), [&](const reading::Item& one) { return same(one.name); });
        const auto allergen = reading::find_allergen(name, sold, book);
        if (there || !allergen || statements.size() >= reading::kMostStatements) continue;
        reading::Statement statement = reading::undeclared(items, *allergen, sold, known, book);
        // What is the allergen as a whole stands on the list itself: an oil that is one.
        const bool itself =
            std::any_of(statement.terms.begin(), statement.terms.end(),
                        [](const reading::Term& term) { return term.high == quantity::kHundred.grid; });
        if (!statement.terms.empty() && !itself) statements.push_back(std::move(statement));
    }
    if (more)
        for (reading::Statement& limit : reading::limits_of(items, sold, known, book))
            if (statements.size() < reading::kMostStatements) statements.push_back(std::move(limit));
    return made;
}

}  // namespace reading_list
