// tarebench label: a recipe to what its label says in its market, with what is not certain and what a sale
// still needs. Who answers for it, how long it keeps and the batch's number are no part of a recipe and stand
// as missing.
#include "analysis.h"
#include "door.h"
#include "labelling.h"
#include "store_json.h"
#include "store_limits.h"

namespace door {
namespace {

using labelling::Labelled;

std::string_view block_name(declaration::Block block) {
    switch (block) {
        case declaration::Block::ordered:
            return "ordered";
        case declaration::Block::free:
            return "free";
        case declaration::Block::allergen:
            return "allergen";
        case declaration::Block::colour:
            return "colour";
        case declaration::Block::scent_last:
            return "last";
        case declaration::Block::may_contain:
            return "may_contain";
    }
    return "";
}

void texts(store_json::Writer& writer, std::string_view key, const std::vector<std::string>& list) {
    writer.key(key);
    writer.list();
    for (const std::string& one : list)
        writer.text(one);
    writer.end();
}

void standing(store_json::Writer& writer, std::string_view source, source::Standing how) {
    writer.pair("source", source);
    writer.pair("standing", source::standing_name(how));
}

void write_items(store_json::Writer& writer, const declaration::Declaration& list) {
    std::vector<std::string> names, allergens;
    for (const declaration::Item& item : list.items) {
        names.push_back(item.name.empty() ? "[" + item.from.front() + "]" : item.name);
        if (item.allergen) allergens.push_back(item.name);
    }
    texts(writer, "declaration", names);
    texts(writer, "allergens", allergens);
    writer.key("items");
    writer.list();
    for (const declaration::Item& item : list.items) {
        writer.flat_object();
        if (!item.name.empty()) writer.pair("name", item.name);
        texts(writer, "from", item.from);
        writer.pair("block", block_name(item.block));
        if (item.percent) writer.pair_figure("percent", item.percent->grid);
        if (item.nano) {
            writer.key("nano");
            writer.flag(true);
        }
        standing(writer, item.source, item.standing);
        writer.end();
    }
    writer.end();
}

void write_net(store_json::Writer& writer, const Labelled& made) {
    if (!made.net || !made.label.net) return;
    using net_contents::Unit;
    const auto metric = [](net_contents::Fine amount, bool volume, Unit unit) {  // as it is printed
        const net_contents::Figure figure = net_contents::metric(amount, volume);
        return net_contents::in(net_contents::fine_of(figure.grid, figure.unit), unit);
    };
    const auto mass = net_contents::fine_of(made.net->mass.grid, Unit::g);
    writer.key("net");
    writer.flat_object();
    writer.pair_figure("g", metric(mass, false, Unit::g));
    writer.pair_figure("oz", net_contents::hundredths(mass, Unit::oz));
    if (made.net->volume) {
        const auto volume = net_contents::fine_of(made.net->volume->grid, Unit::ml);
        writer.pair_figure("ml", metric(volume, true, Unit::ml));
        writer.pair_figure("fl_oz", net_contents::hundredths(volume, Unit::fl_oz));
    }
    writer.pair("text", made.label.net->text);
    writer.end();
}

void write_entries(store_json::Writer& writer, const label::Label& label) {
    writer.key("fields");
    writer.list();
    for (const label::Entry& entry : label.entries) {
        writer.flat_object();
        writer.pair("field", label::field_name(entry.field));
        writer.pair("state", label::state_name(entry.state));
        if (!entry.text.empty()) writer.pair("text", entry.text);
        if (entry.aside != label::Aside::none) writer.pair("may_stand_on", label::aside_name(entry.aside));
        if (!entry.rule.empty()) {
            writer.pair("rule", entry.rule);
            standing(writer, entry.source, entry.standing);
        }
        writer.end();
    }
    writer.end();
}

void write_warnings(store_json::Writer& writer, const std::vector<labelling::Warning>& warnings) {
    writer.key("warnings");
    writer.list();
    for (const labelling::Warning& one : warnings) {
        writer.flat_object();
        writer.pair("text", one.sentence);
        writer.key("due");
        writer.flag(one.due);
        if (!one.rule.empty()) writer.pair("rule", one.rule);
        standing(writer, one.source, one.standing);
        writer.end();
    }
    writer.end();
}

void write_needs(store_json::Writer& writer, const std::vector<sale_needs::Need>& needs,
                 const words::Table& table) {
    writer.key("sale");
    writer.list();
    for (const sale_needs::Need& need : needs) {
        writer.flat_object();
        writer.pair("id", need.id);
        writer.pair("text", words::say(table, "sale." + std::string(need.id)));
        if (!need.rule.empty()) writer.pair("rule", need.rule);
        standing(writer, need.source, need.standing);
        writer.end();
    }
    writer.end();
}

}  // namespace

Answer label(std::string_view input, const store::Presets& presets, std::string_view limits) {
    const result::Result<workspace::Recipe> recipe = store::read_recipe(input);
    if (!recipe) return refuse(recipe.error(), presets);
    const result::Result<limits::Book> book = limits.empty() ? limits::Book{} : store::unpack_limits(limits);
    if (!book) return refuse(book.error(), presets);
    const words::Table& table = english(presets);
    const analysis::Analysis report = analysis::of(*recipe, presets.catalogue);
    const labelling::Allergens allergens = labelling::allergens_of(
        *recipe, presets.catalogue, {}, limits.empty() ? nullptr : &book.value(), table);
    const safety::Report checks =
        analysis::checks(*recipe, presets.catalogue, limits.empty() ? nullptr : &book.value());
    const auto made = labelling::of(*recipe, report.batch ? std::optional(*report.batch) : std::nullopt,
                                    presets.catalogue, {}, allergens, table, &checks);
    if (!made) return refuse(made.error(), presets);

    store_json::Writer writer(store_json::Layout::indented);
    writer.object();
    writer.pair("market", market::id_of(made->label.market));
    write_items(writer, made->list);
    write_net(writer, *made);
    write_entries(writer, made->label);
    texts(writer, "remarks", made->label.remarks);
    write_warnings(writer, made->warnings);
    write_needs(writer, made->needs, table);
    writer.pair("text", made->label.text);
    return {0, writer.finish(), ""};
}

}  // namespace door
