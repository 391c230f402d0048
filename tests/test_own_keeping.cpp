// Own ingredients in the host's store: two keys in turn, as recipes have, and windows beside one another.
#include <string>

#include "doctest/doctest.h"
#include "engine/workspace_own.h"
#include "web/keeping.h"
#include "web/platform_native.h"

namespace test_own_keeping {

using keeping::Keeping;

namespace {

const char* const kNow = "2026-11-25T12:00:00Z";
const std::string kPlum = "tarebench:ingredient:own_plum_oil";

void deliver(Keeping& keeping) {
    for (const platform::Event& event : platform::take_events())
        keeping.receive(event);
}

struct Device {
    Device() {
        platform::native::start_over();
        platform::native::store().clear();
        platform::native::set_storage(platform::native::Storage::works);
    }
    std::map<std::string, std::string>& store = platform::native::store();
};

struct Page {
    Keeping keeping;
    workspace::Workspace work;
    Page() {
        keeping.start();
        deliver(keeping);
        work = keeping.take_loaded();
    }
    void save() {
        keeping.save_changes(work, kNow);
        deliver(keeping);
    }
    std::string add(const std::string& name) {
        catalogue::Ingredient own;
        own.name = name;
        return workspace::add_own(work, {}, own, kNow).value();
    }
    void change(const std::string& id, const std::string& source) {
        catalogue::Ingredient own = workspace::find_own(work, id)->ingredient;
        own.source = source;
        REQUIRE(workspace::set_own(work, own, kNow).ok());
    }
};

}  // namespace

TEST_CASE_FIXTURE(Device, "an own ingredient is written to two keys in turn and is there when opened again") {
    Page page;
    const std::string id = page.add("Plum oil");
    page.save();
    CHECK(store.count(kPlum + ".a") == 1);
    page.change(id, "paper with the bottle");
    page.save();
    CHECK(store.count(kPlum + ".b") == 1);
    CHECK(store::read_record(store[kPlum + ".b"]).value().saves == 2);
    const auto before = store;
    Page again;
    CHECK(again.work.own == page.work.own);
    again.save();
    CHECK(store == before);
}

TEST_CASE_FIXTURE(Device, "a torn record of an own ingredient is set aside and the older one opens") {
    Page page;
    const std::string id = page.add("Plum oil");
    page.save();
    page.change(id, "second");
    page.save();
    store[kPlum + ".b"].resize(40);
    Page again;
    REQUIRE(again.work.own.size() == 1);
    CHECK(again.work.own[0].ingredient.source.empty());
    CHECK(again.keeping.damaged().size() == 1);
}

TEST_CASE_FIXTURE(Device, "an own ingredient erased for good leaves no key behind") {
    Page page;
    const std::string id = page.add("Plum oil");
    page.save();
    workspace::bin_own(page.work, id, kNow);
    page.save();
    CHECK_FALSE(Page().work.own.front().binned.empty());
    workspace::erase_own(page.work, id);
    page.save();
    for (const auto& [key, text] : store)
        CHECK(key.rfind(kPlum, 0) != 0);
}

TEST_CASE_FIXTURE(Device, "an own ingredient that another window wrote is handed over and not written back") {
    Page here;
    const std::string id = here.add("Plum oil");
    here.save();
    workspace::KeptOwn theirs = *workspace::find_own(here.work, id);
    theirs.ingredient.source = "over there";
    theirs.saves = 2;
    platform::Event event;
    event.kind = platform::Kind::other_tab;
    event.key = kPlum + ".b";
    event.text = store::write_record({2, store::write_kept_own(theirs)});
    here.keeping.receive(event);
    const auto foreign = here.keeping.take_foreign_own();
    REQUIRE(foreign.size() == 1);
    CHECK(foreign[0] == theirs);
    here.keeping.adopt(theirs);
    workspace::put_own(here.work, theirs);
    const auto before = store;
    here.save();
    CHECK(store == before);
}

TEST_CASE_FIXTURE(Device,
                  "a save of an own ingredient that did not fit is tried again with the next change") {
    Page page;
    const std::string id = page.add("Plum oil");
    page.save();
    platform::native::set_storage(platform::native::Storage::full);
    page.change(id, "second");
    page.save();
    CHECK(page.keeping.trouble() == keeping::Trouble::full);
    platform::native::set_storage(platform::native::Storage::works);
    page.work.settings.theme = workspace::Theme::dark;
    page.save();
    CHECK(page.keeping.trouble() == keeping::Trouble::none);
    CHECK(Page().work.own.front().ingredient.source == "second");
}

}  // namespace test_own_keeping
