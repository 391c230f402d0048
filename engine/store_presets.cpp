// The shipped presets in: every file is read strictly and the whole set refused at the first fault.
// Two rules hold for every figure, before anything is taken from a record: its own name or that of an object
// around it ends in a unit, and an object around it names a source. Every source named is one that
// sources.json has, and no value stands firmer than its source. Recipes are read by read_recipe like
// anyone's.
#include <algorithm>
#include <array>
#include <functional>
#include <set>
#include <span>

#include "sorting.h"
#include "store.h"
#include "store_json.h"
#include "store_limits.h"

namespace store {
namespace {

using result::Code;
using result::Error;
using source::Standing;
using store_json::Fields;
using store_json::indexed;
using store_json::joined;
using store_json::Json;
using Words = std::span<const std::string_view>;

constexpr std::array<std::string_view, 8> kUnits{"percent",    "g_per_ml",     "c",  "months",
                                                 "g_per_100g", "mg_koh_per_g", "ml", "g"};
constexpr std::array<std::string_view, 17> kRoles{
    "wax",       "soft_wax",     "hard_fat",    "butter",        "soft_fat",         "liquid_oil",
    "thickener", "emulsifier",   "solubiliser", "antioxidant",   "skin_conditioner", "water",
    "humectant", "preservative", "powder",      "essential_oil", "extract"};
// In the order of the enumerations they stand for.
constexpr std::array<std::string_view, 5> kStandings{"document", "supplier", "common_practice", "memory",
                                                     "estimate"};
constexpr std::array<std::string_view, 5> kPhases{"oil", "water", "cool_down", "powder", "either"};

constexpr std::array<std::string_view, 6> kKinds{"tube", "tin", "jar", "roller", "dropper", "stick"};
constexpr std::array<std::string_view, 5> kMaterials{"glass", "metal", "paperboard", "pet", "pp"};
constexpr std::array<std::string_view, 9> kTraits{"bee",  "colour", "gluten",    "nut", "sesame",
                                                  "soya", "spores", "uv_filter", "wool"};
constexpr std::array<std::string_view, 2> kContacts{"leave_on", "rinse_off"};
constexpr std::array<std::string_view, 7> kPlaces{"lips", "face",      "body", "hands",
                                                  "feet", "underarms", "baby"};
constexpr std::array<std::string_view, 3> kBonds{"triglycerides", "wax_esters", "free_acids"};
constexpr std::array<std::string_view, 3> kPluralRules{"one_other", "one_upto_two", "none"};
constexpr std::uint64_t kLargestNumber = 65535;

bool has_unit(std::string_view key) {
    return std::any_of(kUnits.begin(), kUnits.end(), [&](std::string_view unit) {
        return key == unit || (key.size() > unit.size() && key.substr(key.size() - unit.size()) == unit &&
                               key[key.size() - unit.size() - 1] == '_');
    });
}

bool is_id(std::string_view text) {
    if (text.empty() || text[0] < 'a' || text[0] > 'z') return false;
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; });
}

// A CAS registry number: up to seven digits, two, and one that checks the others (each times its place from
// the right, the sum's last digit), so that a slip in copying is refused.
bool is_cas(std::string_view text) {
    const std::size_t digits = text.size() - 5;
    if (text.size() < 7 || digits > 7 || text[digits] != '-' || text[digits + 3] != '-') return false;
    int sum = 0, place = 0;
    for (std::size_t i = text.size() - 1; i-- > 0;) {
        if (i == digits || i == digits + 3) continue;
        if (text[i] < '0' || text[i] > '9') return false;
        sum += ++place * (text[i] - '0');
    }
    return text.back() == '0' + sum % 10;
}

// What the readers of one record share.
struct Reader {
    const std::vector<source::Entry>& sources;  // sorted by key
    store_json::Failure failure;

    const source::Entry* entry(std::string_view key) const {
        const auto at =
            std::find_if(sources.begin(), sources.end(), [&](const auto& one) { return one.key == key; });
        return at == sources.end() ? nullptr : &*at;
    }
};

