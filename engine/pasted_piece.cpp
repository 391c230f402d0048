// See pasted_piece.h. An amount with a unit goes before one without, one outside brackets before one inside,
// percent before others; a number without a unit counts only at an end of the piece, and not where it is part
// of a known name ("Polysorbate 80").
#include "pasted_piece.h"

#include <algorithm>

#include "pasted_text.h"

namespace pasted_piece {
namespace {

using pasted_amount::Number;
using pasted_text::is_letter;
using pasted_text::trimmed;

constexpr std::string_view kJoining[] = {"of",   "de",      "di", "von", "des", "du",
                                         "take", "take of", "rx", "rp",  "ca"};

bool is_mark(char c) {
    return c == ':' || c == '=' || c == '-' || c == ',' || c == ';' || c == '.' || c == '@' || c == '|' ||
           c == '"' || c == '\'' || c == '*' || c == '+' || c == '~' || c == '>' || c == '_' || c == '\x1f' ||
           c == ' ' || c == '\t';
}

// Without marks and joining words at the ends, and without empty brackets.
std::string cleaned(std::string_view text) {
    std::string made(text);
    for (const std::string_view empty : {"()", "[]", "( )", "[ ]"})
        for (auto at = made.find(empty); at != std::string::npos; at = made.find(empty))
            made.erase(at, empty.size());
    std::string_view view = made;
    for (;;) {
        const std::size_t before = view.size();
        while (!view.empty() && is_mark(view.front()))
            view.remove_prefix(1);
        while (!view.empty() && is_mark(view.back()))
            view.remove_suffix(1);
        const std::string low = pasted_text::lowered(view);
        for (const std::string_view word : kJoining)
            if (low.size() > word.size() && low.compare(0, word.size(), word) == 0 &&
                (low[word.size()] == ' ' || low[word.size()] == '.'))
                view.remove_prefix(word.size());
        if (low.rfind("d'", 0) == 0) view.remove_prefix(2);
        if (view.size() >= 2 && view.front() == '(' && view.find(')') == view.size() - 1) {
            view.remove_prefix(1);
            view.remove_suffix(1);
        }
        if (view.size() == before) break;
    }
    return std::string(view);
}

bool has_letter(std::string_view text) {
    return std::any_of(text.begin(), text.end(), is_letter);
}

// A line without end may hold a number at every other byte: what is far from an end is not at it.
constexpr std::size_t kFar = 200;

bool at_start(std::string_view text, const Number& number) {
    return number.start < kFar && cleaned(text.substr(0, number.start)).empty();
}
bool at_end(std::string_view text, const Number& number) {
    if (text.size() - number.end > kFar) return false;
    std::string_view after = trimmed(text.substr(number.end));
    while (!after.empty() && is_mark(after.front()))
        after = trimmed(after.substr(1));
    return after.empty() || (after.front() == '(' && after.find(')') == after.size() - 1);
}

void put_aside(std::string& aside, std::string_view more) {
    const std::string words = cleaned(more);
    if (words.empty()) return;
    if (!aside.empty()) aside += "; ";
    aside += words;
}

const Number* with_unit(const std::vector<Number>& all, bool in_brackets) {
    const Number* best = nullptr;
    const auto worth = [](const Number& number) {
        if (number.rest) return 4;
        if (number.measure->kind == measures::Kind::percent) return 3;
        return number.measure->kind == measures::Kind::vague ? 1 : 2;
    };
    for (const Number& number : all) {
        if (number.in_brackets != in_brackets || (!number.measure && !number.rest)) continue;
        if (!best || worth(number) > worth(*best)) best = &number;
    }
    return best;
}

const Number* without_unit(std::string_view text, const std::vector<Number>& all, Lean lean,
                           const pasted_names::Matcher& matcher) {
    const Number *first = nullptr, *last = nullptr;
    for (const Number& number : all) {
        if (number.measure || number.in_brackets) continue;
        if (at_start(text, number)) first = first ? first : &number;
        if (at_end(text, number)) last = &number;
    }
    if (first && last && first != last) {
        const bool named = matcher.match(cleaned(text.substr(first->end))).exact;
        if (lean == Lean::first || (lean == Lean::unknown && named)) last = nullptr;
    }
    if (last && last != first && matcher.match(cleaned(text)).exact) return first;  // "Polysorbate 80"
    return last ? last : first;
}

}  // namespace

Piece read(std::string_view text, Lean lean, const pasted_names::Matcher& matcher) {
    Piece piece;
    const pasted_amount::Numbers numbers = pasted_amount::in(text);
    piece.other = numbers.other;
    const Number* chosen = with_unit(numbers.all, false);
    if (!chosen) chosen = without_unit(text, numbers.all, lean, matcher);
    if (!chosen) chosen = with_unit(numbers.all, true);
    if (!chosen && numbers.all.size() == 1 && numbers.all[0].in_brackets && at_end(text, numbers.all[0]))
        chosen = &numbers.all[0];

    std::optional<pasted_amount::Place> rest;
    if (!chosen || !chosen->rest) {
        rest = pasted_amount::rest_word(text);
        if (rest &&
            cleaned(std::string(text.substr(0, rest->start)) + std::string(text.substr(rest->end))).empty() &&
            numbers.all.empty() && text.size() > 12)
            rest.reset();
    }
    if (rest) {
        piece.rest_word = true;
        if (chosen) put_aside(piece.aside, text.substr(chosen->start, chosen->end - chosen->start));
        std::string without(text);
        if (chosen)
            without.replace(chosen->start, chosen->end - chosen->start, chosen->end - chosen->start, ' ');
        without.replace(rest->start, rest->end - rest->start, rest->end - rest->start, ' ');
        piece.name = cleaned(without);
        return piece;
    }
    if (!chosen) {
        piece.name = cleaned(text);
        for (const Number& number : numbers.all) {
            const std::string after = cleaned(text.substr(number.end));
            if (number.measure || number.in_brackets || after.empty() || after.find(' ') != std::string::npos)
                continue;
            piece.unknown_unit = after;
            piece.unknown_at = number.end;
        }
        return piece;
    }
    piece.amount = *chosen;
    const std::string_view before = text.substr(0, chosen->start), after = text.substr(chosen->end);
    const std::string left = cleaned(before), right = cleaned(after);
    const std::string low = pasted_text::lowered(left);
    const bool joins = std::find(std::begin(kJoining), std::end(kJoining), low) != std::end(kJoining);
    if (!has_letter(left) || joins)
        piece.name = right;
    else if (!has_letter(right) || chosen->in_brackets)
        piece.name = cleaned(std::string(before) + std::string(after));
    else if (matcher.match(left + " " + right).exact)
        piece.name = left + " " + right;
    else {
        piece.name = left;
        put_aside(piece.aside, right);
    }
    return piece;
}

Lean lean_of(std::string_view text) {
    const pasted_amount::Numbers numbers = pasted_amount::in(text);
    if (numbers.all.size() != 1 || numbers.other) return Lean::unknown;
    const Number& number = numbers.all[0];
    const bool first = at_start(text, number), last = at_end(text, number);
    return first == last ? Lean::unknown : first ? Lean::first : Lean::last;
}

}  // namespace pasted_piece
