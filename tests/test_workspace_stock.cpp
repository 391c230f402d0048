// What is left on the shelf: counted, less what batch records took since; what runs low.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/workspace_edits.h"
#include "engine/workspace_lots.h"
#include "engine/workspace_records.h"
#include "engine/workspace_stock.h"
#include "shipped.h"

namespace test_workspace_stock {

using quantity::grams;
using quantity::Mass;
using record::Entry;
using record::Kind;
using record::Record;
using workspace::NotTaken;
using workspace::Workspace;

namespace {

lot::Lot wax_lot(std::int64_t left, const char* day, const char* at = "") {
    lot::Lot lot;
    lot.ingredient = "beeswax_yellow";
    lot.number = "BW-7";
    lot.left = grams(left);
    lot.counted = day;
    lot.counted_at = at;
    return lot;
}

Record of_wax(const char* day, std::optional<Mass> weighed, const char* lot = "BW-7") {
    Record record;
    record.day = day;
    record.title = "Orchard lip balm";
    record::Weighed wax;
    wax.ingredient = "beeswax_yellow";
    wax.name = "Beeswax, yellow";
    wax.percent = quantity::percent(100);
    wax.planned = grams(20);
    wax.weighed = weighed;
    wax.lot = lot;
    record.lines = {wax};
    return record;
}

void file(Workspace& work, Record record, const char* id, const std::string& now) {
    REQUIRE(workspace::add_record(work, std::move(record), {}, {id, std::string("v") + id}, now));
}

// 500 g counted on the 20th.
Workspace with_lot() {
    Workspace work;
    REQUIRE(workspace::add_lot(work, wax_lot(500, "2026-11-20", "2026-11-20T09:00:00Z"), "lot",
                               "2026-11-20T09:00:00Z"));
    return work;
}

Mass left_of(const Workspace& work) {
    return workspace::find(workspace::shelf(work), "lot")->left().value();
}
NotTaken why_of(const Workspace& work, const char* record) {
    const auto all = workspace::takings(work, workspace::shelf(work), record);
    REQUIRE(all.size() == 1);
    return all[0].why;
}

}  // namespace

TEST_CASE("stock: a record takes what was weighed from its lot, once") {
    Workspace work = with_lot();
    file(work, of_wax("2026-11-21", grams(20)), "r1", "2026-11-21T09:00:00Z");
    CHECK(left_of(work) == grams(480));
    CHECK(left_of(work) == grams(480));  // asked again
    file(work, of_wax("2026-11-22", grams(30)), "r2", "2026-11-22T09:00:00Z");
    CHECK(left_of(work) == grams(450));
    const auto takings = workspace::takings(work, workspace::shelf(work), "r2");
    REQUIRE(takings.size() == 1);
    CHECK(takings[0].grams == grams(30));
    CHECK(takings[0].why == NotTaken::none);
    CHECK(workspace::find_lot(work, "lot")->left == grams(500));  // as it was counted
}

TEST_CASE(
    "stock: a corrected weight or lot corrects the shelf, and a second state of a record takes no more") {
    Workspace work = with_lot();
    file(work, of_wax("2026-11-21", grams(20)), "r1", "2026-11-21T09:00:00Z");
    const Workspace before = work;
    Entry entry;
    entry.kind = Kind::weighed;
    entry.id = "e1";
    entry.day = "2026-11-23";
    entry.lines = {{0, grams(25), "", ""}};
    REQUIRE(workspace::add_entry(work, "r1", entry, "2026-11-23T09:00:00Z"));
    CHECK(left_of(work) == grams(475));
    for (const workspace::Filed& theirs : before.filed)
        workspace::take_filed(work, theirs);
    CHECK(left_of(work) == grams(475));
    entry.id = "e2";
    entry.lines = {{0, std::nullopt, "BW-8", ""}};
    REQUIRE(workspace::add_entry(work, "r1", entry, "2026-11-23T10:00:00Z"));
    CHECK(left_of(work) == grams(500));
    CHECK(why_of(work, "r1") == NotTaken::no_such_lot);
}

TEST_CASE("stock: counting again begins anew, and earlier batches take nothing of it") {
    Workspace work = with_lot();
    file(work, of_wax("2026-11-21", grams(20)), "r1", "2026-11-21T09:00:00Z");
    REQUIRE(workspace::set_lot(work, "lot", wax_lot(470, "2026-11-22", "2026-11-22T12:00:00Z"),
                               "2026-11-22T12:00:00Z"));
    CHECK(left_of(work) == grams(470));
    CHECK(why_of(work, "r1") == NotTaken::before_count);
    file(work, of_wax("2026-11-22", grams(10)), "r2", "2026-11-22T08:00:00Z");  // that morning
    CHECK(left_of(work) == grams(470));
    file(work, of_wax("2026-11-22", grams(10)), "r3", "2026-11-22T18:00:00Z");
    CHECK(left_of(work) == grams(460));
    // Written down afterwards, made before.
    file(work, of_wax("2026-11-20", grams(10)), "r4", "2026-11-25T18:00:00Z");
    CHECK(left_of(work) == grams(460));
    // Counted by an older page, which noted the day alone: what was made that day is taken off.
    REQUIRE(workspace::set_lot(work, "lot", wax_lot(470, "2026-11-22"), "2026-11-22T12:00:00Z"));
    CHECK(left_of(work) == grams(450));
}

TEST_CASE("stock: what cannot be taken is said, and nothing goes below nothing") {
    Workspace work = with_lot();
    file(work, of_wax("2026-11-21", std::nullopt), "r1", "2026-11-21T09:00:00Z");
    CHECK(why_of(work, "r1") == NotTaken::not_weighed);
    file(work, of_wax("2026-11-21", grams(20), ""), "r2", "2026-11-21T09:00:00Z");
    CHECK(why_of(work, "r2") == NotTaken::no_lot);
    file(work, of_wax("2026-11-21", grams(20), "BW-9"), "r3", "2026-11-21T09:00:00Z");
    CHECK(why_of(work, "r3") == NotTaken::no_such_lot);
    CHECK(left_of(work) == grams(500));
    file(work, of_wax("2026-11-21", grams(700)), "r4", "2026-11-21T09:00:00Z");
    CHECK(left_of(work) == Mass{});
    CHECK(workspace::find(workspace::shelf(work), "lot")->taken == grams(700));
    lot::Lot uncounted = wax_lot(0, "");
    uncounted.left.reset();
    REQUIRE(workspace::set_lot(work, "lot", uncounted, "2026-11-22T09:00:00Z"));
    CHECK(why_of(work, "r4") == NotTaken::not_counted);
    CHECK_FALSE(workspace::at_hand(workspace::shelf(work), "beeswax_yellow").has_value());
}

TEST_CASE("stock: of a made part its batches are at hand, by what came of them") {
    Workspace work;
    Record infusion = of_wax("2026-11-10", grams(100), "");
    infusion.makes = "own_infusion";
    infusion.number = "I-1";
    file(work, infusion, "made", "2026-11-10T09:00:00Z");
    CHECK_FALSE(workspace::at_hand(workspace::shelf(work), "own_infusion").has_value());
    Entry yield;
    yield.kind = Kind::yield;
    yield.id = "y";
    yield.day = "2026-11-10";
    yield.figure = 80 * decimal::kOne;
    REQUIRE(workspace::add_entry(work, "made", yield, "2026-11-10T10:00:00Z"));
    Record salve = of_wax("2026-11-11", grams(30), "I-1");
    salve.lines[0].ingredient = "own_infusion";
    file(work, salve, "r1", "2026-11-11T09:00:00Z");
    CHECK(workspace::at_hand(workspace::shelf(work), "own_infusion") == grams(50));
}

TEST_CASE("stock: what runs low is under its own threshold, or under what the open recipe needs") {
    Workspace work = with_lot();
    const auto low = [&](std::int64_t need) {
        return workspace::low(work, workspace::shelf(work),
                              {{"beeswax_yellow", grams(need)}, {"shea", grams(need)}});
    };
    CHECK(low(500).empty());
    REQUIRE(low(501).size() == 1);  // of shea nothing was ever counted
    CHECK(low(501)[0] == workspace::Low{"beeswax_yellow", grams(500), grams(501), false});
    work.settings = workspace::set_low(work.settings, "beeswax_yellow", grams(100)).value();
    CHECK(low(501).empty());  // the person knows better
    file(work, of_wax("2026-11-21", grams(450)), "r1", "2026-11-21T09:00:00Z");
    CHECK(low(10)[0] == workspace::Low{"beeswax_yellow", grams(50), grams(100), true});
    work.settings = workspace::set_low(work.settings, "shea", grams(100)).value();
    CHECK(low(10).size() == 2);
    work.settings = workspace::set_low(work.settings, "shea", {}).value();
    CHECK(work.settings.low.size() == 1);
    CHECK(workspace::set_low(work.settings, "", grams(1)).error().code == result::Code::name_empty);
}

}  // namespace test_workspace_stock