// A text that is one of a closed list; gives its place in the list.
std::size_t word(Reader& in, Fields& fields, std::string_view key, Words allowed) {
    const std::string value = fields.needed_text(key);
    const auto at = std::find(allowed.begin(), allowed.end(), value);
    if (at != allowed.end()) return static_cast<std::size_t>(at - allowed.begin());
    in.failure.at(Code::field_unknown_value, fields.place(key), value);
    return 0;
}

std::string filled_text(Reader& in, Fields& fields, std::string_view key) {
    std::string value = fields.needed_text(key);
    if (value.empty()) in.failure.at(Code::field_unknown_value, fields.place(key));
    return value;
}

std::int64_t needed_figure(Fields& fields, std::string_view key) {
    fields.need(key);
    return fields.figure(key).value_or(0);
}

std::uint32_t number(Reader& in, Fields& fields) {
    fields.need("number");
    const std::uint64_t whole = fields.whole("number").value_or(0);
    if (whole > kLargestNumber)
        in.failure.at(Code::number_too_large, fields.place("number"), std::to_string(whole));
    return static_cast<std::uint32_t>(whole);
}

std::string source_key(Reader& in, Fields& fields, std::string_view key) {
    std::string value = fields.text(key);
    if (in.entry(value) == nullptr) in.failure.at(Code::preset_source_missing, fields.place(key), value);
    return value;
}

Standing standing(Reader& in, Fields& fields, std::string_view key, const std::string& source) {
    const auto value = static_cast<Standing>(word(in, fields, key, kStandings));
    const source::Entry* entry = in.entry(source);
    if (entry != nullptr && value < entry->standing)
        in.failure.at(Code::field_unknown_value, fields.place(key),
                      std::string(kStandings[static_cast<std::size_t>(value)]));
    return value;
}

// The two rules for figures, over a whole record.
void check_figures(Reader& in, const Json& value, const std::string& place, bool unit, bool sourced,
                   bool whole) {
    if (value.is_number()) {
        if (!unit) in.failure.at(Code::preset_unit_missing, place);
        if (!sourced) in.failure.at(Code::preset_source_missing, place);
    } else if (value.is_object()) {
        const bool here = sourced || value.contains("source");
        for (const auto& item : value.items()) {
            if (whole && item.key() == "number") continue;  // a name for links, not a figure
            check_figures(in, item.value(), joined(place, item.key()), unit || has_unit(item.key()), here,
                          false);
        }
    } else if (value.is_array()) {
        for (std::size_t i = 0; i < value.size(); ++i)
            check_figures(in, value[i], indexed(place, i), unit, sourced, false);
    }
}

catalogue::Range ordered(Reader& in, const std::string& place, std::int64_t min, std::int64_t max) {
    if (min > max)
        in.failure.at(Code::field_unknown_value, place, decimal::print(min) + " > " + decimal::print(max));
    return {min, max};
}

// {"min_<unit>", "max_<unit>", "source", "standing"}, null, or not there.
catalogue::Known<catalogue::Range> range(Reader& in, Fields& record, std::string_view key,
                                         const std::string& unit) {
    const Json* at = record.any(key);
    if (at == nullptr || at->is_null()) return std::nullopt;
    const std::string place = record.place(key), min = "min_" + unit, max = "max_" + unit;
    Fields fields(*at, place, in.failure);
    source::Sourced<catalogue::Range> known;
    known.value = ordered(in, place, needed_figure(fields, min), needed_figure(fields, max));
    known.source = source_key(in, fields, "source");
    known.standing = standing(in, fields, "standing", known.source);
    fields.finish();
    return known;
}

catalogue::Known<catalogue::DensityAt> density(Reader& in, Fields& record) {
    record.need("density");
    const Json* at = record.any("density");
    if (at == nullptr || at->is_null()) return std::nullopt;
    Fields fields(*at, record.place("density"), in.failure);
    source::Sourced<catalogue::DensityAt> known;
    known.value.density.grid = needed_figure(fields, "g_per_ml");
    if (known.value.density.grid <= 0) in.failure.at(Code::field_unknown_value, fields.place("g_per_ml"));
    known.value.temp_c_grid = fields.figure("temp_c");
    known.source = source_key(in, fields, "source");
    known.standing = standing(in, fields, "standing", known.source);
    fields.finish();
    return known;
}

