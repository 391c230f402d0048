// Share links: what is read is a recipe within bounds, and writing it gives the link that was read. The input
// is the text of a link; and, so that a fuzzer gets past the checksum, also the body of one that is sealed
// here.
#include <cstdint>
#include <cstdlib>
#include <string>

#include "engine/base64url.h"
#include "engine/checksum.h"
#include "engine/share.h"
#include "tests/support.h"

namespace {

void open(const std::string& link, const catalogue::Catalogue& shelf) {
    const auto recipe = share::read(link, shelf);
    if (!recipe) return;
    if (!workspace::checked(*recipe)) std::abort();
    const auto written = share::write(*recipe, shelf);
    if (!written) std::abort();
    // Not always the same letters: an id the catalogue knows may have come as text. But always the same
    // recipe.
    const auto again = share::read(*written, shelf);
    if (!again || !(*again == *recipe)) std::abort();
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    static const catalogue::Catalogue shelf = support::shelf();
    const std::string text(reinterpret_cast<const char*>(data), size);
    open(text, shelf);
    std::string bytes = "\x01" + text;
    const std::uint32_t sum = checksum::crc32(bytes);
    for (int shift = 24; shift >= 0; shift -= 8)
        bytes += static_cast<char>((sum >> shift) & 0xFFu);
    open("#" + base64url::encode(bytes), shelf);
    return 0;
}
