// Labels to be cut out. Sizes are in mm, letters as high as the market asks: the height that the law gives is
// that of a small "o" (21 CFR 701.13(h)), so the font is twice as large; where it gives none, letters of
// 1.2 mm are taken, which is no rule. Whether all of it fits is seen on the paper: what is too much runs over
// the edge and is not cut.
#include <algorithm>

#include "documents.h"
#include "markup.h"

namespace documents {
namespace {

constexpr std::string_view kLabelStyle = R"css(
@page{margin:10mm}
*{box-sizing:border-box}
body{margin:0 auto;padding:4mm;max-width:190mm;background:#fff;color:#000;font:11pt/1.4 "Open Sans",system-ui,sans-serif}
h1{font-size:16pt;margin:0 0 2pt}
h2{font-size:12.5pt;margin:12pt 0 3pt;break-after:avoid}
p{margin:2pt 0;overflow-wrap:anywhere}
ul{margin:3pt 0;padding-left:16pt}
.bar{width:50mm;height:2mm;background:#000;print-color-adjust:exact;-webkit-print-color-adjust:exact}
.sheet{display:flex;flex-wrap:wrap;gap:3mm;margin:4mm 0}
.label{border:.2mm solid #000;padding:1.5mm;line-height:1.2;break-inside:avoid;overflow-wrap:anywhere}
.round{border-radius:50%;display:flex;flex-direction:column;justify-content:center;text-align:center;padding:8%}
.label p{margin:0 0 .6mm}
.title{font-weight:700}
.net{font-weight:700}
.jar{vertical-align:-1mm}
.small{font-size:9.5pt}
)css";

constexpr std::int64_t kUnruled = 12'000;  // 1.2 mm

std::string mm(std::int64_t grid) {
    return decimal::print(grid) + "mm";
}

struct Labels {
    const workspace::Recipe& recipe;
    const labelling::Labelled& labelled;
    const LabelPaper& paper;
    const words::Table& words;
    markup::Writer html = {};

    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return words::say(words, key, arguments);
    }

    bool aside(const label::Entry& entry) const {
        return paper.leaflet && entry.aside != label::Aside::none && entry.aside != label::Aside::packaging;
    }

    static std::string letters(const label::Entry& entry) {
        return "font-size:" + mm(2 * (entry.height ? entry.height->mm : kUnruled));
    }

    // The jar with its lid off that Annex VII, point 2 shows, drawn from memory.
    void open_jar() {
        html.open("svg", {{"class", "jar"},
                          {"viewbox", "0 0 24 24"},
                          {"width", "5mm"},
                          {"height", "5mm"},
                          {"fill", "none"},
                          {"stroke", "#000"},
                          {"stroke-width", "1.6"},
                          {"aria-hidden", "true"}});
        html.leaf("path", "", {{"d", "M5 11h14v9a2 2 0 0 1-2 2H7a2 2 0 0 1-2-2zM4 8l15-5 1 3L5 11z"}});
        html.close();
    }
    // The hand in a book of Annex VII, point 1, from memory: more stands on the leaflet.
    void hand_in_book() {
        html.open("svg", {{"class", "jar"},
                          {"viewbox", "0 0 32 24"},
                          {"width", "6.5mm"},
                          {"height", "5mm"},
                          {"fill", "none"},
                          {"stroke", "#000"},
                          {"stroke-width", "1.6"},
                          {"role", "img"},
                          {"aria-label", say("label.sheet_leaflet")}});
        html.leaf("path", "",
                  {{"d",
                    "M3 5c5-2 10-1 13 2 3-3 8-4 13-2v14c-5-2-10-1-13 2-3-3-8-4-13-2zM16 7v14M20 14h6"
                    "m-6 0 3-2m-3 2 3 2"}});
        html.close();
    }

    void entry(const label::Entry& one) {
        if (one.text.empty()) return;
        markup::Attributes attributes{{"style", letters(one)}};
        if (one.field == label::Field::net) attributes.emplace_back("class", "net");
        html.open("p", attributes);
        if (one.field == label::Field::durability &&
            labelled.label.durability.mark == durability::Mark::after_opening)
            open_jar();
        html.text(one.text);
        html.close();
    }

    void one_label() {
        html.open("div", {{"class", paper.round ? "label round" : "label"},
                          {"style", "width:" + mm(paper.width) + ";height:" + mm(paper.height)}});
        const std::vector<label::Entry>& entries = labelled.label.entries;
        if (!recipe.title.empty())
            html.leaf("p", recipe.title, {{"class", "title"}, {"style", "font-size:" + mm(3 * kUnruled)}});
        bool elsewhere = false;
        for (const label::Entry& one : entries) {
            elsewhere = elsewhere || (aside(one) && !one.text.empty());
            if (!aside(one) && one.text != recipe.title) entry(one);
        }
        if (elsewhere) {
            html.open("p");
            hand_in_book();
            html.close();
        }
        html.close();
    }

    void leaflet() {
        html.leaf("h2", say("label.sheet_leaflet"));
        html.open("div", {{"class", "label"}});
        html.leaf("p", recipe.title, {{"class", "title"}});
        for (const label::Entry& one : labelled.label.entries)
            if (aside(one)) entry(one);
        html.close();
    }

    void remarks() {
        std::vector<std::string> missing;
        for (const label::Entry& one : labelled.label.entries)
            if (one.state == label::State::missing)
                missing.push_back(say("label.sheet_missing", {{"field", say(label::field_key(one.field))},
                                                              {"rule", std::string(one.rule)}}));
        list("label.sheet_fields", missing);
        list("label.sheet_unsure", labelled.label.remarks);
        std::vector<std::string> needs;
        for (const sale_needs::Need& one : labelled.needs)
            if (!one.done) needs.push_back(say("sale." + std::string(one.id)));
        list("label.sheet_sale", needs);
        html.leaf("p", say("caution.defer"), {{"class", "small"}});
    }
    void list(std::string_view heading, const std::vector<std::string>& sentences) {
        if (sentences.empty()) return;
        html.leaf("h2", say(heading));
        html.open("ul");
        for (const std::string& one : sentences)
            html.leaf("li", one);
        html.close();
    }

    std::string build() {
        const std::string title = say("label.sheet_sheet", {{"title", recipe.title}});
        html.open("html", {{"lang", words.language}});
        html.open("head");
        html.leaf("meta", "", {{"charset", "utf-8"}});
        html.leaf("meta", "", {{"name", "viewport"}, {"content", "width=device-width"}});
        html.leaf("title", title);
        html.style(kLabelStyle);
        html.close();
        html.open("body");
        html.leaf("h1", title);
        html.leaf("p", say("label.sheet_size", {{"width", words::figure(words, paper.width)},
                                                {"height", words::figure(words, paper.height)}}));
        html.leaf("p", say("label.sheet_ruler"), {{"class", "small"}});
        html.leaf("div", "", {{"class", "bar"}});
        html.open("div", {{"class", "sheet"}});
        for (std::size_t i = 0; i < std::min(paper.copies, kMostCopies); ++i)
            one_label();
        html.close();
        if (std::any_of(labelled.label.entries.begin(), labelled.label.entries.end(),
                        [&](const label::Entry& one) { return aside(one) && !one.text.empty(); }))
            leaflet();
        remarks();
        return html.finish();
    }
};

}  // namespace

LabelPaper paper_for(const type_height::Panel& panel) {
    LabelPaper paper;
    if (!type_height::area(panel)) return paper;
    paper.round = panel.shape == type_height::Shape::round_top;
    paper.width = panel.width;
    paper.height = paper.round ? panel.width : panel.height;
    return paper;
}

std::string labels(const workspace::Recipe& recipe, const labelling::Labelled& labelled,
                   const LabelPaper& paper, const words::Table& words) {
    return Labels{recipe, labelled, paper, words}.build();
}

}  // namespace documents
