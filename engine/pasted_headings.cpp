// See pasted_headings.h.
#include "pasted_headings.h"

#include <algorithm>

#include "pasted_text.h"

namespace pasted_headings {
namespace {

using pasted_text::is_digit;
using pasted_text::is_letter;
using pasted_text::lowered;
using pasted_text::trimmed;

bool in_word(char c) {
    return is_letter(c) || is_digit(c);
}

bool has_word(std::string_view text, std::string_view word) {
    for (auto at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
        const std::size_t end = at + word.size();
        if ((at == 0 || !in_word(text[at - 1])) && (end == text.size() || !in_word(text[end]))) return true;
    }
    return false;
}
bool begins_with_word(std::string_view text, std::string_view word) {
    return text.substr(0, word.size()) == word && (text.size() == word.size() || !in_word(text[word.size()]));
}
}  // namespace

std::size_t word_count(std::string_view text) {
    std::size_t count = 0;
    for (std::size_t i = 0; i < text.size(); ++i)
        count += in_word(text[i]) && (i == 0 || !in_word(text[i - 1]));
    return count;
}

namespace {

// Small letters, without marks at both ends.
std::string plain(std::string_view words) {
    std::string low = lowered(trimmed(words));
    const auto mark = [](char c) {
        return c == ':' || c == '*' || c == '#' || c == '_' || c == '=' || c == '-' || c == '.' || c == '(' ||
               c == ')' || c == '[' || c == ']' || c == ' ';
    };
    std::size_t start = 0, end = low.size();
    while (start < end && mark(low[start]))
        start += 1;
    while (end > start && mark(low[end - 1]))
        end -= 1;
    return low.substr(start, end - start);
}

constexpr std::string_view kPhaseWords[] = {"phase", "phases", "fase", "faza"};
constexpr std::string_view kCooling[] = {"cool down", "cool-down", "cooldown", "after cooling",
                                         "off the heat"};
constexpr std::string_view kListWords[] = {
    "ingredients",   "ingredient list", "zutaten",       "ingr\xC3\xA9\x64ients",
    "ingredientes",  "ingredienti",     "you will need", "you'll need",
    "what you need", "materials",       "rezeptur",      "formula",
    "recipe",        "composition",     "rezept",        "recette",
    "receta",        "ricetta",         "formulation"};
constexpr std::string_view kMethodWords[] = {"method",
                                             "directions",
                                             "instructions",
                                             "procedure",
                                             "preparation",
                                             "how to make",
                                             "how to",
                                             "steps",
                                             "to make",
                                             "zubereitung",
                                             "herstellung",
                                             "anleitung",
                                             "pr\xC3\xA9paration",
                                             "mode op\xC3\xA9ratoire",
                                             "procedimiento",
                                             "elaboraci\xC3\xB3n",
                                             "preparazione",
                                             "procedimento",
                                             "bereiding",
                                             "making"};
constexpr std::string_view kNoteWords[] = {"notes",     "note",      "tips",      "tip",
                                           "equipment", "storage",   "source",    "you may also like",
                                           "comments",  "hinweise",  "remarques", "shelf life",
                                           "tools",     "packaging", "variations"};
constexpr std::string_view kVerbs[] = {"melt",
                                       "heat",
                                       "stir",
                                       "pour",
                                       "add",
                                       "mix",
                                       "cool",
                                       "let",
                                       "combine",
                                       "store",
                                       "keep",
                                       "use",
                                       "apply",
                                       "weigh",
                                       "whisk",
                                       "blend",
                                       "label",
                                       "remove",
                                       "wait",
                                       "place",
                                       "put",
                                       "then",
                                       "when",
                                       "once",
                                       "after",
                                       "if",
                                       "this",
                                       "it",
                                       "i",
                                       "we",
                                       "leave",
                                       "allow",
                                       "set",
                                       "test",
                                       "check",
                                       "take care",
                                       "enjoy",
                                       "print",
                                       "please",
                                       "see",
                                       "for best",
                                       "shake",
                                       "warm",
                                       "strain",
                                       "infuse",
                                       "posted",
                                       "schmelzen",
                                       "erhitzen",
                                       "r\xC3\xBChren",
                                       "faire",
                                       "m\xC3\xA9langer",
                                       "chauffer",
                                       "see also",
                                       "recipe by",
                                       "from",
                                       "adapted",
                                       "serves",
                                       "time",
                                       "prep",
                                       "prep time",
                                       "cook time",
                                       "http",
                                       "https",
                                       "www"};
constexpr std::string_view kTotals[] = {
    "total",       "totals",      "grand total", "sum",        "summe",        "gesamt",
    "gesamtmenge", "somme",       "totale",      "totaal",     "suma",         "insgesamt",
    "makes",       "yield",       "yields",      "batch size", "total weight", "net weight",
    "total batch", "batch total", "ergibt",      "gibt"};
constexpr std::string_view kForTotals[] = {
    "for",   "pour",       "per",        "batch",      "ansatz",      "batch of", "for a batch of",
    "gives", "f\xC3\xBCr", "recipe for", "a batch of", "formula for", "for a",    "batch weight"};

template <std::size_t kCount>
bool is_one(std::string_view text, const std::string_view (&list)[kCount]) {
    return std::find(std::begin(list), std::end(list), text) != std::end(list);
}

}  // namespace

std::size_t bullet_end(std::string_view line) {
    std::size_t at = 0;
    const auto skip_spaces = [&] {
        while (at < line.size() && (line[at] == ' ' || line[at] == '\t'))
            at += 1;
    };
    const auto peek = [&](std::size_t i) { return at + i < line.size() ? line[at + i] : '\0'; };
    for (int layer = 0; layer < 4; ++layer) {
        skip_spaces();
        const char c = peek(0);
        const bool mark = c == '-' || c == '*' || c == '+' || c == '>' || c == pasted_text::kBullet;
        if (mark && (peek(1) == ' ' || peek(1) == '\t' || is_letter(peek(1)) || c == pasted_text::kBullet ||
                     (c == '-' && is_digit(peek(1))))) {
            while (peek(0) == c)
                at += 1;
            continue;
        }
        if (c == '#' && peek(1) != '\0') {
            while (peek(0) == '#')
                at += 1;
            continue;
        }
        if (c == '[' && (peek(1) == ' ' || peek(1) == 'x' || peek(1) == 'X') && peek(2) == ']') {
            at += 3;
            continue;
        }
        if (c == '[' && peek(1) == ']') {
            at += 2;
            continue;
        }
        std::size_t digits = c == '(' ? 1 : 0;
        const std::size_t first = digits;
        while (is_digit(peek(digits)))
            digits += 1;
        if (digits > first && digits - first <= 2 && (peek(digits) == '.' || peek(digits) == ')') &&
            (peek(digits + 1) == ' ' || peek(digits + 1) == '\t')) {
            at += digits + 1;
            continue;
        }
        break;
    }
    skip_spaces();
    return std::min(at, line.size());
}

bool phase_letter(std::string_view cell) {
    const std::string_view one = trimmed(cell);
    return one.size() == 1 && one[0] >= 'A' && one[0] <= 'L';
}

std::optional<std::string> phase_in(std::string_view words) {
    const std::string low = plain(words);
    if (low.empty() || word_count(low) > 8) return std::nullopt;
    if (phase_letter(words) ||
        (low.size() == 1 && low[0] >= 'a' && low[0] <= 'l' && trimmed(words).size() <= 3))
        return std::string(1, static_cast<char>(low[0] - 'a' + 'A'));
    const auto letter = [](std::string_view text) -> std::string {
        if (text.empty() || (text.size() > 1 && in_word(text[1]))) return "";
        if (text[0] >= 'a' && text[0] <= 'z') return std::string(1, static_cast<char>(text[0] - 'a' + 'A'));
        if (text[0] >= '1' && text[0] <= '9') return std::string(1, text[0]);
        return "";
    };
    for (const std::string_view word : kPhaseWords) {
        const std::size_t at = low.find(word);
        if (at == std::string::npos) continue;
        const std::size_t end = at + word.size();
        if (end < low.size() && in_word(low[end])) continue;
        const std::string_view after = trimmed(std::string_view(low).substr(end));
        if (at == 0)
            if (std::string found = letter(after); !found.empty()) return found;
        if (at == 2 && (low[1] == '-' || low[1] == ' '))
            if (std::string found = letter(low.substr(0, 1)); !found.empty()) return found;
        const bool ends = after.empty() || !in_word(after.front());
        const bool last = ends || is_digit(after.front());  // "Oil phase 30 %"
        if (at == 0 || last) return "";
    }
    for (const std::string_view word : kCooling)
        if (begins_with_word(low, word) && word_count(low) <= 4 &&
            std::none_of(low.begin(), low.end(), is_digit))
            return "";
    return std::nullopt;
}

Section section_in(std::string_view words) {
    const std::string low = plain(words);
    if (low.empty() || word_count(low) > 5) return Section::none;
    const auto of = [&](const auto& list) {
        for (const std::string_view word : list)
            if (low == word || (begins_with_word(low, word) &&
                                (low.find('(') != std::string::npos || trimmed(words).back() == ':')))
                return true;
        return false;
    };
    if (of(kListWords)) return Section::list;
    if (of(kMethodWords)) return Section::method;
    if (of(kNoteWords)) return Section::notes;
    return Section::none;
}

bool is_prose(std::string_view words) {
    const std::string low = lowered(trimmed(words));
    if (low.find("://") != std::string::npos || begins_with_word(low, "www")) return true;
    if (word_count(low) < 3) return false;
    for (const std::string_view verb : kVerbs)
        if (begins_with_word(low, verb)) return true;
    return false;
}

bool is_total(std::string_view name, bool amount_is_first) {
    const std::string low = plain(name);
    if (is_one(low, kForTotals) || (amount_is_first && low == "in all")) return true;
    if (low == "batch" || low == "total batch") return true;
    if (word_count(low) > 5) return false;
    for (const std::string_view word : kTotals)
        if (begins_with_word(low, word)) return true;
    return amount_is_first && (low == "total" || low == "altogether");
}

bool is_shared(std::string_view name) {
    const std::string low = lowered(name);
    return has_word(low, "of each") || has_word(low, "each") || has_word(low, "\xC4\x81\xC4\x81") ||
           has_word(low, "aa") || has_word(low, "ana");
}

const measures::Measure* column_unit(std::string_view words) {
    const std::string low = lowered(trimmed(words));
    if (low.empty()) return nullptr;
    const measures::Found whole = measures::at_start(low);
    if (whole.measure && whole.bytes == low.size()) return whole.measure;
    for (std::size_t at = low.find('('); at != std::string::npos; at = low.find('(', at + 1)) {
        const measures::Found found = measures::at_start(std::string_view(low).substr(at + 1));
        if (found.measure && low.substr(at + 1 + found.bytes, 1) == ")") return found.measure;
    }
    if (low.find('%') != std::string::npos || has_word(low, "percent") || has_word(low, "percentage"))
        return measures::find("percent");
    if (has_word(low, "grams") || has_word(low, "gramm")) return measures::find("gram");
    if (has_word(low, "parts")) return measures::find("part");
    return nullptr;
}

bool names_amounts(std::string_view words) {
    const std::string low = plain(words);
    static constexpr std::string_view kNames[] = {"amount",          "amounts", "quantity",        "qty",
                                                  "weight",          "menge",   "quantit\xC3\xA9", "cantidad",
                                                  "quantit\xC3\xA0", "wt"};
    return is_one(low, kNames);
}

bool names_ingredients(std::string_view words) {
    const std::string low = plain(words);
    for (const std::string_view word : {"ingredient", "ingredients", "zutat", "zutaten", "rohstoff", "inci",
                                        "name", "material", "ingr\xC3\xA9\x64ient", "ingr\xC3\xA9\x64ients",
                                        "ingrediente", "ingredientes", "component", "phase"})
        if (has_word(low, word)) return true;
    return false;
}

const measures::Measure* hint_in(std::string_view words, const measures::Measure* before) {
    const std::string low = lowered(words);
    if (std::any_of(low.begin(), low.end(), is_digit)) return before;
    const auto any = [&](std::initializer_list<std::string_view> hints) {
        return std::any_of(hints.begin(), hints.end(), [&](std::string_view hint) {
            return in_word(hint.front()) ? has_word(low, hint) : low.find(hint) != std::string::npos;
        });
    };
    if (any({"(g)", "in g", "in grams", "in gramm", "grams", "en grammes", "en gramos", "in grammi"}))
        return measures::find("gram");
    if (any({"(%)", "in %", "in percent", "percent", "percentages", "in prozent", "en %", "% w/w"}))
        return measures::find("percent");
    if (any({"parts by weight", "in parts", "parts", "gewichtsteile", "(parts)"}))
        return measures::find("part");
    if (any({"(oz)", "in ounces"})) return measures::find("ounce");
    if (any({"(ml)", "in ml"})) return measures::find("millilitre");
    return before;
}

}  // namespace pasted_headings
