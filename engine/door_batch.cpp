// tarebench batch: a recipe to grams.
#include "batch.h"
#include "door.h"
#include "store_json.h"

namespace door {
namespace {

void write_fills(store_json::Writer& writer, const batch::Batch& batch) {
    writer.key("containers");
    writer.list();
    for (const batch::Fill& fill : batch.fills) {
        writer.flat_object();
        writer.pair("id", fill.container);
        writer.key("count");
        writer.whole(static_cast<std::uint64_t>(fill.count));
        writer.pair_figure("fill_g", fill.each.grid);
        writer.end();
    }
    writer.end();
}

void write_lines(store_json::Writer& writer, const batch::Batch& batch, const formula::Formula& formula) {
    writer.key("lines");
    writer.list();
    for (const batch::Line& line : batch.lines) {
        const formula::Line& said = formula.lines[line.line];
        writer.flat_object();
        writer.pair(said.ingredient.empty() ? "name" : "ingredient",
                    said.ingredient.empty() ? said.name : said.ingredient);
        writer.pair("phase", said.phase);
        writer.pair_figure("percent", line.percent.grid);
        writer.pair_figure("grams", line.grams.grid);
        writer.pair_figure("actual_percent", line.actual.grid);
        writer.pair_figure("error_percent", line.error_grid);
        writer.end();
    }
    writer.end();
}

}  // namespace

Answer batch(std::string_view input, const store::Presets& presets) {
    const result::Result<workspace::Recipe> recipe = store::read_recipe(input);
    if (!recipe) return refuse(recipe.error(), presets);
    const catalogue::Catalogue catalogue = catalogue::with_own(presets.catalogue, recipe->own);
    const result::Result<batch::Batch> made =
        batch::make(recipe->formula, recipe->batch, catalogue, recipe->product);
    if (!made) return refuse(made.error(), presets);

    store_json::Writer writer(store_json::Layout::indented);
    writer.object();
    writer.pair_figure("total_g", made->total.grid);
    writer.pair_figure("division_g", made->division.grid);
    if (made->asked != made->total) writer.pair_figure("asked_g", made->asked.grid);
    writer.pair_figure("loss_percent", made->loss.grid);
    writer.pair_figure("fill_g", made->fill.grid);
    write_fills(writer, *made);
    if (made->density.known.grid > 0) {
        writer.pair_figure("density_g_per_ml", made->density.density.grid);
        writer.pair_figure("density_known_percent", made->density.known.grid);
    }
    write_lines(writer, *made, recipe->formula);
    return {0, writer.finish(), ""};
}

}  // namespace door
