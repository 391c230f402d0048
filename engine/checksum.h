// CRC-32 (ISO-HDLC: polynomial 04C11DB7 reflected, initial value and final xor FFFFFFFF), as in ISO 3309 and
// zlib. Finds damage and truncation; it is no protection against intent.
#pragma once

#include <cstdint>
#include <string_view>

namespace checksum {

std::uint32_t crc32(std::string_view bytes);

}  // namespace checksum
