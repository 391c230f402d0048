// The command line without a process: a text in, a text and an exit code out.
#include <string>

#include "doctest/doctest.h"
#include "engine/decimal.h"
#include "engine/door.h"
#include "engine/store_json.h"
#include "shipped.h"

namespace test_door {

namespace {

using store_json::Json;

door::Answer ask(std::string_view verb, std::string_view input) {
    return door::run(verb, input, shipped::presets(), presets_data::kLimits);
}

Json tree(const door::Answer& answer) {
    CHECK(answer.exit_code == 0);
    CHECK(answer.err.empty());
    return store_json::parse(answer.out).value();
}

std::int64_t grid(const Json& value) {
    return decimal::from_double(value.get<double>()).value();
}

std::string recipe_of(const std::string& lines, const std::string& batch) {
    return R"({"tarebench":1,"kind":"formula","title":"T","product":"salve","lines":[)" + lines +
           R"(],"batch":{)" + batch + "}}";
}

// One line "place: what is wrong" and nothing else.
void check_refused(const door::Answer& answer, const std::string& beginning) {
    CAPTURE(answer.err);
    CHECK(answer.exit_code == 2);
    CHECK(answer.out.empty());
    CHECK(answer.err.rfind(beginning, 0) == 0);
    CHECK(answer.err.find('\n') == answer.err.size() - 1);
    CHECK(answer.err.find("[[") == std::string::npos);
}

}  // namespace

TEST_CASE("door: batch turns percent into grams that add up") {
    const door::Answer answer =
        ask("batch",
            recipe_of(R"({"ingredient":"beeswax_yellow","percent":22.5},{"ingredient":"jojoba","rest":true})",
                      R"("grams":250,"division_g":0.1)"));
    const Json out = tree(answer);
    CHECK(out["total_g"] == 250);
    CHECK(out["division_g"] == 0.1);
    CHECK(out["lines"][0]["ingredient"] == "beeswax_yellow");
    CHECK(out["lines"][0]["percent"] == 22.5);
    // 56.25 and 193.75: of two equal remainders the larger line gets the unit.
    CHECK(out["lines"][0]["grams"] == 56.2);
    CHECK(out["lines"][1]["grams"] == 193.8);
    CHECK(out["lines"][0]["actual_percent"] == 22.48);
    CHECK(out.find("asked_g") == out.end());
    CHECK(answer.out.find("22.5,") != std::string::npos);  // as short as it was written
}

TEST_CASE(
    "door: every shipped recipe has a batch whose lines add to the total exactly, each within a division") {
    for (const auto& [name, recipe] : shipped::presets().recipes) {
        CAPTURE(name);
        const Json out = tree(ask("batch", store::write_recipe(recipe)));
        const std::int64_t total = grid(out["total_g"]), division = grid(out["division_g"]);
        std::int64_t sum = 0;
        CHECK(out["lines"].size() == recipe.formula.lines.size());
        for (const Json& line : out["lines"]) {
            sum += grid(line["grams"]);
            const std::int64_t share =
                decimal::scale_nearest(total, grid(line["percent"]), quantity::kHundred.grid);
            CHECK(std::abs(grid(line["grams"]) - share) <= division);
            CHECK(grid(line["grams"]) % division == 0);
        }
        CHECK(sum == total);
    }
}

TEST_CASE("door: a batch that is no multiple of the division says what was asked") {
    const Json out = tree(ask("batch", recipe_of(R"({"name":"Plum kernel oil","percent":100})",
                                                 R"("grams":10.55,"division_g":0.1)")));
    CHECK(out["total_g"] == 10.6);
    CHECK(out["asked_g"] == 10.55);
    CHECK(out["lines"][0]["name"] == "Plum kernel oil");
    CHECK(out["lines"][0].find("ingredient") == out["lines"][0].end());
}

TEST_CASE("door: a formula without a rest line that does not add to 100 is refused with its sum") {
    const std::string recipe = recipe_of(
        R"({"ingredient":"shea","percent":50},{"ingredient":"jojoba","percent":47.5})", R"("grams":250)");
    for (const char* verb : {"batch", "label", "sheet"}) {
        const door::Answer answer = ask(verb, recipe);
        check_refused(answer, "lines: ");
        CHECK(answer.err.find("97.5") != std::string::npos);
    }
    CHECK(ask("link", recipe).exit_code == 0);  // an unfinished formula may be sent
}

TEST_CASE("door: link and open are each other's way back") {
    for (const auto& [name, recipe] : shipped::presets().recipes) {
        CAPTURE(name);
        const std::string file = store::write_recipe(recipe);
        const std::string link = tree(ask("link", file))["link"].get<std::string>();
        CHECK(link[0] == '#');
        CHECK(ask("open", link).out == file);
        CHECK(ask("open", link + "\n").out == file);
        CHECK(ask("open", link.substr(1)).out == file);
        CHECK(ask("open", "https://hollow-lane.example/" + link).out == file);
    }
}

TEST_CASE("door: label says the list, the net contents, what is not certain and what a sale needs") {
    workspace::Recipe recipe = shipped::recipe("greenhouse_foot_scrub");
    recipe.market = "us";
    const Json out = tree(ask("label", store::write_recipe(recipe)));
    CHECK(out["market"] == "us");
    CHECK(out["declaration"].size() == out["items"].size());
    CHECK(out["declaration"][0] == out["items"][0]["name"]);
    CHECK(out["allergens"].is_array());
    CHECK(out["net"]["g"] == 130);
    CHECK(out["net"]["oz"] == 4.58);
    CHECK(out["text"].get<std::string>().find("Ingredients: ") != std::string::npos);
    CHECK(out["fields"].size() >= 8);
    CHECK(out["sale"][0]["standing"] == "document");
    CHECK(out["remarks"].is_array());
    CHECK(out["warnings"].is_array());
}

TEST_CASE("door: a label for a market that is not known is refused") {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.market = "au";
    check_refused(ask("label", store::write_recipe(recipe)), "market: ");
}

TEST_CASE("door: sheet prints the page itself") {
    const door::Answer answer = ask("sheet", store::write_recipe(shipped::recipe("orchard_lip_balm")));
    CHECK(answer.exit_code == 0);
    CHECK(answer.out.rfind("<!doctype html>\n", 0) == 0);
}

TEST_CASE("door: bad input is one line with its place, exit code 2 and nothing printed") {
    check_refused(ask("batch", ""), "character 1: ");
    check_refused(ask("batch", "[]"), "recipe: ");
    check_refused(ask("batch", recipe_of(R"({"ingredient":"shea","percent":33.33333})", "")),
                  "lines[0].percent: ");
    check_refused(ask("batch", recipe_of(R"({"ingredient":"shea","percent":100})", "")), "batch: ");
    check_refused(
        ask("batch", recipe_of(R"({"ingredient":"shea","percent":100})", R"("people":12,"each":0)")),
        "batch.each: ");
    check_refused(ask("batch", recipe_of(R"({"ingredient":"shea","percent":100})",
                                         R"("containers":[{"id":"bucket","count":1}])")),
                  "batch.containers[0]");
    check_refused(ask("link", "{}"), "recipe: ");
    check_refused(ask("open", ""), "link: ");
    check_refused(ask("open", "#AQ"), "link: ");
    check_refused(ask("sheet", std::string(door::kMostInputBytes + 1, ' ')), "input: ");
}

TEST_CASE("door: what a file says cannot break the line or reach the terminal") {
    check_refused(
        ask("batch", recipe_of(R"({"ingredient":"shea","percent":100,"a\u001b[2J\n\u009bx":1})", "")),
        "lines[0].a [2J");
    check_refused(ask("batch", R"({"tarebench":1,"kind":"x\u0000\n\ny"})"), "kind: ");
}

TEST_CASE("door: an unknown verb, none, or a file that is not there name what can be done") {
    for (const door::Answer& answer : {ask("dance", "{}"), ask("", ""), door::usage(shipped::presets())}) {
        check_refused(answer, "tarebench: ");
        CHECK(answer.err.find(
                  "batch, blend, card, check, cost, handout, label, labels, link, lots, open, pack, read, "
                  "sheet, shopping, swap, weigh, workshop") != std::string::npos);
    }
    check_refused(door::unreadable("nowhere.json", shipped::presets()), "nowhere.json: ");
}

TEST_CASE("door: without a table of words the code stands for the sentence") {
    CHECK(door::refuse({result::Code::rest_twice, "lines[1].rest", ""}, {}).err ==
          "lines[1].rest: rest_twice\n");
}

TEST_CASE("door: check says what is found, what was looked at and what could not be checked") {
    const Json out = tree(
        ask("check", recipe_of(R"({"ingredient":"water","percent":60},{"ingredient":"shea","percent":30})",
                               R"("grams":100)")));
    REQUIRE(out["findings"].size() >= 2);
    CHECK(out["findings"][0]["code"] == "sum_not_hundred");  // a finding here, no refusal
    CHECK(out["findings"][0]["severity"] == "stop");
    CHECK(out["findings"][0]["value"] == 90);
    CHECK(out["findings"][1]["code"] == "water_without_preservative");
    CHECK(out["findings"][1]["ingredient"] == "water");
    CHECK(out["findings"][1]["standing"] == "common_practice");
    CHECK(out["findings"][1]["text"].get<std::string>().rfind("Water, distilled is water", 0) == 0);
    CHECK(out["made"].size() > 5);
    CHECK(out["made"][0]["rule"] == "sums");
    CHECK(out["not_made"].size() > 0);
    for (const Json& one : out["not_made"])
        CHECK(!one["reason"].get<std::string>().empty());
    CHECK(out["cautions"].size() >= 3);
    check_refused(ask("check", "{}"), "");
}

}  // namespace test_door
