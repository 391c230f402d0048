// See workspace_book.h.
#include "workspace_book.h"

#include <algorithm>

#include "sorting.h"
#include "utf8.h"

namespace workspace_book {
namespace {

using workspace::Kept;
using workspace::Sort;

// All that a recipe can be found by, a line each, in small letters.
std::string findable(const Kept& kept, const catalogue::Catalogue& catalogue) {
    std::string all = kept.recipe.title + "\n";
    if (const auto* product = catalogue::find_product(catalogue, kept.recipe.product))
        all += product->name + "\n";
    for (const formula::Line& line : kept.recipe.formula.lines) {
        all += line.name + "\n";
        const auto is_it = [&](const catalogue::Ingredient& own) { return own.id == line.ingredient; };
        const auto own = std::find_if(kept.recipe.own.begin(), kept.recipe.own.end(), is_it);
        all += (own != kept.recipe.own.end() ? own->name : workspace::display_name(catalogue, line)) + "\n";
    }
    for (const std::string& tag : kept.tags)
        all += tag + "\n";
    return utf8::lowered(all);
}

std::vector<std::string> words_of(std::string_view search) {
    std::string low = utf8::lowered(search);
    constexpr std::string_view kWideSpace = "\xE3\x80\x80";  // typed with kana and ideographs
    for (std::size_t at = low.find(kWideSpace); at != low.npos; at = low.find(kWideSpace, at))
        low.replace(at, kWideSpace.size(), " ");
    std::vector<std::string> words(1);
    for (const char c : low) {
        if (c != ' ' && c != '\n' && c != '\t')
            words.back() += c;
        else if (!words.back().empty())
            words.emplace_back();
    }
    if (words.back().empty()) words.pop_back();
    return words;
}

std::size_t rank_of(const catalogue::Catalogue& catalogue, const Kept& kept) {
    const auto is_it = [&](const catalogue::Product& product) { return product.id == kept.recipe.product; };
    return static_cast<std::size_t>(
        std::find_if(catalogue.products.begin(), catalogue.products.end(), is_it) -
        catalogue.products.begin());
}

}  // namespace

std::vector<const Kept*> shown(const workspace::Workspace& workspace, const catalogue::Catalogue& catalogue,
                               const View& view) {
    const std::vector<std::string> words = words_of(view.search);
    std::vector<const Kept*> found;
    for (const Kept& kept : workspace.recipes) {
        if (!kept.binned.empty()) continue;
        if (!view.tag.empty() && !has_tag(kept, view.tag)) continue;
        if (!words.empty()) {
            const std::string all = findable(kept, catalogue);
            if (!std::all_of(words.begin(), words.end(),
                             [&](const std::string& word) { return all.find(word) != std::string::npos; }))
                continue;
        }
        found.push_back(&kept);
    }
    sorting::stable(found, [](const Kept* a, const Kept* b) { return a->changed > b->changed; });
    if (view.sort == Sort::title)
        sorting::stable(found, [](const Kept* a, const Kept* b) {
            return utf8::lowered(a->recipe.title) < utf8::lowered(b->recipe.title);
        });
    if (view.sort == Sort::product)
        sorting::stable(found, [&](const Kept* a, const Kept* b) {
            return rank_of(catalogue, *a) < rank_of(catalogue, *b);
        });
    return found;
}

std::vector<std::string> tags(const workspace::Workspace& workspace) {
    std::vector<std::string> all;
    for (const Kept& kept : workspace.recipes) {
        if (!kept.binned.empty()) continue;
        for (const std::string& tag : kept.tags)
            if (std::none_of(all.begin(), all.end(), [&](const std::string& there) {
                    return utf8::lowered(there) == utf8::lowered(tag);
                }))
                all.push_back(tag);
    }
    sorting::stable(
        all, [](const std::string& a, const std::string& b) { return utf8::lowered(a) < utf8::lowered(b); });
    return all;
}

bool has_tag(const Kept& kept, std::string_view tag) {
    return std::any_of(kept.tags.begin(), kept.tags.end(),
                       [&](const std::string& there) { return utf8::lowered(there) == utf8::lowered(tag); });
}

}  // namespace workspace_book
