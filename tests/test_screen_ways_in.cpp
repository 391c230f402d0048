// The ways in, by hand: a list pasted, looked at, chosen from, kept; a link, a file and a list in the one
// field; a formula said in grams.
#include <string>

#include "engine/share.h"
#include "engine/store.h"
#include "hand.h"
#include "shipped.h"

namespace test_screen_ways_in {

using app::Sheet;
using hand::FirstVisit;
using mirror::Role;

namespace {

void put(app::App& app, std::string_view field, const std::string& text) {
    hand::push(platform::Kind::node_input, hand::field(app.say(field)).id, text);
    hand::settle();
}

void paste_list(app::App& app, const std::string& text) {
    hand::press(app.say("book.new"));
    hand::press(app.say("new.list"));
    put(app, "new.list_here", text);
    hand::press(app.say("new.read"));
}

std::string name_of(std::string_view id) {
    return catalogue::find_ingredient(shipped::presets().catalogue, id)->name;
}

const workspace::Recipe& opened(app::App& app) {
    const workspace::Recipe* recipe = app::open_recipe(app);
    REQUIRE(recipe != nullptr);
    return *recipe;
}

constexpr const char* kMessy =
    "Shed salve\n20 g beeswax\n50g shea butter\n2 tbsp olive oil\nmoon dust 5 g\nHoney a pinch\nPour into "
    "tins while warm.";

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "a pasted list is shown line by line and kept only on wish") {
    paste_list(app, "Candelilla wax 21 %, Shea butter 30%, Jojoba oil 49 %");
    REQUIRE(app.ui.sheet == Sheet::pasted);
    CHECK(app.work.recipes.empty());
    CHECK(hand::see(Role::button, name_of("candelilla")) != nullptr);
    CHECK(hand::reads(app.say("pasted_ui.adds", {{"sum", "100"}})));
    hand::press(app.say("incoming.keep"));
    const workspace::Recipe& recipe = opened(app);
    REQUIRE(recipe.formula.lines.size() == 3);
    CHECK(recipe.formula.lines[0].percent == quantity::percent(21));
    CHECK(recipe.title == app.say("recipe.new_title"));
    CHECK(app.ui.sheet == Sheet::none);
}

TEST_CASE_FIXTURE(FirstVisit, "a messy list says what is wrong with its place, and its stated error") {
    paste_list(app, kMessy);
    REQUIRE(app.ui.sheet == Sheet::pasted);
    CHECK(hand::see(Role::heading, "Shed salve") != nullptr);
    CHECK(
        hand::reads(app.say("pasted.amount_vague", {{"line", "6"}, {"column", "7"}, {"detail", "a pinch"}})));
    CHECK(hand::reads(app.say("pasted.name_unknown", {{"line", "5"}, {"detail", "moon dust"}})));
    CHECK(hand::reads(app.say("pasted.name_several", {{"line", "2"}, {"detail", "beeswax"}})));
    const mirror::Node& oil = hand::button(name_of("olive"));
    CHECK(oil.description.find("13.26") != std::string::npos);  // 2 x 7.26 mL at 0.913 g/mL
    CHECK(oil.description.find("42.24") != std::string::npos);  // 2 x 23.13 mL
}

TEST_CASE_FIXTURE(FirstVisit, "which of several is meant is chosen in the sheet of the line") {
    paste_list(app, kMessy);
    hand::press("beeswax");
    REQUIRE(app.ui.sheet == Sheet::pasted_line);
    hand::press(name_of("beeswax_yellow"));
    REQUIRE(app.ui.sheet == Sheet::pasted);
    CHECK(hand::see(Role::button, name_of("beeswax_yellow")) != nullptr);
    hand::press("moon dust");
    hand::write(app.say("ingredient.search"), "lanol");
    hand::press(name_of("lanolin"));
    hand::press("Honey");
    hand::press(app.say("pasted_ui.leave_out"));
    hand::press(app.say("incoming.keep"));
    const workspace::Recipe& recipe = opened(app);
    REQUIRE(recipe.formula.lines.size() == 4);
    CHECK(recipe.formula.lines[0].ingredient == "beeswax_yellow");
    CHECK(recipe.formula.lines[3].ingredient == "lanolin");
    CHECK(formula::percents(recipe.formula).ok());
    CHECK(recipe.title == "Shed salve");
    CHECK(recipe.notes == "Pour into tins while warm.");
    CHECK(recipe.batch.amount == batch::Amount::grams);
}

TEST_CASE_FIXTURE(FirstVisit, "a line left out can be taken in again, and a name kept as written") {
    paste_list(app, "Beeswax 20 g\nOlive oil 80 g");
    hand::press("Beeswax");
    hand::press(app.say("pasted_ui.leave_out"));
    hand::press("Beeswax");
    hand::press(app.say("pasted_ui.take_again"));
    hand::press("Beeswax");
    hand::press(app.say("ingredient.as_written", {{"name", "Beeswax"}}));
    hand::press(app.say("incoming.keep"));
    REQUIRE(opened(app).formula.lines.size() == 2);
    CHECK(opened(app).formula.lines[0].name == "Beeswax");
}

TEST_CASE_FIXTURE(FirstVisit, "what bare numbers are can be switched before anything is kept") {
    paste_list(app, "Candelilla wax 20\nOlive oil 80");
    REQUIRE(app.ui.sheet == Sheet::pasted);
    CHECK(app.ui.list_in->list.basis == pasted::Basis::percent);
    hand::press(app.say("pasted_ui.grams"));
    CHECK(app.ui.list_in->list.basis == pasted::Basis::mass);
    hand::press(app.say("incoming.keep"));
    CHECK(opened(app).batch.grams == quantity::grams(100));
}

TEST_CASE_FIXTURE(FirstVisit, "the text can be changed and read anew, and closing keeps nothing") {
    paste_list(app, "Candelilla wax 20 %\nOlive oil 70 %");
    CHECK(hand::reads(app.say("pasted.percents_off", {{"detail", "90"}})));
    hand::press(app.say("pasted_ui.back"));
    REQUIRE(app.ui.sheet == Sheet::paste_list);
    CHECK(hand::field(app.say("new.list_here")).value == "Candelilla wax 20 %\nOlive oil 70 %");
    put(app, "new.list_here", "Candelilla wax 20 %\nOlive oil 80 %");
    hand::press(app.say("new.read"));
    CHECK_FALSE(hand::reads(app.say("pasted.percents_off", {{"detail", "90"}})));
    hand::press(app.say("sheet_ui.close"));
    CHECK(app.work.recipes.empty());
}

TEST_CASE_FIXTURE(FirstVisit, "a link, a link in a message, a file and a list go into the same field") {
    const workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    const std::string link = share::write(recipe, app.presets.catalogue).value();
    for (const std::string& text :
         {"https://hollow-lane.example/" + link,
          "Have a look:\nhttps://hollow-lane.example/" + link + " nice!", store::write_recipe(recipe)}) {
        paste_list(app, text);
        REQUIRE(app.ui.sheet == Sheet::incoming);
        CHECK(hand::see(Role::heading, recipe.title) != nullptr);
        for (std::size_t i = 0; i < recipe.formula.lines.size(); ++i)
            CHECK(hand::reads(workspace::display_name(app.presets.catalogue, recipe.formula.lines[i])));
        CHECK(app.work.recipes.empty());
        hand::press(app.say("incoming.leave"));
    }
    hand::press(app.say("book.new"));
    hand::press(app.say("new.link"));
    put(app, "new.paste_here", "Shea butter 30 g\nOlive oil 70 g");
    hand::press(app.say("new.read"));
    CHECK(app.ui.sheet == Sheet::pasted);
}

TEST_CASE_FIXTURE(FirstVisit, "a broken link in the address is told in words as the page opens") {
    hand::open_page(360, 640, "#AQ");
    const mirror::Node* told = nullptr;
    for (const mirror::Node& node : mirror::nodes())
        if (node.role == Role::alert) told = &node;
    REQUIRE(told != nullptr);
    CHECK(told->name + told->value == app.say("error.link_truncated"));
}

TEST_CASE_FIXTURE(FirstVisit, "a list pasted onto the page, or opened as a file, is shown first") {
    for (const platform::Kind kind : {platform::Kind::pasted, platform::Kind::file_opened}) {
        hand::push(kind, 0, "Shea butter\t30\nOlive oil\t70\n");
        hand::settle();
        CHECK(app.ui.sheet == Sheet::pasted);
        hand::press(app.say("sheet_ui.close"));
        CHECK(app.work.recipes.empty());
    }
}

TEST_CASE_FIXTURE(FirstVisit, "what is no list, no link and no file says so and keeps the text") {
    paste_list(app, "Dear Ada, see you on Sunday");
    CHECK(app.ui.sheet == Sheet::paste_list);
    CHECK(hand::reads(app.say("pasted_ui.nothing")));
    CHECK(hand::field(app.say("new.list_here")).value == "Dear Ada, see you on Sunday");
    put(app, "new.list_here", "");
    hand::press(app.say("new.read"));
    CHECK(app.ui.sheet == Sheet::paste_list);
    CHECK_FALSE(app.ui.typed_problem.empty());
}

TEST_CASE_FIXTURE(FirstVisit, "a hundred kilobytes pasted are shown as far as they can be taken") {
    std::string text;
    for (int i = 0; text.size() < 100'000; ++i)
        text += "Olive oil " + std::to_string(i % 90 + 1) + " g\n";
    paste_list(app, text);
    REQUIRE(app.ui.sheet == Sheet::pasted);
    CHECK(hand::reads(app.say("pasted.too_many_lines", {{"line", std::to_string(pasted::kMostEntries + 1)},
                                                        {"detail", std::to_string(pasted::kMostEntries)}})));
    hand::press(app.say("incoming.keep"));
    CHECK(opened(app).formula.lines.size() == formula::kMostLines);
    CHECK(formula::percents(opened(app).formula).ok());
}

TEST_CASE_FIXTURE(FirstVisit, "a formula said in grams reads back percents, shown before they are taken") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    hand::push(platform::Kind::resized);
    hand::settle();
    const workspace::Recipe before = opened(app);
    hand::press(app.say("amounts.title"));
    REQUIRE(app.ui.sheet == Sheet::in_amounts);
    for (const formula::Line& line : before.formula.lines)
        hand::write(app.say("amounts.of", {{"name", workspace::display_name(app.known(), line)}}), "10");
    CHECK(opened(app).formula == before.formula);
    CHECK(hand::reads(app.say("amounts.total", {{"sum", std::to_string(10 * before.formula.lines.size())}})));
    hand::press(app.say("amounts.take"));
    CHECK(app.ui.sheet == Sheet::none);
    const auto percents = formula::percents(opened(app).formula);
    REQUIRE(percents.ok());
    for (const quantity::Percent percent : *percents)
        CHECK(std::abs(percent.grid - 1000000 / static_cast<std::int64_t>(percents->size())) <= 1);
    hand::press(app.say("top.undo"));
    CHECK(opened(app).formula == before.formula);
}

TEST_CASE_FIXTURE(FirstVisit, "parts are taken without a unit, and nothing but zeros is refused") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::press(app.say("amounts.title"));
    hand::press(app.say("pasted_ui.parts"));
    const std::vector<formula::Line> lines = opened(app).formula.lines;
    for (const formula::Line& line : lines)
        hand::write(app.say("amounts.of", {{"name", workspace::display_name(app.known(), line)}}), "");
    CHECK(hand::button(app.say("amounts.take")).disabled);
    hand::write(app.say("amounts.of", {{"name", workspace::display_name(app.known(), lines[0])}}), "3");
    hand::write(app.say("amounts.of", {{"name", workspace::display_name(app.known(), lines[1])}}), "1");
    CHECK_FALSE(hand::button(app.say("amounts.take")).disabled);
    CHECK(hand::reads(app.say("amounts.total_parts", {{"sum", "4"}})));
}

}  // namespace test_screen_ways_in
