// The shipped data as the engine reads them, against the frozen link numbers and against published values;
// essential oils and starters have files of their own; and the faults that the loader must refuse
// (tests/data/bad_preset_*.json).
#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/blend_hlb.h"
#include "engine/blend_setting.h"
#include "engine/blend_values.h"
#include "engine/declaration.h"
#include "engine/density.h"
#include "engine/measures.h"
#include "engine/net_contents.h"
#include "engine/sale_needs.h"
#include "engine/store.h"
#include "engine/store_json.h"
#include "engine/swap.h"
#include "engine/type_height.h"
#include "shipped.h"

namespace test_presets {

namespace {

const catalogue::Ingredient& ingredient(std::string_view id) {
    const catalogue::Ingredient* found = catalogue::find_ingredient(shipped::presets().catalogue, id);
    REQUIRE(found != nullptr);
    return *found;
}

result::Error refusal_of(const std::string& name) {
    const std::string bad = shipped::data("bad_preset_" + name + ".json");
    std::vector<store::File> files{{"ingredients/bad.json", bad}};
    for (const store::File& file : shipped::files())
        if (file.first == "sources.json") files.push_back(file);
    const auto read = store::read_presets(files);
    REQUIRE_MESSAGE(!read, name);
    return read.error();
}

std::int64_t grid(double value) {
    return decimal::from_double(value).value();
}

bool is(const catalogue::Known<catalogue::Range>& known, double min, double max, std::string_view source) {
    return known && known->value == catalogue::Range{grid(min), grid(max)} && known->source == source;
}

struct Cited {
    std::string source;
    source::Standing standing;
};
std::vector<Cited> cited(const catalogue::Catalogue& all) {
    std::vector<Cited> out;
    const auto add = [&](const auto& known) {
        if (known) out.push_back({known->source, known->standing});
    };
    for (const catalogue::Ingredient& one : all.ingredients) {
        add(one.density), add(one.melting_c), add(one.iodine_value), add(one.saponification_value);
        add(one.unsaponifiables_percent), add(one.shelf_life_months), add(one.usual_leave_on_percent);
        add(one.fatty_acids), add(one.flash_point_c), add(one.traits);
        if (one.fatty_acids && !one.fatty_acids->value.range_percent.empty())
            out.push_back({one.fatty_acids->value.range_source, one.fatty_acids->value.range_standing});
    }
    for (const catalogue::Container& one : all.containers)
        add(one.max_pour_c), add(one.nominal_ml), add(one.fill_g);
    for (const catalogue::Product& one : all.products) {
        add(one.ifra_category), add(one.water_gets_in);
        for (const catalogue::UsualShare& share : one.usual)
            out.push_back({share.source, share.standing});
    }
    return out;
}

}  // namespace

TEST_CASE("the shipped presets are read, and each figure comes with its source") {
    const catalogue::Ingredient& beeswax = ingredient("beeswax_yellow");
    CHECK(beeswax.name == "Beeswax, yellow");
    CHECK(beeswax.inci.at("eu") == "Cera Alba");
    REQUIRE(beeswax.density);
    CHECK(beeswax.density->value.density.grid == grid(0.964));
    CHECK(catalogue::find_source(shipped::presets().catalogue, beeswax.density->source) != nullptr);
}

TEST_CASE(
    "69 base ingredients, 67 oils and extracts, 22 containers, 19 product kinds and 7 recipes are shipped") {
    const auto& ingredients = shipped::presets().catalogue.ingredients;
    const auto scented = std::count_if(ingredients.begin(), ingredients.end(), [](const auto& one) {
        return one.role == "essential_oil" || one.role == "extract";
    });
    CHECK(scented == 67);
    CHECK(ingredients.size() == 69 + 67);
    CHECK(shipped::presets().catalogue.containers.size() == 22);
    CHECK(shipped::presets().catalogue.products.size() == 19);
    CHECK(shipped::presets().recipes.size() == 7);
}

TEST_CASE("link numbers that are out in the world never change and never go away") {
    const auto frozen = store_json::parse(shipped::data("frozen_numbers.json"));
    REQUIRE(frozen);
    const catalogue::Catalogue& all = shipped::presets().catalogue;
    for (const auto& [id, number] : (*frozen)["ingredients"].items()) {
        CAPTURE(id);
        REQUIRE(catalogue::find_ingredient(all, id) != nullptr);
        CHECK(catalogue::find_ingredient(all, id)->number == number.get<std::uint32_t>());
    }
    for (const auto& [id, number] : (*frozen)["containers"].items()) {
        CAPTURE(id);
        REQUIRE(catalogue::find_container(all, id) != nullptr);
        CHECK(catalogue::find_container(all, id)->number == number.get<std::uint32_t>());
    }
    for (const auto& [id, number] : (*frozen)["products"].items()) {
        CAPTURE(id);
        REQUIRE(catalogue::find_product(all, id) != nullptr);
        CHECK(catalogue::find_product(all, id)->number == number.get<std::uint32_t>());
    }
    // and what is new has been entered in the list, under a number of its own
    for (const auto& [list, size] :
         {std::pair{"ingredients", all.ingredients.size()}, std::pair{"containers", all.containers.size()},
          std::pair{"products", all.products.size()}}) {
        CAPTURE(list);
        std::set<std::uint32_t> numbers;
        for (const auto& [id, number] : (*frozen)[list].items())
            numbers.insert(number.get<std::uint32_t>());
        CHECK((*frozen)[list].size() == size);
        CHECK(numbers.size() == size);
    }
}

TEST_CASE("the ingredients that most balms are made of have the link numbers that take one byte") {
    for (const char* id :
         {"water", "beeswax_yellow", "beeswax_white", "candelilla", "shea", "cocoa", "coconut", "olive",
          "sunflower", "almond", "jojoba", "castor", "tocopherol", "sunflower_ho", "glycerin"})
        CHECK(ingredient(id).number < 24);
}

TEST_CASE("every ingredient says what it is, where it comes from and how it is declared") {
    for (const catalogue::Ingredient& one : shipped::presets().catalogue.ingredients) {
        CAPTURE(one.id);
        CHECK(one.about.size() >= 20);
        CHECK(one.about.size() <= 160);
        CHECK(one.about.back() == '.');
        CHECK((one.caution.empty() || one.caution.back() == '.'));
        CHECK(one.usual_leave_on_percent);
        CHECK(one.shelf_life_months.has_value() == (one.id != "water"));
        if (one.id == "hydrosol") continue;  // declared by its plant
        for (const char* market : {"eu", "us"}) {
            CAPTURE(market);
            CHECK(one.inci.count(market) == 1);
        }
    }
}

TEST_CASE("what troubles people with allergies, in pregnancy, children and animals is said") {
    const auto warns = [](std::string_view id, std::string_view of) {
        CAPTURE(id);
        CAPTURE(of);
        CHECK(ingredient(id).caution.find(of) != std::string::npos);
    };
    for (const char* id : {"almond", "macadamia", "argan", "apricot", "shea", "mango"})
        warns(id, "nut allergy");
    warns("sesame", "Sesame");
    warns("soybean", "Soy");
    warns("lanolin", "wool");
    for (const char* id : {"beeswax_white", "beeswax_yellow", "lanolin"}) {
        warns(id, "not vegan");
        CHECK(ingredient(id).vegan == false);
    }
    for (const char* id : {"arrowroot", "bentonite", "kaolin", "mica", "titanium_dioxide", "zinc_oxide"})
        warns(id, "dust");
    for (const char* id : {"bergamot", "bitter_orange", "grapefruit", "lemon_expressed", "lime_expressed"})
        warns(id, "sun");
    for (const char* id : {"bergamot_fcf", "lemon_distilled", "lime_distilled", "sweet_orange", "mandarin"})
        CHECK(ingredient(id).caution.find("sun bed") == std::string::npos);
    for (const char* id : {"peppermint", "cornmint", "eucalyptus_globulus", "eucalyptus_radiata"})
        warns(id, "children under");
    for (const char* id : {"sage", "wintergreen", "myrrh", "basil_estragole", "anise", "fennel_bitter",
                           "oregano", "cinnamon_bark", "cassia", "camphor_white"})
        warns(id, "pregnancy");
    warns("sage", "epilepsy");
    warns("camphor_white", "epilepsy");
    warns("tea_tree", "cats");
}

TEST_CASE("product kinds are offered in the order of their numbers, from the lip balm on") {
    const auto& products = shipped::presets().catalogue.products;
    CHECK(products.front().id == "lip_balm");
    CHECK(products.back().id == "baby_balm");
    for (std::size_t i = 0; i < products.size(); ++i)
        CHECK(products[i].number == i);
}

TEST_CASE("every source in the bibliography is used, and a value stands as its source stands") {
    const catalogue::Catalogue& all = shipped::presets().catalogue;
    std::set<std::string> used;
    for (const catalogue::Ingredient& one : all.ingredients)
        for (const std::string& key : {one.inci_source, one.part_source, one.cas_source})
            used.insert(key);
    for (const Cited& one : cited(all)) {
        CAPTURE(one.source);
        used.insert(one.source);
        CHECK(one.standing == catalogue::find_source(all, one.source)->standing);
    }
    for (const measures::Measure& one : measures::all())
        if (!one.source.empty()) used.insert(std::string(one.source));
    used.insert({std::string(density::kWarmSource), std::string(density::kWaterSource)});  // of the sums
    used.insert(std::string(declaration::kCanadaSource));
    used.insert(std::string(swap::kWorkedOut));
    for (const std::string_view key :
         {blend::kIodineSource, blend::kSaponificationSource, blend::kCoxSource, blend::kCastingSource})
        used.insert(std::string(key));
    for (const catalogue::Ingredient& one : all.ingredients)
        for (const blend::Hlb* hlb : {blend::required_hlb(one), blend::hlb_of_emulsifier(one.id)}) {
            if (!hlb) continue;
            used.insert(std::string(hlb->source));
            CHECK(hlb->standing == catalogue::find_source(all, hlb->source)->standing);
        }
    for (const auto& [market, id] : market::kAll) {
        for (const sale_needs::Need& need : sale_needs::of(market))
            used.insert(std::string(need.source));
        used.insert(net_contents::statement(market, {}, {}, {}).source);
        const type_height::Heights heights = type_height::heights(market, 0, {}, false, 0);
        for (const auto& height : {heights.net, heights.list, heights.warnings})
            if (height) used.insert(std::string(height->source));
    }
    for (const source::Entry& entry : all.sources) {
        CAPTURE(entry.key);
        CHECK(used.count(entry.key) == 1);
    }
}

TEST_CASE("every essential oil says from when its vapour can be lit, the vanilla extract does not") {
    std::size_t said = 0, with_traits = 0;
    for (const catalogue::Ingredient& one : shipped::presets().catalogue.ingredients) {
        CAPTURE(one.id);
        if (one.role == "essential_oil") CHECK(one.flash_point_c.has_value());
        said += one.flash_point_c ? 1 : 0;
        with_traits += one.traits ? 1 : 0;
    }
    CHECK(said == 66);
    CHECK(with_traits == 23);
    CHECK_FALSE(ingredient("vanilla").flash_point_c);
    CHECK(ingredient("lemon_distilled").flash_point_c->value == grid(48));  // a supplier's sheet
    CHECK(ingredient("neroli").flash_point_c->value == grid(54));           // the lowest of those that differ
    CHECK(catalogue::has_trait(ingredient("shea"), "nut"));
    CHECK_FALSE(catalogue::has_trait(ingredient("jojoba"), "nut"));
}

TEST_CASE("a fatty-acid profile adds to 100 % and lies inside the range beside it") {
    std::size_t profiles = 0;
    for (const catalogue::Ingredient& one : shipped::presets().catalogue.ingredients) {
        if (!one.fatty_acids) continue;
        CAPTURE(one.id);
        ++profiles;
        std::int64_t sum = 0;
        for (const auto& [acid, percent] : one.fatty_acids->value.percent)
            sum += percent;
        CHECK(sum == 100 * decimal::kOne);
        for (const auto& [acid, range] : one.fatty_acids->value.range_percent) {
            CAPTURE(acid);
            const auto at = one.fatty_acids->value.percent.find(acid);
            const std::int64_t percent = at == one.fatty_acids->value.percent.end() ? 0 : at->second;
            CHECK(percent >= range.min);
            CHECK(percent <= range.max);
        }
    }
    CHECK(profiles == 36);
}

TEST_CASE("the iodine value worked out from a profile of triglycerides lies within the stated range") {
    // AOCS Cd 1c-85, triglyceride factors; ricinoleic, hydroxystearic and 22:2 from molar masses (3 chains
    // + 38.05).
    const std::map<std::string, double> factor{{"16:1", 0.950}, {"18:1", 0.860},      {"18:2", 1.732},
                                               {"18:3", 2.616}, {"20:1", 0.785},      {"22:1", 0.723},
                                               {"22:2", 1.454}, {"ricinoleic", 0.816}};
    for (const catalogue::Ingredient& one : shipped::presets().catalogue.ingredients) {
        if (!one.fatty_acids || !one.iodine_value || one.fatty_acids->value.bound_as != "triglycerides")
            continue;
        CAPTURE(one.id);
        double iodine = 0;
        for (const auto& [acid, percent] : one.fatty_acids->value.percent)
            if (const auto at = factor.find(acid); at != factor.end())
                iodine += at->second * decimal::to_double(percent);
        CHECK(iodine >= decimal::to_double(one.iodine_value->value.min) - 0.5);
        CHECK(iodine <= decimal::to_double(one.iodine_value->value.max) + 0.5);
    }
}

TEST_CASE("published constants stand as they were printed") {
    CHECK(is(ingredient("coconut").saponification_value, 248, 265, "cx_coconut"));  // Codex CXS 210, Table 2
    CHECK(is(ingredient("coconut").iodine_value, 6.3, 10.6, "cx_coconut"));         // Codex CXS 210, Table 2
    CHECK(is(ingredient("soybean").iodine_value, 124, 139, "cx_soy"));              // Codex CXS 210, Table 2
    CHECK(is(ingredient("shea").saponification_value, 160, 195, "cx_325r"));        // Codex CXS 325R, Table 2
    CHECK(is(ingredient("candelilla").saponification_value, 43, 65, "nf_cand"));    // USP35-NF30
    CHECK(is(ingredient("carnauba").melting_c, 80, 86, "nf_carn"));                 // USP28-NF23
    CHECK(is(ingredient("beeswax_white").melting_c, 62, 65, "nf_wwax"));            // USP32-NF27
    CHECK(is(ingredient("hydrogenated_castor").melting_c, 85, 88, "nf_hco"));       // USP35-NF30
    CHECK(is(ingredient("lanolin").melting_c, 38, 44, "usp_lan"));                  // USP28
    CHECK(is(ingredient("safflower").iodine_value, 140, 150, "merck_saff"));        // Merck-Index-style entry
    CHECK(is(ingredient("sunflower_wax").melting_c, 74, 77, "ocl_2022"));           // OCL 2022, Table 1
    const auto& palm_kernel = ingredient("palm_kernel").fatty_acids->value;         // Codex CXS 210, Table 1
    CHECK(palm_kernel.range_percent.at("12:0") == catalogue::Range{grid(45), grid(55)});
    CHECK(palm_kernel.range_source == "cx_palm_kernel");
    CHECK(ingredient("jojoba").density->value.density.grid ==
          grid(0.8642));  // Merck-Index-style entry, 25 °C
    CHECK(ingredient("jojoba").density->value.temp_c_grid == grid(25));
}

TEST_CASE("containers say what they are made of and how hot may be poured, where that is known") {
    const auto at = [](std::string_view id) -> const catalogue::Container& {
        const catalogue::Container* found = catalogue::find_container(shipped::presets().catalogue, id);
        REQUIRE(found != nullptr);
        return *found;
    };
    for (const catalogue::Container& one : shipped::presets().catalogue.containers)
        CHECK(!one.material.empty());
    // Packaging seller's list of temperatures for hot filling: PP 165 °F, that is 73.9 °C.
    CHECK(at("lip_tube_round").material == "pp");
    CHECK(at("lip_tube_round").max_pour_c->value == grid(74));
    CHECK(at("lip_tube_round").max_pour_c->source == "pk_hot_fill");
    CHECK(at("jar_60ml").material == "pet");  // the same list: 120 °F, that is 48.9 °C
    CHECK(at("jar_60ml").max_pour_c->value == grid(49));
    CHECK(at("jar_30ml").max_pour_c->value == grid(62));  // glass, 42 °C above a room at 20
    CHECK(!at("tin_30ml").max_pour_c);                    // metal stands more than any balm
}

TEST_CASE("what is not known is not there: no zero stands in for it") {
    CHECK(!ingredient("rice_bran_wax").density);
    CHECK(!ingredient("rice_bran_wax").density_unknown.empty());
    CHECK(!ingredient("sunflower_wax").iodine_value);
    CHECK(!ingredient("squalane").vegan.has_value());
    CHECK(!ingredient("carnauba").density->value.temp_c_grid.has_value());
    CHECK(!catalogue::find_container(shipped::presets().catalogue, "paper_tube_small")->nominal_ml);
}

TEST_CASE("only wax esters and free acids are kept apart from fats") {
    CHECK(ingredient("jojoba").fatty_acids->value.bound_as == "wax_esters");
    CHECK(ingredient("stearic_acid").fatty_acids->value.bound_as == "free_acids");
    CHECK(ingredient("olive").fatty_acids->value.bound_as == "triglycerides");
}

TEST_CASE("a figure without a unit in its name is refused with its place") {
    CHECK(refusal_of("unit_missing") == result::Error{result::Code::preset_unit_missing,
                                                      "ingredients/bad.json: meadow_wax.melting.min", ""});
}

TEST_CASE("a figure without a source, or with one nobody has, is refused") {
    CHECK(refusal_of("source_missing").code == result::Code::preset_source_missing);
    CHECK(refusal_of("source_unknown") == result::Error{result::Code::preset_source_missing,
                                                        "ingredients/bad.json: meadow_wax.melting.source",
                                                        "a_book_nobody_wrote"});
}

TEST_CASE("a value that claims to stand firmer than its source is refused") {
    const result::Error error = refusal_of("firmer_than_source");
    CHECK(error.code == result::Code::field_unknown_value);
    CHECK(error.place == "ingredients/bad.json: meadow_wax.melting.standing");
}

TEST_CASE("an id or a link number that is taken, and records out of order, are refused") {
    CHECK(refusal_of("id_twice").code == result::Code::preset_duplicate);
    CHECK(refusal_of("number_of_another") ==
          result::Error{result::Code::preset_duplicate, "ingredients/bad.json: orchard_wax.number", "1"});
    CHECK(refusal_of("unsorted").code == result::Code::preset_unsorted);
}

TEST_CASE("slips of the pen in a preset file are refused, none passed over") {
    CHECK(refusal_of("key_unknown").place == "ingredients/bad.json: meadow_wax.firmness");
    CHECK(refusal_of("cas_wrong") == result::Error{result::Code::field_unknown_value,
                                                   "ingredients/bad.json: meadow_wax.cas[1]", "8006-90-5"});
    CHECK(refusal_of("role_unknown").place == "ingredients/bad.json: meadow_wax.role");
    CHECK(refusal_of("range_reversed").place == "ingredients/bad.json: meadow_wax.melting");
    CHECK(refusal_of("density_silent").place == "ingredients/bad.json: meadow_wax.density_unknown");
    CHECK(refusal_of("key_twice").place == "ingredients/bad.json: ingredients[0].name");
    CHECK(refusal_of("cut_off").code == result::Code::json_malformed);
}

TEST_CASE("presets without a bibliography, or with a file of no known kind, are refused") {
    CHECK(store::read_presets({}).error().place == "sources.json");
    const auto stray = store::read_presets({{"notes.json", "{}"}, {"sources.json", "{\"sources\": {}}"}});
    CHECK(stray.error().place == "notes.json");
}

}  // namespace test_presets
