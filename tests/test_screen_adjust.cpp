// Changing a formula as a whole, by name as assistive technology does it: what changes is shown before it is
// taken.
#include "engine/formula.h"
#include "hand.h"
#include "shipped.h"

namespace test_screen_adjust {

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

std::int64_t percent_of(const app::App& app, std::size_t line) {
    return formula::percents(workspace::find(app.work, app.work.open)->recipe.formula).value()[line].grid;
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "firmer by two steps is shown, then taken, then taken back") {
    app::keep(app, balm());
    drawn();
    hand::press(app.say("adjust.firmness"));
    CHECK(hand::reads(app.say("adjust.same")));
    hand::press(app.say("adjust.firmer"));
    hand::press(app.say("adjust.firmer"));
    CHECK(percent_of(app, 0) == 200000);
    CHECK(hand::reads(workspace::display_name(app.known(), balm().formula.lines[0])));
    hand::press(app.say("adjust.take"));
    CHECK(percent_of(app, 0) == 220000);
    CHECK(percent_of(app, 2) == 480000);
    hand::press(app.say("top.undo"));
    CHECK(percent_of(app, 0) == 200000);
}

TEST_CASE_FIXTURE(FirstVisit, "a formula that does not add to 100 is brought there by one button") {
    workspace::Recipe recipe = balm();
    recipe.formula.lines[2].rest = false;
    recipe.formula.lines[2].percent = quantity::percent(30);
    app::keep(app, recipe);
    drawn();
    hand::press(app.say("adjust.to_hundred"));
    hand::press(app.say("adjust.take"));
    CHECK(percent_of(app, 0) == 250000);
    CHECK(percent_of(app, 1) == 375000);
    CHECK(hand::see(mirror::Role::button, app.say("adjust.to_hundred")) == nullptr);
}

TEST_CASE_FIXTURE(FirstVisit, "one line changes and a chosen one gives way") {
    app::keep(app, balm());
    drawn();
    const std::string wax = workspace::display_name(app.known(), balm().formula.lines[0]);
    const std::string shea = workspace::display_name(app.known(), balm().formula.lines[1]);
    const std::string oil = workspace::display_name(app.known(), balm().formula.lines[2]);
    hand::press(wax);
    hand::press(app.say("adjust.give_way"));
    hand::press(oil, mirror::Role::checkbox);  // ticked from the start, now not
    hand::press(shea, mirror::Role::checkbox);
    hand::write(app.say("adjust.new_percent", {{"name", wax}}), "24");
    hand::press(app.say("adjust.take"));
    CHECK(percent_of(app, 0) == 240000);
    CHECK(percent_of(app, 1) == 260000);
    CHECK(percent_of(app, 2) == 500000);
}

TEST_CASE_FIXTURE(FirstVisit, "what the others cannot give is said and cannot be taken") {
    app::keep(app, balm());
    drawn();
    const std::string wax = workspace::display_name(app.known(), balm().formula.lines[0]);
    hand::press(wax);
    hand::press(app.say("adjust.give_way"));
    hand::write(app.say("adjust.new_percent", {{"name", wax}}), "90");
    CHECK(hand::reads("70"));
    CHECK(hand::button(app.say("adjust.take")).disabled);
}

TEST_CASE_FIXTURE(FirstVisit, "the batch is made to fit an amount of one line") {
    app::keep(app, balm());
    drawn();
    const std::string wax = workspace::display_name(app.known(), balm().formula.lines[0]);
    hand::press(wax);
    hand::press(app.say("adjust.fit"));
    hand::write(app.say("adjust.amount", {{"name", wax}}), "14");
    CHECK(hand::reads(app.say("adjust.batch", {{"grams", "70"}})));
    hand::press(app.say("adjust.take"));
    CHECK(workspace::find(std::as_const(app.work), app.work.open)->recipe.batch.grams == quantity::grams(70));
    CHECK(app.ui.screen == Screen::batch);
}

}  // namespace test_screen_adjust
