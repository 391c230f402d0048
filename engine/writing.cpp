// The tables stand in the order of the code points. What joins on to a letter is taken from Unicode 14,
// general categories Mn, Me and Mc, with the joiners, the vowels and finals of conjoining hangul and the
// halfwidth voicing marks; gaps that hold no character are not left out.
#include "writing.h"

#include <algorithm>
#include <cstdint>
#include <iterator>

#include "utf8.h"

namespace writing {
namespace {

struct Span {
    std::uint32_t first, last;
};

constexpr Span kJoinsOn[] = {
    {0x300, 0x36F},   {0x483, 0x489},   {0x591, 0x5BD},   {0x5BF, 0x5BF},   {0x5C1, 0x5C2},
    {0x5C4, 0x5C5},   {0x5C7, 0x5C7},   {0x610, 0x61A},   {0x64B, 0x65F},   {0x670, 0x670},
    {0x6D6, 0x6DC},   {0x6DF, 0x6E4},   {0x6E7, 0x6E8},   {0x6EA, 0x6ED},   {0x711, 0x711},
    {0x730, 0x74A},   {0x7A6, 0x7B0},   {0x7EB, 0x7F3},   {0x7FD, 0x7FD},   {0x816, 0x819},
    {0x81B, 0x823},   {0x825, 0x827},   {0x829, 0x82D},   {0x859, 0x85B},   {0x898, 0x89F},
    {0x8CA, 0x8E1},   {0x8E3, 0x903},   {0x93A, 0x93C},   {0x93E, 0x94F},   {0x951, 0x957},
    {0x962, 0x963},   {0x981, 0x983},   {0x9BC, 0x9BC},   {0x9BE, 0x9CD},   {0x9D7, 0x9D7},
    {0x9E2, 0x9E3},   {0x9FE, 0xA03},   {0xA3C, 0xA51},   {0xA70, 0xA71},   {0xA75, 0xA75},
    {0xA81, 0xA83},   {0xABC, 0xABC},   {0xABE, 0xACD},   {0xAE2, 0xAE3},   {0xAFA, 0xB03},
    {0xB3C, 0xB3C},   {0xB3E, 0xB57},   {0xB62, 0xB63},   {0xB82, 0xB82},   {0xBBE, 0xBCD},
    {0xBD7, 0xBD7},   {0xC00, 0xC04},   {0xC3C, 0xC3C},   {0xC3E, 0xC56},   {0xC62, 0xC63},
    {0xC81, 0xC83},   {0xCBC, 0xCBC},   {0xCBE, 0xCD6},   {0xCE2, 0xCE3},   {0xD00, 0xD03},
    {0xD3B, 0xD3C},   {0xD3E, 0xD4D},   {0xD57, 0xD57},   {0xD62, 0xD63},   {0xD81, 0xD83},
    {0xDCA, 0xDDF},   {0xDF2, 0xDF3},   {0xE31, 0xE31},   {0xE33, 0xE3A},   {0xE47, 0xE4E},
    {0xEB1, 0xEB1},   {0xEB3, 0xEBC},   {0xEC8, 0xECD},   {0xF18, 0xF19},   {0xF35, 0xF35},
    {0xF37, 0xF37},   {0xF39, 0xF39},   {0xF3E, 0xF3F},   {0xF71, 0xF84},   {0xF86, 0xF87},
    {0xF8D, 0xFBC},   {0xFC6, 0xFC6},   {0x102B, 0x103E}, {0x1056, 0x1059}, {0x105E, 0x1060},
    {0x1062, 0x1064}, {0x1067, 0x106D}, {0x1071, 0x1074}, {0x1082, 0x108D}, {0x108F, 0x108F},
    {0x109A, 0x109D}, {0x1160, 0x11FF}, {0x135D, 0x135F}, {0x1712, 0x1715}, {0x1732, 0x1734},
    {0x1752, 0x1753}, {0x1772, 0x1773}, {0x17B4, 0x17D3}, {0x17DD, 0x17DD}, {0x180B, 0x180D},
    {0x180F, 0x180F}, {0x1885, 0x1886}, {0x18A9, 0x18A9}, {0x1920, 0x193B}, {0x1A17, 0x1A1B},
    {0x1A55, 0x1A7F}, {0x1AB0, 0x1B04}, {0x1B34, 0x1B44}, {0x1B6B, 0x1B73}, {0x1B80, 0x1B82},
    {0x1BA1, 0x1BAD}, {0x1BE6, 0x1BF3}, {0x1C24, 0x1C37}, {0x1CD0, 0x1CD2}, {0x1CD4, 0x1CE8},
    {0x1CED, 0x1CED}, {0x1CF4, 0x1CF4}, {0x1CF7, 0x1CF9}, {0x1DC0, 0x1DFF}, {0x200C, 0x200D},
    {0x20D0, 0x20F0}, {0x2CEF, 0x2CF1}, {0x2D7F, 0x2D7F}, {0x2DE0, 0x2DFF}, {0x302A, 0x302F},
    {0x3099, 0x309A}, {0xA66F, 0xA672}, {0xA674, 0xA67D}, {0xA69E, 0xA69F}, {0xA6F0, 0xA6F1},
    {0xA802, 0xA802}, {0xA806, 0xA806}, {0xA80B, 0xA80B}, {0xA823, 0xA827}, {0xA82C, 0xA82C},
    {0xA880, 0xA881}, {0xA8B4, 0xA8C5}, {0xA8E0, 0xA8F1}, {0xA8FF, 0xA8FF}, {0xA926, 0xA92D},
    {0xA947, 0xA953}, {0xA980, 0xA983}, {0xA9B3, 0xA9C0}, {0xA9E5, 0xA9E5}, {0xAA29, 0xAA36},
    {0xAA43, 0xAA43}, {0xAA4C, 0xAA4D}, {0xAA7B, 0xAA7D}, {0xAAB0, 0xAAB0}, {0xAAB2, 0xAAB4},
    {0xAAB7, 0xAAB8}, {0xAABE, 0xAABF}, {0xAAC1, 0xAAC1}, {0xAAEB, 0xAAEF}, {0xAAF5, 0xAAF6},
    {0xABE3, 0xABEA}, {0xABEC, 0xABED}, {0xD7B0, 0xD7FB}, {0xFB1E, 0xFB1E}, {0xFE00, 0xFE0F},
    {0xFE20, 0xFE2F}, {0xFF9E, 0xFF9F}};

bool within(std::uint32_t code, std::uint32_t first, std::uint32_t last) {
    return code >= first && code <= last;
}

template <std::size_t kCount>
bool in(const Span (&spans)[kCount], std::uint32_t code) {
    const auto past = std::upper_bound(std::begin(spans), std::end(spans), code,
                                       [](std::uint32_t c, const Span& span) { return c < span.first; });
    return past != std::begin(spans) && code <= std::prev(past)->last;
}

// Above the basic plane: marks of historic scripts, musical ones, skin tones, tags, selectors.
bool joins_on(std::uint32_t code) {
    if (code < 0x10000) return in(kJoinsOn, code);
    return within(code, 0x11000, 0x1107F) || within(code, 0x1D165, 0x1D1AD) ||
           within(code, 0x1E8D0, 0x1E94A) || within(code, 0x1F3FB, 0x1F3FF) || within(code, 0xE0020, 0xE01EF);
}

// Signs that kill the vowel of a consonant and bind it to the next one.
constexpr std::uint32_t kBinders[] = {0x94D, 0x9CD, 0xACD, 0xB4D, 0xC4D, 0xD4D, 0x1039, 0x17D2};
bool binds(std::uint32_t code) {
    return std::find(std::begin(kBinders), std::end(kBinders), code) != std::end(kBinders);
}

bool is_picture(std::uint32_t code) {
    return code == 0xA9 || code == 0xAE || within(code, 0x203C, 0x3299) || within(code, 0x1F000, 0x1FAFF);
}

bool is_flag_letter(std::uint32_t code) {
    return within(code, 0x1F1E6, 0x1F1FF);
}

constexpr std::uint32_t kJoiner = 0x200D;

// Of the right-to-left blocks, what has no direction or that of a number.
constexpr Span kWeak[] = {{0x590, 0x590},   {0x600, 0x607},   {0x609, 0x60A},  {0x60C, 0x60C},
                          {0x60E, 0x60F},   {0x660, 0x66C},   {0x6DD, 0x6DE},  {0x6E9, 0x6E9},
                          {0x6F0, 0x6F9},   {0x7F6, 0x7F9},   {0x890, 0x891},  {0x8E2, 0x8E2},
                          {0xFD3E, 0xFD4F}, {0xFDCF, 0xFDCF}, {0xFDFD, 0xFDFF}};

constexpr Span kRightToLeft[] = {{0x590, 0x8FF},   {0x200F, 0x200F},   {0xFB1D, 0xFDFF},
                                 {0xFE70, 0xFEFE}, {0x10800, 0x10FFF}, {0x1E800, 0x1EFFF}};

// Signs, figures and spaces beyond Latin 1 that have no direction of their own.
constexpr Span kNeutral[] = {
    {0x2B9, 0x2BA},   {0x2C2, 0x2CF},   {0x2D2, 0x2DF},     {0x2E5, 0x2ED},    {0x2EF, 0x2FF},
    {0x2000, 0x200D}, {0x2010, 0x2070}, {0x2074, 0x207E},   {0x2080, 0x208E},  {0x20A0, 0x20CF},
    {0x2100, 0x2101}, {0x2116, 0x2118}, {0x2190, 0x2335},   {0x237B, 0x2394},  {0x2396, 0x249B},
    {0x24EA, 0x26AB}, {0x26AD, 0x27FF}, {0x2900, 0x2BFF},   {0x2E00, 0x3004},  {0x3008, 0x3020},
    {0x3030, 0x3030}, {0x3036, 0x3037}, {0x303D, 0x303F},   {0x309B, 0x309C},  {0x30A0, 0x30A0},
    {0x30FB, 0x30FB}, {0xFE10, 0xFE6F}, {0xFEFF, 0xFEFF},   {0xFF01, 0xFF20},  {0xFF3B, 0xFF40},
    {0xFF5B, 0xFF65}, {0xFFE0, 0xFFFD}, {0x1F000, 0x1F1E5}, {0x1F300, 0x1FAFF}};

int direction_of(std::uint32_t code) {  // -1 to the left, 1 to the right, 0 neither
    if (code < 0x80) return within(code | 0x20, 'a', 'z') ? 1 : 0;
    if (code < 0xC0) return code == 0xAA || code == 0xB5 || code == 0xBA ? 1 : 0;
    if (code == 0xD7 || code == 0xF7 || joins_on(code) || in(kNeutral, code)) return 0;
    if (in(kRightToLeft, code)) return in(kWeak, code) ? 0 : -1;
    return 1;
}

constexpr Span kWide[] = {{0x1100, 0x115F},  {0x2E80, 0x303E}, {0x3041, 0x33FF}, {0x3400, 0x4DBF},
                          {0x4E00, 0x9FFF},  {0xA960, 0xA97C}, {0xAC00, 0xD7A3}, {0xF900, 0xFAFF},
                          {0xFE30, 0xFE6F},  {0xFF01, 0xFF60}, {0xFFE0, 0xFFE6}, {0x1F300, 0x1FAFF},
                          {0x20000, 0x3FFFD}};

// Written without spaces between words, with a break wherever no rule forbids one. Korean has spaces.
bool is_unspaced(std::uint32_t code) {
    const bool hangul =
        within(code, 0x1100, 0x11FF) || within(code, 0xA960, 0xA97C) || within(code, 0xAC00, 0xD7FF);
    return (in(kWide, code) && !hangul) || within(code, 0xFF61, 0xFF9F);
}
// Likewise, of South East Asia: Thai, Lao, Myanmar, Khmer.
bool is_south_east(std::uint32_t code) {
    return within(code, 0xE00, 0xEFF) || within(code, 0x1000, 0x109F) || within(code, 0x1780, 0x17FF);
}

// Small kana, iteration and length marks, closing signs: no line begins with them.
constexpr std::uint32_t kNotFirst[] = {
    '!',    '%',    ')',    ',',    '.',    ':',    ';',    '?',    ']',    '}',    0xB0,   0xE2F,  0xE30,
    0xE32,  0xE33,  0xE45,  0xE46,  0xEB0,  0xEB2,  0xEB3,  0xEC6,  0x104A, 0x104B, 0x17D4, 0x17D5, 0x17D7,
    0x2019, 0x201D, 0x2026, 0x2030, 0x2032, 0x2033, 0x3000, 0x3001, 0x3002, 0x3005, 0x3009, 0x300B, 0x300D,
    0x300F, 0x3011, 0x3015, 0x3017, 0x301C, 0x303B, 0x3041, 0x3043, 0x3045, 0x3047, 0x3049, 0x3063, 0x3083,
    0x3085, 0x3087, 0x308E, 0x309B, 0x309C, 0x309D, 0x309E, 0x30A1, 0x30A3, 0x30A5, 0x30A7, 0x30A9, 0x30C3,
    0x30E3, 0x30E5, 0x30E7, 0x30EE, 0x30F5, 0x30F6, 0x30FB, 0x30FC, 0x30FD, 0x30FE, 0xFF01, 0xFF05, 0xFF09,
    0xFF0C, 0xFF0E, 0xFF1A, 0xFF1B, 0xFF1F, 0xFF3D, 0xFF5D, 0xFF61, 0xFF63, 0xFF64, 0xFF65, 0xFF70};
static_assert(std::is_sorted(std::begin(kNotFirst), std::end(kNotFirst)));
// Opening signs, and the vowels that Thai and Lao write before their consonant: no line ends with them.
constexpr std::uint32_t kNotLast[] = {'(',    '[',    '{',    0xE40,  0xE41,  0xE42,  0xE43,  0xE44,  0xEC0,
                                      0xEC1,  0xEC2,  0xEC3,  0xEC4,  0x2018, 0x201C, 0x3008, 0x300A, 0x300C,
                                      0x300E, 0x3010, 0x3014, 0x3016, 0xFF08, 0xFF3B, 0xFF5B, 0xFF62};
static_assert(std::is_sorted(std::begin(kNotLast), std::end(kNotLast)));

template <std::size_t kCount>
bool one_of(const std::uint32_t (&codes)[kCount], std::uint32_t code) {
    return std::binary_search(std::begin(codes), std::end(codes), code);
}

}  // namespace

std::size_t letter_end(std::string_view text, std::size_t at) {
    if (at >= text.size()) return text.size();
    std::size_t end = at;
    std::uint32_t before = utf8::code_at(text, end);
    end += std::max<std::size_t>(1, utf8::length_at(text, end));
    bool half_flag = is_flag_letter(before), bound = false;
    while (end < text.size()) {
        const std::size_t length = utf8::length_at(text, end);
        if (length == 0) break;
        const std::uint32_t code = utf8::code_at(text, end);
        const bool hangul =
            within(before, 0x1100, 0x115F) && (within(code, 0x1100, 0x115F) || within(code, 0xAC00, 0xD7A3));
        const bool flag = half_flag && is_flag_letter(code);
        const bool picture = before == kJoiner && is_picture(code);
        const bool consonant = bound && direction_of(code) == 1;
        if (!joins_on(code) && !hangul && !flag && !picture && !consonant) break;
        half_flag = false;
        bound = binds(code) || (bound && code == kJoiner);
        before = code;
        end += length;
    }
    return end;
}

std::string_view start_within(std::string_view text, std::size_t most_bytes) {
    if (text.size() <= most_bytes) return text;
    std::size_t end = 0;
    for (std::size_t next = letter_end(text, 0); next <= most_bytes; next = letter_end(text, end))
        end = next;
    return text.substr(0, end);
}

bool right_to_left(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        if (const int direction = direction_of(utf8::code_at(text, at)); direction != 0) return direction < 0;
        at += std::max<std::size_t>(1, utf8::length_at(text, at));
    }
    return false;
}

