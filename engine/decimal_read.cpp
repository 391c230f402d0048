// Numbers and plain arithmetic as people type them, read exactly into a fraction and rounded once.
// Works on code points, so that "character N" counts what a person sees (bytes that are no UTF-8 count one
// each). Besides ASCII it knows the minus sign, thin and no-break spaces, vulgar fractions, and the
// full-width digits and signs of East Asian keyboards; other scripts' digits are refused. "1,234" is 1.234:
// one sign is the decimal sign.
#include <cstddef>
#include <optional>

#include "decimal.h"
#include "utf8.h"

namespace decimal {
namespace {

using result::Code;
using result::Error;
using Text = std::vector<char32_t>;

__extension__ typedef __int128 Wide;

constexpr char32_t kDamaged = 0xFFFD;
constexpr std::int64_t kMostWhole = kLargest / kOne;
constexpr int kMostNesting = 40;
constexpr std::size_t kMostShown = 40;  // characters of the text that an error repeats

Text code_points(std::string_view bytes) {
    Text text;
    for (std::size_t at = 0; at < bytes.size();) {
        const std::size_t length = utf8::length_at(bytes, at);
        const auto first = static_cast<unsigned char>(bytes[at]);
        char32_t point = length == 0 ? kDamaged : length == 1 ? first : first & (0x7FU >> length);
        for (std::size_t i = 1; i < length; ++i)
            point = point << 6 | (static_cast<unsigned char>(bytes[at + i]) & 0x3FU);
        text.push_back(point);
        at += length == 0 ? 1 : length;
    }
    return text;
}

// What an error may repeat of the text: short, on one line, always valid UTF-8.
std::string shown(std::string_view bytes) {
    std::string out;
    std::size_t count = 0;
    for (std::size_t at = 0; at < bytes.size(); ++count) {
        if (count == kMostShown) return out + "…";
        const std::size_t length = utf8::length_at(bytes, at);
        const auto first = static_cast<unsigned char>(bytes[at]);
        const bool control =
            first < 0x20 || first == 0x7F ||
            (first == 0xC2 && length == 2 && static_cast<unsigned char>(bytes[at + 1]) < 0xA0);
        if (length == 0 || control)
            out += "\xEF\xBF\xBD";
        else
            out += bytes.substr(at, length);
        at += length == 0 ? 1 : length;
    }
    return out;
}

bool is_group_space(char32_t c) {
    return c == ' ' || c == 0xA0 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F || c == 0x205F || c == 0x3000;
}
bool is_space(char32_t c) {
    return is_group_space(c) || c == '\t' || c == '\n' || c == '\r';
}
bool is_apostrophe(char32_t c) {
    return c == '\'' || c == 0x2019;
}
bool is_decimal_sign(char32_t c) {
    return c == '.' || c == ',' || c == 0xFF0E || c == 0xFF0C;
}
bool is_plus(char32_t c) {
    return c == '+' || c == 0xFF0B;
}
bool is_minus(char32_t c) {
    return c == '-' || c == 0x2212 || c == 0xFF0D;
}
bool is_slash(char32_t c) {
    return c == '/' || c == 0x2044 || c == 0x2215;
}
int digit(char32_t c) {
    if (c >= '0' && c <= '9') return static_cast<int>(c - '0');
    if (c >= 0xFF10 && c <= 0xFF19) return static_cast<int>(c - 0xFF10);
    return -1;
}

struct Fraction {
    std::int64_t top = 0, bottom = 1;  // bottom > 0, in lowest terms, both under 2^62
};

std::optional<Fraction> vulgar(char32_t c) {
    static constexpr struct {
        char32_t c;
        int top, bottom;
    } kKnown[] = {{0xBC, 1, 4},    {0xBD, 1, 2},   {0xBE, 3, 4},   {0x2150, 1, 7}, {0x2151, 1, 9},
                  {0x2152, 1, 10}, {0x2153, 1, 3}, {0x2154, 2, 3}, {0x2155, 1, 5}, {0x2156, 2, 5},
                  {0x2157, 3, 5},  {0x2158, 4, 5}, {0x2159, 1, 6}, {0x215A, 5, 6}, {0x215B, 1, 8},
                  {0x215C, 3, 8},  {0x215D, 5, 8}, {0x215E, 7, 8}};
    for (const auto& known : kKnown)
        if (known.c == c) return Fraction{known.top, known.bottom};
    return std::nullopt;
}

Wide common_divisor(Wide a, Wide b) {
    while (b != 0) {
        const Wide rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

class Reader {
  public:
    explicit Reader(std::string_view bytes) : bytes_(bytes), text_(code_points(bytes)) {}

    result::Result<std::int64_t> one_number() {
        if (only_spaces()) return fault(Code::number_empty, 0);
        skip_spaces();
        const bool negative = sign();
        Fraction value = number();
        if (!error_ && plain_whole_) {
            const std::size_t before = at_;
            skip_spaces();
            if (is_slash(peek())) {
                at_ += 1;
                skip_spaces();
                value = combined('/', value, Fraction{digits(), 1});
            } else {
                at_ = before;
            }
        }
        return finished(negative, value);
    }

    result::Result<std::int64_t> arithmetic() {
        if (only_spaces()) return fault(Code::number_empty, 0);
        const Fraction value = sum(0);
        return finished(false, value);
    }

  private:
    char32_t peek(std::size_t ahead = 0) const {
        // A character that means nothing here stands for the end, so that nothing reads past it.
        return at_ + ahead < text_.size() ? text_[at_ + ahead] : kDamaged;
    }
    void skip_spaces() {
        while (at_ < text_.size() && is_space(text_[at_]))
            at_ += 1;
    }
    bool only_spaces() {
        skip_spaces();
        const bool only = at_ == text_.size();
        at_ = 0;
        return only;
    }
    Error fault(Code code, std::size_t at) const {
        return {code, "character " + std::to_string(at + 1), shown(bytes_)};
    }
    Fraction fail(Code code, std::size_t at) {  // the first fault of form stays
        if (!error_) error_ = fault(code, at);
        return {};
    }
    void remark(Code code,
                std::size_t at) {  // well formed, but not a number that is kept: said when all is read
        if (!remark_) remark_ = fault(code, at);
    }

    bool sign() {
        const bool negative = is_minus(peek());
        if (negative || is_plus(peek())) at_ += 1;
        return negative;
    }

    std::size_t digits_ahead(std::size_t ahead) const {
        std::size_t count = 0;
        while (digit(peek(ahead + count)) >= 0)
            count += 1;
        return count;
    }

    // Reads a run of digits; one beyond what is kept is remarked on and stops growing.
    std::int64_t digits(std::int64_t value = 0) {
        if (digit(peek()) < 0) {
            fail(Code::number_malformed, at_);
            return 0;
        }
        for (; digit(peek()) >= 0; ++at_) {
            value = value * 10 + digit(peek());
            if (value > kMostWhole) {
                remark(Code::number_too_large, at_);
                value = kMostWhole;
            }
        }
        return value;
    }

    // An unsigned number: groups of three, decimals, a fraction character, or a whole and a fraction ("1
    // 1/2").
    Fraction number() {
        plain_whole_ = false;
        if (const auto fraction = vulgar(peek())) {
            at_ += 1;
            return *fraction;
        }
        Fraction value;
        const std::size_t start = at_;
        if (!is_decimal_sign(peek())) {
            value.top = digits();
            if (error_) return {};
            groups(value.top, at_ - start);
            if (error_) return {};
        }
        if (is_decimal_sign(peek())) return decimals(value.top, at_ > start);
        return with_fraction(value);
    }

    void groups(std::int64_t& whole, std::size_t leading) {
        if (leading > 3) return;
        while ((is_group_space(peek()) || is_apostrophe(peek())) && digits_ahead(1) == 3) {
            std::size_t after = 4;
            while (is_space(peek(after)))
                after += 1;
            if (is_group_space(peek()) && is_slash(peek(after))) {
                fail(Code::number_ambiguous, at_);  // "1 234/5": 1 and 234/5, or 1234/5
                return;
            }
            at_ += 1;
            whole = digits(whole);
        }
    }

    Fraction decimals(std::int64_t whole, bool had_digits) {
        at_ += 1;
        const std::size_t count = digits_ahead(0);
        if (is_decimal_sign(peek(count)))
            return fail(count == 0 ? Code::number_malformed : Code::number_ambiguous, at_ + count);
        if (count == 0 && !had_digits) return fail(Code::number_malformed, at_);
        std::int64_t part = 0, step = kOne;
        for (std::size_t i = 0; i < count; ++i, ++at_) {
            if (step > 1) {
                step /= 10;
                part += step * digit(peek());
            } else if (digit(peek()) != 0) {
                remark(Code::number_too_fine, at_);
            }
        }
        return lowest(static_cast<Wide>(whole) * kOne + part, kOne);
    }

    Fraction with_fraction(Fraction whole) {
        std::size_t spaces = 0;
        while (is_group_space(peek(spaces)))
            spaces += 1;
        if (const auto fraction = vulgar(peek(spaces))) {
            at_ += spaces + 1;
            return combined('+', whole, *fraction);
        }
        const std::size_t count = spaces > 0 ? digits_ahead(spaces) : 0;
        std::size_t slash = spaces + count;
        while (count > 0 && is_group_space(peek(slash)))
            slash += 1;
        if (count == 0 || !is_slash(peek(slash))) {
            plain_whole_ = true;
            return whole;
        }
        at_ += spaces;
        const std::size_t start = at_;
        const std::int64_t top = digits();
        skip_spaces();
        at_ += 1;
        skip_spaces();
        const std::size_t below = at_;
        const std::int64_t bottom = digits();
        if (error_) return {};
        if (bottom == 0) return fail(Code::division_by_zero, below);
        if (top >= bottom) return fail(Code::number_malformed, start);  // "1 3/2": more likely a slip
        return combined('+', whole, combined('/', Fraction{top, 1}, Fraction{bottom, 1}));
    }

    Fraction lowest(Wide top, Wide bottom) {
        const Wide divisor = common_divisor(top < 0 ? -top : top, bottom);
        top /= divisor;
        bottom /= divisor;
        constexpr Wide kRoom = static_cast<Wide>(1) << 62;
        if (top > kRoom || top < -kRoom || bottom > kRoom) {
            remark(Code::number_too_large, at_ == 0 ? 0 : at_ - 1);
            return {};
        }
        return {static_cast<std::int64_t>(top), static_cast<std::int64_t>(bottom)};
    }

    Fraction combined(char32_t how, Fraction a, Fraction b) {
        if (error_) return {};
        const Wide top = a.top, bottom = a.bottom;
        if (how == '+') return lowest(top * b.bottom + bottom * b.top, bottom * b.bottom);
        if (how == '-') return lowest(top * b.bottom - bottom * b.top, bottom * b.bottom);
        if (how == '*') return lowest(top * b.top, bottom * b.bottom);
        if (b.top == 0) return fail(remark_ ? remark_->code : Code::division_by_zero, at_ == 0 ? 0 : at_ - 1);
        if (b.top < 0) return lowest(-top * b.bottom, -bottom * b.top);
        return lowest(top * b.bottom, bottom * b.top);
    }

    Fraction sum(int nesting) {
        skip_spaces();
        const bool negative = sign();
        Fraction value = product(nesting);
        if (negative) value.top = -value.top;
        for (skip_spaces(); !error_ && (is_plus(peek()) || is_minus(peek())); skip_spaces()) {
            const char32_t how = is_plus(peek()) ? '+' : '-';
            at_ += 1;
            value = combined(how, value, product(nesting));
        }
        return value;
    }

    Fraction product(int nesting) {
        Fraction value = factor(nesting);
        for (skip_spaces(); !error_; skip_spaces()) {
            const char32_t c = peek();
            if (c != '*' && c != 0xD7 && c != 0xF7 && !is_slash(c)) return value;
            at_ += 1;
            value = combined(c == '*' || c == 0xD7 ? '*' : '/', value, factor(nesting));
        }
        return value;
    }

    Fraction factor(int nesting) {
        skip_spaces();
        if (peek() != '(') return number();
        if (nesting == kMostNesting) return fail(Code::number_malformed, at_);
        at_ += 1;
        const Fraction value = sum(nesting + 1);
        if (!error_ && peek() != ')') return fail(Code::number_malformed, at_);
        at_ += 1;
        return value;
    }

    result::Result<std::int64_t> finished(bool negative, Fraction value) {
        skip_spaces();
        if (!error_ && at_ < text_.size()) fail(Code::number_malformed, at_);
        if (error_) return *error_;
        if (remark_) return *remark_;
        const std::int64_t grid = scale_nearest(negative ? -value.top : value.top, kOne, value.bottom);
        if (grid > kLargest || grid < -kLargest) return fault(Code::number_too_large, 0);
        return grid;
    }

    std::string_view bytes_;
    Text text_;
    std::size_t at_ = 0;
    bool plain_whole_ = false;  // the number read last was digits only: a slash may follow
    std::optional<Error> error_, remark_;
};

}  // namespace

result::Result<std::int64_t> read(std::string_view text) {
    return Reader(text).one_number();
}

result::Result<std::int64_t> calculate(std::string_view text) {
    return Reader(text).arithmetic();
}

}  // namespace decimal
