// A batch record: entries are added and none is changed; what holds is worked out from all of them.
#include <algorithm>
#include <string>

#include "doctest/doctest.h"
#include "engine/record.h"

namespace test_record {

using quantity::grams;
using quantity::percent;
using record::Asked;
using record::Entry;
using record::Kind;
using record::Record;
using record::State;
using result::Code;

namespace {

constexpr const char* kDay = "2026-11-26";

record::Weighed line(const char* ingredient, std::int64_t share, std::int64_t planned) {
    record::Weighed one;
    one.ingredient = ingredient;
    one.name = ingredient;
    one.phase = "A";
    one.percent = percent(share);
    one.planned = grams(planned);
    return one;
}

// 100 g of salve, planned; nothing is known of what was weighed.
Record salve() {
    Record record;
    record.number = "20261126-1";
    record.day = kDay;
    record.who = "Wren";
    record.title = "Potting-shed hand salve";
    record.lines = {line("beeswax_yellow", 20, 20), line("sunflower_ho", 80, 80)};
    return record;
}

Entry entry(const char* id, Kind kind, std::string text = "", std::optional<std::int64_t> whole = {}) {
    Entry one;
    one.id = id;
    one.kind = kind;
    one.day = kDay;
    one.written = std::string("2026-11-26T10:00:0") + id[0] + "Z";
    one.text = std::move(text);
    if (whole) one.figure = *whole * decimal::kOne;
    return one;
}

Entry weighed(const char* id, std::vector<record::Known> lines) {
    Entry one = entry(id, Kind::weighed);
    one.lines = std::move(lines);
    return one;
}

Record with(Record record, const std::vector<Entry>& entries) {
    for (const Entry& one : entries) {
        auto longer = record::with_entry(std::move(record), one);
        REQUIRE(longer);
        record = std::move(longer).value();
    }
    return record;
}

Code refused(const Record& record, const Entry& one) {
    const auto longer = record::with_entry(record, one);
    REQUIRE_FALSE(longer);
    return longer.error().code;
}

}  // namespace

TEST_CASE("a correction is an entry that takes another's place; both stay written down") {
    Entry better = entry("2", Kind::filled, "tins", 3);
    better.corrects = "1";
    const Record record = with(salve(), {entry("1", Kind::filled, "tins", 4), better});
    const State state = record::state_of(record);
    CHECK(record.entries.size() == 2);
    CHECK(record.entries[0].figure == 4 * decimal::kOne);
    CHECK(state.holds == std::vector<std::size_t>{1});
    CHECK(state.filled == 3);
}

TEST_CASE("of two corrections of one entry the second is refused: it is the first that is to be corrected") {
    Entry first = entry("2", Kind::remark, "clear"), second = entry("3", Kind::remark, "cloudy");
    first.corrects = second.corrects = "1";
    const Record record = with(salve(), {entry("1", Kind::remark, "hazy"), first});
    CHECK(refused(record, second) == Code::preset_duplicate);
    second.corrects = "2";
    CHECK(record::state_of(with(record, {second})).holds == std::vector<std::size_t>{2});
}

TEST_CASE("what was entered by mistake is withdrawn and does not count; a reason is asked for") {
    Entry withdrawn = entry("2", Kind::withdrawn);
    withdrawn.corrects = "1";
    const Record record = with(salve(), {entry("1", Kind::sent, "the market stall", 5)});
    CHECK(record::state_of(record).sent == 5);
    CHECK(refused(record, withdrawn) == Code::name_empty);
    withdrawn.text = "that was the other batch";
    const State state = record::state_of(with(record, {withdrawn}));
    CHECK_FALSE(state.sent.has_value());
    CHECK(state.holds.empty());
}

TEST_CASE("lines are filled in by entries, as far as each says something") {
    const Record record = with(salve(), {weighed("1", {{0, grams(20), "", ""}, {1, grams(81), "", ""}}),
                                         weighed("2", {{0, std::nullopt, "BW-7", "2027-06-30"}})});
    const State state = record::state_of(record);
    CHECK(state.lines[0].weighed == grams(20));
    CHECK(state.lines[0].lot == "BW-7");
    CHECK(state.lines[0].best_before == "2027-06-30");
    CHECK(state.lines[1].lot.empty());
    CHECK(state.total == grams(101));
    CHECK_FALSE(record.lines[0].weighed.has_value());
    CHECK(refused(record, weighed("3", {{2, grams(1), "", ""}})) == Code::line_missing);
    CHECK(refused(record, weighed("3", {{0, {}, "", "next summer"}})) == Code::field_unknown_value);
}

TEST_CASE("loss is what was weighed and did not come of it, and is not known while a weight is missing") {
    Record record = with(salve(), {entry("1", Kind::yield, "", 95)});
    CHECK_FALSE(record::state_of(record).loss.has_value());
    record = with(record, {weighed("2", {{0, grams(20), "", ""}, {1, grams(80), "", ""}})});
    CHECK(record::state_of(record).loss == percent(5));
    Entry too_much = entry("3", Kind::yield, "", 120);
    too_much.corrects = "1";
    CHECK_FALSE(record::state_of(with(record, {too_much})).loss.has_value());
}

TEST_CASE("units that were filled are accounted for: sent, kept back, left") {
    const Record record =
        with(salve(), {entry("1", Kind::filled, "tins, 28 g", 10), entry("2", Kind::sent, "stall", 4),
                       entry("3", Kind::sent, "a neighbour", 1), entry("4", Kind::kept_back, "", 1)});
    const State state = record::state_of(record);
    CHECK(state.sent == 5);
    CHECK(state.kept_back == 1);
    CHECK(state.left == 4);
    CHECK_FALSE(record::state_of(salve()).left.has_value());
}

TEST_CASE("number, day and maker of the head give way to the last entry about them") {
    const Record record =
        with(salve(), {entry("1", Kind::number, "S-14"), entry("2", Kind::day, "2026-11-25"),
                       entry("3", Kind::who, "Wren and Ash")});
    const State state = record::state_of(record);
    CHECK(state.number == "S-14");
    CHECK(state.day == "2026-11-25");
    CHECK(state.who == "Wren and Ash");
    CHECK(record.number == "20261126-1");
    CHECK(refused(record, entry("4", Kind::day, "yesterday")) == Code::field_unknown_value);
}

TEST_CASE("a record says what is missing, pH only where there is water, and whereabouts only once released") {
    Record record = salve();
    const auto asks = [](const Record& of, Asked one) {
        const auto all = record::missing(of, record::state_of(of));
        return std::find(all.begin(), all.end(), one) != all.end();
    };
    for (const Asked one :
         {Asked::weighed, Asked::lots, Asked::yield, Asked::filled, Asked::kept_back, Asked::release})
        CHECK(asks(record, one));
    CHECK_FALSE(asks(record, Asked::number));
    CHECK_FALSE(asks(record, Asked::ph));
    CHECK_FALSE(asks(record, Asked::sent));
    record.with_water = true;
    CHECK(asks(record, Asked::ph));
    record = with(record, {entry("1", Kind::ph, "", 5)});
    CHECK_FALSE(asks(record, Asked::ph));
    Entry yes = entry("2", Kind::release, "looks and smells as it should");
    yes.yes = true;
    record = with(record, {yes, entry("3", Kind::filled, "", 3)});
    CHECK(asks(record, Asked::sent));
    CHECK_FALSE(asks(record, Asked::release));
    record = with(record, {entry("4", Kind::sent, "stall", 3)});
    CHECK_FALSE(asks(record, Asked::sent));
}

TEST_CASE("release says yes or no with its reason; the last word holds") {
    Entry no = entry("1", Kind::release, "grainy"), yes = entry("2", Kind::release, "melted again, smooth");
    yes.yes = true;
    CHECK(record::state_of(with(salve(), {no})).released == false);
    CHECK(record::state_of(with(salve(), {no, yes})).released == true);
    CHECK(refused(salve(), entry("1", Kind::release)) == Code::name_empty);
}

TEST_CASE("an entry without what its kind needs is refused, and the record stays as it was") {
    const Record record = salve();
    CHECK(refused(record, entry("1", Kind::temperature, "oils")) == Code::number_empty);
    CHECK(refused(record, entry("1", Kind::temperature, "oils", 900)) == Code::number_too_large);
    CHECK(refused(record, entry("1", Kind::ph, "", 15)) == Code::number_too_large);
    CHECK(refused(record, entry("1", Kind::sent, "", 3)) == Code::name_empty);
    CHECK(refused(record, entry("1", Kind::remark)) == Code::name_empty);
    CHECK(refused(record, entry("1", Kind::look)) == Code::name_empty);
    CHECK(refused(record, entry("1", Kind::weighed)) == Code::name_empty);
    Entry half = entry("1", Kind::filled);
    half.figure = decimal::kOne / 2;
    CHECK(refused(record, half) == Code::number_too_fine);
    Entry nowhere = entry("1", Kind::remark, "text");
    nowhere.corrects = "9";
    CHECK(refused(record, nowhere) == Code::field_unknown_value);
    nowhere.corrects.clear();
    nowhere.day.clear();
    CHECK(refused(record, nowhere) == Code::field_unknown_value);
}

TEST_CASE(
    "two states of one record are brought together: no entry is lost, and it does not matter which came "
    "first") {
    const Record begun = with(salve(), {entry("1", Kind::remark, "warm room")});
    const Record here = with(begun, {entry("3", Kind::filled, "tins", 3)});
    const Record there = with(begun, {entry("2", Kind::look, "smooth")});
    const Record both = record::merged(here, there);
    CHECK(both.entries.size() == 3);
    CHECK(both == record::merged(there, here));
    CHECK(record::merged(both, here) == both);
    CHECK(both.entries[1].id == "2");
}

}  // namespace test_record
