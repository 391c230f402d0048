// What a recipe is made of, how firm it is likely to be and whether it will keep: blend and storing asked of
// one recipe, with the shelf of this device.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "blend.h"
#include "blend_firmness.h"
#include "catalogue.h"
#include "lot.h"
#include "storing.h"
#include "workspace.h"

namespace analysis {

struct Shelf {
    std::vector<lot::Lot> lots;
    std::string made_on;  // YYYY-MM-DD
    std::int64_t margin_months = 0;
};
struct Blended {
    blend::Blend blend;
    blend::Firm firm;
    storing::Storing storing;
};
result::Result<Blended> blended(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                                const Shelf& shelf, std::optional<std::int64_t> temp_c_grid = {});

// The starters that hold no water, as one knows them; `but` is left out.
using Starters = std::vector<std::pair<std::string, workspace::Recipe>>;
std::vector<blend::Rung> ladder(const Starters& starters, const catalogue::Catalogue& shipped,
                                std::string_view but = {});

}  // namespace analysis
