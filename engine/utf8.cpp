// The table of well-formed byte sequences, as in RFC 3629 section 4.
#include "utf8.h"

namespace utf8 {
namespace {

unsigned byte_at(std::string_view text, std::size_t at) {
    return at < text.size() ? static_cast<unsigned char>(text[at]) : 0u;
}
bool within(unsigned byte, unsigned low, unsigned high) {
    return byte >= low && byte <= high;
}

}  // namespace

std::size_t length_at(std::string_view text, std::size_t at) {
    if (at >= text.size()) return 0;
    const unsigned first = byte_at(text, at);
    if (first < 0x80) return 1;
    const unsigned second = byte_at(text, at + 1);
    if (within(first, 0xC2, 0xDF)) return within(second, 0x80, 0xBF) ? 2 : 0;
    const bool third_ok = within(byte_at(text, at + 2), 0x80, 0xBF);
    if (within(first, 0xE0, 0xEF)) {
        const unsigned low = first == 0xE0 ? 0xA0 : 0x80;
        const unsigned high = first == 0xED ? 0x9F : 0xBF;
        return within(second, low, high) && third_ok ? 3 : 0;
    }
    if (within(first, 0xF0, 0xF4)) {
        const unsigned low = first == 0xF0 ? 0x90 : 0x80;
        const unsigned high = first == 0xF4 ? 0x8F : 0xBF;
        return within(second, low, high) && third_ok && within(byte_at(text, at + 3), 0x80, 0xBF) ? 4 : 0;
    }
    return 0;
}

std::uint32_t code_at(std::string_view text, std::size_t at) {
    const std::size_t length = length_at(text, at);
    if (length == 0) return 0xFFFD;
    const std::uint32_t first = byte_at(text, at);
    if (length == 1) return first;
    std::uint32_t code = first & (0x7Fu >> length);
    for (std::size_t i = 1; i < length; ++i)
        code = code << 6 | (byte_at(text, at + i) & 0x3Fu);
    return code;
}

bool valid(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = length_at(text, at);
        if (length == 0) return false;
        at += length;
    }
    return true;
}

std::string_view start_within(std::string_view text, std::size_t most_bytes) {
    std::size_t end = 0;
    while (end < text.size()) {
        const std::size_t length = length_at(text, end);
        if (length == 0 || end + length > most_bytes) break;
        end += length;
    }
    return text.substr(0, end);
}

namespace {

// Capital letters and their small ones, of as many bytes each. In blocks where they take turns, which is
// which.
std::uint32_t small_of(std::uint32_t code) {
    const auto from = [&](std::uint32_t first, std::uint32_t last) { return code >= first && code <= last; };
    const bool even = code % 2 == 0;
    if (code < 0x80) return from('A', 'Z') ? code + 0x20 : code;
    if (code < 0x100) return from(0xC0, 0xDE) && code != 0xD7 ? code + 0x20 : code;
    if (code == 0x178) return 0xFF;
    if (from(0x139, 0x148) || from(0x179, 0x17E)) return even ? code : code + 1;
    if (from(0x100, 0x12F) || from(0x132, 0x137) || from(0x14A, 0x177) || from(0x218, 0x21B))
        return even ? code + 1 : code;
    if (from(0x391, 0x3A9)) return code + 0x20;
    if (code == 0x386) return 0x3AC;
    if (from(0x388, 0x38A)) return code + 0x25;
    if (code == 0x38C) return 0x3CC;
    if (from(0x38E, 0x38F)) return code + 0x3F;
    if (code == 0x3C2) return 0x3C3;  // the sigma at the end of a word
    if (from(0x400, 0x40F)) return code + 0x50;
    if (from(0x410, 0x42F)) return code + 0x20;
    if (from(0x460, 0x481) || from(0x48A, 0x4BF) || from(0x4D0, 0x52F)) return even ? code + 1 : code;
    if (from(0x531, 0x556)) return code + 0x30;
    if (from(0x1E00, 0x1E95) || from(0x1EA0, 0x1EFF)) return even ? code + 1 : code;
    if (from(0xFF21, 0xFF3A)) return code + 0x20;
    return code;
}

void write_over(std::string& text, std::size_t at, std::size_t length, std::uint32_t code) {
    for (std::size_t i = length; i-- > 1; code >>= 6)
        text[at + i] = static_cast<char>(0x80u | (code & 0x3Fu));
    const std::uint32_t marks = length == 1 ? 0u : (0xF00u >> length) & 0xFFu;
    text[at] = static_cast<char>(marks | code);
}

}  // namespace

std::string lowered(std::string_view text) {
    std::string low(text);
    for (std::size_t at = 0; at < low.size();) {
        const std::size_t length = length_at(low, at);
        if (length == 0) {
            ++at;
            continue;
        }
        const std::uint32_t code = code_at(low, at), small = small_of(code);
        if (small != code) write_over(low, at, length, small);
        at += length;
    }
    return low;
}

}  // namespace utf8
