// Own ingredients: on the device, in recipes, and apart from what strangers bring.
#include <algorithm>
#include <string>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "engine/store.h"
#include "engine/workspace_made.h"
#include "engine/workspace_own.h"
#include "shipped.h"
#include "support.h"

namespace test_own {

using catalogue::Ingredient;
using quantity::percent;
using result::Code;
using result::Error;
using workspace::Origin;
using workspace::Recipe;
using workspace::Workspace;

namespace {

const catalogue::Catalogue& shelf() {
    static const catalogue::Catalogue made = support::shelf();
    return made;
}

Ingredient named(std::string name) {
    Ingredient own;
    own.name = std::move(name);
    own.role = "liquid_oil";
    own.source = "paper with the bottle";
    own.standing = source::Standing::supplier;
    return own;
}

Recipe lotion() {
    Recipe recipe;
    recipe.formula = support::formula_of({support::line("water", percent(70).grid),
                                          support::line("sunflower", percent(29).grid),
                                          support::line("own_keeper", percent(1).grid)});
    return recipe;
}

bool stopped_for_water(const Recipe& recipe, const std::vector<Ingredient>& mine) {
    for (const finding::Finding& one : analysis::of(recipe, shelf(), {}, mine).findings)
        if (one.code == finding::Code::water_without_preservative) return true;
    return false;
}

const char* const kNow = "2026-11-25T12:00:00Z";

}  // namespace

TEST_CASE("an own ingredient gets an id made from its name, and no other entry's") {
    Workspace device;
    CHECK(workspace::add_own(device, shelf(), named("Hazel oil, from the market"), kNow).value() ==
          "own_hazel_oil_from_the_market");
    CHECK(workspace::add_own(device, shelf(), named("Hazel oil from the market"), kNow).value() ==
          "own_hazel_oil_from_the_market_2");
    CHECK(workspace::add_own(device, shelf(), named("\xE6\xA4\xBF"), kNow).value() == "own");
    CHECK(workspace::add_own(device, shelf(), named("\xE6\xB2\xB9"), kNow).value() == "own_2");
    Recipe strangers;
    strangers.own = {named("Plum oil")};
    strangers.own[0].id = "own_plum_oil";
    workspace::add(device, "theirs", strangers, kNow);
    CHECK(workspace::add_own(device, shelf(), named("Plum oil"), kNow).value() == "own_plum_oil_2");
    CHECK(device.own.size() == 5);
    for (std::size_t i = 1; i < device.own.size(); ++i)
        CHECK(device.own[i - 1].ingredient.id < device.own[i].ingredient.id);
    CHECK(workspace::add_own(device, shelf(), named(""), kNow).error().code == Code::name_empty);
    CHECK(workspace::add_own(device, shelf(), named(std::string(81, 'x')), kNow).error().place == "names");
}

TEST_CASE("a shipped ingredient is copied with what an own entry may say, based on the shipped one") {
    const Ingredient& shea = *catalogue::find_ingredient(shipped::presets().catalogue, "shea");
    const Ingredient copy = workspace::copy_of(shea);
    CHECK(copy.based_on == "shea");
    CHECK(copy.name == shea.name);
    CHECK(copy.inci == shea.inci);
    CHECK(copy.role == shea.role);
    REQUIRE(copy.density.has_value());
    CHECK(copy.density->value.density == shea.density->value.density);
    CHECK(copy.source == shea.density->source);
    CHECK(copy.standing >= shea.density->standing);
    CHECK(copy.id.empty());
    CHECK(copy.own);
    CHECK_FALSE(copy.melting_c.has_value());  // shown from the shipped one, not said anew
}

TEST_CASE(
    "an own ingredient is changed in place, goes to the bin, comes back, and is erased from there only") {
    Workspace device;
    const std::string id = workspace::add_own(device, shelf(), named("Plum oil"), kNow).value();
    Ingredient changed = workspace::find_own(device, id)->ingredient;
    changed.max_percent["salve"] = percent(5);
    CHECK(workspace::set_own(device, changed, kNow).value() == id);
    CHECK(workspace::find_own(device, id)->ingredient.max_percent.at("salve") == percent(5));
    changed.parts = {{id, percent(10)}};
    CHECK(workspace::set_own(device, changed, kNow).error().code == Code::made_loop);
    changed.parts.clear();
    changed.name.clear();
    CHECK(workspace::set_own(device, changed, kNow).error() == Error{Code::name_empty, "names", ""});
    changed.id = "own_else";
    CHECK(workspace::set_own(device, changed, kNow).error().code == Code::field_unknown_value);

    CHECK_FALSE(workspace::erase_own(device, id));
    CHECK(workspace::bin_own(device, id, kNow));
    CHECK_FALSE(workspace::bin_own(device, id, kNow));
    CHECK(workspace::mine(device, shelf()).empty());
    CHECK(workspace::restore_own(device, id));
    CHECK_FALSE(workspace::restore_own(device, id));
    CHECK(workspace::mine(device, shelf()).size() == 1);
    CHECK(workspace::bin_own(device, id, kNow));
    CHECK(workspace::erase_own(device, id));
    CHECK(device.own.empty());
}

TEST_CASE("two own entries that would hold one another are refused with both names") {
    Workspace device;
    const std::string plum = workspace::add_own(device, shelf(), named("Plum oil"), kNow).value();
    Ingredient mix = named("Mix");
    mix.parts = {{plum, percent(50)}};
    const std::string mixed = workspace::add_own(device, shelf(), mix, kNow).value();
    Ingredient changed = workspace::find_own(device, plum)->ingredient;
    changed.parts = {{mixed, percent(50)}};
    CHECK(workspace::set_own(device, changed, kNow).error() ==
          Error{Code::made_loop, "ingredients", "Plum oil\nMix\nPlum oil"});
}

TEST_CASE(
    "a recipe holds a copy of what it uses and of what that is made of: nothing is lost with the entry") {
    Workspace device;
    const std::string plum = workspace::add_own(device, shelf(), named("Plum oil"), kNow).value();
    Ingredient mix = named("Mix");
    mix.parts = {{plum, percent(50)}, {"sunflower", percent(50)}};
    const std::string mixed = workspace::add_own(device, shelf(), mix, kNow).value();
    const auto mine = workspace::mine(device, shelf());
    const workspace::Used used =
        workspace::use_own(Recipe{}, workspace::find_own(device, mixed)->ingredient, mine).value();
    CHECK(used.id == mixed);
    REQUIRE(used.recipe.own.size() == 2);
    CHECK(workspace::own_of(used.recipe, plum) != nullptr);
    CHECK(workspace::use_own(used.recipe, workspace::find_own(device, mixed)->ingredient, mine)
              .value()
              .recipe == used.recipe);
    workspace::add(device, "r", used.recipe, kNow);
    CHECK(workspace::recipes_with(device, plum) == 1);
    workspace::bin_own(device, plum, kNow);
    workspace::erase_own(device, plum);
    CHECK(workspace::own_of(workspace::find(device, "r")->recipe, plum)->name == "Plum oil");
}

TEST_CASE("an entry a stranger's recipe brought is not overwritten by mine of the same id") {
    Recipe recipe;
    recipe.own = {named("Plum oil")};
    recipe.own[0].id = "own_plum_oil";
    recipe.own[0].source = "a stranger";
    recipe.formula = support::formula_of({support::line("own_plum_oil", percent(100).grid)});
    Workspace device;
    const std::string id = workspace::add_own(device, shelf(), named("Plum oil"), kNow).value();
    REQUIRE(id == "own_plum_oil");
    const Ingredient& mine = workspace::find_own(device, id)->ingredient;
    CHECK(workspace::origin_of(recipe, id, nullptr) == Origin::came_along);
    CHECK(workspace::origin_of(recipe, id, &mine) == Origin::mine_other);
    CHECK(workspace::origin_of(recipe, "wax", nullptr) == Origin::shipped);

    const workspace::Used used = workspace::use_own(recipe, mine, {}).value();
    CHECK(used.id == "own_plum_oil_2");
    CHECK(used.recipe.own[0] == recipe.own[0]);
    CHECK(used.recipe.own[1].source == "paper with the bottle");
    CHECK(workspace::use_own(used.recipe, mine, {}).value().id == "own_plum_oil_2");

    const Recipe taken = workspace::take_mine(recipe, mine, {}).value();
    CHECK(taken.own == std::vector<Ingredient>{mine});
    CHECK(workspace::origin_of(taken, id, &mine) == Origin::mine);
    CHECK(workspace::take_mine(Recipe{}, mine, {}).error().code == Code::field_unknown_value);
}

TEST_CASE("what came with a recipe is kept among mine under a new id, and the recipe follows") {
    Workspace device;
    workspace::add_own(device, shelf(), named("Plum oil"), kNow);
    Recipe recipe;
    recipe.own = {named("Plum oil"), named("Mix")};
    recipe.own[0].id = "own_plum_oil";
    recipe.own[0].role = "butter";
    recipe.own[1].id = "own_mix";
    recipe.own[1].parts = {{"own_plum_oil", percent(100)}};
    recipe.formula = support::formula_of({support::line("own_plum_oil", percent(100).grid)});
    recipe.batch.stock = {{"own_plum_oil", quantity::grams(10)}};
    const workspace::Used used = workspace::keep_own(device, shelf(), recipe, "own_plum_oil", kNow).value();
    CHECK(used.id == "own_plum_oil_2");
    CHECK(device.own.size() == 2);
    CHECK(workspace::find_own(device, "own_plum_oil")->ingredient.role == "liquid_oil");
    CHECK(used.recipe.formula.lines[0].ingredient == used.id);
    CHECK(used.recipe.batch.stock[0].ingredient == used.id);
    CHECK(workspace::own_of(used.recipe, "own_mix")->parts[0].ingredient == used.id);
    CHECK(workspace::origin_of(used.recipe, used.id, &workspace::find_own(device, used.id)->ingredient) ==
          Origin::mine);
    CHECK(workspace::keep_own(device, shelf(), recipe, "own_else", kNow).error().code ==
          Code::field_unknown_value);
}

TEST_CASE("a copy no line needs leaves the recipe only where this device has the same entry") {
    Workspace device;
    const std::string id = workspace::add_own(device, shelf(), named("Plum oil"), kNow).value();
    Recipe recipe =
        workspace::use_own(Recipe{}, workspace::find_own(device, id)->ingredient, {}).value().recipe;
    Ingredient theirs = named("Their oil");
    theirs.id = "own_theirs";
    recipe.own.push_back(theirs);
    const auto mine = workspace::mine(device, shelf());
    CHECK(workspace::without_unused(recipe, mine).own == std::vector<Ingredient>{theirs});
    recipe.formula = support::formula_of({support::line(id, percent(100).grid)});
    CHECK(workspace::without_unused(recipe, mine) == recipe);
}

TEST_CASE("a preservative that came with a recipe does not silence the stop for water; mine does") {
    Recipe recipe = lotion();
    Ingredient keeper = named("Keeper");
    keeper.id = "own_keeper";
    keeper.own = true;
    keeper.role = "preservative";
    recipe.own = {keeper};
    CHECK(stopped_for_water(recipe, {}));
    CHECK_FALSE(stopped_for_water(recipe, {keeper}));
    Ingredient other = keeper;
    other.source = "another";
    CHECK(stopped_for_water(recipe, {other}));
    SUBCASE("nor does one that it claims to be a part of something") {
        recipe.own[0].role = "liquid_oil";
        recipe.own[0].parts = {{"benzyl_alcohol", percent(100)}};
        CHECK(stopped_for_water(recipe, {}));
        CHECK_FALSE(stopped_for_water(recipe, {recipe.own[0]}));
    }
    SUBCASE("nor one that it claims to be based on") {
        recipe.own[0].role = "";
        recipe.own[0].based_on = "benzyl_alcohol";
        CHECK(stopped_for_water(recipe, {}));
        CHECK_FALSE(stopped_for_water(recipe, {recipe.own[0]}));
    }
}

TEST_CASE("water in a made part is water in the product, whoever made the part") {
    Recipe recipe;
    Ingredient gel = named("Gel");
    gel.id = "own_gel";
    gel.parts = {{"water", percent(90)}, {"sunflower", percent(10)}};
    recipe.own = {gel};
    recipe.formula =
        support::formula_of({support::line("own_gel", percent(10).grid), support::rest("sunflower")});
    CHECK(stopped_for_water(recipe, {}));
    CHECK(stopped_for_water(recipe, {gel}));
}

TEST_CASE("an own variety is held to the range of the shipped ingredient it is based on") {
    Recipe recipe;
    Ingredient mine = workspace::copy_of(*catalogue::find_ingredient(shelf(), "sunflower"));
    mine.id = "own_sunflower";
    recipe.own = {mine};
    recipe.formula =
        support::formula_of({support::line("own_sunflower", percent(95).grid), support::rest("wax")});
    const auto found = analysis::of(recipe, shelf(), {}).findings;
    CHECK(std::any_of(found.begin(), found.end(), [](const finding::Finding& one) {
        return one.code == finding::Code::usual_range_left;
    }));
}

TEST_CASE("an own ingredient comes back from its record as it was") {
    workspace::KeptOwn kept;
    Ingredient own = named("Lavender, bed four");
    own.id = "own_lavender_bed_four";
    own.names = {{"de", "Lavendel"}, {"en", "Lavender, bed four"}};
    own.inci = {{"eu", "Lavandula Angustifolia Oil"}, {"us", "Lavandula Angustifolia (Lavender) Oil"}};
    own.based_on = "lavender";
    own.density = source::Sourced<catalogue::DensityAt>{{{8850}, {}}, "", {}};
    own.parts = {{"sunflower", percent(98)}};
    own.made = catalogue::Made{catalogue::MadeAs::infusion, percent(80), {"Lavender heads"}};
    own.analysis =
        catalogue::LotAnalysis{"L-7", "2026-08-01", "Hollow Lane", {{"linalool", {{}, percent(35), {}}}}};
    own.max_percent = {{"5A", percent(1)}};
    kept.ingredient = workspace::as_own(own);
    kept.saves = 3;
    kept.changed = kept.binned = kNow;
    CHECK(store::read_kept_own(store::write_kept_own(kept)).value() == kept);
    CHECK(store::read_kept_own(R"({"tarebench":1,"kind":"kept"})").error().code == Code::not_a_recipe);
    CHECK(store::read_kept_own(R"({"tarebench":1,"kind":"ingredient","saves":1})").error().code ==
          Code::field_missing);
}

}  // namespace test_own
