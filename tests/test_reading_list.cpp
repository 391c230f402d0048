// From a printed list to a reading: what is added, what came along, what may stand outside the order; and the
// statements that follow from what the oils hold. Then the verb, with what it refuses.
#include <algorithm>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/door.h"
#include "engine/reading_list.h"
#include "engine/reading_said.h"
#include "engine/store_json.h"
#include "shipped.h"

namespace test_reading_list {

using reading::Kind;
using reading::Statement;
using reading_list::As;
using reading_list::Entry;
using store_json::Json;

namespace {

constexpr std::int64_t kOne = decimal::kOne;
const reading::Sold kSold{"lip_balm", "eu", "2026-11-26"};

const catalogue::Catalogue& shelf() {
    return shipped::presets().catalogue;
}

std::vector<Entry> entries(std::string_view list) {
    return reading_list::entries_of(declaration_read::read(list, shelf()), shelf(), shipped::book());
}

reading_list::Made made(std::string_view list, const reading::Sold& sold = kSold, bool more = false) {
    return reading_list::problem_of(entries(list), sold, shelf(), shipped::book(), more);
}

const Statement* find(const reading::Problem& problem, Kind kind, std::string_view subject) {
    for (const Statement& one : problem.statements)
        if (one.kind == kind && one.subject == subject) return &one;
    return nullptr;
}

// The invented balm of a shop in Lantern Street.
constexpr std::string_view kLantern =
    "Ingredients: Ricinus Communis Seed Oil, Butyrospermum Parkii Butter, Cera Alba, Helianthus Annuus Seed "
    "Oil, Tocopherol, Lavandula Angustifolia Oil, Linalool, Limonene, Geraniol.";

door::Answer ask(std::string_view input) {
    return door::run("read", input, shipped::presets(), presets_data::kLimits);
}

Json tree(std::string_view input) {
    const door::Answer answer = ask(input);
    CAPTURE(answer.err);
    REQUIRE(answer.exit_code == 0);
    CHECK(answer.out.find("[[") == std::string::npos);
    return store_json::parse(answer.out).value();
}

void check_refused(std::string_view input, std::string_view beginning) {
    const door::Answer answer = ask(input);
    CAPTURE(answer.err);
    CHECK(answer.exit_code == 2);
    CHECK(answer.out.empty());
    CHECK(answer.err.rfind(beginning, 0) == 0);
    CHECK(answer.err.find('\n') == answer.err.size() - 1);
    CHECK(answer.err.find("[[") == std::string::npos);
}

}  // namespace

TEST_CASE("reading list: allergens at the end came along, the others were added") {
    const auto found = entries(kLantern);
    REQUIRE(found.size() == 9);
    CHECK(found[0].ingredient == "castor");
    for (std::size_t i = 0; i < 6; ++i)
        CHECK(found[i].as == As::added);
    for (std::size_t i = 6; i < 9; ++i)
        CHECK(found[i].as == As::incidental);
    const auto problem = made(kLantern);
    CHECK(problem.problem.items.size() == 6);
    CHECK(problem.not_said.empty());
    CHECK(reading::checked(problem.problem).ok());
    CHECK(find(problem.problem, Kind::declared, "Linalool") != nullptr);
}

TEST_CASE("reading list: colourants and a parfum at the end may stand outside the order") {
    const auto found = entries("Castor oil, Parfum, CI 77491, CI 77891, Limonene [+/- CI 77492]");
    REQUIRE(found.size() == 6);
    CHECK(found[1].as == As::added);
    CHECK(found[1].other == As::free);
    CHECK(found[2].as == As::free);
    CHECK(found[3].as == As::free);
    CHECK(found[4].as == As::incidental);
    CHECK(found[5].as == As::aside);
    const auto problem = made("Castor oil, Parfum, CI 77491, CI 77891, Limonene [+/- CI 77492]");
    REQUIRE(problem.problem.items.size() == 4);
    CHECK(problem.problem.items[2].free);
    CHECK_FALSE(problem.problem.items[1].free);
    // Of a parfum nothing is known: any of it may be the limonene.
    const Statement* const limonene = find(problem.problem, Kind::declared, "Limonene");
    REQUIRE(limonene != nullptr);
    CHECK(std::find(limonene->unknown.begin(), limonene->unknown.end(), 1U) != limonene->unknown.end());
}

TEST_CASE("reading list: an oil behind an extract or tocopherol is offered as its carrier") {
    const auto found = entries("Shea butter, Tocopherol, Sunflower oil, Rosemary extract, Lavender oil");
    REQUIRE(found.size() == 5);
    CHECK(found[0].other == std::nullopt);
    CHECK(found[2].other == As::carrier);
    CHECK(found[2].as == As::added);
    CHECK(found[4].other == As::carrier);
}

TEST_CASE("reading list: a percent on the list is a statement, as far as it was printed") {
    const auto problem = made("Castor oil, Shea butter 20 %, Beeswax 2.5%");
    REQUIRE(problem.problem.statements.size() >= 2);
    CHECK(problem.problem.statements[0] == reading::amount(1, 195000, 205000));
    CHECK(problem.problem.statements[1] == reading::amount(2, 24500, 25500));
}

TEST_CASE(
    "reading list: an allergen that had to be named and is not keeps its oil small; none without a market") {
    const std::string_view list = "Castor oil, Shea butter, Lavandula Angustifolia Oil";
    const auto problem = made(list).problem;
    const Statement* const linalool = find(problem, Kind::undeclared, "Linalool");
    REQUIRE(linalool != nullptr);
    CHECK(linalool->max == 10);  // 0.001 %
    REQUIRE(linalool->terms.size() == 1);
    CHECK(linalool->terms[0].item == 2);
    const reading::Answer answer = reading::answer(problem, {400, 1, 7, false});
    // At the lowest content of linalool that is known of lavender, no more than this.
    CHECK(answer.items[2].max <= 0.1 / decimal::to_double(linalool->terms[0].low) + 1e-9);
    CHECK(find(made(list, {"lip_balm", "", ""}).problem, Kind::undeclared, "Linalool") == nullptr);
    CHECK(find(made(list, {"lip_balm", "us", "2026-11-26"}).problem, Kind::undeclared, "Linalool") ==
          nullptr);
    // Ten times as much in what is rinsed off.
    const auto scrub = made(list, {"body_scrub", "eu", "2026-11-26"}).problem;
    CHECK(find(scrub, Kind::undeclared, "Linalool")->max == 100);
}

TEST_CASE("reading list: where a name fits several, what holds for all of them counts") {
    const auto problem = made("Castor oil, Cera Alba, Lavandula Angustifolia Oil, Linalool").problem;
    CHECK(problem.items[1].may_be.size() == 2);
    const Statement* const linalool = find(problem, Kind::declared, "Linalool");
    REQUIRE(linalool != nullptr);
    CHECK(linalool->unknown.empty());  // both beeswaxes are known to hold none
    CHECK(linalool->terms.size() == 1);
    const auto iodine = reading::property("iodine_value", problem.items, 80 * kOne, 90 * kOne, shelf());
    REQUIRE(iodine.has_value());
    CHECK(iodine->terms[1].low < iodine->terms[1].high);
}

TEST_CASE("statements: properties know what they do not know, and waxes are counted as such") {
    const std::vector<reading::Item> items = {
        {"castor", "", false, {}}, {"beeswax_yellow", "", false, {}}, {"", "Plum dust", false, {}}};
    const auto density = reading::property("density", items, 9000, 9600, shelf());
    REQUIRE(density.has_value());
    CHECK(density->unknown == std::vector<std::size_t>{2});
    CHECK(density->terms[0].low == density->terms[0].high);
    const auto wax = reading::property("wax_share", items, {}, 20 * kOne, shelf());
    CHECK(wax->terms[1].low == quantity::kHundred.grid);
    CHECK(wax->terms[0].high == 0);
    CHECK_FALSE(reading::property("taste", items, 0, 1, shelf()).has_value());
}

TEST_CASE("statements: limits of law are on, what is only usual is off") {
    const std::vector<reading::Item> items = {
        {"castor", "", false, {}}, {"phenoxyethanol", "", false, {}}, {"wintergreen", "", false, {}}};
    int law = 0, usual = 0;
    for (const Statement& one :
         reading::limits_of(items, {"salve", "eu", "2026-11-26"}, shelf(), shipped::book())) {
        CHECK(one.kind == Kind::limit);
        CHECK_FALSE(one.source.empty());
        law += one.on ? 1 : 0;
        if (one.subject == "usual") {
            CHECK_FALSE(one.on);
            usual += 1;
        }
    }
    CHECK(law >= 2);  // phenoxyethanol, methyl salicylate
    CHECK(usual >= 1);
}

TEST_CASE("reading list: what is no list at all is read as far as it goes, and nothing is lost") {
    CHECK(entries("").empty());
    CHECK(entries("   \n").empty());
    std::string many;
    for (int i = 0; i < 200; ++i)
        many += "Name " + std::to_string(i) + ", ";
    CHECK(entries(many).size() == 200);
    const std::string long_name(10000, 'x');
    const auto read = declaration_read::read("Castor oil, " + long_name, shelf());
    CHECK(read.aside.size() == 1);
    const auto twice = entries("Castor oil, Shea butter, Castor oil");
    CHECK(twice[2].twice);
    CHECK_FALSE(twice[1].twice);
    const auto scripts = entries("\xD7\xA9\xD7\x9E\xD7\x9F, \xF0\x9F\x90\x9D, Castor oil");
    REQUIRE(scripts.size() == 2);  // a picture alone is a bullet
    CHECK(scripts[0].written == "\xD7\xA9\xD7\x9E\xD7\x9F");
    CHECK(reading::checked(made("\xD7\xA9\xD7\x9E\xD7\x9F, \xF0\x9F\x90\x9D, Castor oil").problem).ok());
}

TEST_CASE("said: every kind of statement, every row of a list and every change has its sentence") {
    const words::Table& table = shipped::english();
    auto problem = made(kLantern, kSold, true).problem;
    problem.line_after = 4;
    problem.statements.push_back(reading::group("Liquid oils", {0, 3}, 10 * kOne, 60 * kOne));
    for (const char* name : {"density", "iodine_value", "saponification_value", "wax_share"})
        problem.statements.push_back(*reading::property(name, problem.items, 1 * kOne, {}, shelf()));
    reading::Names names;
    for (const reading::Item& item : problem.items)
        names.push_back(item.name);
    const auto whole = [&](const std::string& text) {
        CAPTURE(text);
        CHECK(!text.empty());
        CHECK(text.find("[[") == std::string::npos);
        CHECK(text.find('{') == std::string::npos);
    };
    for (std::size_t i = 0; i < problem.statements.size(); ++i) {
        whole(reading::say(table, problem, names, problem.statements[i]));
        for (const bool at_most : {false, true})
            whole(reading::say(table, problem, names,
                               reading::Mend{{reading::Said::What::statement, i, at_most}, 5, 0}));
    }
    for (const auto what : {reading::Said::What::line, reading::Said::What::total, reading::Said::What::order,
                            reading::Said::What::above, reading::Said::What::below})
        whole(reading::say(table, problem, names, reading::Said{what, 1, false}));
    CHECK(reading::say(table, problem, names, reading::Said{reading::Said::What::order, 1, false}) ==
          "Butyrospermum Parkii Butter is listed before Cera Alba, so there is no less of it.");
    whole(reading::say(table, problem, names, reading::Said{reading::Said::What::line, 0, false}));
    for (const std::int64_t place : {0, 2})
        whole(reading::say(table, problem, names,
                           reading::Mend{{reading::Said::What::line, 4, false}, place, 0}));
    CHECK(reading::say(table, problem, names, reading::Gain{{}, {}, 2, 12.04}) ==
          "This narrows Cera Alba by 12 points.");
    whole(reading::say(table, problem, names, reading::Gain{}));
}

TEST_CASE("door: read gives bounds, what is likely, and formulas that add to 100") {
    const Json out = tree(R"({"listed":[{"name":"A"},{"name":"B"},{"name":"C"},{"name":"D"},{"name":"E"}],
        "one_percent_after":4,"limits":[{"item":1,"min":10,"max":30},{"item":0,"max":60}],"seed":7,"suggest":3})");
    CHECK(out["feasible"] == true);
    REQUIRE(out["lines"].size() == 5);
    CHECK(out["lines"][1]["min"] == 13);
    CHECK(out["lines"][1]["max"] == 30);
    CHECK(out["lines"][0]["mean"].get<double>() == doctest::Approx(46.7).epsilon(0.02));
    CHECK(out["lines"][0]["p05"] < out["lines"][0]["p50"]);
    REQUIRE(out["suggestions"].size() == 3);
    for (const Json& one : out["suggestions"]) {
        std::int64_t sum = 0;
        for (const Json& percent : one["percents"])
            sum += decimal::from_double(percent.get<double>()).value();
        CHECK(sum == quantity::kHundred.grid);
    }
    CHECK(out["conflict"].empty());
    CHECK(out["statements"].size() == 3);
}

