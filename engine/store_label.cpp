#include "store_label.h"

#include <array>
#include <utility>

namespace store_label {
namespace {

using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using store_json::Writer;
using type_height::Panel;
using type_height::Shape;

constexpr std::array<std::pair<std::string_view, Shape>, 4> kShapes{{{"rectangle", Shape::rectangle},
                                                                     {"cylinder", Shape::cylinder},
                                                                     {"round_top", Shape::round_top},
                                                                     {"other", Shape::other}}};

std::vector<std::string> texts_from(Fields& fields, std::string_view key, Failure& failure) {
    std::vector<std::string> texts;
    if (const Json* list = fields.list(key))
        for (std::size_t i = 0; i < list->size() && !failure.failed(); ++i)
            texts.push_back(
                store_json::text_of((*list)[i], store_json::indexed(fields.place(key), i), failure));
    return texts;
}
void write_texts(Writer& writer, std::string_view key, const std::vector<std::string>& texts) {
    if (texts.empty()) return;
    writer.key(key);
    writer.list();
    for (const std::string& one : texts)
        writer.text(one);
    writer.end();
}

std::optional<std::int64_t> months_from(Fields& fields, std::string_view key) {
    const std::optional<std::uint64_t> months = fields.whole(key);
    if (!months) return std::nullopt;
    return static_cast<std::int64_t>(std::min<std::uint64_t>(*months, 1'000'000));
}
void write_months(Writer& writer, std::string_view key, std::optional<std::int64_t> months) {
    if (!months) return;
    writer.key(key);
    writer.whole(static_cast<std::uint64_t>(std::max<std::int64_t>(0, *months)));
}
void write_flag(Writer& writer, std::string_view key, bool value) {
    if (!value) return;
    writer.key(key);
    writer.flag(true);
}

Panel panel_from(const Json& value, const std::string& place, Failure& failure) {
    Fields fields(value, place, failure);
    Panel panel;
    const std::string word = fields.needed_text("shape");
    bool known = false;
    for (const auto& [name, shape] : kShapes)
        if (name == word) panel.shape = shape, known = true;
    if (!known) failure.at(result::Code::field_unknown_value, fields.place("shape"), word);
    panel.height = fields.figure("height_mm").value_or(0);
    panel.width = fields.figure("width_mm").value_or(0);
    panel.moulded = fields.flag("moulded");
    fields.finish();
    return panel;
}
void write_panel(Writer& writer, const Panel& panel) {
    writer.key("panel");
    writer.flat_object();
    for (const auto& [name, shape] : kShapes)
        if (shape == panel.shape) writer.pair("shape", name);
    if (panel.height != 0) writer.pair_figure("height_mm", panel.height);
    writer.pair_figure("width_mm", panel.width);
    write_flag(writer, "moulded", panel.moulded);
    writer.end();
}

}  // namespace

label::Said said_from(const Json& value, const std::string& place, Failure& failure) {
    Fields fields(value, place, failure);
    label::Said said;
    said.identity = fields.text("identity");
    said.identity_french = fields.text("identity_french");
    said.keeping.months = months_from(fields, "keeps_months");
    said.keeping.opened_months = months_from(fields, "opened_months");
    said.keeping.never_opened = fields.flag("never_opened");
    said.scent_together = fields.flag("scent_together");
    said.leaflet = fields.flag("leaflet");
    said.colours = texts_from(fields, "colours", failure);
    said.nano = texts_from(fields, "nano", failure);
    said.may_contain = texts_from(fields, "may_contain", failure);
    said.warnings = texts_from(fields, "warnings", failure);
    said.directions = texts_from(fields, "directions", failure);
    if (const Json* panel = fields.any("panel"))
        said.panel = panel_from(*panel, fields.place("panel"), failure);
    fields.finish();
    return said;
}

void write(Writer& writer, const label::Said& said) {
    writer.object();
    if (!said.identity.empty()) writer.pair("identity", said.identity);
    if (!said.identity_french.empty()) writer.pair("identity_french", said.identity_french);
    write_months(writer, "keeps_months", said.keeping.months);
    write_months(writer, "opened_months", said.keeping.opened_months);
    write_flag(writer, "never_opened", said.keeping.never_opened);
    write_flag(writer, "scent_together", said.scent_together);
    write_flag(writer, "leaflet", said.leaflet);
    write_texts(writer, "colours", said.colours);
    write_texts(writer, "nano", said.nano);
    write_texts(writer, "may_contain", said.may_contain);
    write_texts(writer, "warnings", said.warnings);
    write_texts(writer, "directions", said.directions);
    if (said.panel) write_panel(writer, *said.panel);
    writer.end();
}

label::Maker maker_from(const Json& value, const std::string& place, Failure& failure) {
    Fields fields(value, place, failure);
    label::Maker maker{fields.text("name"), fields.text("address"), fields.text("contact"),
                       fields.text("country")};
    fields.finish();
    return maker;
}

void write(Writer& writer, const label::Maker& maker) {
    writer.object();
    for (const auto& [key, text] :
         {std::pair("name", &maker.name), std::pair("address", &maker.address),
          std::pair("contact", &maker.contact), std::pair("country", &maker.country)})
        if (!text->empty()) writer.pair(key, *text);
    writer.end();
}

}  // namespace store_label
