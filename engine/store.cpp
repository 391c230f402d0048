// Recipes as files. The parts are in store_recipe (the contract), store_own (own ingredients), store_presets,
// store_records (what is kept on the device) and store_migrations (older formats); JSON itself is in
// store_json.
#include "store.h"

#include "store_recipe.h"

namespace store {

result::Result<workspace::Recipe> read_recipe(std::string_view json) {
    const result::Result<store_json::Json> tree = store_json::parse(json);
    if (!tree) return tree.error();
    store_json::Failure failure;
    workspace::Recipe recipe = store_recipe::recipe_from(*tree, "", failure);
    if (failure.failed()) return *failure.error;
    return workspace::checked(std::move(recipe));
}

std::string write_recipe(const workspace::Recipe& recipe) {
    store_json::Writer writer(store_json::Layout::indented);
    store_recipe::write(writer, recipe);
    return writer.finish();
}

}  // namespace store
