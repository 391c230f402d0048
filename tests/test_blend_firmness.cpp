// A rough number for firmness: where it places a formula, and what ratings make of it.
#include "doctest/doctest.h"
#include "engine/analysis_blend.h"
#include "engine/blend_firmness.h"
#include "engine/store.h"
#include "engine/workspace_edits.h"
#include "shipped.h"
#include "support.h"

namespace test_blend_firmness {

using blend::Rated;
using quantity::Percent;

namespace {

blend::Firm firm_of(const workspace::Recipe& recipe) {
    return blend::firm(blend::parts_of(recipe.formula, shipped::presets().catalogue, recipe.own).value());
}

blend::Firm firm_of(const std::vector<formula::Line>& lines) {
    workspace::Recipe recipe;
    recipe.formula = support::formula_of(lines);
    return firm_of(recipe);
}

Rated rated(const char* title, std::int64_t wax, int rating) {
    return {title, {quantity::percent(wax), {}, {}, {}}, rating};
}

constexpr std::int64_t as_wax(std::int64_t percent) {
    return percent * decimal::kOne;
}

}  // namespace

TEST_CASE("the starters stand in the order in which one makes them: oil, butter, salve, lip balm, stick") {
    std::int64_t before = -1;
    for (const char* name : {"harvest_supper_body_oil", "frost_line_elbow_butter", "potting_shed_hand_salve",
                             "orchard_lip_balm", "seed_swap_cuticle_stick"}) {
        CAPTURE(name);
        const blend::Firm firm = firm_of(shipped::recipe(name));
        CHECK(firm.rough == blend::Rough::fits);
        CHECK(firm.firmness > before);
        before = firm.firmness;
    }
}

TEST_CASE("a quarter of beeswax in oil counts as a quarter of beeswax, half as much candelilla likewise") {
    CHECK(firm_of({support::line("beeswax_yellow", 250000), support::line("olive", 750000)}).firmness ==
          as_wax(25));
    CHECK(firm_of({support::line("candelilla", 125000), support::line("olive", 875000)}).firmness ==
          as_wax(25));
    CHECK(firm_of({support::line("olive", 1000000)}).firmness == 0);
}

TEST_CASE("what holds water, much powder or a stranger is given no number") {
    CHECK(firm_of(shipped::recipe("kitchen_garden_hand_lotion")).rough == blend::Rough::watery);
    CHECK(firm_of(shipped::recipe("greenhouse_foot_scrub")).rough == blend::Rough::powdery);
    CHECK(firm_of({support::line("olive", 800000), support::line("nobody_knows", 200000)}).rough ==
          blend::Rough::unknown);
}

TEST_CASE("a formula is placed between the nearest softer and firmer starter") {
    const auto ladder = analysis::ladder(shipped::presets().recipes, shipped::presets().catalogue);
    REQUIRE(ladder.size() == 5);
    const auto title = [&](std::optional<std::size_t> place) { return place ? ladder[*place].title : ""; };
    const auto balm = firm_of(shipped::recipe("orchard_lip_balm"));
    const blend::Between between = blend::between(balm.firmness + 1, ladder);
    CHECK(title(between.softer) == "Orchard lip balm");
    CHECK(title(between.firmer) == "Seed-swap cuticle stick");
    CHECK(title(blend::between(balm.firmness, ladder).same) == "Orchard lip balm");
    CHECK_FALSE(blend::between(as_wax(90), ladder).firmer.has_value());
    CHECK_FALSE(blend::between(-1, ladder).softer.has_value());
    CHECK(analysis::ladder(shipped::presets().recipes, shipped::presets().catalogue, "Orchard lip balm")
              .size() == 4);
}

TEST_CASE("a rating is expected between the nearest that were given, in proportion") {
    const std::vector<Rated> list{rated("a", 10, 2), rated("b", 20, 4)};
    CHECK(blend::expected_rating(as_wax(10), list) == 2 * decimal::kOne);
    CHECK(blend::expected_rating(as_wax(15), list) == 3 * decimal::kOne);
    CHECK(blend::expected_rating(as_wax(20), list) == 4 * decimal::kOne);
    CHECK_FALSE(blend::expected_rating(as_wax(9), list).has_value());
    CHECK_FALSE(blend::expected_rating(as_wax(21), list).has_value());
    CHECK_FALSE(blend::expected_rating(as_wax(10), {}).has_value());
}

TEST_CASE("ratings that go against the number are taken together, and two of one firmness are averaged") {
    const std::vector<Rated> list{rated("a", 10, 2), rated("b", 20, 5), rated("c", 22, 3), rated("d", 30, 5),
                                  rated("e", 10, 3)};
    CHECK(blend::expected_rating(as_wax(10), list) == 25000);
    CHECK(blend::expected_rating(as_wax(21), list) == 4 * decimal::kOne);
    CHECK(blend::expected_rating(as_wax(26), list) == 45000);
    std::int64_t before = 0;
    for (std::int64_t wax = 10; wax <= 30; ++wax) {
        const auto here = blend::expected_rating(as_wax(wax), list);
        REQUIRE(here.has_value());
        CHECK(*here >= before);
        before = *here;
    }
}

TEST_CASE("rating the same again replaces it, rating 0 takes it back, and the oldest of too many goes") {
    auto list = blend::rate({}, rated("Salve", 15, 3));
    list = blend::rate(list, rated("Salve", 16, 4));
    list = blend::rate(list, rated("Salve", 15, 2));
    REQUIRE(list.size() == 2);
    CHECK(list[1].rating == 2);
    CHECK(blend::rate(list, rated("Salve", 15, 0)).size() == 1);
    for (int i = 0; i < 60; ++i)
        list = blend::rate(std::move(list), rated("Salve", 20 + i, 3));
    CHECK(list.size() == blend::kMostRated);
    CHECK(list.back().body.wax == quantity::percent(79));
}

TEST_CASE("ratings are kept with the settings, and refused where they are none") {
    workspace::Settings settings;
    settings.firmness = {
        {"Orchard lip balm", {{221234}, quantity::percent(22), {}, quantity::percent(50)}, 4},
        rated("", 15, 1)};
    const std::string text = store::write_settings(settings, "");
    const auto read = store::read_settings(text);
    REQUIRE(read.ok());
    CHECK(read->settings == settings);
    const auto refused = [&](const char* from, const char* to, const char* place) {
        std::string changed = text;
        changed.replace(changed.find(from), std::string(from).size(), to);
        const auto again = store::read_settings(changed);
        REQUIRE_FALSE(again.ok());
        CHECK(again.error().place == place);
    };
    refused("\"rating\":4", "\"rating\":6", "firmness[0].rating");
    refused("\"wax_percent\":22.1234", "\"wax_percent\":-1", "firmness[0].wax_percent");
    refused("\"hard_percent\":22", "\"hardness\":22", "firmness[0].hardness");
    CHECK_FALSE(workspace::rate_firmness(settings, rated("x", 10, 9)).ok());
    CHECK(workspace::rate_firmness(settings, rated("", 15, 0))->firmness.size() == 1);
    CHECK(store::write_settings({}, "").find("firmness") == std::string::npos);
}

TEST_CASE("a frozen list of ratings reads as it was written") {
    const auto read = store::read_settings(shipped::data("v1_settings_firmness.json"));
    REQUIRE(read.ok());
    REQUIRE(read->settings.firmness.size() == 2);
    CHECK(read->settings.firmness[0] ==
          Rated{"Potting-shed hand salve", {quantity::percent(15), quantity::percent(12), {}, {705000}}, 3});
    CHECK(read->settings.firmness[1].body.soft == quantity::percent(8));
    CHECK(read->settings.firmness[1].rating == 5);
}

}  // namespace test_blend_firmness
