// A list of ingredients read on the page: what it allows, what mends a question that nothing fits, what is
// there another time, and whatever may be pasted instead.
#include "engine/workspace_versions.h"
#include "hand.h"
#include "shipped.h"
#include "whole.h"

namespace test_screen_reading {

using hand::FirstVisit;
using hand::Role;

namespace {

void ask(app::App& app, const std::string& list) {
    hand::press("New recipe");
    hand::press(app.say("new.reading"));
    hand::write(app.say("reading_ui.list"), list);
    hand::press(app.say("reading_ui.read"));
}

void ask_again(app::App& app) {
    app::ask_anew(app);
    hand::push(platform::Kind::resized);
    hand::settle();
}

constexpr const char* kBalm =
    "Ricinus Communis Seed Oil, Butyrospermum Parkii Butter, Theobroma Cacao Seed Butter, Tocopherol";

}  // namespace

TEST_CASE_FIXTURE(FirstVisit,
                  "a list is read, worked at between frames, and a formula of it put into the book") {
    ask(app, kBalm);
    REQUIRE(app.reading);
    CHECK(app.reading->answer().state == reading::State::fits);
    CHECK(app.reading->answer().suggestions.size() == 5);
    hand::press(app.say("reading_ui.keep", {{"n", "1"}}));
    CHECK(app.ui.screen == app::Screen::formula);
    CHECK(app.work.recipes.front().recipe.formula.lines.size() == 4);
}

TEST_CASE_FIXTURE(FirstVisit, "all suggestions go into the book as versions of one recipe, and stay there") {
    ask(app, kBalm);
    REQUIRE(app.reading);
    const std::size_t count = app.reading->answer().suggestions.size();
    const std::size_t had = app.work.recipes.size();
    hand::press(app.say("reading_ui.keep_versions"));
    CHECK(app.ui.screen == app::Screen::versions);
    CHECK(app.work.recipes.size() == had + 1);
    hand::open_page();
    const std::string id = app.work.recipes.front().id;
    const auto versions = workspace::versions_of(app.work, id);
    REQUIRE(versions.size() == count);
    for (std::size_t i = 0; i < count; ++i) {
        const workspace::Version& version = std::get<workspace::Version>(versions[count - 1 - i]->what);
        CHECK(version.name == app.say("reading_ui.suggestion", {{"n", std::to_string(i + 1)}}));
        CHECK(version.recipe.formula.lines.size() == 4);
        for (std::size_t other = 0; other < i; ++other)
            CHECK(workspace::differences(
                      version.recipe, std::get<workspace::Version>(versions[count - 1 - other]->what).recipe)
                      .any());
    }
}

TEST_CASE_FIXTURE(FirstVisit, "loaded again, the list is there with what was decided and said of it") {
    ask(app, kBalm);
    app.ui.reading.entries[3].as = reading_list::As::aside;
    app.ui.reading.said.push_back(reading::amount(0, 400000, std::nullopt));
    app.ui.reading.line_after = 2;
    ask_again(app);
    const app::ReadingIn before = app.ui.reading;
    hand::open_page();
    CHECK(app.ui.screen == app::Screen::reading);
    CHECK(app.ui.reading.text == kBalm);
    CHECK(app.ui.reading.entries == before.entries);
    CHECK(app.ui.reading.said == before.said);
    CHECK(app.ui.reading.line_after == before.line_after);
    REQUIRE(app.reading);
    CHECK(app.reading->answer().items.front().min >= 40);
}

TEST_CASE_FIXTURE(FirstVisit, "loaded again before it was read, the text is in its field") {
    hand::press("New recipe");
    hand::press(app.say("new.reading"));
    hand::write(app.say("reading_ui.list"), kBalm);
    hand::open_page();
    const mirror::Node* field = hand::see_field(app.say("reading_ui.list"));
    REQUIRE(field != nullptr);
    CHECK(field->value == kBalm);
    CHECK(app.ui.reading.entries.empty());
}

TEST_CASE_FIXTURE(FirstVisit, "what would mend a question that nothing fits is done by one tap") {
    ask(app, kBalm);
    app.ui.reading.said.push_back(
        reading::amount(0, std::nullopt, 100000));  // the first of four at most 10 %
    ask_again(app);
    REQUIRE(app.reading->answer().state == reading::State::nothing_fits);
    REQUIRE_FALSE(app.reading->answer().conflict.mends.empty());
    hand::press(app.say("reading_ui.mend_take", {{"n", "1"}}));
    CHECK(app.reading->answer().state == reading::State::fits);
    CHECK(app.ui.reading.said.front().max.value() >= 250000);  // a quarter, if all four are alike
}

TEST_CASE_FIXTURE(FirstVisit, "a measured iodine value is a number without a unit") {
    ask(app, kBalm);
    hand::press(app.say("reading_ui.say_measured"));
    app.ui.reading.draft.subject = "iodine_value";
    hand::push(platform::Kind::resized);
    hand::settle();
    const std::string most = app.say("reading_ui.most", {{"name", app.say("reading.iodine_value")}});
    REQUIRE(hand::see_field(most) != nullptr);
    hand::write(most, "2 oz");
    CHECK_FALSE(app.ui.reading.draft.max.has_value());
    hand::write(most, "70");
    CHECK(app.ui.reading.draft.max == 700000);
}

TEST_CASE_FIXTURE(
    FirstVisit, "whatever is pasted as a list is read as far as it goes, drawn whole, and stays as it was") {
    std::string many, arabic, faces, shop;
    for (int i = 1; i <= 20; ++i)
        many += (i == 1 ? "" : ", ") + ("Plant " + std::to_string(i) + " Oil");
    arabic = "زيت, شمع, שעוה";
    faces = "🐝 Cera Alba, 🌻 Helianthus Annuus Seed Oil 🌻";
    shop =
        "Home > Balms > Lantern Street balm\n★★★★ (128 reviews)\n£8.50\nAdd to basket\nDescription\nA balm "
        "for cold "
        "mornings. Free delivery over £20.\nIngredients: Ricinus Communis Seed Oil, Cera Alba, Butyrospermum "
        "Parkii "
        "Butter.\nYou may also like\nPrivacy, cookies, contact";
    for (const std::string& list : {many, arabic, faces, shop, std::string("Cera Alba, Cera Alba, Cera Alba"),
                                    std::string(10000, 'x')}) {
        CAPTURE(list.substr(0, 40));
        hand::open_page();
        app.ui.screen = app::Screen::reading;
        app.ui.reading = {};
        app.ui.reading.recalled = true;
        app.reading.reset();
        hand::push(platform::Kind::resized);
        hand::settle();
        hand::write(app.say("reading_ui.list"), list);
        hand::press(app.say("reading_ui.read"));
        CHECK(app.ui.reading.text == list);
        CHECK(whole::faults() == "");
        CHECK((!app.ui.reading.trouble.empty() || (app.reading && app.reading->progress() >= 1)));
    }
}

}  // namespace test_screen_reading
