// See pasted_amount.h. The numeral itself is read by decimal; here is decided where it begins and ends and
// what stands around it. "1 500" with a plain space is refused: it may be one number or two.
#include "pasted_amount.h"

#include <algorithm>
#include <array>

#include "decimal.h"
#include "pasted_text.h"

namespace pasted_amount {
namespace {

using pasted::Code;
using pasted_text::is_digit;
using pasted_text::is_letter;

constexpr std::string_view kUpTo[] = {"ad",    "to",    "bis", "auf", "hasta", "at\xC3\xA9", "jusqu'\xC3\xA0",
                                      "tot",   "till",  "til", "qs",  "q.s",   "q.s.p",      "qsp",
                                      "csp",   "c.s.p", "qb",  "q.b", "cs",    "c.s",        "up to",
                                      "fino a"};
constexpr std::string_view kBeside[] = {"a",    "\xC3\xA0", "do",         "make", "up",  "enough",   "made",
                                        "rest", "balance",  "sufficient", "p/p",  "the", "remainder"};
constexpr std::string_view kAbout[] = {"ca",     "approx", "approximately", "about", "circa",
                                       "around", "etwa",   "environ",       "env",   "roughly"};
constexpr std::string_view kOtherUnits[] = {
    "c",       "f",    "deg",   "degree",  "degrees", "min",    "mins",  "minute",  "minutes",
    "minuten", "h",    "hr",    "hrs",     "hour",    "hours",  "std",   "stunden", "sec",
    "seconds", "day",  "days",  "tage",    "week",    "weeks",  "month", "months",  "year",
    "years",   "rpm",  "cm",    "mm",      "inch",    "inches", "grad",  "heures",  "jours",
    "tins",    "jars", "tubes", "bottles", "pots",    "bars",   "people"};
constexpr std::string_view kRest[] = {
    "q.s.p.",      "q.s.p",    "qsp",       "c.s.p.",        "csp",           "q.s.",
    "q. s.",       "q.s",      "qs",        "q.b.",          "q.b",           "qb",
    "rest",        "the rest", "remainder", "the remainder", "balance",       "restmenge",
    "reste",       "resto",    "remaining", "as needed",     "quantum satis", "quantum sufficit",
    "as required", "s.q."};

std::size_t vulgar_at(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) {
        return at + i < text.size() ? static_cast<unsigned char>(text[at + i]) : 0U;
    };
    if (byte(0) == 0xC2 && byte(1) >= 0xBC && byte(1) <= 0xBE) return 2;
    if (byte(0) == 0xE2 && byte(1) == 0x85 && byte(2) >= 0x90 && byte(2) <= 0x9E) return 3;
    return 0;
}
bool ends_in_vulgar(std::string_view text) {
    return (text.size() >= 2 && vulgar_at(text, text.size() - 2) == 2) ||
           (text.size() >= 3 && vulgar_at(text, text.size() - 3) == 3);
}
bool in_word(char c) {
    return is_letter(c) || is_digit(c);
}
bool is_sign(char c) {
    return c == '.' || c == ',';
}

class Scanner {
  public:
    explicit Scanner(std::string_view text) : text_(text) {}

    Numbers scan() {
        std::size_t depth = 0;
        for (std::size_t i = 0; i < text_.size();) {
            if (text_[i] == '(' || text_[i] == '[') depth += 1;
            if ((text_[i] == ')' || text_[i] == ']') && depth > 0) depth -= 1;
            if (const auto spoken = in_words(i)) {
                i = spoken->end;
                found_.all.push_back(*spoken);
                found_.all.back().in_brackets = depth > 0;
                continue;
            }
            if (!starts_numeral(i)) {
                i += 1;
                continue;
            }
            const std::size_t end = numeral_end(i);
            if (belongs_to_name(i, end)) {
                i = end;
                while (i < text_.size() && in_word(text_[i]) && vulgar_at(text_, i) == 0)
                    i += 1;
                continue;
            }
            Number number = amount(i, end);
            number.in_brackets = depth > 0;
            i = std::max(number.end, end);
            if (other_) {
                found_.other = true;
                other_ = false;
            } else {
                found_.all.push_back(std::move(number));
            }
        }
        return std::move(found_);
    }

