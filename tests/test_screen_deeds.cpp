// The main job, done by name as assistive technology does it, and what must not be lost or mixed up on the
// way.
#include <string>
#include <vector>

#include "engine/share.h"
#include "whole.h"

namespace test_screen_deeds {

using namespace whole;
using hand::FirstVisit;

TEST_CASE_FIXTURE(FirstVisit, "the main job by name: lines, percents, an amount, and grams that add up") {
    write_three_lines(app);
    const workspace::Recipe& recipe = *app::open_recipe(app);
    REQUIRE(recipe.formula.lines.size() == 3);
    CHECK(recipe.formula.lines[0].percent.grid == 600000);
    CHECK(recipe.formula.lines[2].rest);
    CHECK(hand::reads(app.say("formula.sum_rest", {{"rest", "10"}})));

    hand::go("Batch");
    hand::press(app.say("batch.say_how_much"));
    hand::press(app.say("batch.by_mass"));
    hand::write(app.say("batch.mass"), "250/4");
    hand::press(app.say("sheet_ui.done"));
    CHECK(recipe.batch.grams.grid == 625000);
    CHECK(hand::reads(app.say("batch.total", {{"g", "62.50"}})));
    CHECK(hand::see(Role::cell, app.say("unit.grams", {{"n", "37.50"}})) != nullptr);
    CHECK(hand::see(Role::cell, app.say("unit.grams", {{"n", "18.75"}})) != nullptr);
    CHECK(hand::see(Role::cell, app.say("unit.grams", {{"n", "6.25"}})) != nullptr);
    CHECK(faults() == "");
}

TEST_CASE_FIXTURE(FirstVisit, "fourteen containers by name fill from their usual weight with loss on top") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    app::open_recipe(app)->batch = {};
    draw_again();
    hand::go("Batch");
    hand::press(app.say("batch.say_how_much"));
    hand::press(app.say("batch.in_containers"));
    REQUIRE(app.ui.sheet == Sheet::container);
    const catalogue::Container& tube = *catalogue::find_container(app.presets.catalogue, "lip_tube_round");
    hand::press(tube.name);
    hand::write(app.say("batch.count_of", {{"name", tube.name}}), "14");
    REQUIRE(app.analysis->batch.ok());
    const batch::Batch& made = *app.analysis->batch;
    CHECK(made.fill.grid == 14 * tube.fill_g->value.max);
    CHECK(made.total.grid >= made.fill.grid * 100 / 95);
    std::int64_t sum = 0;
    for (const batch::Line& line : made.lines)
        sum += line.grams.grid;
    CHECK(sum == made.total.grid);
}

TEST_CASE_FIXTURE(FirstVisit, "undo takes a deed back and redo brings it again") {
    write_three_lines(app);
    const workspace::Recipe made = *app::open_recipe(app);
    hand::press(app.say("top.undo"));
    CHECK_FALSE(app::open_recipe(app)->formula.lines[2].rest);
    hand::press(app.say("top.redo"));
    CHECK(*app::open_recipe(app) == made);
    hand::key("z", true);
    CHECK_FALSE(app::open_recipe(app)->formula.lines[2].rest);
    hand::key("z", true, true);
    CHECK(*app::open_recipe(app) == made);
    int steps = 0;
    for (; app.undo.can_back() && steps < 50; ++steps)
        hand::press(app.say("top.undo"));
    CHECK(app::open_recipe(app)->formula.lines.empty());
    CHECK(hand::button(app.say("top.undo")).disabled);
}

TEST_CASE_FIXTURE(FirstVisit, "taking a step back is for the recipe in sight, not for one behind the book") {
    write_three_lines(app);
    const workspace::Recipe made = *app::open_recipe(app);
    hand::go("Book");
    hand::key("z", true);
    CHECK(*app::open_recipe(app) == made);
}

TEST_CASE_FIXTURE(FirstVisit, "the page opened again has the recipe, open, as it was left") {
    write_three_lines(app);
    const workspace::Recipe made = *app::open_recipe(app);
    hand::open_page();
    REQUIRE(app::open_recipe(app) != nullptr);
    CHECK(*app::open_recipe(app) == made);
    CHECK_FALSE(app.undo.can_back());
}

