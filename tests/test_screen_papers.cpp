// The papers of a recipe as a person meets them: read on the page, printed, saved; the sheet of labels; a
// workshop; the code in the share sheet.
#include "hand.h"
#include "shipped.h"

namespace test_screen_papers {

using hand::FirstVisit;
using hand::Role;

namespace {

void open_papers(app::App& app, const char* stem) {
    app::keep(app, shipped::recipe(stem));
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::go("Batch");
    hand::press("Papers to print");
}

const platform::native::Saved& shown() {
    return platform::native::shown_paper();
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "papers: each is read in one tap, printed or saved in another") {
    open_papers(app, "frost_line_elbow_butter");
    for (const char* name : {"Batch sheet", "Handout", "Ingredient and shopping list", "Labels",
                             "Customer card", "Assessor\xE2\x80\x99s pack"}) {
        CAPTURE(std::string(name));
        hand::press(name);
        CHECK(hand::see(Role::dialog, name) != nullptr);
        CHECK(shown().name == name);
        CHECK(shown().text.rfind("<!doctype html>", 0) == 0);
        const std::size_t before = platform::native::printed().size();
        hand::press("Print");
        hand::press("Save");
        REQUIRE(platform::native::printed().size() == before + 1);
        CHECK(platform::native::printed().back().text == shown().text);
        CHECK(platform::native::saved_files().back().text == shown().text);
        hand::press("Close");
        CHECK(shown().text.empty());
    }
    CHECK(platform::native::saved_files()[0].name == "frost-line-elbow-butter-batch.html");
    CHECK(platform::native::saved_files()[1].name == "frost-line-elbow-butter-handout.html");
}

TEST_CASE_FIXTURE(FirstVisit,
                  "papers: Escape closes what is read, then leads back to the batch, then to the Book") {
    open_papers(app, "orchard_lip_balm");
    hand::press("Handout");
    hand::push(platform::Kind::node_escape);
    hand::settle();
    CHECK(shown().text.empty());
    CHECK(app.ui.screen == app::Screen::papers);
    hand::push(platform::Kind::node_escape);
    hand::settle();
    CHECK(app.ui.screen == app::Screen::batch);
    hand::push(platform::Kind::node_escape);
    hand::settle();
    CHECK(app.ui.screen == app::Screen::book);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "papers: without a batch it is said why there is no batch sheet, and the rest is there") {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.batch = {};
    app::keep(app, recipe);
    hand::go("Batch");
    hand::press("Papers to print");
    CHECK(hand::see(Role::button, "Batch sheet") == nullptr);
    CHECK(hand::reads("It is not said yet how much to make"));
    hand::press("Handout");
    CHECK(shown().text.find("For 100") != std::string::npos);
}

TEST_CASE_FIXTURE(FirstVisit, "papers: the handout's code has the page's address, by which it opens too") {
    platform::native::window().from_disk = false;
    platform::native::window().address = "https://hollow-lane.example/";
    open_papers(app, "orchard_lip_balm");
    hand::press("Handout");
    CHECK(shown().text.find("href=\"https://hollow-lane.example/#") != std::string::npos);
    CHECK(shown().text.find("<svg class=\"code\"") != std::string::npos);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "papers: a bought sheet of labels is kept, and one that reaches beyond the paper is not") {
    open_papers(app, "orchard_lip_balm");
    hand::press("Sheet of labels");
    hand::press("Bought sheet");
    hand::write("Columns", "2");
    hand::write("Width of one", "90");
    hand::write("Shift down", "-1.5");
    REQUIRE(app.work.settings.label_sheet);
    CHECK(app.work.settings.label_sheet->columns == 2);
    CHECK(app.work.settings.label_sheet->width == 900'000);
    CHECK(app.work.settings.label_sheet->shift_down == -15'000);
    hand::write("Columns", "3");
    CHECK(app.work.settings.label_sheet->columns == 2);
    CHECK(app.ui.message.find("beyond the paper") != std::string::npos);
    hand::press("Test print");
    CHECK(shown().text.find("class=\"cell tested\"") != std::string::npos);
    hand::press("Close");
    CHECK(hand::see(Role::button, "Sheet of labels")->description.find("2 \xC3\x97 8") == 0);
    hand::press("Labels");
    CHECK(shown().text.find("class=\"cell\"") != std::string::npos);
    hand::press("Close");
    hand::press("Sheet of labels");
    hand::press("Cut out");
    CHECK_FALSE(app.work.settings.label_sheet);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "workshop: what is said is kept on the device, and the plan and the handouts follow it") {
    open_papers(app, "frost_line_elbow_butter");
    hand::press("Workshop");
    hand::write("People", "9");
    hand::write("Stations", "2");
    hand::write("Begins (hours:minutes)", "18:3");
    CHECK(hand::reads("A time such as"));
    hand::write("Begins (hours:minutes)", "18:30");
    hand::write("Pack of Shea butter", "250");
    const workshop::Plan& plan = app.work.settings.workshop;
    CHECK(plan.people == 9);
    CHECK(plan.stations == 2);
    CHECK(plan.starts == 18 * 60 + 30);
    CHECK(plan.packs == std::vector<workshop::Pack>{{"shea", quantity::grams(250)}});
    CHECK(hand::reads("5 at a station"));
    CHECK(hand::reads("3 hotplates, 3 circuits"));
    hand::press("Plan of the workshop");
    CHECK(shown().text.find("Station 2: 4 people") != std::string::npos);
    CHECK(shown().text.find(">18:00<") != std::string::npos);  // set up
    hand::press("Close");
    hand::press("Handouts for all");
    CHECK(shown().text.find("class=\"copy\"") != std::string::npos);
    hand::press("Close");
    hand::write("People", "1");
    CHECK(app.work.settings.workshop.stations == 1);
    hand::write("People", "0");
    CHECK(app.work.settings.workshop.people == 1);
    hand::write("Pack of Shea butter", "");
    CHECK(app.work.settings.workshop.packs.empty());
}

TEST_CASE_FIXTURE(FirstVisit,
                  "share: the sheet shows the code, or says why there is none and what to leave out") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::press(app.say("top.recipe"));
    hand::press(app.say("recipe.share"));
    CHECK(hand::reads("Too long for a QR code"));
    hand::press(app.say("share.without_notes"));
    CHECK(hand::reads("QR code with the link to Orchard lip balm"));
}

}  // namespace test_screen_papers
