// What is kept on the device: records with counter and checksum under two keys in turn, and what goes into
// them. Which keys those are, and when to save, is the host's business.
#include "store.h"

#include <array>

#include "checksum.h"
#include "store_blend.h"
#include "store_json.h"
#include "store_label.h"
#include "store_migrations.h"
#include "store_papers.h"
#include "store_prices.h"
#include "store_reading.h"
#include "store_recipe.h"

namespace store {
namespace {

using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using store_json::Writer;

constexpr std::array<std::pair<std::string_view, workspace::Theme>, 3> kThemes{{
    {"system", workspace::Theme::system},
    {"light", workspace::Theme::light},
    {"dark", workspace::Theme::dark},
}};
constexpr std::array<std::pair<std::string_view, workspace::Sort>, 3> kSorts{{
    {"changed", workspace::Sort::changed},
    {"title", workspace::Sort::title},
    {"product", workspace::Sort::product},
}};
constexpr std::array<std::pair<std::string_view, workspace::DecimalSign>, 3> kSigns{{
    {"system", workspace::DecimalSign::system},
    {"point", workspace::DecimalSign::point},
    {"comma", workspace::DecimalSign::comma},
}};

std::string hex8(std::uint32_t value) {
    constexpr char kHex[] = "0123456789abcdef";
    std::string out;
    for (int shift = 28; shift >= 0; shift -= 4)
        out += kHex[(value >> shift) & 15u];
    return out;
}

std::string checksum_of(std::string_view counter, std::string_view json) {
    std::string covered(counter);
    covered += ' ';
    covered += json;
    return hex8(checksum::crc32(covered));
}

result::Result<Json> opened(std::string_view json, std::string_view kind) {
    result::Result<Json> tree = store_json::parse(json);
    if (!tree) return tree;
    return store_migrations::lifted(std::move(tree).value(), kind, "", store_migrations::steps());
}

Writer heading(std::string_view kind) {
    Writer writer(store_json::Layout::one_line);
    writer.object();
    writer.key("tarebench");
    writer.whole(kFormat);
    writer.pair("kind", kind);
    return writer;
}

workspace::Scale scale_from(const Json& value, const std::string& place, Failure& failure) {
    workspace::Scale scale;
    Fields fields(value, place, failure);
    scale.name = fields.text("name");
    fields.need("division_g");
    scale.division = fields.mass("division_g").value_or(quantity::Mass{});
    scale.capacity = fields.mass("capacity_g").value_or(quantity::Mass{});
    fields.finish();
    return scale;
}

workspace::Jug jug_from(const Json& value, const std::string& place, Failure& failure) {
    workspace::Jug jug;
    Fields fields(value, place, failure);
    jug.name = fields.text("name");
    jug.empty = fields.mass("empty_g").value_or(quantity::Mass{});
    fields.finish();
    return jug;
}

}  // namespace

std::string write_record(const Record& record) {
    const std::string counter = std::to_string(record.saves);
    return counter + " " + checksum_of(counter, record.json) + " " + record.json;
}

result::Result<Record> read_record(std::string_view text) {
    constexpr std::size_t kDigits = 20;  // of the largest counter
    const result::Error damaged{result::Code::checksum_wrong, "", ""};
    const std::size_t space = text.substr(0, kDigits + 1).find(' ');
    if (space == std::string_view::npos || space == 0) return damaged;
    const std::string_view counter = text.substr(0, space);
    Record record;
    for (const char c : counter) {
        if (c < '0' || c > '9') return damaged;
        const auto digit = static_cast<std::uint64_t>(c - '0');
        if (record.saves > (UINT64_MAX - digit) / 10) return damaged;
        record.saves = record.saves * 10 + digit;
    }
    if (counter.size() > 1 && counter[0] == '0') return damaged;
    const std::string_view rest = text.substr(space + 1);
    if (rest.size() < 9 || rest[8] != ' ') return damaged;
    record.json = rest.substr(9);
    if (rest.substr(0, 8) != checksum_of(counter, record.json)) return damaged;
    return record;
}

Chosen choose(const Slots& slots) {
    Chosen chosen;
    std::optional<Record> read[2];
    const std::optional<std::string>* texts[2] = {&slots.a, &slots.b};
    for (int i = 0; i < 2; ++i) {
        if (!texts[i]->has_value()) continue;
        result::Result<Record> record = read_record(**texts[i]);
        if (record) {
            read[i] = std::move(record).value();
        } else {
            chosen.damaged.push_back(**texts[i]);
        }
    }
    if (read[0] && (!read[1] || read[0]->saves >= read[1]->saves)) {
        chosen.record = std::move(read[0]);
        chosen.next_slot = 'b';
    } else if (read[1]) {
        chosen.record = std::move(read[1]);
        chosen.next_slot = 'a';
    } else {
        chosen.next_slot =
            slots.a && !slots.b ? 'b' : 'a';  // an empty key before one that holds something damaged
    }
    return chosen;
}

std::string write_kept(const workspace::Kept& kept) {
    Writer writer = heading("kept");
    writer.pair("id", kept.id);
    writer.key("saves");
    writer.whole(kept.saves);
    if (!kept.changed.empty()) writer.pair("changed", kept.changed);
    if (!kept.binned.empty()) writer.pair("binned", kept.binned);
    if (!kept.tags.empty()) {
        writer.key("tags");
        writer.list();
        for (const std::string& tag : kept.tags)
            writer.text(tag);
        writer.end();
    }
    writer.key("recipe");
    store_recipe::write(writer, kept.recipe);
    return writer.finish();
}

result::Result<workspace::Kept> read_kept(std::string_view json) {
    const result::Result<Json> document = opened(json, "kept");
    if (!document) return document.error();
    Failure failure;
    Fields fields(*document, "", failure);
    fields.any("tarebench");
    fields.any("kind");
    workspace::Kept kept;
    kept.id = fields.needed_text("id");
    fields.need("saves");
    kept.saves = fields.whole("saves").value_or(0);
    kept.changed = fields.text("changed");
    kept.binned = fields.text("binned");
    if (const Json* tags = fields.list("tags"))
        for (std::size_t i = 0; i < tags->size() && !failure.failed(); ++i)
            kept.tags.push_back(store_json::text_of((*tags)[i], store_json::indexed("tags", i), failure));
    fields.need("recipe");
    if (const Json* recipe = fields.any("recipe"))
        kept.recipe = store_recipe::recipe_from(*recipe, "recipe", failure);
    fields.finish();
    if (failure.failed()) return *failure.error;
    return kept;
}

std::string write_kept_own(const workspace::KeptOwn& kept) {
    Writer writer = heading("ingredient");
    writer.key("saves");
    writer.whole(kept.saves);
    if (!kept.changed.empty()) writer.pair("changed", kept.changed);
    if (!kept.binned.empty()) writer.pair("binned", kept.binned);
    writer.key("ingredient");
    store_recipe::write_own(writer, kept.ingredient);
    return writer.finish();
}

result::Result<workspace::KeptOwn> read_kept_own(std::string_view json) {
    const result::Result<Json> document = opened(json, "ingredient");
    if (!document) return document.error();
    Failure failure;
    Fields fields(*document, "", failure);
    fields.any("tarebench");
    fields.any("kind");
    workspace::KeptOwn kept;
    fields.need("saves");
    kept.saves = fields.whole("saves").value_or(0);
    kept.changed = fields.text("changed");
    kept.binned = fields.text("binned");
    fields.need("ingredient");
    if (const Json* own = fields.any("ingredient"))
        kept.ingredient = store_recipe::own_from(*own, "ingredient", failure);
    fields.finish();
    if (failure.failed()) return *failure.error;
    return kept;
}

std::string write_settings(const workspace::Settings& settings, std::string_view open,
                           std::string_view place) {
    Writer writer = heading("settings");
    writer.pair("language", settings.language);
    for (const auto& [word, sign] : kSigns) {
        if (sign == settings.sign) writer.pair("decimal_sign", word);
    }
    for (const auto& [word, theme] : kThemes) {
        if (theme == settings.theme) writer.pair("theme", word);
    }
    writer.pair("hosted_address", settings.hosted_address);
    writer.key("scales");
    writer.list();
    for (const workspace::Scale& scale : settings.scales) {
        writer.object();
        writer.pair("name", scale.name);
        writer.pair_figure("division_g", scale.division.grid);
        if (scale.capacity.grid != 0) writer.pair_figure("capacity_g", scale.capacity.grid);
        writer.end();
    }
    writer.end();
    if (!settings.last_backup.empty()) writer.pair("last_backup", settings.last_backup);
    for (const auto& [word, sort] : kSorts)
        if (sort == settings.sort && sort != workspace::Sort::changed) writer.pair("sort", word);
    if (!settings.jugs.empty()) {
        writer.key("jugs");
        writer.list();
        for (const workspace::Jug& jug : settings.jugs) {
            writer.object();
            writer.pair("name", jug.name);
            if (jug.empty.grid != 0) writer.pair_figure("empty_g", jug.empty.grid);
            writer.end();
        }
        writer.end();
    }
    if (settings.maker != label::Maker{}) {
        writer.key("maker");
        store_label::write(writer, settings.maker);
    }
    if (!settings.batch_pattern.empty()) writer.pair("batch_pattern", settings.batch_pattern);
    if (settings.jug) {
        writer.key("jug");
        writer.whole(*settings.jug);
    }
    if (settings.label_sheet) {
        writer.key("label_sheet");
        store_papers::write(writer, *settings.label_sheet);
    }
    if (settings.workshop != workshop::Plan{}) {
        writer.key("workshop");
        store_papers::write(writer, settings.workshop);
    }
    if (settings.prices != price::Book{}) {
        writer.key("prices");
        store_prices::write(writer, settings.prices);
    }
    if (!settings.low.empty()) {
        writer.key("low");
        writer.list();
        for (const lot::Threshold& one : settings.low) {
            writer.flat_object();
            writer.pair("ingredient", one.ingredient);
            writer.pair_figure("under_g", one.grams.grid);
            writer.end();
        }
        writer.end();
    }
    if (!settings.firmness.empty()) {
        writer.key("firmness");
        store_blend::write(writer, settings.firmness);
    }
    if (!settings.reading.text.empty()) {
        writer.key("reading");
        store_reading::write(writer, settings.reading);
    }
    writer.pair("open", open);
    if (!place.empty()) writer.pair("place", place);
    return writer.finish();
}

result::Result<Device> read_settings(std::string_view json) {
    const result::Result<Json> document = opened(json, "settings");
    if (!document) return document.error();
    Failure failure;
    Fields fields(*document, "", failure);
    fields.any("tarebench");
    fields.any("kind");
    workspace::Settings settings;
    settings.language = fields.needed_text("language");
    const std::string sign_word = fields.needed_text("decimal_sign");
    bool known = false;
    for (const auto& [word, sign] : kSigns) {
        if (word == sign_word) settings.sign = sign, known = true;
    }
    if (!known) failure.at(result::Code::field_unknown_value, "decimal_sign", sign_word);
    const std::string theme_word = fields.needed_text("theme");
    known = false;
    for (const auto& [word, theme] : kThemes) {
        if (word == theme_word) settings.theme = theme, known = true;
    }
    if (!known) failure.at(result::Code::field_unknown_value, "theme", theme_word);
    settings.hosted_address = fields.text("hosted_address");
    fields.need("scales");
    settings.scales.clear();
    if (const Json* scales = fields.list("scales")) {
        for (std::size_t i = 0; i < scales->size() && !failure.failed(); ++i) {
            settings.scales.push_back(scale_from((*scales)[i], store_json::indexed("scales", i), failure));
        }
    }
    settings.last_backup = fields.text("last_backup");
    if (const std::string sort_word = fields.text("sort"); !sort_word.empty()) {
        known = false;
        for (const auto& [word, sort] : kSorts)
            if (word == sort_word) settings.sort = sort, known = true;
        if (!known) failure.at(result::Code::field_unknown_value, "sort", sort_word);
    }
    std::string open = fields.text("open"), place = fields.text("place");
    if (const Json* jugs = fields.list("jugs")) {
        for (std::size_t i = 0; i < jugs->size() && !failure.failed(); ++i)
            settings.jugs.push_back(jug_from((*jugs)[i], store_json::indexed("jugs", i), failure));
    }
    if (const Json* maker = fields.any("maker"))
        settings.maker = store_label::maker_from(*maker, "maker", failure);
    if (auto fault = label::fault_of(settings.maker, "maker."); fault && !failure.failed())
        failure.at(fault->code, fault->place, fault->detail);
    settings.batch_pattern = fields.text("batch_pattern");
    if (const Json* reading = fields.any("reading"))
        settings.reading = store_reading::kept_from(*reading, "reading", failure);
    if (const auto jug = fields.whole("jug")) {
        if (*jug < settings.jugs.size()) settings.jug = static_cast<std::size_t>(*jug);
    }
    if (const Json* sheet = fields.any("label_sheet"))
        settings.label_sheet = store_papers::sheet_from(*sheet, "label_sheet", failure);
    if (const Json* plan = fields.any("workshop"))
        settings.workshop = store_papers::plan_from(*plan, "workshop", failure);
    if (const Json* prices = fields.any("prices"))
        settings.prices = store_prices::book_from(*prices, "prices", failure);
    if (const Json* low = fields.list("low"))
        for (std::size_t i = 0; i < low->size() && !failure.failed(); ++i) {
            Fields one((*low)[i], store_json::indexed("low", i), failure);
            one.need("under_g");
            std::string of = one.needed_text("ingredient");
            settings.low.push_back({std::move(of), one.mass("under_g").value_or(quantity::Mass{})});
            one.finish();
        }
    if (auto fault = lot::fault_of(settings.low, "low"); fault && !failure.failed())
        failure.at(fault->code, fault->place, fault->detail);
    if (const Json* rated = fields.list("firmness"))
        settings.firmness = store_blend::rated_from(*rated, "firmness", failure);
    fields.finish();
    if (failure.failed()) return *failure.error;
    return Device{std::move(settings), std::move(open), std::move(place)};
}

}  // namespace store