TEST_CASE_FIXTURE(FirstVisit, "a link that was copied opens on another device as the same recipe") {
    for (const auto& [stem, recipe] : app.presets.recipes) {
        CAPTURE(stem);
        platform::native::store().clear();
        hand::open_page();
        app::keep(app, shipped::recipe(stem));
        draw_again();
        hand::go("Batch");
        hand::press(app.say("recipe.share"));
        hand::press(app.say("share.copy"));
        CHECK(hand::reads(app.say("share.copied")));
        REQUIRE(platform::native::copied().size() == 1);
        const std::string link = platform::native::copied().front();

        platform::native::store().clear();
        hand::open_page();
        REQUIRE(app.work.recipes.empty());
        hand::push(platform::Kind::fragment, 0, link);
        hand::settle();
        CHECK(app.ui.sheet == Sheet::incoming);
        CHECK(app.work.recipes.empty());  // nothing is kept yet
        hand::press(app.say("incoming.keep"));
        REQUIRE(app::open_recipe(app) != nullptr);
        CHECK(*app::open_recipe(app) == shipped::recipe(stem));
    }
}

TEST_CASE_FIXTURE(FirstVisit, "a link that was pasted says the same as one that was opened") {
    const std::string link = share::write(shipped::recipe("orchard_lip_balm"), app.presets.catalogue).value();
    hand::press("New recipe");
    hand::press(app.say("new.link"));
    hand::write(app.say("new.paste_here"), "https://hollow-lane.example/tarebench.html" + link.substr(0, 4));
    hand::press(app.say("new.read"));
    CHECK_FALSE(app.ui.typed_problem.empty());
    CHECK(hand::reads(app.ui.typed_problem));
    hand::push(platform::Kind::node_input, hand::field(app.say("new.paste_here")).id, link);
    hand::settle();
    hand::press(app.say("new.read"));
    REQUIRE(app.ui.sheet == Sheet::incoming);
    hand::press(app.say("incoming.leave"));
    CHECK(app.work.recipes.empty());
    CHECK(app.ui.sheet == Sheet::none);
}

TEST_CASE_FIXTURE(FirstVisit, "a wrong link tells what is wrong and changes nothing") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    const workspace::Workspace before = app.work;
    const std::string link =
        share::write(shipped::recipe("potting_shed_hand_salve"), app.presets.catalogue).value();
    std::string altered = link;
    altered[altered.size() / 2] = altered[altered.size() / 2] == 'A' ? 'B' : 'A';
    for (const std::string& wrong :
         {std::string("#hello"), altered, link.substr(0, link.size() / 2), std::string("#"),
          std::string("{\"tarebench\":1"), std::string(30000, 'A')}) {
        CAPTURE(wrong);
        hand::push(platform::Kind::fragment, 0, wrong);
        hand::settle();
        CHECK_FALSE(app.ui.message.empty());
        CHECK(app.ui.message_is_problem);
        CHECK(hand::see(Role::alert, app.ui.message) != nullptr);
        CHECK(app.ui.sheet == Sheet::none);
        CHECK(app.work == before);
        hand::wait(10000);
        CHECK(app.ui.message.empty());
    }
}

TEST_CASE_FIXTURE(FirstVisit, "a recipe saved as a file comes back from it") {
    app::keep(app, shipped::recipe("kitchen_garden_hand_lotion"));
    draw_again();
    hand::press(app.say("top.recipe"));
    hand::press(app.say("recipe.save_file"));
    REQUIRE(platform::native::saved_files().size() == 1);
    CHECK(platform::native::saved_files()[0].name == "kitchen-garden-hand-lotion.json");
    hand::push(platform::Kind::file_opened, 0, platform::native::saved_files()[0].text);
    hand::settle();
    REQUIRE(app.ui.sheet == Sheet::incoming);
    CHECK(*app.ui.incoming == shipped::recipe("kitchen_garden_hand_lotion"));
}

