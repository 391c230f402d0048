// A recipe's own ingredients in JSON: the fields of the contract and no others. A figure of theirs has the
// source and the standing of the entry as a whole.
#include "store_recipe.h"

#include <array>

namespace store_recipe {
namespace {

using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using store_json::Writer;

constexpr std::array<std::pair<std::string_view, source::Standing>, 5> kStandings{{
    {"document", source::Standing::document},
    {"supplier", source::Standing::supplier},
    {"common_practice", source::Standing::common_practice},
    {"memory", source::Standing::memory},
    {"estimate", source::Standing::estimate},
}};

constexpr std::array<std::pair<std::string_view, catalogue::MadeAs>, 3> kMadeAs{{
    {"infusion", catalogue::MadeAs::infusion},
    {"blend", catalogue::MadeAs::blend},
    {"pre_dilution", catalogue::MadeAs::pre_dilution},
}};

catalogue::Made made_part_from(const Json& value, const std::string& place, Failure& failure) {
    Fields fields(value, place, failure);
    const MadeWords words = made_from(fields);
    catalogue::Made made{words.as, words.yield, {}};
    if (const Json* plants = fields.list("infused_with"))
        for (std::size_t i = 0; i < plants->size(); ++i)
            made.infused_with.push_back(store_json::text_of(
                (*plants)[i], store_json::indexed(fields.place("infused_with"), i), failure));
    fields.finish();
    return made;
}

void read_names(Fields& fields, catalogue::Ingredient& own) {
    const Json* names = fields.any("names");
    if (names == nullptr) return;
    if (const auto* plain = names->get_ptr<const std::string*>()) {
        own.name = *plain;
        return;
    }
    std::map<std::string, std::string> by_language = fields.texts("names");
    if (by_language.empty()) return;
    const auto english = by_language.find("en");
    own.name = english == by_language.end() ? by_language.begin()->second : english->second;
    if (by_language.size() > 1 || english == by_language.end()) own.names = std::move(by_language);
}

catalogue::LotAnalysis analysis_from(const Json& value, const std::string& place, Failure& failure) {
    catalogue::LotAnalysis analysis;
    Fields fields(value, place, failure);
    analysis.lot = fields.text("lot");
    analysis.date = fields.text("date");
    analysis.by = fields.text("by");
    if (const Json* constituents = fields.object("constituents")) {
        for (auto item = constituents->begin(); item != constituents->end(); ++item) {
            Fields content(*item, store_json::joined(fields.place("constituents"), item.key()), failure);
            analysis.constituents[item.key()] = {content.percent("min"), content.percent("typical"),
                                                 content.percent("max")};
            content.finish();
        }
    }
    fields.finish();
    return analysis;
}

void write_texts(Writer& writer, std::string_view key, const std::map<std::string, std::string>& texts) {
    writer.key(key);
    writer.flat_object();
    for (const auto& [name, text] : texts)
        writer.pair(name, text);
    writer.end();
}

void write_analysis(Writer& writer, const catalogue::LotAnalysis& analysis) {
    writer.key("analysis");
    writer.object();
    if (!analysis.lot.empty()) writer.pair("lot", analysis.lot);
    if (!analysis.date.empty()) writer.pair("date", analysis.date);
    if (!analysis.by.empty()) writer.pair("by", analysis.by);
    writer.key("constituents");
    writer.object();
    for (const auto& [constituent, content] : analysis.constituents) {
        writer.key(constituent);
        writer.flat_object();
        if (content.min) writer.pair_figure("min", content.min->grid);
        if (content.typical) writer.pair_figure("typical", content.typical->grid);
        if (content.max) writer.pair_figure("max", content.max->grid);
        writer.end();
    }
    writer.end();
    writer.end();
}

}  // namespace

MadeWords made_from(Fields& fields) {
    MadeWords made;
    const std::string word = fields.needed_text("kind");
    bool known = false;
    for (const auto& [name, as] : kMadeAs)
        if (name == word) made.as = as, known = true;
    if (!known) fields.failure().at(result::Code::field_unknown_value, fields.place("kind"), word);
    if (const auto yield = fields.percent("yield_percent")) made.yield = *yield;
    return made;
}

void write_made(Writer& writer, catalogue::MadeAs as, quantity::Percent yield) {
    for (const auto& [name, meaning] : kMadeAs)
        if (meaning == as) writer.pair("kind", name);
    if (yield != quantity::kHundred) writer.pair_figure("yield_percent", yield.grid);
}

catalogue::Ingredient own_from(const Json& value, const std::string& place, Failure& failure) {
    catalogue::Ingredient own;
    own.own = true;
    own.standing = source::Standing::estimate;
    Fields fields(value, place, failure);
    own.id = fields.needed_text("id");
    own.based_on = fields.text("based_on");
    read_names(fields, own);
    own.inci = fields.texts("inci");
    own.role = fields.text("role");
    own.source = fields.text("source");
    const std::string standing = fields.text("standing");
    bool known = standing.empty();
    for (const auto& [word, meaning] : kStandings) {
        if (word == standing) own.standing = meaning, known = true;
    }
    if (!known) failure.at(result::Code::field_unknown_value, fields.place("standing"), standing);
    if (const auto density = fields.figure("density_g_per_ml")) {
        if (*density <= 0) failure.at(result::Code::number_negative, fields.place("density_g_per_ml"));
        own.density = source::Sourced<catalogue::DensityAt>{{{*density}, {}}, own.source, own.standing};
    }
    if (const Json* parts = fields.list("parts")) {
        for (std::size_t i = 0; i < parts->size(); ++i) {
            Fields part((*parts)[i], store_json::indexed(fields.place("parts"), i), failure);
            part.need("percent");
            own.parts.push_back(
                {part.needed_text("ingredient"), part.percent("percent").value_or(quantity::Percent{})});
            part.finish();
        }
    }
    if (const Json* made = fields.any("made"))
        own.made = made_part_from(*made, fields.place("made"), failure);
    if (const Json* analysis = fields.any("analysis")) {
        own.analysis = analysis_from(*analysis, fields.place("analysis"), failure);
    }
    if (const Json* caps = fields.object("max_percent")) {
        for (auto item = caps->begin(); item != caps->end(); ++item) {
            own.max_percent[item.key()] = store_json::percent_of(
                *item, store_json::joined(fields.place("max_percent"), item.key()), failure);
        }
    }
    fields.finish();
    return own;
}

void write_own(Writer& writer, const catalogue::Ingredient& own) {
    writer.object();
    writer.pair("id", own.id);
    if (!own.based_on.empty()) writer.pair("based_on", own.based_on);
    write_texts(writer, "names",
                own.names.empty() ? std::map<std::string, std::string>{{"en", own.name}} : own.names);
    write_texts(writer, "inci", own.inci);
    writer.pair("role", own.role);
    if (own.density) writer.pair_figure("density_g_per_ml", own.density->value.density.grid);
    if (!own.parts.empty()) {
        writer.key("parts");
        writer.list();
        for (const catalogue::Part& part : own.parts) {
            writer.flat_object();
            writer.pair("ingredient", part.ingredient);
            writer.pair_figure("percent", part.percent.grid);
            writer.end();
        }
        writer.end();
    }
    if (own.made) {
        writer.key("made");
        writer.object();
        write_made(writer, own.made->as, own.made->yield);
        if (!own.made->infused_with.empty()) {
            writer.key("infused_with");
            writer.list();
            for (const std::string& plant : own.made->infused_with)
                writer.text(plant);
            writer.end();
        }
        writer.end();
    }
    if (own.analysis) write_analysis(writer, *own.analysis);
    if (!own.max_percent.empty()) {
        writer.key("max_percent");
        writer.flat_object();
        for (const auto& [where, cap] : own.max_percent)
            writer.pair_figure(where, cap.grid);
        writer.end();
    }
    writer.pair("source", own.source);
    for (const auto& [word, meaning] : kStandings) {
        if (meaning == own.standing) writer.pair("standing", word);
    }
    writer.end();
}

}  // namespace store_recipe
