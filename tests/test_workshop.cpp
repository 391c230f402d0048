// A workshop of twelve people at three stations, worked by hand; then what changes with each thing that is
// said.
#include "engine/workshop.h"

#include <string>

#include "doctest/doctest.h"
#include "engine/workspace_edits.h"
#include "shipped.h"
#include "support.h"

namespace test_workshop {

using quantity::Mass;
using workshop::Ahead;
using workshop::Plan;
using workshop::Slot;

namespace {

constexpr Mass g(double grams) {
    return {static_cast<std::int64_t>(grams * 10000 + 0.5)};
}

// 20 % wax, 10 % shea, 0.5 % tocopherol, 0.6 % and 0.4 % of two essential oils, the rest sunflower oil: 68.5
// %.
workspace::Recipe salve() {
    workspace::Recipe recipe;
    recipe.product = "salve";
    recipe.formula =
        support::formula_of({support::line("beeswax_yellow", 200'000), support::line("shea", 100'000),
                             support::rest("sunflower_ho"), support::line("tocopherol", 5'000, "B"),
                             support::line("lavender", 6'000, "B"), support::line("geranium", 4'000, "B")});
    recipe.formula.phases[0].hold_c = 75 * decimal::kOne;
    recipe.formula.phases[1].add_below_c = 60 * decimal::kOne;
    recipe.steps = {{"", "Clean.", 10}, {"A", "Melt.", 20}, {"", "Look.", {}}, {"B", "Stir in, pour.", 30}};
    recipe.batch = support::containers({{"tin_30ml", 8, g(24), {}}}, 100);
    recipe.batch.loss = quantity::percent(4);
    return recipe;
}

// 12 people, a tin of 24 g each, 3 stations; a demonstration of 4 tins and 12 samples of 4 g; one spare kit.
Plan twelve() {
    Plan plan;
    plan.people = 12;
    plan.each = 1;
    plan.stations = 3;
    plan.shown = 4;
    plan.sample = g(4);
    plan.spare = 1;
    plan.packs = {{"beeswax_yellow", g(100)}, {"sunflower_ho", g(500)}, {"lavender", g(10)}};
    return plan;
}

result::Result<workshop::Workshop> tried(const workspace::Recipe& recipe, const Plan& plan) {
    return workshop::of({recipe.formula, recipe.steps, recipe.batch, recipe.product}, plan,
                        catalogue::with_own(shipped::presets().catalogue, recipe.own));
}
workshop::Workshop made(const workspace::Recipe& recipe, const Plan& plan) {
    auto all = tried(recipe, plan);
    REQUIRE(all.ok());
    return std::move(all).value();
}

}  // namespace

TEST_CASE("workshop: twelve people at three stations, figure by figure") {
    const workshop::Workshop all = made(salve(), twelve());
    CHECK(all.unit_g == g(24));

    // A station: 4 people, 4 tins x 24 g = 96 g; 4 % stay behind: 96 / 0.96 = 100 g.
    REQUIRE(all.kits.size() == 3);
    for (const workshop::Kit& kit : all.kits) {
        CHECK(kit.people == 4);
        CHECK(kit.units == 4);
        CHECK(kit.total == g(100));
        // Essential oils: 1 % of 100 g is 1 g, as 4 g of a dilution of 25 %. 3 g of that are sunflower oil,
        // which the kit's own 68.5 g give: 65.5 g.
        CHECK(kit.mix == g(4));
        CHECK(kit.grams == std::vector<Mass>{g(20), g(10), g(65.5), g(0.5), {}, {}});
    }
    REQUIRE(all.spare.size() == 1);
    CHECK(all.spare[0] == all.kits[0]);

    // The demonstration: 4 tins x 24 g + 12 samples x 4 g = 144 g; 144 / 0.96 = 150 g.
    REQUIRE(all.demonstration);
    CHECK(all.demonstration->units == 4);
    CHECK(all.demonstration->total == g(150));
    CHECK(all.demonstration->mix == g(6));  // 1.5 g / 25 %
    CHECK(all.demonstration->grams ==
          std::vector<Mass>{g(30), g(15), g(98.25), g(0.75), {}, {}});  // 102.75 - 4.5

    // Diluted beforehand: 3 x 4 + 4 + 6 = 22 g; a quarter essential oils, 3 to 2; the rest sunflower oil.
    REQUIRE(all.dilution);
    CHECK(all.dilution->strength == quantity::percent(25));
    CHECK(all.dilution->total == g(22));
    CHECK(all.dilution->oil == 2);
    CHECK(all.dilution->parts == std::vector<workshop::Dilution::Part>{{4, g(3.3)}, {5, g(2.2)}});
    CHECK(all.dilution->with == g(16.5));

    // In all: 3 x 100 + 150 + 100 = 550 g, in 12 + 4 + 4 = 20 tins.
    CHECK(all.total == g(550));
    CHECK(all.units == 20);
    // Wax 4 x 20 + 30 = 110 g: two packs of 100 g leave 90 g. Sunflower oil 4 x 65.5 + 98.25 + 16.5 = 376.75
    // g: one of 500 g leaves 123.25 g. Lavender oil 3.3 g of 10 g leave 6.7 g. No packs were said of the
    // others.
    using workshop::Bought;
    using workshop::Total;
    CHECK(all.totals == std::vector<Total>{{0, g(110), Bought{2, g(100), g(90)}},
                                           {1, g(55), {}},
                                           {2, g(376.75), Bought{1, g(500), g(123.25)}},
                                           {3, g(2.75), {}},
                                           {4, g(3.3), Bought{1, g(10), g(6.7)}},
                                           {5, g(2.2), {}}});
    Mass sum;
    for (const Total& one : all.totals)
        sum = sum + one.need;
    CHECK(sum == g(550));

    // Weighed the day before: wax, butter, oil. Not what is spoilt by air or evaporates.
    CHECK(all.ahead == std::vector<Ahead>{Ahead::day_before, Ahead::day_before, Ahead::day_before,
                                          Ahead::active, Ahead::evaporates, Ahead::evaporates});

    // 230 V x 16 A = 3680 W, of which 80 % are 2944 W: one hotplate of 1500 W. Three stations and the
    // demonstration are four hotplates, so four circuits.
    CHECK(all.power == workshop::Power{2944, 4, 1, 4});

    // Doors at 10:00: set up from 9:30, welcome until 10:15, steps of 10, 20, no said time and 30 minutes,
    // clear up from 11:15 to 11:30.
    CHECK(all.day == std::vector<Slot>{{Slot::Kind::set_up, 570, 30, 0},
                                       {Slot::Kind::welcome, 600, 15, 0},
                                       {Slot::Kind::step, 615, 10, 0},
                                       {Slot::Kind::step, 625, 20, 1},
                                       {Slot::Kind::step, 645, {}, 2},
                                       {Slot::Kind::step, 645, 30, 3},
                                       {Slot::Kind::clear_up, 675, 15, 0}});

    // Asked of everybody, and first by what is in it: shea is a kernel, tocopherol may be from soya, wax
    // comes from bees, two oils are scents.
    REQUIRE(all.asked.size() == 11);
    CHECK(all.asked[0] == workshop::Asked{"workshop.ask_nut", {1}});
    CHECK(all.asked[1] == workshop::Asked{"workshop.ask_soya", {3}});
    CHECK(all.asked[2] == workshop::Asked{"workshop.ask_bee", {0}});
    CHECK(all.asked[3] == workshop::Asked{"workshop.ask_scent", {4, 5}});
    for (std::size_t i = 4; i < all.asked.size(); ++i)
        CHECK(all.asked[i].lines.empty());
}

TEST_CASE(
    "workshop: people who do not divide evenly sit at the first stations, and a spare kit is for the "
    "largest") {
    Plan plan = twelve();
    plan.people = 13;
    plan.spare = 2;
    const workshop::Workshop all = made(salve(), plan);
    CHECK(all.kits[0].people == 5);
    CHECK(all.kits[1].people == 4);
    CHECK(all.kits[2].people == 4);
    CHECK(all.kits[0].total == g(125));  // 5 x 24 / 0.96
    CHECK(all.spare.size() == 2);
    CHECK(all.spare[1] == all.kits[0]);
    CHECK(all.units == 13 + 4 + 10);
}

TEST_CASE("workshop: undiluted, every kit holds its own essential oils") {
    Plan plan = twelve();
    plan.diluted = false;
    const workshop::Workshop all = made(salve(), plan);
    CHECK_FALSE(all.dilution);
    CHECK(all.kits[0].grams == std::vector<Mass>{g(20), g(10), g(68.5), g(0.5), g(0.6), g(0.4)});
    CHECK(all.totals[4].need == g(3.3));
}

TEST_CASE("workshop: the coarser the scale, the weaker the dilution, and the totals stay") {
    workspace::Recipe recipe = salve();
    recipe.batch.division = {1000};  // 0.1 g: a kit's mix has to be 2 g or more
    const workshop::Workshop fine = made(recipe, twelve());
    CHECK(fine.dilution->strength == quantity::percent(25));
    recipe.batch.division = {10000};  // 1 g: 20 g or more, so 5 % for the 1 g in 100 g
    const workshop::Workshop coarse = made(recipe, twelve());
    REQUIRE(coarse.dilution);
    CHECK(coarse.dilution->strength == quantity::percent(5));
    CHECK(coarse.kits[0].mix == g(20));
    Mass sum;
    for (const workshop::Total& one : coarse.totals)
        sum = sum + one.need;
    CHECK(sum == coarse.total);
}

TEST_CASE("workshop: without a liquid oil, or without scents, nothing is diluted") {
    workspace::Recipe recipe = salve();
    recipe.formula.lines[2].ingredient = "cocoa";
    CHECK_FALSE(made(recipe, twelve()).dilution);
    recipe = salve();
    recipe.formula.lines.resize(4);
    CHECK_FALSE(made(recipe, twelve()).dilution);
}

TEST_CASE("workshop: no demonstration is no hotplate and no kit") {
    Plan plan = twelve();
    plan.shown = 0;
    plan.sample = {};
    const workshop::Workshop all = made(salve(), plan);
    CHECK_FALSE(all.demonstration);
    CHECK(all.power.plates == 3);
    plan.sample = g(2);  // samples alone: 12 x 2 g / 0.96 = 25 g
    CHECK(made(salve(), plan).demonstration->total == g(25));
    CHECK(made(salve(), plan).demonstration->units == 0);
}

TEST_CASE("workshop: hotplates that one circuit does not carry are said to be too strong") {
    Plan plan = twelve();
    plan.watts = 1000;
    CHECK(made(salve(), plan).power == workshop::Power{2944, 4, 2, 2});
    plan.volts = 120;
    plan.amperes = 15;  // 1440 W
    CHECK(made(salve(), plan).power == workshop::Power{1440, 4, 1, 4});
    plan.watts = 1500;
    CHECK(made(salve(), plan).power == workshop::Power{1440, 4, 0, 0});
}

TEST_CASE("workshop: what must not be weighed the day before says why") {
    workspace::Recipe lotion = shipped::recipe("kitchen_garden_hand_lotion");
    const workshop::Workshop all = made(lotion, Plan{});
    CHECK(all.ahead[0] == Ahead::water);
    CHECK(all.ahead[1] == Ahead::day_before);  // glycerin
    CHECK(all.ahead[7] == Ahead::preservative);
    workspace::Recipe oil = shipped::recipe("harvest_supper_body_oil");
    CHECK(made(oil, Plan{}).ahead[4] == Ahead::heat_sensitive);  // rosehip oil
    oil.formula.lines[1].ingredient.clear();
    oil.formula.lines[1].name = "something";
    CHECK(made(oil, Plan{}).ahead[1] == Ahead::unknown);
    CHECK(made(shipped::recipe("greenhouse_foot_scrub"), Plan{}).ahead.back() == Ahead::day_before);  // sugar
}

TEST_CASE("workshop: a recipe that says no unit has none, and a plan out of bounds is refused by its field") {
    workspace::Recipe recipe = salve();
    recipe.batch = support::grams(1'000'000, 100);
    CHECK(tried(recipe, twelve()).error().code == result::Code::amount_missing);
    recipe = salve();
    recipe.formula.lines[2].rest = false;
    CHECK(tried(recipe, twelve()).error().code == result::Code::sum_not_hundred);
    for (const auto& [field, change] :
         {std::pair(
              "workshop.people", +[](Plan& plan) { plan.people = 0; }),
          std::pair(
              "workshop.stations", +[](Plan& plan) { plan.stations = 13; }),
          std::pair(
              "workshop.watts", +[](Plan& plan) { plan.watts = 0; }),
          std::pair(
              "workshop.starts", +[](Plan& plan) { plan.starts = 1440; }),
          std::pair(
              "workshop.packs", +[](Plan& plan) { plan.packs[0].grams = {}; })}) {
        Plan plan = twelve();
        change(plan);
        CHECK(tried(salve(), plan).error().place == field);
        CHECK_FALSE(workspace::set_workshop({}, plan));
    }
}

TEST_CASE("workshop: packs are rounded up, and a pack that fits exactly leaves nothing") {
    CHECK(workshop::bought(g(100), g(50)) == workshop::Bought{2, g(50), {}});
    CHECK(workshop::bought(g(100.01), g(50)) == workshop::Bought{3, g(50), g(49.99)});
    CHECK(workshop::bought({}, g(50)) == workshop::Bought{0, g(50), {}});
    CHECK_FALSE(workshop::bought(g(1), {}));
    formula::Line line;
    line.name = "Grandmother's balm";
    const auto said = workspace::set_pack({}, line, g(30));
    CHECK(workshop::pack_of(said->workshop.packs, line) == g(30));
    CHECK(workspace::set_pack(*said, line, {})->workshop.packs.empty());
}

}  // namespace test_workshop
