// Made parts: what they hold, how much has to be made, splitting a formula into what it holds in the end, and
// loops.
#include <string>

#include "doctest/doctest.h"
#include "engine/batch.h"
#include "engine/density.h"
#include "engine/made.h"
#include "engine/workspace_made.h"
#include "shipped.h"
#include "support.h"

namespace test_made {

using catalogue::Ingredient;
using catalogue::MadeAs;
using quantity::percent;
using quantity::Percent;
using result::Code;
using result::Error;
using workspace::Recipe;
using workspace::Workspace;

namespace {

const catalogue::Catalogue& shelf() {
    static const catalogue::Catalogue made = support::shelf();
    return made;
}

Ingredient own(std::string id, std::vector<catalogue::Part> parts) {
    Ingredient one;
    one.own = true;
    one.id = id;
    one.name = "The " + id;
    one.parts = std::move(parts);
    return one;
}

// Sunflower and jojoba with dry petals, which are strained out.
Recipe infusion() {
    Recipe recipe;
    recipe.title = "Marigold oil";
    formula::Line petals = support::line("", percent(10).grid);
    petals.name = "Dried marigold petals";
    petals.strained = true;
    recipe.formula = support::formula_of(
        {support::line("sunflower", percent(60).grid), support::line("jojoba", percent(30).grid), petals});
    return workspace::set_made(recipe, "own_marigold_oil", MadeAs::infusion, percent(80)).value();
}

Recipe salve() {
    Recipe recipe;
    recipe.title = "Potting-shed salve";
    recipe.formula =
        support::formula_of({support::line("wax", percent(20).grid), support::rest("sunflower")});
    return recipe;
}

std::int64_t sum_of(const made::Split& split) {
    std::int64_t sum = 0;
    for (const made::Share& share : split.shares)
        sum += share.percent.grid;
    return sum;
}

made::Split split_of(const formula::Formula& formula, const std::vector<Ingredient>& owns) {
    return made::split(formula, formula::percents(formula).value(), shelf(), owns).value();
}

Workspace book_with(const std::vector<Recipe>& recipes) {
    Workspace book;
    for (const Recipe& recipe : recipes)
        workspace::add(book, "kept_" + recipe.title, recipe, "2026-11-25T12:00:00Z");
    return book;
}

}  // namespace

TEST_CASE("an infusion holds its oils, not what was strained out, and adds to 100") {
    const Ingredient made = workspace::made_ingredient(infusion(), shelf()).value();
    CHECK(made.id == "own_marigold_oil");
    CHECK(made.name == "Marigold oil");
    REQUIRE(made.parts.size() == 2);
    CHECK(made.parts[0] == catalogue::Part{"sunflower", {666667}});  // 60 : 30, by largest remainder
    CHECK(made.parts[1] == catalogue::Part{"jojoba", {333333}});
    CHECK(made.role == "liquid_oil");
    REQUIRE(made.made.has_value());
    CHECK(made.made->as == MadeAs::infusion);
    CHECK(made.made->yield == percent(80));
    CHECK(made.made->infused_with == std::vector<std::string>{"Dried marigold petals"});
    CHECK(made.standing == source::Standing::estimate);
    CHECK(made.inci.empty());  // what came over from the plant has a name nobody knows here
}

TEST_CASE("a line that stands twice is one part, a line at nothing none") {
    Recipe recipe = salve();
    recipe.formula =
        support::formula_of({support::line("sunflower", percent(30).grid), support::line("wax", 0),
                             support::line("sunflower", percent(70).grid, "B")});
    recipe = workspace::set_made(recipe, "own_x", MadeAs::blend, percent(100)).value();
    const Ingredient made = workspace::made_ingredient(recipe, shelf()).value();
    CHECK(made.parts == std::vector<catalogue::Part>{{"sunflower", percent(100)}});
}

TEST_CASE("a made part of which nothing stays, or that yields nothing, is refused") {
    Recipe recipe = infusion();
    for (formula::Line& line : recipe.formula.lines)
        line.strained = true;
    CHECK(workspace::made_ingredient(recipe, shelf()).error().code == Code::made_empty);
    CHECK(made::to_weigh(recipe.formula, percent(80), quantity::grams(10)).error().code == Code::made_empty);
    CHECK(workspace::set_made(salve(), "own_x", MadeAs::blend, Percent{0}).error() ==
          Error{Code::yield_invalid, "made.yield_percent", "0"});
    CHECK(workspace::set_made(salve(), "own_x", MadeAs::blend, Percent{1000001}).error().code ==
          Code::yield_invalid);
    CHECK(workspace::set_made(salve(), "", MadeAs::blend, percent(100)).error().code == Code::name_empty);
}

TEST_CASE("what has to be weighed follows from yield and from what is strained out, rounded up") {
    // 100 g of oil at a yield of 80 % are 125 g of oil put in; that is 90 % of what is weighed.
    CHECK(made::to_weigh(infusion().formula, percent(80), quantity::grams(100)).value() ==
          quantity::Mass{1388889});
    CHECK(made::to_weigh(salve().formula, percent(100), quantity::grams(100)).value() ==
          quantity::grams(100));
    CHECK(made::to_weigh(salve().formula, Percent{0}, quantity::grams(100)).error().code ==
          Code::yield_invalid);
}

TEST_CASE("a split adds to exactly what the lines add to, shares by largest remainder") {
    const formula::Formula formula =
        support::formula_of({support::line("thirds", percent(10).grid),
                             support::line("wax", percent(20).grid), support::rest("sunflower")});
    const made::Split split = split_of(
        formula, {own("thirds", {{"shea", {333333}}, {"jojoba", {333333}}, {"sunflower", {333334}}})});
    CHECK(split.shares == std::vector<made::Share>{{"wax", "", percent(20)},
                                                   {"sunflower", "", {700000 + 33334}},
                                                   {"shea", "", {33333}},
                                                   {"jojoba", "", {33333}}});
    CHECK(split.unsplit == Percent{0});
    CHECK(sum_of(split) == quantity::kHundred.grid);
}

TEST_CASE("a made part within a made part is split too, and a name without an id stays a name") {
    formula::Line named = support::line("", percent(40).grid);
    named.name = "Ida's butter";
    const formula::Formula formula = support::formula_of({support::line("outer", percent(60).grid), named});
    const made::Split split =
        split_of(formula, {own("inner", {{"wax", percent(50)}, {"shea", percent(50)}}),
                           own("outer", {{"inner", percent(50)}, {"sunflower", percent(50)}})});
    CHECK(split.shares == std::vector<made::Share>{{"", "Ida's butter", percent(40)},
                                                   {"sunflower", "", percent(30)},
                                                   {"wax", "", percent(15)},
                                                   {"shea", "", percent(15)}});
}

TEST_CASE("what parts leave open stays under the made part's name and is counted as not split") {
    const formula::Formula formula =
        support::formula_of({support::line("mix", percent(50).grid), support::rest("wax")});
    made::Split split = split_of(formula, {own("mix", {{"shea", percent(60)}})});
    CHECK(split.unsplit == percent(20));
    CHECK(split.shares == std::vector<made::Share>{
                              {"wax", "", percent(50)}, {"shea", "", percent(30)}, {"mix", "", percent(20)}});
    SUBCASE("parts that add to more than the whole say nothing") {
        split = split_of(formula, {own("mix", {{"shea", percent(60)}, {"wax", percent(60)}})});
        CHECK(split.unsplit == percent(50));
        CHECK(split.shares[0] == made::Share{"mix", "", percent(50)});
    }
}

TEST_CASE("a shipped ingredient is never split by what an own entry of its id claims") {
    const formula::Formula formula =
        support::formula_of({support::line("water", percent(50).grid), support::rest("wax")});
    const made::Split split = split_of(formula, {own("water", {{"sunflower", percent(100)}})});
    CHECK(split.shares[0] == made::Share{"water", "", percent(50)});
}

TEST_CASE("a hundred entries woven into one another are split without going round for ever") {
    std::vector<Ingredient> woven;
    for (int level = 0; level < 7; ++level)
        for (int i = 0; i < 14; ++i) {
            std::vector<catalogue::Part> parts;
            for (int k = 0; k < 14; ++k)
                parts.push_back(
                    {level == 6 ? "wax" : "own_" + std::to_string(level + 1) + "_" + std::to_string(k),
                     {50000}});
            woven.push_back(own("own_" + std::to_string(level) + "_" + std::to_string(i), parts));
        }
    const formula::Formula formula = support::formula_of({support::line("own_0_0", percent(100).grid)});
    const made::Split split = split_of(formula, woven);
    CHECK(sum_of(split) == quantity::kHundred.grid);
}

TEST_CASE("entries that hold one another are refused with the names on the way") {
    CHECK(made::fault_of_parts({own("a", {{"b", percent(10)}}), own("b", {{"c", percent(10)}}),
                                own("c", {{"a", percent(10)}, {"wax", percent(10)}})}) ==
          Error{Code::made_loop, "ingredients", "The a\nThe b\nThe c\nThe a"});
    CHECK(made::fault_of_parts({own("a", {{"a", percent(10)}})}) ==
          Error{Code::made_loop, "ingredients", "The a\nThe a"});
    const formula::Formula formula = support::formula_of({support::line("a", percent(100).grid)});
    CHECK(made::split(formula, {percent(100)}, shelf(), {own("a", {{"a", percent(10)}})}).error().code ==
          Code::made_loop);
    SUBCASE("a recipe that brings such entries along is not taken in") {
        Recipe recipe = salve();
        recipe.own = {own("a", {{"b", percent(10)}}), own("b", {{"a", percent(10)}})};
        CHECK(workspace::checked(recipe).error().code == Code::made_loop);
    }
    SUBCASE("the sentence reads as a chain") {
        CHECK(
            words::say(shipped::english(), Error{Code::made_loop, "", "A\nB\nA"}).find("A holds B holds A") !=
            std::string::npos);
    }
}

TEST_CASE("made parts are followed eight deep and no deeper") {
    const auto chain = [](int length) {
        std::vector<Ingredient> all;
        for (int i = 0; i < length; ++i)
            all.push_back(own("own_" + std::to_string(i),
                              {{i + 1 < length ? "own_" + std::to_string(i + 1) : "wax", percent(100)}}));
        return all;
    };
    const formula::Formula formula = support::formula_of({support::line("own_0", percent(100).grid)});
    CHECK(split_of(formula, chain(8)).shares == std::vector<made::Share>{{"wax", "", percent(100)}});
    CHECK(made::split(formula, {percent(100)}, shelf(), chain(9)).error().code == Code::made_too_deep);
}

TEST_CASE("a made part says no density of its own: it has that of its parts, as far as they are known") {
    // 1 / (0.5 / 0.92 + 0.5 / 0.868) = 0.89325 g/mL, volumes taken as additive.
    const catalogue::Catalogue known =
        catalogue::with_own(shelf(), {own("mix", {{"sunflower", percent(50)}, {"jojoba", percent(50)}}),
                                      own("open", {{"sunflower", percent(50)}, {"mystery", percent(50)}})});
    CHECK(density::of(*catalogue::find_ingredient(known, "mix"), known) ==
          density::Blend{{8932}, quantity::kHundred});
    CHECK(density::of(*catalogue::find_ingredient(known, "open"), known) ==
          density::Blend{{9200}, percent(50)});
    const formula::Formula formula = support::formula_of(
        {support::line("open", percent(40).grid), support::line("wax", percent(60).grid)});
    const density::Blend blend = density::of(formula, {percent(40), percent(60)}, known);
    CHECK(blend.known == percent(80));
    CHECK(blend.density.grid == 9497);  // 80 / (20 / 0.92 + 60 / 0.96)
    Ingredient said = own("said", {{"sunflower", percent(100)}});
    said.density = source::Sourced<catalogue::DensityAt>{{{9000}, {}}, "", source::Standing::estimate};
    CHECK(density::of(said, known).density.grid == 9000);
    CHECK(density::of(own("loop", {{"loop", percent(100)}}), known).density.grid == 0);
}

TEST_CASE("a cap of a part becomes a cap of the whole, so that a dilution is capped as what is in it") {
    Recipe recipe = salve();
    Ingredient drop = own("own_drop", {});
    drop.max_percent = {{"salve", percent(1)}};
    recipe.own = {drop};
    recipe.formula =
        support::formula_of({support::line("own_drop", percent(10).grid), support::rest("sunflower")});
    recipe = workspace::set_made(recipe, "own_mix", MadeAs::pre_dilution, percent(100)).value();
    const Ingredient made = workspace::made_ingredient(recipe, shelf()).value();
    CHECK(made.max_percent == std::map<std::string, Percent>{{"salve", percent(10)}});
}

TEST_CASE("a blend of ingredients with names has a declaration name, the larger part first") {
    const catalogue::Catalogue& known = shipped::presets().catalogue;
    Recipe recipe = salve();
    recipe.formula =
        support::formula_of({support::line("beeswax_yellow", percent(10).grid), support::rest("shea")});
    recipe = workspace::set_made(recipe, "own_mix", MadeAs::blend, percent(100)).value();
    const Ingredient made = workspace::made_ingredient(recipe, known).value();
    const auto inci = [&](const char* id) { return catalogue::find_ingredient(known, id)->inci.at("eu"); };
    CHECK(made.inci.at("eu") == inci("shea") + ", " + inci("beeswax_yellow"));
}

TEST_CASE("a made part is used in another recipe as one ingredient, with what it holds") {
    const Workspace book = book_with({infusion(), salve()});
    const workspace::Used used = workspace::use_made(book, shelf(), salve(), "own_marigold_oil").value();
    CHECK(used.id == "own_marigold_oil");
    REQUIRE(used.recipe.own.size() == 1);
    CHECK(used.recipe.own[0] == workspace::made_ingredient(infusion(), shelf()).value());
    CHECK(workspace::use_made(book, shelf(), used.recipe, "own_marigold_oil").value().recipe.own.size() == 1);
    CHECK(workspace::use_made(book, shelf(), salve(), "own_nothing").error().code == Code::not_a_recipe);
}

TEST_CASE("a recipe that would hold itself by way of others is refused with the names on the way") {
    // Marigold oil is in the mix, the mix is in the balm base: neither may go back into marigold oil.
    Workspace book = book_with({infusion()});
    Recipe mix = salve();
    mix.title = "Hazel mix";
    mix = workspace::use_made(book, shelf(), mix, "own_marigold_oil").value().recipe;
    mix.formula = formula::set_ingredient(mix.formula, 0, "own_marigold_oil", "").value();
    mix = workspace::set_made(mix, "own_hazel_mix", MadeAs::blend, percent(100)).value();
    workspace::add(book, "mix", mix, "");
    Recipe base = salve();
    base.title = "Balm base";
    base = workspace::use_made(book, shelf(), base, "own_hazel_mix").value().recipe;
    CHECK(base.own.size() == 2);  // the mix, and the oil it is made of
    base.formula = formula::set_ingredient(base.formula, 0, "own_hazel_mix", "").value();
    base = workspace::set_made(base, "own_balm_base", MadeAs::blend, percent(100)).value();
    workspace::add(book, "base", base, "");

    CHECK(workspace::use_made(book, shelf(), infusion(), "own_marigold_oil").error() ==
          Error{Code::made_loop, "lines", "Marigold oil\nMarigold oil"});
    CHECK(workspace::use_made(book, shelf(), infusion(), "own_hazel_mix").error() ==
          Error{Code::made_loop, "lines", "Marigold oil\nHazel mix\nMarigold oil"});
    CHECK(workspace::use_made(book, shelf(), infusion(), "own_balm_base").error() ==
          Error{Code::made_loop, "lines", "Marigold oil\nBalm base\nHazel mix\nMarigold oil"});
    CHECK(workspace::use_made(book, shelf(), salve(), "own_balm_base").ok());
}

TEST_CASE("a batch says how much of each made part it takes and what has to be weighed for it") {
    Workspace book = book_with({infusion()});
    Recipe recipe = workspace::use_made(book, shelf(), salve(), "own_marigold_oil").value().recipe;
    recipe.formula = support::formula_of({support::line("wax", percent(20).grid),
                                          support::line("own_marigold_oil", percent(50).grid),
                                          support::line("own_marigold_oil", percent(30).grid, "B")});
    recipe.batch = support::grams(quantity::grams(100).grid, 100);
    const batch::Batch batch =
        batch::make(recipe.formula, recipe.batch, catalogue::with_own(shelf(), recipe.own), "salve").value();
    CHECK(workspace::needs(book, recipe, batch) ==
          std::vector<workspace::Need>{
              {"own_marigold_oil", quantity::grams(80), "kept_Marigold oil", quantity::Mass{1111112}}});
    workspace::bin(book, "kept_Marigold oil", "2026-11-26T00:00:00Z");
    CHECK(workspace::needs(book, recipe, batch) ==
          std::vector<workspace::Need>{{"own_marigold_oil", quantity::grams(80), "", {}}});
    const Recipe to_make = workspace::set_batch_grams(infusion(), quantity::Mass{1111112}).value();
    CHECK(to_make.batch.amount == batch::Amount::grams);
    CHECK(to_make.batch.grams == quantity::Mass{1111112});
    CHECK(workspace::set_batch_grams(infusion(), {0}).error().code == Code::batch_zero);
}

TEST_CASE("a recipe that is a made part no longer has nothing strained out") {
    const Recipe plain = workspace::without_made(infusion());
    CHECK_FALSE(plain.made.has_value());
    for (const formula::Line& line : plain.formula.lines)
        CHECK_FALSE(line.strained);
}

}  // namespace test_made
