// A batch record on paper, to be filed or shown: what holds now in front, then all that was ever written, in
// its order, with what was corrected since. Nothing is left out.
#include <algorithm>

#include "documents.h"
#include "documents_paper.h"

namespace documents {
namespace {

using ::record::Entry;
using ::record::Figure;

constexpr std::string_view kRecordStyle = R"css(
dl{display:grid;grid-template-columns:max-content 1fr;gap:1pt 10pt;margin:4pt 0}
dd{margin:0;overflow-wrap:anywhere}
.sign{display:flex;gap:10mm;margin-top:12pt;break-inside:avoid}
.sign p{flex:1;border-bottom:.75pt solid #000;min-height:22pt}
)css";

struct RecordPaper {
    const ::record::Record& record;
    const catalogue::Catalogue& catalogue;
    const words::Table& words;
    const ::record::State state;
    markup::Writer html = {};

    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return words::say(words, key, arguments);
    }
    std::string figure(std::int64_t grid) const { return words::figure(words, grid); }
    std::string grams(quantity::Mass mass) const { return say("unit.grams", {{"n", figure(mass.grid)}}); }
    std::string kind_words(::record::Kind kind) const {
        return say("record." + std::string(::record::name(kind)));
    }
    void pair(const std::string& what, const std::string& value) {
        html.leaf("dt", what);
        html.leaf("dd", value.empty() ? say("card.unknown") : value);
    }
    void count(::record::Kind kind, const std::optional<std::int64_t>& units) {
        pair(kind_words(kind), units ? std::to_string(*units) : "");
    }

    void head() {
        html.open("dl");
        pair(say("record_paper.product"), record.title);
        const catalogue::Product* kind = find_product(catalogue, record.product);
        if (kind != nullptr) pair(say("product.title"), kind->name);
        pair(kind_words(::record::Kind::day), state.day);
        pair(kind_words(::record::Kind::who), state.who);
        pair(say("record_paper.total"), state.total ? grams(*state.total) : "");
        pair(kind_words(::record::Kind::yield), state.yield ? grams(*state.yield) : "");
        pair(say("sheet.loss"),
             state.loss ? say("sheet.percent_of", {{"p", words::figure_fixed(words, state.loss->grid, 1)}})
                        : "");
        count(::record::Kind::filled, state.filled);
        count(::record::Kind::sent, state.sent);
        count(::record::Kind::kept_back, state.kept_back);
        pair(say("record_paper.left"), state.left ? std::to_string(*state.left) : "");
        pair(kind_words(::record::Kind::release),
             !state.released ? "" : say(*state.released ? "card.yes" : "card.no"));
        html.close();
    }

    void lines() {
        html.leaf("h2", kind_words(::record::Kind::weighed));
        documents_paper::open_table(html, {{say("sheet.ingredient"), ""},
                                           {say("workshop.phase"), ""},
                                           {say("sheet.percent"), "n"},
                                           {say("record_paper.planned"), "n"},
                                           {say("sheet.weighed"), "n"},
                                           {say("shopping.lot"), "w"}});
        for (const ::record::Weighed& one : state.lines) {
            formula::Line line;
            line.ingredient = one.ingredient;
            html.open("tr");
            html.open("th", {{"scope", "row"}});
            html.text(!one.name.empty() ? one.name : workspace::display_name(catalogue, line));
            if (one.after) html.leaf("div", say("record_paper.after"), {{"class", "small"}});
            html.close();
            documents_paper::cell(html, one.phase);
            documents_paper::cell(html, figure(one.percent.grid), "n");
            documents_paper::cell(html, one.planned.grid > 0 ? figure(one.planned.grid) : "", "n");
            documents_paper::cell(html, one.weighed ? figure(one.weighed->grid) : say("card.unknown"), "n");
            documents_paper::cell(
                html, one.lot + (one.lot.empty() || one.best_before.empty() ? "" : ", ") + one.best_before);
            html.close();
        }
        documents_paper::close_table(html);
    }

    std::string said(const Entry& one) const {
        std::string all;
        const auto add = [&](const std::string& more) {
            if (!more.empty()) all += (all.empty() ? "" : "; ") + more;
        };
        if (one.kind == ::record::Kind::release) add(say(one.yes ? "card.yes" : "card.no"));
        if (one.figure) {
            const std::string plain = figure(*one.figure);
            const Figure what = ::record::figure_of(one.kind);
            add(what == Figure::celsius ? say("card.celsius", {{"range", plain}})
                : what == Figure::grams ? say("unit.grams", {{"n", plain}})
                                        : plain);
        }
        add(one.text);
        for (const std::string* sense : {&one.smell, &one.colour, &one.texture})
            add(*sense);
        for (const ::record::Known& known : one.lines) {
            if (known.line >= record.lines.size()) continue;
            formula::Line line;
            line.ingredient = record.lines[known.line].ingredient;
            const std::string& name = record.lines[known.line].name;
            add((name.empty() ? workspace::display_name(catalogue, line) : name) + ":" +
                (known.weighed ? " " + grams(*known.weighed) : "") +
                (known.lot.empty() ? "" : " " + known.lot) +
                (known.best_before.empty() ? "" : " " + known.best_before));
        }
        return all;
    }

    void entries() {
        if (record.entries.empty()) return;
        html.leaf("h2", say("record_paper.entries"));
        documents_paper::open_table(html, {{say("record_paper.day"), ""},
                                           {say("record_paper.what"), ""},
                                           {say("record_paper.said"), ""},
                                           {say("record_paper.who"), ""}});
        for (std::size_t i = 0; i < record.entries.size(); ++i) {
            const Entry& one = record.entries[i];
            const bool holds = std::find(state.holds.begin(), state.holds.end(), i) != state.holds.end();
            html.open("tr");
            documents_paper::cell(html, one.day.empty() ? one.written.substr(0, 10) : one.day);
            documents_paper::cell(html, kind_words(one.kind));
            std::string text = said(one);
            if (!one.corrects.empty()) text += (text.empty() ? "" : " ") + say("record_paper.corrects");
            if (!holds && one.corrects.empty())
                text += (text.empty() ? "" : " ") + say("record_paper.corrected");
            documents_paper::cell(html, text);
            documents_paper::cell(html, one.who);
            html.close();
        }
        documents_paper::close_table(html);
    }

    std::string build() {
        html = documents_paper::begin(
            words,
            say("record_paper.title",
                {{"number", state.number.empty() ? say("card.unknown") : state.number}}),
            kRecordStyle);
        head();
        lines();
        entries();
        std::vector<std::string> asked;
        for (const ::record::Asked one : ::record::missing(record, state))
            asked.push_back(say("record_ask." + std::string(::record::name(one))));
        documents_paper::list(html, say("record_paper.missing"), asked, true);
        html.open("div", {{"class", "sign"}});
        html.leaf("p", say("record_paper.signed"));
        html.leaf("p", say("record_paper.date"));
        html.close();
        html.leaf("p", say("record_paper.about"), {{"class", "small"}});
        return html.finish();
    }
};

}  // namespace

std::string batch_record(const ::record::Record& record, const catalogue::Catalogue& catalogue,
                         const words::Table& words) {
    return RecordPaper{record, catalogue, words, ::record::state_of(record)}.build();
}

}  // namespace documents
