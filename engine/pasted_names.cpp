// See pasted_names.h. A name is a set of words: "yellow beeswax" is "Beeswax, yellow". What stands in
// brackets in the catalogue is a name of its own ("Berry wax (Japan wax)"), what stands before a comma is a
// shorter one. Words that say how a thing was grown or pressed do not count. Other names of the trade and of
// some neighbouring languages are in the table below; where a name fits several ingredients, all are listed.
#include "pasted_names.h"

#include <algorithm>
#include <functional>
#include <iterator>
#include <utility>

#include "pasted.h"
#include "pasted_text.h"
#include "sorting.h"

namespace pasted_names {
namespace {

using Words = std::vector<std::string>;

constexpr std::size_t kMostWords = 12;  // a longer name is prose

constexpr std::string_view kOfNoWeight[] = {
    "organic",    "bio",       "raw",        "refined",    "unrefined", "virgin", "extra",
    "cold",       "pressed",   "pure",       "natural",    "melted",    "grated", "of",
    "the",        "certified", "deodorised", "deodorized", "chopped",   "a",      "and",
    "pellets",    "pastilles", "pearls",     "beads",      "flakes",    "chips",  "chunks",
    "granules",   "cosmetic",  "grade",      "food",       "filtered",  "fresh",  "golden",
    "cosmos",     "fair",      "fairtrade",  "trade",      "local",     "my",     "our",
    "de",         "d",         "du",         "la",         "le",        "di",     "nativ",
    "raffiniert", "vierge",    "usp",        "bp",         "ph",        "eur",    "pharmaceutical"};
// Words that many names share: alone they name nothing.
constexpr std::string_view kCommon[] = {
    "oil",   "butter", "wax",    "extract", "water",   "acid",      "seed",     "leaf",  "peel",  "flower",
    "fruit", "kernel", "starch", "clay",    "alcohol", "essential", "absolute", "sweet", "white", "yellow",
    "root",  "bark",   "wood",   "herb",    "soft",    "hard",      "classic",  "juice"};
constexpr std::string_view kOilWords[] = {"oil", "eo", "essential", "ess", "absolute", "co2"};

struct Synonym {
    std::string_view written, id;
};
constexpr Synonym kSynonyms[] = {
    {"water", "water"},
    {"aqua", "water"},
    {"aqua purificata", "water"},
    {"purified water", "water"},
    {"deionised water", "water"},
    {"deionized water", "water"},
    {"demineralised water", "water"},
    {"wasser", "water"},
    {"eau", "water"},
    {"acqua", "water"},
    {"agua", "water"},
    {"rose water", "hydrosol"},
    {"rosewater", "hydrosol"},
    {"lavender water", "hydrosol"},
    {"lavender hydrosol", "hydrosol"},
    {"rose hydrosol", "hydrosol"},
    {"hydrolate", "hydrosol"},
    {"hydrolat", "hydrosol"},
    {"stronger rose water", "hydrosol"},
    {"white wax", "beeswax_white"},
    {"yellow wax", "beeswax_yellow"},
    {"cera flava", "beeswax_yellow"},
    {"bleached beeswax", "beeswax_white"},
    {"bienenwachs", "beeswax_yellow"},
    {"bienenwachs", "beeswax_white"},
    {"cire d abeille", "beeswax_yellow"},
    {"cire d abeille", "beeswax_white"},
    {"cera d api", "beeswax_yellow"},
    {"cera d api", "beeswax_white"},
    {"cera de abejas", "beeswax_yellow"},
    {"cera de abejas", "beeswax_white"},
    {"almond oil", "almond"},
    {"expressed almond oil", "almond"},
    {"mandel\xC3\xB6l", "almond"},
    {"huile d amande douce", "almond"},
    {"oliven\xC3\xB6l", "olive"},
    {"huile d olive", "olive"},
    {"olio di oliva", "olive"},
    {"olio d oliva", "olive"},
    {"olio di mandorle", "almond"},
    {"olio di mandorle dolci", "almond"},
    {"aceite de almendras", "almond"},
    {"oil of almonds", "almond"},
    {"aceite de oliva", "olive"},
    {"jojoba\xC3\xB6l", "jojoba"},
    {"huile de jojoba", "jojoba"},
    {"evoo", "olive"},
    {"kokos\xC3\xB6l", "coconut"},
    {"huile de coco", "coconut"},
    {"aceite de coco", "coconut"},
    {"rizinus\xC3\xB6l", "castor"},
    {"huile de ricin", "castor"},
    {"sonnenblumen\xC3\xB6l", "sunflower"},
    {"sonnenblumen\xC3\xB6l", "sunflower_ho"},
    {"huile de tournesol", "sunflower"},
    {"huile de tournesol", "sunflower_ho"},
    {"sheabutter", "shea"},
    {"karite", "shea"},
    {"karit\xC3\xA9", "shea"},
    {"beurre de karite", "shea"},
    {"beurre de karit\xC3\xA9", "shea"},
    {"manteca de karite", "shea"},
    {"manteca de karit\xC3\xA9", "shea"},
    {"burro di karite", "shea"},
    {"burro di karit\xC3\xA9", "shea"},
    {"kakaobutter", "cocoa"},
    {"cacao butter", "cocoa"},
    {"theobroma oil", "cocoa"},
    {"oil of theobroma", "cocoa"},
    {"beurre de cacao", "cocoa"},
    {"manteca de cacao", "cocoa"},
    {"burro di cacao", "cocoa"},
    {"mangobutter", "mango"},
    {"candelillawachs", "candelilla"},
    {"carnaubawachs", "carnauba"},
    {"wool fat", "lanolin"},
    {"wollwachs", "lanolin"},
    {"lanolin", "lanolin"},
    {"glycerine", "glycerin"},
    {"glycerol", "glycerin"},
    {"glyc\xC3\xA9rine", "glycerin"},
    {"glicerina", "glycerin"},
    {"vit e", "tocopherol"},
    {"tocopherol", "tocopherol"},
    {"vitamine e", "tocopherol"},
    {"vitamin e oil", "tocopherol"},
    {"cetostearyl alcohol", "cetearyl_alcohol"},
    {"zinkoxid", "zinc_oxide"},
    {"ewax", "ewax_nf"},
    {"e wax", "ewax_nf"},
    {"emulsifying wax", "ewax_nf"},
    {"mct oil", "mct"},
    {"fractionated coconut oil", "mct"},
    {"fco", "mct"},
    {"ylang", "ylang_ylang"},
    {"may chang", "litsea"},
    {"immortelle", "helichrysum"},
    {"lavendel", "lavender"},
    {"lavendel\xC3\xB6l", "lavender"},
    {"lavande", "lavender"},
    {"pfefferminz\xC3\xB6l", "peppermint"},
    {"menthe poivr\xC3\xA9\x65", "peppermint"},
    {"teebaum\xC3\xB6l", "tea_tree"},
    {"ti tree", "tea_tree"},
    {"orange", "sweet_orange"},
    {"orange oil", "sweet_orange"},
    {"rose oil", "rose_otto"},
    {"oil of rose", "rose_otto"},
    {"oil of roses", "rose_otto"},
};

template <std::size_t kCount>
bool is_in(std::string_view word, const std::string_view (&list)[kCount]) {
    return std::find(std::begin(list), std::end(list), word) != std::end(list);
}

// Small letters; every run of letters and digits is a word, without the s of a plural.
Words words_of(std::string_view name) {
    Words words;
    std::string word;
    const auto finish = [&] {
        const bool plural = word.size() > 4 && word.back() == 's' &&
                            std::string_view("suia").find(word[word.size() - 2]) == std::string_view::npos;
        if (plural) word.pop_back();
        if (!word.empty()) words.push_back(std::move(word));
        word.clear();
    };
    for (const char c : pasted_text::lowered(name)) {
        if (pasted_text::is_letter(c) || pasted_text::is_digit(c)) {
            word += c;
        } else {
            finish();
        }
    }
    finish();
    return words;
}

Words sorted(Words words) {
    sorting::stable(words);
    return words;
}

Words of_weight(const Words& words) {
    Words kept;
    for (const std::string& word : words)
        if (!is_in(word, kOfNoWeight)) kept.push_back(word);
    return kept;
}

bool names_nothing(const Words& words) {
    return std::all_of(words.begin(), words.end(),
                       [](const std::string& word) { return is_in(word, kCommon); });
}

// One letter too many, too few or another: of words of four letters and more.
bool near(const std::string& a, const std::string& b) {
    if (a == b) return true;
    if (a.size() < 4 || b.size() < 4) return false;
    const std::string &shorter = a.size() <= b.size() ? a : b, &longer = a.size() <= b.size() ? b : a;
    if (longer.size() - shorter.size() > 1) return false;
    std::size_t same = 0;
    while (same < shorter.size() && shorter[same] == longer[same])
        same += 1;
    const std::size_t skip = longer.size() - shorter.size();
    return shorter.compare(same + 1 - skip, std::string::npos, longer, same + 1, std::string::npos) == 0;
}

bool all_near(const Words& typed, const Words& name) {
    return std::all_of(typed.begin(), typed.end(), [&](const std::string& word) {
        return std::any_of(name.begin(), name.end(), [&](const std::string& one) { return near(word, one); });
    });
}

std::string without_brackets(std::string_view name) {
    std::string out;
    int depth = 0;
    for (const char c : name) {
        depth += c == '(';
        if (depth == 0) out += c;
        depth -= c == ')' && depth > 0;
    }
    return out;
}

std::string in_brackets(std::string_view name) {
    const auto open = name.find('('), close = name.find(')', open == std::string_view::npos ? 0 : open);
    if (open == std::string_view::npos || close == std::string_view::npos) return "";
    return std::string(name.substr(open + 1, close - open - 1));
}

bool is_essential(const catalogue::Ingredient* one) {
    return one->role == "essential_oil" || one->role == "extract";
}

// "Anise oil" without " oil"; "" when it does not end so.
std::string before_word(std::string_view name, std::string_view word) {
    const std::string low = pasted_text::lowered(pasted_text::trimmed(name));
    if (low.size() <= word.size() || low.compare(low.size() - word.size(), word.size(), word) != 0) return "";
    return low.substr(0, low.size() - word.size());
}

}  // namespace

Matcher::Matcher(const catalogue::Catalogue& catalogue) {
    for (const catalogue::Ingredient& one : catalogue.ingredients) {
        Names names;
        names.ingredient = &one;
        const auto add = [](std::vector<Words>& list, std::string_view name) {
            Words words = sorted(words_of(name));
            if (!words.empty() && std::find(list.begin(), list.end(), words) == list.end())
                list.push_back(std::move(words));
        };
        add(names.exact, one.name);
        add(names.exact, one.id);
        for (const auto& [market, name] : one.inci) {
            add(names.exact, name);
            add(names.exact, without_brackets(name));
        }
        for (const auto& [language, name] : one.names)
            add(names.exact, name);
        add(names.others, without_brackets(one.name));
        add(names.others, one.name.substr(0, one.name.find(',')));
        if (const std::string bracket = in_brackets(one.name); !bracket.empty()) add(names.others, bracket);
        if (is_essential(&one))  // goes by its plant alone
            for (const std::string_view oil : {"oil", "essential oil"}) {
                const std::string plant = before_word(one.name.substr(0, one.name.find_first_of(",(")), oil);
                if (!plant.empty()) add(names.others, plant);
            }
        for (const std::vector<Words>* list : {&names.exact, &names.others})
            for (const Words& words : *list) {
                Words heavy = of_weight(words);
                if (!heavy.empty() && !names_nothing(heavy) &&
                    std::find(names.heavy.begin(), names.heavy.end(), heavy) == names.heavy.end())
                    names.heavy.push_back(std::move(heavy));
            }
        for (const Synonym& synonym : kSynonyms)
            if (synonym.id == one.id) add(names.others, synonym.written);
        all_.push_back(std::move(names));
    }
}

Match Matcher::match(std::string_view name) const {
    Match found;
    const Words all_words = words_of(name);
    if (all_words.empty() || all_words.size() > kMostWords) return found;
    const Words typed = sorted(all_words);
    std::vector<const catalogue::Ingredient*> fit;
    const auto settle = [&](bool exact) {
        if (fit.empty()) return false;
        if (fit.size() == 1)
            found.ingredient = fit.front();
        else
            found.offered.assign(fit.begin(), fit.begin() + static_cast<std::ptrdiff_t>(
                                                                std::min(fit.size(), pasted::kMostOffered)));
        found.exact = exact;
        return true;
    };
    const auto collect = [&](const auto& fits) {
        for (const Names& names : all_)
            if (fits(names)) fit.push_back(names.ingredient);
    };
    const auto has = [](const std::vector<Words>& list, const Words& words) {
        return std::find(list.begin(), list.end(), words) != list.end();
    };
    collect([&](const Names& names) { return has(names.exact, typed); });
    if (settle(true)) return found;
    collect([&](const Names& names) { return has(names.others, typed); });
    if (settle(true)) return found;

    Words heavy = sorted(of_weight(all_words));
    if (heavy.empty()) return found;
    collect([&](const Names& names) { return has(names.exact, heavy) || has(names.others, heavy); });
    if (settle(true)) return found;

    // "peppermint EO", "tea tree oil": an essential oil goes by its plant alone.
    Words plant;
    bool essential = false;
    for (const std::string& word : heavy)
        if (!is_in(word, kOilWords)) plant.push_back(word);
    if (!plant.empty() && plant.size() < heavy.size()) {
        const bool said =
            std::find(heavy.begin(), heavy.end(), "oil") == heavy.end() || plant.size() + 1 < heavy.size();
        collect([&](const Names& names) {
            return (is_essential(names.ingredient) || said) &&
                   (has(names.exact, plant) || has(names.others, plant));
        });
        // A butter or seed oil of that plant is not what "EO" means.
        if (std::any_of(fit.begin(), fit.end(), is_essential)) std::erase_if(fit, std::not_fn(is_essential));
        if (settle(true)) return found;
        if (said) {
            heavy = plant;
            essential = true;
        }
    }
    if (names_nothing(heavy)) return found;

    // Every word typed stands in the name: the fewest others win. Where the name stands within what was
    // typed, the further words may change what is meant ("sunflower lecithin"): offered, never taken.
    for (const bool typed_in_name : {true, false}) {
        std::size_t best = 2;
        for (const Names& names : all_) {
            if (essential && !is_essential(names.ingredient)) continue;
            std::size_t others = kMostWords;
            for (const Words& one : names.heavy)
                if (std::includes((typed_in_name ? one : heavy).begin(), (typed_in_name ? one : heavy).end(),
                                  (typed_in_name ? heavy : one).begin(), (typed_in_name ? heavy : one).end()))
                    others = std::min(
                        others, std::max(one.size(), heavy.size()) - std::min(one.size(), heavy.size()));
            if (others > best) continue;
            if (others < best) fit.clear();
            best = others;
            fit.push_back(names.ingredient);
        }
        if (fit.empty()) continue;
        settle(false);
        if (!typed_in_name && found.ingredient) found.offered = {std::exchange(found.ingredient, nullptr)};
        return found;
    }

    for (const Names& names : all_)  // a slip of one letter is offered, never taken
        for (const std::vector<Words>* list : {&names.exact, &names.others})
            for (const Words& words : *list)
                if (found.offered.size() < pasted::kMostOffered && words.size() == heavy.size() &&
                    all_near(heavy, words) &&
                    std::find(found.offered.begin(), found.offered.end(), names.ingredient) ==
                        found.offered.end())
                    found.offered.push_back(names.ingredient);
    return found;
}

}  // namespace pasted_names
