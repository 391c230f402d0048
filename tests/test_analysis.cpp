// The report for one recipe: sums, batch, and every remark with its figures.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "support.h"

namespace test_analysis {

using finding::Code;
using finding::Finding;
using finding::Severity;
using support::line;
using support::rest;
using workspace::Recipe;

namespace {

Recipe recipe_of(const std::vector<formula::Line>& lines) {
    Recipe recipe;
    recipe.formula = support::formula_of(lines);
    recipe.batch = support::grams(1000000, 100);
    return recipe;
}

analysis::Analysis report(const Recipe& recipe) {
    return analysis::of(recipe, support::shelf());
}

std::vector<Finding> with_code(const analysis::Analysis& report, Code code) {
    std::vector<Finding> found;
    for (const Finding& one : report.findings)
        if (one.code == code) found.push_back(one);
    return found;
}

std::string codes(const analysis::Analysis& report) {
    std::string text;
    for (const Finding& one : report.findings)
        text += std::string(finding::code_name(one.code)) + (one.line ? std::to_string(*one.line) : "") + " ";
    return text;
}

}  // namespace

TEST_CASE("a sound recipe has percents, a batch and no remarks") {
    const auto good = report(recipe_of({line("wax", 250000), line("shea", 250000), rest("sunflower")}));
    CHECK(good.stated_sum == quantity::percent(50));
    CHECK(good.rest == quantity::percent(50));
    CHECK(good.percents.ok());
    CHECK(good.batch.ok());
    CHECK(codes(good) == "");
}

TEST_CASE("lines that do not add to 100 are a stop with their sum") {
    const auto bad = report(recipe_of({line("wax", 250000), line("shea", 700000)}));
    CHECK_FALSE(bad.percents.ok());
    CHECK(bad.batch.error().code == result::Code::sum_not_hundred);
    CHECK_FALSE(bad.rest.has_value());
    REQUIRE(codes(bad) == "sum_not_hundred ");
    CHECK(bad.findings[0].severity == Severity::stop);
    CHECK(bad.findings[0].value == 950000);
    CHECK(bad.findings[0].limit == 1000000);
    CHECK(bad.findings[0].unit == "%");
}

TEST_CASE("a rest line with less than nothing left is a stop") {
    const auto bad = report(recipe_of({line("wax", 600000), line("shea", 600000), rest("jojoba")}));
    CHECK(bad.rest == quantity::Percent{-200000});
    REQUIRE(codes(bad) == "rest_negative2 ");
    CHECK(bad.findings[0].value == -200000);
    CHECK(bad.findings[0].subject == "jojoba");
}

TEST_CASE("an empty formula is a note") {
    const auto blank = report(Recipe{});
    REQUIRE(codes(blank) == "formula_empty ");
    CHECK(blank.findings[0].severity == Severity::note);
}

TEST_CASE("a line at nothing and a rest line that comes to nothing are notes") {
    CHECK(codes(report(recipe_of({line("wax", 0), rest("jojoba")}))) == "line_empty0 ");
    CHECK(codes(report(recipe_of({line("wax", 1000000), rest("jojoba")}))) == "line_empty1 ");
}

TEST_CASE("the same ingredient twice in a phase is noted at the second line, in two phases it is not") {
    CHECK(codes(report(recipe_of({line("wax", 500000), line("wax", 500000)}))) == "line_twice1 ");
    CHECK(codes(report(recipe_of({line("wax", 500000), line("wax", 500000, "B")}))) == "");
    auto named = line("", 500000), same = named, other = named;
    named.name = same.name = "Ida's butter";
    other.name = "Ada's butter";
    CHECK(with_code(report(recipe_of({named, same})), Code::line_twice).size() == 1);
    CHECK(with_code(report(recipe_of({named, other})), Code::line_twice).empty());
}

TEST_CASE("an ingredient that is not in the catalogue is noted, an own one is known") {
    auto named = line("", 500000);
    named.name = "Ida's butter";
    Recipe recipe = recipe_of({named, line("elder_oil", 500000)});
    const auto unknown = report(recipe);
    REQUIRE(codes(unknown) == "ingredient_unknown0 ingredient_unknown1 ");
    CHECK(unknown.findings[0].subject == "Ida's butter");
    CHECK(unknown.findings[1].subject == "elder_oil");
    catalogue::Ingredient own;
    own.id = "elder_oil";
    recipe.own = {own};
    CHECK(codes(report(recipe)) == "ingredient_unknown0 ");
}

TEST_CASE("a share outside the usual range is remarked on for products that stay on the skin") {
    Recipe recipe = recipe_of({line("sunflower", 850000), line("wax", 150000)});  // usual: 10 to 80
    const auto over = report(recipe);
    REQUIRE(codes(over) == "usual_range_left0 ");
    CHECK(over.findings[0].severity == Severity::caution);
    CHECK(over.findings[0].value == 850000);
    CHECK(over.findings[0].limit == 800000);
    CHECK(over.findings[0].source == "memory");
    CHECK(over.findings[0].standing == source::Standing::memory);

    const auto under = report(recipe_of({line("sunflower", 50000), line("wax", 950000)}));
    REQUIRE(codes(under) == "usual_range_left0 ");
    CHECK(under.findings[0].severity == Severity::note);
    CHECK(under.findings[0].limit == 100000);

    CHECK(codes(report(recipe_of({rest("sunflower"), line("wax", 150000)}))) == "usual_range_left0 ");
    CHECK(codes(report(recipe_of({line("sunflower", 800000), line("wax", 200000)}))) == "");
    recipe.product = "scrub";
    CHECK(codes(report(recipe)) == "");
    recipe.product = "unheard_of";
    CHECK(codes(report(recipe)) == "");
}

TEST_CASE("lines that vanish or are far off on this scale are cautions") {
    Recipe recipe = recipe_of(
        {line("wax", 400000), line("shea", 577000), line("benzyl_alcohol", 20000), line("oat", 3000)});
    recipe.batch = support::grams(300000, 10000);
    const auto rough = report(recipe);
    CHECK(codes(rough) == "line_error_large0 line_error_large1 line_error_large2 line_rounds_to_zero3 ");
    const auto large = with_code(rough, Code::line_error_large)[2];
    CHECK(large.value == 1666700);  // 1 g of 0.6 g
    CHECK(large.limit == 50000);
    CHECK(with_code(rough, Code::line_error_large)[0].value == 83300);  // 1 g of 12 g: under 20 steps
    const auto none = with_code(rough, Code::line_rounds_to_zero)[0];
    CHECK(none.severity == Severity::caution);
    CHECK(none.value == 900);  // 0.3 % of 30 g
    CHECK(none.limit == 10000);
    CHECK(none.unit == "g");
}

TEST_CASE("a mass rounded up to the division is noted; containers are not") {
    Recipe recipe = recipe_of({line("wax", 1000000)});
    recipe.batch = support::grams(100005, 1000);
    const auto rounded = report(recipe);
    REQUIRE(codes(rounded) == "batch_rounded ");
    CHECK(rounded.findings[0].value == 101000);
    CHECK(rounded.findings[0].limit == 100005);
    recipe.batch = support::containers({{"tube", 14, {}, {}}}, 100);
    CHECK(codes(report(recipe)) == "");
}

TEST_CASE("a fill by volume on a density that is known in part is a caution") {
    Recipe recipe = recipe_of({line("wax", 400000), line("oat", 600000)});
    recipe.batch = support::containers({{"jar", 2, {}, quantity::percent(90)}}, 100);
    const auto partly = report(recipe);
    REQUIRE(codes(partly) == "density_partly_known ");
    CHECK(partly.findings[0].value == 400000);
    recipe.batch = support::containers({{"jar", 2, {}, {}}}, 100);
    CHECK(codes(report(recipe)) == "");
}

TEST_CASE("water without a preservative is a stop by common practice") {
    const auto wet = report(recipe_of({line("wax", 200000), rest("water")}));
    REQUIRE(codes(wet) == "water_without_preservative1 ");
    CHECK(wet.findings[0].severity == Severity::stop);
    CHECK(wet.findings[0].subject == "water");
    CHECK(wet.findings[0].source == "common_practice");
    CHECK(wet.findings[0].standing == source::Standing::common_practice);

    CHECK(codes(report(recipe_of({line("wax", 200000), line("benzyl_alcohol", 10000), rest("water")}))) ==
          "");
    const auto nothing = report(recipe_of({line("wax", 200000), line("benzyl_alcohol", 0), rest("water")}));
    CHECK(with_code(nothing, Code::water_without_preservative).size() == 1);
    const auto no_water = report(recipe_of({line("water", 0), rest("wax")}));
    CHECK(with_code(no_water, Code::water_without_preservative).empty());
    // also while the lines do not add up yet
    const auto unfinished = report(recipe_of({line("wax", 200000), line("water", 200000)}));
    CHECK(codes(unfinished) == "sum_not_hundred water_without_preservative1 ");
}

TEST_CASE("what a recipe brings along never loosens a check on a shipped ingredient") {
    Recipe recipe = recipe_of({line("wax", 200000), rest("water")});
    catalogue::Ingredient own;
    own.id = "water";
    own.role = "liquid_oil";
    recipe.own = {own};
    CHECK(codes(report(recipe)) == "water_without_preservative1 ");
    own.id = "wax";
    own.role = "preservative";
    recipe.own = {own};
    CHECK(codes(report(recipe)) == "water_without_preservative1 ");
}

TEST_CASE("stops come first, then cautions, then notes, each from the whole to the last line") {
    Recipe recipe = recipe_of(
        {line("elder_oil", 0), line("sunflower", 900000), line("elder_oil", 0), line("water", 50000)});
    CHECK(codes(report(recipe)) ==
          "sum_not_hundred water_without_preservative3 usual_range_left1 line_empty0 ingredient_unknown0 "
          "line_empty2 "
          "line_twice2 ingredient_unknown2 ");
}

}  // namespace test_analysis
