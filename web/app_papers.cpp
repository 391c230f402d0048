// All papers of the open recipe: made, read on the page, printed, handed over as a file. They are worked out
// when they are asked for.
#include <utility>

#include "app.h"
#include "engine/share.h"
#include "engine/workspace_edits.h"
#include "engine/workspace_records.h"
#include "platform.h"

namespace app {

const result::Result<workshop::Workshop>& workshop_of(App& app) {
    if (app.workshop && app.workshop_with == app.work.settings.workshop) return *app.workshop;
    const workspace::Recipe& recipe = *app.analysed;
    app.workshop_with = app.work.settings.workshop;
    app.workshop = workshop::of({recipe.formula, recipe.steps, recipe.batch, recipe.product},
                                app.workshop_with, app.known());
    return *app.workshop;
}

const std::optional<qr::Code>& code_of(App& app, const std::string& address) {
    if (app.code_says != address) {
        app.code = qr::of(address);
        app.code_says = address;
    }
    return app.code;
}

void edit(App& app, const result::Result<workspace::Settings>& changed) {
    if (!changed) return tell(app, words::say(app.words, changed.error()), true);
    app.work.settings = *changed;
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

result::Result<std::string> handout(App& app, std::size_t copies) {
    documents::Handout made = documents::handout_of(*app.analysis, app.known(), checks(app));
    made.before = link_address(app, "");
    made.from = app.work.settings.maker.name;
    made.copies = copies;
    return documents::handout(*app.analysed, app.presets.catalogue, made, app.words);
}

result::Result<std::string> html_of(App& app, Paper paper) {
    const workspace::Settings& settings = app.work.settings;
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
        case Paper::handout:
            return handout(app, 1);
        case Paper::handouts:
            return handout(app, static_cast<std::size_t>(settings.workshop.people));
        case Paper::shopping_list:
            return documents::shopping_list(*app.analysed, *app.analysis, app.known(),
                                            settings.workshop.packs, app.words);
        case Paper::test_print:
            return documents::test_print(settings.label_sheet.value_or(label_sheet::Sheet{}),
                                         label_paper(app).round, app.words);
        case Paper::workshop: {
            const auto& made = workshop_of(app);
            if (!made) return made.error();
            return documents::workshop(*app.analysed, settings.workshop, *made, app.known(),
                                       checks(app).cautions, app.words, per_head(app));
        }
        case Paper::batch_record:
            return documents::batch_record(*workspace::find_record(app.work, app.ui.records.record),
                                           app.presets.catalogue, app.words);
        case Paper::batch_sheet:
            break;
    }
    return documents::batch_sheet(*app.analysed, *app.analysis, app.known(), app.words, app.analysed_on);
}

constexpr const char* kFiles[] = {"-batch",    "-labels",   "-card",       "-assessor", "-handout",
                                  "-handouts", "-shopping", "-test-print", "-workshop", "-record"};
constexpr const char* kTitles[] = {"papers.batch_sheet",   "papers.labels",     "papers.customer_card",
                                   "papers.assessor_pack", "papers.handout",    "papers.handouts",
                                   "papers.shopping_list", "papers.test_print", "papers.workshop",
                                   "papers.batch_record"};

std::string file_name(const App& app, Paper paper) {
    const record::Record* record =
        paper == Paper::batch_record ? workspace::find_record(app.work, app.ui.records.record) : nullptr;
    return file_stem(record ? record::state_of(*record).number : app.analysed->title) +
           kFiles[static_cast<int>(paper)] + ".html";
}

// All but a record's are of the open recipe.
bool can_be(const App& app, Paper paper) {
    if (paper == Paper::batch_record)
        return workspace::find_record(app.work, app.ui.records.record) != nullptr;
    return app.analysed && app.analysis;
}

}  // namespace

std::string paper_title(const App& app, Paper paper) {
    return app.say(kTitles[static_cast<int>(paper)]);
}

void give(App& app, Paper paper, bool print) {
    if (!can_be(app, paper)) return;
    const auto html = html_of(app, paper);
    if (!html) return tell(app, words::say(app.words, html.error()), true);
    if (print)
        platform::print_paper(file_name(app, paper), *html);
    else
        platform::save_file(file_name(app, paper), "text/html", *html);
}

void read(App& app, Paper paper) {
    if (!can_be(app, paper)) return;
    const auto html = html_of(app, paper);
    if (!html) return tell(app, words::say(app.words, html.error()), true);
    platform::show_paper(paper_title(app, paper), *html);
    app.ui.paper = paper;
    show(app, Sheet::paper);
}

void lay_paper(App& app) {
    if (!app.ui.paper) return;
    if (app.ui.sheet == Sheet::paper)
        return platform::place_paper(app.ui.paper_at[0], app.ui.paper_at[1], app.ui.paper_at[2],
                                     app.ui.paper_at[3]);
    app.ui.paper.reset();
    platform::hide_paper();
}

void save_recipe_file(const workspace::Recipe& recipe) {
    platform::save_file(file_stem(recipe.title) + ".json", "application/json", store::write_recipe(recipe));
}

}  // namespace app
