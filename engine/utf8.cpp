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

std::string lowered(std::string_view text) {
    std::string low(text);
    for (std::size_t i = 0; i < low.size(); ++i) {
        const auto byte = static_cast<unsigned char>(low[i]);
        if (byte >= 'A' && byte <= 'Z') low[i] = static_cast<char>(byte + 0x20);
        if (byte != 0xC3 || i + 1 == low.size()) continue;
        const auto next =
            static_cast<unsigned char>(low[i + 1]);  // U+00C0 to U+00DE, the multiplication sign apart
        if (next >= 0x80 && next <= 0x9E && next != 0x97) low[i + 1] = static_cast<char>(next + 0x20);
    }
    return low;
}

}  // namespace utf8
