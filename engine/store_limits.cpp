// The book of limits out of the JSON of presets/limits, as strictly as the presets are read. A figure is
// never without its unit and its source; a row that does not say where it stands, for what and how far it may
// be trusted is refused, and so is a name that nothing else knows.
#include "store_limits.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <set>
#include <span>

#include "store_json.h"

namespace store {
namespace {

using limits::Book;
using quantity::Trace;
using result::Code;
using result::Error;
using source::Standing;
using store_json::Fields;
using store_json::indexed;
using store_json::joined;
using store_json::Json;
using Choices = std::span<const std::string_view>;

constexpr std::string_view kFolder = "limits/";
// In the order of the enumerations they stand for.
constexpr std::array<std::string_view, 5> kStanding{"document", "supplier", "common_practice", "memory",
                                                    "estimate"};
constexpr std::array<std::string_view, 4> kForces{"law", "standard", "guidance", "warning"};
constexpr std::array<std::string_view, 4> kVerdicts{"at_most", "prohibited", "unlimited", "gap"};
constexpr std::array<std::string_view, 3> kLists{"none", "old_24", "extended_81"};
constexpr std::array<std::string_view, 3> kWhom{"use", "age", "person"};
constexpr std::array<std::string_view, 5> kMarkets{"eu", "gb", "ni", "us", "ca"};
constexpr std::array<std::string_view, 7> kBodyPlaces{"lips", "face",      "body", "hands",
                                                      "feet", "underarms", "baby"};
constexpr std::array<std::string_view, 18> kCategories{
    "1", "2", "3", "4", "5A", "5B", "5C", "5D", "6", "7A", "7B", "8", "9", "10A", "10B", "11A", "11B", "12"};

struct In {
    const catalogue::Catalogue& shipped;
    Book book;
    store_json::Failure failure;

