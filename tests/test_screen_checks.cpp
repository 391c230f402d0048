// The checks as a person meets them: asked for beside the lines, told with what to do, and whatever could not
// be checked told as well.
#include <algorithm>

#include "engine/workspace_own.h"
#include "hand.h"
#include "shipped.h"

namespace test_screen_checks {

using hand::FirstVisit;
using hand::Role;
using mirror::Node;

namespace {

void open_starter(app::App& app, const char* stem) {
    app::keep(app, shipped::recipe(stem));
    hand::push(platform::Kind::resized);
    hand::settle();
}

void look_at_line(app::App& app) {
    app::show(app, app::Sheet::line);
    hand::push(platform::Kind::resized);
    hand::settle();
}

}  // namespace

TEST_CASE_FIXTURE(
    FirstVisit,
    "the checks stand beside the lines and tell what was made, what was not, and what is always to be said") {
    open_starter(app, "orchard_lip_balm");
    hand::press("Checks");
    CHECK(hand::see(Role::heading, "Always") != nullptr);
    CHECK(hand::reads("Molten wax and oil burn."));
    CHECK(hand::reads("checks made"));
    CHECK(hand::reads("They have not been passed."));
    hand::press("Show what was checked");
    CHECK(hand::reads("The lines add up, none is empty or stands twice"));
    hand::press("Lines");
    CHECK(hand::see_field("Percent of Beeswax, yellow") != nullptr);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "for whom and where a recipe is meant is said in one place and changes what is checked") {
    open_starter(app, "orchard_lip_balm");
    hand::press("Checks");
    hand::press("For whom and where");
    hand::press("European Union");
    hand::write("First sold or given on (year-month-day)", "2026-13-01");
    CHECK(app::open_recipe(app)->date.empty());
    CHECK(hand::reads("year"));
    hand::write("First sold or given on (year-month-day)", "2026-12-01");
    hand::press("children");
    hand::write("Age of the youngest user", "2");
    hand::write("pH measured", "15");
    CHECK_FALSE(app::open_recipe(app)->measured_ph.has_value());
    hand::write("pH measured", "5.2");
    hand::press("Done");
    const workspace::Recipe& recipe = *app::open_recipe(app);
    CHECK(recipe.market == "eu");
    CHECK(recipe.date == "2026-12-01");
    CHECK(recipe.person == "child");
    CHECK(recipe.age_months == 2);
    CHECK(recipe.measured_ph == 52000);
}

TEST_CASE_FIXTURE(FirstVisit, "what is wrong is told first, with what to do and a way to the line") {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.formula.lines[0].percent = {990000};
    app::keep(app, recipe);
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::press("Checks");
    const std::vector<Node>& nodes = mirror::nodes();
    const auto stop = std::find_if(nodes.begin(), nodes.end(),
                                   [](const Node& node) { return node.name.rfind("Stop: ", 0) == 0; });
    REQUIRE(stop != nodes.end());
    const std::string name = workspace::display_name(app.known(), recipe.formula.lines[0]);
    hand::press("Lines");
    hand::write("Percent of " + name, "25");
    hand::press("Checks");
    CHECK_FALSE(hand::reads("Stop: The lines"));
}

TEST_CASE_FIXTURE(FirstVisit, "on a wide window the checks stand beside the lines") {
    open_starter(app, "orchard_lip_balm");
    hand::resize(1440, 900);
    hand::press("Checks");
    CHECK(hand::see_field("Percent of Beeswax, yellow") != nullptr);
    CHECK(hand::see(Role::heading, "Always") != nullptr);
    hand::press("Batch");
    CHECK(hand::see(Role::heading, "Always") == nullptr);
    CHECK(app.ui.screen == app::Screen::batch);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "too much of an oil is lowered to its ceiling by one tap, and is then not found any more") {
    workspace::Recipe recipe = shipped::recipe("greenhouse_foot_scrub");
    const auto oil = std::find_if(recipe.formula.lines.begin(), recipe.formula.lines.end(),
                                  [&](const auto& line) { return line.ingredient == "peppermint"; });
    REQUIRE(oil != recipe.formula.lines.end());
    const auto at = static_cast<std::size_t>(oil - recipe.formula.lines.begin());
    oil->percent = {90000};
    oil->rest = oil->locked = false;
    recipe.market = "eu";
    app::keep(app, recipe);
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::press("Checks");
    const ceiling::Ceiling* most = app::ceiling_of(app, at);
    REQUIRE(most != nullptr);
    REQUIRE(most->bound);
    const quantity::Percent ceiling = most->most;
    CHECK(ceiling.grid > 0);
    CHECK(ceiling.grid < 90000);
    hand::press("Lower to " + words::figure(app.words, ceiling.grid) + "\xC2\xA0%");
    CHECK(app::open_recipe(app)->formula.lines[at].percent == ceiling);
    CHECK_FALSE(hand::reads("Lower to"));
    hand::press("Undo");
    CHECK(app::open_recipe(app)->formula.lines[at].percent.grid == 90000);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "what could not be checked is told by kind, and row by row where that is asked for") {
    open_starter(app, "harvest_supper_body_oil");
    hand::press("Checks");
    const auto rows = [] {
        const std::vector<Node>& nodes = mirror::nodes();
        return std::count_if(nodes.begin(), nodes.end(),
                             [](const Node& node) { return node.name.find("IFRA") != std::string::npos; });
    };
    const auto folded = rows();
    CHECK(hand::reads(" rows"));
    hand::press("Show every row");
    CHECK(rows() > folded + 10);
    hand::press("Show them by kind");
    CHECK(rows() == folded);
}

TEST_CASE_FIXTURE(
    FirstVisit, "a line that is to bring as much limonene says which percent does, from another bottle too") {
    workspace::Recipe recipe = shipped::recipe("harvest_supper_body_oil");
    app::keep(app, recipe);
    const auto orange =
        std::find_if(recipe.formula.lines.begin(), recipe.formula.lines.end(),
                     [](const formula::Line& one) { return one.ingredient == "sweet_orange"; });
    app.ui.line = static_cast<std::size_t>(orange - recipe.formula.lines.begin());
    look_at_line(app);
    hand::press("Keep what it brings");
    const auto held = app::brought(app, app.ui.line).front();
    REQUIRE(held.constituent == "limonene");
    hand::press("limonene");
    CHECK(app::open_recipe(app)->formula.lines[app.ui.line].hold == held);
    CHECK(hand::reads("It does."));
    catalogue::Ingredient weaker =
        workspace::copy_of(*catalogue::find_ingredient(app.known(), "sweet_orange"));
    weaker.name = "Orange, weaker";
    weaker.analysis = catalogue::LotAnalysis{"L2", "", "", {{"limonene", {{}, {{400000}}, {}}}}};
    app::add_own(app, weaker);
    look_at_line(app);
    hand::press("Change the ingredient");
    hand::press("Orange, weaker");
    look_at_line(app);
    CHECK(hand::reads("From this bottle that takes"));
    const quantity::Percent before = app::open_recipe(app)->formula.lines[app.ui.line].percent;
    const auto kept = app::keeping(app, app.ui.line);
    REQUIRE((kept && kept->ok()));
    hand::press(app.say("hold.set", {{"percent", words::figure(app.words, kept->value().percent.grid)}}));
    CHECK(app::open_recipe(app)->formula.lines[app.ui.line].percent > before);
    CHECK(hand::reads("It does."));
    hand::press("No longer keep this");
    CHECK_FALSE(app::open_recipe(app)->formula.lines[app.ui.line].hold.has_value());
}

}  // namespace test_screen_checks
