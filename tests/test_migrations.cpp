// Old files: those of format 1 are frozen in tests/data and must read for ever; steps are taken in order.
#include <string>

#include "doctest/doctest.h"
#include "engine/store.h"
#include "engine/store_migrations.h"
#include "shipped.h"

namespace test_migrations {

using result::Code;
using store_json::Json;

namespace {

result::Result<Json> colour_becomes_tint(Json document) {
    document["tint"] = document["colour"];
    document.erase("colour");
    return document;
}
result::Result<Json> tint_becomes_list(Json document) {
    Json list = Json::array();
    list.push_back(document["tint"]);
    document["tint"] = list;
    return document;
}
result::Result<Json> cannot(Json) {
    return {Code::field_missing, "colour"};
}

Json tree(const char* text) {
    return store_json::parse(text).value();
}

}  // namespace

TEST_CASE("migrations: a document is lifted step by step from its own format to today's") {
    const std::vector<store_migrations::Step> steps{colour_becomes_tint, tint_becomes_list};
    const auto first = store_migrations::lifted(tree(R"({"tarebench":1,"kind":"formula","colour":"straw"})"),
                                                "formula", "", steps);
    CHECK(first.value()["tint"].dump() == R"(["straw"])");
    const auto second = store_migrations::lifted(tree(R"({"tarebench":2,"kind":"formula","tint":"straw"})"),
                                                 "formula", "", steps);
    CHECK(second.value()["tint"].dump() == R"(["straw"])");
    const auto third = store_migrations::lifted(tree(R"({"tarebench":3,"kind":"formula","tint":["straw"]})"),
                                                "formula", "", steps);
    CHECK(third.value()["tint"].dump() == R"(["straw"])");
}

TEST_CASE("migrations: a newer format, no format and a step that cannot be taken are refused") {
    const auto code = [](const char* text, const std::vector<store_migrations::Step>& steps) {
        return store_migrations::lifted(tree(text), "formula", "", steps).error().code;
    };
    CHECK(code(R"({"tarebench":2,"kind":"formula"})", {}) == Code::version_newer);
    CHECK(code(R"({"tarebench":18446744073709551615,"kind":"formula"})", {}) == Code::version_newer);
    CHECK(code(R"({"tarebench":0,"kind":"formula"})", {}) == Code::field_unknown_value);
    CHECK(code(R"({"tarebench":-1,"kind":"formula"})", {}) == Code::field_unknown_value);
    CHECK(code(R"({"tarebench":1.0,"kind":"formula"})", {}) == Code::field_type);
    CHECK(code(R"({"kind":"formula"})", {}) == Code::not_a_recipe);
    CHECK(code(R"([])", {}) == Code::not_a_recipe);
    CHECK(code(R"({"tarebench":1,"kind":"formula"})", {cannot}) == Code::field_missing);
}

TEST_CASE("migrations: a version this program does not know says which one it is") {
    const auto read = store::read_recipe(R"({"tarebench":12,"kind":"formula","lines":[]})");
    CHECK(read.error() == result::Error{Code::version_newer, "tarebench", "12"});
}

TEST_CASE("migrations: the frozen recipe of format 1 reads with everything in it") {
    const workspace::Recipe recipe = store::read_recipe(shipped::data("v1_recipe_everything.json")).value();
    CHECK(recipe.title == "Frost-line elbow butter");
    CHECK(recipe.product == "body_butter");
    CHECK(recipe.market == "eu");
    CHECK(recipe.date == "2026-11-25");
    CHECK(recipe.person == "adult");
    REQUIRE(recipe.formula.lines.size() == 7);
    CHECK(recipe.formula.lines[0] == formula::Line{"shea", "", {333333}, false, "A", true, {}});
    CHECK(recipe.formula.lines[3].name == "Hazel oil from the market");
    CHECK(recipe.formula.lines[4].ingredient == "not_in_any_catalogue");
    CHECK(recipe.formula.lines[5].rest);
    CHECK(recipe.formula.lines[6].hold == formula::Hold{"linalool", {1750}});
    CHECK(recipe.formula.phases ==
          std::vector<formula::Phase>{{"A", 750000, {}}, {"warm", 625000, 700000}, {"C", {}, 400000}});
    REQUIRE(recipe.own.size() == 2);
    CHECK(recipe.own[0].name == "Marigold oil");
    CHECK(recipe.own[0].names.at("de") == "Ringelblumenöl");
    CHECK(recipe.own[0].based_on == "sunflower");
    CHECK(recipe.own[0].density->value.density == quantity::Density{9200});
    CHECK(recipe.own[0].parts ==
          std::vector<catalogue::Part>{{"sunflower", {980000}}, {"marigold_petals", {20000}}});
    CHECK(recipe.own[0].own);
    CHECK(recipe.own[1].analysis->constituents.at("camphor") ==
          catalogue::Content{{}, {}, quantity::Percent{5000}});
    CHECK(recipe.own[1].max_percent.at("5A") == quantity::Percent{12000});
    CHECK(recipe.own[1].standing == source::Standing::supplier);
    CHECK(recipe.steps[0] == formula::Step{"A", "Melt and hold.", 20});
    CHECK(recipe.steps[2].minutes == 0);
    REQUIRE(recipe.batch.containers.size() == 3);
    CHECK(recipe.batch.containers[0] == batch::Containers{"jar_60ml", 6, {}, quantity::Percent{925000}});
    CHECK(recipe.batch.containers[1] == batch::Containers{"tin_30ml", 2, quantity::Mass{247500}, {}});
    CHECK(recipe.batch.loss == quantity::Percent{35000});
    CHECK(recipe.batch.division == quantity::Mass{1000});
    CHECK(recipe.notes == "Sets softer in August.\nKept one back.");
}

TEST_CASE("migrations: the other frozen files of format 1 read") {
    const workspace::Recipe shortest = store::read_recipe(shipped::data("v1_recipe_shortest.json")).value();
    CHECK(shortest == workspace::Recipe{});

    const workspace::Recipe amounts = store::read_recipe(shipped::data("v1_recipe_amounts.json")).value();
    CHECK(amounts.batch.amount == batch::Amount::stock);
    CHECK(amounts.batch.grams == quantity::grams(250));
    CHECK(amounts.batch.people == 12);
    CHECK(amounts.batch.each == 2);
    CHECK(amounts.batch.stock ==
          std::vector<batch::Stock>{{"sunflower_ho", {4105000}}, {"jojoba", {140000}}});

    const workspace::Kept kept = store::read_kept(shipped::data("v1_kept.json")).value();
    CHECK(kept.id == "r-7f3a");
    CHECK(kept.saves == 41);
    CHECK(kept.changed == "2026-11-25T12:00:00Z");
    CHECK(kept.binned == "2026-11-26T08:30:00Z");
    CHECK(kept.recipe.title == "Seed-swap cuticle stick");

    const auto settings = store::read_settings(shipped::data("v1_settings.json")).value();
    CHECK(settings.settings.sign == workspace::DecimalSign::comma);
    CHECK(settings.settings.theme == workspace::Theme::dark);
    CHECK(settings.settings.scales ==
          std::vector<workspace::Scale>{{"Small", {100}, quantity::grams(200)}, {"Kitchen", {10000}, {}}});
    CHECK(settings.open == "r-7f3a");
}

}  // namespace test_migrations
