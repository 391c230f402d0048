// The command line's swap: what is asked and what is answered.
#include "doctest/doctest.h"
#include "engine/door.h"
#include "engine/store_json.h"
#include "shipped.h"

namespace test_door_swap {

using store_json::Json;

namespace {

door::Answer ask(const std::string& more) {
    return door::run("swap",
                     R"({"recipe":{"tarebench":1,"kind":"formula","title":"T","product":"salve","lines":[)"
                     R"({"ingredient":"beeswax_yellow","percent":20,"phase":"A"},)"
                     R"({"ingredient":"almond","percent":30,"phase":"A"},)"
                     R"({"ingredient":"olive","rest":true,"phase":"A"}]})" +
                         more + "}",
                     shipped::presets(), presets_data::kLimits);
}

Json told(const std::string& more) {
    const door::Answer answer = ask(more);
    CAPTURE(answer.err);
    REQUIRE(answer.exit_code == 0);
    return store_json::parse(answer.out).value();
}

const Json& row(const Json& compared, const std::string& key) {
    for (const Json& one : compared)
        if (one["key"] == key) return one;
    FAIL("no row ", key);
    return compared;
}

bool finds(const Json& list, const std::string& code) {
    for (const Json& one : list)
        if (one["code"] == code) return true;
    return false;
}

}  // namespace

TEST_CASE(
    "swap on the command line: beeswax by candelilla, with factor, standing, lines, and the bees gone") {
    const Json made = told(R"(,"line":0,"by":"candelilla")");
    REQUIRE(made["stand_ins"].size() == 1);
    const Json& one = made["stand_ins"][0];
    CHECK(one["g_per_g"] == 0.5);
    CHECK(one["min_g_per_g"] == 0.4);
    CHECK(one["max_g_per_g"] == 0.7);
    CHECK(one["standing"] == "memory");
    CHECK(row(one["compared"], "beeswax_yellow")["was"] == 20);
    CHECK_FALSE(row(one["compared"], "beeswax_yellow").contains("is"));
    CHECK(row(one["compared"], "candelilla")["is"] == 10);
    CHECK(row(one["compared"], "olive")["is"] == 60);
    CHECK(row(one["compared"], "animal")["was"] == 1);
    CHECK(row(one["compared"], "animal")["is"] == 0);
    CHECK(finds(one["no_longer_found"], "origin_bee"));
}

TEST_CASE("swap on the command line: an oil of nuts by one that is none, and what it costs") {
    const std::string prices = R"(,"prices":{"currency":"EUR","packs":[)"
                               R"({"ingredient":"almond","g":100,"price":2,"currency":"EUR"},)"
                               R"({"ingredient":"sunflower","g":100,"price":1,"currency":"EUR"},)"
                               R"({"ingredient":"beeswax_yellow","g":100,"price":3,"currency":"EUR"},)"
                               R"({"ingredient":"olive","g":100,"price":1,"currency":"EUR"}]})";
    const Json made = told(R"(,"line":1,"by":"sunflower")" + prices);
    const Json& compared = made["stand_ins"][0]["compared"];
    CHECK(row(compared, "nut")["was"] == 1);
    CHECK(row(compared, "nut")["is"] == 0);
    CHECK(row(compared, "ingredients")["was"] == 17);  // 6 + 6 + 5 of a kilogram
    CHECK(row(compared, "ingredients")["is"] == 14);
}

TEST_CASE("swap on the command line: the nearest formula tells how far it is apart") {
    const Json made = told(R"(,"line":1,"nearest":["sunflower","apricot"])")["nearest"];
    CHECK(made["fatty_acids_apart_percent"] < 5);
    CHECK(made["fatty_acids"].size() > 3);
    CHECK(row(made["compared"], "beeswax_yellow")["is"] == 20);
}

TEST_CASE("swap on the command line: what is asked amiss is refused with its place") {
    const std::pair<const char*, const char*> wrong[] = {{"", "line: "},
                                                         {R"(,"line":9)", "line: "},
                                                         {R"(,"line":0,"by":"nobody")", "by: "},
                                                         {R"(,"line":0,"nearest":[])", "by: "},
                                                         {R"(,"line":0,"nearest":["x"])", "by[0]: "},
                                                         {R"(,"line":0,"dance":1)", "dance: "}};
    for (const auto& [more, place] : wrong) {
        const door::Answer answer = ask(more);
        CAPTURE(answer.err);
        CHECK(answer.exit_code == 2);
        CHECK(answer.err.rfind(place, 0) == 0);
    }
}

}  // namespace test_door_swap
