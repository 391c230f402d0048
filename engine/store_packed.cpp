// The shipped presets as the program reads them at its start: the values that read_presets took from the
// JSON, one after another in CBOR, after a checksum and a number for the form. They were judged when they
// were packed; here only what is damaged is refused. One description of the fields serves both directions, so
// that what is written is what is read; presets/pack.cpp compares, and stops where a field was forgotten.
#include <algorithm>
#include <type_traits>

#include "cbor.h"
#include "checksum.h"
#include "store.h"

namespace store {
namespace {

constexpr std::uint64_t kForm = 1;
constexpr std::size_t kSumBytes = 4;

struct Out {
    cbor::Writer cbor;
};
struct In {
    cbor::Reader cbor;
    std::size_t most;   // nothing is longer than the whole
    bool sound = true;  // no choice beyond its list
    bool failed() const { return !sound || cbor.failed(); }
};
template <class Way, class T>
using Of = std::conditional_t<std::is_same_v<Way, Out>, const T, T>;

// ---- kinds of value
// ------------------------------------------------------------------------------------------
template <class Way, class... Fields>
void all(Way& way, Fields&... fields) {
    (pack(way, fields), ...);
}

void pack(Out& out, const std::string& text) {
    out.cbor.text(text);
}
void pack(In& in, std::string& text) {
    text = in.cbor.text(in.most);
}

void pack(Out& out, const std::uint32_t& number) {
    out.cbor.integer(number);
}
void pack(In& in, std::uint32_t& number) {
    number = static_cast<std::uint32_t>(in.cbor.integer());
}

void pack(Out& out, const bool& flag) {
    out.cbor.integer(flag ? 1 : 0);
}
void pack(In& in, bool& flag) {
    flag = in.cbor.integer() != 0;
}

// 0, -1, 1, -2, … as 0, 1, 2, 3, …: what is small stays short.
void pack(Out& out, const std::int64_t& figure) {
    const auto bits = static_cast<std::uint64_t>(figure);
    out.cbor.integer(figure < 0 ? ~(bits << 1) : bits << 1);
}
void pack(In& in, std::int64_t& figure) {
    const std::uint64_t folded = in.cbor.integer();
    figure = static_cast<std::int64_t>((folded & 1) != 0 ? ~(folded >> 1) : folded >> 1);
}

template <class Choice>
void choice(Out& out, const Choice& chosen, Choice) {
    out.cbor.integer(static_cast<std::uint64_t>(chosen));
}
template <class Choice>
void choice(In& in, Choice& chosen, Choice last) {
    const std::uint64_t place = in.cbor.integer();
    if (place <= static_cast<std::uint64_t>(last))
        chosen = static_cast<Choice>(place);
    else
        in.sound = false;
}

template <class Value>
void pack(Out& out, const std::optional<Value>& value) {
    out.cbor.array(value ? 1 : 0);
    if (value) pack(out, *value);
}
template <class Value>
void pack(In& in, std::optional<Value>& value) {
    if (in.cbor.array(1) == 1) pack(in, value.emplace());
}

template <class Value>
void pack(Out& out, const std::vector<Value>& list) {
    out.cbor.array(list.size());
    for (const Value& value : list)
        pack(out, value);
}
template <class Value>
void pack(In& in, std::vector<Value>& list) {
    std::uint64_t left = in.cbor.array(in.most);
    list.reserve(static_cast<std::size_t>(std::min<std::uint64_t>(left, 200)));  // most lists are shorter
    for (; left > 0 && !in.failed(); --left)
        pack(in, list.emplace_back());
}

template <class Value, class Less>
void pack(Out& out, const std::map<std::string, Value, Less>& table) {
    out.cbor.array(table.size());
    for (const auto& [key, value] : table)
        all(out, key, value);
}
template <class Value, class Less>
void pack(In& in, std::map<std::string, Value, Less>& table) {
    for (std::uint64_t left = in.cbor.array(in.most); left > 0 && !in.failed(); --left) {
        std::string key;
        pack(in, key);
        pack(in, table.try_emplace(table.end(), std::move(key))->second);  // they come sorted
    }
}

template <class Value>
void pack(Out& out, const source::Sourced<Value>& known) {
    all(out, known.value, known.source, known.standing);
}
template <class Value>
void pack(In& in, source::Sourced<Value>& known) {
    all(in, known.value, known.source, known.standing);
}

template <class Way>
void pack(Way& way, Of<Way, source::Standing>& standing) {
    choice(way, standing, source::Standing::estimate);
}
template <class Way>
void pack(Way& way, Of<Way, quantity::Percent>& percent) {
    pack(way, percent.grid);
}
template <class Way>
void pack(Way& way, Of<Way, quantity::Mass>& mass) {
    pack(way, mass.grid);
}

// ---- the catalogue
// -------------------------------------------------------------------------------------------
template <class Way>
void pack(Way& way, Of<Way, source::Entry>& one) {
    all(way, one.key, one.title, one.section, one.address, one.note, one.standing);
}

template <class Way>
void pack(Way& way, Of<Way, catalogue::Range>& one) {
    all(way, one.min, one.max);
}

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
void pack(Way& way, Of<Way, catalogue::Content>& one) {
    all(way, one.min, one.typical, one.max);
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
    all(way, one.id, one.number, one.name, one.contact, one.place, one.ifra_category, one.usual);
}

// ---- words
// ---------------------------------------------------------------------------------------------------
template <class Way>
void pack(Way& way, Of<Way, words::Entry>& one) {
    all(way, one.other, one.one);
}

template <class Way>
void pack(Way& way, Of<Way, words::Table>& one) {
    all(way, one.language, one.name, one.plural_rule, one.entries);
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
    all(way, one.title, one.product, one.market, one.date, one.person, one.formula.phases, one.formula.lines);
    all(way, one.own, one.steps, one.batch, one.notes, one.made);
}

using Starter = std::pair<std::string, workspace::Recipe>;
template <class Way>
void pack(Way& way, Of<Way, Starter>& one) {
    all(way, one.first, one.second);
}

template <class Way>
void pack(Way& way, Of<Way, Presets>& one) {
    auto& shipped = one.catalogue;
    all(way, shipped.sources, shipped.ingredients, shipped.containers, shipped.products);
    all(way, one.words, one.recipes);
}

std::string sum_of(std::string_view body) {
    const std::uint32_t sum = checksum::crc32(body);
    std::string bytes;
    for (int shift = 24; shift >= 0; shift -= 8)
        bytes += static_cast<char>(sum >> shift & 0xFFu);
    return bytes;
}

}  // namespace

std::string pack_presets(const Presets& presets) {
    Out out;
    out.cbor.integer(kForm);
    pack(out, presets);
    return sum_of(out.cbor.bytes()) + out.cbor.bytes();
}

result::Result<Presets> unpack_presets(std::string_view bytes) {
    const std::string_view sum = bytes.substr(0, kSumBytes), body = bytes.substr(sum.size());
    const result::Error damaged{result::Code::checksum_wrong, "presets", ""};
    if (sum != sum_of(body)) return damaged;
    In in{cbor::Reader(body), body.size()};
    if (in.cbor.integer() != kForm) return damaged;
    Presets presets;
    pack(in, presets);
    if (in.failed() || !in.cbor.at_end()) return damaged;
    return presets;
}

}  // namespace store
