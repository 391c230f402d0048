// Quantities with units, and conversion by the factors of 16 CFR 500.19.
#include <string>

#include "doctest/doctest.h"
#include "engine/quantity.h"

namespace test_quantity {

using quantity::Mass;
using quantity::Percent;
using quantity::Volume;
using result::Code;

TEST_CASE("half a kilogram is 500 g") {
    CHECK(quantity::read_mass("0,5 kg").value() == quantity::grams(500));
    CHECK(quantity::read_mass("500").value() == quantity::grams(500));
}

TEST_CASE("the factors are those of 16 CFR 500.19(a)") {
    CHECK(quantity::read_mass("1 oz").value() == Mass{283495});         // 28.3495 g
    CHECK(quantity::read_mass("1 lb").value() == Mass{4535920});        // 453.592 g
    CHECK(quantity::read_volume("1 fl oz").value() == Volume{295735});  // 29.5735 mL
    CHECK(quantity::ounces_grid(quantity::grams(1000)) == 352740);      // 1 g = 0.0352740 oz
    CHECK(quantity::ounces_grid(quantity::grams(1)) == 353);
    CHECK(quantity::fluid_ounces_grid(quantity::millilitres(1000)) == 338140);  // 1 mL = 0.0338140 fl oz
    CHECK(quantity::fluid_ounces_grid(quantity::millilitres(10)) == 3381);
}

TEST_CASE("net weights come out as worked in example EX-15 of the regulatory facts") {
    struct Row {
        const char* text;
        std::int64_t grid;
    };
    // 4.252425, 14.17475, 56.699, 113.398 and 453.592 g, to the nearest 0.0001 g
    for (const Row& row : {Row{"0.15 oz", 42524}, Row{"0.5 oz", 141748}, Row{"2 oz", 566990},
                           Row{"4 oz", 1133980}, Row{"1 lb", 4535920}, Row{"20 oz", 5669900}}) {
        CAPTURE(row.text);
        CHECK(quantity::read_mass(row.text).value() == Mass{row.grid});
    }
    CHECK(quantity::read_volume("1 fl oz").value() == Volume{295735});
    CHECK(quantity::read_volume("8 fl oz").value() == Volume{2365880});
}

TEST_CASE("units are read in any case, with or without a space") {
    struct Row {
        std::string text;
        std::int64_t grid;
    };
    for (const Row& row :
         {Row{"250 g", 2500000}, Row{"250g", 2500000}, Row{"250\u00A0g", 2500000}, Row{" 250 G ", 2500000},
          Row{"1/2 kg", 5000000}, Row{"\u00BD kg", 5000000}, Row{"1 234,5 g", 12345000}, Row{"500 mg", 5000},
          Row{"0.05 mg", 1}, Row{"2 grams", 20000}, Row{"2 LB", 9071840}, Row{"0", 0}}) {
        CAPTURE(row.text);
        const auto got = quantity::read_mass(row.text);
        REQUIRE(got.ok());
        CHECK(got.value() == Mass{row.grid});
    }
    for (const Row& row :
         {Row{"60 mL", 600000}, Row{"60", 600000}, Row{"0.5 L", 5000000}, Row{"2 cl", 200000},
          Row{"2 fl. oz.", 591470}, Row{"2 FL  OZ", 591470}, Row{"1 litre", 10000000}}) {
        CAPTURE(row.text);
        const auto got = quantity::read_volume(row.text);
        REQUIRE(got.ok());
        CHECK(got.value() == Volume{row.grid});
    }
}

TEST_CASE("what is no quantity is refused, with its place") {
    struct Row {
        std::string text;
        Code code;
        int character;
    };
    for (const Row& row :
         {Row{"", Code::number_empty, 1}, Row{"g", Code::number_malformed, 1},
          Row{"nan", Code::number_malformed, 1}, Row{"5 mL", Code::unit_unknown, 3},
          Row{"5 spoons", Code::unit_unknown, 3}, Row{"1e3 g", Code::unit_unknown, 2},
          Row{"1 lb 4 oz", Code::unit_unknown, 3}, Row{"\u00BD stone", Code::unit_unknown, 3},
          Row{"1,234.5 g", Code::number_ambiguous, 6}, Row{"-5 g", Code::number_negative, 1},
          Row{"100001 kg", Code::number_too_large, 1}, Row{"0.00001 g", Code::number_too_fine, 7},
          Row{"5 %", Code::number_malformed, 3}}) {
        CAPTURE(row.text);
        const auto got = quantity::read_mass(row.text);
        REQUIRE_FALSE(got.ok());
        CHECK(got.error().code == row.code);
        CHECK(got.error().place == "character " + std::to_string(row.character));
    }
    CHECK(quantity::read_volume("5 g").error().code == Code::unit_unknown);
    CHECK(quantity::read_volume("5 oz").error().detail == "oz");
}

TEST_CASE("a percent is from 0 to 100, its sign may be left out") {
    CHECK(quantity::read_percent("21").value() == quantity::percent(21));
    CHECK(quantity::read_percent("21 %").value() == quantity::percent(21));
    CHECK(quantity::read_percent("21,5%").value() == Percent{215000});
    CHECK(quantity::read_percent("1/3 %").value() == Percent{3333});
    CHECK(quantity::read_percent("100").value() == quantity::kHundred);
    CHECK(quantity::read_percent("100.0001").error().code == Code::number_too_large);
    CHECK(quantity::read_percent("-1").error().code == Code::number_negative);
    CHECK(quantity::read_percent("%").error().code == Code::number_empty);
    CHECK(quantity::read_percent("5%%").error().code == Code::number_malformed);
    CHECK(quantity::read_percent("5 g").error().code == Code::number_malformed);
}

TEST_CASE("mass and volume meet through a density") {
    const quantity::Density oil{9200};
    CHECK(quantity::mass_of(quantity::millilitres(60), oil) == Mass{552000});
    CHECK(quantity::volume_of(Mass{552000}, oil) == quantity::millilitres(60));
    CHECK(quantity::share_of(quantity::grams(250), quantity::percent(21)) == Mass{525000});
    CHECK(quantity::share_of(Mass{1}, quantity::percent(50)) == Mass{1});  // half a step away from zero
}

}  // namespace test_quantity
