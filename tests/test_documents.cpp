// The batch sheet: complete, escaped, and refused where there is no batch.
#include <algorithm>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/documents.h"
#include "engine/markup.h"
#include "shipped.h"
#include "support.h"

namespace test_documents {

namespace {

std::string sheet_of(const workspace::Recipe& recipe, const words::Table& words = shipped::english()) {
    const catalogue::Catalogue& catalogue = shipped::presets().catalogue;
    return documents::batch_sheet(recipe, analysis::of(recipe, catalogue), catalogue, words).value();
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

workspace::Recipe two_lines() {
    workspace::Recipe recipe;
    recipe.title = "Harvest-supper body oil";
    recipe.product = "body_oil";
    recipe.formula = support::formula_of({support::line("jojoba", 333333), support::rest("olive")});
    recipe.batch = support::grams(1'000'000, 1000);
    return recipe;
}

// Whether every element that is opened is closed in its order; the void ones aside.
bool is_balanced(const std::string& html) {
    std::vector<std::string> open;
    for (std::size_t at = html.find('<'); at != std::string::npos; at = html.find('<', at + 1)) {
        const std::size_t end = html.find('>', at);
        if (end == std::string::npos) return false;
        const std::string inside = html.substr(at + 1, end - at - 1);
        const std::string name = inside.substr(0, inside.find(' '));
        if (name == "!doctype" || name == "meta" || name == "br") continue;
        if (name[0] != '/') {
            open.push_back(name);
        } else if (open.empty() || open.back() != name.substr(1)) {
            return false;
        } else {
            open.pop_back();
        }
    }
    return open.empty();
}

}  // namespace

TEST_CASE("documents: the batch sheet shows the recipe with its grams") {
    const std::string sheet = sheet_of(two_lines());
    CHECK(holds(sheet, "<h1>Harvest-supper body oil</h1>"));
    CHECK(holds(sheet, "Body oil"));
    CHECK(holds(sheet, ">33.3<"));  // grams, in steps of 0.1
    CHECK(holds(sheet, ">66.7<"));
    CHECK(holds(sheet, ">33.3333<"));  // percent in full
    CHECK(holds(sheet, ">33.3000<"));  // and what 33.3 g really are
}

TEST_CASE("documents: the shipped recipes have a sheet with every line, phase, step and container") {
    for (const auto& [name, recipe] : shipped::presets().recipes) {
        CAPTURE(name);
        const std::string sheet = sheet_of(recipe);
        const auto catalogue = catalogue::with_own(shipped::presets().catalogue, recipe.own);
        CHECK(is_balanced(sheet));
        CHECK_FALSE(holds(sheet, "[["));  // a word that is not in the table
        for (const formula::Line& line : recipe.formula.lines)
            CHECK(holds(sheet, ">" + workspace::display_name(catalogue, line) + "</th>"));
        for (const formula::Phase& phase : recipe.formula.phases)
            CHECK(holds(sheet, "<h3>Phase " + phase.id + "</h3>"));
        CHECK(std::count(sheet.begin(), sheet.end(), '\n') > 40);
        for (const batch::Containers& kind : recipe.batch.containers)
            CHECK(holds(sheet, find_container(catalogue, kind.id)->name));
    }
}

TEST_CASE("documents: temperatures, loss, division and rounding are told") {
    workspace::Recipe recipe = two_lines();
    recipe.formula.phases[0].hold_c = 625000;
    recipe.formula.phases[0].add_below_c = 400000;
    recipe.batch = support::containers({{"tin_30ml", 3, quantity::Mass{245000}, {}}}, 1000);
    recipe.batch.loss = quantity::Percent{35000};
    const std::string sheet = sheet_of(recipe);
    for (const char* part :
         {"62.5", "40 °C", "3.5 %", "0.1 g", "73.5 g", "76.16", "76.2 g", "3 × ", "24.5 g each"}) {
        INFO("part: ", std::string(part));
        CHECK(holds(sheet, part));
    }
}

TEST_CASE("documents: figures follow the decimal sign of the table") {
    words::Table comma = shipped::english();
    comma.sign = decimal::Sign::comma;
    const std::string sheet = sheet_of(two_lines(), comma);
    CHECK(holds(sheet, ">33,3<"));
    CHECK_FALSE(holds(sheet, ">33.3<"));
}

TEST_CASE("documents: what a person wrote cannot become markup") {
    workspace::Recipe recipe = two_lines();
    const std::string hostile = "<script>alert(1)</script><img src=x onerror='x'>&\"";
    recipe.title = hostile;
    recipe.product = hostile;
    recipe.person = hostile.substr(0, 25);
    recipe.notes = hostile + "\n" + hostile;
    recipe.formula.lines[0] = {"", hostile, {100000}, false, "A", false, {}};
    recipe.formula.phases[0].id = "<i>";
    for (formula::Line& line : recipe.formula.lines)
        line.phase = "<i>";
    recipe.steps = {{"<i>", hostile, 5}};
    recipe.batch.containers = {{hostile, 1, quantity::Mass{10000}, {}}};
    const std::string sheet = sheet_of(recipe);
    CHECK(is_balanced(sheet));
    CHECK_FALSE(holds(sheet, "<script"));
    CHECK_FALSE(holds(sheet, "<img"));
    CHECK_FALSE(holds(sheet, "<i>"));
    CHECK(holds(sheet, "&lt;script&gt;"));
}

TEST_CASE("documents: the sheet fetches nothing and runs nothing") {
    const std::string sheet = sheet_of(shipped::recipe("orchard_lip_balm"));
    for (const char* part : {"<script", "<link", "<img", "src=", "href=", "url(", "http", "@import", " on"})
        if (std::string_view(part) != " on") CHECK_FALSE(holds(sheet, part));
    CHECK(holds(sheet, "<html lang=\"en\">"));
    CHECK(holds(sheet, "@page"));
}

TEST_CASE("documents: tables say which way their heads point") {
    const std::string sheet = sheet_of(two_lines());
    CHECK(holds(sheet, "<th scope=\"col\""));
    CHECK(holds(sheet, "<th scope=\"row\">"));
}

TEST_CASE("documents: water brings the caution about preservatives, and only water does") {
    const std::string caution = markup::escape(words::say(shipped::english(), "sheet.caution_water"));
    CHECK_FALSE(holds(sheet_of(two_lines()), caution));
    CHECK(holds(sheet_of(shipped::recipe("kitchen_garden_hand_lotion")), caution));
    workspace::Recipe wet = two_lines();
    wet.formula.lines[0].ingredient = "water";
    const std::string sheet = sheet_of(wet);
    CHECK(holds(sheet, caution));
    CHECK(holds(sheet,
                markup::escape(words::say(shipped::english(), "sheet.findings"))));  // and a stop beside it
}

TEST_CASE("documents: without a batch there is no sheet, but the reason") {
    workspace::Recipe recipe = two_lines();
    recipe.batch = {};
    const catalogue::Catalogue& catalogue = shipped::presets().catalogue;
    const auto none =
        documents::batch_sheet(recipe, analysis::of(recipe, catalogue), catalogue, shipped::english());
    CHECK(none.error().code == result::Code::amount_missing);
    recipe = two_lines();
    recipe.formula.lines[1] = support::line("olive", 600000);
    const auto sum =
        documents::batch_sheet(recipe, analysis::of(recipe, catalogue), catalogue, shipped::english());
    CHECK(sum.error().code == result::Code::sum_not_hundred);
    CHECK(sum.error().detail == "93.3333");
}

}  // namespace test_documents
