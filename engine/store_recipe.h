// One recipe as a JSON object, read and written; shared by files, the kept workspace and presets.
// Only store*.cpp include this.
#pragma once

#include "store_json.h"
#include "workspace.h"

namespace store_recipe {

// Reads shape and figures. Bounds and the order of the lines are for workspace::checked, which a stranger's
// recipe goes through: what a person entered on this device is read back whatever its length.
workspace::Recipe recipe_from(const store_json::Json& value, const std::string& place,
                              store_json::Failure& failure);
void write(store_json::Writer& writer, const workspace::Recipe& recipe);

catalogue::Ingredient own_from(const store_json::Json& value, const std::string& place,
                               store_json::Failure& failure);
// "infusion", "blend", "pre_dilution", under "kind"; and the yield, under "yield_percent", 100 when not said.
struct MadeWords {
    catalogue::MadeAs as = catalogue::MadeAs::blend;
    quantity::Percent yield = quantity::kHundred;
};
MadeWords made_from(store_json::Fields& fields);
void write_made(store_json::Writer& writer, catalogue::MadeAs as, quantity::Percent yield);

void write_own(store_json::Writer& writer, const catalogue::Ingredient& own);

}  // namespace store_recipe
