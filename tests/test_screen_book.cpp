// The book as a person uses it: searching, ordering, tags, backup and putting it back, coming back to where
// one was, two windows, long titles. That every screen and sheet is whole in every size is for
// test_screens.cpp.
#include <string>
#include <vector>

#include "engine/store.h"
#include "hand.h"
#include "shipped.h"

namespace test_screen_book {

using app::Screen;
using app::Sheet;
using hand::FirstVisit;
using mirror::Node;
using mirror::Role;

namespace {

std::string keep(app::App& app, const std::string& title, const char* starter = "orchard_lip_balm") {
    workspace::Recipe recipe = shipped::recipe(starter);
    recipe.title = title;
    app::keep(app, std::move(recipe));
    app.ui.screen = Screen::book;
    hand::push(platform::Kind::resized);
    hand::settle();
    return app.work.open;
}

// The titles of the book's rows, as they stand.
std::vector<std::string> rows() {
    std::vector<std::string> titles;
    bool item = false;
    for (const Node& node : mirror::nodes()) {
        if (item && node.role == Role::button) titles.push_back(node.name);
        item = node.role == Role::item;
    }
    return titles;
}

using Titles = std::vector<std::string>;

void open_file(const std::string& text) {
    hand::push(platform::Kind::file_opened, 0, text);
    hand::settle();
}

std::string said(const app::App& app, const char* fresh, const char* changed, const char* same) {
    return app.say("restore.counts", {{"fresh", fresh}, {"changed", changed}, {"same", same}});
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "a search leaves the recipes that fit, by title, ingredient or tag") {
    keep(app, "Apple balm");
    keep(app, "Pear lotion", "kitchen_garden_hand_lotion");
    CHECK(rows().size() == 2);
    hand::write(app.say("book.search"), "pear");
    CHECK(rows() == Titles{"Pear lotion"});
    hand::write(app.say("book.search"), "castor");
    CHECK(rows() == Titles{"Apple balm"});
    hand::write(app.say("book.search"), "quince");
    CHECK(rows().empty());
    CHECK(hand::reads(app.say("book.none_found")));
    hand::press(app.say("book.show_all"));
    CHECK(rows().size() == 2);
}

TEST_CASE_FIXTURE(FirstVisit, "with one recipe there is nothing to search or sort") {
    keep(app, "Apple balm");
    CHECK(hand::see_field(app.say("book.search")) == nullptr);
    CHECK(hand::see(Role::button, app.say("book.sort_title")) == nullptr);
}

TEST_CASE_FIXTURE(FirstVisit, "the order of the book is chosen and kept") {
    platform::native::set_utc("2026-11-24T12:00:00Z");
    keep(app, "Apple balm");
    platform::native::set_utc("2026-11-25T12:00:00Z");
    keep(app, "Pear balm");
    CHECK(rows() == Titles{"Pear balm", "Apple balm"});
    hand::press(app.say("book.sort_title"));
    CHECK(rows() == Titles{"Apple balm", "Pear balm"});
    hand::open_page();
    CHECK(rows() == Titles{"Apple balm", "Pear balm"});
}

TEST_CASE_FIXTURE(FirstVisit, "a tag is put on, shown, filtered by and taken off; it is not shared") {
    keep(app, "Apple balm");
    const std::string pear = keep(app, "Pear balm");
    hand::press(app.say("book.menu_of", {{"title", "Pear balm"}}));
    hand::press(app.say("recipe.tags"));
    hand::write(app.say("tags.new"), "  stall seven ");
    hand::press(app.say("tags.add"));
    CHECK(hand::see(Role::button, app.say("tags.off", {{"tag", "stall seven"}})) != nullptr);
    hand::press(app.say("tags.add"));
    CHECK(hand::reads(words::say(app.words, {result::Code::name_empty, "tags", ""})));
    hand::press(app.say("sheet_ui.close"));
    CHECK(hand::reads("Apple balm"));
    hand::press("stall seven");
    CHECK(rows() == Titles{"Pear balm"});
    hand::press(app.say("book.any_tag"));
    CHECK(rows().size() == 2);
    CHECK(store::write_recipe(workspace::find(app.work, pear)->recipe).find("stall") == std::string::npos);

    hand::press(app.say("book.menu_of", {{"title", "Apple balm"}}));
    hand::press(app.say("recipe.tags"));
    hand::press(app.say("tags.on", {{"tag", "stall seven"}}));
    hand::press(app.say("tags.off", {{"tag", "stall seven"}}));
    hand::press(app.say("sheet_ui.close"));
    hand::open_page();
    CHECK(workspace::find(app.work, pear)->tags == Titles{"stall seven"});
}

TEST_CASE_FIXTURE(FirstVisit, "one tap makes a backup, and when it was made is said from then on") {
    keep(app, "Apple balm");
    hand::go("More");
    CHECK(hand::reads(app.say("backup.last", {{"when", app.say("backup.never")}})));
    hand::press(app.say("backup.make"));
    REQUIRE(platform::native::saved_files().size() == 1);
    CHECK(store::is_backup(platform::native::saved_files()[0].text));
    CHECK(platform::native::saved_files()[0].name.find("tarebench-backup-20") == 0);
    CHECK(hand::reads(app.say("backup.last", {{"when", app.say("backup.today")}})));
    platform::native::set_utc("2027-01-01T12:00:00Z");
    app.work.settings.last_backup = "2026-12-29T11:00:00Z";
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::open_page();
    platform::native::set_utc("2027-01-01T12:00:00Z");
    hand::go("More");
    CHECK(hand::reads(app.say("backup.last", {{"when", app.say("backup.days_ago", {{"n", "3"}})}})));
}

TEST_CASE_FIXTURE(FirstVisit, "five recipes in no backup are mentioned in the book, until one is made") {
    for (const char* title : {"One", "Two", "Three", "Four"})
        keep(app, title);
    CHECK(hand::see(Role::button, app.say("backup.make")) == nullptr);
    keep(app, "Five");
    CHECK(hand::reads(app.say("backup.not_in", {{"n", "5"}})));
    hand::press(app.say("backup.make"));
    CHECK(hand::see(Role::button, app.say("backup.make")) == nullptr);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "a backup is shown before anything is changed, and nothing is overwritten unasked") {
    const std::string apple = keep(app, "Apple balm");
    const std::string pear = keep(app, "Pear balm");
    keep(app, "Quince balm");
    app::back_up(app);
    const std::string file = platform::native::saved_files().back().text;
    workspace::find(app.work, pear)->recipe.notes = "softer";
    workspace::bin(app.work, apple, "2026-11-25T12:00:00Z");
    workspace::erase_binned(app.work, apple);
    hand::push(platform::Kind::resized);
    hand::settle();
    const workspace::Workspace before = app.work;
    open_file(file);
    CHECK(app.ui.sheet == Sheet::restore);
    CHECK(hand::reads(said(app, "1", "1", "1")));
    CHECK(hand::reads("Apple balm"));
    hand::press(app.say("restore.leave"));
    CHECK(app.work.recipes == before.recipes);

    open_file(file);
    hand::press(app.say("restore.put"));
    CHECK(app.ui.sheet == Sheet::none);
    CHECK(workspace::find(app.work, apple) != nullptr);
    CHECK(workspace::find(app.work, pear)->recipe.notes == "softer");
    CHECK(app.work.recipes.size() == 4);
    CHECK(hand::reads(app.say("restore.tag")));

    open_file(file);
    CHECK(hand::reads(said(app, "0", "0", "3")));
    hand::press(app.say("restore.all_here"));
    CHECK(app.work.recipes.size() == 4);
    hand::open_page();
    CHECK(app.work.recipes.size() == 4);
}

TEST_CASE_FIXTURE(FirstVisit, "for each recipe that differs it can be said which version is wanted") {
    const std::string pear = keep(app, "Pear balm");
    app::back_up(app);
    const std::string file = platform::native::saved_files().back().text;
    app.work.settings.theme = workspace::Theme::dark;
    for (const char* key : {"restore.mine", "restore.theirs"}) {
        workspace::find(app.work, pear)->recipe.notes = "softer";
        open_file(file);
        hand::press(app.say(key));  // the recipe's comes before that of the settings
        hand::press(app.say("restore.put"));
        CHECK(app.work.recipes.size() == 1);
        const bool mine = std::string(key) == "restore.mine";
        CHECK((workspace::find(app.work, pear)->recipe.notes == "softer") == mine);
        CHECK(app.work.settings.theme == workspace::Theme::dark);
    }
}

TEST_CASE_FIXTURE(FirstVisit, "what of a backup cannot be read is kept with the damaged records and said") {
    keep(app, "Pear balm");
    app::back_up(app);
    const std::string file = platform::native::saved_files().back().text;
    hand::open_page();
    open_file(file.substr(0, file.find("Pear balm") + 4));
    CHECK(hand::reads(app.say("restore.damaged", {{"n", "1"}})));
    hand::press(app.say("restore.put"));
    CHECK(hand::reads(app.say("store.damaged", {{"n", "1"}})));
    hand::open_page();
    CHECK(hand::reads(app.say("store.damaged", {{"n", "1"}})));
}

TEST_CASE_FIXTURE(
    FirstVisit, "a newer backup is refused with the reason, the crash notice's file is shown like a backup") {
    open_file(R"({"tarebench":7,"kind":"backup","records":[]})");
    CHECK(app.ui.sheet == Sheet::none);
    CHECK(hand::reads("newer version"));
    workspace::Kept kept;
    kept.id = "lantern";
    kept.recipe = shipped::recipe("orchard_lip_balm");
    kept.recipe.title = "Lantern Street balm";
    std::string record = store::write_record({1, store::write_kept(kept)}), quoted;
    for (const char c : record)
        quoted += c == '"' || c == '\\' ? std::string("\\") + c : std::string(1, c);
    open_file(R"({"tarebench_records":1,"records":{"tarebench:recipe:lantern.a":")" + quoted + "\"}}");
    CHECK(hand::reads(said(app, "1", "0", "0")));
    hand::press(app.say("restore.put"));
    CHECK(rows() == Titles{"Lantern Street balm"});
}

TEST_CASE_FIXTURE(FirstVisit, "opened again, the page is where one was, with the recipe that was open") {
    const std::string pear = keep(app, "Pear balm");
    hand::go("Batch");
    hand::open_page();
    CHECK(app.ui.screen == Screen::batch);
    CHECK(app.work.open == pear);
    CHECK(hand::see(Role::heading, "Pear balm") != nullptr);
    hand::go("More");
    hand::open_page();
    CHECK(app.ui.screen == Screen::more);
}

TEST_CASE_FIXTURE(FirstVisit, "opened again without its recipe, the page shows the book") {
    const std::string pear = keep(app, "Pear balm");
    hand::go("Batch");
    workspace::Kept gone = *workspace::find(app.work, pear);
    gone.binned = "2026-11-25T12:00:00Z";
    gone.saves = 9;
    platform::native::store()["tarebench:recipe:" + pear + ".b"] =
        store::write_record({9, store::write_kept(gone)});
    hand::open_page();
    CHECK(app.ui.screen == Screen::book);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "two windows change one recipe: both versions are kept, and one goes on with one's own") {
    const std::string id = keep(app, "Pear balm");
    hand::go("Formula");
    workspace::Kept theirs = *workspace::find(app.work, id);
    theirs.recipe.notes = "over there";
    theirs.saves += 1;
    platform::native::write_next_door("tarebench:recipe:" + id + ".b",
                                      store::write_record({theirs.saves, store::write_kept(theirs)}));
    hand::write(app.say("formula.notes"), "over here");
    CHECK(app.work.recipes.size() == 2);
    CHECK(workspace::find(app.work, id)->recipe.notes == "over there");
    CHECK(app.work.open != id);
    CHECK(app::open_recipe(app)->title == "Pear balm (other window)");
    CHECK(app::open_recipe(app)->notes == "over here");
    CHECK(hand::reads(app.say("store.other_window", {{"title", "Pear balm (other window)"}})));
    hand::open_page();
    CHECK(app.work.recipes.size() == 2);
    CHECK(app::open_recipe(app)->notes == "over here");
}

TEST_CASE_FIXTURE(FirstVisit, "where formula and batch stand side by side they are one place") {
    keep(app, "Pear balm");
    hand::resize(1440, 900);
    CHECK(hand::see(Role::tab, app.say("nav.batch")) == nullptr);
    hand::go(app.say("nav.both"));
    CHECK(hand::see(Role::tab, app.say("nav.both"))->current);
    app.ui.screen = Screen::batch;
    hand::push(platform::Kind::resized);
    hand::settle();
    CHECK(hand::see(Role::tab, app.say("nav.both"))->current);
    hand::resize(360, 640);
    CHECK(hand::see(Role::tab, app.say("nav.batch"))->current);
}

}  // namespace test_screen_book