catalogue::Known<catalogue::FattyAcids> fatty_acids(Reader& in, Fields& record) {
    const Json* at = record.any("fatty_acids");
    if (at == nullptr) return std::nullopt;
    Fields fields(*at, record.place("fatty_acids"), in.failure);
    source::Sourced<catalogue::FattyAcids> known;
    known.value.bound_as = kBonds[word(in, fields, "bound_as", kBonds)];
    fields.need("percent");
    if (const Json* acids = fields.object("percent"); acids != nullptr)
        for (const auto& acid : acids->items())
            known.value.percent[acid.key()] =
                store_json::percent_of(acid.value(), joined(fields.place("percent"), acid.key()), in.failure)
                    .grid;
    known.source = source_key(in, fields, "source");
    known.standing = standing(in, fields, "standing", known.source);
    if (const Json* ranges = fields.object("range_percent"); ranges != nullptr) {
        for (const auto& acid : ranges->items()) {
            const std::string place = joined(fields.place("range_percent"), acid.key());
            if (!acid.value().is_array() || acid.value().size() != 2) {
                in.failure.at(Code::field_type, place);
                continue;
            }
            known.value.range_percent[acid.key()] =
                ordered(in, place, store_json::percent_of(acid.value()[0], place, in.failure).grid,
                        store_json::percent_of(acid.value()[1], place, in.failure).grid);
        }
        known.value.range_source = source_key(in, fields, "range_source");
        known.value.range_standing = standing(in, fields, "range_standing", known.value.range_source);
    }
    fields.finish();
    return known;
}

// {"c", "source", "standing"}, or not there.
catalogue::Known<std::int64_t> temperature(Reader& in, Fields& record, std::string_view key) {
    const Json* at = record.any(key);
    if (at == nullptr) return std::nullopt;
    Fields fields(*at, record.place(key), in.failure);
    source::Sourced<std::int64_t> known;
    known.value = needed_figure(fields, "c");
    known.source = source_key(in, fields, "source");
    known.standing = standing(in, fields, "standing", known.source);
    fields.finish();
    return known;
}

catalogue::Known<std::vector<std::string>> traits(Reader& in, Fields& record) {
    const Json* at = record.any("traits");
    if (at == nullptr) return std::nullopt;
    Fields fields(*at, record.place("traits"), in.failure);
    source::Sourced<std::vector<std::string>> known;
    const Json* all = fields.list("are");
    for (std::size_t i = 0; all != nullptr && i < all->size(); ++i) {
        const std::string place = indexed(fields.place("are"), i);
        known.value.push_back(store_json::text_of((*all)[i], place, in.failure));
        if (std::find(kTraits.begin(), kTraits.end(), known.value.back()) == kTraits.end())
            in.failure.at(Code::field_unknown_value, place, known.value.back());
    }
    known.source = source_key(in, fields, "source");
    known.standing = standing(in, fields, "standing", known.source);
    fields.finish();
    return known;
}

catalogue::Ingredient ingredient(Reader& in, Fields& fields) {
    catalogue::Ingredient one;
    one.id = fields.text("id");
    one.number = number(in, fields);
    one.name = filled_text(in, fields, "name");
    if (fields.has("inci")) {
        one.inci = fields.texts("inci");
        one.inci_source = source_key(in, fields, "inci_source");
    }
    one.about = fields.text("about");
    one.botanical = fields.text("botanical");
    one.part = fields.text("part");
    if (!one.part.empty()) one.part_source = source_key(in, fields, "part_source");
    if (const Json* numbers = fields.list("cas")) {
        for (std::size_t i = 0; i < numbers->size(); ++i) {
            const std::string place = indexed(fields.place("cas"), i);
            one.cas.push_back(store_json::text_of((*numbers)[i], place, in.failure));
            if (!is_cas(one.cas.back())) in.failure.at(Code::field_unknown_value, place, one.cas.back());
        }
        one.cas_source = source_key(in, fields, "cas_source");
    }
    one.role = kRoles[word(in, fields, "role", kRoles)];
    one.phase = static_cast<catalogue::Phase>(word(in, fields, "phase", kPhases));
    one.density = density(in, fields);
    one.density_unknown =
        one.density ? fields.text("density_unknown") : filled_text(in, fields, "density_unknown");
    one.melting_c = range(in, fields, "melting", "c");
    one.iodine_value = range(in, fields, "iodine_value", "g_per_100g");
    one.saponification_value = range(in, fields, "saponification_value", "mg_koh_per_g");
    one.unsaponifiables_percent = range(in, fields, "unsaponifiables", "percent");
    one.shelf_life_months = range(in, fields, "shelf_life", "months");
    one.usual_leave_on_percent = range(in, fields, "usual_leave_on", "percent");
    one.fatty_acids = fatty_acids(in, fields);
    one.flash_point_c = temperature(in, fields, "flash_point");
    one.traits = traits(in, fields);
    one.origin = filled_text(in, fields, "origin");
    fields.need("vegan");
    if (const Json* vegan = fields.any("vegan"); vegan != nullptr && !vegan->is_null())
        one.vegan = fields.flag("vegan");
    one.caution = fields.text("caution");
    one.note = fields.text("note");
    return one;
}

