// Keeping the workspace in the host's store: two keys in turn, the higher counter wins, what is damaged is
// set aside, and what happens when the store is full or refuses. The form of a record is tested in
// test_store.cpp.
#include <set>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "web/keeping.h"
#include "web/platform_native.h"

namespace test_keeping {

using keeping::Keeping;
using keeping::Trouble;
using platform::native::Storage;

namespace {

constexpr const char* kNow = "2026-11-25T12:00:00Z";
constexpr const char* kLater = "2026-11-26T08:30:00Z";

void deliver(Keeping& keeping) {
    for (const platform::Event& event : platform::take_events())
        keeping.receive(event);
}

struct Device {
    Device() {
        platform::native::start_over();
        platform::native::store().clear();
        platform::native::set_storage(Storage::works);
    }
    std::map<std::string, std::string>& store = platform::native::store();
};

// The page, opened: what was kept, and the keeping that goes on from there.
struct Page {
    Keeping keeping;
    workspace::Workspace work;
    Page() {
        keeping.start();
        deliver(keeping);
        REQUIRE(keeping.loaded());
        work = keeping.take_loaded();
    }
    void save(const char* now = kNow) {
        keeping.save_changes(work, now);
        deliver(keeping);
    }
    workspace::Recipe& add(const std::string& id, const std::string& title) {
        workspace::Recipe recipe;
        recipe.title = title;
        workspace::add(work, id, recipe, kNow);
        return workspace::find(work, id)->recipe;
    }
    workspace::Recipe& recipe(const std::string& id) {
        REQUIRE(workspace::find(work, id) != nullptr);
        return workspace::find(work, id)->recipe;
    }
};

const std::string kBalm = "tarebench:recipe:balm";

std::set<std::string> keys_of_balm(const std::map<std::string, std::string>& store) {
    std::set<std::string> slots;
    for (const auto& [key, text] : store)
        if (key.rfind(kBalm, 0) == 0) slots.insert(key.substr(kBalm.size()));
    return slots;
}

std::uint64_t counter(const std::string& text) {
    return store::read_record(text).value().saves;
}

platform::Event from_other_tab(const std::string& key, const std::string& text) {
    platform::Event event;
    event.kind = platform::Kind::other_tab;
    event.key = key;
    event.text = text;
    return event;
}

std::string record_of(const workspace::Kept& kept) {
    return store::write_record({kept.saves, store::write_kept(kept)});
}

}  // namespace

TEST_CASE_FIXTURE(Device, "what is saved is there when the page is opened again") {
    Page first;
    first.add("balm", "Orchard lip balm");
    first.save();

    Page again;
    CHECK(again.recipe("balm").title == "Orchard lip balm");
    CHECK(again.work.open == "balm");
    CHECK(workspace::find(again.work, "balm")->changed == kNow);
}

TEST_CASE_FIXTURE(Device, "a recipe is written to two keys in turn, with a counter that grows") {
    Page page;
    page.add("balm", "one");
    page.save();
    CHECK(keys_of_balm(store) == std::set<std::string>{".a"});
    CHECK(counter(store[kBalm + ".a"]) == 1);
    page.recipe("balm").title = "two";
    page.save();
    CHECK(keys_of_balm(store) == std::set<std::string>{".a", ".b"});
    CHECK(counter(store[kBalm + ".b"]) == 2);
    page.recipe("balm").title = "three";
    page.save();
    CHECK(counter(store[kBalm + ".a"]) == 3);
    CHECK(counter(store[kBalm + ".b"]) == 2);
    CHECK(Page().recipe("balm").title == "three");
}

TEST_CASE_FIXTURE(Device, "the turn goes on after the page was opened again") {
    Page first;
    first.add("balm", "one");
    first.save();
    Page again;
    again.recipe("balm").title = "two";
    again.save();
    CHECK(counter(store[kBalm + ".a"]) == 1);
    CHECK(counter(store[kBalm + ".b"]) == 2);
}

TEST_CASE_FIXTURE(Device, "nothing is written when nothing changed") {
    Page page;
    page.add("balm", "one");
    page.save();
    const auto before = store;
    page.save(kLater);
    CHECK(store == before);
    Page again;
    again.save(kLater);
    CHECK(store == before);
}

TEST_CASE_FIXTURE(Device, "a save counts on the recipe and dates it; the others stay as they were") {
    Page page;
    page.add("balm", "one");
    page.add("salve", "other");
    page.save();
    page.recipe("balm").notes = "softer in August";
    page.save(kLater);
    CHECK(workspace::find(page.work, "balm")->saves == 2);
    CHECK(workspace::find(page.work, "balm")->changed == kLater);
    CHECK(workspace::find(page.work, "salve")->saves == 1);
    CHECK(workspace::find(page.work, "salve")->changed == kNow);
}

TEST_CASE_FIXTURE(Device, "the recipe changed last comes first in the book") {
    Page page;
    page.add("balm", "one");
    page.add("salve", "other");
    page.save();
    page.recipe("balm").notes = "again";
    page.save(kLater);
    CHECK(Page().work.recipes.front().id == "balm");
}

TEST_CASE_FIXTURE(Device,
                  "when the newer record is damaged the older one opens and the damaged one is shown") {
    Page page;
    page.add("balm", "one");
    page.save();
    page.recipe("balm").title = "two";
    page.save();
    const std::string torn = store[kBalm + ".b"].substr(0, 60);
    store[kBalm + ".b"] = torn;

    Page again;
    CHECK(again.recipe("balm").title == "one");
    REQUIRE(again.keeping.damaged().size() == 1);
    CHECK(again.keeping.damaged()[0].text == torn);
}

TEST_CASE_FIXTURE(Device, "what is damaged is still there after many saves and openings") {
    Page page;
    page.add("balm", "one");
    page.save();
    page.recipe("balm").title = "two";
    page.save();
    const std::string torn = store[kBalm + ".b"].substr(0, 60);
    store[kBalm + ".b"] = torn;
    for (const char* title : {"three", "four", "five"}) {
        Page again;
        again.recipe("balm").title = title;
        again.save();
        again.recipe("balm").notes = title;
        again.save();
    }
    Page last;
    CHECK(last.recipe("balm").title == "five");
    REQUIRE(last.keeping.damaged().size() == 1);
    CHECK(last.keeping.damaged()[0].text == torn);
}

TEST_CASE_FIXTURE(Device, "a damaged record goes when the person has it and says so") {
    store[kBalm + ".a"] = "3 00000000 {}";
    Page page;
    REQUIRE(page.keeping.damaged().size() == 1);
    page.keeping.forget_damaged();
    CHECK(page.keeping.damaged().empty());
    CHECK(Page().keeping.damaged().empty());
    CHECK(store.empty());
}

TEST_CASE_FIXTURE(Device,
                  "settings of which nothing can be read are shown and today's are kept beside them") {
    const std::string newer = store::write_record({4, R"({"tarebench":9,"kind":"settings"})"});
    store["tarebench:settings.a"] = newer;
    Page page;
    CHECK(page.work.settings == workspace::Settings{});
    REQUIRE(page.keeping.damaged().size() == 1);
    page.work.settings.theme = workspace::Theme::dark;
    page.save();
    page.work.settings.theme = workspace::Theme::light;
    page.save();
    Page again;
    CHECK(again.work.settings.theme == workspace::Theme::light);
    CHECK(again.keeping.damaged().size() == 1);
}

TEST_CASE_FIXTURE(Device,
                  "settings with a damaged maker are set aside whole, so that what was entered is not lost") {
    workspace::Settings settings;
    settings.maker.name = std::string(label::kMostLineBytes + 1, 'w');
    store["tarebench:settings.a"] = store::write_record({4, store::write_settings(settings, "")});
    Page page;
    CHECK(page.work.settings == workspace::Settings{});
    REQUIRE(page.keeping.damaged().size() == 1);
    CHECK(page.keeping.damaged().front().text.find(settings.maker.name) != std::string::npos);
}

TEST_CASE_FIXTURE(Device, "settings are kept, with the recipe that is open") {
    Page page;
    page.add("balm", "one");
    page.add("salve", "other");
    page.work.open = "balm";
    page.work.settings.sign = workspace::DecimalSign::comma;
    page.work.settings.scales = {{"kitchen", {10000}, {50000000}}};
    page.save();
    Page again;
    CHECK(again.work.settings == page.work.settings);
    CHECK(again.work.open == "balm");
}

TEST_CASE_FIXTURE(Device, "what is deleted for good leaves no key behind") {
    Page page;
    page.add("balm", "one");
    page.save();
    page.recipe("balm").title = "two";
    page.save();
    workspace::bin(page.work, "balm", kNow);
    page.save();
    CHECK_FALSE(keys_of_balm(store).empty());
    CHECK_FALSE(workspace::find(Page().work, "balm")->binned.empty());
    workspace::erase_binned(page.work, "balm");
    page.save();
    CHECK(keys_of_balm(store).empty());
    CHECK(Page().work.recipes.empty());
}

TEST_CASE_FIXTURE(Device, "a full store is told once, and tried again with the next change, not before") {
    Page page;
    page.add("balm", "one");
    page.save();
    platform::native::set_storage(Storage::full);
    page.recipe("balm").title = "two";
    page.save();
    CHECK(page.keeping.trouble() == Trouble::full);
    page.keeping.save_changes(page.work, kNow);
    CHECK(platform::take_events().empty());  // or a full store would keep the page busy for ever
    platform::native::set_storage(Storage::works);
    page.recipe("balm").title = "three";
    page.save();
    CHECK(page.keeping.trouble() == Trouble::none);
    CHECK(Page().recipe("balm").title == "three");
}

TEST_CASE_FIXTURE(Device, "what did not fit is written once a change elsewhere has made room") {
    Page page;
    page.add("balm", "one");
    page.add("salve", "other");
    page.save();
    platform::native::set_storage(Storage::full);
    page.recipe("balm").title = "two";
    page.save();
    platform::native::set_storage(Storage::works);
    workspace::bin(page.work, "salve", kNow);
    page.save();
    workspace::erase_binned(page.work, "salve");
    page.save();
    CHECK(page.keeping.trouble() == Trouble::none);
    CHECK(Page().recipe("balm").title == "two");
}

TEST_CASE_FIXTURE(Device,
                  "a save that fails does not take the turn: the valid record is never written over") {
    Page page;
    page.add("balm", "one");
    page.save();  // a: 1
    page.recipe("balm").title = "two";
    page.save();  // b: 2
    const std::string newest = store[kBalm + ".b"];
    platform::native::set_storage(Storage::full);
    for (const char* title : {"three", "four", "five"}) {
        page.recipe("balm").title = title;
        page.save();
    }
    platform::native::set_storage(Storage::works);
    page.recipe("balm").title = "six";
    page.save();
    CHECK(store[kBalm + ".b"] == newest);
    CHECK(Page().recipe("balm").title == "six");
}

TEST_CASE_FIXTURE(Device, "one record that was kept does not hide another that was not") {
    Page page;
    page.add("balm", "one");
    page.add("salve", "other");
    page.save();
    platform::Event failed;
    failed.kind = platform::Kind::save_failed;
    failed.key = kBalm + ".b";
    failed.text = "full";
    page.keeping.receive(failed);
    platform::Event kept;
    kept.kind = platform::Kind::saved;
    kept.key = "tarebench:recipe:salve.a";
    page.keeping.receive(kept);
    CHECK(page.keeping.trouble() == Trouble::full);
}

TEST_CASE_FIXTURE(Device, "settings that did not fit are tried again") {
    Page page;
    platform::native::set_storage(Storage::full);
    page.work.settings.theme = workspace::Theme::dark;
    page.save();
    CHECK(page.keeping.trouble() == Trouble::full);
    platform::native::set_storage(Storage::works);
    page.add("balm", "one");
    page.work.open.clear();
    page.save();
    CHECK(page.keeping.trouble() == Trouble::none);
    CHECK(Page().work.settings.theme == workspace::Theme::dark);
}

TEST_CASE_FIXTURE(Device, "where nothing can be stored the page works and says so") {
    platform::native::set_storage(Storage::refuses);
    Page page;
    CHECK(page.keeping.trouble() == Trouble::refused);
    page.add("balm", "one");
    page.save();
    page.keeping.save_changes(page.work, kNow);
    CHECK(platform::take_events().empty());
    CHECK(page.keeping.trouble() == Trouble::refused);
    CHECK(page.recipe("balm").title == "one");
}

TEST_CASE_FIXTURE(Device, "a recipe that another tab wrote is handed over and not written back") {
    Page here, there;
    here.add("balm", "one");
    here.save();
    workspace::Kept theirs = *workspace::find(here.work, "balm");
    theirs.recipe.title = "two, over there";
    theirs.saves = 2;
    here.keeping.receive(from_other_tab(kBalm + ".b", record_of(theirs)));
    auto foreign = here.keeping.take_foreign();
    REQUIRE(foreign.size() == 1);
    CHECK(foreign[0].recipe.title == "two, over there");
    CHECK(foreign[0].saves == 2);
    here.keeping.adopt(foreign[0]);
    *workspace::find(here.work, "balm") = foreign[0];
    const auto before = store;
    here.save(kLater);
    CHECK(store == before);

    here.recipe("balm").title = "three";
    here.save(kLater);
    CHECK(counter(store[kBalm + ".a"]) == 3);
}

TEST_CASE_FIXTURE(Device, "another tab's older or torn record changes nothing") {
    Page page;
    page.add("balm", "one");
    page.save();
    page.recipe("balm").title = "two";
    page.save();
    workspace::Kept theirs = *workspace::find(page.work, "balm");
    theirs.recipe.title = "old";
    theirs.saves = 1;
    page.keeping.receive(from_other_tab(kBalm + ".a", record_of(theirs)));
    page.keeping.receive(from_other_tab(kBalm + ".a", "9 00000000 {}"));
    page.keeping.receive(from_other_tab(kBalm + ".a", ""));
    page.keeping.receive(from_other_tab("someone:else.a", "text"));
    CHECK(page.keeping.take_foreign().empty());
}

// The same recipe, changed in another window that had not seen ours.
workspace::Kept over_there(const Page& page, const std::string& title, std::uint64_t saves) {
    workspace::Kept theirs = *workspace::find(page.work, "balm");
    theirs.recipe.title = title;
    theirs.saves = saves;
    return theirs;
}

TEST_CASE_FIXTURE(Device,
                  "another window's save is never written over: ours waits and is handed back beside it") {
    Page page;
    page.add("balm", "one");
    page.save();
    const std::string theirs = record_of(over_there(page, "two, over there", 2));
    platform::native::write_next_door(kBalm + ".b", theirs);
    page.recipe("balm").title = "two, over here";
    page.save();
    CHECK(store[kBalm + ".b"] == theirs);
    const auto losers = page.keeping.take_losers();
    REQUIRE(losers.size() == 1);
    CHECK(losers[0].ours);
    CHECK(losers[0].kept.recipe.title == "two, over here");
    const auto foreign = page.keeping.take_foreign();
    REQUIRE(foreign.size() == 1);
    page.keeping.adopt(foreign[0]);
    *workspace::find(page.work, "balm") = foreign[0];
    page.recipe("balm").title = "three";
    page.save();
    CHECK(counter(store[kBalm + ".a"]) == 3);
    CHECK(Page().recipe("balm").title == "three");
}

TEST_CASE_FIXTURE(Device, "so it is where the other window is several saves ahead") {
    Page page;
    page.add("balm", "one");
    page.save();
    for (const std::uint64_t saves : {2, 3, 4})
        platform::native::write_next_door(
            kBalm + (saves % 2 == 0 ? ".b" : ".a"),
            record_of(over_there(page, "theirs " + std::to_string(saves), saves)));
    page.recipe("balm").title = "ours";
    page.save();
    const auto losers = page.keeping.take_losers();
    REQUIRE(losers.size() == 1);
    CHECK(losers[0].kept.recipe.title == "ours");
    CHECK(page.keeping.take_foreign().back().recipe.title == "theirs 4");
    CHECK(Page().recipe("balm").title == "theirs 4");
}

TEST_CASE_FIXTURE(
    Device, "two windows that save at the same moment: the one written over learns of it and loses nothing") {
    Page page;
    page.add("balm", "one");
    page.save();
    page.recipe("balm").title = "two, over here";
    page.save();
    store[kBalm + ".b"] = record_of(over_there(page, "two, over there", 2));
    page.keeping.receive(from_other_tab(kBalm + ".b", store[kBalm + ".b"]));
    const auto losers = page.keeping.take_losers();
    REQUIRE(losers.size() == 1);
    CHECK(losers[0].ours);
    CHECK(losers[0].kept.recipe.title == "two, over here");
    CHECK(page.keeping.take_foreign().at(0).recipe.title == "two, over there");
}

TEST_CASE_FIXTURE(Device, "the same change made in both windows is no conflict") {
    Page page;
    page.add("balm", "one");
    page.save();
    platform::native::write_next_door(kBalm + ".b", record_of(over_there(page, "two", 2)));
    page.recipe("balm").title = "two";
    page.save();
    CHECK(page.keeping.take_losers().empty());
    CHECK(page.keeping.take_foreign().empty());
    CHECK(Page().recipe("balm").title == "two");
}

TEST_CASE_FIXTURE(Device,
                  "an older record that went over our newest is kept beside it, and ours is written again") {
    Page page;
    page.add("balm", "one");
    for (const char* title : {"two", "three", "four"}) {
        page.recipe("balm").title = title;
        page.save();
    }  // a: 3 "four", b: 2
    store[kBalm + ".a"] = record_of(over_there(page, "late", 1));
    page.keeping.receive(from_other_tab(kBalm + ".a", store[kBalm + ".a"]));
    const auto losers = page.keeping.take_losers();
    REQUIRE(losers.size() == 1);
    CHECK_FALSE(losers[0].ours);
    CHECK(losers[0].kept.recipe.title == "late");
    page.save();
    CHECK(Page().recipe("balm").title == "four");
}

TEST_CASE_FIXTURE(Device, "what did not fit here is not lost to what another window wrote") {
    Page page;
    page.add("balm", "one");
    page.save();
    platform::native::set_storage(Storage::full);
    page.recipe("balm").title = "ours, unsaved";
    page.save();
    page.keeping.receive(from_other_tab(kBalm + ".b", record_of(over_there(page, "theirs", 7))));
    const auto losers = page.keeping.take_losers();
    REQUIRE(losers.size() == 1);
    CHECK(losers[0].kept.recipe.title == "ours, unsaved");
}

TEST_CASE_FIXTURE(Device, "settings changed in two windows: the later ones hold, at the second try") {
    Page page;
    page.work.settings.theme = workspace::Theme::dark;
    page.save();
    workspace::Settings theirs;
    theirs.sign = workspace::DecimalSign::comma;
    platform::native::write_next_door("tarebench:settings.b",
                                      store::write_record({2, store::write_settings(theirs, "")}));
    page.work.settings.theme = workspace::Theme::light;
    page.save();
    page.save();
    CHECK(Page().work.settings.theme == workspace::Theme::light);
}

TEST_CASE_FIXTURE(Device, "what a file brought and could not be read stands with the damaged records") {
    Page page;
    page.keeping.keep_aside("half a record");
    page.keeping.keep_aside("half a record");
    Page again;
    REQUIRE(again.keeping.damaged().size() == 1);
    CHECK(again.keeping.damaged()[0].text == "half a record");
    again.keeping.forget_damaged();
    CHECK(Page().keeping.damaged().empty());
}

TEST_CASE_FIXTURE(Device, "a recipe out of a backup keeps its instant of change") {
    Page page;
    page.add("balm", "one");
    workspace::find(page.work, "balm")->changed = "2026-01-02T03:04:05Z";
    page.save(kLater);
    CHECK(workspace::find(page.work, "balm")->changed == "2026-01-02T03:04:05Z");
    page.recipe("balm").title = "two";
    page.save(kLater);
    CHECK(workspace::find(page.work, "balm")->changed == kLater);
}

TEST_CASE_FIXTURE(Device, "tags and the place where one was are kept") {
    Page page;
    page.add("balm", "one");
    page.save();
    CHECK(workspace::tag(page.work, "balm", "winter"));
    page.work.place = "batch";
    page.save();
    Page again;
    CHECK(workspace::find(again.work, "balm")->tags == std::vector<std::string>{"winter"});
    CHECK(again.work.place == "batch");
}

TEST_CASE_FIXTURE(Device, "settings another tab wrote are not lost to counters that fell behind") {
    Page here, there;
    for (const workspace::Theme theme :
         {workspace::Theme::dark, workspace::Theme::light, workspace::Theme::dark}) {
        there.work.settings.theme = theme;
        there.save();
        for (const char* slot : {".a", ".b"}) {
            const std::string key = std::string("tarebench:settings") + slot;
            if (store.count(key)) here.keeping.receive(from_other_tab(key, store[key]));
        }
    }
    here.work.settings.sign = workspace::DecimalSign::comma;
    here.save();
    CHECK(Page().work.settings.sign == workspace::DecimalSign::comma);
}

TEST_CASE_FIXTURE(Device, "keys of other programs and of forms not known are left alone") {
    store["tarebench:recipe:.a"] = "x";
    store["tarebench:recipe:balm.c"] = "x";
    store["tarebench:later"] = "x";
    const auto before = store;
    Page page;
    CHECK(page.work.recipes.empty());
    CHECK(page.keeping.damaged().empty());
    page.add("salve", "one");
    page.save();
    for (const auto& [key, text] : before)
        CHECK(store[key] == text);
}

}  // namespace test_keeping
