// tarebench blend: a recipe to what it is made of, its values with how much of the weight each is known for,
// how firm it is likely to be and whether it will keep. Lots, the day it is made and ratings are of a device
// and come beside the recipe.
#include <algorithm>

#include "analysis_blend.h"
#include "blend_setting.h"
#include "blend_values.h"
#include "door.h"
#include "store_blend.h"
#include "store_json.h"

namespace door {
namespace {

using blend::Coverage;
using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using store_json::Writer;

struct Asked {
    workspace::Recipe recipe;
    analysis::Shelf shelf;
    std::optional<std::int64_t> temp;
    std::vector<blend::Rated> rated;
};

lot::Lot lot_from(const Json& value, const std::string& place, Failure& failure) {
    Fields fields(value, place, failure);
    lot::Lot lot;
    lot.ingredient = fields.needed_text("ingredient");
    lot.number = fields.needed_text("number");
    lot.best_before = fields.text("best_before");
    lot.opened = fields.text("opened");
    lot.used_up = fields.text("used_up");
    if (const auto months = fields.whole("opened_months"))
        lot.opened_months = static_cast<std::int64_t>(
            std::min<std::uint64_t>(*months, static_cast<std::uint64_t>(lot::kMostOpenedMonths) + 1));
    fields.finish();
    if (auto fault = lot::fault_of(lot); fault && !failure.failed())
        failure.at(fault->code, store_json::joined(place, fault->place), fault->detail);
    return lot;
}

result::Result<Asked> asked_of(std::string_view input) {
    const result::Result<Json> tree = store_json::parse(input);
    if (!tree) return tree.error();
    Asked asked;
    if (!tree->is_object() || !tree->contains("recipe")) {
        auto recipe = store::read_recipe(input);
        if (!recipe) return recipe.error();
        asked.recipe = std::move(recipe).value();
        return asked;
    }
    Failure failure;
    Fields fields(*tree, "", failure);
    auto recipe = store::read_recipe(fields.any("recipe")->dump());
    if (!recipe) return recipe.error();
    asked.recipe = std::move(recipe).value();
    asked.shelf.made_on = fields.text("made_on");
    if (!asked.shelf.made_on.empty() && !workspace::is_date(asked.shelf.made_on))
        failure.at(result::Code::field_unknown_value, "made_on", asked.shelf.made_on);
    asked.temp = fields.figure("temp_c");
    asked.shelf.margin_months =
        static_cast<std::int64_t>(std::min<std::uint64_t>(fields.whole("margin_months").value_or(0), 120));
    if (const Json* lots = fields.list("lots"))
        for (std::size_t i = 0; i < lots->size() && !failure.failed(); ++i)
            asked.shelf.lots.push_back(lot_from((*lots)[i], store_json::indexed("lots", i), failure));
    if (const Json* rated = fields.list("firmness"))
        asked.rated = store_blend::rated_from(*rated, "firmness", failure);
    fields.finish();
    if (failure.failed()) return *failure.error;
    return asked;
}

void write_coverage(Writer& writer, const Coverage& of) {
    writer.pair_figure("known_percent", of.known.grid);
    writer.pair_figure("asked_percent", of.asked.grid);
    if (of.known.grid > 0) writer.pair("standing", source::standing_name(of.standing));
    if (of.missing.empty()) return;
    writer.key("not_known");
    writer.list();
    for (const std::string& name : of.missing)
        writer.text(name);
    writer.end();
}

void write_known(Writer& writer, std::string_view key, const blend::Figure& figure,
                 std::string_view source = {}) {
    writer.key(key);
    writer.flat_object();
    if (figure.value) writer.pair_figure("value", *figure.value);
    if (figure.value && !source.empty()) writer.pair("rule", source);
    write_coverage(writer, figure.of);
    writer.end();
}

void write_between(Writer& writer, std::string_view key, const catalogue::Range& range) {
    writer.key(key);
    writer.flat_object();
    writer.pair_figure("min", range.min);
    writer.pair_figure("max", range.max);
    writer.end();
}

void write_value(Writer& writer, std::string_view key, const blend::Value& value, std::string_view source) {
    writer.key(key);
    writer.object();
    write_known(writer, "from_fatty_acids", value.computed, source);
    writer.key("published");
    writer.flat_object();
    if (value.published.range) write_between(writer, "range", *value.published.range);
    write_coverage(writer, value.published.of);
    writer.end();
    writer.end();
}

void write_shares(Writer& writer, const blend::Blend& made) {
    writer.key("shares");
    writer.flat_object();
    for (std::size_t i = 0; i < blend::kKinds; ++i)
        if (made.shares[i].grid > 0)
            writer.pair_figure(blend::kind_name(static_cast<blend::Kind>(i)), made.shares[i].grid);
    writer.end();
    writer.key("melting");
    writer.list();
    for (const blend::Melting& one : made.melting) {
        writer.flat_object();
        writer.pair("name", one.name);
        writer.pair_figure("percent", one.percent.grid);
        if (one.range_c) {
            write_between(writer, "range_c", *one.range_c);
            writer.pair("source", one.source);
            writer.pair("standing", source::standing_name(one.standing));
        }
        writer.end();
    }
    writer.end();
}

void write_profile(Writer& writer, const blend::Profile& profile) {
    writer.key("fatty_acids");
    writer.object();
    writer.key("percent");
    writer.flat_object();
    for (const blend::Acid& acid : profile.acids)
        writer.pair_figure(acid.name, acid.percent.grid);
    writer.end();
    write_coverage(writer, profile.of);
    writer.end();
}

void write_setting(Writer& writer, const blend::Setting& setting) {
    writer.key("shrinks_on_setting");
    writer.flat_object();
    writer.pair_figure("poured_at_c", blend::kCastFrom);
    writer.pair_figure("at_least_percent", setting.at_least.grid);
    if (setting.at_most) writer.pair_figure("at_most_percent", setting.at_most->grid);
    writer.pair("rule", blend::kCastingSource);
    write_coverage(writer, setting.of);
    writer.end();
}

void write_emulsion(Writer& writer, const blend::Emulsion& made) {
    writer.key("emulsion");
    writer.object();
    write_known(writer, "required_hlb", made.required);
    write_known(writer, "emulsifiers_hlb", made.emulsifiers.hlb);
    if (made.emulsifiers.higher) {
        writer.pair("of", made.emulsifiers.higher_name);
        writer.pair("with", made.emulsifiers.lower_name);
        writer.pair_figure("percent_that_meets", made.emulsifiers.higher->grid);
    }
    writer.end();
}

void write_firm(Writer& writer, const blend::Firm& firm, const std::vector<blend::Rung>& ladder,
                const std::vector<blend::Rated>& rated) {
    constexpr std::string_view kRough[] = {"fits", "watery", "powdery", "unknown"};
    writer.key("firmness");
    writer.object();
    writer.pair("holds", kRough[static_cast<int>(firm.rough)]);
    writer.pair("standing", source::standing_name(source::Standing::estimate));
    if (firm.rough == blend::Rough::fits) {
        writer.pair_figure("as_beeswax_percent", firm.firmness);
        const blend::Between place = blend::between(firm.firmness, ladder);
        if (place.same) writer.pair("as_firm_as", ladder[*place.same].title);
        if (place.softer) writer.pair("firmer_than", ladder[*place.softer].title);
        if (place.firmer) writer.pair("softer_than", ladder[*place.firmer].title);
        if (const auto rating = blend::expected_rating(firm.firmness, rated))
            writer.pair_figure("rating", *rating);
    }
    writer.end();
}

void write_materials(Writer& writer, const storing::Storing& made) {
    writer.key("materials");
    writer.list();
    for (const storing::Material& one : made.materials) {
        writer.flat_object();
        writer.pair("name", one.name);
        writer.pair_figure("percent", one.percent.grid);
        writer.pair("by", storing::by_name(one.by));
        if (!one.lot.empty()) writer.pair("lot", one.lot);
        if (!one.date.empty()) writer.pair("date", one.date);
        if (one.months_left) writer.pair_figure("months_left", *one.months_left * decimal::kOne);
        if (one.opened) {
            writer.key("opened");
            writer.flag(true);
        }
        if (one.sealed_months) {
            write_between(writer, "sealed_months", *one.sealed_months);
            writer.pair("standing", source::standing_name(one.standing));
        }
        writer.end();
    }
    writer.end();
}

void write_storing(Writer& writer, const storing::Storing& made, const words::Table& table) {
    constexpr std::string_view kMarks[] = {"best_before", "after_opening", "none_needed",
                                           "none_asked",  "unknown",       "opened_unknown"};
    writer.key("keeping");
    writer.object();
    writer.pair("answer", storing::answer_name(made.answer));
    if (!made.best_before.empty()) {
        writer.pair("best_before", made.best_before);
        writer.pair("because_of", made.materials.front().name);
    }
    if (made.months) writer.pair_figure("months", *made.months * decimal::kOne);
    writer.key("dates");
    writer.flat_object();
    write_coverage(writer, made.dates);
    writer.end();
    write_materials(writer, made);
    writer.key("label");
    writer.flat_object();
    writer.pair("mark", kMarks[static_cast<int>(made.mark.mark)]);
    if (!made.mark.date.empty()) writer.pair("before_end_of", made.mark.date);
    writer.pair("source", made.mark.source);
    writer.pair("standing", source::standing_name(made.mark.standing));
    writer.end();
    writer.key("after_opening_months");
    writer.flat_object();
    writer.pair_figure("min", made.after_opening.min_months * decimal::kOne);
    writer.pair_figure("max", made.after_opening.max_months * decimal::kOne);
    writer.pair("why", made.after_opening.why);
    writer.pair("standing", source::standing_name(made.after_opening.standing));
    writer.end();
    write_known(writer, "oxidisability", made.oxidisability.cox, blend::kCoxSource);
    writer.key("driven_by");
    writer.list();
    for (const blend::Driver& one : made.oxidisability.drivers) {
        writer.flat_object();
        writer.pair("name", one.name);
        writer.pair_figure("percent", one.share.grid);
        writer.end();
    }
    writer.end();
    writer.key("storage");
    writer.list();
    for (const storing::NoteAbout& one : made.notes)
        writer.text(storing::say(table, one));
    writer.end();
    writer.end();
}

}  // namespace

Answer blend(std::string_view input, const store::Presets& presets) {
    const auto asked = asked_of(input);
    if (!asked) return refuse(asked.error(), presets);
    const auto made = analysis::blended(asked->recipe, presets.catalogue, asked->shelf, asked->temp);
    if (!made) return refuse(made.error(), presets);
    Writer writer(store_json::Layout::indented);
    writer.object();
    write_shares(writer, made->blend);
    write_firm(writer, made->firm, analysis::ladder(presets.recipes, presets.catalogue, asked->recipe.title),
               asked->rated);
    write_profile(writer, made->blend.profile);
    write_value(writer, "iodine_value", made->blend.iodine, blend::kIodineSource);
    write_value(writer, "saponification_value", made->blend.saponification, blend::kSaponificationSource);
    writer.key("density");
    writer.list();
    for (const blend::Dense& one : made->blend.densities) {
        writer.flat_object();
        writer.pair_figure("temp_c", one.temp_c_grid);
        if (one.density.value) writer.pair_figure("g_per_ml", *one.density.value);
        write_coverage(writer, one.density.of);
        writer.end();
    }
    writer.end();
    if (made->blend.setting) write_setting(writer, *made->blend.setting);
    if (made->blend.emulsion) write_emulsion(writer, *made->blend.emulsion);
    write_storing(writer, made->storing, english(presets));
    return {0, writer.finish(), ""};
}

}  // namespace door
