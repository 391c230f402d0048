#include "store_reading.h"

#include <array>
#include <utility>

namespace store_reading {
namespace {

using reading::Kind;
using reading::Statement;
using store_json::Failure;
using store_json::Fields;
using store_json::Json;
using store_json::Writer;

constexpr std::array<std::pair<std::string_view, Kind>, 3> kSaid{
    {{"amount", Kind::amount}, {"group", Kind::group}, {"property", Kind::property}}};

// Each element of the list at `key`, with its place.
template <class Read>
void each(Fields& fields, std::string_view key, Failure& failure, Read read) {
    const Json* list = fields.list(key);
    if (list == nullptr) return;
    for (std::size_t i = 0; i < list->size() && !failure.failed(); ++i)
        read((*list)[i], store_json::indexed(fields.place(key), i));
}

std::size_t entry_of(const Json& value, const std::string& place, Failure& failure) {
    const std::int64_t grid = store_json::figure_of(value, place, failure);
    if (grid >= 0 && grid % 10000 == 0) return static_cast<std::size_t>(grid / 10000);
    failure.at(result::Code::field_unknown_value, place);
    return 0;
}

Statement statement_from(const Json& value, const std::string& place, Failure& failure) {
    Fields fields(value, place, failure);
    Statement one;
    const std::string word = fields.needed_text("kind");
    bool known = false;
    for (const auto& [name, kind] : kSaid)
        if (name == word) one.kind = kind, known = true;
    if (!known) failure.at(result::Code::field_unknown_value, fields.place("kind"), word);
    one.on = !fields.flag("off");
    one.subject = fields.text("of");
    each(fields, "entries", failure, [&](const Json& entry, const std::string& at) {
        one.terms.push_back({entry_of(entry, at, failure)});
    });
    one.min = fields.figure("min");
    one.max = fields.figure("max");
    fields.finish();
    return one;
}

void write_statement(Writer& writer, const Statement& one) {
    writer.flat_object();
    for (const auto& [name, kind] : kSaid)
        if (kind == one.kind) writer.pair("kind", name);
    if (!one.on) {
        writer.key("off");
        writer.flag(true);
    }
    if (!one.subject.empty()) writer.pair("of", one.subject);
    if (!one.terms.empty() && one.kind != Kind::property) {
        writer.key("entries");
        writer.list();
        for (const reading::Term& term : one.terms)
            writer.whole(term.item);
        writer.end();
    }
    if (one.min) writer.pair_figure("min", *one.min);
    if (one.max) writer.pair_figure("max", *one.max);
    writer.end();
}

}  // namespace

reading::Kept kept_from(const Json& value, const std::string& place, Failure& failure) {
    Fields fields(value, place, failure);
    reading::Kept kept;
    kept.text = fields.needed_text("list");
    kept.title = fields.text("title");
    kept.product = fields.text("product");
    kept.market = fields.text("market");
    kept.date = fields.text("date");
    each(fields, "decided", failure, [&](const Json& one, const std::string& at) {
        Fields said(one, at, failure);
        reading::Decided decided;
        said.need("entry");
        decided.entry = static_cast<std::size_t>(said.whole("entry").value_or(0));
        decided.ingredient = said.text("ingredient");
        decided.as = static_cast<std::size_t>(said.whole("as").value_or(0));
        said.finish();
        kept.decided.push_back(std::move(decided));
    });
    if (const auto after = fields.whole("one_percent_after"))
        kept.line_after = static_cast<std::size_t>(*after);
    each(fields, "said", failure, [&](const Json& one, const std::string& at) {
        kept.said.push_back(statement_from(one, at, failure));
    });
    each(fields, "turned", failure, [&](const Json& one, const std::string& at) {
        kept.turned.push_back(store_json::text_of(one, at, failure));
    });
    fields.finish();
    return kept;
}

void write(Writer& writer, const reading::Kept& kept) {
    writer.object();
    writer.pair("list", kept.text);
    if (!kept.title.empty()) writer.pair("title", kept.title);
    if (!kept.product.empty()) writer.pair("product", kept.product);
    if (!kept.market.empty()) writer.pair("market", kept.market);
    if (!kept.date.empty()) writer.pair("date", kept.date);
    if (!kept.decided.empty()) {
        writer.key("decided");
        writer.list();
        for (const reading::Decided& one : kept.decided) {
            writer.flat_object();
            writer.key("entry");
            writer.whole(one.entry);
            if (!one.ingredient.empty()) writer.pair("ingredient", one.ingredient);
            if (one.as != 0) {
                writer.key("as");
                writer.whole(one.as);
            }
            writer.end();
        }
        writer.end();
    }
    if (kept.line_after) {
        writer.key("one_percent_after");
        writer.whole(*kept.line_after);
    }
    if (!kept.said.empty()) {
        writer.key("said");
        writer.list();
        for (const Statement& one : kept.said)
            write_statement(writer, one);
        writer.end();
    }
    if (!kept.turned.empty()) {
        writer.key("turned");
        writer.list();
        for (const std::string& one : kept.turned)
            writer.text(one);
        writer.end();
    }
    writer.end();
}

}  // namespace store_reading
