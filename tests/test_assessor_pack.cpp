// What an assessor is handed.
#include <algorithm>
#include <string>

#include "doctest/doctest.h"
#include "engine/assessor_pack.h"
#include "engine/labelling.h"
#include "shipped.h"
#include "support.h"

namespace test_assessor_pack {

using assessor_pack::Material;
using assessor_pack::Pack;
using assessor_pack::Paper;
using quantity::percent;

namespace {

Pack of(const workspace::Recipe& recipe) {
    auto made = labelling::pack_of(recipe, shipped::presets().catalogue);
    REQUIRE(made.ok());
    return std::move(made).value();
}

bool wants(const std::vector<Paper>& papers, Paper paper) {
    return std::find(papers.begin(), papers.end(), paper) != papers.end();
}

const Material& material(const Pack& pack, std::string_view id) {
    for (const Material& one : pack.materials)
        if (one.ingredient == id || one.name == id) return one;
    FAIL("not in the pack");
    return pack.materials.front();
}

}  // namespace

TEST_CASE("every demonstration recipe's pack adds to exactly 100, largest first, with names and papers") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        const Pack pack = of(recipe);
        std::int64_t sum = 0;
        for (const Material& one : pack.materials) {
            sum += one.percent.grid;
            CHECK_FALSE(one.name.empty());
            CHECK(wants(one.wanted, Paper::safety_sheet));
            CHECK(std::is_sorted(one.wanted.begin(), one.wanted.end()));
        }
        CHECK(sum == quantity::kHundred.grid);
        CHECK(std::is_sorted(pack.materials.begin(), pack.materials.end(),
                             [](const Material& a, const Material& b) { return a.percent > b.percent; }));
        CHECK(wants(pack.wanted, Paper::challenge) == pack.holds_water);
        CHECK(wants(pack.wanted, Paper::ph) == pack.holds_water);
        CHECK(std::is_sorted(pack.wanted.begin(), pack.wanted.end()));
    }
    CHECK(of(shipped::recipe("kitchen_garden_hand_lotion")).holds_water);
    CHECK_FALSE(of(shipped::recipe("orchard_lip_balm")).holds_water);
    CHECK(of(shipped::recipe("orchard_lip_balm")).place == "lips");
}

TEST_CASE("an essential oil wants its lot's analysis until the bottle's own is entered") {
    workspace::Recipe recipe;
    catalogue::Ingredient bottle;
    bottle.own = true;
    bottle.id = "own_lavender";
    bottle.name = "My lavender";
    bottle.based_on = "lavender";
    bottle.role = "essential_oil";
    recipe.formula = support::formula_of({support::line("sunflower", percent(98).grid),
                                          support::line("peppermint", percent(1).grid),
                                          support::line("own_lavender", percent(1).grid)});
    recipe.own = {bottle};
    const Pack before = of(recipe);
    for (const char* id : {"peppermint", "own_lavender"}) {
        CHECK(wants(material(before, id).wanted, Paper::lot_analysis));
        CHECK(wants(material(before, id).wanted, Paper::ifra_certificate));
        CHECK(wants(material(before, id).wanted, Paper::allergen_sheet));
    }
    CHECK(material(before, "own_lavender").inci == std::vector<std::string>{"Lavandula Angustifolia Oil"});
    recipe.own[0].analysis = catalogue::LotAnalysis{"L1", "2026-10-01", "the supplier", {}};
    const Pack after = of(recipe);
    CHECK_FALSE(wants(material(after, "own_lavender").wanted, Paper::lot_analysis));
    CHECK(material(after, "own_lavender").analysis->lot == "L1");
}

TEST_CASE("what is only a name wants its composition, what depends on the lot its origin") {
    workspace::Recipe recipe;
    formula::Line jar = support::line("", percent(10).grid);
    jar.name = "Grandmother's jar";
    recipe.formula =
        support::formula_of({support::line("cetyl_alcohol", percent(5).grid), jar,
                             support::line("arrowroot", percent(5).grid), support::rest("ewax_nf")});
    const Pack pack = of(recipe);
    CHECK(wants(material(pack, "Grandmother's jar").wanted, Paper::composition));
    CHECK(material(pack, "Grandmother's jar").inci.empty());
    CHECK(wants(material(pack, "cetyl_alcohol").wanted, Paper::origin));
    CHECK(wants(material(pack, "arrowroot").wanted, Paper::germ_count));
    CHECK(wants(material(pack, "ewax_nf").wanted, Paper::composition));  // two names, shares not known
}

TEST_CASE("every paper has its words, and no words are for one that is gone") {
    std::set<std::string> wanted;
    for (int i = 0; i < assessor_pack::kPapers; ++i)
        wanted.insert("paper." + std::string(assessor_pack::paper_name(static_cast<Paper>(i))));
    CHECK(wanted.size() == assessor_pack::kPapers);
    for (const std::string& key : wanted)
        CHECK(words::has(shipped::english(), key));
    for (const auto& [key, text] : shipped::english().entries)
        if (key.rfind("paper.", 0) == 0) CHECK(wanted.count(key) == 1);
}

}  // namespace test_assessor_pack
