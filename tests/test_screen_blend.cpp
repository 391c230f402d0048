// Blend and keeping as a person meets them: beside the lines, with pictures that the mirror tells, rated,
// laid over one another, and by the lots on the shelf.
#include "engine/workspace_lots.h"
#include "hand.h"
#include "shipped.h"
#include "whole.h"

namespace test_screen_blend {

using hand::FirstVisit;
using hand::press;
using hand::reads;
using hand::Role;

namespace {

void open_blend(app::App& app, const char* stem) {
    app::keep(app, shipped::recipe(stem));
    hand::push(platform::Kind::resized);
    hand::settle();
    press(app.say("nav.blend"));
    REQUIRE(app.ui.screen == app::Screen::blend);
}

void add_lot(app::App& app, const char* ingredient, const char* number, const char* best_before) {
    lot::Lot lot;
    lot.ingredient = ingredient;
    lot.number = number;
    lot.best_before = best_before;
    REQUIRE(workspace::add_lot(app.work, lot, app::new_id(), "2026-11-26T10:00:00Z").ok());
}

std::string day_in(int years) {  // from today
    const std::string today = app::today();
    return std::to_string(std::stoi(today.substr(0, 4)) + years) + "-06-15";
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "the blend tells its shares, how firm it is among the starters, and its fats") {
    open_blend(app, "orchard_lip_balm");
    CHECK(reads("Shares of the weight: Wax 22\xC2\xA0%, Butters and hard fats"));
    CHECK(
        reads("Melts at 61 to 66\xC2\xA0\xC2\xB0"
              "C"));
    CHECK(reads("Firmer than Potting-shed hand salve."));
    CHECK(reads("Softer than Seed-swap cuticle stick."));
    CHECK(reads("18:1 oleic, "));
    CHECK(reads("Not a lye amount."));
    CHECK(reads("Not of: Beeswax, yellow"));
    CHECK(reads("Sinks on setting, at least "));
    CHECK(whole::faults() == "");
}

TEST_CASE_FIXTURE(FirstVisit, "on a wide window it stands beside the lines, on a phone one tap away") {
    hand::resize(1440, 900);
    open_blend(app, "orchard_lip_balm");
    CHECK(hand::see_field("Percent of Beeswax, yellow") != nullptr);
    CHECK(reads("Shares of the weight"));
    hand::write("Percent of Beeswax, yellow", "30");
    CHECK(reads("Shares of the weight: Wax 30"));
    hand::resize(360, 640);
    CHECK(hand::see_field("Percent of Beeswax, yellow") == nullptr);
    press("Lines");
    press("Blend");
    CHECK(reads("Shares of the weight: Wax 30"));
}

TEST_CASE_FIXTURE(FirstVisit,
                  "a rating is kept, told of what lies between two, and taken back by a second press") {
    open_blend(app, "orchard_lip_balm");
    press("Firm");
    REQUIRE(app.work.settings.firmness.size() == 1);
    CHECK(app.work.settings.firmness[0].rating == 4);
    CHECK(reads("By your ratings 4 of 5: Firm."));
    press("Firm");
    CHECK(app.work.settings.firmness.empty());
    press("Hard");
    open_blend(app, "frost_line_elbow_butter");
    press("Soft");
    open_blend(app, "potting_shed_hand_salve");
    CHECK(reads("By your ratings "));
    CHECK(app.work.settings.firmness.size() == 2);
}

TEST_CASE_FIXTURE(FirstVisit, "the fatty acids of other recipes are laid over this one's") {
    open_blend(app, "harvest_supper_body_oil");
    open_blend(app, "orchard_lip_balm");
    open_blend(app, "frost_line_elbow_butter");
    const auto figures = [] {  // beside stearic acid: of how many recipes
        for (const mirror::Node& node : mirror::nodes())
            if (node.name.rfind("18:0 stearic, ", 0) == 0)
                return std::count(node.name.begin(), node.name.end(), '%');
        return std::ptrdiff_t{0};
    };
    CHECK(figures() == 1);
    press("Harvest-supper body oil", Role::checkbox);
    CHECK(figures() == 2);
    press("Orchard lip balm", Role::checkbox);
    CHECK(figures() == 3);
    CHECK(whole::faults() == "");
    press("Harvest-supper body oil", Role::checkbox);
    CHECK(figures() == 2);
}

TEST_CASE_FIXTURE(FirstVisit, "density is told cold, when poured, and at a temperature that is asked") {
    open_blend(app, "orchard_lip_balm");
    CHECK(
        reads("At 20\xC2\xA0\xC2\xB0"
              "C"));
    hand::write("At another temperature", "41");
    CHECK(
        reads("At 41\xC2\xA0\xC2\xB0"
              "C"));
}

TEST_CASE_FIXTURE(FirstVisit,
                  "the shelf says how long it keeps, what of it is not known, and the label takes it up") {
    open_blend(app, "orchard_lip_balm");
    CHECK(reads("No lot on the shelf says a day."));
    const std::string first = day_in(1), later = day_in(2);
    add_lot(app, "beeswax_yellow", "BW-7", later.c_str());
    add_lot(app, "shea", "S-1", first.c_str());
    hand::push(platform::Kind::resized);
    hand::settle();
    CHECK(
        reads("Until " + first + ": " + catalogue::find_ingredient(app.known(), "shea")->name + ", lot S-1"));
    CHECK(reads("At most, since not every day is known."));
    hand::write("Months to keep in hand", "1");
    CHECK_FALSE(reads("Until " + first));
    const storing::Storing& made = app::blend_view(app).made->storing;
    REQUIRE(made.months.has_value());
    const std::int64_t months = *made.months;
    press("Put " + std::to_string(months) + " months on the label");
    CHECK(app::open_recipe(app)->label.keeping.months == months);
    CHECK(whole::faults() == "");
}

TEST_CASE_FIXTURE(FirstVisit, "of a lotion only a test can tell, and its oils require an HLB") {
    open_blend(app, "kitchen_garden_hand_lotion");
    CHECK(reads("only a test can tell how long it keeps"));
    CHECK(reads("HLB the oils require"));
    CHECK(reads("It holds water: no guess"));
    CHECK(whole::faults() == "");
}

TEST_CASE_FIXTURE(FirstVisit, "a formula that does not add to 100 says so in place of its blend") {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    for (formula::Line& line : recipe.formula.lines)
        line.rest = false;
    app::keep(app, recipe);
    hand::push(platform::Kind::resized);
    hand::settle();
    press("Blend");
    CHECK(reads("A blend can be told once the formula adds to 100"));
    CHECK(whole::faults() == "");
}

TEST_CASE_FIXTURE(FirstVisit, "every acid that a shipped fat holds has a name") {
    for (const catalogue::Ingredient& one : shipped::presets().catalogue.ingredients)
        if (one.fatty_acids)
            for (const auto& [name, percent] : one.fatty_acids->value.percent) {
                CAPTURE(name);
                std::string key = "acid.";
                for (const char c : name)
                    key += c == ':' ? '_' : c;
                CHECK(words::has(shipped::english(), key));
            }
}

}  // namespace test_screen_blend
