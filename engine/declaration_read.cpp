// One pass over the text: brackets decide what a comma parts, marks are taken off, and what is left is a name
// for pasted_names, which knows the synonyms and water in several languages. A line break parts names only in
// a list that has no commas; elsewhere it is where the print was too narrow.
#include "declaration_read.h"

#include <algorithm>
#include <array>

#include "decimal.h"
#include "pasted_text.h"
#include "utf8.h"

namespace declaration_read {
namespace {

using pasted_text::lowered;
using pasted_text::trimmed;

constexpr std::array<std::string_view, 16> kHeadings{"ingredients",
                                                     "ingredient list",
                                                     "full ingredient list",
                                                     "list of ingredients",
                                                     "inci",
                                                     "ingr\xC3\xA9\x64ients",
                                                     "ingredients / ingr\xC3\xA9\x64ients",
                                                     "ingredients/ingr\xC3\xA9\x64ients",
                                                     "zutaten",
                                                     "inhaltsstoffe",
                                                     "bestandteile",
                                                     "ingredienti",
                                                     "ingredientes",
                                                     "ingredi\xC3\xABnten",
                                                     "sk\xC5\x82\x61\x64niki",
                                                     "contains"};
constexpr std::array<std::string_view, 12> kMayContain{"may also contain", "may contain/peut contenir",
                                                       "may contain",      "peut contenir",
                                                       "kann enthalten",   "pu\xC3\xB2 contenere",
                                                       "puede contener",   "pode conter",
                                                       "kan bevatten",     "+/-",
                                                       "\xC2\xB1",         "+/\xE2\x80\x93"};

constexpr int kDeepest = 4;

bool begins(std::string_view text, std::string_view with) {
    return text.substr(0, with.size()) == with;
}

bool is_footnote(std::string_view text) {
    return begins(text, "*") || begins(text, "\xE2\x80\xA0");  // a dagger
}

// Brackets of any kind as round ones; every run of blanks and breaks as one blank; breaks as a comma where
// the list has none.
std::string levelled(std::string_view bytes, std::vector<std::string>& aside) {
    std::string text;
    const std::vector<pasted_text::Line> lines = pasted_text::lines_of(bytes);
    const bool commas = std::any_of(lines.begin(), lines.end(), [](const pasted_text::Line& line) {
        return line.text.find_first_of(",;") != std::string::npos;
    });
    for (const pasted_text::Line& line : lines) {
        if (!text.empty() && is_footnote(line.text)) {
            aside.push_back(std::string(utf8::start_within(line.text, kMostNameBytes)));
            continue;
        }
        if (!text.empty()) {
            const bool parted = text.back() == ':' || text.back() == ',';
            text += commas || parted ? " " : ", ";
        }
        for (const char c : line.text)
            text += c == '[' || c == '{'     ? '('
                    : c == ']' || c == '}'   ? ')'
                    : c == '\n' || c == '\t' ? ' '
                                             : c;
    }
    return text;
}

// "Ingredients:" before the first name.
std::size_t heading_end(std::string_view text, std::string& heading) {
    const std::string low = lowered(text.substr(0, 200));
    std::size_t best = 0;
    for (const std::string_view one : kHeadings) {
        const std::size_t at = low.find(one);
        if (at == std::string::npos) continue;
        const std::size_t end = at + one.size();
        // Only where a colon follows, or it stands alone in front.
        const std::size_t next = low.find_first_not_of(" )", end);
        const bool colon = next != std::string::npos && low[next] == ':';
        const bool alone = at == 0 && end < low.size() && low[end] == ',';
        if (!colon && !alone) continue;
        const std::size_t after = (colon ? next : end) + 1;
        if (after > best && low.substr(0, at).find(',') == std::string::npos) {
            best = after;
            heading = std::string(trimmed(text.substr(at, end - at)));
        }
    }
    return best;
}

struct Reader {
    const pasted_names::Matcher& names;
    Reading out = {};
    bool shades = false;  // behind "may contain"
    int deep = 0;         // lists within lists

