// The label of the open recipe, what is answered at the stall, and all papers. They are worked out when they
// are first asked for.
#include <algorithm>
#include <utility>

#include "app.h"
#include "engine/workspace_edits.h"
#include "platform.h"

namespace app {

const result::Result<labelling::Labelled>& labelled(App& app) {
    labelling::Details& details = app.ui.label.details;
    if (app.ui.label.of != app.work.open) {  // a number or a day of another one's batch would be a lie
        app.ui.label = {};
        app.ui.label.of = app.work.open;
        details.made_on = app.ui.label.made_on = platform::today();
    }
    details.maker = app.work.settings.maker;
    if (app.labelled && app.labelled_with == details) return *app.labelled;
    const result::Result<batch::Batch>& batch = app.analysis->batch;
    app.labelled = labelling::of(
        *app.analysed, batch ? std::optional(*batch) : std::nullopt, app.presets.catalogue, details,
        labelling::allergens_of(*app.analysed, app.presets.catalogue, app.mine, limits_book(app), app.words),
        app.words, &checks(app));
    app.labelled_with = details;
    return *app.labelled;
}

const customer_card::Card& customer_card(App& app) {
    if (!app.card)
        app.card = labelling::card_of(*app.analysed, checks(app), app.presets.catalogue, app.mine,
                                      limits_book(app), app.words);
    return *app.card;
}

documents::LabelPaper label_paper(const App& app) {
    const label::Said& said = app.analysed->label;
    documents::LabelPaper paper = said.panel ? documents::paper_for(*said.panel) : documents::LabelPaper{};
    paper.leaflet = said.leaflet;
    paper.copies = app.ui.label.copies;
    if (paper.copies == 0 && app.analysis->batch) {
        const std::vector<batch::Fill>& fills = app.analysis->batch->fills;
        if (app.ui.label.details.package < fills.size())
            paper.copies = static_cast<std::size_t>(fills[app.ui.label.details.package].count);
    }
    paper.copies = std::clamp(paper.copies, std::size_t{1}, documents::kMostCopies);
    return paper;
}

void edit_maker(App& app, label::Maker maker) {
    auto changed = workspace::set_maker(app.work.settings, std::move(maker));
    if (!changed) return tell(app, words::say(app.words, changed.error()), true);
    app.work.settings = std::move(changed).value();
    app.ui.again = true;
}

namespace {

// "Orchard lip balm" -> "orchard-lip-balm"; letters that file systems differ on are left out.
std::string file_stem(const std::string& title) {
    std::string name;
    for (const char c : title) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        const bool capital = c >= 'A' && c <= 'Z';
        if (plain || capital)
            name += static_cast<char>(capital ? c - 'A' + 'a' : c);
        else if (!name.empty() && name.back() != '-')
            name += '-';
    }
    while (!name.empty() && name.back() == '-')
        name.pop_back();
    return name.empty() ? "recipe" : name;
}

result::Result<std::string> html_of(App& app, Paper paper) {
    switch (paper) {
        case Paper::labels: {
            const auto& made = labelled(app);
            if (!made) return made.error();
            return documents::labels(*app.analysed, *made, label_paper(app), app.words);
        }
        case Paper::customer_card:
            return documents::customer_card(customer_card(app), app.words);
        case Paper::assessor_pack: {
            const auto pack = labelling::pack_of(*app.analysed, app.presets.catalogue);
            if (!pack) return pack.error();
            return documents::assessor_pack(*pack, app.presets.catalogue, app.words);
        }
        case Paper::batch_sheet:
            break;
    }
    return documents::batch_sheet(*app.analysed, *app.analysis, app.known, app.words, app.analysed_on);
}

}  // namespace

void give(App& app, Paper paper, bool print) {
    if (!app.analysed || !app.analysis) return;
    const auto html = html_of(app, paper);
    if (!html) return tell(app, words::say(app.words, html.error()), true);
    static constexpr const char* kNames[] = {"-batch", "-labels", "-card", "-assessor"};
    const std::string name = file_stem(app.analysed->title) + kNames[static_cast<int>(paper)] + ".html";
    if (print)
        platform::print_paper(name, *html);
    else
        platform::save_file(name, "text/html", *html);
}

void save_recipe_file(const workspace::Recipe& recipe) {
    platform::save_file(file_stem(recipe.title) + ".json", "application/json", store::write_recipe(recipe));
}

}  // namespace app
