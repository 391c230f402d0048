// tarebench open: a link back to its recipe.
#include "door.h"
#include "share.h"

namespace door {

Answer open(std::string_view input, const store::Presets& presets) {
    const result::Result<workspace::Recipe> recipe = share::read(input, presets.catalogue);
    if (!recipe) return refuse(recipe.error(), presets);
    return {0, store::write_recipe(*recipe), ""};
}

}  // namespace door
