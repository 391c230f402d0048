// tarebench check: a recipe to what is found in it, what was looked at and what could not be. A formula that
// does not add up is no refusal here but a finding. An own entry of the file counts as came along: nothing on
// a command line vouches for it.
#include "analysis.h"
#include "door.h"
#include "store_json.h"
#include "store_limits.h"

namespace door {
namespace {

using finding::Finding;

struct Names {
    const workspace::Recipe& recipe;
    const catalogue::Catalogue& shipped;

    std::string of(const std::string& subject) const {
        if (const auto* one = catalogue::find_ingredient(shipped, subject)) return one->name;
        for (const catalogue::Ingredient& own : recipe.own)
            if (own.id == subject && !own.name.empty()) return own.name;
        if (const auto* one = catalogue::find_product(shipped, subject)) return one->name;
        return subject;
    }
};

void write_figure(store_json::Writer& writer, std::string_view key, const std::optional<std::int64_t>& grid,
                  const std::optional<quantity::Trace>& trace) {
    if (!trace && !grid) return;
    writer.key(key);
    if (trace)
        writer.fine(trace->grid, quantity::kTracePlaces);
    else
        writer.figure(*grid);
}

void write_some(store_json::Writer& writer, std::string_view key, const std::string& text) {
    if (!text.empty()) writer.pair(key, text);
}

void write_finding(store_json::Writer& writer, const Finding& one, const Names& names,
                   const words::Table& words, const limits::Book& book) {
    const composition::Id id = composition::find(book.composition, one.constituent);
    const std::string constituent =
        id == composition::kNone ? one.constituent : book.composition.constituents[id].name;
    writer.object();
    writer.pair("code", finding::code_name(one.code));
    writer.pair("severity", finding::severity_name(one.severity));
    if (one.line) {
        writer.key("line");
        writer.whole(*one.line);
    }
    write_some(writer, "ingredient", one.subject);
    write_some(writer, "constituent", one.constituent);
    write_figure(writer, "value", one.value, one.trace);
    write_figure(writer, "limit", one.limit, one.trace_limit);
    write_figure(writer, "usual_case", {}, one.trace_typical);
    write_some(writer, "unit", one.unit);
    write_some(writer, "rule", one.rule);
    write_some(writer, "edition", one.edition);
    if (!one.source.empty()) {
        writer.pair("source", one.source);
        writer.pair("standing", source::standing_name(one.standing));
    }
    if (one.shares.size() > 1) {
        writer.key("from");
        writer.list();
        for (const finding::Share& share : one.shares) {
            writer.flat_object();
            writer.pair("ingredient", share.subject);
            write_figure(writer, "value", {}, share.high);
            writer.end();
        }
        writer.end();
    }
    const std::string subject = names.of(one.subject);
    writer.pair("text", finding::say(words, one, subject, constituent));
    write_some(writer, "do", finding::advice(words, one, subject, constituent));
    writer.end();
}

void write_list(store_json::Writer& writer, std::string_view key, const std::vector<std::string>& list) {
    if (list.empty()) return;
    writer.key(key);
    writer.list();
    for (const std::string& one : list)
        writer.text(one);
    writer.end();
}

}  // namespace

Answer check(std::string_view input, const store::Presets& presets, std::string_view limits) {
    const result::Result<workspace::Recipe> recipe = store::read_recipe(input);
    if (!recipe) return refuse(recipe.error(), presets);
    const result::Result<limits::Book> book = limits.empty() ? limits::Book{} : store::unpack_limits(limits);
    if (!book) return refuse(book.error(), presets);
    const safety::Report report =
        analysis::checks(*recipe, presets.catalogue, limits.empty() ? nullptr : &book.value());
    const words::Table& words = english(presets);
    const Names names{*recipe, presets.catalogue};

    store_json::Writer writer(store_json::Layout::indented);
    writer.object();
    writer.key("findings");
    writer.list();
    for (const Finding& one : report.findings)
        write_finding(writer, one, names, words, *book);
    writer.end();
    writer.key("made");
    writer.list();
    for (const safety::Made& one : report.made) {
        writer.flat_object();
        writer.pair("rule", safety::rule_name(one.rule));
        write_some(writer, "row", one.row);
        write_list(writer, "looked_at", one.looked_at);
        writer.end();
    }
    writer.end();
    writer.key("not_made");
    writer.list();
    for (const safety::NotMade& one : report.not_made) {
        writer.flat_object();
        writer.pair("rule", safety::rule_name(one.rule));
        write_some(writer, "row", one.row);
        writer.pair("reason", safety::reason_name(one.reason));
        write_list(writer, "about", one.about);
        writer.end();
    }
    writer.end();
    writer.key("cautions");
    writer.list();
    for (const std::string& key : report.cautions)
        writer.text(words::say(words, key));
    writer.end();
    return {0, writer.finish(), ""};
}

}  // namespace door
