// The book and its edits, and the check of a recipe from outside.
#include <string>

#include "doctest/doctest.h"
#include "engine/workspace.h"
#include "engine/workspace_edits.h"
#include "support.h"

namespace test_workspace {

using result::Code;
using result::Error;
using workspace::Recipe;
using workspace::Workspace;

namespace {

Recipe balm() {
    Recipe recipe;
    recipe.title = "Orchard lip balm";
    recipe.formula = support::formula_of({support::line("wax", 250000), support::rest("sunflower")});
    recipe.steps = {{"A", "Melt over a water bath.", 15}, {"", "Pour.", {}}};
    recipe.batch = support::containers({{"tube", 14, {}, {}}}, 100);
    return recipe;
}

Workspace book() {
    Workspace book;
    workspace::add(book, "one", balm(), "2026-11-25T12:00:00Z");
    workspace::add(book, "two", Recipe{}, "2026-11-25T13:00:00Z");
    return book;
}

}  // namespace

TEST_CASE("a recipe added stands first in the book and is open") {
    const Workspace two = book();
    REQUIRE(two.recipes.size() == 2);
    CHECK(two.recipes[0].id == "two");
    CHECK(two.open == "two");
    CHECK(workspace::find(two, "one")->recipe.title == "Orchard lip balm");
    CHECK(workspace::find(two, "one")->changed == "2026-11-25T12:00:00Z");
    CHECK(workspace::find(two, "three") == nullptr);
}

TEST_CASE("a copy has its own id and title and is open") {
    Workspace two = book();
    CHECK(workspace::copy(two, "one", "three", "Orchard lip balm, copy", "2026-11-26T00:00:00Z").value() ==
          "three");
    CHECK(two.open == "three");
    CHECK(two.recipes[0].recipe.title == "Orchard lip balm, copy");
    CHECK(two.recipes[0].recipe.formula == balm().formula);
    CHECK(workspace::find(two, "one")->recipe == balm());
    CHECK(workspace::copy(two, "nine", "ten", "x", "").error() == Error{Code::not_a_recipe, "nine", ""});
    CHECK(workspace::copy(two, "one", "ten", std::string(81, 'x'), "").error().code == Code::text_too_long);
    CHECK(two.recipes.size() == 3);
}

TEST_CASE("a recipe goes to the bin, comes back, and is only erased from there") {
    Workspace two = book();
    CHECK_FALSE(workspace::erase_binned(two, "two"));
    CHECK(workspace::bin(two, "two", "2026-11-26T00:00:00Z"));
    CHECK(two.open.empty());
    CHECK_FALSE(workspace::bin(two, "two", "2026-11-27T00:00:00Z"));
    CHECK(workspace::find(two, "two")->binned == "2026-11-26T00:00:00Z");
    CHECK(workspace::restore(two, "two"));
    CHECK_FALSE(workspace::restore(two, "two"));
    CHECK(two == [] {
        Workspace same = book();
        same.open.clear();
        return same;
    }());
    CHECK(workspace::bin(two, "two", "2026-11-26T00:00:00Z"));
    CHECK(workspace::erase_binned(two, "two"));
    CHECK(two.recipes.size() == 1);
    CHECK_FALSE(workspace::bin(two, "two", "2026-11-26T00:00:00Z"));
}

TEST_CASE("binning a recipe that is not open leaves the open one open") {
    Workspace two = book();
    CHECK(workspace::bin(two, "one", "2026-11-26T00:00:00Z"));
    CHECK(two.open == "two");
}

TEST_CASE("a sound recipe passes the check unchanged") {
    CHECK(workspace::checked(balm()).value() == balm());
    CHECK(workspace::checked(Recipe{}).value() == Recipe{});
}

TEST_CASE("a recipe from outside is refused at its first fault, with the place") {
    const auto fault = [](auto change) {
        Recipe recipe = balm();
        catalogue::Ingredient own;
        own.id = "own";
        recipe.own = {own, own};
        recipe.own[1].id = "other";
        REQUIRE(workspace::checked(recipe).ok());
        change(recipe);
        const auto checked = workspace::checked(recipe);
        REQUIRE_FALSE(checked.ok());
        return checked.error();
    };
    CHECK(fault([](Recipe& r) { r.title = std::string(81, 'x'); }) ==
          Error{Code::text_too_long, "title", "80"});
    CHECK(fault([](Recipe& r) { r.product = ""; }) == Error{Code::name_empty, "product", ""});
    CHECK(fault([](Recipe& r) { r.market = std::string(81, 'x'); }).place == "market");
    CHECK(fault([](Recipe& r) { r.person = std::string(81, 'x'); }).place == "person");
    CHECK(fault([](Recipe& r) { r.notes = std::string(20001, 'x'); }).place == "notes");
    for (const char* date :
         {"2026-13-01", "2026-02-29", "2026-00-10", "2026-1-1", "yesterday", "2026-04-31", "2026/04/01"})
        CHECK(fault([&](Recipe& r) { r.date = date; }) == Error{Code::field_unknown_value, "date", date});
    CHECK(fault([](Recipe& r) { r.formula.lines[0].percent = {-1}; }).place == "lines[0].percent");
    CHECK(fault([](Recipe& r) { r.own[1].id = "own"; }) ==
          Error{Code::preset_duplicate, "ingredients[1].id", "own"});
    CHECK(fault([](Recipe& r) { r.own[1].id = ""; }) == Error{Code::name_empty, "ingredients[1].id", ""});
    CHECK(fault([](Recipe& r) { r.own[0].max_percent["salve"] = {-1}; }).place ==
          "ingredients[0].max_percent");
    CHECK(fault([](Recipe& r) { r.own[0].note = std::string(1001, 'x'); }).place == "ingredients[0].note");
    CHECK(fault([](Recipe& r) { r.own.resize(101); }).code == Code::too_many);
    CHECK(fault([](Recipe& r) { r.own[1].names["de"] = std::string(81, 'x'); }) ==
          Error{Code::text_too_long, "ingredients[1].names", "80"});
    CHECK(fault([](Recipe& r) { r.own[1].names[""] = "x"; }).place == "ingredients[1].names");
    CHECK(fault([](Recipe& r) {
              for (int i = 0; i < 101; ++i)
                  r.own[1].names[std::to_string(i)] = "x";
          }) == Error{Code::too_many, "ingredients[1].names", "100"});
    CHECK(fault([](Recipe& r) { r.own[0].based_on = std::string(81, 'x'); }).place ==
          "ingredients[0].based_on");
    CHECK(fault([](Recipe& r) {
              r.own[0].parts.resize(101, {"wax", {1}});
          }) == Error{Code::too_many, "ingredients[0].parts", "100"});
    CHECK(fault([](Recipe& r) {
              r.own[0].parts = {{"wax", {1}}, {"", {1}}};
          }) == Error{Code::name_empty, "ingredients[0].parts[1].ingredient", ""});
    CHECK(fault([](Recipe& r) {
              r.own[0].parts = {{"wax", {1000001}}};
          }).place == "ingredients[0].parts[0].percent");
    CHECK(fault([](Recipe& r) { r.own[0].parts = {{"wax", {-1}}}; }).code == Code::number_negative);
    const auto analysed = [](Recipe& r, const char* lot, const char* date, const char* by) {
        r.own[1].analysis = catalogue::LotAnalysis{lot, date, by, {}};
    };
    const std::string long_text(81, 'x');
    CHECK(fault([&](Recipe& r) { analysed(r, long_text.c_str(), "", ""); }).place ==
          "ingredients[1].analysis.lot");
    CHECK(fault([&](Recipe& r) { analysed(r, "", "last week", ""); }) ==
          Error{Code::field_unknown_value, "ingredients[1].analysis.date", "last week"});
    CHECK(fault([&](Recipe& r) { analysed(r, "", "", long_text.c_str()); }).place ==
          "ingredients[1].analysis.by");
    CHECK(fault([&](Recipe& r) {
              analysed(r, "", "", "");
              r.own[1].analysis->constituents["linalool"].typical = quantity::Percent{1000001};
          }).place == "ingredients[1].analysis.constituents.linalool");
    CHECK(fault([&](Recipe& r) {
              analysed(r, "", "", "");
              r.own[1].analysis->constituents[long_text] = {};
          }).place == "ingredients[1].analysis.constituents");
    CHECK(fault([](Recipe& r) { r.steps.resize(61); }) == Error{Code::too_many, "steps", "60"});
    CHECK(fault([](Recipe& r) { r.steps[1].text = std::string(1001, 'x'); }).place == "steps[1].text");
    CHECK(fault([](Recipe& r) { r.steps[1].phase = "Q"; }) ==
          Error{Code::phase_missing, "steps[1].phase", "Q"});
    CHECK(fault([](Recipe& r) { r.steps[0].minutes = -1; }) ==
          Error{Code::number_negative, "steps[0].minutes", "-1"});
    CHECK(fault([](Recipe& r) { r.steps[0].minutes = 1000000; }).code == Code::number_too_large);
    CHECK(fault([](Recipe& r) { r.batch.division = {0}; }) ==
          Error{Code::division_invalid, "batch.division_g", "0"});
    CHECK(fault([](Recipe& r) { r.batch.loss = quantity::kHundred; }).place == "batch.loss_percent");
    CHECK(fault([](Recipe& r) { r.batch.grams = {-1}; }).place == "batch.grams");
    CHECK(fault([](Recipe& r) { r.batch.containers[0].count = -1; }).place == "batch.containers[0].count");
    CHECK(fault([](Recipe& r) { r.batch.containers[0].id = ""; }).place == "batch.containers[0].id");
    CHECK(fault([](Recipe& r) { r.batch.containers[0].fill_g = quantity::Mass{-1}; }).place ==
          "batch.containers[0].fill_g");
    CHECK(fault([](Recipe& r) { r.batch.containers[0].fill_percent = quantity::Percent{1000001}; }).place ==
          "batch.containers[0].fill_percent");
    CHECK(fault([](Recipe& r) { r.batch.containers.resize(51, r.batch.containers[0]); }).code ==
          Code::too_many);
    CHECK(fault([](Recipe& r) { r.batch.people = -1; }).place == "batch.people");
    CHECK(fault([](Recipe& r) { r.batch.stock = {{"", {1}}}; }).place == "batch.stock[0].ingredient");
    CHECK(fault([](Recipe& r) { r.batch.stock = {{"wax", {-1}}}; }).place == "batch.stock[0].grams");
}

TEST_CASE("29 February is a date in a leap year") {
    Recipe recipe = balm();
    recipe.date = "2028-02-29";
    CHECK(workspace::checked(recipe).ok());
}

TEST_CASE("a line is shown by the name in the catalogue, else as it was written, else by its id") {
    const auto shelf = support::shelf();
    formula::Line line = support::line("shea", 1);
    CHECK(workspace::display_name(shelf, line) == "Shea butter");
    line = support::line("", 1);
    line.name = "Ida's butter";
    CHECK(workspace::display_name(shelf, line) == "Ida's butter");
    line = support::line("unheard_of", 1);
    CHECK(workspace::display_name(shelf, line) == "unheard_of");
}

TEST_CASE("a phase that is renamed takes its lines and its steps along") {
    const Recipe renamed = workspace::set_phase(balm(), 0, {"Melt", 750000, {}}).value();
    CHECK(renamed.formula.lines[0].phase == "Melt");
    CHECK(renamed.steps[0].phase == "Melt");
    CHECK(renamed.steps[1].phase.empty());
    CHECK(workspace::checked(renamed).ok());
    CHECK(workspace::set_phase(balm(), 3, {"B", {}, {}}).error().code == Code::phase_missing);
}

TEST_CASE("a phase that goes leaves its steps behind, naming no phase") {
    Recipe recipe = balm();
    recipe.formula.phases.push_back({"B", {}, {}});
    recipe.steps[1].phase = "B";
    const Recipe without = workspace::remove_phase(recipe, recipe.formula.phases[1].id).value();
    CHECK(without.formula.phases.size() == 1);
    CHECK(without.steps[1].phase.empty());
    CHECK(without.steps[1].text == "Pour.");
    CHECK(workspace::remove_phase(recipe, "A").error().code == Code::phase_in_use);
}

TEST_CASE("steps, notes, title and kind are changed within their bounds") {
    Recipe recipe = workspace::add_step(balm(), {"A", "Stir.", 5}).value();
    REQUIRE(recipe.steps.size() == 3);
    recipe = workspace::set_step(recipe, 2, {"", "Stir slowly.", {}}).value();
    CHECK(recipe.steps[2] == formula::Step{"", "Stir slowly.", {}});
    CHECK(workspace::remove_step(recipe, 2).value() == balm());
    CHECK(workspace::set_step(recipe, 3, {}).error() == Error{Code::line_missing, "steps[3]", ""});
    CHECK(workspace::remove_step(recipe, 3).error().code == Code::line_missing);
    CHECK(workspace::add_step(recipe, {"Q", "Stir.", {}}).error() ==
          Error{Code::phase_missing, "steps[3].phase", "Q"});
    CHECK(workspace::set_step(recipe, 0, {"", std::string(1001, 'x'), {}}).error().place == "steps[0].text");
    CHECK(workspace::set_step(recipe, 0, {"", "", -1}).error().code == Code::number_negative);
    recipe.steps.resize(workspace::kMostSteps);
    CHECK(workspace::add_step(recipe, {}).error().code == Code::too_many);
    CHECK(workspace::set_notes(balm(), "softer in August").value().notes == "softer in August");
    CHECK(workspace::set_notes(balm(), std::string(20001, 'x')).error().place == "notes");
    CHECK(workspace::set_title(balm(), "Windfall balm").value().title == "Windfall balm");
    CHECK(workspace::set_title(balm(), std::string(81, 'x')).error().place == "title");
    CHECK(workspace::set_product(balm(), "body_oil").value().product == "body_oil");
    CHECK(workspace::set_product(balm(), "").error().code == Code::name_empty);
}

TEST_CASE("what a label says, and who answers for it, are changed within their bounds") {
    label::Said said;
    said.identity = "Winter balm";
    said.keeping.months = 24;
    CHECK(workspace::set_label(balm(), said).value().label == said);
    said.keeping.months = 601;
    CHECK(workspace::set_label(balm(), said).error().place == "label.keeps_months");
    said.keeping.months = {};
    said.warnings.assign(label::kMostSentences + 1, "Keep out of eyes.");
    CHECK(workspace::set_label(balm(), said).error().code == Code::too_many);
    const label::Maker maker{"Hollow Lane Allotments", "1 Hollow Lane, Hollowham", "", ""};
    CHECK(workspace::set_maker({}, maker).value().maker == maker);
    CHECK(workspace::set_maker({}, {std::string(161, 'x'), "", "", ""}).error().place == "maker.name");
}

}  // namespace test_workspace