TEST_CASE_FIXTURE(FirstVisit,
                  "a recipe can be renamed, copied, put in the bin, put back and deleted for good") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    const auto menu = [&](const char* key) {
        hand::press(app.say("top.recipe"));
        hand::press(app.say(key));
    };
    menu("recipe.rename");
    hand::write(app.say("recipe.title"), "Windfall lip balm");
    hand::press(app.say("recipe.rename_done"));
    CHECK(app::open_recipe(app)->title == "Windfall lip balm");
    menu("recipe.copy");
    CHECK(app.work.recipes.size() == 2);
    CHECK(app::open_recipe(app)->title == app.say("recipe.copy_of", {{"title", "Windfall lip balm"}}));
    menu("recipe.to_bin");
    CHECK(app.ui.screen == Screen::book);
    CHECK(app::open_recipe(app) == nullptr);
    const std::string title = app.say("recipe.copy_of", {{"title", "Windfall lip balm"}});
    hand::press(app.say("book.bin", {{"n", "1"}}));
    hand::press(app.say("bin.restore", {{"title", title}}));
    hand::press(app.say("sheet_ui.close"));
    hand::press(title);
    menu("recipe.to_bin");
    hand::press(app.say("book.bin", {{"n", "1"}}));
    hand::press(app.say("bin.erase", {{"title", title}}));
    CHECK(app.work.recipes.size() == 1);
}

TEST_CASE_FIXTURE(FirstVisit, "whatever title a person gives, the recipe can be copied and sent") {
    std::string title;
    for (int i = 0; i < 60; ++i)
        title += "ü";  // 120 bytes
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    hand::press(app.say("top.recipe"));
    hand::press(app.say("recipe.rename"));
    hand::push(platform::Kind::node_input, hand::field(app.say("recipe.title")).id, title);
    hand::settle();
    hand::press(app.say("recipe.rename_done"));
    CHECK(workspace::checked(*app::open_recipe(app)).ok());
    hand::press(app.say("top.recipe"));
    hand::press(app.say("recipe.copy"));
    CHECK(app.work.recipes.size() == 2);
    for (const workspace::Kept& kept : app.work.recipes) {
        CAPTURE(kept.recipe.title);
        CHECK(workspace::checked(kept.recipe).ok());
        CHECK(share::write(kept.recipe, app.presets.catalogue).ok());
    }
}

TEST_CASE_FIXTURE(FirstVisit, "what could not be read in one recipe does not turn up in another") {
    for (const char* stem : {"orchard_lip_balm", "potting_shed_hand_salve"})
        app::keep(app, shipped::recipe(stem));
    draw_again();
    const std::string wax = percent_of("beeswax_yellow");
    hand::write(wax, "a lot");
    CHECK(hand::field(wax).invalid);
    app::open(app, app.work.recipes.back().id);
    draw_again();
    CHECK(hand::field(wax).value == "22");
    CHECK_FALSE(hand::field(wax).invalid);
}

TEST_CASE_FIXTURE(FirstVisit, "what could not be read in one line does not move to another when lines move") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    hand::write(percent_of("cocoa"), "some");
    REQUIRE(hand::field(percent_of("cocoa")).invalid);
    hand::press(name_of("beeswax_yellow"));
    hand::press(app.say("line.remove"));
    CHECK(hand::field(percent_of("shea")).value == "14");
    CHECK_FALSE(hand::field(percent_of("shea")).invalid);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "what could not be read in one phase's sheet does not turn up in the next one's") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    app.ui.phase = 0;
    app::show(app, Sheet::phase);
    draw_again();
    hand::write(app.say("phase.hold_c"), "hot");
    REQUIRE(hand::field(app.say("phase.hold_c")).invalid);
    hand::press(app.say("sheet_ui.done"));
    app.ui.phase = 1;
    app::show(app, Sheet::phase);
    draw_again();
    CHECK(hand::field(app.say("phase.hold_c")).value == "70");
}

TEST_CASE_FIXTURE(FirstVisit, "what could not be read of one container or scale goes with it") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    app::open_recipe(app)->batch.containers = {{"tin_30ml", 2, {}, {}}, {"jar_60ml", 3, {}, {}}};
    open_sheet(app, Sheet::amount);
    const auto container = [&](const char* id) {
        return catalogue::find_container(app.presets.catalogue, id)->name;
    };
    const auto count = [&](const char* id) { return app.say("batch.count_of", {{"name", container(id)}}); };
    hand::write(count("tin_30ml"), "two");
    REQUIRE(hand::field(count("tin_30ml")).invalid);
    hand::press(app.say("batch.container_remove", {{"name", container("tin_30ml")}}));
    CHECK(hand::field(count("jar_60ml")).value == "3");

    app::close_sheet(app);
    hand::go("More");
    const std::string first = app.say("settings.scale_division", {{"n", "1"}});
    hand::write(first, "fine");
    REQUIRE(hand::field(first).invalid);
    hand::press(app.say("settings.scale_remove", {{"n", "1"}}));
    CHECK(hand::field(first).value == "1");
}

