// The label as a person meets it: seen at its size, its fields filled in, cautions ticked, printed and saved;
// and the card for the stall in two taps.
#include <algorithm>
#include <cmath>

#include "hand.h"
#include "shipped.h"
#include "web/widget_label.h"

namespace test_screen_label {

using hand::FirstVisit;
using hand::Role;
using mirror::Node;

namespace {

void open_label(app::App& app, workspace::Recipe recipe) {
    app::keep(app, std::move(recipe));
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::press("Label");
}

workspace::Recipe lip_balm(const char* market = "eu") {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.market = market;
    return recipe;
}

const Node& beginning(std::string_view words) {
    for (const Node& node : mirror::nodes())
        if (node.role == Role::text && node.name.rfind(words, 0) == 0 && node.name != words) return node;
    FAIL("nothing begins with ", words);
    return mirror::nodes().front();
}

bool label_reads(const app::App&, std::string_view words) {
    return beginning("60 \xC3\x97 40\xC2\xA0mm").name.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "the label stands beside the lines, as large as it will be, with all it says") {
    open_label(app, lip_balm());
    const Node& label = beginning("60 \xC3\x97 40\xC2\xA0mm");
    CHECK(std::abs(label.width - 60 * 96 / 25.4f) < 0.01f);
    CHECK(std::abs(label.height - 40 * 96 / 25.4f) < 0.01f);
    for (const char* words : {"Orchard lip balm", "Lip balm", "Ingredients: Helianthus Annuus Seed Oil"})
        CHECK(label.name.find(words) != std::string::npos);
    CHECK(hand::reads("This bar is 50\xC2\xA0mm long"));
    CHECK(hand::reads("A safety report by a qualified assessor"));
    CHECK(hand::reads("EU: since 1 August 2026"));
    hand::press("Lines");
    CHECK(hand::see_field("Percent of Beeswax, yellow") != nullptr);
}

TEST_CASE_FIXTURE(FirstVisit, "what the label says is filled in, stands on it at once, and is undone") {
    open_label(app, lip_balm());
    hand::press("What the label says");
    hand::write("What it is", "Winter lip balm");
    hand::write("Keeps unopened", "24");
    hand::write("Cautions, each on a line of its own", "Keep out of eyes.\n\nKeep cool.");
    hand::write("Batch number", "26-11");
    hand::write("Made on (year-month-day)", "2026-11-2");
    CHECK(hand::reads("year-month-day"));
    hand::write("Made on (year-month-day)", "2026-11-20");
    hand::press("Done");
    const label::Said& said = app::open_recipe(app)->label;
    CHECK(said.identity == "Winter lip balm");
    CHECK(said.keeping.months == 24);
    CHECK(said.warnings == std::vector<std::string>{"Keep out of eyes.", "Keep cool."});
    CHECK(label_reads(app, "Winter lip balm"));
    CHECK(label_reads(app, "Best used before the end of 10/2028"));
    CHECK(label_reads(app, "Caution: Keep out of eyes. Keep cool."));
    CHECK(label_reads(app, "Batch 26-11"));
    hand::wait(2000);
    for (int i = 0; i < 60 && app.undo.can_back(); ++i)
        hand::press("Undo");
    CHECK(app::open_recipe(app)->label == label::Said{});
    CHECK(label_reads(app, "Batch 26-11"));  // of this batch, not of the recipe
}

TEST_CASE_FIXTURE(FirstVisit, "a batch's number does not get onto the label of another recipe") {
    open_label(app, lip_balm());
    hand::press("What the label says");
    hand::write("Batch number", "26-11");
    hand::press("Done");
    open_label(app, shipped::recipe("potting_shed_hand_salve"));
    CHECK_FALSE(hand::reads("Batch 26-11"));
}

TEST_CASE_FIXTURE(FirstVisit, "who answers for it is said once on this device and is in no recipe") {
    open_label(app, lip_balm());
    hand::press("Who answers for it, with address");
    hand::write("Name", "Hollow Lane Allotments");
    hand::write("Address", "1 Hollow Lane, Hollowham");
    hand::press("Done");
    CHECK(label_reads(app, "Hollow Lane Allotments, 1 Hollow Lane, Hollowham"));
    CHECK(app.work.settings.maker.name == "Hollow Lane Allotments");
    CHECK(store::write_recipe(*app::open_recipe(app)).find("Hollowham") == std::string::npos);
    hand::go("More");
    CHECK(hand::see(Role::button, "Hollow Lane Allotments") != nullptr);
    app::edit_maker(app, {std::string(label::kMostLineBytes + 1, 'w'), "", "", ""});
    hand::push(platform::Kind::resized);
    hand::settle();
    CHECK(hand::reads("This text is too long"));
    CHECK(app.work.settings.maker.name == "Hollow Lane Allotments");
}

TEST_CASE_FIXTURE(FirstVisit, "the panel's size is that of the label, and says how high letters must be") {
    open_label(app, lip_balm("us"));
    CHECK(hand::reads("which is not said"));
    hand::press("What the label says");
    hand::press("around a cylinder");
    hand::write("Around (circumference)", "50.8");
    hand::write("Height", "50.8");
    hand::press("Done");
    CHECK(app::open_recipe(app)->label.panel ==
          type_height::Panel{type_height::Shape::cylinder, 508'000, 508'000, false});
    CHECK(std::abs(beginning("50.8 \xC3\x97 50.8\xC2\xA0mm").width - 192) < 0.01f);
    CHECK(hand::reads("Letters at least 1/16 in high"));
    hand::press("What the label says");
    hand::write("Height", "0");
    CHECK(hand::field("Height").description.find("Enter an amount above zero.") != std::string::npos);
    CHECK(app::open_recipe(app)->label.panel->height == 508'000);
    hand::press("round top");
    CHECK(hand::see_field("Height") == nullptr);
    hand::press("not said");
    hand::press("Done");
    CHECK_FALSE(app::open_recipe(app)->label.panel.has_value());
}

TEST_CASE_FIXTURE(FirstVisit, "a label wider than the page is gone along at its true size, or seen whole") {
    workspace::Recipe recipe = lip_balm();
    recipe.label.panel = type_height::Panel{type_height::Shape::rectangle, 300'000, 1'900'000, false};
    open_label(app, recipe);
    CHECK(beginning("190 \xC3\x97 30\xC2\xA0mm").width <= 328);
    CHECK(hand::reads("wider than a sheet of A4"));
    CHECK(app.ui.label.along == 0);
    hand::press("Further along the label");
    CHECK(app.ui.label.along > 200);
    hand::press("Further along the label");
    hand::press("Further along the label");
    CHECK(app.ui.label.along == 0);
    hand::press("Whole, smaller");
    const Node& label = beginning("190 \xC3\x97 30\xC2\xA0mm");
    CHECK(std::abs(label.height / label.width - 30 / 190.0f) < 0.001f);
    CHECK_FALSE(hand::reads("This bar is 50\xC2\xA0mm long"));
}

TEST_CASE_FIXTURE(FirstVisit, "what does not fit is said, with the height it needs") {
    workspace::Recipe recipe = lip_balm();
    recipe.label.panel = type_height::Panel{type_height::Shape::rectangle, 100'000, 300'000, false};
    open_label(app, recipe);
    CHECK(hand::reads("This does not fit: it needs about"));
    hand::press("What the label says");
    hand::write("Width", "80");
    hand::write("Height", "200");
    hand::press("Done");
    CHECK_FALSE(hand::reads("This does not fit"));
}

TEST_CASE_FIXTURE(FirstVisit,
                  "an offered caution is printed when it is ticked, and not when the tick is taken away") {
    workspace::Recipe recipe = lip_balm();
    formula::Line line;
    line.ingredient = "sweet_almond";
    line.percent = quantity::percent(5);
    line.phase = recipe.formula.lines.front().phase;
    recipe.formula.lines.push_back(line);
    open_label(app, recipe);
    const auto made = app::labelled(app);
    REQUIRE(made.ok());
    REQUIRE_FALSE(made->warnings.empty());
    const std::string offered = made->warnings.back().sentence;
    hand::press(offered, Role::checkbox);
    CHECK(app::open_recipe(app)->label.warnings == std::vector<std::string>{offered});
    CHECK(label_reads(app, offered));
    hand::press(offered, Role::checkbox);
    CHECK(app::open_recipe(app)->label.warnings.empty());
    CHECK_FALSE(label_reads(app, offered));
}

TEST_CASE_FIXTURE(FirstVisit, "what may stand on a leaflet does when it is wished") {
    open_label(app, lip_balm());
    hand::press("Print on a leaflet what may stand there", Role::checkbox);
    CHECK(app::open_recipe(app)->label.leaflet);
    CHECK_FALSE(label_reads(app, "Ingredients:"));
}

TEST_CASE_FIXTURE(FirstVisit, "labels are printed and saved as often as asked, and the list is copied") {
    workspace::Recipe recipe = lip_balm();
    recipe.batch.containers.resize(1);
    recipe.batch.containers[0].count = 14;
    open_label(app, recipe);
    CHECK(hand::field("How many labels").value == "14");
    hand::write("How many labels", "201");
    CHECK(hand::field("How many labels").description.find("more than is allowed") != std::string::npos);
    hand::write("How many labels", "3");
    hand::press("Print the labels");
    hand::press("Save the labels as a file");
    REQUIRE(platform::native::printed().size() == 1);
    REQUIRE(platform::native::saved_files().size() == 1);
    const std::string paper = platform::native::saved_files()[0].text;
    CHECK(platform::native::saved_files()[0].name == "orchard-lip-balm-labels.html");
    CHECK(platform::native::printed()[0].text == paper);
    std::size_t labels = 0;
    for (std::size_t at = paper.find("class=\"label\""); at != paper.npos;
         at = paper.find("class=\"label\"", at + 1))
        labels += 1;
    CHECK(labels == 3);
    hand::press("Copy the ingredient list");
    REQUIRE(platform::native::copied().size() == 1);
    CHECK(platform::native::copied()[0].rfind("Helianthus Annuus Seed Oil, ", 0) == 0);
    hand::press("Save the assessor\xE2\x80\x99s pack");
    CHECK(platform::native::saved_files()[1].name == "orchard-lip-balm-assessor.html");
}

TEST_CASE_FIXTURE(FirstVisit, "the customer card is two taps from the open recipe, on paper as well") {
    app::keep(app, lip_balm());
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::press(app.say("top.recipe"));
    hand::press("Customer card");
    CHECK(hand::see(Role::heading, "Are there nuts in it?") != nullptr);
    CHECK(hand::see(Role::heading, "Is it for children?") != nullptr);
    CHECK(hand::reads("It is no promise that a product is free of anything."));
    hand::press("Print the card");
    REQUIRE(platform::native::printed().size() == 1);
    CHECK(platform::native::printed()[0].text.find("<h2>Are there nuts in it?</h2>") != std::string::npos);
    hand::press("Close");
    hand::press("Label");
    hand::press("Customer card");
    CHECK(hand::see(Role::heading, "In pregnancy?") != nullptr);
}

TEST_CASE_FIXTURE(FirstVisit, "a formula that does not add up has no label, and its sum is said") {
    workspace::Recipe recipe = lip_balm();
    for (formula::Line& line : recipe.formula.lines)
        line.rest = false;
    open_label(app, recipe);
    CHECK(hand::reads("not to 100"));
    CHECK(hand::see(Role::button, "Print the labels") == nullptr);
    CHECK(hand::see(Role::button, "Customer card") != nullptr);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "on a wide window the label stands beside the lines, and colours are said on a sheet") {
    open_label(app, lip_balm());
    hand::resize(1440, 900);
    CHECK(hand::see_field("Percent of Beeswax, yellow") != nullptr);
    CHECK(hand::see(Role::button, "Print the labels") != nullptr);
    hand::press("What the label says");
    hand::press("Colours and nanomaterials");
    hand::press("Beeswax, yellow", Role::checkbox);
    CHECK(app::open_recipe(app)->label.colours == std::vector<std::string>{"beeswax_yellow"});
    hand::press("Done");
}

TEST_CASE_FIXTURE(FirstVisit, "the page comes back to the label") {
    open_label(app, lip_balm());
    hand::open_page();
    CHECK(app.ui.screen == app::Screen::label);
    CHECK(hand::see(Role::button, "Print the labels") != nullptr);
}

}  // namespace test_screen_label
