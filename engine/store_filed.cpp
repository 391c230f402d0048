// What is filed beside the book, as JSON: batch records, lots, versions. Each kind has its own heading; an
// entry's figure is written under its unit.
#include <array>
#include <utility>

#include "store.h"
#include "store_json.h"
#include "store_migrations.h"
#include "store_recipe.h"

namespace store {
namespace {

using store_json::Failure;
using store_json::Fields;
using store_json::indexed;
using store_json::Json;
using store_json::Writer;

constexpr std::array<std::string_view, 3> kFiledKinds{"batch_record", "lot",
                                                      "version"};  // as the variant has them

void pair(Writer& writer, std::string_view key, const std::string& text) {
    if (!text.empty()) writer.pair(key, text);
}
void pair(Writer& writer, std::string_view key, bool yes) {
    if (!yes) return;
    writer.key(key);
    writer.flag(true);
}
void pair(Writer& writer, std::string_view key, const std::optional<quantity::Mass>& mass) {
    if (mass) writer.pair_figure(key, mass->grid);
}

std::string_view unit_key(record::Kind kind) {
    switch (record::figure_of(kind)) {
        case record::Figure::celsius:
            return "celsius";
        case record::Figure::ph:
            return "ph";
        case record::Figure::grams:
            return "grams";
        case record::Figure::units:
        case record::Figure::units_or_none:
            return "units";
        case record::Figure::none:
            break;
    }
    return "";
}

void write_entry(Writer& writer, const record::Entry& entry) {
    writer.object();
    writer.pair("id", entry.id);
    writer.pair("kind", record::name(entry.kind));
    writer.pair("day", entry.day);
    writer.pair("written", entry.written);
    pair(writer, "who", entry.who);
    pair(writer, "corrects", entry.corrects);
    pair(writer, "text", entry.text);
    pair(writer, "smell", entry.smell);
    pair(writer, "colour", entry.colour);
    pair(writer, "texture", entry.texture);
    if (entry.figure) writer.pair_figure(unit_key(entry.kind), *entry.figure);
    pair(writer, "yes", entry.yes);
    if (!entry.lines.empty()) {
        writer.key("lines");
        writer.list();
        for (const record::Known& known : entry.lines) {
            writer.object();
            writer.key("line");
            writer.whole(known.line);
            pair(writer, "weighed_g", known.weighed);
            pair(writer, "lot", known.lot);
            pair(writer, "best_before", known.best_before);
            writer.end();
        }
        writer.end();
    }
    writer.end();
}

void write(Writer& writer, const record::Record& record) {
    writer.pair("number", record.number);
    writer.pair("day", record.day);
    pair(writer, "who", record.who);
    pair(writer, "recipe", record.recipe);
    pair(writer, "title", record.title);
    pair(writer, "version", record.version);
    pair(writer, "product", record.product);
    pair(writer, "makes", record.makes);
    pair(writer, "with_water", record.with_water);
    writer.key("lines");
    writer.list();
    for (const record::Weighed& line : record.lines) {
        writer.object();
        pair(writer, "ingredient", line.ingredient);
        writer.pair("name", line.name);
        pair(writer, "phase", line.phase);
        writer.pair_figure("percent", line.percent.grid);
        writer.pair_figure("planned_g", line.planned.grid);
        pair(writer, "weighed_g", line.weighed);
        pair(writer, "lot", line.lot);
        pair(writer, "best_before", line.best_before);
        pair(writer, "after", line.after);
        writer.end();
    }
    writer.end();
    writer.key("entries");
    writer.list();
    for (const record::Entry& entry : record.entries)
        write_entry(writer, entry);
    writer.end();
}

void write(Writer& writer, const lot::Lot& lot) {
    writer.pair("ingredient", lot.ingredient);
    writer.pair("number", lot.number);
    if (!lot.earlier.empty()) {
        writer.key("earlier");
        writer.list();
        for (const std::string& number : lot.earlier)
            writer.text(number);
        writer.end();
    }
    pair(writer, "best_before", lot.best_before);
    pair(writer, "opened", lot.opened);
    if (lot.opened_months) {
        writer.key("opened_months");
        writer.whole(static_cast<std::uint64_t>(*lot.opened_months));
    }
    pair(writer, "supplier", lot.supplier);
    pair(writer, "left_g", lot.left);
    pair(writer, "counted", lot.counted);
    pair(writer, "counted_at", lot.counted_at);
    pair(writer, "used_up", lot.used_up);
}

void write(Writer& writer, const workspace::Version& version) {
    writer.pair("of", version.of);
    pair(writer, "name", version.name);
    pair(writer, "frozen", version.frozen);
    pair(writer, "pinned", version.pinned);
    writer.key("recipe");
    store_recipe::write(writer, version.recipe);
}

template <class Read>
void each(Fields& fields, std::string_view key, Read read) {
    const Json* list = fields.list(key);
    for (std::size_t i = 0; list && i < list->size() && !fields.failure().failed(); ++i)
        read((*list)[i], indexed(fields.place(key), i));
}

record::Weighed line_from(const Json& value, const std::string& place, Failure& failure) {
    record::Weighed line;
    Fields fields(value, place, failure);
    line.ingredient = fields.text("ingredient");
    line.name = fields.needed_text("name");
    line.phase = fields.text("phase");
    fields.need("percent");
    line.percent = fields.percent("percent").value_or(quantity::Percent{});
    fields.need("planned_g");
    line.planned = fields.mass("planned_g").value_or(quantity::Mass{});
    line.weighed = fields.mass("weighed_g");
    line.lot = fields.text("lot");
    line.best_before = fields.text("best_before");
    line.after = fields.flag("after");
    fields.finish();
    return line;
}

record::Entry entry_from(const Json& value, const std::string& place, Failure& failure) {
    record::Entry entry;
    Fields fields(value, place, failure);
    entry.id = fields.needed_text("id");
    const std::string kind = fields.needed_text("kind");
    int at = 0;
    while (at < record::kKinds && record::name(static_cast<record::Kind>(at)) != kind)
        ++at;
    if (at == record::kKinds) {
        failure.at(result::Code::field_unknown_value, fields.place("kind"), kind);
        return entry;
    }
    entry.kind = static_cast<record::Kind>(at);
    entry.day = fields.needed_text("day");
    entry.written = fields.needed_text("written");
    entry.who = fields.text("who");
    entry.corrects = fields.text("corrects");
    entry.text = fields.text("text");
    entry.smell = fields.text("smell");
    entry.colour = fields.text("colour");
    entry.texture = fields.text("texture");
    if (const std::string_view key = unit_key(entry.kind); !key.empty()) entry.figure = fields.figure(key);
    entry.yes = fields.flag("yes");
    each(fields, "lines", [&](const Json& one, const std::string& where) {
        record::Known known;
        Fields said(one, where, failure);
        said.need("line");
        known.line = static_cast<std::size_t>(said.whole("line").value_or(0));
        known.weighed = said.mass("weighed_g");
        known.lot = said.text("lot");
        known.best_before = said.text("best_before");
        said.finish();
        entry.lines.push_back(std::move(known));
    });
    fields.finish();
    return entry;
}

record::Record record_from(Fields& fields) {
    record::Record record;
    record.number = fields.needed_text("number");
    record.day = fields.needed_text("day");
    record.who = fields.text("who");
    record.recipe = fields.text("recipe");
    record.title = fields.text("title");
    record.version = fields.text("version");
    record.product = fields.text("product");
    record.makes = fields.text("makes");
    record.with_water = fields.flag("with_water");
    fields.need("lines");
    fields.need("entries");
    each(fields, "lines", [&](const Json& one, const std::string& where) {
        record.lines.push_back(line_from(one, where, fields.failure()));
    });
    each(fields, "entries", [&](const Json& one, const std::string& where) {
        record.entries.push_back(entry_from(one, where, fields.failure()));
    });
    return record;
}

lot::Lot lot_from(Fields& fields) {
    lot::Lot lot;
    lot.ingredient = fields.needed_text("ingredient");
    lot.number = fields.needed_text("number");
    each(fields, "earlier", [&](const Json& one, const std::string& where) {
        lot.earlier.push_back(store_json::text_of(one, where, fields.failure()));
    });
    lot.best_before = fields.text("best_before");
    lot.opened = fields.text("opened");
    if (const auto months = fields.whole("opened_months")) {
        if (*months > static_cast<std::uint64_t>(lot::kMostOpenedMonths))
            fields.failure().at(result::Code::number_too_large, fields.place("opened_months"),
                                std::to_string(*months));
        else
            lot.opened_months = static_cast<std::int64_t>(*months);
    }
    lot.supplier = fields.text("supplier");
    lot.left = fields.mass("left_g");
    lot.counted = fields.text("counted");
    lot.counted_at = fields.text("counted_at");
    lot.used_up = fields.text("used_up");
    return lot;
}

workspace::Version version_from(Fields& fields) {
    workspace::Version version;
    version.of = fields.needed_text("of");
    version.name = fields.text("name");
    version.frozen = fields.flag("frozen");
    version.pinned = fields.flag("pinned");
    fields.need("recipe");
    if (const Json* recipe = fields.any("recipe"))
        version.recipe = store_recipe::recipe_from(*recipe, "recipe", fields.failure());
    return version;
}

}  // namespace

bool is_filed(std::string_view kind) {
    return kind == kFiledKinds[0] || kind == kFiledKinds[1] || kind == kFiledKinds[2];
}

std::string write_filed(const workspace::Filed& filed) {
    Writer writer(store_json::Layout::one_line);
    writer.object();
    writer.key("tarebench");
    writer.whole(kFormat);
    writer.pair("kind", kFiledKinds[filed.what.index()]);
    writer.pair("id", filed.id);
    writer.key("saves");
    writer.whole(filed.saves);
    writer.pair("made", filed.made);
    writer.pair("changed", filed.changed);
    if (const auto* record = std::get_if<record::Record>(&filed.what)) write(writer, *record);
    if (const auto* lot = std::get_if<lot::Lot>(&filed.what)) write(writer, *lot);
    if (const auto* version = std::get_if<workspace::Version>(&filed.what)) write(writer, *version);
    return writer.finish();
}

result::Result<workspace::Filed> read_filed(std::string_view json) {
    auto tree = store_json::parse(json);
    if (!tree) return tree.error();
    Failure failure;
    std::string kind;
    if (tree->is_object() && tree->contains("kind"))
        kind = store_json::text_of((*tree.operator->())["kind"], "kind", failure);
    if (!is_filed(kind)) return {result::Code::field_unknown_value, "kind", kind};
    const auto document =
        store_migrations::lifted(std::move(tree).value(), kind, "", store_migrations::steps());
    if (!document) return document.error();
    Fields fields(*document, "", failure);
    fields.any("tarebench");
    fields.any("kind");
    workspace::Filed filed;
    filed.id = fields.needed_text("id");
    fields.need("saves");
    filed.saves = fields.whole("saves").value_or(0);
    filed.made = fields.needed_text("made");
    filed.changed = fields.needed_text("changed");
    if (kind == kFiledKinds[0])
        filed.what = record_from(fields);
    else if (kind == kFiledKinds[1])
        filed.what = lot_from(fields);
    else
        filed.what = version_from(fields);
    fields.finish();
    if (failure.failed()) return *failure.error;
    return filed;
}

}  // namespace store
