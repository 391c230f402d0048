// The shipped presets as the program reads them at its start: the values that read_presets took from the
// JSON, one after another in CBOR, after a checksum and a number for the form. They were judged when they
// were packed; here only what is damaged is refused. One description of the fields serves both directions, so
// that what is written is what is read; presets/pack.cpp compares, and stops where a field was forgotten.
#include "store.h"
#include "store_packing.h"

namespace store_packing {

// ---- the catalogue
// -------------------------------------------------------------------------------------------
template <class Way>
void pack(Way& way, Of<Way, catalogue::DensityAt>& one) {
    all(way, one.density.grid, one.temp_c_grid);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::FattyAcids>& one) {
    all(way, one.percent, one.range_percent, one.range_source, one.range_standing, one.bound_as);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::Part>& one) {
    all(way, one.ingredient, one.percent);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::LotAnalysis>& one) {
    all(way, one.lot, one.date, one.by, one.constituents);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::Made>& one) {
    choice(way, one.as, catalogue::MadeAs::pre_dilution);
    all(way, one.yield, one.infused_with);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::Ingredient>& one) {
    all(way, one.id, one.number, one.own, one.name, one.inci, one.inci_source, one.about, one.botanical,
        one.part);
    all(way, one.part_source, one.cas, one.cas_source, one.role);
    choice(way, one.phase, catalogue::Phase::either);
    all(way, one.density, one.density_unknown, one.melting_c, one.iodine_value, one.saponification_value);
    all(way, one.unsaponifiables_percent, one.shelf_life_months, one.usual_leave_on_percent, one.fatty_acids);
    all(way, one.flash_point_c, one.traits);
    all(way, one.max_percent, one.names, one.based_on, one.parts, one.analysis, one.made);
    all(way, one.origin, one.vegan, one.caution, one.note, one.source, one.standing);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::Container>& one) {
    all(way, one.id, one.number, one.name, one.kind, one.material, one.max_pour_c, one.nominal_ml,
        one.fill_g);
    pack(way, one.note);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::UsualShare>& one) {
    all(way, one.role, one.percent, one.source, one.standing);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::Product>& one) {
    all(way, one.id, one.number, one.name, one.contact, one.place, one.ifra_category, one.water_gets_in,
        one.usual);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::StandIn>& one) {
    all(way, one.of, one.by, one.factor, one.range, one.note, one.source, one.standing);
}

// ---- words
// ---------------------------------------------------------------------------------------------------
// Their entries stay where they lie.
void pack(Out& out, const words::Table& one) {
    all(out, one.language, one.name, one.plural_rule);
    std::string entries;
    for (const auto& [key, entry] : words::spelled_out(one).entries)
        words::Packed::append(entries, {key, entry.other, entry.one});
    out.cbor.text(entries);
}
void pack(In& in, words::Table& one) {
    all(in, one.language, one.name, one.plural_rule);
    if (auto entries = words::Packed::over(in.cbor.view(in.most)))
        one.shipped = std::move(*entries);
    else
        in.sound = false;
}

// ---- recipes
// -------------------------------------------------------------------------------------------------
template <class Way>
void pack(Way& way, Of<Way, formula::Phase>& one) {
    all(way, one.id, one.hold_c, one.add_below_c);
}

template <class Way>
void pack(Way& way, Of<Way, formula::Hold>& one) {
    all(way, one.constituent, one.percent);
}

template <class Way>
void pack(Way& way, Of<Way, formula::Line>& one) {
    all(way, one.ingredient, one.name, one.percent, one.rest, one.phase, one.locked, one.hold, one.strained);
}

template <class Way>
void pack(Way& way, Of<Way, formula::Step>& one) {
    all(way, one.phase, one.text, one.minutes);
}

template <class Way>
void pack(Way& way, Of<Way, batch::Containers>& one) {
    all(way, one.id, one.count, one.fill_g, one.fill_percent, one.test_fill_g, one.water_g);
}

template <class Way>
void pack(Way& way, Of<Way, batch::Stock>& one) {
    all(way, one.ingredient, one.grams);
}

template <class Way>
void pack(Way& way, Of<Way, batch::Request>& one) {
    choice(way, one.amount, batch::Amount::stock);
    all(way, one.grams, one.containers, one.people, one.each, one.stock, one.loss, one.division, one.unit);
}

template <class Way>
void pack(Way& way, Of<Way, workspace::MadePart>& one) {
    pack(way, one.id);
    choice(way, one.as, catalogue::MadeAs::pre_dilution);
    pack(way, one.yield);
}

template <class Way>
void pack(Way& way, Of<Way, workspace::Recipe>& one) {
    all(way, one.title, one.product, one.market, one.date, one.person, one.age_months, one.measured_ph,
        one.formula.phases, one.formula.lines);
    all(way, one.own, one.steps, one.batch, one.notes, one.made);
}

using Starter = std::pair<std::string, workspace::Recipe>;
template <class Way>
void pack(Way& way, Of<Way, Starter>& one) {
    all(way, one.first, one.second);
}

template <class Way>
void pack(Way& way, Of<Way, store::Presets>& one) {
    auto& shipped = one.catalogue;
    all(way, shipped.sources, shipped.ingredients, shipped.containers, shipped.products, shipped.stand_ins);
    all(way, one.words, one.recipes);
}

}  // namespace store_packing

namespace store {
namespace {

constexpr std::uint64_t kForm = 2;

}  // namespace

std::string pack_presets(const Presets& presets) {
    store_packing::Out out;
    out.cbor.integer(kForm);
    pack(out, presets);
    return store_packing::sum_of(out.cbor.bytes()) + out.cbor.bytes();
}

result::Result<Presets> unpack_presets(std::string_view bytes) {
    const std::string_view sum = bytes.substr(0, store_packing::kSumBytes), body = bytes.substr(sum.size());
    const result::Error damaged{result::Code::checksum_wrong, "presets", ""};
    if (sum != store_packing::sum_of(body)) return damaged;
    store_packing::In in{cbor::Reader(body), body.size()};
    if (in.cbor.integer() != kForm) return damaged;
    Presets presets;
    pack(in, presets);
    if (in.failed() || !in.cbor.at_end()) return damaged;
    return presets;
}

}  // namespace store
