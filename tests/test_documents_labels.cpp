// Labels at their real size: tests/data/labels_orchard_eu.html is the whole of one.
#include <fstream>
#include <string>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "engine/documents.h"
#include "shipped.h"

namespace test_documents_labels {

using documents::LabelPaper;
using label::Field;

namespace {

labelling::Labelled labelled(const workspace::Recipe& recipe, const labelling::Details& details) {
    const analysis::Analysis report = analysis::of(recipe, shipped::presets().catalogue);
    labelling::Allergens none;
    none.named = std::vector<declaration::Named>{};
    auto made = labelling::of(recipe, report.batch ? std::optional(*report.batch) : std::nullopt,
                              shipped::presets().catalogue, details, none, shipped::english());
    REQUIRE(made.ok());
    return std::move(made).value();
}

labelling::Details details() {
    labelling::Details all;
    all.maker = {"Hollow Lane Allotments", "1 Hollow Lane, Hollowham", "", ""};
    all.batch_number = "26-11";
    return all;
}

const type_height::Panel kTube{type_height::Shape::cylinder, 508'000, 508'000};

workspace::Recipe orchard(const char* market) {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.market = market;
    recipe.label.keeping = {36, 12, false};
    recipe.label.warnings = {"Keep out of eyes."};
    recipe.label.panel = kTube;
    return recipe;
}

std::size_t count(const std::string& text, std::string_view part) {
    std::size_t found = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size()))
        found += 1;
    return found;
}

std::string page(const workspace::Recipe& recipe, const LabelPaper& paper,
                 const labelling::Details& said = details()) {
    return documents::labels(recipe, labelled(recipe, said), paper, shipped::english());
}

}  // namespace

TEST_CASE("labels: the Orchard lip balm's for the EU, whole") {
    LabelPaper paper = documents::paper_for(kTube);
    CHECK(paper.width == 508'000);
    CHECK(paper.height == 508'000);
    const std::string made = page(orchard("eu"), paper);
    if (made != shipped::data("labels_orchard_eu.html")) {
        std::ofstream("labels_orchard_eu.html.new", std::ios::binary) << made;
        FAIL_CHECK("labels_orchard_eu.html.new differs from tests/data/labels_orchard_eu.html");
    }
}

TEST_CASE("labels: the size is the panel's, in millimetres, as often as asked") {
    LabelPaper paper;
    paper.width = 625'000;
    paper.height = 305'000;
    paper.copies = 12;
    const std::string made = page(orchard("us"), paper);
    CHECK(count(made, "style=\"width:62.5mm;height:30.5mm\"") == 12);
    CHECK(made.find("class=\"bar\"") != std::string::npos);
    paper.copies = 100'000;
    CHECK(count(page(orchard("us"), paper), "class=\"label\"") == documents::kMostCopies);
    const LabelPaper lid = documents::paper_for({type_height::Shape::round_top, 0, 600'000});
    CHECK(lid.round);
    CHECK(page(orchard("us"), lid).find("class=\"label round\"") != std::string::npos);
}

TEST_CASE("labels: letters are twice as high as the law asks of a small o") {
    // 1/16 in is 1.5875 mm.
    CHECK(page(orchard("us"), {}).find("font-size:3.175mm") != std::string::npos);
    CHECK(page(orchard("ca"), {}).find("font-size:3.2mm") != std::string::npos);
}

TEST_CASE("labels: in the EU the list and the cautions may stand on a leaflet, which the label points to") {
    LabelPaper paper;
    paper.leaflet = true;
    const std::string made = page(orchard("eu"), paper);
    CHECK(count(made, "Ingredients: ") == 1);
    CHECK(made.find("Ingredients: ") > made.find("<h2>Leaflet</h2>"));
    CHECK(made.find("Keep out of eyes.") > made.find("<h2>Leaflet</h2>"));
    CHECK(made.find("aria-label=\"Leaflet\"") < made.find("<h2>Leaflet</h2>"));
}

TEST_CASE("labels: what is missing, what is not certain and what a sale needs stand beneath") {
    const std::string made = page(orchard("eu"), {}, {});
    CHECK(made.find("Batch number: missing (Art. 19(1)(e))") != std::string::npos);
    CHECK(made.find("Not certain") != std::string::npos);
    CHECK(made.find("A safety report by a qualified assessor") != std::string::npos);
}

TEST_CASE("labels: what a person wrote is text and nothing else") {
    workspace::Recipe recipe = orchard("eu");
    recipe.label.warnings = {"<script>alert(1)</script>"};
    labelling::Details said = details();
    said.maker.name = "\"><img src=x>";
    const std::string made = page(recipe, {}, said);
    CHECK(made.find("<script") == std::string::npos);
    CHECK(made.find("<img") == std::string::npos);
}

}  // namespace test_documents_labels
