// The batch by name, as assistive technology and the keyboard do it: every way of saying how much, remedies
// taken, scales and jugs.
#include <string>

#include "engine/remedy.h"
#include "hand.h"
#include "shipped.h"

namespace test_screen_batch {

using app::Screen;
using app::Sheet;
using hand::FirstVisit;
using mirror::Node;
using mirror::Role;
using quantity::grams;
using quantity::Mass;

namespace {

std::string container_name(const char* id) {
    return catalogue::find_container(shipped::presets().catalogue, id)->name;
}
std::string ingredient_name(const char* id) {
    return catalogue::find_ingredient(shipped::presets().catalogue, id)->name;
}

// A starter's copy is open, its batch on the screen.
workspace::Recipe& open_starter(app::App& app, const char* stem) {
    app::keep(app, shipped::recipe(stem));
    app.ui.screen = Screen::batch;
    app.ui.again = true;
    hand::push(platform::Kind::resized);
    hand::settle();
    return *app::open_recipe(app);
}

void say_how_much(app::App& app, const char* way) {
    app::show(app, Sheet::amount);
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::press(app.say(way));
}

const batch::Batch& made(const app::App& app) {
    REQUIRE(app.analysis.has_value());
    REQUIRE(app.analysis->batch.ok());
    return *app.analysis->batch;
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "twelve people get two tubes each") {
    workspace::Recipe& recipe = open_starter(app, "orchard_lip_balm");
    say_how_much(app, "batch.for_people");
    hand::write(app.say("batch.people"), "12");
    hand::write(app.say("batch.each"), "2");
    CHECK(recipe.batch.amount == batch::Amount::people);
    CHECK(made(app).fills[0].count == 24);
    hand::press(app.say("sheet_ui.done"));
    CHECK(hand::reads("12 people"));
}

TEST_CASE_FIXTURE(FirstVisit, "a person may get a portion by weight instead of a container") {
    workspace::Recipe& recipe = open_starter(app, "orchard_lip_balm");
    say_how_much(app, "batch.for_people");
    hand::press(container_name(recipe.batch.containers[0].id.c_str()));
    REQUIRE(app.ui.sheet == Sheet::container);
    hand::press(app.say("batch.portion"));
    REQUIRE(app.ui.sheet == Sheet::amount);
    hand::write(app.say("batch.fill_each_of", {{"name", app.say("batch.portion")}}), "7,5");
    CHECK(made(app).fills[0].each == Mass{75000});
}

TEST_CASE_FIXTURE(FirstVisit,
                  "what is at hand says how far it goes, and an emptied field is not known again") {
    workspace::Recipe& recipe = open_starter(app, "orchard_lip_balm");
    say_how_much(app, "batch.from_stock");
    const std::string wax = app.say("batch.stock_of", {{"name", ingredient_name("beeswax_yellow")}});
    hand::write(wax, "11");
    CHECK(recipe.batch.stock == std::vector<batch::Stock>{{"beeswax_yellow", grams(11)}});
    REQUIRE(made(app).reach.has_value());
    CHECK(hand::reads("runs out first"));
    hand::write(wax, "");
    CHECK(recipe.batch.stock.empty());
    CHECK_FALSE(app.analysis->batch.ok());
}

TEST_CASE_FIXTURE(FirstVisit, "a fill is said by weight, by a test fill, by volume or by water") {
    workspace::Recipe& recipe = open_starter(app, "potting_shed_hand_salve");
    recipe.batch = {};
    recipe.batch.amount = batch::Amount::containers;
    recipe.batch.containers = {{"jar_60ml", 3, {}, {}}};
    say_how_much(app, "batch.in_containers");
    const batch::Containers& one = recipe.batch.containers[0];
    const std::string jar = container_name("jar_60ml");
    hand::press(app.say("batch.by_test_fill"));
    CHECK_FALSE(app.analysis->batch.ok());  // not weighed yet
    hand::write(app.say("batch.test_fill_of", {{"name", jar}}), "51.2");
    CHECK(one.test_fill_g == Mass{512000});
    CHECK(made(app).fills[0].from == batch::FillFrom::test_fill);
    hand::press(app.say("batch.by_water"));
    CHECK_FALSE(one.test_fill_g.has_value());
    hand::write(app.say("batch.water_of", {{"name", jar}}), "64.12");
    hand::write(app.say("batch.fill_percent_of", {{"name", jar}}), "85");
    CHECK(one.water_g == Mass{641200});
    CHECK(one.fill_percent == quantity::percent(85));
    CHECK(made(app).fills[0].holds == batch::capacity_of(Mass{641200}));
    CHECK(hand::reads("It holds 64.2"));
    hand::press(app.say("batch.by_volume"));
    CHECK_FALSE(one.water_g.has_value());
    CHECK(one.fill_percent == quantity::percent(85));
    hand::press(app.say("batch.by_weight"));
    CHECK_FALSE(one.fill_percent.has_value());
    CHECK(made(app).fills[0].from == batch::FillFrom::usual_weight);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "each remedy stands worked out, and taken, its remark is gone; undo takes it back") {
    for (const remedy::Kind kind :
         {remedy::Kind::finer_scale, remedy::Kind::mix_ahead, remedy::Kind::bigger_batch}) {
        CAPTURE(static_cast<int>(kind));
        hand::open_page();
        workspace::Recipe& recipe = open_starter(app, "potting_shed_hand_salve");
        recipe.batch.amount = batch::Amount::grams;
        recipe.batch.grams = grams(60);
        recipe.batch.division = Mass{1000};
        hand::push(platform::Kind::resized);
        hand::settle();
        const workspace::Recipe before = recipe;
        const remedy::Remedy* found = nullptr;
        for (const remedy::Remedy& one : app.analysis->remedies)
            if (one.kind == kind && !found) found = &one;
        REQUIRE(found != nullptr);
        const std::size_t line = found->line;
        const auto name_of = [&](std::size_t at) {
            return workspace::display_name(app.known(), recipe.formula.lines[at]);
        };
        const std::string oil = found->mix ? name_of(found->mix->oil) : "";
        const std::string label = remedy::say_short(app.words, *found, name_of(line), oil);
        CHECK(hand::reads(remedy::say(app.words, *found, name_of(line), oil)));
        hand::press(label);
        CHECK(recipe != before);
        for (const finding::Finding& one : app.analysis->findings)
            CHECK_FALSE((one.line == line && (one.code == finding::Code::line_error_large ||
                                              one.code == finding::Code::line_rounds_to_zero)));
        if (kind == remedy::Kind::mix_ahead) {
            CHECK(recipe.own.size() == before.own.size() + 1);
            CHECK(hand::reads("Mix ahead, "));
        }
        hand::press(app.say("top.undo"));
        CHECK(*app::open_recipe(app) == before);
    }
}

TEST_CASE_FIXTURE(FirstVisit, "a line too heavy for the fine scale shows the other one") {
    app.work.settings.scales = {{"Pocket", {100}, grams(100)}, {"Kitchen", {10000}, grams(5000)}};
    workspace::Recipe& recipe = open_starter(app, "potting_shed_hand_salve");
    recipe.batch.amount = batch::Amount::grams;
    recipe.batch.grams = grams(500);
    recipe.batch.division = Mass{100};
    hand::push(platform::Kind::resized);
    hand::settle();
    CHECK(hand::reads("Kitchen, 1"));
    CHECK(hand::reads("Pocket, 0.01"));
    app.work.settings.jugs = {{"Tall", grams(80)}};
    say_how_much(app, "batch.by_mass");
    hand::press(app.say("batch.jug_named", {{"name", "Tall"}, {"g", app.say("unit.grams", {{"n", "80"}})}}));
    CHECK(app.work.settings.jug == 0u);
    hand::press(app.say("sheet_ui.done"));
    CHECK(hand::reads("into the jug"));
}

TEST_CASE_FIXTURE(FirstVisit, "jugs are added, named, weighed and removed") {
    hand::go(app.say("nav.more"));
    hand::press(app.say("settings.jug_add"));
    REQUIRE(app.work.settings.jugs.size() == 1);
    hand::write(app.say("settings.jug_name", {{"n", "1"}}), "Tall one");
    hand::write(app.say("settings.jug_empty", {{"n", "1"}}), "187.4");
    CHECK(app.work.settings.jugs[0] == workspace::Jug{"Tall one", Mass{1874000}});
    app.work.settings.jug = 0;
    hand::press(app.say("settings.jug_remove", {{"n", "1"}}));
    CHECK(app.work.settings.jugs.empty());
    CHECK_FALSE(app.work.settings.jug.has_value());
}

TEST_CASE_FIXTURE(FirstVisit, "a choice is always said to be pressed or not pressed") {
    open_starter(app, "orchard_lip_balm");
    say_how_much(app, "batch.in_containers");
    for (const char* way : {"batch.in_containers", "batch.by_mass", "batch.for_people", "batch.from_stock"}) {
        CAPTURE(way);
        const Node& option = hand::button(app.say(way));
        CHECK(option.toggle);
        CHECK(option.checked == (std::string(way) == "batch.in_containers"));
    }
    CHECK_FALSE(hand::button(app.say("sheet_ui.done")).toggle);
}

TEST_CASE_FIXTURE(FirstVisit, "the sheets of the batch hold on the smallest phone, whatever is said") {
    workspace::Recipe& recipe = open_starter(app, "potting_shed_hand_salve");
    recipe.batch.containers[0].water_g = Mass{350000};
    recipe.batch.containers.push_back({"jar_60ml", 2, {}, {}});
    recipe.batch.containers[1].test_fill_g = Mass{512345};
    app.work.settings.jugs = {{"A jug with a name that is longer than a phone is wide", grams(80)}};
    hand::resize(360, 640);
    for (const char* way : {"batch.in_containers", "batch.by_mass", "batch.for_people", "batch.from_stock"}) {
        CAPTURE(way);
        say_how_much(app, way);
        for (const Node& node : mirror::nodes()) {
            if (!hand::is_pressed(node.role) && !hand::is_field(node.role)) continue;
            CAPTURE(node.name);
            CHECK(node.width >= 44);
            CHECK(node.height >= 44);
            if (node.visible) CHECK(node.x + node.width <= 360.5f);
        }
    }
}

TEST_CASE_FIXTURE(FirstVisit, "a warm volume that cannot be worked out is said to be missing, not left out") {
    open_starter(app, "kitchen_garden_hand_lotion");  // mostly water: its expansion is not known
    CHECK(made(app).pour_c.has_value());
    CHECK(hand::reads(app.say("batch.warm_unknown")));
    open_starter(app, "orchard_lip_balm");
    CHECK_FALSE(hand::reads(app.say("batch.warm_unknown")));
}

}  // namespace test_screen_batch
