// Labels to be cut out. Sizes are in mm, letters as high as the market asks: the height that the law gives is
// that of a small "o" (21 CFR 701.13(h)), so the font is twice as large; where it gives none, letters of
// 1.2 mm are taken, which is no rule. Whether all of it fits is seen on the paper: what is too much runs over
// the edge and is not cut.
#include <algorithm>

#include "documents.h"
#include "documents_paper.h"
#include "markup.h"

namespace documents {
namespace {

constexpr std::string_view kLabelStyle = R"css(
.bar{width:50mm;height:2mm;background:#000;print-color-adjust:exact;-webkit-print-color-adjust:exact}
.sheet{display:flex;flex-wrap:wrap;gap:3mm;margin:4mm 0}
.label{flex:none;border:.2mm solid #000;padding:1.5mm;line-height:1.2;break-inside:avoid;overflow-wrap:anywhere}
.round{border-radius:50%;display:flex;flex-direction:column;justify-content:center;text-align:center;padding:8%}
.label p{margin:0 0 .6mm}
.strong{font-weight:600}
.jar{vertical-align:-1mm}
)css";

constexpr std::int64_t kUnruled = 12'000;  // 1.2 mm

bool aside(const label::Entry& entry, const LabelPaper& paper) {
    return paper.leaflet && !entry.text.empty() && entry.aside != label::Aside::none &&
           entry.aside != label::Aside::packaging;
}

Printed line_of(const label::Entry& entry, const labelling::Labelled& labelled) {
    const bool jar = entry.field == label::Field::durability &&
                     labelled.label.durability.mark == durability::Mark::after_opening;
    return {entry.text, 2 * (entry.height ? entry.height->mm : kUnruled), entry.field == label::Field::net,
            jar ? Printed::Sign::open_jar : Printed::Sign::none};
}

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

    void entry(const Printed& one) {
        markup::Attributes attributes{{"style", "font-size:" + mm(one.letters)}};
        if (one.strong) attributes.emplace_back("class", "strong");
        html.open("p", attributes);
        if (one.sign == Printed::Sign::open_jar) open_jar();
        if (one.sign == Printed::Sign::hand_in_book) hand_in_book();
        html.text(one.text);
        html.close();
    }

    void one_label(const std::vector<Printed>& lines) {
        html.open("div", {{"class", paper.round ? "label round" : "label"},
                          {"style", "width:" + mm(paper.width) + ";height:" + mm(paper.height)}});
        for (const Printed& one : lines)
            entry(one);
        html.close();
    }

    void leaflet() {
        html.leaf("h2", say("label.sheet_leaflet"));
        html.open("div", {{"class", "label"}});
        html.leaf("p", recipe.title, {{"class", "strong"}});
        for (const label::Entry& one : labelled.label.entries)
            if (aside(one, paper)) entry(line_of(one, labelled));
        html.close();
    }

    void remarks() {
        std::vector<std::string> missing;
        for (const label::Entry& one : labelled.label.entries)
            if (one.state == label::State::missing)
                missing.push_back(say("label.sheet_missing", {{"field", say(label::field_key(one.field))},
                                                              {"rule", std::string(one.rule)}}));
        const auto list = [&](std::string_view heading, const std::vector<std::string>& sentences) {
            documents_paper::list(html, say(heading), sentences);
        };
        list("label.sheet_fields", missing);
        list("label.sheet_unsure", labelled.label.remarks);
        std::vector<std::string> needs;
        for (const sale_needs::Need& one : labelled.needs)
            if (!one.done) needs.push_back(say("sale." + std::string(one.id)));
        list("label.sheet_sale", needs);
        html.leaf("p", say("caution.defer"), {{"class", "small"}});
    }

    std::string build() {
        html =
            documents_paper::begin(words, say("label.sheet_sheet", {{"title", recipe.title}}), kLabelStyle);
        html.leaf("p", say("label.sheet_size", {{"width", words::figure(words, paper.width)},
                                                {"height", words::figure(words, paper.height)}}));
        html.leaf("p", say("label.sheet_ruler"), {{"class", "small"}});
        html.leaf("div", "", {{"class", "bar"}});
        html.open("div", {{"class", "sheet"}});
        const std::vector<Printed> lines = printed(recipe, labelled, paper);
        for (std::size_t i = 0; i < std::min(paper.copies, kMostCopies); ++i)
            one_label(lines);
        html.close();
        if (std::any_of(labelled.label.entries.begin(), labelled.label.entries.end(),
                        [&](const label::Entry& one) { return aside(one, paper); }))
            leaflet();
        remarks();
        return html.finish();
    }
};

}  // namespace

std::vector<Printed> printed(const workspace::Recipe& recipe, const labelling::Labelled& labelled,
                             const LabelPaper& paper) {
    std::vector<Printed> lines;
    if (!recipe.title.empty()) lines.push_back({recipe.title, 3 * kUnruled, true});
    bool elsewhere = false;
    for (const label::Entry& one : labelled.label.entries) {
        elsewhere = elsewhere || aside(one, paper);
        if (!one.text.empty() && one.text != recipe.title && !aside(one, paper))
            lines.push_back(line_of(one, labelled));
    }
    if (elsewhere) lines.push_back({"", 2 * kUnruled, false, Printed::Sign::hand_in_book});
    return lines;
}

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