catalogue::Container container(Reader& in, Fields& fields) {
    catalogue::Container one;
    one.id = fields.text("id");
    one.number = number(in, fields);
    one.name = filled_text(in, fields, "name");
    one.kind = kKinds[word(in, fields, "kind", kKinds)];
    if (fields.has("material")) one.material = kMaterials[word(in, fields, "material", kMaterials)];
    one.max_pour_c = temperature(in, fields, "max_pour");
    one.nominal_ml = range(in, fields, "nominal", "ml");
    one.fill_g = range(in, fields, "fill", "g");
    one.note = fields.text("note");
    return one;
}

catalogue::Product product(Reader& in, Fields& fields) {
    catalogue::Product one;
    one.id = fields.text("id");
    one.number = number(in, fields);
    one.name = filled_text(in, fields, "name");
    one.contact = kContacts[word(in, fields, "contact", kContacts)];
    one.place = kPlaces[word(in, fields, "place", kPlaces)];
    if (const Json* ifra = fields.any("ifra_category"); ifra != nullptr) {
        Fields category(*ifra, fields.place("ifra_category"), in.failure);
        source::Sourced<std::string> known;
        known.value = filled_text(in, category, "category");
        known.source = source_key(in, category, "source");
        known.standing = standing(in, category, "standing", known.source);
        category.finish();
        one.ifra_category = std::move(known);
    }
    if (const Json* water = fields.any("water_gets_in"); water != nullptr) {
        Fields how(*water, fields.place("water_gets_in"), in.failure);
        source::Sourced<bool> known{true, source_key(in, how, "source"), Standing::estimate};
        known.standing = standing(in, how, "standing", known.source);
        how.finish();
        one.water_gets_in = std::move(known);
    }
    const Json* usual = fields.list("usual");
    for (std::size_t i = 0; usual != nullptr && i < usual->size(); ++i) {
        const std::string place = indexed(fields.place("usual"), i);
        Fields share((*usual)[i], place, in.failure);
        catalogue::UsualShare known;
        known.role = filled_text(in, share, "role");
        known.percent =
            ordered(in, place, needed_figure(share, "min_percent"), needed_figure(share, "max_percent"));
        known.source = source_key(in, share, "source");
        known.standing = standing(in, share, "standing", known.source);
        share.finish();
        one.usual.push_back(std::move(known));
    }
    return one;
}

// {"of", "by", "g_per_g", "min_g_per_g", "max_g_per_g", "note", "source", "standing"}, sorted; whether the
// ids are there is looked at when all files are read.
void read_stand_ins(Reader& in, const Json& file, std::vector<catalogue::StandIn>& into) {
    Fields top(file, "", in.failure);
    top.need("stand_ins");
    const Json* all = top.list("stand_ins");
    top.finish();
    for (std::size_t i = 0; all != nullptr && i < all->size() && !in.failure.failed(); ++i) {
        const std::string place = indexed("stand_ins", i);
        check_figures(in, (*all)[i], place, false, false, true);
        Fields fields((*all)[i], place, in.failure);
        catalogue::StandIn one;
        one.of = filled_text(in, fields, "of");
        one.by = filled_text(in, fields, "by");
        one.factor = needed_figure(fields, "g_per_g");
        one.range =
            ordered(in, place, needed_figure(fields, "min_g_per_g"), needed_figure(fields, "max_g_per_g"));
        if (one.range.min <= 0 || one.factor < one.range.min || one.factor > one.range.max)
            in.failure.at(Code::field_unknown_value, fields.place("g_per_g"), decimal::print(one.factor));
        one.note = fields.text("note");
        one.source = source_key(in, fields, "source");
        one.standing = standing(in, fields, "standing", one.source);
        fields.finish();
        if (!into.empty() && std::pair(into.back().of, into.back().by) >= std::pair(one.of, one.by))
            in.failure.at(Code::preset_unsorted, place, one.by);
        into.push_back(std::move(one));
    }
}