    bool full() {
        if (out.items.size() < kMostItems) return false;
        out.cut = true;
        return true;
    }

    // "Shea Butter 20 %" and "(20%)": the share goes, the name stays.
    static std::optional<quantity::Percent> take_percent(std::string& name) {
        std::string_view rest = trimmed(name);
        if (!rest.empty() && rest.back() == ')') rest.remove_suffix(1), rest = trimmed(rest);
        if (rest.empty() || rest.back() != '%') return std::nullopt;
        rest.remove_suffix(1);
        rest = trimmed(rest);
        std::size_t from = rest.size();
        while (from > 0 &&
               (pasted_text::is_digit(rest[from - 1]) || rest[from - 1] == '.' || rest[from - 1] == ','))
            from -= 1;
        const auto figure = decimal::read(rest.substr(from));
        if (!figure || *figure < 0 || *figure > quantity::kHundred.grid) return std::nullopt;
        std::string_view before = trimmed(rest.substr(0, from));
        while (!before.empty() && (before.back() == '(' || before.back() == ':')) {
            before.remove_suffix(1);
            before = trimmed(before);
        }
        if (before.empty()) return std::nullopt;
        name = std::string(before);
        return quantity::Percent{*figure};
    }

    static bool take_word(std::string& name, std::string_view word) {
        const std::size_t at = lowered(name).find(word);
        if (at == std::string::npos) return false;
        name.erase(at, word.size());
        name = std::string(trimmed(name));
        return true;
    }

    pasted_names::Match match(std::string_view name) const {
        pasted_names::Match found = names.match(name);
        if (found.exact || (found.ingredient != nullptr && name.find('/') == std::string_view::npos))
            return found;
        // "Aqua / Water / Eau", "Aqua (Water)": every part a name of the same thing.
        for (const auto& [open, parted] : {std::pair{'(', "()"}, std::pair{'/', "/"}}) {
            if (name.find(open) == std::string_view::npos) continue;
            std::vector<pasted_names::Match> all;
            std::size_t from = 0;
            while (from <= name.size()) {
                const std::size_t end = std::min(name.find_first_of(parted, from), name.size());
                if (const auto part = trimmed(name.substr(from, end - from)); !part.empty())
                    all.push_back(names.match(part));
                from = end + 1;
            }
            const auto known = [](const pasted_names::Match& one) {
                return one.exact && (one.ingredient != nullptr || !one.offered.empty());
            };
            if (all.size() < 2 || !known(all.front())) continue;
            const bool same = std::all_of(all.begin() + 1, all.end(), [&](const pasted_names::Match& one) {
                return !known(one) || one.ingredient == all.front().ingredient;
            });
            if (same) return all.front();
        }
        return found;
    }

    void add(std::string_view piece, bool within) {
        std::string name(trimmed(piece));
        while (!name.empty() && (name.back() == '.' || name.back() == '*' || name.back() == ':'))
            name.pop_back();
        name.erase(std::remove(name.begin(), name.end(), '*'), name.end());
        std::erase(name, pasted_text::kBullet);
        name = std::string(trimmed(name));
        if (name.empty()) return;
        if (name.size() > kMostNameBytes) {
            out.aside.push_back(std::string(utf8::start_within(name, kMostNameBytes)));
            return;
        }
        if (full()) return;
        Item item;
        item.nano = take_word(name, "(nano)");
        item.percent = take_percent(name);
        if (name.empty()) return;
        item.may_contain = shades;
        item.within = within;
        item.written = name;
        const pasted_names::Match found = match(name);
        if (found.ingredient != nullptr) item.ingredient = found.ingredient->id;
        for (const catalogue::Ingredient* one : found.offered)
            item.offered.push_back(one->id);
        item.exact = found.exact;
        out.items.push_back(std::move(item));
    }

    static bool parts_names(std::string_view text) {
        for (std::size_t i = 0; i < text.size(); ++i)
            if (text[i] == ';' || (text[i] == ',' && !within_number(text, i))) return true;
        return false;
    }
    static bool within_number(std::string_view text, std::size_t comma) {
        return comma > 0 && comma + 1 < text.size() && pasted_text::is_digit(text[comma - 1]) &&
               pasted_text::is_digit(text[comma + 1]);
    }