  private:
    char at(std::size_t i) const { return i < text_.size() ? text_[i] : '\0'; }
    std::size_t after_spaces(std::size_t i) const {
        while (at(i) == ' ')
            i += 1;
        return i;
    }
    std::size_t digits_from(std::size_t i) const {
        while (is_digit(at(i)))
            i += 1;
        return i;
    }

    bool starts_numeral(std::size_t i) const {
        if (is_digit(at(i)) || vulgar_at(text_, i) > 0) return true;
        return is_sign(at(i)) && is_digit(at(i + 1)) && (i == 0 || !in_word(at(i - 1)));
    }

    // "a pinch", "a teaspoon", "a few drops": one of it, or nobody knows how many.
    std::optional<Number> in_words(std::size_t i) const {
        if (i > 0 && in_word(at(i - 1))) return std::nullopt;
        for (const std::string_view article : {"a few ", "few ", "some ", "an ", "a ", "one "}) {
            if (pasted_text::lowered(text_.substr(i, article.size())) != article) continue;
            const std::size_t from = after_spaces(i + article.size());
            const measures::Found found = measures::at_start(text_.substr(std::min(from, text_.size())));
            if (!found.measure || found.bytes < 3) continue;
            Number number;
            number.start = i;
            number.end = from + found.bytes;
            number.measure = found.measure;
            number.value = {decimal::kOne, decimal::kOne, decimal::kOne};
            if (article != "an " && article != "a " && article != "one ") {
                number.fault = Code::amount_vague;
                number.detail = std::string(text_.substr(i, number.end - i));
                number.fault_at = i;
            }
            return number;
        }
        return std::nullopt;
    }

    std::size_t numeral_end(std::size_t i) {
        spaced_group_ = 0;
        if (const std::size_t vulgar = vulgar_at(text_, i)) return i + vulgar;
        std::size_t end = digits_from(i);
        const std::size_t whole = end - i;
        while (at(end) == '\'' && digits_from(end + 1) == end + 4)
            end += 4;
        if (whole >= 1 && whole <= 3 && at(end) == ' ' && digits_from(end + 1) == end + 4)
            spaced_group_ = end;
        bool decimals = false;
        while (is_sign(at(end)) && is_digit(at(end + 1))) {
            end = digits_from(end + 1);
            decimals = true;
        }
        if (decimals) return end;
        const std::size_t next = after_spaces(end);
        if (const std::size_t vulgar = vulgar_at(text_, next)) return next + vulgar;
        if (next > end) {  // "1 1/2"
            const std::size_t top = digits_from(next);
            if (top > next && at(top) == '/' && is_digit(at(top + 1))) return digits_from(top + 1);
        }
        if (at(end) == '/' && is_digit(at(end + 1))) return digits_from(end + 1);
        return end;
    }

    // PEG-40, polyglyceryl-3, B5, 3rd, #7
    bool belongs_to_name(std::size_t i, std::size_t end) const {
        if (i > 0 && (is_letter(at(i - 1)) || at(i - 1) == '_' || at(i - 1) == '#') &&
            !ends_in_vulgar(text_.substr(0, i)))
            return true;
        const bool glued = is_letter(at(end)) && measures::at_start(text_.substr(end)).bytes == 0 &&
                           !times_sign(end) && other_unit(end) == end && vulgar_at(text_, end) == 0;
        if (glued) return true;
        const bool hyphened = i > 1 && at(i - 1) == '-' && in_word(at(i - 2));
        if (hyphened && measures::at_start(text_.substr(after_spaces(end))).bytes == 0) return true;
        return at(end) == '-' && is_letter(at(end + 1)) &&
               measures::at_start(text_.substr(end + 1)).bytes == 0;
    }

    bool times_sign(std::size_t i) const {
        const std::size_t sign = after_spaces(i);
        const char c = at(sign);
        if (c != 'x' && c != 'X' && c != '*') return false;
        const std::size_t next = after_spaces(sign + 1);
        return is_digit(at(next)) || vulgar_at(text_, next) > 0;
    }