// Each end is an ingredient, or both are one role.
void check_stand_ins(Reader& in, const catalogue::Catalogue& shipped) {
    for (std::size_t i = 0; i < shipped.stand_ins.size(); ++i) {
        const catalogue::StandIn& one = shipped.stand_ins[i];
        if (one.of == one.by && std::find(kRoles.begin(), kRoles.end(), one.of) != kRoles.end()) continue;
        for (const std::string& id : {one.of, one.by})
            if (catalogue::find_ingredient(shipped, id) == nullptr)
                in.failure.at(Code::field_unknown_value, indexed("stand_ins", i), id);
    }
}

struct Name {
    std::string id;
    std::uint64_t number = 0;
};

// The records of one list, each given to `take` after what holds for all of them: an object with an id,
// figures with unit and source. Gives their names.
std::vector<Name> records(Reader& in, const Json& file, std::string_view list,
                          const std::function<void(Fields&)>& take) {
    std::vector<Name> names;
    Fields top(file, "", in.failure);
    top.need(list);
    const Json* all = top.list(list);
    top.finish();
    for (std::size_t i = 0; all != nullptr && i < all->size() && !in.failure.failed(); ++i) {
        const Json& object = (*all)[i];
        Fields unnamed(object, indexed(std::string(list), i), in.failure);
        const std::string id = unnamed.needed_text("id");
        if (!is_id(id)) in.failure.at(Code::field_unknown_value, unnamed.place("id"), id);
        check_figures(in, object, id, false, false, true);
        Fields fields(object, id, in.failure);
        names.push_back({id, fields.whole("number").value_or(0)});
        fields.any("id");
        take(fields);
        fields.finish();
    }
    return names;
}

// Within a file ids go up, so that two people who add an entry meet in the same place.
void check_sorted(Reader& in, const std::vector<Name>& names) {
    for (std::size_t i = 1; i < names.size(); ++i)
        if (names[i - 1].id > names[i].id)
            in.failure.at(Code::preset_unsorted, joined(names[i].id, "id"), names[i - 1].id);
}

// Over all files an id and a link number are there once.
void check_unique(Reader& in, const std::vector<Name>& names) {
    std::set<std::string_view> ids;
    std::set<std::uint64_t> numbers;
    for (const Name& name : names) {
        if (!ids.insert(name.id).second)
            in.failure.at(Code::preset_duplicate, joined(name.id, "id"), name.id);
        if (!numbers.insert(name.number).second)
            in.failure.at(Code::preset_duplicate, joined(name.id, "number"), std::to_string(name.number));
    }
}

void read_sources(Reader& in, const Json& file, std::vector<source::Entry>& into) {
    Fields top(file, "", in.failure);
    top.need("sources");
    const Json* all = top.object("sources");
    top.finish();
    if (all == nullptr) return;
    for (const auto& item : all->items()) {
        Fields fields(item.value(), item.key(), in.failure);
        source::Entry entry;
        entry.key = item.key();
        if (!is_id(entry.key)) in.failure.at(Code::field_unknown_value, entry.key);
        if (!into.empty() && into.back().key > entry.key)
            in.failure.at(Code::preset_unsorted, entry.key, into.back().key);
        entry.title = filled_text(in, fields, "title");
        entry.section = fields.text("section");
        entry.address = fields.text("address");
        entry.note = fields.text("note");
        entry.standing = static_cast<Standing>(word(in, fields, "standing", kStandings));
        fields.finish();
        into.push_back(std::move(entry));
    }
}

