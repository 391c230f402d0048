// The essential oils and extracts of the shipped catalogue: identity, and figures against what was printed.
// Constituents and limits are not in the catalogue, so not here.
#include <string>
#include <string_view>
#include <vector>

#include "doctest/doctest.h"
#include "engine/catalogue.h"
#include "shipped.h"

namespace test_essential_oils {

namespace {

const catalogue::Ingredient& ingredient(std::string_view id) {
    const auto* found = catalogue::find_ingredient(shipped::presets().catalogue, id);
    REQUIRE(found != nullptr);
    return *found;
}

std::int64_t grid(double value) {
    return decimal::from_double(value).value();
}

}  // namespace

TEST_CASE(
    "an essential oil names its plant, part and registry numbers, and goes in once the batch has cooled") {
    for (const catalogue::Ingredient& one : shipped::presets().catalogue.ingredients) {
        if (one.role != "essential_oil" && one.role != "extract") continue;
        CAPTURE(one.id);
        CHECK(!one.botanical.empty());
        CHECK(!one.part.empty());
        CHECK(!one.cas.empty());
        CHECK(one.phase == catalogue::Phase::cool_down);
        CHECK(one.usual_leave_on_percent->value.max <= 2 * decimal::kOne);
        CHECK((one.density || one.id == "vanilla"));
    }
    CHECK(ingredient("peppermint").part == "flowering tops, steam distilled");
    CHECK(ingredient("rose_absolute").role == "extract");
    CHECK(ingredient("neroli").role == "essential_oil");
}

TEST_CASE("densities of essential oils are the middle of what was printed, in g/mL") {
    // Relative densities times that of water: 0.9991 at 15 °C, 0.9982 at 20 °C, 0.99705 at 25 °C.
    struct Printed {
        const char* id;
        double low, high, water, c;
        const char* source;
    };
    for (const Printed& one : {
             Printed{"peppermint", 0.898, 0.918, 0.9982, 20, "cfm_peppermint"},  // handbook, d20/20
             Printed{"rosemary_cineole", 0.907, 0.920, 0.9982, 20, "cfm_rosemary"},
             Printed{"patchouli", 0.952, 0.975, 0.9982, 20, "cfm_patchouli"},
             Printed{"citronella_java", 0.880, 0.893, 0.9982, 20, "cfm_citronella"},
             Printed{"cedarwood_virginian", 0.941, 0.965, 0.9982, 20, "cfm_cedarwood"},
             Printed{"cassia", 1.052, 1.070, 0.9982, 20, "cfm_cassia"},
             Printed{"lavender", 0.877, 0.896, 1, 20, "enc_lavender"},             // g/cm3
             Printed{"citronella_ceylon", 0.894, 0.910, 0.9982, 20, "iso_3849"},   // ISO 3849:1981
             Printed{"petitgrain", 0.884, 0.892, 0.9982, 20, "iso_3064"},          // ISO 3064:2015
             Printed{"clove_bud", 1.038, 1.060, 0.99705, 25, "merck_clove"},       // d25/25
             Printed{"lemongrass", 0.895, 0.908, 0.9991, 15, "merck_lemongrass"},  // d15/15, East Indian
             Printed{"geranium", 0.888, 0.904, 0.9991, 15, "volatile_oils"},       // Bourbon and African
             Printed{"lemon_expressed", 0.849, 0.858, 0.9982, 20, "sup_lemon"},
             Printed{"neroli", 0.868, 0.868, 1, 25, "sup_neroli"},
         }) {
        CAPTURE(one.id);
        const auto& density = ingredient(one.id).density;
        REQUIRE(density);
        CHECK(decimal::to_double(density->value.density.grid) ==
              doctest::Approx((one.low + one.high) / 2 * one.water).epsilon(0.0006));
        CHECK(density->value.temp_c_grid == grid(one.c));
        CHECK(density->source == one.source);
    }
}

TEST_CASE("names and numbers of the EU list of fragrance allergens stand as printed") {
    // Regulation (EU) 2023/1545, Annex III entries 361 and 355, and SCCS/1681/25 for tea tree.
    CHECK(ingredient("peppermint").inci.at("eu") == "Mentha Piperita Oil");
    CHECK(ingredient("peppermint").inci.at("us") == "Mentha Piperita (Peppermint) Oil");
    CHECK(ingredient("peppermint").cas == std::vector<std::string>{"8006-90-4", "84082-70-2"});
    CHECK(ingredient("eucalyptus_globulus").inci.at("eu") == "Eucalyptus Globulus Leaf Oil");
    CHECK(ingredient("eucalyptus_globulus").inci_source == "eu_2023_1545");
    CHECK(ingredient("tea_tree").cas.front() == "68647-73-4");
    CHECK(ingredient("tea_tree").cas_source == "sccs_1681");
}

}  // namespace test_essential_oils
