// A QR code on the canvas: black on white in every theme, with the white edge that readers look for.
#pragma once

#include <string_view>

#include "engine/qr.h"
#include "kit.h"

namespace widget {

// As large as the column allows, up to `most` CSS pixels; a module is a whole number of device pixels. `name`
// is read aloud.
void qr_code(kit::Kit& kit, std::string_view key, const qr::Code& code, std::string_view name,
             float most = 420);

}  // namespace widget
