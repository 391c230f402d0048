// The assessor's pack on paper. Percents have all their places, a name says where it was found and how far
// that may be trusted, and what is not known says so. A constituent is called as the analysis calls it.
#include "documents.h"
#include "documents_paper.h"

namespace documents {
namespace {

using ::assessor_pack::Material;
using ::assessor_pack::Pack;
using ::assessor_pack::Paper;

constexpr std::string_view kPackStyle = R"css(
body{font-size:9.5pt}
table{width:100%;border-collapse:collapse;table-layout:fixed}
th,td{border:.75pt solid #000;padding:2pt 4pt;text-align:left;vertical-align:top;overflow-wrap:anywhere}
tr{break-inside:avoid}
.n{width:15%;text-align:right;font-variant-numeric:tabular-nums}
.c{width:25%}
td ul{margin:0;padding-left:12pt}
td p{margin:0}
)css";

struct PackPaper {
    const Pack& pack;
    const catalogue::Catalogue& catalogue;
    const words::Table& words;
    markup::Writer html = {};

    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return words::say(words, key, arguments);
    }
    std::string said(std::string_view key, const std::string& value) const {
        return value.empty() ? "" : say("pack.said", {{"what", say(key)}, {"value", value}});
    }
    void line(const std::string& text) {
        if (!text.empty()) html.leaf("p", text);
    }
    static std::string joined(const std::vector<std::string>& parts) {
        std::string all;
        for (const std::string& one : parts)
            if (!one.empty()) all += (all.empty() ? "" : ", ") + one;
        return all;
    }
    std::vector<std::string> papers(const std::vector<Paper>& wanted) const {
        std::vector<std::string> all;
        for (const Paper one : wanted)
            all.push_back(say("paper." + std::string(::assessor_pack::paper_name(one))));
        return all;
    }

    std::string source_of(const Material& one) const {
        const std::string how = say("standing." + std::string(source::standing_name(one.inci_standing)));
        const source::Entry* entry = catalogue::find_source(catalogue, one.inci_source);
        const bool says_no_more =
            entry == nullptr || entry->key == "memory" || entry->key == "common_practice";
        return says_no_more ? how : entry->title + "; " + how;
    }

    void analysis(const catalogue::LotAnalysis& lot) {
        line(joined({said("own.lot", lot.lot), said("pack.date", lot.date), said("own.by", lot.by)}));
        for (const auto& [name, content] : lot.constituents) {
            std::vector<std::string> figures;
            for (const auto& [key, share] :
                 {std::pair("pack.min", &content.min), std::pair("pack.typical", &content.typical),
                  std::pair("pack.max", &content.max)})
                if (*share) figures.push_back(say(key, {{"percent", words::figure(words, (*share)->grid)}}));
            line(name + ": " + (figures.empty() ? say("card.unknown") : joined(figures)));
        }
    }

    void row(const Material& one) {
        html.open("tr");
        html.open("td");
        html.open("p");
        html.leaf("strong", one.name);
        html.close();
        const bool named = !one.inci.empty();
        line(said("pack.inci", named ? joined(one.inci) : say("card.unknown")));
        if (named) html.leaf("p", source_of(one), {{"class", "small"}});
        line(said("card.botanical", joined({one.botanical, one.part})));
        line(said("card.cas", one.cas.empty() ? say("card.unknown") : joined(one.cas)));
        html.close();
        html.leaf("td", say("card.percent", {{"range", words::figure_fixed(words, one.percent.grid, 4)}}),
                  {{"class", "n"}});
        const std::string role = "role." + one.function;
        html.open("td");
        line(one.function.empty() ? say("card.unknown") : words::has(words, role) ? say(role) : one.function);
        if (one.analysis) analysis(*one.analysis);
        html.close();
        html.open("td");
        html.open("ul", {{"class", "boxes"}});
        for (const std::string& paper : papers(one.wanted))
            html.leaf("li", paper);
        html.close();
        html.close();
        html.close();
    }

    std::string build() {
        html = documents_paper::begin(
            words, say("pack.title", {{"title", pack.title.empty() ? say("recipe.untitled") : pack.title}}),
            kPackStyle);
        const catalogue::Product* kind = catalogue::find_product(catalogue, pack.product);
        line(said("product.title", joined({kind != nullptr ? kind->name : pack.product,
                                           pack.contact.empty() ? "" : say("product." + pack.contact)})));
        line(said("meant.market", say("market." + std::string(market::id_of(pack.market)))));
        line(say("pack.about"));
        html.open("table");
        html.open("thead");
        html.open("tr");
        html.leaf("th", say("sheet.ingredient"));
        html.leaf("th", say("sheet.percent"), {{"class", "n"}});
        html.leaf("th", say("pack.function"), {{"class", "c"}});
        html.leaf("th", say("pack.papers"), {{"class", "c"}});
        html.close();
        html.close();
        html.open("tbody");
        for (const Material& one : pack.materials)
            row(one);
        html.close();
        html.close();
        documents_paper::list(html, say("pack.strained"), pack.strained);
        documents_paper::list(html, say("pack.product_papers"), papers(pack.wanted), true);
        html.leaf("p", say("caution.defer"), {{"class", "small"}});
        return html.finish();
    }
};

}  // namespace

std::string assessor_pack(const ::assessor_pack::Pack& pack, const catalogue::Catalogue& catalogue,
                          const words::Table& words) {
    return PackPaper{pack, catalogue, words}.build();
}

}  // namespace documents