    // Where a unit that is no amount ends: "°C", "min"; `i` when there is none.
    std::size_t other_unit(std::size_t i) const {
        if (text_.substr(i, 2) == "\xC2\xB0") return i + 2;
        if (text_.substr(i, 3) == "\xE2\x84\x83" || text_.substr(i, 3) == "\xE2\x84\x89") return i + 3;
        std::size_t end = i;
        while (is_letter(at(end)))
            end += 1;
        const std::string word = pasted_text::lowered(text_.substr(i, end - i));
        for (const std::string_view unit : kOtherUnits)
            if (word == unit) return end;
        return i;
    }

    measures::Span read(std::size_t start, std::size_t end, Number& number) {
        const auto value = decimal::read(text_.substr(start, end - start));
        if (spaced_group_ != 0 && !number.fault) {
            number.fault = Code::number_unclear;
            const std::size_t group_end = digits_from(spaced_group_ + 1);
            number.detail = std::string(text_.substr(start, group_end - start));
            number.fault_at = spaced_group_;
        }
        if (!value) {
            using C = result::Code;
            const C code = value.error().code;
            number.fault = code == C::number_too_fine    ? Code::number_too_fine
                           : code == C::number_too_large ? Code::number_too_large
                                                         : Code::number_unclear;
            number.detail = std::string(text_.substr(start, std::min<std::size_t>(end - start, 40)));
            std::size_t offset = 0;  // "character N" of decimal, all ASCII but a vulgar fraction at the end
            for (const char c : value.error().place)
                if (is_digit(c))
                    offset = std::min<std::size_t>(offset * 10 + static_cast<std::size_t>(c - '0'), 1000);
            number.fault_at = std::min(start + (offset > 0 ? offset - 1 : 0), end - 1);
            return {};
        }
        return {*value, *value, *value};
    }

    // Takes the unit at `i` (spaces and brackets around it allowed); where it ends.
    std::size_t unit(std::size_t i, Number& number) {
        const std::size_t next = after_spaces(i);
        const bool bracket = at(next) == '(';
        const std::size_t from = bracket ? after_spaces(next + 1) : next;
        const measures::Found found = measures::at_start(text_.substr(std::min(from, text_.size())));
        if (found.measure == nullptr) return i;
        const std::size_t end = from + found.bytes;
        if (bracket && at(after_spaces(end)) != ')') return i;
        number.measure = found.measure;
        return bracket ? after_spaces(end) + 1 : end;
    }

    static void multiply(measures::Span& value, const measures::Span& by) {
        const auto times = [](std::int64_t a, std::int64_t b) {
            return std::clamp<std::int64_t>(decimal::scale_nearest(a, b, decimal::kOne), 0,
                                            decimal::kLargest);
        };
        value = {times(value.low, by.low), times(value.usual, by.usual), times(value.high, by.high)};
    }

    Number amount(std::size_t start, std::size_t end) {
        Number number;
        number.start = start;
        number.value = read(start, end, number);
        if (spaced_group_ != 0) end = digits_from(spaced_group_ + 1);
        std::size_t after = unit(end, number);
        if (number.measure == nullptr) {
            const std::size_t next = after_spaces(after);
            if (other_unit(next) != next) {
                other_ = true;
                number.end = other_unit(next);
                return number;
            }
        }
        if (times_sign(after)) {
            const std::size_t next = after_spaces(after_spaces(after) + 1);
            const std::size_t last = numeral_end(next);
            multiply(number.value, read(next, last, number));
            after = number.measure != nullptr ? last : unit(last, number);
        } else {
            after = range(after, number);
        }
        number.end = after;
        before(number);
        return number;
    }

