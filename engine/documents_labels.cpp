// Labels at their size. Letters are as high as the market asks: the height that the law gives is that of a
// small "o" (21 CFR 701.13(h)), so the font is twice as large; where it gives none, letters of 1.2 mm are
// taken, which is no rule. Whether all of it fits is seen on the paper: what is too much runs over the edge
// and is not cut, but on a bought sheet, where it would stand on the next label.
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
.round{border-radius:50%;display:flex;flex-direction:column;justify-content:center;text-align:center}
.label p{margin:0 0 .6mm}
.strong{font-weight:600}
.jar{vertical-align:-1mm}
.wrap{display:flex;break-inside:avoid}
.flap{border:.2mm dashed #000;border-left:0;writing-mode:vertical-rl;text-align:center;font-size:7pt;overflow:hidden}
.strip{columns:2 40mm;column-gap:3mm}
)css";

// On bought sheets nothing but labels is printed; what else is said is for the screen.
constexpr std::string_view kSheetStyle = R"css(
@media print{body{padding:0;max-width:none}h1,.aside{display:none}}
.page{position:relative;overflow:hidden;break-after:page}
.page:last-of-type{break-after:auto}
.cell{position:absolute;overflow:hidden;padding:1.5mm;line-height:1.2;overflow-wrap:anywhere}
.cell p{margin:0 0 .6mm}
.tested{border:.2mm solid #000;font-size:8pt}
.tick{position:absolute;background:#000;print-color-adjust:exact;-webkit-print-color-adjust:exact}
.figure{position:absolute;font-size:6pt;line-height:1}
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

using documents_paper::mm;

std::string box_style(std::int64_t width, std::int64_t height) {
    return "width:" + mm(width) + ";height:" + mm(height);
}
std::string cell_style(const label_sheet::Sheet& sheet, const label_sheet::Cell& cell) {
    return "left:" + mm(cell.x) + ";top:" + mm(cell.y) + ";" + box_style(sheet.width, sheet.height);
}
// A hair less than the paper, or a sheet would run over onto an empty one.
std::string page_style(const label_sheet::Sheet& sheet) {
    const label_sheet::Size size = label_sheet::size_of(sheet.paper);
    return box_style(size.width, size.height - decimal::kOne / 5);
}
std::string sheet_css(const label_sheet::Sheet& sheet) {
    const label_sheet::Size size = label_sheet::size_of(sheet.paper);
    return std::string(kLabelStyle) + "@page{size:" + mm(size.width) + " " + mm(size.height) + ";margin:0}" +
           std::string(kSheetStyle);
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

    // A percentage for the padding would be one of the sheet's width.
    void box(const std::string& kind, std::string style, const std::vector<Printed>& lines) {
        if (paper.round && kind != "label strip")
            style += ";padding:" + mm(decimal::scale_nearest(paper.width, 8, 100));
        html.open("div", {{"class", kind}, {"style", style}});
        for (const Printed& one : lines)
            entry(one);
        html.close();
    }

    // A wrap has its flap beside it.
    void one_label(const std::vector<Printed>& lines) {
        const bool flap = paper.flap > 0 && !paper.round;
        if (flap) html.open("div", {{"class", "wrap"}});
        box(paper.round ? "label round" : "label", box_style(paper.width, paper.height), lines);
        if (!flap) return;
        html.leaf("div", say("label.sheet_flap"),
                  {{"class", "flap"}, {"style", box_style(paper.flap, paper.height)}});
        html.close();
    }

    // In the order of the cells, as many sheets as it takes.
    void sheets(const std::vector<Printed>& lines) {
        const label_sheet::Sheet& sheet = *paper.sheet;
        const std::vector<label_sheet::Cell> cells = label_sheet::cells(sheet);
        std::size_t at = std::min(paper.used, cells.size() - 1);
        for (std::size_t left = std::min(paper.copies, kMostCopies); left > 0; at = 0) {
            html.open("section", {{"class", "page"}, {"style", page_style(sheet)}});
            for (; at < cells.size() && left > 0; ++at, --left)
                box(paper.round ? "cell round" : "cell", cell_style(sheet, cells[at]), lines);
            html.close();
        }
    }

    // Around a tin, as long as its lid is around (3.1416, rounded up).
    void strips() {
        if (paper.strip == 0) return;
        const std::vector<Printed> lines = printed(recipe, labelled, paper, Part::strip);
        html.leaf("h2", say("label.sheet_strips"));
        html.open("div", {{"class", "sheet"}});
        for (std::size_t i = 0; i < std::min(paper.copies, kMostCopies); ++i)
            box("label strip", box_style(decimal::scale_up(paper.width, 31'416, decimal::kOne), paper.strip),
                lines);
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
        html = documents_paper::begin(words, say("label.sheet_sheet", {{"title", recipe.title}}),
                                      paper.sheet ? sheet_css(*paper.sheet) : std::string(kLabelStyle));
        const std::vector<Printed> lines =
            printed(recipe, labelled, paper, paper.strip > 0 ? Part::lid : Part::whole);
        if (paper.sheet) {
            html.leaf("p", say("label.sheet_exactly"), {{"class", "aside small"}});
            sheets(lines);
            html.open("div", {{"class", "aside"}});
        } else {
            html.leaf("p", say("label.sheet_size", {{"width", words::figure(words, paper.width)},
                                                    {"height", words::figure(words, paper.height)}}));
            html.leaf("p", say("label.sheet_ruler"), {{"class", "small"}});
            html.leaf("div", "", {{"class", "bar"}});
            html.open("div", {{"class", "sheet"}});
            for (std::size_t i = 0; i < std::min(paper.copies, kMostCopies); ++i)
                one_label(lines);
            html.close();
        }
        strips();
        if (std::any_of(labelled.label.entries.begin(), labelled.label.entries.end(),
                        [&](const label::Entry& one) { return aside(one, paper); }))
            leaflet();
        remarks();
        return html.finish();
    }
};

// A line for each millimetre, a longer one for five and ten, a figure for ten.
void ruler(markup::Writer& html, bool across, std::int64_t length) {
    for (std::int64_t at = 0; at <= length; at += decimal::kOne) {
        const std::int64_t millimetre = at / decimal::kOne;
        const std::int64_t high = (millimetre % 10 == 0 ? 5 : millimetre % 5 == 0 ? 4 : 2) * decimal::kOne;
        const std::string place = mm(10 * decimal::kOne + at), start = mm(10 * decimal::kOne);
        html.leaf("div", "",
                  {{"class", "tick"},
                   {"style", across ? "left:" + place + ";top:" + start + ";width:.1mm;height:" + mm(high)
                                    : "top:" + place + ";left:" + start + ";height:.1mm;width:" + mm(high)}});
        if (millimetre % 10 == 0 && millimetre > 0)
            html.leaf(
                "div", std::to_string(millimetre),
                {{"class", "figure"},
                 {"style", across ? "left:" + place + ";top:15.5mm" : "top:" + place + ";left:15.5mm"}});
    }
}

}  // namespace

std::vector<Printed> printed(const workspace::Recipe& recipe, const labelling::Labelled& labelled,
                             const LabelPaper& paper, Part part) {
    std::vector<Printed> lines;
    if (!recipe.title.empty()) lines.push_back({recipe.title, 3 * kUnruled, true});
    bool elsewhere = false;
    for (const label::Entry& one : labelled.label.entries) {
        const bool front = one.field == label::Field::identity || one.field == label::Field::net;
        if (part != Part::whole && front != (part == Part::lid)) continue;
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
    if (paper.round) paper.strip = panel.height;
    return paper;
}

std::string labels(const workspace::Recipe& recipe, const labelling::Labelled& labelled,
                   const LabelPaper& paper, const words::Table& words) {
    return Labels{recipe, labelled, paper, words}.build();
}

std::string test_print(const label_sheet::Sheet& sheet, bool round, const words::Table& words) {
    const label_sheet::Size size = label_sheet::size_of(sheet.paper);
    markup::Writer html =
        documents_paper::begin(words, words::say(words, "label.sheet_test"), sheet_css(sheet));
    html.leaf("p", words::say(words, "label.sheet_test_about"), {{"class", "aside"}});
    html.open("section", {{"class", "page"}, {"style", page_style(sheet)}});
    int number = 0;
    for (const label_sheet::Cell& cell : label_sheet::cells(sheet))
        html.leaf(
            "div", std::to_string(++number),
            {{"class", round ? "cell tested round" : "cell tested"}, {"style", cell_style(sheet, cell)}});
    ruler(html, true, size.width - 20 * decimal::kOne);
    ruler(html, false, size.height - 20 * decimal::kOne);
    html.close();
    return html.finish();
}

}  // namespace documents
