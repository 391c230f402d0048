// See pasted_text.h. Full-width signs become their ASCII twins, dashes "-", multiplication signs "*",
// fraction slashes "/"; a number in a keycap is a bullet. Bytes that are no UTF-8 show as U+FFFD.
#include "pasted_text.h"

#include "utf8.h"

namespace pasted_text {
namespace {

constexpr char32_t kDamaged = 0xFFFD;
constexpr char kHardSpace = '\x1e';  // within a number it groups digits, elsewhere it is a space

char32_t point_at(std::string_view bytes, std::size_t at, std::size_t length) {
    const auto first = static_cast<unsigned char>(bytes[at]);
    if (length == 0) return kDamaged;
    char32_t point = length == 1 ? first : first & (0x7FU >> length);
    for (std::size_t i = 1; i < length; ++i)
        point = point << 6 | (static_cast<unsigned char>(bytes[at + i]) & 0x3FU);
    return point;
}

bool breaks_line(char32_t c) {
    return c == '\n' || c == '\r' || c == 0x0B || c == 0x0C || c == 0x85 || c == 0x2028 || c == 0x2029;
}
bool is_space(char32_t c) {
    return c == 0xA0 || c == 0x1680 || (c >= 0x2000 && c <= 0x200A) || c == 0x202F || c == 0x205F ||
           c == 0x3000;
}
bool is_nothing(char32_t c) {  // joiners, direction marks, variation selectors, soft hyphen
    return c == 0xAD || (c >= 0x200B && c <= 0x200F) || (c >= 0x202A && c <= 0x202E) || c == 0x2060 ||
           (c >= 0x2066 && c <= 0x2069) || c == 0xFEFF || (c >= 0xFE00 && c <= 0xFE0F) ||
           (c >= 0xE0000 && c <= 0xE01EF);
}
bool is_picture(char32_t c) {
    return (c >= 0x2300 && c <= 0x23FF) || (c >= 0x2600 && c <= 0x27BF) || (c >= 0x2B00 && c <= 0x2BFF) ||
           (c >= 0x1F000 && c <= 0x1FAFF) || c == 0x2122 || c == 0xAE || c == 0xA9;
}
bool is_bullet(char32_t c) {
    return c == 0x2022 || c == 0x2023 || c == 0x2043 || c == 0x25CF || c == 0x25CB || c == 0x25E6 ||
           (c >= 0x25A0 && c <= 0x25C9) || c == 0x2219 || c == 0x2027 || c == 0xB7 || c == 0x30FB;
}

// What a character means here, as ASCII; 0 to leave it as it is, ' ' to make it a space.
char meaning(char32_t c) {
    if (c >= 0xFF01 && c <= 0xFF5E) return static_cast<char>(c - 0xFF01 + 0x21);
    if ((c >= 0x2010 && c <= 0x2015) || c == 0x2212) return '-';
    if (c == 0x2044 || c == 0x2215) return '/';
    if (c == 0xD7 || c == 0x2715 || c == 0x2716) return '*';
    if (c == 0x2018 || c == 0x2019 || c == 0xB4) return '\'';
    if (c == 0x201C || c == 0x201D || c == 0x201E || c == 0xAB || c == 0xBB) return '"';
    if (c == 0x2248 || c == 0x223C) return '~';
    if (c == 0x2502 || c == 0xA6) return '|';
    if (c == 0x3001) return ',';
    if (c == 0x2026) return '.';
    if (is_space(c)) return kHardSpace;
    if (is_picture(c) || (c < 0x20 && c != '\t') || c == 0x7F || (c > 0x7F && c < 0xA0)) return ' ';
    if (is_bullet(c)) return kBullet;
    return 0;
}

void add(Line& line, std::string_view bytes, std::uint32_t column) {
    line.text += bytes;
    line.columns.insert(line.columns.end(), bytes.size(), column);
}
void settle_spaces(std::string& text) {
    const auto digits_after = [&](std::size_t at) {
        std::size_t count = 0;
        while (at + 1 + count < text.size() && is_digit(text[at + 1 + count]))
            count += 1;
        return count;
    };
    for (std::size_t i = 0; i + 1 < text.size(); ++i)  // bold print of plain text: ** and __
        if ((text[i] == '*' || text[i] == '_') && text[i + 1] == text[i]) text[i] = text[i + 1] = ' ';
    for (std::size_t i = 0; i < text.size(); ++i)
        if (text[i] == kHardSpace)
            text[i] = i > 0 && is_digit(text[i - 1]) && digits_after(i) == 3 ? '\'' : ' ';
}
void drop_last(Line& line) {
    line.text.pop_back();
    line.columns.pop_back();
}

}  // namespace

std::vector<Line> lines_of(std::string_view bytes) {
    std::vector<Line> lines;
    Line line;
    line.number = 1;
    std::uint32_t column = 0;
    const auto finish = [&] {
        line.raw = std::string(trimmed(line.raw));
        settle_spaces(line.text);
        if (!trimmed(line.text).empty()) lines.push_back(line);
        const std::size_t next = line.number + 1;
        line = {};
        line.number = next;
        column = 0;
    };
    for (std::size_t at = 0; at < bytes.size();) {
        const std::size_t length = utf8::length_at(bytes, at);
        const char32_t c = point_at(bytes, at, length);
        const std::string_view here = bytes.substr(at, length == 0 ? 1 : length);
        at += here.size();
        if (breaks_line(c)) {
            if (c == '\r' && at < bytes.size() && bytes[at] == '\n') at += 1;
            finish();
            continue;
        }
        column += 1;
        if (length == 0 || (c < 0x20 && c != '\t') || (c >= 0x7F && c < 0xA0))
            line.raw += "\xEF\xBF\xBD";
        else
            line.raw += here;
        if (c == 0x20E3) {  // a keycap: the digit before it numbers the line
            while (!line.text.empty() && line.text.back() == ' ')
                drop_last(line);
            if (!line.text.empty() && (is_digit(line.text.back()) || line.text.back() == '#'))
                drop_last(line);
            add(line, " ", column);
            continue;
        }
        if (is_nothing(c)) continue;
        const char means = meaning(c);
        if (length == 0)
            add(line, "\xEF\xBF\xBD", column);
        else if (means != 0)
            add(line, std::string_view(&means, 1), column);
        else
            add(line, here, column);
    }
    finish();
    return lines;
}

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view kSpace = " \t\r\n";
    const std::size_t start = text.find_first_not_of(kSpace);
    if (start == std::string_view::npos) return {};
    return text.substr(start, text.find_last_not_of(kSpace) + 1 - start);
}

std::string lowered(std::string_view text) {
    std::string low(text);
    for (std::size_t i = 0; i < low.size(); ++i) {
        if (low[i] >= 'A' && low[i] <= 'Z') low[i] = static_cast<char>(low[i] - 'A' + 'a');
        // U+00C0 to U+00DE stand 0x20 before their small letters, in the second byte after C3.
        const auto here = static_cast<unsigned char>(low[i]);
        if (i > 0 && low[i - 1] == '\xC3' && here >= 0x80 && here <= 0x9E && here != 0x97)
            low[i] = static_cast<char>(here + 0x20);
    }
    return low;
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
}

}  // namespace pasted_text
