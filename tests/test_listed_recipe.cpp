// What a list of ingredients allows, as a recipe.
#include "engine/listed_recipe.h"

#include "doctest/doctest.h"
#include "shipped.h"

namespace test_listed_recipe {

using quantity::percent;
using reading_list::As;
using reading_list::Entry;

TEST_CASE(
    "fats come first, what bears no heat last, a carrier goes with what it carries, and 0 % is left out") {
    std::vector<Entry> entries(6);
    entries[0].ingredient = "tocopherol";
    entries[1].ingredient = "sunflower_ho";
    entries[1].as = As::carrier;
    entries[2].ingredient = "shea";
    entries[3].written = "Lantern essence";
    entries[4].ingredient = "cocoa";
    entries[5].ingredient = "castor";
    const workspace::Recipe recipe =
        listed_recipe::of(entries, {percent(1), percent(1), percent(60), percent(8), percent(0), percent(30)},
                          shipped::presets().catalogue);
    std::string said;
    for (const formula::Line& line : recipe.formula.lines)
        said +=
            line.phase + " " + line.ingredient + line.name + " " + decimal::print(line.percent.grid) + "\n";
    const std::string phase = catalogue::find_ingredient(shipped::presets().catalogue, "tocopherol")->phase ==
                                      catalogue::Phase::cool_down
                                  ? "B"
                                  : "A";
    CHECK(said.find(phase + " tocopherol 2\n") != std::string::npos);
    CHECK(said.find("A shea 60\nA Lantern essence 8\nA castor 30\n") != std::string::npos);
    CHECK(said.find("cocoa") == std::string::npos);
    CHECK(said.find("sunflower") == std::string::npos);
    CHECK(formula::percents(recipe.formula).ok());
}

}  // namespace test_listed_recipe
