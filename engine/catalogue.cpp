// Looking things up in the catalogue, and laying a recipe's own ingredients over it.
// Lists are short (some hundred entries), so link numbers and searches walk them; ingredient ids and source
// keys are sorted and halved. Knows nothing of how the entries came in (store_presets.cpp).
#include "catalogue.h"

#include <algorithm>
#include <utility>

#include "sorting.h"
#include "utf8.h"

namespace catalogue {
namespace {

// Bytes of UTF-8 above ASCII are parts of words: no language is cut inside a letter.
bool in_word(char c) {
    return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80;
}

enum Fit { whole, start, word, inside, none };

Fit fit(std::string_view text, std::string_view typed) {
    const std::string low = utf8::lowered(text);
    if (low == typed) return whole;
    Fit best = none;
    for (auto at = low.find(typed); at != std::string::npos; at = low.find(typed, at + 1)) {
        if (at == 0) return start;
        if (!in_word(low[at - 1])) return word;  // later hits start a word at best
        best = inside;
    }
    return best;
}

Fit fit(const Ingredient& ingredient, std::string_view typed) {
    Fit best =
        std::min({fit(ingredient.name, typed), fit(ingredient.id, typed), fit(ingredient.botanical, typed)});
    for (const auto& [market, name] : ingredient.inci)
        best = std::min(best, fit(name, typed));
    return best;
}

}  // namespace

const Ingredient* find_ingredient(const Catalogue& catalogue, std::string_view id) {
    const auto& all = catalogue.ingredients;
    const auto at =
        std::lower_bound(all.begin(), all.end(), id,
                         [](const Ingredient& one, std::string_view wanted) { return one.id < wanted; });
    return at != all.end() && at->id == id ? &*at : nullptr;
}

const Ingredient* find_ingredient(const Catalogue& catalogue, std::uint32_t number) {
    for (const Ingredient& ingredient : catalogue.ingredients)
        if (!ingredient.own && ingredient.number == number) return &ingredient;
    return nullptr;
}

const Container* find_container(const Catalogue& catalogue, std::string_view id) {
    for (const Container& container : catalogue.containers)
        if (container.id == id) return &container;
    return nullptr;
}

const Container* find_container(const Catalogue& catalogue, std::uint32_t number) {
    for (const Container& container : catalogue.containers)
        if (container.number == number) return &container;
    return nullptr;
}

const Product* find_product(const Catalogue& catalogue, std::string_view id) {
    for (const Product& product : catalogue.products)
        if (product.id == id) return &product;
    return nullptr;
}

const Product* find_product(const Catalogue& catalogue, std::uint32_t number) {
    for (const Product& product : catalogue.products)
        if (product.number == number) return &product;
    return nullptr;
}

bool has_trait(const Ingredient& ingredient, std::string_view trait) {
    if (!ingredient.traits) return false;
    const std::vector<std::string>& all = ingredient.traits->value;
    return std::find(all.begin(), all.end(), trait) != all.end();
}

const source::Entry* find_source(const Catalogue& catalogue, std::string_view key) {
    const auto& all = catalogue.sources;
    const auto at =
        std::lower_bound(all.begin(), all.end(), key,
                         [](const source::Entry& one, std::string_view wanted) { return one.key < wanted; });
    return at != all.end() && at->key == key ? &*at : nullptr;
}

std::vector<const Ingredient*> search(const Catalogue& catalogue, std::string_view typed, std::size_t most) {
    while (!typed.empty() && typed.front() == ' ')
        typed.remove_prefix(1);
    while (!typed.empty() && typed.back() == ' ')
        typed.remove_suffix(1);
    const std::string low = utf8::lowered(typed);

    std::vector<const Ingredient*> found;
    std::vector<std::pair<Fit, const Ingredient*>> ranked;
    for (const Ingredient& ingredient : catalogue.ingredients) {
        const Fit how = low.empty() ? inside : fit(ingredient, low);
        if (how != none) ranked.emplace_back(how, &ingredient);
    }
    sorting::stable(ranked, [](const auto& a, const auto& b) { return a.first < b.first; });
    for (const auto& [how, ingredient] : ranked) {
        if (found.size() == most) break;
        found.push_back(ingredient);
    }
    return found;
}

Catalogue with_own(const Catalogue& catalogue, const std::vector<Ingredient>& own) {
    Catalogue laid = catalogue;
    for (const Ingredient& mine : own) {
        auto at = std::lower_bound(
            laid.ingredients.begin(), laid.ingredients.end(), mine.id,
            [](const Ingredient& one, const std::string& wanted) { return one.id < wanted; });
        if (at == laid.ingredients.end() || at->id != mine.id)
            at = laid.ingredients.insert(at, mine);
        else
            *at = mine;
        at->own = true;
        at->number = 0;
    }
    return laid;
}

}  // namespace catalogue
