// tarebench link: a recipe to the text after an address.
#include "door.h"
#include "share.h"
#include "store_json.h"

namespace door {

Answer link(std::string_view input, const store::Presets& presets) {
    const result::Result<workspace::Recipe> recipe = store::read_recipe(input);
    if (!recipe) return refuse(recipe.error(), presets);
    const result::Result<std::string> link = share::write(*recipe, presets.catalogue);
    if (!link) return refuse(link.error(), presets);
    store_json::Writer writer(store_json::Layout::one_line);
    writer.object();
    writer.pair("link", *link);
    return {0, writer.finish() + "\n", ""};
}

}  // namespace door
