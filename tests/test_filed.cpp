// What is filed beside the book, batch records, lots and versions: its form in the store (with one frozen
// sample of each), damage, backup, two windows, and the edits on it.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/door.h"
#include "engine/store.h"
#include "engine/workspace_backup.h"
#include "engine/workspace_lots.h"
#include "engine/workspace_records.h"
#include "engine/workspace_versions.h"
#include "shipped.h"
#include "web/keeping.h"
#include "web/platform_native.h"

namespace test_filed {

using quantity::grams;
using record::Entry;
using record::Kind;
using record::Record;
using result::Code;
using workspace::Filed;
using workspace::Workspace;

namespace {

constexpr const char* kMonday = "2026-11-23T09:00:00Z";
constexpr const char* kFriday = "2026-11-27T09:00:00Z";
constexpr const char* kSamples[] = {"v1_batch_record.json", "v1_lot.json", "v1_version.json",
                                    "v1_lot_counted.json"};

Record record_of_balm(const char* number) {
    Record record;
    record.number = number;
    record.day = "2026-11-26";
    record.recipe = "balm";
    record.title = "Orchard lip balm";
    record::Weighed wax;
    wax.ingredient = "beeswax_yellow";
    wax.name = "Beeswax, yellow";
    wax.percent = quantity::percent(100);
    wax.planned = grams(20);
    record.lines = {wax};
    return record;
}

Entry remark(const char* id, const char* text) {
    Entry entry;
    entry.id = id;
    entry.day = "2026-11-26";
    entry.text = text;
    return entry;
}

Workspace book() {
    Workspace work;
    workspace::add(work, "balm", shipped::recipe("orchard_lip_balm"), kMonday);
    return work;
}

std::string add(Workspace& work, Record record, const char* id) {
    const auto made = workspace::add_record(work, std::move(record), shipped::recipe("orchard_lip_balm"),
                                            {id, std::string("v") + id}, kMonday);
    REQUIRE(made);
    return *made;
}

lot::Lot wax_lot(const char* number) {
    lot::Lot lot;
    lot.ingredient = "beeswax_yellow";
    lot.number = number;
    return lot;
}

workspace_backup::Preview previewed(const Workspace& here, const std::string& file) {
    const auto content = store::read_backup(file);
    REQUIRE(content);
    return workspace_backup::preview(here, *content);
}

// The page, opened on what is stored.
struct Page {
    keeping::Keeping keeping;
    Workspace work;
    Page() {
        keeping.start();
        deliver();
        work = keeping.take_loaded();
    }
    void deliver() {
        for (const platform::Event& event : platform::take_events())
            keeping.receive(event);
    }
    void save() {
        keeping.save_changes(work, kMonday);
        deliver();
    }
    void take_foreign() {  // as the app does
        for (Filed& theirs : keeping.take_foreign_filed()) {
            keeping.adopt(theirs);
            workspace::take_filed(work, std::move(theirs));
        }
    }
};

struct Device {
    Device() {
        platform::native::start_over();
        platform::native::store().clear();
        platform::native::set_storage(platform::native::Storage::works);
    }
    std::map<std::string, std::string>& store = platform::native::store();
};

}  // namespace

TEST_CASE("a record is filed with a number nobody has and the version of the recipe it was made by") {
    Workspace work = book();
    const std::string id = add(work, record_of_balm(""), "r1");
    const Record* record = workspace::find_record(work, id);
    REQUIRE(record != nullptr);
    CHECK(record->number == "20261126-1");
    const workspace::Version* version = workspace::find_version(work, record->version);
    REQUIRE(version != nullptr);
    CHECK(version->recipe == shipped::recipe("orchard_lip_balm"));
    CHECK(version->frozen);
    const std::string version_id = record->version;
    const std::string next = add(work, record_of_balm(""), "r2");
    CHECK(workspace::find_record(work, next)->number == "20261126-2");
    CHECK(workspace::find_record(work, next)->version == version_id);
    CHECK(workspace::versions_of(work, "balm").size() == 1);
}

TEST_CASE("a batch number that another record has is refused, when it is filed and when it is corrected") {
    Workspace work = book();
    add(work, record_of_balm("A-1"), "r1");
    const auto twice = workspace::add_record(work, record_of_balm("a -1"), {}, {"r2", "v2"}, kMonday);
    REQUIRE_FALSE(twice);
    CHECK(twice.error().code == Code::preset_duplicate);
    add(work, record_of_balm("A-2"), "r2");
    Entry number = remark("e1", "A-1");
    number.kind = Kind::number;
    CHECK_FALSE(workspace::add_entry(work, "r2", number, kFriday));
    number.text = "A-3";
    CHECK(workspace::add_entry(work, "r2", number, kFriday));
    CHECK(workspace::next_batch_number(work, "2026-11-26", "") == "20261126-1");
    add(work, record_of_balm("A-2"), "r3");  // nobody has it any more
}

TEST_CASE("records stand in the order of their days, and are found by any word in them") {
    Workspace work = book();
    add(work, record_of_balm("A-1"), "r1");
    Record later = record_of_balm("A-2");
    later.day = "2026-11-27";
    later.lines[0].lot = "BW-7";
    add(work, later, "r2");
    add(work, record_of_balm("A-3"), "r3");
    std::vector<std::string> ids;
    for (const Filed* filed : workspace::records(work))
        ids.push_back(filed->id);
    CHECK(ids == std::vector<std::string>{"r2", "r3", "r1"});
    CHECK(workspace::records_found(work, "bw-7").size() == 1);
    CHECK(workspace::records_found(work, "ORCHARD a-3").front()->id == "r3");
    CHECK(workspace::records_found(work, "").size() == 3);
    CHECK(workspace::records_found(work, "lavender").empty());
}

TEST_CASE("what a record begins with is the batch as planned; nothing is said to have been weighed") {
    workspace::Recipe recipe = shipped::recipe("kitchen_garden_hand_lotion");
    recipe.batch.amount = batch::Amount::grams;
    recipe.batch.grams = grams(200);
    const auto& catalogue = shipped::presets().catalogue;
    const auto made = batch::make(recipe.formula, recipe.batch, catalogue, recipe.product);
    REQUIRE(made);
    const Record record = workspace::record_of(recipe, "lotion", *made, catalogue);
    CHECK(record.lines.size() == recipe.formula.lines.size());
    CHECK(record.with_water);
    quantity::Mass planned;
    for (const record::Weighed& line : record.lines) {
        planned = planned + line.planned;
        CHECK_FALSE(line.weighed.has_value());
        CHECK_FALSE(line.name.empty());
    }
    CHECK(planned == made->total);
}

TEST_CASE("lots are added, corrected and used up; the number before a correction is still found") {
    Workspace work = book();
    REQUIRE(workspace::add_lot(work, wax_lot("BW-1"), "l1", kMonday));
    lot::Lot right = wax_lot("BW-7");
    right.best_before = "2027-07-31";
    REQUIRE(workspace::set_lot(work, "l1", right, kFriday));
    CHECK(lot::numbers(*workspace::find_lot(work, "l1")) == std::vector<std::string>{"BW-7", "BW-1"});
    CHECK(workspace::only_lot(work, "beeswax_yellow") == workspace::Choice{"BW-7", "2027-07-31"});
    CHECK_FALSE(workspace::add_lot(work, wax_lot("bw-7"), "l2", kMonday));
    CHECK_FALSE(workspace::add_lot(work, wax_lot(""), "l2", kMonday));
    lot::Lot sooner = wax_lot("BW-5");
    sooner.best_before = "2027-01-31";
    REQUIRE(workspace::add_lot(work, sooner, "l2", kMonday));
    CHECK(workspace::lots_of(work, "beeswax_yellow").front()->id == "l2");
    CHECK_FALSE(workspace::only_lot(work, "beeswax_yellow").has_value());
    sooner.used_up = "2026-11-27";
    REQUIRE(workspace::set_lot(work, "l2", sooner, kFriday));
    CHECK(workspace::lots_of(work, "beeswax_yellow").back()->id == "l2");
    CHECK(workspace::lots_for(work, "beeswax_yellow").size() == 1);
    CHECK(workspace::lots_for(work, "jojoba").empty());
}

TEST_CASE("the batches of a made part are offered as its lots") {
    Workspace work = book();
    Record infusion = record_of_balm("M-1");
    infusion.makes = "own_marigold";
    add(work, infusion, "r1");
    CHECK(workspace::only_lot(work, "own_marigold") == workspace::Choice{"M-1", ""});
}

TEST_CASE("frozen samples of format 1 are read, and written again letter for letter") {
    for (const char* sample : kSamples) {
        const std::string text = shipped::data(sample);
        const auto filed = store::read_filed(text);
        REQUIRE_MESSAGE(filed, sample);
        CHECK(store::write_filed(*filed) == text);
        CHECK_FALSE(workspace::fault_of(*filed).has_value());
    }
    const Filed filed = store::read_filed(shipped::data(kSamples[0])).value();
    const record::State state = record::state_of(std::get<Record>(filed.what));
    CHECK(state.number == "L-1");
    CHECK(state.who == "Wren");
    CHECK(state.total == quantity::Mass{2003000});
    CHECK(state.left == 0);
    CHECK(record::missing(std::get<Record>(filed.what), state).empty());
}

TEST_CASE("every cut and every changed letter of a stored record is noticed") {
    for (const char* sample : kSamples) {
        const std::string json = shipped::data(sample);
        const std::string stored = store::write_record({7, json});
        for (std::size_t i = 0; i < stored.size(); i += 13) {
            CHECK_FALSE(store::read_record(stored.substr(0, i)));
            std::string other = stored;
            other[i] = other[i] == '7' ? '8' : '7';
            CHECK_FALSE(store::read_record(other));
        }
        for (std::size_t i = 0; i < json.size(); i += 7)
            CHECK_FALSE(store::read_filed(json.substr(0, i)));
    }
}

TEST_CASE("a kind, a key or a format that is not known is refused by name") {
    const auto refused = [](std::string text, const std::string& what, const std::string& by) {
        text.replace(text.find(what), what.size(), by);
        const auto filed = store::read_filed(text);
        REQUIRE_FALSE(filed);
        return filed.error();
    };
    const std::string record = shipped::data(kSamples[0]), lot = shipped::data(kSamples[1]);
    CHECK(refused(record, "\"ph\",", "\"weather\",").code == Code::field_unknown_value);
    CHECK(refused(record, "\"celsius\"", "\"grams\"").place == "entries[1].grams");
    CHECK(refused(record, "\"tarebench\":1", "\"tarebench\":2").code == Code::version_newer);
    CHECK(refused(lot, "\"kind\":\"lot\"", "\"kind\":\"plot\"").code == Code::field_unknown_value);
    CHECK(refused(lot, "\"supplier\"", "\"seller\"").place == "seller");
}

TEST_CASE_FIXTURE(Device,
                  "what is filed is there when the page is opened again, each under a key of its own") {
    Page first;
    first.work = book();
    add(first.work, record_of_balm("A-1"), "r1");
    REQUIRE(workspace::add_lot(first.work, wax_lot("BW-7"), "l1", kMonday));
    first.save();
    for (const char* key : {"tarebench:record:r1.a", "tarebench:lot:l1.a", "tarebench:version:vr1.a"})
        CHECK(store.count(key) == 1);
    const auto before = store;
    first.save();
    CHECK(store == before);
    Page again;
    REQUIRE(again.work.filed.size() == 3);
    for (std::size_t i = 0; i < 3; ++i)
        CHECK(again.work.filed[i].what == first.work.filed[i].what);
    again.save();
    CHECK(store == before);
    REQUIRE(workspace::add_entry(again.work, "r1", remark("e1", "clear"), kFriday));
    again.save();
    CHECK(store.count("tarebench:record:r1.b") == 1);
    CHECK(workspace::find_record(Page().work, "r1")->entries.size() == 1);
}

TEST_CASE_FIXTURE(Device, "a damaged record gives way to the one before it and is shown") {
    Page first;
    first.work = book();
    add(first.work, record_of_balm("A-1"), "r1");
    first.save();
    REQUIRE(workspace::add_entry(first.work, "r1", remark("e1", "clear"), kFriday));
    first.save();
    std::string& newer = store["tarebench:record:r1.b"];
    newer = newer.substr(0, newer.size() / 2);
    Page again;
    CHECK(workspace::find_record(again.work, "r1")->entries.empty());
    REQUIRE(again.keeping.damaged().size() == 1);
    CHECK(again.keeping.damaged()[0].text == newer);
}

TEST_CASE_FIXTURE(Device,
                  "two windows add to one record without knowing of each other: it has both entries") {
    Page here;
    here.work = book();
    add(here.work, record_of_balm("A-1"), "r1");
    here.save();
    Page there;
    REQUIRE(workspace::add_entry(there.work, "r1", remark("e1", "from there"), kMonday));
    there.save();
    REQUIRE(workspace::add_entry(here.work, "r1", remark("e2", "from here"), kFriday));
    platform::Event event;
    event.kind = platform::Kind::other_tab;
    event.key = "tarebench:record:r1.b";
    event.text = store[event.key];
    here.keeping.receive(event);
    here.take_foreign();
    here.save();
    CHECK(workspace::find_record(here.work, "r1")->entries.size() == 2);
    CHECK(workspace::find_record(Page().work, "r1")->entries.size() == 2);
}

TEST_CASE(
    "a backup holds what is filed; put back twice it adds nothing, and entries of both sides are kept") {
    Workspace there = book();
    add(there, record_of_balm("A-1"), "r1");
    REQUIRE(workspace::add_lot(there, wax_lot("BW-7"), "l1", kMonday));
    Workspace here = there;
    const std::string before = store::write_backup(there, {}, kFriday);
    Workspace empty;
    auto preview = previewed(empty, before);
    CHECK(preview.filed.size() == 3);
    CHECK(workspace_backup::put_back_filed(empty, preview) == 3);
    CHECK(workspace::find_record(empty, "r1") != nullptr);
    CHECK(previewed(empty, before).filed.empty());

    REQUIRE(workspace::add_entry(there, "r1", remark("e1", "from there"), kMonday));
    REQUIRE(workspace::add_entry(here, "r1", remark("e2", "from here"), kFriday));
    preview = previewed(here, store::write_backup(there, {}, kFriday));
    REQUIRE(preview.filed.size() == 1);
    CHECK(workspace_backup::put_back_filed(here, preview) == 1);
    CHECK(workspace::find_record(here, "r1")->entries.size() == 2);
}

TEST_CASE("what a backup has of records in any hands' work is kept aside when it cannot be one") {
    std::string file = "{\"tarebench\":1,\"kind\":\"backup\",\"made\":\"\",\"records\":[\n";
    std::string record = shipped::data(kSamples[0]);
    const std::string day = "\"day\":\"2026-11-26\"";
    record.replace(record.find(day), day.size(), "\"day\":\"a Thursday\"");
    std::string lot = shipped::data(kSamples[1]);
    lot.replace(lot.find("51be07"), 6, "../../");
    const auto content = store::read_backup(file + record + ",\n" + lot + "\n]}\n");
    REQUIRE(content);
    CHECK(content->filed.empty());
    CHECK(content->damaged.size() == 2);
}

TEST_CASE("the command line tells of a backup which batches each lot went into and where those went") {
    Workspace work = book();
    Record record = record_of_balm("A-1");
    record.lines[0].lot = "BW-7";
    add(work, record, "r1");
    Entry sent = remark("e1", "the market stall");
    sent.kind = Kind::sent;
    sent.figure = 4 * decimal::kOne;
    REQUIRE(workspace::add_entry(work, "r1", sent, kFriday));
    const door::Answer answer = door::run("lots", store::write_backup(work, {}, kFriday), shipped::presets());
    CHECK(answer.exit_code == 0);
    for (const char* said : {"\"records\": 1", "\"ingredient\": \"beeswax_yellow\"", "\"BW-7\"",
                             "\"number\": \"A-1\"", "\"units\": 4", "\"the market stall\""})
        CHECK_MESSAGE(answer.out.find(said) != std::string::npos, said, " in ", answer.out);
    CHECK(door::run("lots", "{}", shipped::presets()).exit_code == 2);
}

}  // namespace test_filed
