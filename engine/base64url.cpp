// Three bytes to four letters and back. Strict on reading: no padding, no line breaks, no stray bits.
#include "base64url.h"

#include <cstdint>

namespace base64url {
namespace {

constexpr char kLetters[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

int value_of(char letter) {
    if (letter >= 'A' && letter <= 'Z') return letter - 'A';
    if (letter >= 'a' && letter <= 'z') return letter - 'a' + 26;
    if (letter >= '0' && letter <= '9') return letter - '0' + 52;
    if (letter == '-') return 62;
    if (letter == '_') return 63;
    return -1;
}

std::string character(std::size_t index) {
    return "character " + std::to_string(index + 1);
}

}  // namespace

std::string encode(std::string_view bytes) {
    std::string out;
    out.reserve(bytes.size() / 3 * 4 + 3);
    std::uint32_t held = 0;
    int bits = 0;
    for (const char c : bytes) {
        held = (held << 8) | static_cast<unsigned char>(c);
        bits += 8;
        while (bits >= 6) {
            bits -= 6;
            out += kLetters[(held >> bits) & 63u];
        }
        held &= (1u << bits) - 1u;
    }
    if (bits > 0) out += kLetters[(held << (6 - bits)) & 63u];
    return out;
}

result::Result<std::string> decode(std::string_view text) {
    std::string out;
    out.reserve(text.size() / 4 * 3 + 2);
    std::uint32_t held = 0;
    int bits = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const int value = value_of(text[i]);
        if (value < 0) return {result::Code::link_altered, character(i)};
        held = (held << 6) | static_cast<std::uint32_t>(value);
        bits += 6;
        if (bits >= 8) {
            bits -= 8;
            out += static_cast<char>((held >> bits) & 255u);
            held &= (1u << bits) - 1u;
        }
    }
    if (bits == 6) return {result::Code::link_truncated};  // one letter over: no byte ends here
    if (held != 0) return {result::Code::link_not_canonical, character(text.size() - 1)};
    return out;
}

}  // namespace base64url
