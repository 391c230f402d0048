// "Which batches used this lot, and where did they go", by way of made parts too; loss learned from one's own
// records.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/record_trace.h"

namespace test_record_trace {

using quantity::grams;
using quantity::percent;
using record::Record;
using record::Use;

namespace {

record::Weighed poured(const char* ingredient, const char* lot, std::optional<std::int64_t> weighed) {
    record::Weighed one;
    one.ingredient = ingredient;
    one.name = ingredient;
    one.lot = lot;
    if (weighed) one.weighed = grams(*weighed);
    return one;
}

Record batch(const char* number, std::vector<record::Weighed> lines, const char* makes = "") {
    Record record;
    record.number = number;
    record.day = "2026-11-26";
    record.makes = makes;
    record.lines = std::move(lines);
    return record;
}

std::vector<const Record*> all(const std::vector<Record>& records) {
    std::vector<const Record*> pointers;
    for (const Record& one : records)
        pointers.push_back(&one);
    return pointers;
}

// A batch of one recipe that lost this many grams of a hundred.
Record that_lost(const char* recipe, std::int64_t lost) {
    Record record = batch("n", {poured("sunflower", "", 100)});
    record.recipe = recipe;
    record::Entry yield;
    yield.id = "y";
    yield.kind = record::Kind::yield;
    yield.day = record.day;
    yield.figure = (100 - lost) * decimal::kOne;
    record.entries = {yield};
    return record;
}

std::optional<record::Loss> loss_of(const std::vector<std::int64_t>& lost) {
    std::vector<Record> records;
    for (const std::int64_t one : lost)
        records.push_back(that_lost("balm", one));
    return record::usual_loss(all(records), "balm");
}

}  // namespace

TEST_CASE("a lot is followed into every batch that it went into, with its grams") {
    const std::vector<Record> records = {
        batch("1", {poured("beeswax", "BW-7", 20), poured("sunflower", "S-1", 80)}),
        batch("2", {poured("beeswax", "BW-8", 20)}),
        batch("3", {poured("beeswax", "bw -7", 5), poured("beeswax", "BW-7", 2)})};
    const std::vector<Use> uses = record::uses_of(all(records), "beeswax", {"BW-7"});
    REQUIRE(uses.size() == 2);
    CHECK(uses[0] == Use{0, {0}, grams(20), "", false});
    CHECK(uses[1] == Use{2, {0, 1}, grams(7), "", false});
}

TEST_CASE("a lot in a made part is followed on into what the part was used for") {
    const std::vector<Record> records = {batch("salve", {poured("own_marigold", "M-1", 60)}),
                                         batch("M-1", {poured("sunflower", "S-1", 100)}, "own_marigold"),
                                         batch("M-2", {poured("sunflower", "S-2", 100)}, "own_marigold"),
                                         batch("balm", {poured("salve_base", "salve", 10)}),
                                         batch("other", {poured("own_marigold", "M-2", 60)})};
    const std::vector<Use> uses = record::uses_of(all(records), "sunflower", {"S-1"});
    REQUIRE(uses.size() == 3);
    CHECK(uses[0].record == 0);
    CHECK(uses[0].by_way_of == "M-1");
    CHECK(uses[1].record == 1);
    CHECK(uses[1].by_way_of.empty());
    CHECK(uses[2].record == 3);
    CHECK(uses[2].by_way_of == "salve");
}

TEST_CASE("a loop of batch numbers ends") {
    const std::vector<Record> records = {batch("a", {poured("x", "b", 1)}, "x"),
                                         batch("b", {poured("x", "a", 1)}, "x")};
    CHECK(record::uses_of(all(records), "x", {"a"}).size() == 2);
}

TEST_CASE("a lot that was entered under another number first is found under both") {
    const std::vector<Record> records = {batch("1", {poured("beeswax", "BW-1", 20)}),
                                         batch("2", {poured("beeswax", "BW-7", {})})};
    const std::vector<Use> uses = record::uses_of(all(records), "beeswax", {"BW-7", "BW-1"});
    REQUIRE(uses.size() == 2);
    CHECK_FALSE(uses[1].grams.has_value());
}

TEST_CASE("the number at another ingredient is told, and told apart: a recall may miss nothing") {
    const std::vector<Record> records = {batch("1", {poured("own_beeswax_2", "BW-7", 20)}),
                                         batch("2", {poured("", "BW-7", 20)})};
    const std::vector<Use> uses = record::uses_of(all(records), "beeswax", {"BW-7"});
    REQUIRE(uses.size() == 2);
    CHECK(uses[0].other_ingredient);
    CHECK_FALSE(uses[1].other_ingredient);
    CHECK(record::uses_of(all(records), "beeswax", {""}).empty());
}

TEST_CASE("a correction of a lot counts, not what it corrected") {
    Record record = batch("1", {poured("beeswax", "", 20)});
    record::Entry wrong, right;
    wrong.id = "1";
    wrong.kind = right.kind = record::Kind::weighed;
    wrong.lines = {{0, {}, "BW-1", ""}};
    right.id = "2";
    right.corrects = "1";
    right.lines = {{0, {}, "BW-7", ""}};
    record.entries = {wrong, right};
    CHECK(record::uses_of({&record}, "beeswax", {"BW-1"}).empty());
    CHECK(record::uses_of({&record}, "beeswax", {"BW-7"}).size() == 1);
}

TEST_CASE("the loss to reckon with is the median of the last records, from three on") {
    CHECK_FALSE(loss_of({4, 6}).has_value());
    CHECK(loss_of({4, 30, 6}) == record::Loss{percent(6), 3});
    CHECK(loss_of({4, 6, 7, 9}) == record::Loss{{65000}, 4});
    CHECK(loss_of({1, 1, 1, 1, 9, 9, 9, 50, 50, 50}) == record::Loss{percent(1), 7});
}

TEST_CASE("batches of another recipe, and those whose loss is not known, do not count") {
    std::vector<Record> records = {that_lost("balm", 4), that_lost("balm", 6), that_lost("salve", 8)};
    records.push_back(that_lost("balm", 5));
    records.back().lines[0].weighed.reset();
    CHECK_FALSE(record::usual_loss(all(records), "balm").has_value());
    CHECK_FALSE(record::usual_loss(all(records), "").has_value());
}

}  // namespace test_record_trace
