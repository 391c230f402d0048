#include "store_papers.h"

#include <algorithm>

namespace store_papers {

using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using store_json::Writer;

namespace {

void pair_count(Writer& writer, std::string_view key, std::int64_t count) {
    writer.key(key);
    writer.whole(static_cast<std::uint64_t>(count));
}

void take_count(Fields& fields, std::string_view key, std::int64_t& count) {
    constexpr std::uint64_t kMost = 1'000'000;
    if (const auto said = fields.whole(key)) count = static_cast<std::int64_t>(std::min(*said, kMost));
}

void take_figure(Fields& fields, std::string_view key, std::int64_t& figure) {
    figure = fields.figure(key).value_or(figure);
}

}  // namespace

void write(Writer& writer, const workshop::Plan& plan) {
    writer.object();
    pair_count(writer, "people", plan.people);
    pair_count(writer, "each", plan.each);
    pair_count(writer, "stations", plan.stations);
    pair_count(writer, "shown", plan.shown);
    pair_count(writer, "spare", plan.spare);
    writer.pair_figure("sample_g", plan.sample.grid);
    writer.key("diluted");
    writer.flag(plan.diluted);
    pair_count(writer, "starts_minute", plan.starts);
    pair_count(writer, "watts", plan.watts);
    pair_count(writer, "volts", plan.volts);
    pair_count(writer, "amperes", plan.amperes);
    writer.key("packs");
    writer.list();
    for (const workshop::Pack& one : plan.packs) {
        writer.flat_object();
        writer.pair("ingredient", one.ingredient);
        writer.pair_figure("pack_g", one.grams.grid);
        writer.end();
    }
    writer.end();
    writer.end();
}

workshop::Plan plan_from(const Json& value, const std::string& place, Failure& failure) {
    workshop::Plan plan;
    Fields fields(value, place, failure);
    take_count(fields, "people", plan.people);
    take_count(fields, "each", plan.each);
    take_count(fields, "stations", plan.stations);
    take_count(fields, "shown", plan.shown);
    take_count(fields, "spare", plan.spare);
    plan.sample = fields.mass("sample_g").value_or(plan.sample);
    if (fields.has("diluted")) plan.diluted = fields.flag("diluted");
    take_count(fields, "starts_minute", plan.starts);
    take_count(fields, "watts", plan.watts);
    take_count(fields, "volts", plan.volts);
    take_count(fields, "amperes", plan.amperes);
    if (const Json* packs = fields.list("packs"))
        for (std::size_t i = 0; i < packs->size() && !failure.failed(); ++i) {
            Fields pack((*packs)[i], store_json::indexed(fields.place("packs"), i), failure);
            pack.need("pack_g");
            std::string ingredient = pack.needed_text("ingredient");
            plan.packs.push_back({std::move(ingredient), pack.mass("pack_g").value_or(quantity::Mass{})});
            pack.finish();
        }
    fields.finish();
    if (auto fault = workshop::fault_of(plan, place + "."); fault && !failure.failed())
        failure.at(fault->code, fault->place, fault->detail);
    return plan;
}

void write(Writer& writer, const label_sheet::Sheet& sheet) {
    writer.object();
    writer.pair("paper", sheet.paper == label_sheet::Paper::letter ? "letter" : "a4");
    pair_count(writer, "columns", sheet.columns);
    pair_count(writer, "rows", sheet.rows);
    writer.pair_figure("width_mm", sheet.width);
    writer.pair_figure("height_mm", sheet.height);
    writer.pair_figure("left_mm", sheet.left);
    writer.pair_figure("top_mm", sheet.top);
    writer.pair_figure("across_mm", sheet.across);
    writer.pair_figure("down_mm", sheet.down);
    writer.pair_figure("shift_right_mm", sheet.shift_right);
    writer.pair_figure("shift_down_mm", sheet.shift_down);
    writer.end();
}

label_sheet::Sheet sheet_from(const Json& value, const std::string& place, Failure& failure) {
    label_sheet::Sheet sheet;
    Fields fields(value, place, failure);
    const std::string paper = fields.text("paper");
    if (paper == "letter")
        sheet.paper = label_sheet::Paper::letter;
    else if (!paper.empty() && paper != "a4")
        failure.at(result::Code::field_unknown_value, fields.place("paper"), paper);
    take_count(fields, "columns", sheet.columns);
    take_count(fields, "rows", sheet.rows);
    take_figure(fields, "width_mm", sheet.width);
    take_figure(fields, "height_mm", sheet.height);
    take_figure(fields, "left_mm", sheet.left);
    take_figure(fields, "top_mm", sheet.top);
    take_figure(fields, "across_mm", sheet.across);
    take_figure(fields, "down_mm", sheet.down);
    take_figure(fields, "shift_right_mm", sheet.shift_right);
    take_figure(fields, "shift_down_mm", sheet.shift_down);
    fields.finish();
    if (auto fault = label_sheet::fault_of(sheet, place + "."); fault && !failure.failed())
        failure.at(fault->code, fault->place, fault->detail);
    return sheet;
}

}  // namespace store_papers