    // "5-10 drops", "5 g to 10 g": the middle, with both ends.
    std::size_t range(std::size_t i, Number& number) {
        std::size_t next = after_spaces(i);
        bool said = at(next) == '-';
        if (said) next += 1;
        for (const std::string_view word : {"to ", "bis ", "a ", "\xC3\xA0 "})
            if (!said && next > i && text_.substr(next, word.size()) == word) {
                said = true;
                next += word.size();
            }
        next = after_spaces(next);
        if (!said || !starts_numeral(next) || is_sign(at(next))) return i;
        const std::size_t last = numeral_end(next);
        Number second;
        const measures::Span to = read(next, last, second);
        const std::size_t end = unit(last, second);
        const bool fits = !second.fault && !number.fault && to.usual > number.value.usual &&
                          (number.measure == nullptr || second.measure == number.measure);
        if (!fits || (second.measure == nullptr && pasted_text::trimmed(text_.substr(end)).size() > 0 &&
                      pasted_text::trimmed(text_.substr(0, number.start)).size() > 0))
            return i;
        const std::int64_t from = number.value.usual;
        number.value = {from, from + (to.usual - from) / 2, to.usual};
        number.measure = second.measure;
        number.range = true;
        return end;
    }

    // The last word of text_[0, end), in small letters without a full stop at its end; where it begins.
    std::string word_before(std::size_t end, std::size_t& begin) const {
        while (end > 0 && at(end - 1) == ' ')
            end -= 1;
        begin = end;
        while (begin > 0 && (in_word(at(begin - 1)) || at(begin - 1) == '.' || at(begin - 1) == '\'' ||
                             at(begin - 1) == '/'))
            begin -= 1;
        std::string word = pasted_text::lowered(text_.substr(begin, end - begin));
        while (!word.empty() && word.back() == '.')
            word.pop_back();
        return word;
    }

    // What stands before the number and belongs to it: "%", "ca.", "~", "q.s. ad".
    void before(Number& number) {
        std::size_t start = number.start;
        while (start > 0 && at(start - 1) == ' ')
            start -= 1;
        if (start > 0 && at(start - 1) == '%' && number.measure == nullptr &&
            (start < 2 || !is_digit(at(start - 2)))) {
            number.measure = measures::find("percent");
            number.start = start - 1;
            return;
        }
        if (start > 0 && at(start - 1) == '~') {
            number.start = start - 1;
            return;
        }
        bool strong = false;
        std::size_t from = number.start;
        for (;;) {
            std::size_t begin = 0;
            const std::string word = word_before(from, begin);
            if (word.empty()) break;
            const auto is = [&](const auto& list) {
                return std::find(std::begin(list), std::end(list), word) != std::end(list);
            };
            if (!strong && is(kAbout)) {
                number.start = begin;
                return;
            }
            const bool up_to = is(kUpTo);
            if (!up_to && !is(kBeside)) break;
            strong = strong || up_to;
            from = begin;
        }
        if (from == number.start) return;
        const bool hundred = number.value.usual == 100 * decimal::kOne;
        std::size_t begin = 0;
        const std::string next_to = word_before(number.start, begin);
        if (!strong && !(hundred && (next_to == "a" || next_to == "\xC3\xA0" || next_to == "do"))) return;
        number.start = from;
        const bool of_whole = number.measure == nullptr || number.measure->kind == measures::Kind::percent;
        number.range = of_whole && number.value.usual <= 20 * decimal::kOne;  // "up to 2 %": a limit
        number.rest = !number.range;
    }

    std::string_view text_;
    Numbers found_;
    bool other_ = false;
    std::size_t spaced_group_ = 0;  // where a plain space stands before three more digits
};

}  // namespace

Numbers in(std::string_view text) {
    return Scanner(text).scan();
}

std::optional<Place> rest_word(std::string_view text) {
    const std::string low = pasted_text::lowered(text);
    std::optional<Place> best;
    for (const std::string_view word : kRest)
        for (std::size_t at = low.find(word); at != std::string::npos; at = low.find(word, at + 1)) {
            const std::size_t end = at + word.size();
            if (at > 0 && (in_word(low[at - 1]) || low[at - 1] == '.')) continue;
            if (end < low.size() && in_word(low[end])) continue;
            const auto before = pasted_text::trimmed(std::string_view(low).substr(0, at));
            const auto after = pasted_text::trimmed(std::string_view(low).substr(end));
            const bool first = before.empty() || before.back() == '(' || before.back() == '[';
            const bool last = after.empty() || after == "." || after.front() == ')' || after.front() == ']' ||
                              after.front() == '(';
            if (!first && !last) continue;
            if (!best || end - at > best->end - best->start) best = Place{at, end};
        }
    return best;
}

}  // namespace pasted_amount
