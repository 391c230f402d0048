// Names by market. EU, GB and Northern Ireland share the names of the European glossary; the US those of the
// dictionary with the common name in brackets; Canada the dictionary's too, and for what its Schedule lists
// (water, waxes) all three names as C.R.C., c. 869, s. 21.2(4)(c) has them.
#include <algorithm>
#include <array>

#include "declaration.h"

namespace declaration {
namespace {

using market::Market;
using source::Standing;

constexpr std::string_view kColourIndex = "ci";  // key of catalogue::Ingredient::inci

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

char lowered(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

std::string trimmed(std::string_view text) {
    while (!text.empty() && text.front() == ' ')
        text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ')
        text.remove_suffix(1);
    return std::string(text);
}

// Where a name is looked for, the first that is there. A dictionary name stands for Canada; a European one
// too, since genus and species are enough there (s. 21.2(3)).
std::array<std::string_view, 3> keys_of(Market market) {
    switch (market) {
        case Market::us:
            return {"us", "", ""};
        case Market::ca:
            return {"ca", "us", "eu"};
        case Market::gb:
            return {"gb", "eu", ""};
        default:
            return {"eu", "", ""};
    }
}

}  // namespace

Names names_of(const catalogue::Ingredient& ingredient, const catalogue::Catalogue& shipped, Market market,
               bool as_colour) {
    Names found;
    const auto take = [&](std::string_view key, const catalogue::Ingredient& from) {
        const auto name = from.inci.find(std::string(key));
        if (key.empty() || name == from.inci.end() || name->second.empty()) return false;
        found.names = at_commas(name->second);
        const source::Entry* entry = catalogue::find_source(shipped, from.inci_source);
        found.source = from.own ? from.source : from.inci_source;
        found.standing = from.own ? from.standing : entry != nullptr ? entry->standing : Standing::memory;
        if (key == "ca" && !from.own) found.source = kCanadaSource, found.standing = Standing::document;
        return true;
    };
    const catalogue::Ingredient* base =
        ingredient.own ? catalogue::find_ingredient(shipped, ingredient.based_on) : nullptr;
    for (const catalogue::Ingredient* from : {&ingredient, base}) {
        if (from == nullptr) continue;
        if (as_colour && market::as_in_europe(market) && take(kColourIndex, *from)) return found;
        for (const std::string_view key : keys_of(market))
            if (take(key, *from)) return found;
    }
    return found;
}

std::string scent_name(Market market, bool flavour) {
    if (market == Market::us) return flavour ? "Flavor" : "Fragrance";
    return flavour ? "Aroma" : "Parfum";
}

std::vector<std::string> at_commas(std::string_view names) {
    std::vector<std::string> parts;
    std::size_t from = 0;
    int depth = 0;
    for (std::size_t i = 0; i <= names.size(); ++i) {
        const char c = i < names.size() ? names[i] : ',';
        if (c == '(' || c == '[') depth += 1;
        if ((c == ')' || c == ']') && depth > 0) depth -= 1;
        const bool within = i + 1 < names.size() && i > 0 && is_digit(names[i - 1]) && is_digit(names[i + 1]);
        if (i < names.size() && (c != ',' || depth > 0 || within)) continue;
        if (std::string one = trimmed(names.substr(from, i - from)); !one.empty())
            parts.push_back(std::move(one));
        from = i + 1;
    }
    return parts;
}

bool same_name(std::string_view a, std::string_view b) {
    return a.size() == b.size() &&
           std::equal(a.begin(), a.end(), b.begin(), [](char x, char y) { return lowered(x) == lowered(y); });
}

}  // namespace declaration
