// An independent reader of QR codes, for tests: what stands in a picture of modules, by the library zbar. Its
// few functions are declared here, since its package for developers brings two hundred others along.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "engine/qr.h"

extern "C" {
struct zbar_image_scanner_s;
struct zbar_image_s;
struct zbar_symbol_s;
zbar_image_scanner_s* zbar_image_scanner_create();
void zbar_image_scanner_destroy(zbar_image_scanner_s*);
zbar_image_s* zbar_image_create();
void zbar_image_destroy(zbar_image_s*);
void zbar_image_set_format(zbar_image_s*, unsigned long);
void zbar_image_set_size(zbar_image_s*, unsigned, unsigned);
void zbar_image_set_data(zbar_image_s*, const void*, unsigned long, void (*)(zbar_image_s*));
int zbar_scan_image(zbar_image_scanner_s*, zbar_image_s*);
const zbar_symbol_s* zbar_image_first_symbol(const zbar_image_s*);
const char* zbar_symbol_get_data(const zbar_symbol_s*);
unsigned zbar_symbol_get_data_length(const zbar_symbol_s*);
}

namespace zbar {

// Four pixels a module, with the white edge around it; nothing when no code is found.
inline std::optional<std::string> read(const qr::Code& code) {
    constexpr unsigned kModule = 4, kEdge = qr::kQuiet;
    const auto side = static_cast<unsigned>(code.side);
    const unsigned across = (side + 2 * kEdge) * kModule;
    std::vector<unsigned char> pixels(std::size_t{across} * across, 255);
    for (unsigned y = 0; y < side * kModule; ++y)
        for (unsigned x = 0; x < side * kModule; ++x)
            if (code.at(static_cast<int>(x / kModule), static_cast<int>(y / kModule)))
                pixels[std::size_t{y + kEdge * kModule} * across + x + kEdge * kModule] = 0;
    zbar_image_scanner_s* const scanner = zbar_image_scanner_create();
    zbar_image_s* const image = zbar_image_create();
    constexpr unsigned long kGrey = 'Y' | '8' << 8 | '0' << 16 | '0' << 24;
    zbar_image_set_format(image, kGrey);
    zbar_image_set_size(image, across, across);
    zbar_image_set_data(image, pixels.data(), pixels.size(), nullptr);
    std::optional<std::string> text;
    if (zbar_scan_image(scanner, image) == 1) {
        const zbar_symbol_s* const found = zbar_image_first_symbol(image);
        text.emplace(zbar_symbol_get_data(found), zbar_symbol_get_data_length(found));
    }
    zbar_image_destroy(image);
    zbar_image_scanner_destroy(scanner);
    return text;
}

}  // namespace zbar