words::Table read_words(Reader& in, const Json& file) {
    words::Table table;
    Fields top(file, "", in.failure);
    table.language = filled_text(in, top, "language");
    table.name = filled_text(in, top, "name");
    table.plural_rule = kPluralRules[word(in, top, "plural_rule", kPluralRules)];
    top.need("words");
    const Json* all = top.object("words");
    top.finish();
    if (all == nullptr) return table;
    for (const auto& item : all->items()) {
        words::Entry& entry = table.entries[item.key()];
        if (item.value().is_string()) {
            entry.other = store_json::text_of(item.value(), item.key(), in.failure);
            continue;
        }
        Fields forms(item.value(), item.key(), in.failure);
        entry.one = forms.needed_text("one");
        entry.other = forms.needed_text("other");
        forms.finish();
    }
    return table;
}

// "recipes/orchard_lip_balm.json" in folder "recipes/" -> "orchard_lip_balm"; "" when it is not there.
std::string_view stem_in(std::string_view name, std::string_view folder) {
    constexpr std::string_view kEnd = ".json";
    if (name.size() <= folder.size() + kEnd.size() || name.substr(0, folder.size()) != folder ||
        name.substr(name.size() - kEnd.size()) != kEnd)
        return "";
    return name.substr(folder.size(), name.size() - folder.size() - kEnd.size());
}

Error in_file(std::string_view file, const Error& error) {
    const std::string name(file);
    return {error.code, error.place.empty() ? name : name + ": " + error.place, error.detail};
}

}  // namespace

result::Result<Presets> read_presets(const std::vector<File>& files) {
    Presets all;
    catalogue::Catalogue& shipped = all.catalogue;
    Reader in{shipped.sources, {}};

    const auto bibliography = std::find_if(files.begin(), files.end(),
                                           [](const File& file) { return file.first == "sources.json"; });
    if (bibliography == files.end()) return {Code::field_missing, "sources.json"};
    const result::Result<Json> sources = store_json::parse(bibliography->second);
    if (!sources) return in_file("sources.json", sources.error());
    read_sources(in, *sources, shipped.sources);
    if (in.failure.failed()) return in_file("sources.json", *in.failure.error);

    std::vector<Name> ingredients;
    for (const auto& [name, text] : files) {
        if (name == "sources.json" || is_of_limits(name)) continue;  // those are read by read_limits
        if (const auto stem = stem_in(name, "recipes/"); !stem.empty()) {
            result::Result<workspace::Recipe> recipe = read_recipe(text);
            if (!recipe) return in_file(name, recipe.error());
            all.recipes.emplace_back(stem, recipe.value());
            continue;
        }
        const result::Result<Json> file = store_json::parse(text);
        if (!file) return in_file(name, file.error());
        if (!stem_in(name, "ingredients/").empty()) {
            const std::vector<Name> names = records(in, *file, "ingredients", [&](Fields& fields) {
                shipped.ingredients.push_back(ingredient(in, fields));
            });
            check_sorted(in, names);
            ingredients.insert(ingredients.end(), names.begin(), names.end());
            check_unique(in, ingredients);
        } else if (const auto language = stem_in(name, "words/"); !language.empty()) {
            all.words.push_back(read_words(in, *file));
            if (all.words.back().language != language)
                in.failure.at(Code::field_unknown_value, "language", all.words.back().language);
        } else if (name == "containers.json") {
            const std::vector<Name> names = records(in, *file, "containers", [&](Fields& fields) {
                shipped.containers.push_back(container(in, fields));
            });
            check_sorted(in, names);
            check_unique(in, names);
        } else if (name == "products.json") {
            check_unique(in, records(in, *file, "products", [&](Fields& fields) {
                             shipped.products.push_back(product(in, fields));
                         }));
        } else if (name == "stand_ins.json") {
            read_stand_ins(in, *file, shipped.stand_ins);
        } else {
            in.failure.at(Code::field_unknown_value, "");
        }
        if (in.failure.failed()) return in_file(name, *in.failure.error);
    }

    sorting::stable(shipped.ingredients, [](const auto& a, const auto& b) { return a.id < b.id; });
    check_stand_ins(in, shipped);
    if (in.failure.failed()) return in_file("stand_ins.json", *in.failure.error);
    sorting::stable(all.words, [](const auto& a, const auto& b) { return a.language < b.language; });
    sorting::stable(all.recipes, [](const auto& a, const auto& b) { return a.first < b.first; });
    return all;
}

}  // namespace store