bool has_right_to_left(std::string_view text) {
    constexpr unsigned kFirst =
        0xD6;  // the letters begin at U+0590; this is asked of every part of every sentence
    for (std::size_t at = 0; at < text.size(); ++at)
        if (static_cast<unsigned char>(text[at]) >= kFirst && direction_of(utf8::code_at(text, at)) < 0)
            return true;
    return false;
}

bool may_break(std::string_view text, std::size_t at) {
    if (at == 0 || at >= text.size()) return false;
    std::size_t start = at;
    do
        --start;
    while (start > 0 && ((static_cast<unsigned char>(text[start]) & 0xC0) == 0x80 ||
                         joins_on(utf8::code_at(text, start))));
    const std::uint32_t before = utf8::code_at(text, start), after = utf8::code_at(text, at);
    if (one_of(kNotLast, before) || one_of(kNotFirst, after) || joins_on(after)) return false;
    return is_unspaced(before) || is_unspaced(after) || (is_south_east(before) && is_south_east(after));
}

bool words_unmarked(std::string_view text) {
    for (std::size_t at = 0; at < text.size(); at += std::max<std::size_t>(1, utf8::length_at(text, at)))
        if (is_south_east(utf8::code_at(text, at))) return true;
    return false;
}

bool is_wide(std::string_view letter) {
    return in(kWide, utf8::code_at(letter, 0));
}

namespace {
constexpr std::string_view kApart = "\xE2\x81\xA8", kApartEnd = "\xE2\x81\xA9";  // U+2068, U+2069
}  // namespace

std::string set_apart(std::string_view part) {
    if (!has_right_to_left(part)) return std::string(part);
    return std::string(kApart) + std::string(part) + std::string(kApartEnd);
}

std::string without_marks(std::string_view text) {
    std::string bare(text);
    for (const std::string_view mark : {kApart, kApartEnd})
        for (std::size_t at = bare.find(mark); at != bare.npos; at = bare.find(mark, at))
            bare.erase(at, mark.size());
    return bare;
}

}  // namespace writing
