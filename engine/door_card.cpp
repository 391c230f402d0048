// tarebench card: a recipe to what a customer asks at the stall, answered, as HTML.
#include "analysis.h"
#include "documents.h"
#include "door.h"
#include "store_limits.h"

namespace door {

Answer card(std::string_view input, const store::Presets& presets, std::string_view limits) {
    const result::Result<workspace::Recipe> recipe = store::read_recipe(input);
    if (!recipe) return refuse(recipe.error(), presets);
    const result::Result<limits::Book> book = limits.empty() ? limits::Book{} : store::unpack_limits(limits);
    if (!book) return refuse(book.error(), presets);
    const limits::Book* known = limits.empty() ? nullptr : &book.value();
    const words::Table& table = english(presets);
    const safety::Report report = analysis::checks(*recipe, presets.catalogue, known);
    return {0,
            documents::customer_card(labelling::card_of(*recipe, report, presets.catalogue, {}, known, table),
                                     table),
            ""};
}

}  // namespace door
