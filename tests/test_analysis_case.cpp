// What the checks look at: portions of the product, made parts looked into, strained lines out again.
#include <string>

#include "doctest/doctest.h"
#include "engine/analysis_case.h"
#include "shipped.h"
#include "support.h"

namespace test_analysis_case {

using quantity::percent;
using quantity::Percent;
using support::line;
using support::rest;
using workspace::Recipe;

namespace {

const catalogue::Catalogue& shelf() {
    return shipped::presets().catalogue;
}

Recipe recipe_of(const std::vector<formula::Line>& lines) {
    Recipe recipe;
    recipe.formula = support::formula_of(lines);
    return recipe;
}

catalogue::Ingredient own(std::string id, std::vector<catalogue::Part> parts) {
    catalogue::Ingredient one;
    one.id = std::move(id);
    one.own = true;
    one.name = one.id;
    one.role = "liquid_oil";
    one.parts = std::move(parts);
    return one;
}

Percent sum_of(const safety::Case& the) {
    Percent sum;
    for (const safety::Portion& portion : the.portions)
        sum = sum + portion.percent;
    return sum;
}

}  // namespace

TEST_CASE("a plain formula is its lines, the rest line filled in") {
    const Recipe recipe = recipe_of({line("beeswax_yellow", 200000), rest("jojoba")});
    const safety::Case the = analysis::case_of(recipe, shelf());
    REQUIRE(the.portions.size() == 2);
    CHECK(the.portions[1].ingredient == "jojoba");
    CHECK(the.portions[1].percent == percent(80));
    CHECK(the.portions[1].known == catalogue::find_ingredient(shelf(), "jojoba"));
    CHECK(the.portions[1].vouched_for);
    CHECK(the.product == catalogue::find_product(shelf(), "salve"));
    CHECK(the.rest == percent(80));
}

TEST_CASE("a made part becomes what it holds, line by line and to the last step") {
    Recipe recipe = recipe_of({line("own_infusion", 333333), line("jojoba", 333333), rest("own_infusion")});
    recipe.own = {own("own_infusion", {{"olive", percent(99)}, {"tocopherol", percent(1)}})};
    const safety::Case the = analysis::case_of(recipe, shelf(), recipe.own);
    REQUIRE(the.portions.size() == 5);
    CHECK(the.portions[0].line == 0);
    CHECK(the.portions[0].ingredient == "olive");
    CHECK(the.portions[0].percent == Percent{330000});
    CHECK(the.portions[1].percent == Percent{3333});
    CHECK(the.portions[4].line == 2);
    CHECK(sum_of(the) == percent(100));
    CHECK(the.portions[0].vouched_for);
    // Of a stranger's part nothing is vouched for, though what it says it holds is shipped.
    const safety::Case theirs = analysis::case_of(recipe, shelf());
    CHECK_FALSE(theirs.portions[0].vouched_for);
    CHECK(theirs.portions[2].vouched_for);
}

TEST_CASE("strained lines go out and what stays is the whole") {
    Recipe recipe = recipe_of({line("olive", 800000), line("", 180000), line("tocopherol", 20000)});
    recipe.formula.lines[1].name = "Dried marigold petals";
    recipe.formula.lines[1].strained = true;
    const safety::Case the = analysis::case_of(recipe, shelf());
    REQUIRE(the.portions.size() == 2);
    CHECK(the.strained == std::vector<std::string>{"Dried marigold petals"});
    CHECK(the.portions[0].percent == Percent{975610});  // 80 of 82
    CHECK(the.portions[1].percent == Percent{24390});
    CHECK(sum_of(the) == percent(100));
    CHECK(the.percents[1] == percent(18));  // the line itself stays as it is typed
}

TEST_CASE("a formula that does not add up is looked at as it is typed") {
    const safety::Case low = analysis::case_of(recipe_of({line("olive", 300000)}), shelf());
    CHECK(low.portions[0].percent == percent(30));
    const Recipe over = recipe_of({line("olive", 900000), line("shea", 300000), rest("jojoba")});
    const safety::Case high = analysis::case_of(over, shelf());
    CHECK(high.rest == Percent{-200000});
    CHECK(high.portions[2].percent == Percent{0});
}

TEST_CASE("an own entry that holds itself is one portion of which nothing more is known") {
    Recipe recipe = recipe_of({line("own_loop", 1000000)});
    recipe.own = {own("own_loop", {{"own_loop", percent(100)}})};
    const safety::Case the = analysis::case_of(recipe, shelf(), recipe.own);
    REQUIRE(the.portions.size() == 1);
    CHECK(the.portions[0].ingredient == "own_loop");
    CHECK(the.portions[0].percent == percent(100));
}

TEST_CASE("every portion of random recipes belongs to a line, and what adds to 100 stays 100") {
    chance::Generator chance(7);
    for (int i = 0; i < 500; ++i) {
        const Recipe recipe = support::random_recipe(chance, shelf());
        const safety::Case the = analysis::case_of(recipe, shelf());
        for (const safety::Portion& portion : the.portions)
            CHECK(portion.line < recipe.formula.lines.size());
        if (formula::percents(recipe.formula)) CHECK(sum_of(the) == percent(100));
    }
}

}  // namespace test_analysis_case
