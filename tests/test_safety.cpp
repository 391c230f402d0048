// The families of rules one by one, at their edges: what is found just beyond, and not just before.
#include <algorithm>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "shipped.h"
#include "support.h"

namespace test_safety {

using finding::Code;
using finding::Finding;
using finding::Severity;
using safety::Reason;
using safety::Report;
using safety::Rule;
using support::line;
using support::rest;
using workspace::Recipe;

namespace {

Recipe recipe_of(const std::vector<formula::Line>& lines, std::string product = "salve") {
    Recipe recipe;
    recipe.title = "Winter salve";
    recipe.product = std::move(product);
    recipe.formula = support::formula_of(lines);
    return recipe;
}

Report report_of(const Recipe& recipe, const std::vector<catalogue::Ingredient>& mine = {}) {
    return analysis::checks(recipe, shipped::presets().catalogue, &shipped::book(), {}, mine);
}

const Finding* find(const Report& report, Code code, std::string_view subject = "") {
    for (const Finding& one : report.findings)
        if (one.code == code && (subject.empty() || one.subject == subject)) return &one;
    return nullptr;
}
bool finds(const Recipe& recipe, Code code, std::string_view subject = "") {
    return find(report_of(recipe), code, subject) != nullptr;
}
std::optional<Reason> why_not(const Report& report, Rule rule) {
    for (const safety::NotMade& one : report.not_made)
        if (one.rule == rule) return one.reason;
    return std::nullopt;
}
bool was_made(const Report& report, Rule rule) {
    return std::any_of(report.made.begin(), report.made.end(),
                       [&](const safety::Made& one) { return one.rule == rule; });
}

formula::Line named(std::string name, std::int64_t grid) {
    formula::Line one = line("", grid);
    one.name = std::move(name);
    return one;
}

catalogue::Ingredient own(std::string id, std::string name, std::string role) {
    catalogue::Ingredient one;
    one.id = std::move(id);
    one.own = true;
    one.name = std::move(name);
    one.role = std::move(role);
    return one;
}

Recipe lotion_with(const std::vector<formula::Line>& more) {
    std::vector<formula::Line> lines = {rest("water"), line("sunflower_ho", 140000, "B"),
                                        line("ewax_nf", 50000, "B"), line("tocopherol", 2000, "C")};
    lines.insert(lines.end(), more.begin(), more.end());
    return recipe_of(lines, "hand_lotion");
}

}  // namespace

TEST_CASE("every rule is made or not made in every report, and some are both, for other ingredients") {
    for (const Recipe& recipe : {Recipe{}, recipe_of({line("shea", 1000000)}), lotion_with({})}) {
        const Report report = report_of(recipe);
        for (int i = 0; i < safety::kRules; ++i) {
            const auto rule = static_cast<Rule>(i);
            CAPTURE(safety::rule_name(rule));
            CHECK((was_made(report, rule) || why_not(report, rule)));
        }
    }
}

TEST_CASE("splitting an ingredient in two lines changes nothing but the note that it stands twice") {
    Recipe one = recipe_of({line("beeswax_yellow", 150000), line("almond", 350000), rest("jojoba")});
    Recipe two = recipe_of(
        {line("beeswax_yellow", 150000), line("almond", 300000), line("almond", 50000), rest("jojoba")});
    Report whole = report_of(one), split = report_of(two);
    const auto said = [](const Report& report) {
        std::vector<std::string> all;
        for (const Finding& f : report.findings)
            if (f.code != Code::line_twice)
                all.push_back(std::string(finding::code_name(f.code)) + f.subject +
                              std::to_string(f.value.value_or(0)));
        return all;
    };
    CHECK(said(whole) == said(split));
    CHECK(find(split, Code::line_twice) != nullptr);
    CHECK(whole.not_made == split.not_made);
    CHECK(whole.made == split.made);
}

TEST_CASE("what is usual is counted over all lines of an ingredient, in what stays on the skin only") {
    // Carnauba: usual up to 10 %.
    CHECK_FALSE(
        finds(recipe_of({line("carnauba", 100000), rest("jojoba")}), Code::usual_range_left, "carnauba"));
    CHECK(finds(recipe_of({line("carnauba", 100001), rest("jojoba")}), Code::usual_range_left, "carnauba"));
    CHECK(finds(recipe_of({line("carnauba", 50001), line("carnauba", 50000, "B"), rest("jojoba")}),
                Code::usual_range_left, "carnauba"));
    const Report rinsed = report_of(recipe_of({line("carnauba", 200000), rest("jojoba")}, "body_scrub"));
    CHECK(find(rinsed, Code::usual_range_left) == nullptr);
    CHECK(why_not(rinsed, Rule::usual_ingredient) == Reason::no_figure);
}

TEST_CASE("names that sound like water are asked about, oils and scents named after it are not") {
    for (const char* name :
         {"Honey", "Rose hydrosol", "Aloe gel", "Fresh comfrey", "Frische Ringelblume", "Oat milk"})
        CHECK_MESSAGE(finds(recipe_of({named(name, 30000), rest("jojoba")}), Code::water_suspected), name);
    for (const char* name :
         {"Aloe butter", "Tea tree", "Honey fragrance", "Watermelon seed oil", "Dried comfrey"})
        CHECK_MESSAGE(!finds(recipe_of({named(name, 30000), rest("jojoba")}), Code::water_suspected), name);
}

TEST_CASE("a fresh plant that was strained out left its water behind, a dried one did not") {
    Recipe recipe = recipe_of({line("olive", 800000), named("Fresh marigold petals", 200000)});
    recipe.formula.lines[1].strained = true;
    CHECK(finds(recipe, Code::water_suspected));
    recipe.formula.lines[1].name = "Dried marigold petals";
    CHECK_FALSE(finds(recipe, Code::water_suspected));
    CHECK_FALSE(finds(recipe, Code::ingredient_unknown));  // it is not in the product
}

TEST_CASE(
    "a preservative at its legal maximum passes, one step of the grid above is a stop (Annex V/29, 1.0 %)") {
    Recipe recipe = lotion_with({line("phenoxyethanol", 10000, "C")});
    recipe.market = "eu";
    CHECK_FALSE(finds(recipe, Code::preservative_over_limit));
    recipe = lotion_with({line("phenoxyethanol", 10001, "C")});
    recipe.market = "eu";
    Report report = report_of(recipe);
    const Finding* over = find(report, Code::preservative_over_limit);
    REQUIRE(over != nullptr);
    CHECK(over->severity == Severity::stop);
    CHECK(over->rule == "V/29");
    CHECK(over->source == "annex_v");
    CHECK(over->standing == source::Standing::document);
    CHECK(over->trace == quantity::trace_of({10001}, quantity::kHundred));
    CHECK(finding::say(shipped::english(), *over, "Phenoxyethanol") ==
          "Phenoxyethanol is at 1.0001\u00a0%; at most 1\u00a0% is allowed (V/29).");
    // Two lines count together; outside the EU it is a caution and the check of the law not made.
    recipe = lotion_with({line("phenoxyethanol", 5001, "C"), line("phenoxyethanol", 5000, "D")});
    recipe.market = "us";
    report = report_of(recipe);
    over = find(report, Code::preservative_over_limit);
    REQUIRE(over != nullptr);
    CHECK(over->severity == Severity::caution);
    CHECK(why_not(report, Rule::preservative_limit) == Reason::market_not_covered);
}

TEST_CASE("a measured pH decides whether an acid preservative works; without one the check is not made") {
    Recipe recipe = lotion_with({line("potassium_sorbate", 5000)});
    CHECK(why_not(report_of(recipe), Rule::preservative_ph) == Reason::ph_unsaid);
    recipe.measured_ph = 55000;
    CHECK_FALSE(finds(recipe, Code::preservative_at_wrong_ph));
    CHECK(was_made(report_of(recipe), Rule::preservative_ph));
    recipe.measured_ph = 55001;
    Report report = report_of(recipe);
    REQUIRE(find(report, Code::preservative_at_wrong_ph) != nullptr);
    CHECK(find(report, Code::preservative_at_wrong_ph)->severity == Severity::stop);
    // Beside another one that may still guard it is a caution.
    recipe = lotion_with({line("potassium_sorbate", 5000), line("phenoxyethanol", 8000, "C")});
    recipe.measured_ph = 70000;
    CHECK(find(report_of(recipe), Code::preservative_at_wrong_ph)->severity == Severity::caution);
}

TEST_CASE("without the book no limit counts as kept") {
    const Report report = analysis::checks(lotion_with({line("phenoxyethanol", 500000, "C")}),
                                           shipped::presets().catalogue, nullptr);
    CHECK(why_not(report, Rule::preservative_limit) == Reason::no_book);
    CHECK_FALSE(was_made(report, Rule::preservative_limit));
}

TEST_CASE("water and oil part without an emulsifier, a drop of either does not") {
    const auto mixed = [](std::int64_t water) {
        return recipe_of({line("water", water), line("phenoxyethanol", 9000), rest("jojoba")});
    };
    CHECK_FALSE(finds(mixed(29999), Code::water_without_emulsifier));
    CHECK(finds(mixed(30000), Code::water_without_emulsifier));
    CHECK_FALSE(finds(lotion_with({}), Code::water_without_emulsifier));
}

TEST_CASE("an antioxidant is asked for from a tenth of polyunsaturated oil on") {
    // Almond oil: 24.3 % linoleic and 0.2 % linolenic acid, 24.5 % in all.
    CHECK_FALSE(
        finds(recipe_of({line("almond", 400000), rest("squalane")}, "body_oil"), Code::antioxidant_missing));
    const Report report = report_of(recipe_of({line("almond", 410000), rest("squalane")}, "body_oil"));
    const Finding* missing = find(report, Code::antioxidant_missing);
    REQUIRE(missing != nullptr);
    CHECK(missing->value == 100000);  // 10.045, shown to a tenth
    CHECK(missing->standing == source::Standing::estimate);
    CHECK_FALSE(
        finds(recipe_of({line("almond", 600000), line("tocopherol", 2000), rest("squalane")}, "body_oil"),
              Code::antioxidant_missing));
    // Of a name nothing is known.
    CHECK(why_not(report_of(recipe_of({named("Plum kernel oil", 600000), rest("squalane")})),
                  Rule::antioxidant) == Reason::no_figure);
}

TEST_CASE("too much tocopherol is one caution, not two") {
    const Report report = report_of(recipe_of({line("tocopherol", 5001), rest("jojoba")}));
    CHECK(find(report, Code::antioxidant_too_much) != nullptr);
    CHECK(find(report, Code::usual_range_left, "tocopherol") == nullptr);
    CHECK_FALSE(finds(recipe_of({line("tocopherol", 5000), rest("jojoba")}), Code::antioxidant_too_much));
}

TEST_CASE("a wax melts within its range: below it a caution, inside it a note, above it nothing") {
    // Candelilla wax melts at 68.5 to 72.5 °C.
    const auto held = [](std::int64_t c) {
        Recipe recipe = recipe_of({line("candelilla", 80000), rest("jojoba")});
        recipe.formula.phases[0].hold_c = c;
        return report_of(recipe);
    };
    CHECK(find(held(684999), Code::hold_below_melting)->severity == Severity::caution);
    CHECK(find(held(685000), Code::hold_below_melting)->severity == Severity::note);
    CHECK(find(held(725000), Code::hold_below_melting) == nullptr);
    const Report silent = report_of(recipe_of({line("candelilla", 80000), rest("jojoba")}));
    CHECK(why_not(silent, Rule::melting) == Reason::temperature_unsaid);
}

TEST_CASE("the vapour of an oil is told of where it is held hot, five degrees before it can be lit") {
    // Distilled lemon oil: flash point 48 °C, a supplier's.
    const auto held = [](std::int64_t c) {
        Recipe recipe = recipe_of({line("lemon_distilled", 5000), rest("jojoba")});
        recipe.formula.phases[0].hold_c = c;
        return report_of(recipe);
    };
    CHECK(find(held(429999), Code::near_flash_point) == nullptr);
    REQUIRE(find(held(430000), Code::near_flash_point) != nullptr);
    CHECK(find(held(430000), Code::near_flash_point)->standing == source::Standing::supplier);
    CHECK(find(held(430000), Code::near_flash_point)->limit == 480000);
}

TEST_CASE(
    "rosehip oil is not cooked; in a balm it goes in as cool as it still pours, in a lotion below 50 °C") {
    Recipe balm = recipe_of({line("beeswax_yellow", 200000), rest("jojoba"), line("rosehip", 50000, "B")});
    balm.formula.phases[0].hold_c = 750000;
    CHECK(why_not(report_of(balm), Rule::heat) == Reason::temperature_unsaid);
    balm.formula.phases[1].add_below_c = 650000;
    CHECK_FALSE(finds(balm, Code::heated_too_hot));
    balm.formula.phases[1].hold_c = 500001;
    CHECK(finds(balm, Code::heated_too_hot, "rosehip"));
    Recipe lotion = lotion_with({line("rosehip", 30000, "D")});
    lotion.formula.phases[3].add_below_c = 500001;
    CHECK(finds(lotion, Code::heated_too_hot, "rosehip"));
    lotion.formula.phases[3].add_below_c = 500000;
    CHECK_FALSE(finds(lotion, Code::heated_too_hot, "rosehip"));
}

TEST_CASE(
    "origins are told of what is listed and of what a name says; a name that says nothing is not cleared") {
    CHECK(finds(recipe_of({line("shea", 1000000)}), Code::origin_nut, "shea"));
    CHECK(finds(recipe_of({named("Cold-pressed hazelnut oil", 1000000)}), Code::origin_nut));
    CHECK(finds(recipe_of({named("Oat flour", 1000000)}), Code::origin_gluten));
    CHECK_FALSE(finds(recipe_of({line("nutmeg", 1000), rest("jojoba")}), Code::origin_nut));
    const Report report = report_of(recipe_of({named("Praline butter", 1000000)}));
    CHECK(why_not(report, Rule::origin) == Reason::name_unknown);
    // A made part is looked into.
    Recipe recipe = recipe_of({line("own_base", 1000000)});
    recipe.own = {own("own_base", "Base", "butter")};
    recipe.own[0].parts = {{"almond", quantity::percent(40)}, {"jojoba", quantity::percent(60)}};
    CHECK(finds(recipe, Code::origin_nut, "almond"));
}

TEST_CASE("a stranger's entry hides nothing behind what it says it is based on") {
    Recipe recipe = recipe_of({line("own_base", 1000000)});
    recipe.own = {own("own_base", "Almond milk", "liquid_oil")};
    recipe.own[0].based_on = "jojoba";
    CHECK(finds(recipe, Code::origin_nut, "own_base"));
    CHECK(finds(recipe, Code::water_suspected, "own_base"));
    CHECK(why_not(report_of(recipe), Rule::origin) == Reason::name_unknown);
    // Nor does its emulsifier hold water and oil together.
    Recipe lotion = lotion_with({});
    lotion.formula.lines[2].ingredient = "own_wax";
    lotion.own = {own("own_wax", "Their wax", "emulsifier")};
    CHECK(finds(lotion, Code::water_without_emulsifier));
    CHECK(find(report_of(lotion, lotion.own), Code::water_without_emulsifier) == nullptr);
}

TEST_CASE("words of a medicine in the title are a stop, in the notes a caution, denied ones nothing") {
    Recipe recipe = recipe_of({line("shea", 1000000)});
    recipe.market = "eu";
    recipe.title = "Salve that heals eczema";
    Report report = report_of(recipe);
    REQUIRE(find(report, Code::claims_medicine) != nullptr);
    CHECK(find(report, Code::claims_medicine)->severity == Severity::stop);
    CHECK(find(report, Code::claims_medicine)->material == "heals, eczema");
    CHECK(find(report, Code::claims_medicine)->unit == "EU");
    recipe.title = "Heel salve";
    recipe.notes = "For Aunt's eczema.";
    CHECK(find(report_of(recipe), Code::claims_medicine)->severity == Severity::caution);
    recipe.notes = "Not a medicine. No sun protection. Do not use on broken skin.";
    report = report_of(recipe);
    CHECK(find(report, Code::claims_medicine) == nullptr);
    CHECK(find(report, Code::claims_sun_protection) == nullptr);
    // By market: what the FDA's examples call a drug.
    recipe.notes = "Helps sleep.";
    CHECK(find(report_of(recipe), Code::claims_medicine) == nullptr);
    recipe.market = "us";
    CHECK(find(report_of(recipe), Code::claims_medicine)->unit == "US");
    recipe.market = "";
    CHECK(find(report_of(recipe), Code::claims_medicine)->unit == "US");
    recipe.market = "nz";
    CHECK(why_not(report_of(recipe), Rule::claims) == Reason::market_not_covered);
}

TEST_CASE("zinc oxide is no sun protection and says so") {
    CHECK(finds(recipe_of({line("zinc_oxide", 50000), rest("jojoba")}), Code::uv_filter_without_claim));
}

// CERT-2 of regulatory-2, an IFRA information sheet of a fragrance compound, 51st Amendment.
TEST_CASE(
    "EX2-10: a certificate blocks a lip balm, a body butter above 1.16 %, and passes a face balm and a "
    "soap") {
    catalogue::Ingredient scent = own("own_berry", "Berry", "fragrance");
    scent.max_percent = {{"1", {0}}, {"5A", {11600}}, {"5B", {7600}}, {"9", {89000}}};
    scent.source = "IFRA sheet of the lot";
    const auto with = [&](const char* product, std::int64_t grid) {
        Recipe recipe = recipe_of({line("own_berry", grid), rest("jojoba")}, product);
        recipe.own = {scent};
        return report_of(recipe, {scent});
    };
    CHECK(find(with("lip_balm", 1), Code::certificate_forbids)->severity == Severity::stop);
    const Report butter = with("body_butter", 12000);
    REQUIRE(find(butter, Code::certificate_over) != nullptr);
    CHECK(find(butter, Code::certificate_over)->limit == 11600);
    CHECK(find(butter, Code::certificate_over)->unit == "5A");
    CHECK(find(with("body_butter", 11600), Code::certificate_over) == nullptr);
    CHECK(find(with("face_cream", 7600), Code::certificate_over) == nullptr);
    CHECK(find(with("body_scrub", 89000), Code::certificate_over) == nullptr);  // category 9, as a soap
    // A category that the sheet does not name is unknown, not free.
    CHECK(find(with("deodorant", 1000), Code::certificate_missing) != nullptr);
}

TEST_CASE("a certificate that came with somebody's recipe may forbid and never clears") {
    catalogue::Ingredient scent = own("own_berry", "Berry", "fragrance");
    scent.max_percent = {{"5A", {11600}}};
    Recipe recipe = recipe_of({line("own_berry", 5000), rest("jojoba")});
    recipe.own = {scent};
    CHECK(why_not(report_of(recipe), Rule::bought_scents) == Reason::certificate_unsaid);
    CHECK_FALSE(why_not(report_of(recipe, {scent}), Rule::bought_scents));
    recipe.formula.lines[0].percent = {20000};
    CHECK(finds(recipe, Code::certificate_over));
}

TEST_CASE("a peroxide value is asked of a paper, never checked in the product") {
    const Report report = report_of(recipe_of({line("pine_scots", 3000), rest("jojoba")}));
    const Finding* asked = find(report, Code::certificate_peroxide, "pine_scots");
    REQUIRE(asked != nullptr);
    CHECK(asked->severity == Severity::note);
    CHECK(asked->limit == 100000);  // 10 mmol/L
    CHECK(asked->rule == "III/108-117");
    CHECK_FALSE(was_made(report, Rule::peroxide));
}

TEST_CASE("a colour in a lip product is a caution, and its check is not made") {
    const Report report = report_of(recipe_of({line("mica", 20000), rest("jojoba")}, "tinted_lip_balm"));
    CHECK(find(report, Code::colour_not_checked_here, "mica") != nullptr);
    CHECK(why_not(report, Rule::colours) == Reason::no_figure);
}

TEST_CASE("random recipes have a report, whatever stands in them, and the findings at hand are among it") {
    chance::Generator chance(20261126);
    const catalogue::Catalogue& shelf = shipped::presets().catalogue;
    for (int i = 0; i < 500; ++i) {
        const Recipe recipe = support::random_recipe(chance, shelf);
        const Report report = report_of(recipe);
        for (const Finding& one : report.findings)
            CHECK((!one.line || *one.line < recipe.formula.lines.size()));
        for (const Finding& one : analysis::of(recipe, shelf).findings)
            CHECK(std::find(report.findings.begin(), report.findings.end(), one) != report.findings.end());
    }
}

}  // namespace test_safety