TEST_CASE_FIXTURE(FirstVisit, "what could not be read is let go when its screen is left") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    hand::write(percent_of("shea"), "some");
    hand::go("Batch");
    hand::go("Formula");
    CHECK(hand::field(percent_of("shea")).value == "14");
}

TEST_CASE_FIXTURE(
    FirstVisit,
    "a phase that is removed leaves its steps to no phase, so that the recipe can still be sent") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    hand::press(name_of("tocopherol"));
    hand::press(app.say("line.to_phase", {{"id", "B"}}));
    app.ui.phase = 2;
    app::show(app, Sheet::phase);
    draw_again();
    hand::press(app.say("phase.remove", {{"id", "C"}}));
    REQUIRE(app::open_recipe(app)->formula.phases.size() == 2);
    CHECK(share::write(*app::open_recipe(app), app.presets.catalogue).ok());
    CHECK(store::read_recipe(store::write_recipe(*app::open_recipe(app))).ok());
}

TEST_CASE_FIXTURE(FirstVisit, "after a phase in the middle was removed another can be added") {
    hand::press("New recipe");
    hand::press("Blank");
    for (int i = 0; i < 2; ++i)
        hand::press(app.say("formula.add_phase"));
    app.ui.phase = 1;
    app::show(app, Sheet::phase);
    draw_again();
    hand::press(app.say("phase.remove", {{"id", "B"}}));
    hand::press(app.say("formula.add_phase"));
    REQUIRE(app::open_recipe(app)->formula.phases.size() == 3);
    CHECK(app::open_recipe(app)->formula.phases[2].id == "D");
    for (int i = 0; i < 9; ++i)
        hand::press(app.say("formula.add_phase"));
    CHECK(app::open_recipe(app)->formula.phases.size() == formula::kMostPhases);
    CHECK(hand::see(Role::button, app.say("formula.add_phase")) == nullptr);
}

TEST_CASE_FIXTURE(FirstVisit, "blanks are no name and no title") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    open_sheet(app, Sheet::ingredient);
    hand::write(app.say("ingredient.search"), "   ");
    CHECK(hand::see(Role::button, app.say("ingredient.as_written", {{"name", "   "}})) == nullptr);
    open_sheet(app, Sheet::rename);
    hand::write(app.say("recipe.title"), "  ");
    hand::press(app.say("recipe.rename_done"));
    CHECK(hand::see(Role::heading, app.say("recipe.untitled")) != nullptr);
}

TEST_CASE_FIXTURE(FirstVisit, "a link begins with the address that was said, however it was pasted") {
    app.work.settings.hosted_address = " https://hollow-lane.example/tarebench.html#AQ ";
    CHECK(app::link_address(app, "#AQID") == "https://hollow-lane.example/tarebench.html#AQID");
    platform::native::window().from_disk = false;
    platform::native::window().address = "https://elsewhere.example/";
    CHECK(app::link_address(app, "#AQID") == "https://elsewhere.example/#AQID");
}

TEST_CASE_FIXTURE(FirstVisit, "a recipe that another tab puts in the bin is not left open here") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    workspace::Kept theirs = app.work.recipes.front();
    theirs.binned = "2026-11-25T12:00:00Z";
    theirs.saves += 1;
    platform::Event event;
    event.kind = platform::Kind::other_tab;
    event.key = "tarebench:recipe:" + theirs.id + ".b";
    event.text = store::write_record({theirs.saves, store::write_kept(theirs)});
    platform::native::push(event);
    hand::settle();
    CHECK(app::open_recipe(app) == nullptr);
    CHECK(hand::reads(app.say("formula.none_open")));
}

TEST_CASE_FIXTURE(FirstVisit, "two scales of the same division can be told apart by the library") {
    app.work.settings.scales = {{"", {1000}, {}}, {"", {1000}, {}}};
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    open_sheet(app, Sheet::amount);
    CHECK(faults() == "");
}

