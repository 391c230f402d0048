// CRC-32 against its published check values, and by the bit-by-bit definition.
#include <string>

#include "doctest/doctest.h"
#include "engine/checksum.h"

namespace test_checksum {

namespace {

// The definition, one bit at a time: reflected polynomial, initial value and final xor FFFFFFFF.
std::uint32_t bit_by_bit(const std::string& bytes) {
    std::uint32_t rest = 0xFFFFFFFFu;
    for (const char byte : bytes)
        for (unsigned bit = 0; bit < 8; ++bit) {
            const bool one = ((rest ^ (static_cast<unsigned char>(byte) >> bit)) & 1u) != 0;
            rest = one ? (rest >> 1) ^ 0xEDB88320u : rest >> 1;
        }
    return ~rest;
}

}  // namespace

TEST_CASE("checksum: the check value of CRC-32/ISO-HDLC is CBF43926") {
    CHECK(checksum::crc32("123456789") == 0xCBF43926u);
}

TEST_CASE("checksum: known texts have the sums that zlib 1.2.13 gives them") {
    CHECK(checksum::crc32("") == 0u);
    CHECK(checksum::crc32("a") == 0xE8B7BE43u);
    CHECK(checksum::crc32("abc") == 0x352441C2u);
    CHECK(checksum::crc32("The quick brown fox jumps over the lazy dog") == 0x414FA339u);
    CHECK(checksum::crc32(std::string(32, '\0')) == 0x190A55ADu);
    CHECK(checksum::crc32(std::string(32, '\xFF')) == 0xFF6CAB0Bu);
}

TEST_CASE("checksum: it is not the Castagnoli sum, whose check value is E3069283") {
    CHECK(checksum::crc32("123456789") != 0xE3069283u);
}

TEST_CASE("checksum: every byte value agrees with the definition") {
    std::string text;
    for (int byte = 0; byte < 256; ++byte) {
        text += static_cast<char>(byte);
        CHECK(checksum::crc32(text) == bit_by_bit(text));
    }
}

}  // namespace test_checksum
