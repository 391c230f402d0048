#include "documents_paper.h"

#include <algorithm>

#include "decimal.h"

namespace documents_paper {
namespace {

constexpr std::string_view kStyle = R"css(
@page{margin:10mm}
*{box-sizing:border-box}
body{margin:0 auto;padding:4mm;max-width:190mm;background:#fff;color:#000;font:11pt/1.4 "Open Sans",system-ui,sans-serif}
h1{font-size:16pt;margin:0 0 2pt;overflow-wrap:anywhere}
h2{font-size:12.5pt;margin:12pt 0 3pt;break-after:avoid}
h3{font-size:11pt;margin:8pt 0 2pt;break-after:avoid}
p{margin:2pt 0;overflow-wrap:anywhere}
ul,ol{margin:3pt 0;padding-left:16pt}
li{break-inside:avoid;overflow-wrap:anywhere}
.boxes{list-style:"\25a1\00a0\00a0"}
.small{font-size:9.5pt}
table{width:100%;border-collapse:collapse;margin:4pt 0}
th,td{border:.75pt solid #000;padding:2pt 5pt;text-align:left;vertical-align:top;overflow-wrap:anywhere}
th{font-weight:600}
tr{break-inside:avoid}
.n{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
.w{width:18%}
.b{width:13mm}
th.b{font-size:8.5pt}
@media screen and (max-width:600px){.w{display:none}th,td{padding:2pt 3pt}}
.code{display:block;fill:none;stroke:#000;shape-rendering:crispEdges}
)css";

}  // namespace

markup::Writer begin(const words::Table& words, const std::string& title, std::string_view style) {
    markup::Writer html;
    html.open("html", {{"lang", words.language}});
    html.open("head");
    html.leaf("meta", "", {{"charset", "utf-8"}});
    html.leaf("meta", "", {{"name", "viewport"}, {"content", "width=device-width"}});
    html.leaf("title", title);
    html.style(std::string(kStyle) + std::string(style));
    html.close();
    html.open("body");
    html.leaf("h1", title);
    return html;
}

void list(markup::Writer& html, const std::string& heading, const std::vector<std::string>& sentences,
          bool boxes) {
    if (sentences.empty()) return;
    html.leaf("h2", heading);
    html.open("ul", boxes ? markup::Attributes{{"class", "boxes"}} : markup::Attributes{});
    for (const std::string& one : sentences)
        html.leaf("li", one);
    html.close();
}

void open_table(markup::Writer& html, const std::vector<Column>& columns) {
    html.open("table");
    html.open("thead");
    html.open("tr");
    for (const Column& one : columns) {
        markup::Attributes attributes{{"scope", "col"}};
        if (!one.kind.empty()) attributes.emplace_back("class", one.kind);
        html.leaf("th", one.head, attributes);
    }
    html.close();
    html.close();
    html.open("tbody");
}

void cell(markup::Writer& html, const std::string& text, std::string_view kind) {
    if (kind == "th")
        html.leaf("th", text, {{"scope", "row"}});
    else if (kind == "b")
        html.leaf("td", "\xE2\x96\xA1", {{"class", "b"}});
    else
        html.leaf("td", text,
                  kind.empty() ? markup::Attributes{} : markup::Attributes{{"class", std::string(kind)}});
}

void close_table(markup::Writer& html) {
    html.close();
    html.close();
}

void paragraphs(markup::Writer& html, std::string_view text) {
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t to = std::min(text.find('\n', from), text.size());
        if (to > from) html.leaf("p", text.substr(from, to - from));
        from = to + 1;
    }
}

// A run of dark modules is a line one unit thick; the frame begins half a unit higher, so that lines lie on
// whole numbers. A module is half a millimetre or more, and the code 40 mm or more.
void code(markup::Writer& html, const qr::Code& code, const std::string& name) {
    const int side = code.side + 2 * qr::kQuiet;
    std::string path;
    int row = -1, end = 0;
    for (const qr::Run& run : qr::runs(code)) {
        if (run.y != row)
            path += "M" + std::to_string(run.x) + " " + std::to_string(run.y);
        else
            path += "m" + std::to_string(run.x - end) + " 0";
        path += "h" + std::to_string(run.length);
        row = run.y;
        end = run.x + run.length;
    }
    const std::string size = mm(std::max(40 * decimal::kOne, side * decimal::kOne / 2));
    const std::string quiet = "-" + std::to_string(qr::kQuiet);
    html.open("svg",
              {{"class", "code"},
               {"viewbox", quiet + " " + quiet + ".5 " + std::to_string(side) + " " + std::to_string(side)},
               {"width", size},
               {"height", size},
               {"role", "img"},
               {"aria-label", name}});
    html.leaf("path", "", {{"d", path}});
    html.close();
}

std::string mm(std::int64_t grid) {
    return decimal::print(grid) + "mm";
}

}  // namespace documents_paper
