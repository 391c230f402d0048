// Codes are canonical: counted up in the order of their lengths, then of the symbols; so lengths are all that
// a table has to hold. The last code is all ones and longer than seven bits, so that ones at the end are no
// text.
#include "shorthand.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <vector>

namespace shorthand {
namespace {

constexpr unsigned kLongestCode = 15;

struct Codes {
    std::array<unsigned, kSymbolCount> length{}, code{};
    std::array<unsigned, kLongestCode + 2> first{}, count{}, offset{};  // by length
    std::array<std::size_t, kSymbolCount> order{};                      // symbols in the order of their codes
};

Codes made_codes() {
    Codes codes;
    for (std::size_t i = 0; i < kSymbolCount; ++i) {
        codes.length[i] = static_cast<unsigned>(kLengths[i] - 'a');
        ++codes.count[codes.length[i]];
    }
    unsigned next = 0, placed = 0;
    for (unsigned length = 1; length <= kLongestCode; ++length) {
        next <<= 1;
        codes.first[length] = next;
        codes.offset[length] = placed;
        for (std::size_t i = 0; i < kSymbolCount; ++i) {
            if (codes.length[i] != length) continue;
            codes.code[i] = next++;
            codes.order[placed++] = i;
        }
    }
    return codes;
}

const Codes& codes() {
    static const Codes made = made_codes();
    return made;
}

std::string symbol_text(std::size_t symbol) {
    if (symbol < kByteCount) return std::string(1, static_cast<char>(symbol));
    return std::string(kFragments[symbol - kByteCount]);
}

// The fragment that is exactly this, or kSymbolCount.
std::size_t fragment(std::string_view text) {
    const auto at = std::lower_bound(std::begin(kFragments), std::end(kFragments), text);
    return at != std::end(kFragments) && *at == text
               ? kByteCount + static_cast<std::size_t>(at - std::begin(kFragments))
               : kSymbolCount;
}

}  // namespace

// The cheapest way to each place of the text, then back along it.
std::string pack(std::string_view text) {
    struct Way {
        std::uint32_t bits = UINT32_MAX;
        std::uint16_t symbol = 0;
    };
    std::vector<Way> ways(text.size() + 1);
    ways[0].bits = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto take = [&](std::size_t symbol, std::size_t size) {
            const std::uint32_t bits = ways[at].bits + codes().length[symbol];
            if (bits < ways[at + size].bits) ways[at + size] = {bits, static_cast<std::uint16_t>(symbol)};
        };
        take(static_cast<unsigned char>(text[at]), 1);
        for (std::size_t size = 2; size <= kLongestFragment && at + size <= text.size(); ++size)
            if (const std::size_t symbol = fragment(text.substr(at, size)); symbol < kSymbolCount)
                take(symbol, size);
    }
    std::vector<std::size_t> symbols;
    for (std::size_t at = text.size(); at > 0; at -= symbol_text(symbols.back()).size())
        symbols.push_back(ways[at].symbol);
    std::reverse(symbols.begin(), symbols.end());

    std::string out;
    unsigned held = 0, bits = 0;
    for (const std::size_t symbol : symbols) {
        for (unsigned bit = codes().length[symbol]; bit-- > 0;) {
            held = held << 1 | ((codes().code[symbol] >> bit) & 1u);
            if (++bits < 8) continue;
            out += static_cast<char>(held);
            held = bits = 0;
        }
    }
    if (bits > 0) out += static_cast<char>(held << (8 - bits) | ((1u << (8 - bits)) - 1));
    return out;
}

std::optional<std::string> unpack(std::string_view packed, std::size_t most_bytes) {
    std::string out;
    unsigned code = 0, length = 0;
    bool all_ones = true;
    for (std::size_t bit = 0; bit < 8 * packed.size(); ++bit) {
        const unsigned one = (static_cast<unsigned char>(packed[bit / 8]) >> (7 - bit % 8)) & 1u;
        code = code << 1 | one;
        all_ones = all_ones && one == 1;
        if (++length > kLongestCode) return std::nullopt;
        const unsigned within = code - codes().first[length];
        if (code < codes().first[length] || within >= codes().count[length]) continue;
        out += symbol_text(codes().order[codes().offset[length] + within]);
        if (out.size() > most_bytes) return std::nullopt;
        code = length = 0;
        all_ones = true;
    }
    if (length >= 8 || !all_ones) return std::nullopt;
    return out;
}

}  // namespace shorthand
