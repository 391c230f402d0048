// The ways of saying what a container takes, and its volume cold and warm.
#include <cmath>
#include <vector>

#include "doctest/doctest.h"
#include "engine/batch.h"
#include "support.h"

namespace test_batch_fill {

using batch::Containers;
using batch::FillFrom;
using quantity::Mass;
using quantity::Percent;
using quantity::Volume;
using support::line;
using support::rest;

namespace {

formula::Formula oil(std::optional<std::int64_t> hold = {}) {
    auto made = support::formula_of({line("sunflower", 1000000)});  // 0.92 g/mL at 20 °C
    made.phases[0].hold_c = hold;
    return made;
}

result::Result<batch::Batch> make(const formula::Formula& formula, Containers one) {
    batch::Request request = support::containers({std::move(one)}, 100);
    request.loss = Percent{0};
    return batch::make(formula, request, support::shelf(), "salve");
}

Containers jar() {
    return {"jar", 1, {}, {}};  // 60 mL
}

}  // namespace

TEST_CASE("a test fill is taken as weighed and says where it comes from") {
    Containers one = jar();
    one.fill_g = Mass{500000};
    one.test_fill_g = Mass{487300};
    const auto made = make(oil(), one);
    CHECK(made->fills[0].each == Mass{487300});
    CHECK(made->fills[0].from == FillFrom::test_fill);
}

TEST_CASE("the water a container takes to the brim tells what it holds") {
    // Handbook of Chemistry and Physics, 53rd edition, page F-4: 0.9982 g/mL at 20 °C
    CHECK(batch::capacity_of(quantity::grams(100)) == Volume{1001803});
    Containers one{"my_pot", 2, {}, quantity::percent(80)};
    one.water_g = Mass{998200};  // 100 mL; the catalogue need not have the container
    const auto made = make(oil(), one);
    CHECK(made->fills[0].holds == quantity::millilitres(100));
    CHECK(made->fills[0].each == Mass{736000});  // 80 mL × 0.92
    CHECK(made->fills[0].from == FillFrom::water);
    CHECK(made->fill == Mass{1472000});
}

TEST_CASE("without a share, nine tenths of the brim are taken and said to be usual") {
    Containers one = jar();
    one.water_g = Mass{998200};
    const auto made = make(oil(), one);
    CHECK(made->fills[0].each == Mass{828000});
    CHECK(made->fills[0].share == quantity::percent(90));
    CHECK(made->fills[0].share_usual);
}

TEST_CASE("several kinds of container are filled at once, each its own way") {
    Containers by_water{"my_pot", 1, {}, quantity::percent(50)};
    by_water.water_g = Mass{998200};
    batch::Request request = support::containers({jar(), {"tube", 3, {}, {}}, by_water}, 100);
    request.loss = Percent{0};
    const auto made = batch::make(oil(), request, support::shelf(), "salve");
    CHECK(made->fill == Mass{550000 + 3 * 45000 + 460000});
    CHECK(made->total == made->fill);
}

TEST_CASE("people times units is so many containers") {
    batch::Request request;
    request.amount = batch::Amount::people;
    request.people = 12;
    request.each = 2;
    request.unit = Containers{"tube", 1, {}, {}};
    const auto made = batch::make(oil(), request, support::shelf(), "salve");
    CHECK(made->fills[0].count == 24);
    CHECK(made->fill == Mass{24 * 45000});
    CHECK(made->loss_usual);
    CHECK(made->total == Mass{1136900});  // 108 / 0.95
}

TEST_CASE("without a container people get grams each") {
    batch::Request request;
    request.amount = batch::Amount::people;
    request.people = 12;
    request.each = 20;
    request.loss = Percent{0};
    CHECK(batch::make(oil(), request, support::shelf(), "salve")->total == quantity::grams(240));
    request.each = 2;
    request.unit = Containers{"", 1, Mass{75000}, {}};  // two portions of 7.5 g
    const auto made = batch::make(oil(), request, support::shelf(), "salve");
    CHECK(made->total == quantity::grams(180));
    CHECK(made->fills[0].count == 24);
}

TEST_CASE("people are refused with the place of what is missing or too much") {
    batch::Request request;
    request.amount = batch::Amount::people;
    const auto fault = [&] { return batch::make(oil(), request, support::shelf(), "salve").error(); };
    CHECK(fault() == result::Error{result::Code::batch_zero, "batch.people", ""});
    request.people = 12;
    CHECK(fault() == result::Error{result::Code::batch_zero, "batch.each", ""});
    request.each = 10000;
    request.unit = Containers{"tube", 1, {}, {}};
    CHECK(fault() == result::Error{result::Code::too_many, "batch.each", "10000"});
    request.each = 1;
    request.unit->id = "urn";
    CHECK(fault() == result::Error{result::Code::container_unknown, "batch.unit.id", "urn"});
}

TEST_CASE("a container's water is refused where it is nothing or more than a batch") {
    Containers one = jar();
    one.water_g = Mass{0};
    CHECK(make(oil(), one).error() ==
          result::Error{result::Code::batch_zero, "batch.containers[0].water_g", ""});
    one.water_g = Mass{batch::kLargest.grid + 1};
    CHECK(make(oil(), one).error().code == result::Code::batch_too_large);
}

TEST_CASE("poured warm, an oil takes more room than cold") {
    // ρ(T) = ρ(20) − 0.00068 (T − 20): 0.92 − 0.034 = 0.886 g/mL at 70 °C
    const auto made = make(oil(700000), {"jar", 1, Mass{460000}, {}});
    CHECK(made->pour_c == 700000);
    CHECK(made->warm->density == quantity::Density{8860});
    CHECK(made->fills[0].cold == quantity::millilitres(50));
    CHECK(made->fills[0].warm == Volume{519187});  // 46 / 0.886
    CHECK(made->fills[0].holds == quantity::millilitres(60));
}

TEST_CASE("no warm volume is told without a temperature, nor where there is water") {
    CHECK_FALSE(make(oil(), {"jar", 1, Mass{460000}, {}})->warm.has_value());
    auto lotion = support::formula_of({line("water", 700000), rest("sunflower")});
    lotion.phases[0].hold_c = 700000;
    const auto made = make(lotion, {"jar", 1, Mass{460000}, {}});
    CHECK_FALSE(made->warm.has_value());
    CHECK_FALSE(made->fills[0].warm.has_value());
    CHECK(made->fills[0].cold.has_value());
}

TEST_CASE("no volume is told where a good part of the weight has no known density") {
    auto scrub = support::formula_of({line("oat", 110000), rest("sunflower")});  // nothing is known of oat
    scrub.phases[0].hold_c = 700000;
    CHECK_FALSE(make(scrub, {"jar", 1, Mass{460000}, {}})->fills[0].cold.has_value());
    CHECK_FALSE(make(scrub, {"jar", 1, Mass{460000}, {}})->fills[0].warm.has_value());
    scrub.lines[0].percent = {90000};
    CHECK(make(scrub, {"jar", 1, Mass{460000}, {}})->fills[0].warm.has_value());
}

TEST_CASE("it is poured as warm as the last phase leaves it") {
    auto made =
        support::formula_of({line("wax", 200000, "A"), rest("sunflower", "B"), line("jojoba", 10000, "C")});
    CHECK_FALSE(density::pour_c(made).has_value());
    made.phases[0].hold_c = 750000;
    made.phases[1].hold_c = 700000;
    CHECK(density::pour_c(made) == 700000);
    made.phases[2].add_below_c = 650000;
    CHECK(density::pour_c(made) == 650000);
    made.phases[2].add_below_c = 800000;  // a ceiling above what it has changes nothing
    CHECK(density::pour_c(made) == 700000);
}

TEST_CASE("a made part without a density has the one of its parts") {
    catalogue::Ingredient mix;
    mix.id = "mix";
    mix.parts = {{"sunflower", quantity::percent(50)}, {"jojoba", quantity::percent(50)}};
    const auto shelf = catalogue::with_own(support::shelf(), {mix});
    const auto blend = density::of(support::formula_of({line("mix", 1000000)}), {quantity::kHundred}, shelf);
    const auto apart = density::of(support::formula_of({line("sunflower", 500000), line("jojoba", 500000)}),
                                   {quantity::percent(50), quantity::percent(50)}, shelf);
    CHECK(blend == apart);
}

TEST_CASE("parts that go round in a circle end and are not known") {
    catalogue::Ingredient one, other;
    one.id = "one";
    other.id = "other";
    for (int i = 0; i < 100; ++i) {
        one.parts.push_back({"other", quantity::percent(1)});
        other.parts.push_back({"one", quantity::percent(1)});
    }
    const auto shelf = catalogue::with_own(support::shelf(), {one, other});
    CHECK(density::of(support::formula_of({line("one", 1000000)}), {quantity::kHundred}, shelf) ==
          density::Blend{});
}

}  // namespace test_batch_fill
