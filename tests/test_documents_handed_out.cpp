// The customer card and the assessor's pack on paper: all that they say stands there, and what a person wrote
// stays text.
#include <string>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "engine/documents.h"
#include "engine/door.h"
#include "shipped.h"

namespace test_documents_handed_out {

namespace {

customer_card::Card card_of(const workspace::Recipe& recipe) {
    const auto& shipped = shipped::presets().catalogue;
    const safety::Report report = analysis::checks(recipe, shipped, &shipped::book());
    return labelling::card_of(recipe, report, shipped, {}, &shipped::book(), shipped::english());
}

std::string card(const workspace::Recipe& recipe) {
    return documents::customer_card(card_of(recipe), shipped::english());
}

std::string pack(const workspace::Recipe& recipe) {
    const auto made = labelling::pack_of(recipe, shipped::presets().catalogue);
    REQUIRE(made.ok());
    return documents::assessor_pack(*made, shipped::presets().catalogue, shipped::english());
}

std::size_t count(const std::string& text, std::string_view part) {
    std::size_t found = 0;
    for (std::size_t at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size()))
        found += 1;
    return found;
}

bool holds(const std::string& text, std::string_view part) {
    return text.find(part) != std::string::npos;
}

// A title, an ingredient and a lot such as nobody means well by.
workspace::Recipe hostile() {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.title = "</script><script>alert(\"1\")</script>";
    catalogue::Ingredient own;
    own.id = "own_one";
    own.own = true;
    own.name = "\xE2\x80\xAE<img src=x onerror='1'>";
    own.inci["eu"] = "\" onload=\"1";
    own.role = "essential_oil";
    own.analysis = catalogue::LotAnalysis{};
    own.analysis->lot = "<b>";
    own.analysis->constituents["<i>lin\xD7\x90"] = {{}, quantity::percent(3), {}};
    recipe.own.push_back(own);
    formula::Line line;
    line.ingredient = own.id;
    line.percent = quantity::percent(1);
    line.phase = recipe.formula.lines.front().phase;
    recipe.formula.lines.push_back(line);
    line.ingredient.clear();
    line.name = std::string(formula::kMostNameBytes - 1, 'w') + "<";
    recipe.formula.lines.push_back(line);
    return recipe;
}

}  // namespace

TEST_CASE("customer card: every question is answered with every sentence, for every demonstration recipe") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        const customer_card::Card made = card_of(recipe);
        const std::string paper = documents::customer_card(made, shipped::english());
        CHECK(count(paper, "<h2>") == customer_card::kTopics + 1);
        for (const customer_card::Answer& one : made.answers)
            for (const std::string& sentence : one.sentences)
                CHECK(holds(paper, ">" + sentence + "</p>"));
        CHECK(holds(paper, "It is no promise that a product is free of anything."));
    }
    CHECK(holds(card(shipped::recipe("orchard_lip_balm")), "<h1>Orchard lip balm</h1>"));
}

TEST_CASE("customer card: what is not in the list is named as not known") {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.formula.lines[1].name = "Grandmother's drops";
    recipe.formula.lines[1].ingredient.clear();
    CHECK(holds(card(recipe), "nothing is known of it: Grandmother&#39;s drops."));
}

TEST_CASE("assessor's pack: each material has its exact share, its names and its papers to tick") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        const auto made = labelling::pack_of(recipe, shipped::presets().catalogue);
        const std::string paper = pack(recipe);
        CHECK(count(paper, "<tr>") == made->materials.size() + 1);
        for (const assessor_pack::Material& one : made->materials) {
            CAPTURE(one.name);
            CHECK(holds(paper, "<strong>" + one.name + "</strong>"));
            CHECK(holds(paper, decimal::print_fixed(one.percent.grid, 4) + "\xC2\xA0%</td>"));
            for (const std::string& cas : one.cas)
                CHECK(holds(paper, cas));
        }
        CHECK(holds(paper, "Papers of the product, still missing"));
        CHECK(holds(paper, "[[") == false);
    }
    CHECK(holds(pack(shipped::recipe("orchard_lip_balm")), "INCI: Cera Alba"));
    CHECK(holds(pack(shipped::recipe("kitchen_garden_hand_lotion")), "Challenge test"));
}

TEST_CASE(
    "assessor's pack: the analysis of one's own bottle stands beside it with lot, date and laboratory") {
    workspace::Recipe recipe = hostile();
    catalogue::LotAnalysis& lot = *recipe.own.back().analysis;
    lot = {"L 7", "2026-10-01", "Hollow Lane laboratory", {}};
    lot.constituents["linalool"] = {quantity::percent(25), {}, quantity::percent(38)};
    const std::string paper = pack(recipe);
    CHECK(holds(paper, "Lot: L 7, date: 2026-10-01, Analysed by: Hollow Lane laboratory"));
    CHECK(holds(paper, "linalool: at least 25\xC2\xA0%, at most 38\xC2\xA0%"));
    CHECK(count(paper, "Analysis of the lot") ==
          count(pack(shipped::recipe("orchard_lip_balm")), "Analysis of the lot"));
}

TEST_CASE("papers handed out: what a person wrote is text and nothing else") {
    for (const std::string& paper : {card(hostile()), pack(hostile())}) {
        CHECK_FALSE(holds(paper, "<script"));
        CHECK_FALSE(holds(paper, "</script"));
        CHECK_FALSE(holds(paper, "<img"));
        CHECK_FALSE(holds(paper, "<b>"));
        CHECK_FALSE(holds(paper, "<i>"));
        CHECK_FALSE(holds(paper, " onload=\""));
        CHECK(holds(paper, "&lt;/script&gt;"));
    }
}

TEST_CASE("the command line gives both as papers, and no pack of a formula that does not add up") {
    const std::string file = store::write_recipe(shipped::recipe("orchard_lip_balm"));
    const auto run = [](const char* verb, const std::string& input) {
        return door::run(verb, input, shipped::presets(), {});
    };
    CHECK(run("pack", file).out == pack(shipped::recipe("orchard_lip_balm")));
    CHECK(holds(run("card", file).out, "<h1>Orchard lip balm</h1>"));
    workspace::Recipe short_one = shipped::recipe("orchard_lip_balm");
    for (formula::Line& line : short_one.formula.lines)
        if (line.rest) line.rest = false, line.percent = {};
    const door::Answer refused = run("pack", store::write_recipe(short_one));
    CHECK(refused.exit_code == 2);
    CHECK(holds(refused.err, "not to 100"));
    CHECK(run("card", "{").exit_code == 2);
    CHECK(run("pack", "{").exit_code == 2);
}

}  // namespace test_documents_handed_out
