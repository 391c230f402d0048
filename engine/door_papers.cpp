// tarebench handout, labels, shopping, workshop: a recipe to these papers, as HTML.
#include "door_papers.h"

#include <algorithm>

#include "analysis.h"
#include "documents.h"
#include "store_json.h"
#include "store_limits.h"
#include "store_papers.h"
#include "store_prices.h"
#include "workshop_cost.h"

namespace door_papers {

result::Result<Input> read(std::string_view input) {
    auto tree = store_json::parse(input);
    if (!tree) return tree.error();
    Input read;
    if (!tree->is_object() || !tree->contains("recipe")) {
        auto recipe = store::read_recipe(input);
        if (!recipe) return recipe.error();
        read.recipe = std::move(recipe).value();
        return read;
    }
    store_json::Failure failure;
    store_json::Fields fields(*tree, "", failure);
    auto recipe = store::read_recipe(fields.any("recipe")->dump());
    if (!recipe) return recipe.error();
    read.recipe = std::move(recipe).value();
    if (const store_json::Json* plan = fields.object("workshop"))
        read.plan = store_papers::plan_from(*plan, "workshop", failure), read.planned = true;
    if (const store_json::Json* prices = fields.object("prices"))
        read.prices = store_prices::book_from(*prices, "prices", failure);
    if (const store_json::Json* sheet = fields.object("label_sheet"))
        read.sheet = store_papers::sheet_from(*sheet, "label_sheet", failure);
    read.address = fields.text("address");
    read.copies = static_cast<std::size_t>(
        std::min<std::uint64_t>(fields.whole("copies").value_or(1), documents::kMostCopies));
    read.used = static_cast<std::size_t>(std::min<std::uint64_t>(fields.whole("used").value_or(0), 10'000));
    fields.finish();
    if (failure.failed()) return *failure.error;
    return read;
}

result::Result<limits::Book> book_of(std::string_view limits) {
    if (limits.empty()) return limits::Book{};
    return store::unpack_limits(limits);
}

}  // namespace door_papers

namespace door {
namespace {

Answer given(const result::Result<std::string>& paper, const store::Presets& presets) {
    return paper ? Answer{0, *paper, ""} : refuse(paper.error(), presets);
}

// Reads, unpacks the book of limits, and makes the paper of both.
template <class Make>
Answer paper_of(std::string_view input, const store::Presets& presets, std::string_view limits,
                const Make& make) {
    const auto read = door_papers::read(input);
    if (!read) return refuse(read.error(), presets);
    const auto book = door_papers::book_of(limits);
    if (!book) return refuse(book.error(), presets);
    return given(make(*read, limits.empty() ? nullptr : &book.value()), presets);
}

}  // namespace

Answer handout(std::string_view input, const store::Presets& presets, std::string_view limits) {
    return paper_of(input, presets, limits, [&](const door_papers::Input& read, const limits::Book* book) {
        documents::Handout made =
            documents::handout_of(analysis::of(read.recipe, presets.catalogue), presets.catalogue,
                                  analysis::checks(read.recipe, presets.catalogue, book));
        made.before = read.address;
        made.copies = read.copies;
        return documents::handout(read.recipe, presets.catalogue, made, english(presets));
    });
}

Answer labels(std::string_view input, const store::Presets& presets, std::string_view limits) {
    return paper_of(
        input, presets, limits,
        [&](const door_papers::Input& read, const limits::Book* book) -> result::Result<std::string> {
            const words::Table& words = english(presets);
            const analysis::Analysis report = analysis::of(read.recipe, presets.catalogue);
            const safety::Report checks = analysis::checks(read.recipe, presets.catalogue, book);
            const auto made = labelling::of(
                read.recipe, report.batch ? std::optional(*report.batch) : std::nullopt, presets.catalogue,
                {}, labelling::allergens_of(read.recipe, presets.catalogue, {}, book, words), words, &checks);
            if (!made) return made.error();
            const std::optional<type_height::Panel>& panel = read.recipe.label.panel;
            documents::LabelPaper paper = panel ? documents::paper_for(*panel) : documents::LabelPaper{};
            paper.leaflet = read.recipe.label.leaflet;
            paper.copies = read.copies;
            paper.sheet = read.sheet;
            paper.used = read.used;
            return documents::labels(read.recipe, *made, paper, words);
        });
}

Answer shopping(std::string_view input, const store::Presets& presets) {
    return paper_of(input, presets, {}, [&](const door_papers::Input& read, const limits::Book*) {
        return documents::shopping_list(read.recipe, analysis::of(read.recipe, presets.catalogue),
                                        presets.catalogue, read.plan.packs, english(presets));
    });
}

Answer workshop(std::string_view input, const store::Presets& presets, std::string_view limits) {
    return paper_of(
        input, presets, limits,
        [&](const door_papers::Input& read, const limits::Book* book) -> result::Result<std::string> {
            const workspace::Recipe& recipe = read.recipe;
            const catalogue::Catalogue known = catalogue::with_own(presets.catalogue, recipe.own);
            const ::workshop::Recipe of{recipe.formula, recipe.steps, recipe.batch, recipe.product};
            const auto made = ::workshop::of(of, read.plan, known);
            if (!made) return made.error();
            std::optional<::cost::PerHead> head;
            if (!read.prices.currency.empty()) {
                const auto worked = ::workshop::per_head(of, "", read.plan, *made, known, read.prices);
                if (!worked) return worked.error();
                head = *worked;
            }
            return documents::workshop(recipe, read.plan, *made, presets.catalogue,
                                       analysis::checks(recipe, presets.catalogue, book).cautions,
                                       english(presets), head);
        });
}

}  // namespace door
