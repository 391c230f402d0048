// The ingredient and shopping list of one batch: each ingredient once, over all its lines, with its name in a
// declaration, what is at hand, what is to be bought in the packs that were entered, and room to write lot
// and date.
#include <algorithm>

#include "documents.h"
#include "documents_paper.h"

namespace documents {
namespace {

struct Wanted {
    const formula::Line* line = nullptr;
    quantity::Mass need;
};

struct ShoppingPaper {
    const workspace::Recipe& recipe;
    const batch::Batch& batch;
    const catalogue::Catalogue& known;
    const std::vector<::workshop::Pack>& packs;
    const words::Table& words;
    markup::Writer html = {};

    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return words::say(words, key, arguments);
    }
    std::string grams(quantity::Mass mass) const {
        return say("unit.grams", {{"n", words::figure(words, mass.grid)}});
    }

    std::vector<Wanted> wanted() const {
        std::vector<Wanted> all;
        for (const batch::Line& one : batch.lines) {
            const formula::Line& line = recipe.formula.lines[one.line];
            const auto at = std::find_if(all.begin(), all.end(), [&](const Wanted& other) {
                return other.line->ingredient == line.ingredient && other.line->name == line.name;
            });
            if (at != all.end())
                at->need = at->need + one.grams;
            else
                all.push_back({&line, one.grams});
        }
        return all;
    }

    std::optional<quantity::Mass> at_hand(const Wanted& one) const {
        if (!batch.reach) return std::nullopt;
        for (const batch::Supply& supply : batch.reach->supplies)
            if (supply.ingredient == (one.line->ingredient.empty() ? one.line->name : one.line->ingredient))
                return supply.have;
        return std::nullopt;
    }

    void row(const Wanted& one) {
        const catalogue::Ingredient* ingredient = find_ingredient(known, one.line->ingredient);
        html.open("tr");
        documents_paper::cell(html, "", "b");
        html.open("th", {{"scope", "row"}});
        html.text(workspace::display_name(known, *one.line));
        if (ingredient != nullptr)
            if (const auto inci = ingredient->inci.find("eu"); inci != ingredient->inci.end())
                html.leaf("div", inci->second, {{"class", "small"}});
        if (ingredient != nullptr && ingredient->made)
            html.leaf("div", say("shopping.made"), {{"class", "small"}});
        html.close();
        documents_paper::cell(html, grams(one.need), "n");
        const std::optional<quantity::Mass> have = at_hand(one);
        documents_paper::cell(html, have ? grams(*have) : "", "n");
        quantity::Mass buy = one.need;
        if (have) buy = std::max(quantity::Mass{}, one.need - *have);
        const auto packed = ::workshop::bought(buy, ::workshop::pack_of(packs, *one.line));
        documents_paper::cell(
            html,
            packed ? say("shopping.packs", {{"n", std::to_string(packed->count)}, {"g", grams(packed->each)}})
                   : "",
            "n");
        documents_paper::cell(html, "", "w");
        html.close();
    }

    std::string build() {
        html = documents_paper::begin(
            words,
            say("shopping.title", {{"title", recipe.title.empty() ? say("recipe.untitled") : recipe.title}}),
            "");
        html.leaf("p", say("shopping.for", {{"g", grams(batch.total)}}));
        documents_paper::open_table(html, {{say("sheet.done"), "b"},
                                           {say("sheet.ingredient"), ""},
                                           {say("shopping.need"), "n"},
                                           {say("shopping.have"), "n"},
                                           {say("shopping.buy"), "n"},
                                           {say("shopping.lot"), "w"}});
        for (const Wanted& one : wanted())
            row(one);
        documents_paper::close_table(html);
        std::vector<std::string> containers;
        for (const batch::Fill& one : batch.fills)
            if (const catalogue::Container* kind = find_container(known, one.container))
                containers.push_back(
                    say("batch.count_short", {{"count", std::to_string(one.count)}, {"name", kind->name}}));
        documents_paper::list(html, say("sheet.container"), containers, true);
        documents_paper::list(html, say("shopping.bench"),
                              {say("shopping.bench_scale"), say("shopping.bench_heat"),
                               say("shopping.bench_clean"), say("shopping.bench_label")},
                              true);
        html.leaf("p", say("shopping.about"), {{"class", "small"}});
        return html.finish();
    }
};

}  // namespace

result::Result<std::string> shopping_list(const workspace::Recipe& recipe, const analysis::Analysis& analysis,
                                          const catalogue::Catalogue& catalogue,
                                          const std::vector<::workshop::Pack>& packs,
                                          const words::Table& words) {
    if (!analysis.batch) return analysis.batch.error();
    const catalogue::Catalogue known = catalogue::with_own(catalogue, recipe.own);
    return ShoppingPaper{recipe, *analysis.batch, known, packs, words}.build();
}

}  // namespace documents