    const source::Entry* entry(std::string_view key) const {
        const source::Entry* ours = limits::find_source(book, key);
        return ours != nullptr ? ours : catalogue::find_source(shipped, key);
    }
};

bool listed(Choices choices, std::string_view one) {
    return std::find(choices.begin(), choices.end(), one) != choices.end();
}

bool is_name(std::string_view text) {  // snake_case, a letter first
    if (text.empty() || text[0] < 'a' || text[0] > 'z') return false;
    return std::all_of(text.begin(), text.end(),
                       [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_'; });
}

// A figure finer than the grid of decimal.h, as trace: a decimal of at most ten places, read from text by any
// correct reader, is the double nearest to it, and the division gives that same double.
Trace trace_of(In& in, const Json& value, const std::string& place) {
    constexpr double kOne = 1e10;
    if (!value.is_number()) {
        in.failure.at(Code::field_type, place);
        return {};
    }
    const double read = value.get<double>();
    if (!(read >= 0) || read > 100) {
        in.failure.at(Code::number_too_large, place);
        return {};
    }
    const double steps = std::floor(read * kOne + 0.5);
    if (steps / kOne != read) in.failure.at(Code::number_too_fine, place);
    return {static_cast<std::int64_t>(steps)};
}

std::size_t choice(In& in, Fields& fields, std::string_view key, Choices choices) {
    const std::string value = fields.needed_text(key);
    const auto at = std::find(choices.begin(), choices.end(), value);
    if (at != choices.end()) return static_cast<std::size_t>(at - choices.begin());
    in.failure.at(Code::field_unknown_value, fields.place(key), value);
    return 0;
}

std::string filled(In& in, Fields& fields, std::string_view key) {
    std::string value = fields.needed_text(key);
    if (value.empty()) in.failure.at(Code::field_unknown_value, fields.place(key));
    return value;
}

struct From {  // where a figure is from and how far it may be trusted
    std::string source;
    Standing standing = Standing::estimate;
};
From from(In& in, Fields& fields) {
    From read;
    read.source = fields.text("source");
    const source::Entry* entry = in.entry(read.source);
    if (entry == nullptr) in.failure.at(Code::preset_source_missing, fields.place("source"), read.source);
    read.standing = static_cast<Standing>(choice(in, fields, "standing", kStanding));
    if (entry != nullptr && read.standing < entry->standing)
        in.failure.at(Code::field_unknown_value, fields.place("standing"),
                      std::string(kStanding[static_cast<std::size_t>(read.standing)]));
    return read;
}
template <class Record>
void take_from(In& in, Fields& fields, Record& record) {
    From read = from(in, fields);
    record.source = std::move(read.source);
    record.standing = read.standing;
}

std::vector<std::string> texts(In& in, Fields& fields, std::string_view key,
                               const std::function<bool(const std::string&)>& known) {
    std::vector<std::string> read;
    const Json* all = fields.list(key);
    for (std::size_t i = 0; all != nullptr && i < all->size(); ++i) {
        const std::string place = indexed(fields.place(key), i);
        read.push_back(store_json::text_of((*all)[i], place, in.failure));
        if (!known(read.back())) in.failure.at(Code::field_unknown_value, place, read.back());
    }
    return read;
}

std::function<bool(const std::string&)> among(Choices choices) {
    return [choices](const std::string& text) { return listed(choices, text); };
}
std::function<bool(const std::string&)> ingredients_of(const In& in) {
    return [&in](const std::string& id) { return catalogue::find_ingredient(in.shipped, id) != nullptr; };
}
std::function<bool(const std::string&)> products_of(const In& in) {
    return [&in](const std::string& id) { return catalogue::find_product(in.shipped, id) != nullptr; };
}
bool is_small(const std::string& text) {  // what names are compared with is in small letters
    return text.size() > 2 &&
           std::none_of(text.begin(), text.end(), [](char c) { return c >= 'A' && c <= 'Z'; });
}
bool is_registry_number(const std::string& text) {
    return text.size() >= 7 && text.find_first_not_of("0123456789-") == std::string::npos;
}

std::vector<composition::Id> constituents(In& in, Fields& fields, std::string_view key) {
    std::vector<composition::Id> read;
    for (const std::string& id : texts(in, fields, key, [&](const std::string& one) {
             return composition::find(in.book.composition, one) != composition::kNone;
         }))
        read.push_back(composition::find(in.book.composition, id));
    return read;
}

std::int64_t months(Fields& fields, std::string_view key) {
    return static_cast<std::int64_t>(fields.whole(key).value_or(0));
}

std::string day(In& in, Fields& fields, std::string_view key) {
    std::string text = fields.text(key);
    if (!text.empty() && !workspace::is_date(text))
        in.failure.at(Code::field_unknown_value, fields.place(key), text);
    return text;
}

Trace percent(In& in, Fields& fields, std::string_view key) {
    fields.need(key);
    const Json* value = fields.any(key);
    return value == nullptr ? Trace{} : trace_of(in, *value, fields.place(key));
}

// {"lip": 0.11, "leave_on": "gap", …}: at least one product type.
std::vector<limits::Cap> caps(In& in, Fields& fields) {
    std::vector<limits::Cap> read;
    fields.need("max_percent");
    const Json* all = fields.object("max_percent");
    if (all == nullptr) return read;
    for (const auto& item : all->items()) {
        const std::string place = joined(fields.place("max_percent"), item.key());
        limits::Cap cap;
        cap.where = item.key();
        const bool known = cap.where == "any" || listed(kCategories, cap.where) ||
                           std::any_of(in.book.types.begin(), in.book.types.end(),
                                       [&](const limits::Type& type) { return type.id == cap.where; });
        if (!known) in.failure.at(Code::field_unknown_value, place, cap.where);
        if (item.value().is_string()) {
            const std::string word = store_json::text_of(item.value(), place, in.failure);
            const auto at = std::find(kVerdicts.begin() + 1, kVerdicts.end(), word);
            if (at == kVerdicts.end()) in.failure.at(Code::field_unknown_value, place, word);
            cap.verdict = static_cast<limits::Verdict>(at - kVerdicts.begin());
        } else {
            cap.verdict = limits::Verdict::at_most;
            cap.most = trace_of(in, item.value(), place);
        }
        read.push_back(std::move(cap));
    }
    if (read.empty()) in.failure.at(Code::field_missing, fields.place("max_percent"));
    return read;
}

// ---- the records ----
composition::Row content(In& in, Fields& fields, composition::Id constituent) {
    composition::Row row;
    row.constituent = constituent;
    fields.need("min");
    fields.need("max");
    row.percent.min = fields.percent("min");
    row.percent.typical = fields.percent("typical");
    row.percent.max = fields.percent("max");
    const quantity::Percent min = row.percent.min.value_or(quantity::Percent{}),
                            max = row.percent.max.value_or(quantity::kHundred);
    const quantity::Percent typical = row.percent.typical.value_or(min);
    if (min > typical || typical > max) in.failure.at(Code::field_unknown_value, fields.place("max"));
    take_from(in, fields, row);
    return row;
}

void constituent(In& in, Fields& fields, std::vector<std::string>& groups) {
    composition::Constituent one;
    one.id = fields.text("id");
    one.name = filled(in, fields, "name");
    groups.push_back(fields.text("sums_into"));
    one.cas = texts(in, fields, "cas", is_registry_number);
    in.book.composition.constituents.push_back(std::move(one));
}

void carrier(In& in, Fields& fields) {
    composition::Carrier one;
    one.ingredient = fields.text("id");
    if (catalogue::find_ingredient(in.shipped, one.ingredient) == nullptr)
        in.failure.at(Code::field_unknown_value, fields.place("id"), one.ingredient);
    fields.need("percent");
    const Json* all = fields.object("percent");
    if (all == nullptr) return;
    for (const auto& item : all->items()) {
        const std::string place = joined(fields.place("percent"), item.key());
        const composition::Id id = composition::find(in.book.composition, item.key());
        if (id == composition::kNone || (!one.rows.empty() && one.rows.back().constituent >= id))
            in.failure.at(Code::field_unknown_value, place, item.key());
        Fields row(item.value(), place, in.failure);
        one.rows.push_back(content(in, row, id));
        row.finish();
    }
    in.book.composition.carriers.push_back(std::move(one));
}

limits::Type type(In& in, Fields& fields) {
    limits::Type one;
    one.id = fields.text("id");
    fields.need("products");
    one.products = texts(in, fields, "products", products_of(in));
    take_from(in, fields, one);
    return one;
}

limits::Row row(In& in, Fields& fields) {
    limits::Row one;
    one.id = filled(in, fields, "id");
    one.constituents = constituents(in, fields, "constituents");
    one.ingredients = texts(in, fields, "ingredients", ingredients_of(in));
    one.names = texts(in, fields, "names", is_small);
    if (one.constituents.empty() == (one.ingredients.empty() && one.names.empty()))
        in.failure.at(Code::field_missing, fields.place("constituents"));  // one or the other, not both
    one.within = fields.text("within");
    if (!one.within.empty() && catalogue::find_ingredient(in.shipped, one.within) == nullptr)
        in.failure.at(Code::field_unknown_value, fields.place("within"), one.within);
    one.document = filled(in, fields, "document");
    one.edition = filled(in, fields, "edition");
    one.force = static_cast<limits::Force>(choice(in, fields, "force", kForces));
    one.markets = texts(in, fields, "markets", among(kMarkets));
    one.from = day(in, fields, "from");
    one.from_months = months(fields, "from_months");
    one.until_months = months(fields, "until_months");
    one.caps = caps(in, fields);
    take_from(in, fields, one);
    one.note = fields.text("note");
    return one;
}

void allergen(In& in, Fields& fields) {
    limits::Allergen one;
    fields.text("id");
    fields.need("entry");
    one.entry = months(fields, "entry");
    one.label = filled(in, fields, "label");
    one.constituents = constituents(in, fields, "constituents");
    one.ingredients = texts(in, fields, "ingredients", ingredients_of(in));
    one.names = texts(in, fields, "names", is_small);
    if (one.constituents.empty() == (one.ingredients.empty() && one.names.empty()))
        in.failure.at(Code::field_missing, fields.place("constituents"));
    one.cas = texts(in, fields, "cas", is_registry_number);
    one.members = fields.text("members");
    one.old = fields.flag("old");
    take_from(in, fields, one);
    for (const limits::Allergen& other : in.book.allergens)
        if (other.entry == one.entry || other.label == one.label)
            in.failure.at(Code::preset_duplicate, fields.place("entry"), one.label);
    in.book.allergens.push_back(std::move(one));
}

void regime(In& in, Fields& fields) {
    limits::Regime one;
    fields.text("id");
    one.market = kMarkets[choice(in, fields, "market", kMarkets)];
    one.from = day(in, fields, "from");
    one.until = day(in, fields, "until");
    one.list = static_cast<limits::List>(choice(in, fields, "list", kLists));
    one.reason = filled(in, fields, "reason");
    one.sell_through = day(in, fields, "sell_through");
    one.document = filled(in, fields, "document");
    take_from(in, fields, one);
    in.book.regimes.push_back(std::move(one));
}

void level(In& in, Fields& fields) {
    limits::Level one;
    one.id = fields.text("id");
    one.whom = static_cast<limits::Whom>(choice(in, fields, "whom", kWhom));
    one.products = texts(in, fields, "products", products_of(in));
    one.from_months = months(fields, "from_months");
    one.until_months = months(fields, "until_months");
    one.usual = percent(in, fields, "usual_percent");
    one.most = percent(in, fields, "max_percent");
    if (one.usual > one.most) in.failure.at(Code::field_unknown_value, fields.place("max_percent"));
    one.document = filled(in, fields, "document");
    one.edition = filled(in, fields, "edition");
    take_from(in, fields, one);
    one.note = fields.text("note");
    in.book.levels.push_back(std::move(one));
}

void caution(In& in, Fields& fields) {
    limits::Caution one;
    one.id = fields.text("id");
    one.ingredients = texts(in, fields, "ingredients", ingredients_of(in));
    one.stop_months = months(fields, "stop_months");
    one.warn_months = months(fields, "warn_months");
    one.places = texts(in, fields, "places", among(kBodyPlaces));
    one.pregnancy = fields.flag("pregnancy");
    take_from(in, fields, one);
    in.book.cautions.push_back(std::move(one));
}

void preservative(In& in, Fields& fields) {
    limits::Preservative one;
    one.ingredient = fields.text("id");
    if (catalogue::find_ingredient(in.shipped, one.ingredient) == nullptr)
        in.failure.at(Code::field_unknown_value, fields.place("id"), one.ingredient);
    one.id = filled(in, fields, "row");
    one.document = filled(in, fields, "document");
    one.edition = filled(in, fields, "edition");
    one.caps = caps(in, fields);
    take_from(in, fields, one);
    if (const Json* at = fields.any("working"); at != nullptr) {
        Fields working(*at, fields.place("working"), in.failure);
        working.need("min_percent");
        working.need("max_percent");
        one.working_percent = {working.figure("min_percent").value_or(0),
                               working.figure("max_percent").value_or(0)};
        const From read = from(in, working);
        one.working_source = read.source;
        one.working_standing = read.standing;
        working.finish();
    }
    if (const Json* at = fields.any("ph"); at != nullptr) {
        Fields ph(*at, fields.place("ph"), in.failure);
        one.ph_low = ph.figure("min_ph");
        one.ph_high = ph.figure("max_ph");
        const From read = from(in, ph);
        one.ph_source = read.source;
        one.ph_standing = read.standing;
        ph.finish();
    }
    one.note = fields.text("note");
    in.book.preservatives.push_back(std::move(one));
}

void sources(In& in, const Json& file) {
    Fields top(file, "", in.failure);
    top.need("sources");
    const Json* all = top.object("sources");
    top.finish();
    if (all == nullptr) return;
    for (const auto& item : all->items()) {
        Fields fields(item.value(), item.key(), in.failure);
        source::Entry entry;
        entry.key = item.key();
        if (!is_name(entry.key) || catalogue::find_source(in.shipped, entry.key) != nullptr)
            in.failure.at(Code::preset_duplicate, entry.key, entry.key);
        if (!in.book.sources.empty() && in.book.sources.back().key >= entry.key)
            in.failure.at(Code::preset_unsorted, entry.key, in.book.sources.back().key);
        entry.title = filled(in, fields, "title");
        entry.section = fields.text("section");
        entry.address = fields.text("address");
        entry.note = fields.text("note");
        entry.standing = static_cast<Standing>(choice(in, fields, "standing", kStanding));
        fields.finish();
        in.book.sources.push_back(std::move(entry));
    }
}

enum class Ids { sorted, any };

// The records of one list of `top`, each an object with an id.
void records(In& in, Fields& top, std::string_view list, Ids ids, const std::function<void(Fields&)>& take) {
    top.need(list);
    const Json* all = top.list(list);
    std::string last;
    for (std::size_t i = 0; all != nullptr && i < all->size() && !in.failure.failed(); ++i) {
        Fields unnamed((*all)[i], indexed(std::string(list), i), in.failure);
        const std::string id = unnamed.needed_text("id");
        if (ids == Ids::sorted && (!is_name(id) || id <= last))
            in.failure.at(id == last ? Code::preset_duplicate : Code::preset_unsorted, joined(id, "id"),
                          last);
        last = id;
        Fields fields((*all)[i], id, in.failure);
        take(fields);
        fields.any("id");
        fields.finish();
    }
}

void read_composition(In& in, Fields& top) {
    std::vector<std::string> groups;
    records(in, top, "constituents", Ids::sorted, [&](Fields& fields) { constituent(in, fields, groups); });
    auto& all = in.book.composition.constituents;
    for (std::size_t i = 0; i < groups.size() && i < all.size(); ++i) {
        if (groups[i].empty()) continue;
        all[i].sums_into = composition::find(in.book.composition, groups[i]);
        if (all[i].sums_into == composition::kNone)
            in.failure.at(Code::field_unknown_value, joined(all[i].id, "sums_into"), groups[i]);
    }
    records(in, top, "carriers", Ids::sorted, [&](Fields& fields) { carrier(in, fields); });
}

void read_rows(In& in, Fields& top) {
    records(in, top, "types", Ids::sorted,
            [&](Fields& fields) { in.book.types.push_back(type(in, fields)); });
    records(in, top, "rows", Ids::any, [&](Fields& fields) { in.book.rows.push_back(row(in, fields)); });
    records(in, top, "phototoxic", Ids::any,
            [&](Fields& fields) { in.book.phototoxic.push_back(row(in, fields)); });
}

void read_allergens(In& in, Fields& top) {
    top.need("above");
    if (const Json* at = top.object("above"); at != nullptr) {
        Fields above(*at, "above", in.failure);
        in.book.leave_on_above = percent(in, above, "leave_on_percent");
        in.book.rinse_off_above = percent(in, above, "rinse_off_percent");
        from(in, above);
        above.finish();
    }
    records(in, top, "allergens", Ids::sorted, [&](Fields& fields) { allergen(in, fields); });
    records(in, top, "regimes", Ids::sorted, [&](Fields& fields) { regime(in, fields); });
}

void read_guidance(In& in, Fields& top) {
    records(in, top, "levels", Ids::any, [&](Fields& fields) { level(in, fields); });
    records(in, top, "cautions", Ids::sorted, [&](Fields& fields) { caution(in, fields); });
}

// In the order in which one needs the other.
struct Part {
    std::string_view name;
    void (*read)(In&, Fields&);
};
constexpr std::array<Part, 5> kParts{{
    {"limits/composition.json", read_composition},
    {"limits/rows.json", read_rows},
    {"limits/allergens.json", read_allergens},
    {"limits/guidance.json", read_guidance},
    {"limits/preservatives.json",
     [](In& in, Fields& top) {
         records(in, top, "preservatives", Ids::sorted, [&](Fields& fields) { preservative(in, fields); });
     }},
}};

Error in_limits_file(std::string_view file, const Error& error) {
    const std::string name(file);
    return {error.code, error.place.empty() ? name : name + ": " + error.place, error.detail};
}

}  // namespace

bool is_of_limits(std::string_view file) {
    return file.substr(0, kFolder.size()) == kFolder;
}

result::Result<limits::Book> read_limits(const std::vector<File>& files,
                                         const catalogue::Catalogue& shipped) {
    In in{shipped, {}, {}};
    const auto text_of = [&](std::string_view name) {
        const auto at =
            std::find_if(files.begin(), files.end(), [&](const File& file) { return file.first == name; });
        return at == files.end() ? std::string_view{} : at->second;
    };
    constexpr std::string_view kSources = "limits/sources.json";
    const result::Result<Json> listed_sources = store_json::parse(text_of(kSources));
    if (!listed_sources) return in_limits_file(kSources, listed_sources.error());
    sources(in, *listed_sources);
    if (in.failure.failed()) return in_limits_file(kSources, *in.failure.error);
    for (const Part& part : kParts) {
        const result::Result<Json> file = store_json::parse(text_of(part.name));
        if (!file) return in_limits_file(part.name, file.error());
        Fields top(*file, "", in.failure);
        part.read(in, top);
        top.finish();
        if (in.failure.failed()) return in_limits_file(part.name, *in.failure.error);
    }
    for (const File& file : files)
        if (is_of_limits(file.first) && file.first != kSources &&
            std::none_of(kParts.begin(), kParts.end(),
                         [&](const Part& part) { return part.name == file.first; }))
            return Error{Code::field_unknown_value, std::string(file.first), ""};
    return std::move(in.book);
}

}  // namespace store