    // "may contain" in front of a piece begins the colours that only some shades hold.
    std::string_view after_may_contain(std::string_view piece) {
        for (bool again = true; again;) {
            again = false;
            piece = trimmed(piece);
            const std::string low = lowered(piece);
            for (const std::string_view word : kMayContain)
                if (begins(low, word)) {
                    piece.remove_prefix(word.size());
                    while (!piece.empty() && (piece.front() == ':' || piece.front() == ' '))
                        piece.remove_prefix(1);
                    shades = again = true;
                    break;
                }
        }
        return piece;
    }

    void take(std::string_view piece) {
        piece = trimmed(piece);
        if (piece.empty()) return;
        if (deep > kDeepest) return add(piece, true);
        if (is_footnote(piece)) {
            out.aside.push_back(std::string(utf8::start_within(piece, kMostNameBytes)));
            return;
        }
        // The bracket of other shades: "(+/- CI 77491, CI 77492)".
        if (piece.front() == '(') {
            std::string_view inner = piece.substr(1);
            if (!inner.empty() && inner.back() == ')') inner.remove_suffix(1);
            const std::string_view after = after_may_contain(inner);
            if (after.size() != trimmed(inner).size()) return list(after, false);
            return list(inner, true);
        }
        piece = after_may_contain(piece);
        for (std::size_t open = piece.find('('); open != std::string_view::npos;
             open = piece.find('(', open + 1)) {
            std::string_view inner = piece.substr(open + 1);
            if (const std::size_t close = inner.rfind(')'); close != std::string_view::npos)
                inner = inner.substr(0, close);
            // A bracket of other shades that has no comma before it: "Mica (+/- CI 77491)".
            const bool before = shades;
            const std::string_view after = after_may_contain(inner);
            if (after.size() != trimmed(inner).size()) {
                shades = before;
                add(piece.substr(0, open), false);
                shades = true;
                return list(after, false);
            }
            // "Parfum (Limonene, Linalool)", but not "Butyrospermum Parkii (Shea) Butter".
            if (piece.back() == ')' && parts_names(inner)) {
                add(piece.substr(0, open), false);
                return list(inner, true);
            }
        }
        add(piece, false);
    }

    void list(std::string_view text, bool within) {
        deep += 1;
        int depth = 0;
        std::size_t from = 0;
        for (std::size_t i = 0; i <= text.size() && !out.cut; ++i) {
            const char c = i < text.size() ? text[i] : ',';
            if (c == '(') depth += 1;
            if (c == ')' && depth > 0) depth -= 1;
            const bool number = c == ',' && within_number(text, i);
            const bool dot = (c == '\xC2' && i + 1 < text.size() && text[i + 1] == '\xB7') || c == '|';
            const bool part = (c == ',' && !number) || c == ';' || c == pasted_text::kBullet || dot;
            // A bracket that is never closed holds no comma for ever: at the end it is closed.
            const bool end = i == text.size();
            if (!end && (!part || depth > 0)) continue;
            const std::string_view piece = text.substr(from, i - from);
            within ? add(piece, true) : take(piece);
            from = i + (dot && c != '|' ? 2 : 1);
        }
        deep -= 1;
    }
};

}  // namespace

Reading read(std::string_view text, const pasted_names::Matcher& names) {
    Reader reader{names};
    const bool cut = text.size() > kMostBytes;
    if (cut) text = utf8::start_within(text, kMostBytes);
    const std::string level = levelled(text, reader.out.aside);
    const std::size_t from = heading_end(level, reader.out.heading);
    reader.list(std::string_view(level).substr(from), false);
    reader.out.cut = reader.out.cut || cut;
    return std::move(reader.out);
}

Reading read(std::string_view text, const catalogue::Catalogue& catalogue) {
    return read(text, pasted_names::Matcher(catalogue));
}

}  // namespace declaration_read
