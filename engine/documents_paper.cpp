#include "documents_paper.h"

namespace documents_paper {
namespace {

constexpr std::string_view kStyle = R"css(
@page{margin:10mm}
*{box-sizing:border-box}
body{margin:0 auto;padding:4mm;max-width:190mm;background:#fff;color:#000;font:11pt/1.4 "Open Sans",system-ui,sans-serif}
h1{font-size:16pt;margin:0 0 2pt}
h2{font-size:12.5pt;margin:12pt 0 3pt;break-after:avoid}
p{margin:2pt 0;overflow-wrap:anywhere}
ul{margin:3pt 0;padding-left:16pt}
li{break-inside:avoid;overflow-wrap:anywhere}
.boxes{list-style:"\25a1\00a0\00a0"}
.small{font-size:9.5pt}
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

}  // namespace documents_paper
