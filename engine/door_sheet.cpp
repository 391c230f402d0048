// tarebench sheet: a recipe to its batch sheet.
#include "analysis.h"
#include "documents.h"
#include "door.h"

namespace door {

Answer sheet(std::string_view input, const store::Presets& presets) {
    const result::Result<workspace::Recipe> recipe = store::read_recipe(input);
    if (!recipe) return refuse(recipe.error(), presets);
    const analysis::Analysis analysis = analysis::of(*recipe, presets.catalogue);
    const result::Result<std::string> sheet =
        documents::batch_sheet(*recipe, analysis, presets.catalogue, english(presets));
    if (!sheet) return refuse(sheet.error(), presets);
    return {0, *sheet, ""};
}

}  // namespace door
