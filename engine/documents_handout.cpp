// The handout: what somebody takes home from a workshop to make the thing again. Grams for one unit are
// shared out so that they add up to it; how they were worked out for a batch is the batch sheet's.
#include <algorithm>

#include "documents.h"
#include "documents_paper.h"
#include "share_code.h"

namespace documents {
namespace {

constexpr std::string_view kHandoutStyle = R"css(
.head{display:flex;flex-wrap:wrap;gap:4mm;justify-content:space-between}
.head div{flex:1 1 80mm}
figure{margin:0;max-width:66mm}
figcaption{font-size:8.5pt}
.copy{break-before:page}
.name{border-bottom:.75pt solid #000;padding-top:8pt}
)css";

constexpr quantity::Mass kStep{100};  // 0.01 g: what a small scale shows

struct HandoutPaper {
    const workspace::Recipe& recipe;
    const catalogue::Catalogue& shipped;
    const Handout& given;
    const words::Table& words;
    const catalogue::Catalogue known;
    const std::vector<quantity::Percent> percents;
    const std::optional<share_code::Coded> coded;
    markup::Writer html = {};

    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return words::say(words, key, arguments);
    }
    std::string title() const { return recipe.title.empty() ? say("recipe.untitled") : recipe.title; }

    void head() {
        html.open("div", {{"class", "head"}});
        html.open("div");
        const catalogue::Product* kind = find_product(known, recipe.product);
        html.leaf("p", kind != nullptr ? kind->name : recipe.product);
        if (!given.from.empty()) html.leaf("p", say("handout.from", {{"name", given.from}}));
        if (given.copies > 1) html.leaf("p", say("handout.name"), {{"class", "name"}});
        if (!recipe.notes.empty()) html.leaf("h2", say("sheet.notes"));
        documents_paper::paragraphs(html, recipe.notes);
        html.close();
        html.open("figure");
        if (coded) {
            documents_paper::code(
                html, coded->code,
                say("share.code_of", {{"title", title()}, {"n", std::to_string(coded->code.side)}}));
            html.open("figcaption");
            static constexpr const char* kHolds[] = {"handout.code_all", "handout.code_without_notes",
                                                     "handout.code_without_steps"};
            html.text(say(kHolds[static_cast<int>(coded->extent)]));
            if (given.before.empty()) html.text(" " + say("handout.code_pasted"));
            if (given.before.rfind("http", 0) == 0) {
                html.text(" ");
                html.leaf("a", say("handout.open"), {{"href", coded->address}});
            }
            html.close();
        } else {
            html.leaf("figcaption", say("handout.code_none"));
        }
        html.close();
        html.close();
    }

    void lines() {
        const quantity::Mass unit = given.unit.grid > 0 ? given.unit : quantity::grams(100);
        html.leaf("h2", say("handout.lines"));
        std::vector<std::int64_t> weights;
        for (const quantity::Percent one : percents)
            weights.push_back(one.grid);
        const auto shares = decimal::share_out(unit.grid / kStep.grid, weights);
        documents_paper::open_table(
            html, {{say("sheet.ingredient"), ""},
                   {say("sheet.percent"), "n"},
                   {given.unit_name.empty() ? say("handout.grams", {{"g", words::figure(words, unit.grid)}})
                                            : say("handout.grams_of", {{"g", words::figure(words, unit.grid)},
                                                                       {"name", given.unit_name}}),
                    "n"}});
        bool begun = false;  // each phase is a body of its own
        for (const formula::Phase& phase : recipe.formula.phases) {
            bool headed = recipe.formula.phases.size() < 2;
            for (std::size_t i = 0; i < recipe.formula.lines.size(); ++i) {
                const formula::Line& line = recipe.formula.lines[i];
                if (line.phase != phase.id) continue;
                if (!headed) {
                    if (begun) html.close(), html.open("tbody");
                    phase_row(phase);
                }
                headed = begun = true;
                html.open("tr");
                documents_paper::cell(html, workspace::display_name(known, line), "th");
                documents_paper::cell(html, words::figure(words, percents[i].grid), "n");
                documents_paper::cell(
                    html, shares ? words::figure_fixed(words, (*shares)[i] * kStep.grid, 2) : "", "n");
                html.close();
            }
        }
        documents_paper::close_table(html);
        smallest(unit);
    }

    void phase_row(const formula::Phase& phase) {
        std::string text = say("sheet.phase", {{"id", phase.id}});
        if (phase.hold_c) text += ". " + say("sheet.hold", {{"c", words::figure(words, *phase.hold_c)}});
        if (phase.add_below_c)
            text += ". " + say("sheet.add_below", {{"c", words::figure(words, *phase.add_below_c)}});
        html.open("tr");
        html.leaf("th", text, {{"scope", "rowgroup"}, {"colspan", "3"}});
        html.close();
    }

    // One unit is often too little for the scale at home.
    void smallest(quantity::Mass unit) {
        std::optional<std::size_t> least;
        for (std::size_t i = 0; i < percents.size(); ++i)
            if (percents[i].grid > 0 && (!least || percents[i] < percents[*least])) least = i;
        if (!least) return;
        const quantity::Mass from = scales::least_batch(kStep, percents[*least]);
        if (from <= unit) return;
        html.leaf(
            "p",
            say("handout.least", {{"name", workspace::display_name(known, recipe.formula.lines[*least])},
                                  {"g", words::figure(words, from.grid)}}),
            {{"class", "small"}});
    }

    void steps() {
        if (recipe.steps.empty()) return;
        html.leaf("h2", say("sheet.steps"));
        html.open("ol");
        for (const formula::Step& step : recipe.steps) {
            std::string text = step.phase.empty()
                                   ? step.text
                                   : say("sheet.step_of", {{"id", step.phase}, {"text", step.text}});
            if (step.minutes) text += " " + say("sheet.minutes", {{"n", std::to_string(*step.minutes)}});
            html.leaf("li", text);
        }
        html.close();
    }

    void one() {
        head();
        lines();
        steps();
        std::vector<std::string> cautions;
        for (const std::string& key : given.cautions)
            if (key != "caution.defer") cautions.push_back(say(key));
        cautions.push_back(say("sheet.caution_skin"));
        documents_paper::list(html, say("sheet.cautions"), cautions);
        html.leaf("p", say("caution.defer"), {{"class", "small"}});
    }

    std::string build() {
        html = documents_paper::begin(words, title(), kHandoutStyle);
        one();
        const std::size_t copies = std::min(given.copies, kMostCopies);
        for (std::size_t i = 1; i < copies; ++i) {
            html.leaf("h1", title(), {{"class", "copy"}});
            one();
        }
        return html.finish();
    }
};

}  // namespace

result::Result<std::string> handout(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                                    const Handout& given, const words::Table& words) {
    const auto percents = formula::percents(recipe.formula);
    if (!percents) return percents.error();
    return HandoutPaper{recipe,
                        shipped,
                        given,
                        words,
                        catalogue::with_own(shipped, recipe.own),
                        *percents,
                        share_code::of(recipe, shipped, given.before)}
        .build();
}

Handout handout_of(const analysis::Analysis& analysis, const catalogue::Catalogue& shipped,
                   const safety::Report& report) {
    Handout made;
    made.cautions = report.cautions;
    if (!analysis.batch || analysis.batch->fills.empty()) return made;
    const batch::Fill& first = analysis.batch->fills.front();
    made.unit = first.each;
    if (const catalogue::Container* one = find_container(shipped, first.container))
        made.unit_name = one->name;
    return made;
}

}  // namespace documents
