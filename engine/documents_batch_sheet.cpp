// The batch sheet: what is weighed, in which order, with a box to tick and room to write what the scale
// showed. It repeats the batch and the findings of the analysis and works nothing out itself; it keeps no
// record.
#include <algorithm>

#include "documents.h"
#include "documents_faults.h"
#include "markup.h"
#include "writing.h"

namespace documents {
namespace {

constexpr std::string_view kStyle = R"css(
@page{margin:14mm}
*{box-sizing:border-box}
body{margin:0 auto;padding:8px;max-width:190mm;background:#fff;color:#000;font:11pt/1.4 "Open Sans",system-ui,sans-serif}
h1{font-size:18pt;margin:0 0 2pt}
h2{font-size:13pt;margin:14pt 0 4pt;border-bottom:1pt solid #000}
h3{font-size:11.5pt;margin:10pt 0 2pt}
p{margin:2pt 0;overflow-wrap:anywhere}
section,li,tr{break-inside:avoid}
h2,h3{break-after:avoid}
dl{display:grid;grid-template-columns:max-content 1fr;gap:1pt 10pt;margin:6pt 0}
dd{margin:0}
.write{display:flex;flex-wrap:wrap;gap:6pt 18pt;margin:10pt 0 0}
.write span{flex:1 1 40mm;border-bottom:.75pt solid #000;padding-bottom:2pt;min-height:18pt}
table{width:100%;border-collapse:collapse;table-layout:fixed}
caption{text-align:left;font-weight:600}
th,td{border:.75pt solid #000;padding:3pt 5pt;text-align:left;vertical-align:top;overflow-wrap:anywhere}
td.n,th.n{text-align:right;font-variant-numeric:tabular-nums}
.c1{width:32%}.c5{width:9%}
.box{display:inline-block;width:11pt;height:11pt;border:1pt solid #000;vertical-align:middle;margin-right:6pt}
td .box{margin:0}
ol,ul{margin:4pt 0;padding-left:20pt}
.small{font-size:9.5pt}
@media screen and (max-width:600px){th:nth-child(3),td:nth-child(3),th:nth-child(5),td:nth-child(5),th:nth-child(7),td:nth-child(7){display:none}.c1{width:46%}.c5{width:18%}}
)css";

struct Sheet {
    const workspace::Recipe& recipe;
    const analysis::Analysis& analysis;
    const batch::Batch& batch;
    const catalogue::Catalogue& catalogue;
    const words::Table& words;
    const scales::Bench& bench;
    markup::Writer html;
    int percent_places = 2;
    int gram_places = 2;

    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return words::say(words, key, arguments);
    }
    std::string figure(std::int64_t grid) const { return words::figure(words, grid); }
    std::string grams(quantity::Mass mass) const {
        return words::figure_fixed(words, mass.grid, gram_places);
    }
    std::string percent(quantity::Percent percent) const {
        return words::figure_fixed(words, percent.grid, percent_places);
    }
    void pair(std::string_view key, const std::string& value) {
        html.leaf("dt", say(key));
        html.leaf("dd", value);
    }

    void head();
    void amounts();
    void lines();
    void fill(const batch::Fill& fill);
    void stock();
    void mix_ahead();
    void phase_table(const formula::Phase& phase);
    std::string line_name(std::size_t line) const {
        return workspace::display_name(catalogue, recipe.formula.lines[line]);
    }
    std::string ingredient_name(const std::string& id) const {
        const catalogue::Ingredient* known = find_ingredient(catalogue, id);
        return known != nullptr && !known->name.empty() ? known->name : id;
    }
    std::string scale_name(const batch::Line& line) const {
        const std::string division = say("sheet.grams", {{"g", figure(line.place.division.grid)}});
        const bool named = line.place.scale && *line.place.scale < bench.scales.size() &&
                           !bench.scales[*line.place.scale].name.empty();
        return named ? writing::set_apart(bench.scales[*line.place.scale].name) + ", " + division : division;
    }
    void steps();
    void notes();
    void findings();
    void faults();
    void cautions();
};

// Digits after the sign that are needed to show the figure in full.
int places_of(std::int64_t grid) {
    int places = decimal::kPlaces;
    while (places > 0 && grid % 10 == 0) {
        grid /= 10;
        --places;
    }
    return places;
}

std::string subject_of(const Sheet& sheet, const finding::Finding& found) {
    if (found.line && *found.line < sheet.recipe.formula.lines.size()) {
        const formula::Line& line = sheet.recipe.formula.lines[*found.line];
        if (found.subject.empty() || found.subject == line.ingredient || found.subject == line.name)
            return workspace::display_name(sheet.catalogue, line);
    }
    const auto* held = catalogue::find_ingredient(sheet.catalogue, found.subject);  // within a made part
    return held != nullptr && !held->name.empty() ? held->name : found.subject;
}

bool is_about_weighing(const finding::Finding& found) {
    return found.code == finding::Code::line_error_large || found.code == finding::Code::line_rounds_to_zero;
}

bool holds_water(const Sheet& sheet) {
    for (const finding::Finding& found : sheet.analysis.findings) {
        if (found.code == finding::Code::water_without_preservative) return true;
    }
    const auto& lines = sheet.recipe.formula.lines;
    return std::any_of(lines.begin(), lines.end(), [&](const formula::Line& line) {
        const catalogue::Ingredient* known = find_ingredient(sheet.catalogue, line.ingredient);
        return known != nullptr && known->role == "water";
    });
}

void Sheet::head() {
    const std::string title = recipe.title.empty() ? say("sheet.untitled") : recipe.title;
    html.open("html", {{"lang", words.language}});
    html.open("head");
    html.leaf("meta", "", {{"charset", "utf-8"}});
    html.leaf("meta", "", {{"name", "viewport"}, {"content", "width=device-width, initial-scale=1"}});
    html.leaf("title", say("sheet.document_title", {{"title", title}}));
    html.style(kStyle);
    html.close();
    html.open("body");
    html.open("main");
    html.leaf("h1", title);
    const catalogue::Product* product = find_product(catalogue, recipe.product);
    std::string line = product != nullptr ? product->name : recipe.product;
    for (const std::string* more : {&recipe.date, &recipe.person}) {
        if (!more->empty()) line += " · " + *more;
    }
    html.leaf("p", line);
}

void Sheet::fill(const batch::Fill& fill) {
    const catalogue::Container* container = find_container(catalogue, fill.container);
    const std::string name = container != nullptr     ? container->name
                             : fill.container.empty() ? say("sheet.portion")
                                                      : fill.container;
    const words::Arguments arguments{
        {"count", std::to_string(fill.count)}, {"name", name}, {"g", figure(fill.each.grid)}};
    std::string text = say(fill.from == batch::FillFrom::usual_weight ? "sheet.containers_usual"
                           : fill.from == batch::FillFrom::test_fill  ? "sheet.containers_tested"
                                                                      : "sheet.containers",
                           arguments);
    const auto ml = [&](quantity::Volume volume) { return words::figure_fixed(words, volume.grid, 1); };
    if (fill.cold) text += " " + say("sheet.cold_ml", {{"ml", ml(*fill.cold)}});
    if (fill.warm && batch.pour_c)
        text += " " + say("sheet.warm_ml", {{"ml", ml(*fill.warm)}, {"c", figure(*batch.pour_c)}});
    else if (fill.holds && batch.pour_c)
        text += " " + say("sheet.warm_unknown");
    pair("sheet.container", text);
}

void Sheet::stock() {
    if (!batch.reach) return;
    html.leaf("h2", say("sheet.stock"));
    html.open("ul");
    for (const batch::Supply& supply : batch.reach->supplies) {
        if (!supply.have) continue;
        html.leaf("li", say(supply.first_out ? "sheet.stock_out" : "sheet.stock_left",
                            {{"name", ingredient_name(supply.ingredient)},
                             {"need", figure(supply.need.grid)},
                             {"left", figure(supply.left->grid)}}));
    }
    html.close();
}

void Sheet::mix_ahead() {
    if (analysis.ahead.empty()) return;
    html.leaf("h2", say("sheet.mix_ahead"));
    html.open("ul");
    for (const remedy::Ahead& ahead : analysis.ahead) {
        const catalogue::Ingredient* mix =
            find_ingredient(catalogue, recipe.formula.lines[ahead.line].ingredient);
        if (mix == nullptr || mix->parts.size() != ahead.parts.size()) continue;
        std::string text =
            say("sheet.mix_of", {{"name", line_name(ahead.line)}, {"g", figure(ahead.total.grid)}});
        for (std::size_t i = 0; i < ahead.parts.size(); ++i)
            text += (i == 0 ? " " : ", ") +
                    say("sheet.mix_part", {{"name", ingredient_name(mix->parts[i].ingredient)},
                                           {"g", figure(ahead.parts[i].grid)}});
        html.leaf("li", text);
    }
    html.close();
}

void Sheet::amounts() {
    html.leaf("h2", say("sheet.batch"));
    html.open("dl");
    pair("sheet.total", say("sheet.grams", {{"g", grams(batch.total)}}));
    if (batch.asked != batch.total)
        pair("sheet.asked", say("sheet.grams", {{"g", figure(batch.asked.grid)}}));
    pair("sheet.fill", say("sheet.grams", {{"g", figure(batch.fill.grid)}}));
    pair("sheet.loss",
         say(batch.loss_usual ? "sheet.loss_usual" : "sheet.percent_of", {{"p", figure(batch.loss.grid)}}));
    pair("sheet.division", say("sheet.grams", {{"g", figure(batch.division.grid)}}));
    for (const batch::Fill& one : batch.fills)
        fill(one);
    if (bench.jug)
        pair("sheet.jug",
             say("sheet.jug_of", {{"name", bench.jug->name}, {"g", figure(bench.jug->empty.grid)}}));
    html.close();
    html.open("div", {{"class", "write"}});
    for (const std::string_view key : {"sheet.made_by", "sheet.made_on", "sheet.lot"})
        html.leaf("span", say(key));
    html.close();
}

void Sheet::phase_table(const formula::Phase& phase) {
    html.open("table");
    html.open("thead");
    html.open("tr");
    html.leaf("th", say("sheet.ingredient"), {{"scope", "col"}, {"class", "c1"}});
    html.leaf("th", say("sheet.percent"), {{"scope", "col"}, {"class", "n"}});
    html.leaf("th", say("sheet.real_percent"), {{"scope", "col"}, {"class", "n"}});
    html.leaf("th", say("sheet.weigh"), {{"scope", "col"}, {"class", "n"}});
    html.leaf("th", say("sheet.scale"), {{"scope", "col"}});
    html.leaf("th", say("sheet.done"), {{"scope", "col"}, {"class", "c5"}});
    html.leaf("th", say("sheet.weighed"), {{"scope", "col"}});
    html.close();
    html.close();
    html.open("tbody");
    for (const batch::Line& line : batch.lines) {
        const formula::Line& said = recipe.formula.lines[line.line];
        if (said.phase != phase.id) continue;
        html.open("tr");
        html.leaf("th", workspace::display_name(catalogue, said), {{"scope", "row"}});
        html.leaf("td", percent(line.percent), {{"class", "n"}});
        html.leaf("td", percent(line.actual), {{"class", "n"}});
        html.leaf("td", grams(line.grams), {{"class", "n"}});
        html.leaf("td", scale_name(line));
        html.open("td");
        html.leaf("span", "", {{"class", "box"}, {"aria-hidden", "true"}});
        html.close();
        html.leaf("td", "");
        html.close();
    }
    html.close();
    html.close();
}

void Sheet::lines() {
    html.leaf("h2", say("sheet.weigh_out"));
    for (const formula::Phase& phase : recipe.formula.phases) {
        const auto in_phase = [&](const formula::Line& line) { return line.phase == phase.id; };
        if (std::none_of(recipe.formula.lines.begin(), recipe.formula.lines.end(), in_phase)) continue;
        html.open("section");
        html.leaf("h3", say("sheet.phase", {{"id", phase.id}}));
        if (phase.hold_c) html.leaf("p", say("sheet.hold", {{"c", figure(*phase.hold_c)}}));
        if (phase.add_below_c) html.leaf("p", say("sheet.add_below", {{"c", figure(*phase.add_below_c)}}));
        phase_table(phase);
        html.close();
    }
    html.leaf("p", say("sheet.sum", {{"g", grams(batch.total)}}));
}

void Sheet::steps() {
    if (recipe.steps.empty()) return;
    html.leaf("h2", say("sheet.steps"));
    html.open("ol");
    for (const formula::Step& step : recipe.steps) {
        html.open("li");
        html.leaf("span", "", {{"class", "box"}, {"aria-hidden", "true"}});
        std::string text =
            step.phase.empty() ? step.text : say("sheet.step_of", {{"id", step.phase}, {"text", step.text}});
        if (step.minutes) text += " " + say("sheet.minutes", {{"n", std::to_string(*step.minutes)}});
        html.text(text);
        html.close();
    }
    html.close();
}

void Sheet::notes() {
    if (recipe.notes.empty()) return;
    html.leaf("h2", say("sheet.notes"));
    for (std::size_t from = 0; from <= recipe.notes.size();) {
        const std::size_t to = std::min(recipe.notes.find('\n', from), recipe.notes.size());
        if (to > from) html.leaf("p", std::string_view(recipe.notes).substr(from, to - from));
        from = to + 1;
    }
}

void Sheet::findings() {
    const auto is_serious = [](const finding::Finding& found) {
        return found.severity != finding::Severity::note;
    };
    if (std::none_of(analysis.findings.begin(), analysis.findings.end(), is_serious)) return;
    html.leaf("h2", say("sheet.findings"));
    html.open("ul");
    for (const finding::Finding& found : analysis.findings) {
        if (!is_serious(found)) continue;
        html.open("li");
        html.leaf("strong", say(found.severity == finding::Severity::stop ? "sheet.stop" : "sheet.caution"));
        const std::string subject = subject_of(*this, found);
        html.text(" " + finding::say(words, found, subject));
        if (const std::string to_do = finding::advice(words, found, subject); !to_do.empty())
            html.text(" " + to_do);
        for (const remedy::Remedy& one : analysis.remedies)
            if (found.line == one.line && is_about_weighing(found))
                html.leaf("div", remedy::say(words, one, line_name(one.line),
                                             one.mix ? line_name(one.mix->oil) : std::string()));
        html.close();
    }
    html.close();
}

void Sheet::faults() {
    const auto keys = documents_faults::of(recipe.formula, recipe.product, catalogue);
    if (keys.empty()) return;
    html.leaf("h2", say("sheet.faults"));
    html.leaf("p", say("sheet.faults_about"), {{"class", "small"}});
    html.open("ul", {{"class", "small"}});
    for (const std::string_view key : keys)
        html.leaf("li", say(key));
    html.close();
}

void Sheet::cautions() {
    html.leaf("h2", say("sheet.cautions"));
    html.open("ul", {{"class", "small"}});
    std::vector<std::string_view> keys{"sheet.caution_hot", "sheet.caution_burn", "sheet.caution_cloths"};
    if (holds_water(*this)) keys.insert(keys.begin(), "sheet.caution_water");
    keys.insert(keys.end(), {"sheet.caution_skin", "sheet.caution_guidance"});
    for (const std::string_view key : keys)
        html.leaf("li", say(key));
    html.close();
}

}  // namespace

result::Result<std::string> batch_sheet(const workspace::Recipe& recipe, const analysis::Analysis& analysis,
                                        const catalogue::Catalogue& catalogue, const words::Table& words,
                                        const scales::Bench& bench) {
    if (!analysis.batch) return analysis.batch.error();
    const catalogue::Catalogue with_own = catalogue::with_own(catalogue, recipe.own);
    Sheet sheet{recipe, analysis, *analysis.batch, with_own, words, bench, {}};
    for (const formula::Line& line : recipe.formula.lines) {
        if (!line.rest) sheet.percent_places = std::max(sheet.percent_places, places_of(line.percent.grid));
    }
    sheet.gram_places = places_of(sheet.batch.division.grid);
    for (const batch::Line& line : sheet.batch.lines)
        sheet.gram_places = std::max(sheet.gram_places, places_of(line.place.division.grid));
    sheet.head();
    sheet.amounts();
    sheet.stock();
    sheet.mix_ahead();
    sheet.lines();
    sheet.findings();
    sheet.steps();
    sheet.notes();
    sheet.faults();
    sheet.cautions();
    return sheet.html.finish();
}

}  // namespace documents