TEST_CASE("door: read says what cannot all be true, and what would mend it") {
    const Json out =
        tree(R"({"listed":[{"name":"A"},{"name":"B"},{"name":"C"},{"name":"D"}],"one_percent_after":null,
        "limits":[{"item":1,"min":10,"max":10},{"item":3,"min":15},{"item":0,"min":20}]})");
    CHECK(out["feasible"] == false);
    REQUIRE(out["conflict"].size() == 2);
    CHECK(out["conflict"][0]["place"] == "limits[0]");
    CHECK(out["conflict"][1]["place"] == "limits[1]");
    CHECK(out["mends"].size() == 2);
    CHECK(out.find("suggestions") == out.end());
}

TEST_CASE("door: read takes the list as it was printed, with its market") {
    const Json out =
        tree(R"({"product":"lip_balm","market":"eu","date":"2026-06-01","list":")" + std::string(kLantern) +
             R"(","one_percent_after":4,"groups":[{"name":"Waxes","items":[2],"max":25}],
                          "properties":[{"property":"iodine_value","min":50}],"known_limits":true})");
    REQUIRE(out["feasible"] == true);
    REQUIRE(out["lines"].size() == 6);
    CHECK(out["lines"][5]["ingredient"] == "lavender");
    CHECK(out["lines"][5]["min"] == 0.1);  // 1 % of geraniol at most: a tenth of a percent at least
    CHECK(out["suggestions"][0]["percents"][5] > 0);  // be it ever so little, it is in it
    // On the longer list of today linalyl acetate would have to be named beside the others.
    const Json today = tree(R"({"product":"lip_balm","market":"eu","date":"2026-11-26","list":")" +
                            std::string(kLantern) + R"("})");
    CHECK(today["feasible"] == false);
    CHECK(today["conflict"][1]["text"].get<std::string>().find("Linalyl Acetate is not on the list") == 0);
}

