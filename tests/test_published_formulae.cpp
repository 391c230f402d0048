// Published pharmacopoeial and research formulae, pasted as they are printed, against percents that were
// worked out apart from the engine. Each has its source beside it in tests/data/published_formulae.json.
#include <algorithm>
#include <string>

#include "doctest/doctest.h"
#include "engine/pasted.h"
#include "nlohmann/json.hpp"
#include "shipped.h"
#include "support.h"

namespace test_published_formulae {

namespace {

const nlohmann::json& published() {
    static const nlohmann::json all =
        nlohmann::json::parse(shipped::data("published_formulae.json"), nullptr, false);
    return all["formulae"];
}

const nlohmann::json& formula_named(std::string_view id) {
    for (const nlohmann::json& one : published())
        if (one["id"] == id) return one;
    FAIL("there is no such formula");
    return published()[0];
}

// The base ingredients, and rose oil at 0.864 g/mL (0.848 to 0.88 in the literature).
const catalogue::Catalogue& shelf() {
    static const catalogue::Catalogue all = [] {
        catalogue::Catalogue base = shipped::presets().catalogue;
        std::erase_if(base.ingredients, [](const auto& one) { return one.number > 68; });
        return catalogue::with_own(base, {support::ingredient("rose_otto", 0, "Rose otto", "essential_oil",
                                                              catalogue::Phase::cool_down, 8640)});
    }();
    return all;
}

pasted::List read(std::string_view id) {
    return pasted::read(formula_named(id)["text"].get<std::string>(), shelf());
}

bool says(const pasted::List& list, pasted::Code code) {
    for (const pasted::Entry& entry : list.entries)
        for (const pasted::Remark& remark : entry.remarks)
            if (remark.code == code) return true;
    return std::any_of(list.remarks.begin(), list.remarks.end(),
                       [&](const pasted::Remark& remark) { return remark.code == code; });
}

}  // namespace

TEST_CASE("every published formula, as printed, becomes the percents and grams worked out by hand") {
    REQUIRE(published().size() == 16);
    for (const nlohmann::json& one : published()) {
        INFO(one["name"].get<std::string>(), ", ", one["source"].get<std::string>());
        const auto recipe = pasted::recipe_of(read(one["id"].get<std::string>()));
        REQUIRE(recipe.ok());
        const auto percents = formula::percents(recipe->formula);
        REQUIRE(percents.ok());
        REQUIRE(percents->size() == one["percents"].size());
        for (std::size_t i = 0; i < percents->size(); ++i) {
            CAPTURE(i);
            CHECK(decimal::print((*percents)[i].grid) == one["percents"][i].get<std::string>());
        }
        CHECK((recipe->batch.amount == batch::Amount::grams) == one.contains("grams"));
        if (one.contains("grams"))
            CHECK(decimal::print(recipe->batch.grams.grid) == one["grams"].get<std::string>());
    }
}

// USP 30-NF 25: five lines in grams, two waters in mL, rose oil as 200 microlitres.
TEST_CASE("mixed grams and millilitres meet through the densities") {
    const pasted::List list = read("rose_water_ointment");
    REQUIRE(list.entries.size() == 7);
    CHECK(list.entries[5].ingredient == "water");
    CHECK(list.entries[5].grams->usual == 1646700);  // 165 mL at 0.998 g/mL
    CHECK(list.entries[6].grams->usual == 1728);     // 0.2 mL at 0.864 g/mL
}

// British Pharmaceutical Codex 1911, zinc cream: "to 100".
TEST_CASE("a line to 100 takes what is left") {
    const auto recipe = pasted::recipe_of(read("zinc_cream_bpc"));
    REQUIRE(recipe.ok());
    CHECK(recipe->formula.lines[2].rest);
    CHECK((*formula::percents(recipe->formula))[2].grid == 849000);
}

// British Pharmaceutical Codex 1911, Cera Aseptica: 87.5 + 12.5 + 1 are 101.
TEST_CASE("lines that do not add to what the formula says are taken as they are, and it is said") {
    CHECK(says(read("aseptic_wax_bare"), pasted::Code::sum_differs));
    CHECK(says(read("aseptic_wax"), pasted::Code::sum_differs));
    CHECK_FALSE(says(read("usp_simple_ointment"), pasted::Code::sum_differs));
}

TEST_CASE("a blend written as one line stays one line, as written") {
    const pasted::List list = read("anti_acne_emulsion");
    CHECK(pasted::ingredients(list) == 17);
    CHECK(list.entries[11].ingredient.empty());
    CHECK(list.entries[8].ingredient == "mct");
}

}  // namespace test_published_formulae
