// tarebench batch: a recipe to grams.
#include "analysis.h"
#include "batch.h"
#include "door.h"
#include "store_json.h"

namespace door {
namespace {

std::string_view word_of(batch::FillFrom from) {
    switch (from) {
        case batch::FillFrom::said_weight:
            return "said_weight";
        case batch::FillFrom::said_volume:
            return "said_volume";
        case batch::FillFrom::usual_weight:
            return "usual_weight";
        case batch::FillFrom::test_fill:
            return "test_fill";
        case batch::FillFrom::water:
            return "water";
    }
    return "";
}

void write_fills(store_json::Writer& writer, const batch::Batch& batch) {
    writer.key("containers");
    writer.list();
    for (const batch::Fill& fill : batch.fills) {
        writer.flat_object();
        writer.pair("id", fill.container);
        writer.key("count");
        writer.whole(static_cast<std::uint64_t>(fill.count));
        writer.pair_figure("fill_g", fill.each.grid);
        writer.pair("from", word_of(fill.from));
        if (fill.share) writer.pair_figure("fill_percent", fill.share->grid);
        if (fill.holds) writer.pair_figure("holds_ml", fill.holds->grid);
        if (fill.cold) writer.pair_figure("cold_ml", fill.cold->grid);
        if (fill.warm) writer.pair_figure("warm_ml", fill.warm->grid);
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
        writer.pair_figure("uncertainty_percent", line.uncertain.grid);
        writer.end();
    }
    writer.end();
}

std::string name_of(const formula::Line& line) {
    return line.ingredient.empty() ? line.name : line.ingredient;
}

void write_reach(store_json::Writer& writer, const batch::Reach& reach) {
    writer.key("stock");
    writer.list();
    for (const batch::Supply& supply : reach.supplies) {
        writer.flat_object();
        writer.pair("ingredient", supply.ingredient);
        writer.pair_figure("need_g", supply.need.grid);
        if (supply.have) writer.pair_figure("have_g", supply.have->grid);
        if (supply.left) writer.pair_figure("left_g", supply.left->grid);
        if (supply.first_out) {
            writer.key("first_out");
            writer.flag(true);
        }
        writer.end();
    }
    writer.end();
}

void write_remedies(store_json::Writer& writer, const analysis::Analysis& report,
                    const formula::Formula& formula) {
    writer.key("remedies");
    writer.list();
    for (const remedy::Remedy& one : report.remedies) {
        writer.flat_object();
        const formula::Line& said = formula.lines[one.line];
        writer.pair(said.ingredient.empty() ? "name" : "ingredient", name_of(said));
        switch (one.kind) {
            case remedy::Kind::bigger_batch:
                writer.pair("remedy", "bigger_batch");
                writer.pair_figure("grams", one.total.grid);
                break;
            case remedy::Kind::finer_scale:
                writer.pair("remedy", "finer_scale");
                writer.pair_figure("division_g", one.division.grid);
                break;
            case remedy::Kind::mix_ahead:
                writer.pair("remedy", "mix_ahead");
                writer.pair("oil", name_of(formula.lines[one.mix->oil]));
                writer.pair_figure("strength_percent", one.mix->strength.grid);
                writer.pair_figure("small_g", one.mix->small.grid);
                writer.pair_figure("oil_g", one.mix->with.grid);
                writer.pair_figure("weigh_g", one.mix->weigh.grid);
                writer.pair_figure("oil_left_g", one.mix->oil_left.grid);
                if (one.mix->cooled_c) writer.pair_figure("cools_to_c", *one.mix->cooled_c);
                break;
        }
        writer.end();
    }
    writer.end();
}

}  // namespace

Answer batch(std::string_view input, const store::Presets& presets) {
    const result::Result<workspace::Recipe> recipe = store::read_recipe(input);
    if (!recipe) return refuse(recipe.error(), presets);
    const analysis::Analysis report = analysis::of(*recipe, presets.catalogue);
    const result::Result<batch::Batch>& made = report.batch;
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
    if (made->pour_c) writer.pair_figure("pour_c", *made->pour_c);
    if (made->warm) {
        writer.pair_figure("warm_density_g_per_ml", made->warm->density.grid);
        writer.pair_figure("warm_known_percent", made->warm->known.grid);
    }
    write_lines(writer, *made, recipe->formula);
    if (made->reach) write_reach(writer, *made->reach);
    if (!report.remedies.empty()) write_remedies(writer, report, recipe->formula);
    return {0, writer.finish(), ""};
}

}  // namespace door