TEST_CASE_FIXTURE(FirstVisit, "a division can't be nothing") {
    hand::go("More");
    const std::string division = app.say("settings.scale_division", {{"n", "1"}});
    hand::write(division, "0");
    CHECK(hand::field(division).invalid);
    CHECK(app.work.settings.scales[0].division.grid == 100);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "the browser's back closes the keypad, then the sheet, then leads to the book") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    app.ui.screen = Screen::batch;
    open_sheet(app, Sheet::amount);
    const std::string loss = app.say("batch.loss");
    hand::push(platform::Kind::node_focus, hand::field(loss).id);  // into view
    hand::settle();
    hand::push(platform::Kind::node_blur, hand::field(loss).id);
    hand::settle();
    hand::tap(Node(hand::field(loss)));
    REQUIRE(app.kit.keypad.open());
    CHECK(platform::native::back_guard());
    hand::push(platform::Kind::node_escape);
    hand::settle();
    CHECK_FALSE(app.kit.keypad.open());
    CHECK(app.ui.sheet == Sheet::amount);
    hand::push(platform::Kind::node_escape);
    hand::settle();
    CHECK(app.ui.sheet == Sheet::none);
    CHECK(app.ui.screen == Screen::batch);
    hand::push(platform::Kind::node_escape);
    hand::settle();
    CHECK(app.ui.screen == Screen::book);
    CHECK_FALSE(platform::native::back_guard());
}

TEST_CASE_FIXTURE(FirstVisit, "Escape in a field leaves the field and closes nothing") {
    hand::press("New recipe");
    hand::press(app.say("new.link"));
    const std::uint32_t field = hand::field(app.say("new.paste_here")).id;
    hand::push(platform::Kind::node_focus, field);
    hand::settle();
    hand::push(platform::Kind::node_escape, field);
    hand::settle();
    CHECK(app.ui.sheet == Sheet::from_text);
    CHECK(mirror::focus() == 0);
}

TEST_CASE_FIXTURE(FirstVisit, "a sheet whose recipe or line is gone closes by itself") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    open_sheet(app, Sheet::line);
    app.ui.line = 99;
    draw_again();
    CHECK(app.ui.sheet == Sheet::none);
    for (const Sheet sheet : {Sheet::recipe, Sheet::rename, Sheet::share, Sheet::product, Sheet::line,
                              Sheet::ingredient, Sheet::phase, Sheet::amount, Sheet::container}) {
        CAPTURE(static_cast<int>(sheet));
        app::keep(app, shipped::recipe("orchard_lip_balm"));
        open_sheet(app, sheet);
        const std::string id = app.work.open;
        workspace::bin(app.work, id, "2026-11-25T12:00:00Z");
        workspace::erase_binned(app.work, id);
        draw_again();
        CHECK(app.ui.sheet == Sheet::none);
        CHECK(faults() == "");
    }
}

TEST_CASE_FIXTURE(FirstVisit, "what another tab wrote is shown, and can be taken back") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    workspace::Kept theirs = app.work.recipes.front();
    theirs.recipe.title = "Over there";
    theirs.saves += 1;
    platform::Event event;
    event.kind = platform::Kind::other_tab;
    event.key = "tarebench:recipe:" + theirs.id + ".b";
    event.text = store::write_record({theirs.saves, store::write_kept(theirs)});
    platform::native::push(event);
    hand::settle();
    CHECK(hand::see(Role::heading, "Over there") != nullptr);
    hand::press(app.say("top.undo"));
    CHECK(app::open_recipe(app)->title == "Orchard lip balm");
}

TEST_CASE_FIXTURE(FirstVisit, "a full store is told in the book, and the page comes to rest") {
    platform::native::set_storage(platform::native::Storage::full);
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    CHECK_FALSE(platform::native::frame_wanted());
    hand::go("Book");
    CHECK(hand::reads(app.say("store.full")));
    CHECK(faults() == "");
}

TEST_CASE_FIXTURE(FirstVisit, "unreadable records are told in the book, can be saved, and then be put away") {
    platform::native::store()["tarebench:recipe:torn.a"] = "3 00000000 {";
    hand::open_page();
    CHECK(hand::reads(app.say("store.damaged", {{"n", "1"}})));
    CHECK(faults() == "");
    hand::press(app.say("store.save_damaged"));
    REQUIRE(platform::native::saved_files().size() == 1);
    CHECK(platform::native::saved_files()[0].text.find("3 00000000 {") != std::string::npos);
    CHECK(faults() == "");
    hand::press(app.say("store.forget_damaged"));
    CHECK_FALSE(hand::reads(app.say("store.damaged", {{"n", "1"}})));
    hand::open_page();
    CHECK(app.keeping.damaged().empty());
}