TEST_CASE("door: read refuses with the place of what is wrong") {
    const std::string_view a = R"({"listed":[{"name":"A"}],)";
    const auto with = [&](std::string_view more) { return std::string(a) + std::string(more) + "}"; };
    check_refused("", "character 1: ");
    check_refused("[]", "");
    check_refused("{}", "listed: ");
    check_refused(R"({"listed":[]})", "listed: ");
    check_refused(R"({"list":""})", "listed: ");
    check_refused(R"({"list":7})", "list: ");
    check_refused(R"({"listed":[{}]})", "listed[0].ingredient: ");
    check_refused(with(R"("limits":[{"item":3,"max":1}])"), "limits[0].item: ");
    check_refused(with(R"("limits":[{"item":-1,"max":1}])"), "limits[0].item: ");
    check_refused(with(R"("limits":[{"item":0}])"), "limits[0].max: ");
    check_refused(with(R"("limits":[{"item":0,"min":5,"max":3}])"), "limits[0]: ");
    check_refused(with(R"("limits":[{"item":0,"min":-5}])"), "limits[0].min: ");
    check_refused(with(R"("limits":[{"item":0,"min":0.00001}])"), "limits[0].min: ");
    check_refused(with(R"("groups":[{"items":[],"max":5}])"), "groups[0]: ");
    check_refused(with(R"("groups":[{"items":[0,0],"max":5}])"), "groups[0]: ");
    check_refused(with(R"("one_percent_after":9)"), "one_percent_after: ");
    check_refused(with(R"("one_percent_after":"two")"), "one_percent_after: ");
    check_refused(with(R"("properties":[{"property":"taste","max":5}])"), "properties[0].property: ");
    check_refused(with(R"("market":"au")"), "market: ");
    check_refused(with(R"("samples":1000000)"), "samples: ");
    check_refused(with(R"("tasty":true)"), "tasty: ");
    std::string many = R"({"listed":[)";
    for (int i = 0; i < 201; ++i)
        many += std::string(i > 0 ? "," : "") + R"({"name":"A"})";
    check_refused(many + "]}", "listed: ");
    check_refused(R"({"listed":[{"name":")" + std::string(10000, 'x') + R"("}]})", "listed[0]: ");
}

TEST_CASE("door: read takes two hundred names") {
    std::string many = R"({"samples":100,"suggest":1,"listed":[)";
    for (int i = 0; i < 200; ++i)
        many += std::string(i > 0 ? "," : "") + R"({"name":"A"})";
    const Json out = tree(many + R"(],"one_percent_after":60})");
    CHECK(out["feasible"] == true);
    CHECK(out["lines"].size() == 200);
    CHECK(tree(many + R"(],"one_percent_after":120})")["feasible"] == false);
}

}  // namespace test_reading_list
