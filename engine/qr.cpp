#include "qr.h"

extern "C" {
#include <qrencode.h>
}

namespace qr {

std::optional<Code> of(std::string_view text) {
    if (text.empty() || text.size() > kMostBytes) return std::nullopt;
    QRcode* const made = QRcode_encodeData(
        static_cast<int>(text.size()), reinterpret_cast<const unsigned char*>(text.data()), 0, QR_ECLEVEL_M);
    if (made == nullptr) return std::nullopt;  // no memory
    Code code;
    code.side = made->width;
    const auto count = static_cast<std::size_t>(code.side) * static_cast<std::size_t>(code.side);
    code.dark.reserve(count);
    for (std::size_t i = 0; i < count; ++i)
        code.dark.push_back((made->data[i] & 1) != 0);
    QRcode_free(made);
    return code;
}

std::vector<Run> runs(const Code& code) {
    std::vector<Run> all;
    for (int y = 0; y < code.side; ++y)
        for (int x = 0; x < code.side; ++x) {
            if (!code.at(x, y)) continue;
            if (!all.empty() && all.back().y == y && all.back().x + all.back().length == x)
                all.back().length += 1;
            else
                all.push_back({x, y, 1});
        }
    return all;
}

}  // namespace qr
