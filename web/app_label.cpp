// The label of the open recipe and what is answered at the stall. They are worked out when they are first
// asked for.
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

constexpr std::int64_t kFlap = 5 * decimal::kOne;  // mm, common practice

documents::LabelPaper label_paper(const App& app) {
    const label::Said& said = app.analysed->label;
    documents::LabelPaper paper = said.panel ? documents::paper_for(*said.panel) : documents::LabelPaper{};
    paper.leaflet = said.leaflet;
    paper.copies = app.ui.label.copies;
    paper.sheet = app.work.settings.label_sheet;
    paper.used = app.ui.label.used;
    if (paper.sheet) {
        paper.width = paper.sheet->width;
        paper.height = paper.sheet->height;
        paper.strip = 0;
    }
    if (app.ui.label.flap && said.panel && said.panel->shape == type_height::Shape::cylinder)
        paper.flap = kFlap;
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

}  // namespace app
