// What could stand in a line's place, and versions side by side, by name as assistive technology does it.
#include "engine/formula.h"
#include "hand.h"
#include "shipped.h"

namespace test_screen_swap {

using app::Screen;
using hand::FirstVisit;

namespace {

// Beeswax 20, shea 30, the rest sunflower oil.
workspace::Recipe balm() {
    workspace::Recipe recipe;
    recipe.title = "Frost-line elbow butter";
    recipe.formula.phases.push_back({});
    for (const auto& [id, percent] : {std::pair{"beeswax_yellow", 20}, {"shea", 30}, {"sunflower", 0}}) {
        formula::Line line;
        line.ingredient = id;
        line.percent = quantity::percent(percent);
        line.rest = percent == 0;
        recipe.formula.lines.push_back(line);
    }
    return recipe;
}

void drawn() {
    hand::push(platform::Kind::resized);
    hand::settle();
}

std::string name(const char* id) {
    return catalogue::find_ingredient(shipped::presets().catalogue, id)->name;
}

double percent_of(const app::App& app, const char* id) {
    const workspace::Recipe& recipe = workspace::find(app.work, app.work.open)->recipe;
    const auto all = formula::percents(recipe.formula).value();
    for (std::size_t i = 0; i < all.size(); ++i)
        if (recipe.formula.lines[i].ingredient == id) return decimal::to_double(all[i].grid);
    return 0;
}

void ask_for(app::App& app, const char* id) {
    app::keep(app, balm());
    drawn();
    hand::press(name(id));
    hand::press(app.say("swap_ui.open"));
    REQUIRE(app.ui.screen == Screen::swaps);
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit,
                  "candelilla stands in for beeswax: shown beside the recipe, taken, taken back") {
    ask_for(app, "beeswax_yellow");
    CHECK(hand::reads(app.say("swap_ui.instead", {{"name", name("beeswax_yellow")}})));
    hand::press(name("candelilla"));
    CHECK(hand::reads(name("beeswax_yellow") + ": A 20\xC2\xA0%, B \xE2\x80\x93"));
    CHECK(hand::reads(name("candelilla") + ": A \xE2\x80\x93, B 10\xC2\xA0%"));
    CHECK(hand::reads(name("sunflower") + ": A 50\xC2\xA0%, B 60\xC2\xA0%"));
    CHECK(hand::reads(app.say("compare.animal") + ": A 1, B 0"));
    CHECK_FALSE(hand::reads(name("shea") + ":"));  // the same in both
    hand::press(app.say("compare.all"));
    CHECK(hand::reads(name("shea") + ": A 30\xC2\xA0%, B 30\xC2\xA0%"));
    CHECK(percent_of(app, "candelilla") == 0);
    hand::press(app.say("adjust.take"));
    CHECK(app.ui.screen == Screen::formula);
    CHECK(percent_of(app, "candelilla") == 10);
    CHECK(percent_of(app, "sunflower") == 60);
    hand::press(app.say("top.undo"));
    CHECK(percent_of(app, "beeswax_yellow") == 20);
}

TEST_CASE_FIXTURE(FirstVisit, "the nearest of several is told with how far it is apart, and taken") {
    ask_for(app, "sunflower");
    hand::press(app.say("swap_ui.several"));
    for (const mirror::Node& node : mirror::nodes())  // whatever was ticked from the start
        if (node.role == mirror::Role::checkbox && node.checked) {
            hand::press(std::string(node.name), mirror::Role::checkbox);
            break;
        }
    hand::press(name("grapeseed"), mirror::Role::checkbox);
    CHECK(hand::reads("of the fatty acids in these lines are others than before"));
    CHECK(hand::reads(app.say("swap_ui.acids")));
    hand::press(app.say("adjust.take"));
    CHECK(percent_of(app, "sunflower") == 0);
    CHECK(percent_of(app, "grapeseed") > 0);
    CHECK(percent_of(app, "beeswax_yellow") == 20);
}

TEST_CASE_FIXTURE(FirstVisit, "without a line the screen asks for one, and another one is a press away") {
    app::keep(app, balm());
    app.ui.screen = Screen::swaps;
    drawn();
    CHECK(hand::reads(app.say("swap_ui.which")));
    hand::press(name("shea"));
    CHECK(hand::reads(app.say("swap_ui.instead", {{"name", name("shea")}})));
    CHECK(hand::see(mirror::Role::button, name("mango")));
    hand::press(app.say("swap_ui.other_line"));
    CHECK(hand::reads(app.say("swap_ui.which")));
}

TEST_CASE_FIXTURE(FirstVisit, "on a wide window the swaps stand beside the lines") {
    hand::resize(1440, 900);
    ask_for(app, "beeswax_yellow");
    hand::press(name("candelilla"));
    CHECK(hand::see_field(app.say("line.percent_of", {{"name", name("shea")}})));
    CHECK(hand::reads(app.say("compare.liquid")));
}

TEST_CASE_FIXTURE(FirstVisit, "three states of a recipe are laid side by side: lines, blend, checks, day") {
    app::keep(app, balm());
    app::keep_version(app, "first");
    workspace::Recipe changed = *app::open_recipe(app);
    changed.formula.lines[0].percent = quantity::percent(15);
    app::edit(app, result::Result<workspace::Recipe>(changed));
    app::keep_version(app, "second");
    changed.formula.lines[0].ingredient = "candelilla";
    app::edit(app, result::Result<workspace::Recipe>(changed));
    app.ui.screen = Screen::versions;
    drawn();
    hand::press(app.say("version_ui.many"), mirror::Role::checkbox);
    std::vector<std::string> ticks;
    for (const mirror::Node& node : mirror::nodes())
        if (node.role == mirror::Role::checkbox && node.name != app.say("version_ui.many"))
            ticks.push_back(node.name);
    REQUIRE(ticks.size() == 3);
    for (const std::string& one : ticks)
        hand::press(one, mirror::Role::checkbox);
    CHECK(hand::reads(name("beeswax_yellow") + ": A \xE2\x80\x93, B 15\xC2\xA0%, C 20\xC2\xA0%"));
    CHECK(hand::reads(app.say("compare.firmness")));
    CHECK(hand::reads(app.say("compare.animal") + ": A 0, B 1, C 1"));
    CHECK(ticks[1].find("second") == 0);
}

}  // namespace test_screen_swap
