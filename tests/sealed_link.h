// Links around bodies that a test writes by hand: the checksum fits, the content is the test's business.
#pragma once

#include <cstdint>
#include <functional>
#include <string>

#include "engine/base64url.h"
#include "engine/cbor.h"
#include "engine/checksum.h"
#include "engine/share.h"

namespace sealed_link {

inline std::string sealed(std::string bytes) {
    const std::uint32_t sum = checksum::crc32(bytes);
    for (int shift = 24; shift >= 0; shift -= 8)
        bytes += static_cast<char>((sum >> shift) & 0xFFu);
    return "#" + base64url::encode(bytes);
}

// A link around a body that a test writes by hand.
inline std::string link_of(const std::function<void(cbor::Writer&)>& body, unsigned char version = 1) {
    cbor::Writer writer;
    body(writer);
    return sealed(std::string(1, static_cast<char>(version)) + writer.bytes());
}

// The smallest body, then `more` items of the recipe array.
inline std::string link_with(std::uint64_t items, const std::function<void(cbor::Writer&)>& more) {
    return link_of([&](cbor::Writer& writer) {
        writer.array(items);
        writer.text("Salve");
        writer.integer(1);
        writer.integer(4);
        more(writer);
    });
}

}  // namespace sealed_link
