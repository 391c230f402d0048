// Bit by bit with a table made at compile time; texts here are a few kilobytes, so one table of 256 is
// enough.
#include "checksum.h"

#include <array>

namespace checksum {
namespace {

constexpr std::uint32_t kReflected = 0xEDB88320u;  // 04C11DB7 with its bits in reverse

constexpr std::array<std::uint32_t, 256> make_table() {
    std::array<std::uint32_t, 256> table{};
    for (std::uint32_t byte = 0; byte < 256; ++byte) {
        std::uint32_t rest = byte;
        for (int bit = 0; bit < 8; ++bit)
            rest = (rest & 1u) != 0 ? (rest >> 1) ^ kReflected : rest >> 1;
        table[byte] = rest;
    }
    return table;
}

constexpr std::array<std::uint32_t, 256> kTable = make_table();

}  // namespace

std::uint32_t crc32(std::string_view bytes) {
    std::uint32_t rest = 0xFFFFFFFFu;
    for (const char c : bytes)
        rest = (rest >> 8) ^ kTable[(rest ^ static_cast<unsigned char>(c)) & 0xFFu];
    return rest ^ 0xFFFFFFFFu;
}

}  // namespace checksum
