#include "store_prices.h"

#include <array>

namespace store_prices {
namespace {

using money::Amount;
using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using store_json::Writer;

constexpr std::array<std::string_view, 4> kOf{"ingredient", "container", "label", "box"};
constexpr std::array<std::string_view, 3> kUnits{"g", "ml", "pieces"};  // as price::Unit has them
constexpr std::array<std::string_view, 2> kBy{"margin", "mark_up"};

void pair(Writer& writer, std::string_view key, const std::string& text) {
    if (!text.empty()) writer.pair(key, text);
}

void write(Writer& writer, std::string_view key, const std::optional<money::Sum>& sum) {
    if (!sum) return;
    writer.key(key);
    writer.flat_object();
    writer.pair_figure("amount", money::grid_of(sum->amount, sum->currency));
    writer.pair("currency", sum->currency);
    writer.end();
}

void write(Writer& writer, std::string_view key, const std::optional<price::Step>& step) {
    if (!step) return;
    writer.key(key);
    writer.flat_object();
    writer.pair_figure(std::string(kBy[static_cast<std::size_t>(step->by)]) + "_percent", step->percent);
    writer.end();
}

void write(Writer& writer, const price::Pack& pack) {
    writer.flat_object();
    if (pack.what.empty())
        writer.pair("for", kOf[static_cast<std::size_t>(pack.of)]);
    else
        writer.pair(kOf[static_cast<std::size_t>(pack.of)], pack.what);
    writer.pair_figure(kUnits[static_cast<std::size_t>(pack.unit)], pack.size);
    writer.pair_figure("price", money::grid_of(pack.paid, pack.currency));
    if (pack.delivery.minor != 0)
        writer.pair_figure("delivery", money::grid_of(pack.delivery, pack.currency));
    writer.pair("currency", pack.currency);
    pair(writer, "day", pack.day);
    pair(writer, "supplier", pack.supplier);
    if (pack.chosen) {
        writer.key("chosen");
        writer.flag(true);
    }
    writer.end();
}

// A figure in the main unit; `at` is what stands in the way.
Amount amount_from(Fields& fields, std::string_view key, std::string_view currency, bool needed) {
    const std::optional<std::int64_t> grid = fields.figure(key);
    if (needed) fields.need(key);
    if (!grid || fields.failure().failed()) return {};
    const auto amount = money::amount_of(*grid, currency);
    if (amount) return *amount;
    const bool currency_is = amount.error().code == result::Code::field_unknown_value;
    fields.failure().at(amount.error().code, fields.place(currency_is ? "currency" : key),
                        amount.error().detail);
    return {};
}

std::optional<money::Sum> sum_from(Fields& of, std::string_view key) {
    const Json* value = of.object(key);
    if (!value) return std::nullopt;
    Fields fields(*value, of.place(key), of.failure());
    money::Sum sum;
    sum.currency = fields.needed_text("currency");
    sum.amount = amount_from(fields, "amount", sum.currency, true);
    fields.finish();
    return sum;
}

std::optional<price::Step> step_from(Fields& of, std::string_view key) {
    const Json* value = of.object(key);
    if (!value) return std::nullopt;
    Fields fields(*value, of.place(key), of.failure());
    price::Step step;
    const bool up = fields.has("mark_up_percent");
    const std::string_view name = up ? "mark_up_percent" : "margin_percent";
    step.by = up ? price::By::mark_up : price::By::margin;
    fields.need(name);
    step.percent = fields.figure(name).value_or(0);
    fields.finish();
    return step;
}

price::Pack pack_from(const Json& value, const std::string& place, Failure& failure) {
    price::Pack pack;
    Fields fields(value, place, failure);
    std::string_view of = "ingredient";
    for (const std::string_view key : {kOf[0], kOf[1]})
        if (fields.has(key)) of = key;
    const std::string for_each = fields.has(of) ? "" : fields.text("for");
    if (for_each.empty())
        pack.what = fields.needed_text(of);
    else
        of = for_each;
    bool known = false;
    for (std::size_t i = 0; i < kOf.size(); ++i)
        if (kOf[i] == of) pack.of = static_cast<price::Of>(i), known = true;
    if (!known) failure.at(result::Code::field_unknown_value, fields.place("for"), for_each);
    std::string_view unit = kUnits[pack.of == price::Of::ingredient ? 0 : 2];
    for (std::size_t i = 0; i < kUnits.size(); ++i)
        if (fields.has(kUnits[i])) unit = kUnits[i];
    for (std::size_t i = 0; i < kUnits.size(); ++i)
        if (kUnits[i] == unit) pack.unit = static_cast<price::Unit>(i);
    fields.need(unit);
    pack.size = fields.figure(unit).value_or(0);
    pack.currency = fields.needed_text("currency");
    pack.paid = amount_from(fields, "price", pack.currency, true);
    pack.delivery = amount_from(fields, "delivery", pack.currency, false);
    pack.day = fields.text("day");
    pack.supplier = fields.text("supplier");
    pack.chosen = fields.flag("chosen");
    fields.finish();
    return pack;
}

price::Rate rate_from(const Json& value, const std::string& place, Failure& failure) {
    price::Rate rate;
    Fields fields(value, place, failure);
    rate.from = fields.needed_text("from");
    rate.to = fields.needed_text("to");
    fields.need("gives");
    rate.amount = fields.figure("amount").value_or(decimal::kOne);
    rate.gives = fields.figure("gives").value_or(0);
    rate.day = fields.needed_text("day");
    rate.source = fields.text("source");
    fields.finish();
    return rate;
}

price::Making making_from(const Json& value, const std::string& place, Failure& failure) {
    price::Making making;
    Fields fields(value, place, failure);
    making.recipe = fields.text("recipe");
    making.minutes_batch = fields.figure("minutes_batch");
    making.minutes_unit = fields.figure("minutes_unit");
    if (fields.has("label")) making.label = fields.flag("label");
    making.box = fields.flag("box");
    fields.finish();
    return making;
}

template <class One, class From>
void read_list(Fields& fields, std::string_view key, std::vector<One>& list, From from) {
    const Json* json = fields.list(key);
    for (std::size_t i = 0; json && i < json->size() && !fields.failure().failed(); ++i)
        list.push_back(from((*json)[i], store_json::indexed(fields.place(key), i), fields.failure()));
}

}  // namespace

void write(Writer& writer, const price::Book& book) {
    writer.object();
    pair(writer, "currency", book.currency);
    writer.key("packs");
    writer.list();
    for (const price::Pack& pack : book.packs)
        write(writer, pack);
    writer.end();
    writer.key("rates");
    writer.list();
    for (const price::Rate& rate : book.rates) {
        writer.flat_object();
        writer.pair("from", rate.from);
        writer.pair("to", rate.to);
        writer.pair_figure("amount", rate.amount);
        writer.pair_figure("gives", rate.gives);
        writer.pair("day", rate.day);
        pair(writer, "source", rate.source);
        writer.end();
    }
    writer.end();
    write(writer, "hour", book.hour);
    write(writer, "overhead_batch", book.overhead_batch);
    if (book.overhead_percent != 0) writer.pair_figure("overhead_percent", book.overhead_percent);
    write(writer, "wholesale", book.wholesale);
    write(writer, "retail", book.retail);
    write(writer, "fixed", book.fixed);
    writer.key("makings");
    writer.list();
    for (const price::Making& making : book.makings) {
        writer.flat_object();
        pair(writer, "recipe", making.recipe);
        if (making.minutes_batch) writer.pair_figure("minutes_batch", *making.minutes_batch);
        if (making.minutes_unit) writer.pair_figure("minutes_unit", *making.minutes_unit);
        writer.key("label");
        writer.flag(making.label);
        writer.key("box");
        writer.flag(making.box);
        writer.end();
    }
    writer.end();
    writer.end();
}

price::Book book_from(const Json& value, const std::string& place, Failure& failure) {
    price::Book book;
    Fields fields(value, place, failure);
    book.currency = fields.text("currency");
    read_list(fields, "packs", book.packs, pack_from);
    read_list(fields, "rates", book.rates, rate_from);
    read_list(fields, "makings", book.makings, making_from);
    book.hour = sum_from(fields, "hour");
    book.overhead_batch = sum_from(fields, "overhead_batch");
    book.overhead_percent = fields.figure("overhead_percent").value_or(0);
    book.wholesale = step_from(fields, "wholesale");
    book.retail = step_from(fields, "retail");
    book.fixed = sum_from(fields, "fixed");
    fields.finish();
    if (failure.failed()) return book;
    if (auto fault = price::fault_of(book, place + ".")) failure.at(fault->code, fault->place, fault->detail);
    return book;
}

}  // namespace store_prices
