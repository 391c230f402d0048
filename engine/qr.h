// A text as a QR code (ISO/IEC 18004:2015): byte mode, error correction M, the smallest version that takes
// it. The modules are qrencode's work; here is what of it is wanted, and how far it goes.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace qr {

// Bytes that a version takes at level M (table 7): version 20, 97 modules a side, which a phone reads from a
// hand's breadth of paper; and version 25, 117 modules, the densest that is drawn here: what is longer
// travels as a link or a file.
inline constexpr std::size_t kEasyBytes = 666, kMostBytes = 997;
inline constexpr int kQuiet = 4;  // modules that stay white around it (clause 6.3.8 of the edition of 2006)

struct Code {
    int side = 0;            // modules
    std::vector<bool> dark;  // row by row
    bool at(int x, int y) const { return dark[static_cast<std::size_t>(y * side + x)]; }
    bool operator==(const Code&) const = default;
};

std::optional<Code> of(std::string_view text);  // none: empty, or longer than kMostBytes

struct Run {  // dark modules beside one another
    int x = 0, y = 0, length = 0;
};
std::vector<Run> runs(const Code& code);  // row by row

}  // namespace qr
