// tarebench pack: a recipe to what a safety assessor is handed, as HTML.
#include "documents.h"
#include "door.h"

namespace door {

Answer pack(std::string_view input, const store::Presets& presets) {
    const result::Result<workspace::Recipe> recipe = store::read_recipe(input);
    if (!recipe) return refuse(recipe.error(), presets);
    const auto pack = labelling::pack_of(*recipe, presets.catalogue);
    if (!pack) return refuse(pack.error(), presets);
    return {0, documents::assessor_pack(*pack, presets.catalogue, english(presets)), ""};
}

}  // namespace door
