// tarebench swap: a recipe and one of its lines to what can stand in the line's place, each worked out; with
// "by" one of them alone beside the recipe as it is, with "nearest" the nearest formula without the
// ingredient. Prices may come along, as for the verb cost.
#include "analysis.h"
#include "comparison.h"
#include "door.h"
#include "store_json.h"
#include "store_limits.h"
#include "store_prices.h"
#include "store_recipe.h"
#include "swap.h"

namespace door {
namespace {

using result::Code;
using result::Error;
using store_json::Fields;
using store_json::Json;

struct Swap {
    workspace::Recipe recipe;
    swap::Wish wish;
    std::string by;
    bool nearest = false;
    std::optional<price::Book> prices;
};

result::Result<Swap> swap_asked(std::string_view input) {
    const auto tree = store_json::parse(input);
    if (!tree) return tree.error();
    store_json::Failure failure;
    Fields fields(*tree, "", failure);
    fields.need("recipe");
    fields.need("line");
    if (failure.failed()) return *failure.error;
    auto recipe = store::read_recipe(fields.any("recipe")->dump());
    if (!recipe) return recipe.error();
    Swap asked;
    asked.recipe = std::move(recipe).value();
    asked.wish.without = static_cast<std::size_t>(fields.whole("line").value_or(0));
    asked.by = fields.text("by");
    if (const Json* list = fields.list("nearest")) {
        asked.nearest = true;
        for (std::size_t i = 0; i < list->size(); ++i)
            asked.wish.by.push_back(
                store_json::text_of((*list)[i], store_json::indexed("nearest", i), failure));
    }
    asked.wish.others_move = fields.flag("others_move");
    if (const Json* prices = fields.object("prices"))
        asked.prices = store_prices::book_from(*prices, "prices", failure);
    fields.finish();
    if (failure.failed()) return *failure.error;
    return asked;
}

struct SwapWriter {
    const Swap& asked;
    const store::Presets& presets;
    const limits::Book* book;
    store_json::Writer json{store_json::Layout::indented};

    void row(const comparison::Row& one) {
        json.flat_object();
        json.pair("part", comparison::part_name(one.part));
        json.pair("key", one.key);
        if (one.values.front()) json.pair_figure("was", *one.values.front());
        if (one.values.back()) json.pair_figure("is", *one.values.back());
        json.end();
    }
    void findings(std::string_view key, const std::vector<finding::Finding>& all) {
        json.key(key);
        json.list();
        for (const finding::Finding& one : all) {
            json.flat_object();
            json.pair("code", finding::code_name(one.code));
            if (!one.subject.empty()) json.pair("ingredient", one.subject);
            json.end();
        }
        json.end();
    }
    // The changed formula beside the recipe as it is: only what differs, or all of the lines.
    void effects(formula::Formula changed) {
        workspace::Recipe after = asked.recipe;
        after.formula = std::move(changed);
        const scales::Bench bench;
        const std::vector<catalogue::Ingredient> mine;
        const comparison::Table table =
            comparison::of({&asked.recipe, &after},
                           {presets.catalogue, book, asked.prices ? &*asked.prices : nullptr, bench, mine});
        json.key("compared");
        json.list();
        for (const comparison::Row& one : table.rows)
            if (one.part == comparison::Part::lines || one.differs()) row(one);
        json.end();
        findings("found", table.come);
        findings("no_longer_found", table.gone);
    }
    void stand_in(const swap::StandIn& one, const catalogue::Catalogue& known) {
        json.object();
        json.pair("ingredient", one.ingredient);
        json.pair_figure("g_per_g", one.factor);
        json.pair_figure("min_g_per_g", one.range.min);
        json.pair_figure("max_g_per_g", one.range.max);
        json.pair("basis", swap::basis_name(one.basis));
        if (!one.by_way_of.empty()) json.pair("by_way_of", one.by_way_of);
        json.pair("source", one.source);
        json.pair("standing", source::standing_name(one.standing));
        if (!one.note.empty()) json.pair("note", one.note);
        auto changed = swap::taken(asked.recipe.formula, asked.wish.without, one, known);
        if (changed)
            effects(std::move(changed).value());
        else
            json.pair("why_not", words::say(english(presets), changed.error()));
        json.end();
    }
    void shares(std::string_view key, const std::vector<swap::Share>& all) {
        json.key(key);
        json.list();
        for (const swap::Share& one : all) {
            json.flat_object();
            json.pair("key", one.key);
            json.pair_figure("was", one.was.grid);
            json.pair_figure("is", one.is.grid);
            json.end();
        }
        json.end();
    }
    void nearest(const swap::Nearest& found) {
        json.key("nearest");
        json.object();
        if (found.apart) json.pair_figure("fatty_acids_apart_percent", found.apart->grid);
        shares("fatty_acids", found.acids);
        shares("roles", found.roles);
        json.key("without_profile");
        json.list();
        for (const std::string& one : found.unprofiled)
            json.text(one);
        json.end();
        effects(found.formula);
        json.end();
    }
};

}  // namespace

Answer swap(std::string_view input, const store::Presets& presets, std::string_view limits) {
    const result::Result<Swap> asked = swap_asked(input);
    if (!asked) return refuse(asked.error(), presets);
    const result::Result<limits::Book> book = limits.empty() ? limits::Book{} : store::unpack_limits(limits);
    if (!book) return refuse(book.error(), presets);
    const std::size_t line = asked->wish.without;
    const auto& lines = asked->recipe.formula.lines;
    if (line >= lines.size()) return refuse({Code::line_missing, "line", std::to_string(line)}, presets);
    const catalogue::Catalogue known = catalogue::with_own(presets.catalogue, asked->recipe.own);
    SwapWriter writer{*asked, presets, limits.empty() ? nullptr : &book.value()};
    writer.json.object();
    writer.json.pair("ingredient",
                     lines[line].ingredient.empty() ? lines[line].name : lines[line].ingredient);
    if (asked->nearest) {
        const auto found = swap::nearest(asked->recipe.formula, asked->wish, known);
        if (!found) return refuse(found.error(), presets);
        writer.nearest(*found);
    } else {
        writer.json.key("stand_ins");
        writer.json.list();
        bool there = false;
        for (const swap::StandIn& one : swap::stand_ins(known, lines[line].ingredient))
            if (asked->by.empty() || asked->by == one.ingredient) {
                writer.stand_in(one, known);
                there = true;
            }
        if (!there && !asked->by.empty())
            return refuse({Code::field_unknown_value, "by", asked->by}, presets);
        writer.json.end();
    }
    return {0, writer.json.finish(), ""};
}

}  // namespace door
