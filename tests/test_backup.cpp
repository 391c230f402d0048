// Everything on the device as one file and back: what the file holds, what its preview says, and that nothing
// is overwritten unasked. The crash notice's file comes in by the same door.
#include <nlohmann/json.hpp>

#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/store.h"
#include "engine/workspace_backup.h"
#include "engine/workspace_book.h"
#include "engine/workspace_own.h"
#include "shipped.h"

namespace test_backup {

using result::Code;
using workspace_backup::Choice;
using workspace_backup::Content;
using workspace_backup::Preview;
using workspace_backup::State;

namespace {

constexpr const char* kMonday = "2026-11-23T09:00:00Z";
constexpr const char* kTuesday = "2026-11-24T09:00:00Z";
constexpr const char* kFriday = "2026-11-27T10:30:00Z";

workspace::Kept kept(const std::string& id, const std::string& title) {
    workspace::Kept one;
    one.id = id;
    one.recipe = shipped::presets().recipes.front().second;
    one.recipe.title = title;
    one.saves = 3;
    one.changed = kMonday;
    return one;
}

workspace::Workspace bench() {
    workspace::Workspace work;
    work.recipes = {kept("a1", "Orchard lip balm"), kept("b2", "Market day salve"), kept("c3", "Old trial")};
    work.recipes[0].tags = {"winter", "gift"};
    work.recipes[2].binned = kTuesday;
    work.settings.theme = workspace::Theme::dark;
    work.settings.scales.push_back({"Post", {50000}, {20'000'000}});
    return work;
}

Preview previewed(const workspace::Workspace& here, const std::string& file) {
    const auto content = store::read_backup(file);
    REQUIRE(content);
    return workspace_backup::preview(here, *content);
}

std::vector<std::string> ids(std::size_t count) {
    std::vector<std::string> made;
    for (std::size_t i = 0; i < count; ++i)
        made.push_back("new" + std::to_string(i));
    return made;
}

std::size_t put_back(workspace::Workspace& here, const Preview& preview) {
    return workspace_backup::put_back(here, preview, ids(preview.entries.size()), "from a backup");
}

}  // namespace

TEST_CASE(
    "a backup put back on an empty device brings every recipe, the bin, tags and, asked for, the settings") {
    const workspace::Workspace there = bench();
    const std::string file = store::write_backup(there, {}, kTuesday);
    workspace::Workspace here;
    Preview preview = previewed(here, file);
    CHECK(preview.fresh == 3);
    CHECK(preview.changed == 0);
    CHECK(preview.same == 0);
    CHECK(preview.damaged.empty());
    CHECK(preview.made == kTuesday);
    REQUIRE(preview.settings);
    preview.take_settings = true;
    CHECK(put_back(here, preview) == 3);
    REQUIRE(here.recipes.size() == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(here.recipes[i].id == there.recipes[i].id);
        CHECK(here.recipes[i].recipe == there.recipes[i].recipe);
        CHECK(here.recipes[i].tags == there.recipes[i].tags);
        CHECK(here.recipes[i].binned == there.recipes[i].binned);
        CHECK(here.recipes[i].changed == kMonday);
    }
    CHECK(here.settings.theme == workspace::Theme::dark);
    CHECK(here.settings.scales == there.settings.scales);
    CHECK(here.settings.last_backup == kTuesday);
}

TEST_CASE("settings stay as they are here unless the file's are asked for") {
    workspace::Workspace here;
    const Preview preview = previewed(here, store::write_backup(bench(), {}, kTuesday));
    REQUIRE(preview.settings);
    CHECK_FALSE(preview.take_settings);
    put_back(here, preview);
    CHECK(here.settings.theme == workspace::Theme::system);
    CHECK_FALSE(workspace_backup::preview(bench(), {"", {}, bench().settings, {}}).settings);
}

TEST_CASE("what is here already is the same, and putting a backup back twice adds nothing") {
    workspace::Workspace here = bench();
    const std::string file = store::write_backup(here, {}, kTuesday);
    const workspace::Workspace before = here;
    const Preview preview = previewed(here, file);
    CHECK(preview.same == 3);
    CHECK(put_back(here, preview) == 0);
    CHECK(here == before);

    here.recipes[0].recipe.notes = "Firmer next time.";
    CHECK(put_back(here, previewed(here, file)) == 1);
    CHECK(here.recipes.size() == 4);
    CHECK(previewed(here, file).same == 3);
    CHECK(put_back(here, previewed(here, file)) == 0);
}

TEST_CASE("a recipe that differs is kept beside the one here, with a tag that tells it apart") {
    workspace::Workspace here = bench();
    const std::string file = store::write_backup(here, {}, kTuesday);
    here.recipes[0].recipe.notes = "Firmer next time.";
    Preview preview = previewed(here, file);
    CHECK(preview.changed == 1);
    CHECK(preview.same == 2);
    REQUIRE(preview.entries[0].state == State::changed);
    CHECK(preview.entries[0].choice == Choice::both);
    put_back(here, preview);
    CHECK(here.recipes[0].recipe.notes == "Firmer next time.");
    const workspace::Kept& beside = here.recipes.back();
    CHECK(beside.id == "new0");
    CHECK(beside.recipe == bench().recipes[0].recipe);
    CHECK(workspace_book::has_tag(beside, "from a backup"));
}

TEST_CASE("a recipe that differs stays as here, or becomes the file's, where that is chosen") {
    const std::string file = store::write_backup(bench(), {}, kTuesday);
    workspace::Workspace here = bench();
    here.recipes[0].recipe.notes = "Firmer next time.";
    here.recipes[0].saves = 9;
    here.open = "a1";
    Preview preview = previewed(here, file);
    preview.entries[0].choice = Choice::mine;
    const workspace::Workspace before = here;
    CHECK(put_back(here, preview) == 0);
    CHECK(here == before);
    preview.entries[0].choice = Choice::theirs;
    CHECK(put_back(here, preview) == 1);
    CHECK(here.recipes.size() == 3);
    CHECK(here.recipes[0].recipe == bench().recipes[0].recipe);
    CHECK(here.recipes[0].saves == 9);
    CHECK(here.open == "a1");
}

TEST_CASE("one that went to the bin here and is in the book there differs") {
    const std::string file = store::write_backup(bench(), {}, kTuesday);
    workspace::Workspace here = bench();
    workspace::bin(here, "b2", kFriday);
    Preview preview = previewed(here, file);
    CHECK(preview.changed == 1);
    preview.entries[1].choice = Choice::theirs;
    put_back(here, preview);
    CHECK(here.recipes[1].binned.empty());
}

TEST_CASE("records that cannot be read, or are of a kind nobody knows yet, are counted and kept as text") {
    std::string file = store::write_backup(bench(), {"7 bad0bad0 {\"half\":"}, kTuesday);
    const std::string unknown = R"({"tarebench":1,"kind":"harvest","apples":12})";
    const std::string broken = R"({"tarebench":1,"kind":"kept","id":"z9","saves":"many"})";
    file.insert(file.rfind("\n]}"), ",\n" + unknown + ",\n" + broken);
    const auto content = store::read_backup(file);
    REQUIRE(content);
    CHECK(content->recipes.size() == 3);
    CHECK(content->damaged == std::vector<std::string>{"7 bad0bad0 {\"half\":", unknown, broken});
}

TEST_CASE("a file that was cut off gives back every whole line, and the rest as text") {
    const std::string file = store::write_backup(bench(), {}, kTuesday);
    const std::size_t second = file.find("Market day salve");
    const auto content = store::read_backup(file.substr(0, second + 6));
    REQUIRE(content);
    REQUIRE(content->recipes.size() == 1);
    CHECK(content->recipes[0].recipe.title == "Orchard lip balm");
    REQUIRE(content->damaged.size() == 1);
    CHECK(content->damaged[0].find("Market") != std::string::npos);
    for (std::size_t length = 0; length < file.size(); length += 31)
        if (const auto some = store::read_backup(file.substr(0, length)))
            CHECK(some->recipes.size() + some->damaged.size() <= 4);
}

TEST_CASE("a letter changed by accident costs one record") {
    std::string file = store::write_backup(bench(), {}, kTuesday);
    file[file.find("\"title\":\"Market") + 7] = '\x01';
    const auto content = store::read_backup(file);
    REQUIRE(content);
    CHECK(content->recipes.size() == 2);
    CHECK(content->damaged.size() == 1);
}

TEST_CASE("a backup indented by an editor reads the same") {
    const std::string file = store::write_backup(bench(), {}, kTuesday);
    const std::string indented = nlohmann::ordered_json::parse(file).dump(2);
    CHECK(store::is_backup(indented));
    const auto content = store::read_backup(indented);
    REQUIRE(content);
    CHECK(content->recipes == store::read_backup(file)->recipes);
    CHECK(content->settings == bench().settings);
}

TEST_CASE("a newer backup, and what is no backup, is refused") {
    std::string file = store::write_backup(bench(), {}, kTuesday);
    file.replace(file.find("\"tarebench\":1"), 13, "\"tarebench\":2");
    CHECK(store::read_backup(file).error().code == Code::version_newer);
    CHECK(store::read_backup(R"({"tarebench_records":2,"records":{}})").error().code == Code::version_newer);
    CHECK(store::read_backup(R"({"tarebench":1,"kind":"backup"})").error().code == Code::field_missing);
    CHECK(store::read_backup(store::write_recipe(bench().recipes[0].recipe)).error().code ==
          Code::not_a_recipe);
    CHECK_FALSE(store::read_backup("Dear diary"));
    CHECK_FALSE(store::read_backup(""));
}

TEST_CASE("a backup is told from a recipe by its heading alone") {
    workspace::Recipe recipe = bench().recipes[0].recipe;
    recipe.title = R"("kind": "backup")";
    CHECK_FALSE(store::is_backup(store::write_recipe(recipe)));
    CHECK(store::is_backup(store::write_backup({}, {}, "")));
    CHECK(store::is_backup(R"( {"tarebench_records": 1, "records": {}})"));
    CHECK_FALSE(store::is_backup(R"({"kind":"formula","title":"backup"})"));
    CHECK_FALSE(store::is_backup(""));
}

TEST_CASE("ids of the file that are twice there, or that no key could hold, are not taken over") {
    workspace::Workspace there;
    there.recipes = {kept("a1", "One"), kept("a1", "Two"), kept("a1.b/../x", "Three")};
    workspace::Workspace here;
    const Preview preview = previewed(here, store::write_backup(there, {}, kTuesday));
    CHECK(preview.fresh == 3);
    put_back(here, preview);
    REQUIRE(here.recipes.size() == 3);
    CHECK(here.recipes[0].id == "a1");
    CHECK(here.recipes[1].id == "new1");
    CHECK(here.recipes[2].id == "new2");
}

TEST_CASE(
    "the file of the crash notice gives back every recipe that can be read and keeps the others as text") {
    workspace::Kept one = kept("1", "Lantern Street balm");
    const std::string older = store::write_record({1, store::write_kept(one)});
    one.recipe.title = "Lantern Street balm, firmer";
    one.tags = {"winter"};
    const std::string newer = store::write_record({2, store::write_kept(one)});
    const nlohmann::json file = {{"tarebench_records", 1},
                                 {"records",
                                  {{"tarebench:recipe:1.a", older},
                                   {"tarebench:recipe:1.b", newer},
                                   {"tarebench:recipe:2.a", newer.substr(0, 40)},
                                   {"tarebench:aside:recipe:3:77", "half a record"},
                                   {"tarebench:settings.a", "1 00000000 {}"}}}};
    CHECK(store::is_backup(file.dump()));
    const auto content = store::read_backup(file.dump());
    REQUIRE(content);
    REQUIRE(content->recipes.size() == 1);
    CHECK(content->recipes[0].recipe.title == "Lantern Street balm, firmer");
    CHECK(content->recipes[0].id == "1");
    CHECK(content->recipes[0].tags == std::vector<std::string>{"winter"});
    CHECK(content->damaged.size() == 3);
    CHECK_FALSE(store::read_backup("{\"records\":{}}"));
}

TEST_CASE("days since a backup are whole ones, over months and leap days") {
    using workspace_backup::days_between;
    CHECK(days_between(kTuesday, kFriday) == 3);
    CHECK(days_between("2026-11-24T23:59:59Z", "2026-11-25T00:00:01Z") == 0);
    CHECK(days_between("2024-02-28T12:00:00Z", "2024-03-01T12:00:00Z") == 2);
    CHECK(days_between("2026-12-31T00:00:00Z", "2027-01-01T00:00:00Z") == 1);
    CHECK(days_between("2000-01-01T00:00:00Z", "2026-01-01T00:00:00Z") == 9497);
    CHECK(days_between(kFriday, kTuesday) == 0);
    CHECK_FALSE(days_between("", kFriday));
    CHECK_FALSE(days_between("2026-13-01T00:00:00Z", kFriday));
    CHECK_FALSE(days_between("last Tuesday at noon", kFriday));
}

TEST_CASE("a backup is due when five recipes are in none, or one is and a month has gone by") {
    workspace::Workspace work;
    for (int i = 0; i < 4; ++i)
        work.recipes.push_back(kept("k" + std::to_string(i), "Trial"));
    CHECK(workspace_backup::not_in_backup(work) == 4);
    CHECK_FALSE(workspace_backup::due(work, kFriday));
    work.recipes.push_back(kept("k4", "Trial"));
    CHECK(workspace_backup::due(work, kFriday));
    work.settings.last_backup = kTuesday;
    CHECK(workspace_backup::not_in_backup(work) == 0);
    CHECK_FALSE(workspace_backup::due(work, "2027-11-27T10:30:00Z"));
    work.recipes[0].changed = kFriday;
    CHECK_FALSE(workspace_backup::due(work, "2026-12-20T00:00:00Z"));
    CHECK(workspace_backup::due(work, "2026-12-27T00:00:00Z"));
    work.recipes[0].binned = kFriday;
    CHECK_FALSE(workspace_backup::due(work, "2026-12-27T00:00:00Z"));
}

TEST_CASE("tags: kept as typed, never twice, within bounds, and away again") {
    workspace::Workspace work;
    work.recipes = {kept("a1", "Balm")};
    CHECK(workspace::tag(work, "a1", "  Winter   fair ").value() == "Winter fair");
    CHECK(workspace::tag(work, "a1", "WINTER FAIR").value() == "Winter fair");
    CHECK(workspace::tag(work, "a1", "\xC3\x96l").value() == "\xC3\x96l");
    CHECK(workspace::tag(work, "a1", "\xC3\xB6l").value() == "\xC3\x96l");
    CHECK(work.recipes[0].tags.size() == 2);
    CHECK(workspace::tag(work, "a1", " ").error().code == Code::name_empty);
    CHECK(workspace::tag(work, "a1", std::string(41, 'x')).error().code == Code::text_too_long);
    CHECK(workspace::tag(work, "zz", "x").error().code == Code::not_a_recipe);
    for (int i = 0; i < 10; ++i)
        CHECK(workspace::tag(work, "a1", "t" + std::to_string(i)));
    CHECK(workspace::tag(work, "a1", "one more").error().code == Code::too_many);
    CHECK(workspace::untag(work, "a1", "winter fair"));
    CHECK_FALSE(workspace::untag(work, "a1", "winter fair"));
    CHECK(store::read_kept(store::write_kept(work.recipes[0])).value() == work.recipes[0]);
}

TEST_CASE("the book is searched by title, ingredient, product kind and tag, every word counting") {
    workspace::Workspace work;
    work.recipes = {kept("a1",
                         "\xC3\x96"
                         "rtliche Salbe"),
                    kept("b2", "Market day salve"), kept("c3", "Bin")};
    work.recipes[0].tags = {"Gift"};
    work.recipes[0].recipe.formula.lines.clear();
    work.recipes[0].recipe.formula.lines.push_back({});
    work.recipes[0].recipe.formula.lines[0].name = "Plum kernel oil";
    work.recipes[2].binned = kMonday;
    const auto found = [&](const std::string& search, const std::string& tag = "") {
        std::string all;
        for (const auto* one : workspace_book::shown(work, shipped::presets().catalogue, {search, tag, {}}))
            all += one->id + " ";
        return all;
    };
    CHECK(found("") == "a1 b2 ");
    CHECK(found("\xC3\xB6rtl") == "a1 ");
    CHECK(found("plum KERNEL") == "a1 ");
    CHECK(found("gift") == "a1 ");
    CHECK(found("market gift").empty());
    CHECK(found("salve  market") == "b2 ");
    CHECK(found("", "GIFT") == "a1 ");
    CHECK(found("bin").empty());
    CHECK(workspace_book::tags(work) == std::vector<std::string>{"Gift"});
}

TEST_CASE("the book is sorted by change, title or product kind") {
    workspace::Workspace work;
    work.recipes = {kept("a1", "pear"), kept("b2", "Apple"), kept("c3", "quince")};
    work.recipes[0].recipe.product = "lip_balm";
    work.recipes[1].recipe.product = "nobody_knows";
    work.recipes[2].recipe.product = "lip_balm";
    work.recipes[1].changed = kTuesday;
    work.recipes[2].changed = kFriday;
    const auto order = [&](workspace::Sort sort) {
        std::string all;
        for (const auto* one : workspace_book::shown(work, shipped::presets().catalogue, {"", "", sort}))
            all += one->id + " ";
        return all;
    };
    CHECK(order(workspace::Sort::changed) == "c3 b2 a1 ");
    CHECK(order(workspace::Sort::title) == "b2 a1 c3 ");
    CHECK(order(workspace::Sort::product) == "c3 a1 b2 ");
}

TEST_CASE(
    "how the book is sorted, when it was last backed up and where one was come back with the settings") {
    workspace::Settings settings;
    settings.sort = workspace::Sort::title;
    settings.last_backup = kTuesday;
    const auto back = store::read_settings(store::write_settings(settings, "a1", "batch"));
    REQUIRE(back);
    CHECK(back->settings == settings);
    CHECK(back->place == "batch");
}

TEST_CASE(
    "own ingredients are in the backup; put back, they stand beside what is here and overwrite nothing") {
    const auto named = [](const char* name) {
        catalogue::Ingredient own;
        own.name = name;
        return own;
    };
    workspace::Workspace device;
    workspace::add_own(device, {}, named("Plum oil"), "2026-11-25T12:00:00Z");
    workspace::add_own(device, {}, named("Hazel oil"), "2026-11-25T12:00:00Z");
    workspace::bin_own(device, "own_hazel_oil", "2026-11-25T12:00:00Z");
    const std::string file = store::write_backup(device, {}, "2026-11-25T12:00:00Z");
    const auto preview_for = [&](const workspace::Workspace& on) {
        return workspace_backup::preview(on, store::read_backup(file).value());
    };
    CHECK(preview_for(device).own.empty());

    workspace::Workspace empty;
    CHECK(workspace_backup::put_back_own(empty, preview_for(empty), {}) == 2);
    REQUIRE(empty.own.size() == 2);
    CHECK(empty.own[0].ingredient.id == "own_hazel_oil");
    CHECK_FALSE(empty.own[0].binned.empty());
    CHECK(workspace_backup::put_back_own(empty, preview_for(empty), {}) == 0);

    workspace::Workspace other;
    catalogue::Ingredient plum = named("Plum oil");
    plum.source = "another stall";
    workspace::add_own(other, {}, plum, "2026-11-25T12:00:00Z");
    CHECK(workspace_backup::put_back_own(other, preview_for(other), {}) == 2);
    CHECK(workspace::find_own(other, "own_plum_oil")->ingredient.source == "another stall");
    CHECK(workspace::find_own(other, "own_plum_oil_2")->ingredient.source.empty());
}

TEST_CASE("a record in a file that no recipe could be is kept as text, not taken in") {
    workspace::Workspace device;
    workspace::Recipe recipe;
    recipe.title = std::string(workspace::kMostTitleBytes + 1, 'x');
    workspace::add(device, "balm", recipe, "2026-11-25T12:00:00Z");
    const auto content = store::read_backup(store::write_backup(device, {}, "")).value();
    CHECK(content.recipes.empty());
    CHECK(content.damaged.size() == 1);
}

}  // namespace test_backup