TEST_CASE_FIXTURE(FirstVisit, "settings hold for every figure at once") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    draw_again();
    hand::go("More");
    hand::press(app.say("settings.sign_comma"));
    hand::go("Formula");
    CHECK(hand::field(percent_of("tocopherol")).value == "0,4");
}

TEST_CASE_FIXTURE(FirstVisit, "an empty field of the settings that may be empty empties the figure") {
    hand::go("More");
    const std::string capacity = app.say("settings.scale_capacity", {{"n", "1"}});
    hand::write(capacity, "500");
    CHECK(app.work.settings.scales[0].capacity.grid == 5000000);
    hand::write(capacity, "");
    CHECK(app.work.settings.scales[0].capacity.grid == 0);
    CHECK_FALSE(hand::field(capacity).invalid);
}

TEST_CASE_FIXTURE(
    FirstVisit,
    "whatever is pressed and written in whatever order, the page stays whole and every recipe can be kept") {
    static const char* kTexts[] = {"12.5",
                                   "250/12",
                                   "0",
                                   "100",
                                   "99,9",
                                   "-3",
                                   "1..2",
                                   "",
                                   "abc",
                                   "2000000",
                                   "14",
                                   "0.0001",
                                   "Grandmother's jar",
                                   "   ",
                                   "\xC3\xBC\xC3\xBC",
                                   "2 oz",
                                   "[[",
                                   "{n}"};
    const std::uint64_t seed = 20261125;
    chance::Generator chance(seed);
    std::string did;
    for (int turn = 0; turn < 500; ++turn) {
        const Node* dialog = nullptr;
        std::vector<Node> choices;
        for (const Node& node : mirror::nodes()) {
            if (node.role == Role::dialog) {
                dialog = &node;
                choices.clear();
            }
            if (interactive(node) && !node.disabled && node.role != Role::tab) choices.push_back(node);
            if (node.role == Role::tab && dialog == nullptr) choices.push_back(node);
        }
        REQUIRE_FALSE(choices.empty());
        const Node& node = choices[chance.below(choices.size())];
        const std::uint64_t how = chance.below(20);
        if (how == 0) {
            const Size& size = kSizes[chance.below(std::size(kSizes))];
            did = "resize";
            hand::resize(size.width, size.height);
        } else if (how == 1) {
            did = "tap";
            hand::tap(static_cast<double>(chance.below(360)), static_cast<double>(chance.below(640)));
        } else if (how == 2) {
            did = "undo";
            hand::key("z", true, chance.below(2) == 0);
        } else if (how == 3) {
            did = "back";
            hand::push(platform::Kind::node_escape);
            hand::settle();
        } else if (hand::is_field(node.role)) {
            const char* text = kTexts[chance.below(std::size(kTexts))];
            did = "write " + std::string(text) + " into " + node.name;
            if (how < 12) hand::push(platform::Kind::node_focus, node.id);
            hand::push(platform::Kind::node_input, node.id, text);
            hand::settle();
            if (how < 8) hand::push(platform::Kind::node_blur, node.id);
            hand::settle();
        } else {
            did = "press " + node.name;
            hand::push(platform::Kind::node_click, node.id);
            hand::settle();
        }
        if (app.work.recipes.size() > 12) {
            workspace::bin(app.work, app.work.recipes.back().id, "2026-11-25T12:00:00Z");
            workspace::erase_binned(app.work, app.work.recipes.back().id);
            draw_again();
        }
        CAPTURE(turn);
        CAPTURE(did);
        REQUIRE(faults(Words::of_anyone) == "");
        for (const workspace::Kept& kept : app.work.recipes) {
            const auto checked = workspace::checked(kept.recipe);
            if (!checked) CAPTURE(words::say(app.words, checked.error()) + checked.error().place);
            REQUIRE(checked.ok());
        }
    }
    const workspace::Workspace before = app.work;
    hand::open_page();
    CHECK(app.work.recipes.size() == before.recipes.size());
    for (const workspace::Kept& kept : before.recipes) {
        REQUIRE(workspace::find(app.work, kept.id) != nullptr);
        CHECK(workspace::find(app.work, kept.id)->recipe == kept.recipe);
    }
    CHECK(app.work.settings == before.settings);
    platform::native::window().pixel_ratio = 2;
}

}  // namespace test_screen_deeds
