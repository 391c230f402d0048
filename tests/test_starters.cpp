// The shipped recipes as a maker, a scale and a friend's phone meet them.
#include <map>
#include <string>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "engine/catalogue.h"
#include "engine/formula.h"
#include "engine/share.h"
#include "shipped.h"

namespace test_starters {

TEST_CASE(
    "the starter recipes use what is shipped or bring it along, within what is usual, and come to 100 %") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        const catalogue::Catalogue all = catalogue::with_own(shipped::presets().catalogue, recipe.own);
        const catalogue::Product* product = catalogue::find_product(all, recipe.product);
        REQUIRE(product != nullptr);
        const auto percents = formula::percents(recipe.formula);
        REQUIRE(percents);
        std::map<std::string, std::int64_t> by_role;
        std::int64_t sum = 0;
        for (std::size_t i = 0; i < recipe.formula.lines.size(); ++i) {
            const auto* one = catalogue::find_ingredient(all, recipe.formula.lines[i].ingredient);
            REQUIRE(one != nullptr);
            CAPTURE(one->id);
            by_role[one->role] += (*percents)[i].grid;
            sum += (*percents)[i].grid;
            if (one->own) continue;
            CHECK((*percents)[i].grid >= one->usual_leave_on_percent->value.min);
            CHECK((*percents)[i].grid <= one->usual_leave_on_percent->value.max);
        }
        CHECK(sum == 100 * decimal::kOne);
        for (const catalogue::UsualShare& usual : product->usual) {
            const auto at = by_role.find(usual.role);
            if (at == by_role.end()) continue;
            CAPTURE(usual.role);
            CHECK(at->second >= usual.percent.min);
            CHECK(at->second <= usual.percent.max);
        }
        if (by_role.count("water") != 0) CHECK(by_role.count("preservative") == 1);
    }
}

TEST_CASE("every starter makes its batch without a remark, in containers that stand its heat") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        const analysis::Analysis seen = analysis::of(recipe, shipped::presets().catalogue);
        REQUIRE(seen.batch);
        for (const finding::Finding& one : seen.findings)
            FAIL_CHECK(finding::code_name(one.code), " ", one.subject);
        for (const batch::Line& line : seen.batch->lines) {  // 20 divisions and more: within 2.5 %
            CAPTURE(line.line);
            CHECK(line.grams.grid >= 20 * seen.batch->division.grid);
        }
        REQUIRE(!recipe.batch.containers.empty());
        for (const batch::Containers& containers : recipe.batch.containers) {
            const auto* container = catalogue::find_container(shipped::presets().catalogue, containers.id);
            REQUIRE(container != nullptr);
            const auto& last = recipe.formula.phases.back();  // what is added last is poured soon after
            if (container->max_pour_c && last.add_below_c)
                CHECK(*last.add_below_c <= container->max_pour_c->value);
        }
    }
}

TEST_CASE("every starter has steps as at the bench and notes with its cautions, and fits into a link") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        CHECK(recipe.steps.size() >= 7);
        CHECK(recipe.steps.front().text.find("Check the dates") == 0);
        CHECK(recipe.notes.find("Hollow Lane Allotments") != std::string::npos);
        CHECK(recipe.notes.find("allergies") != std::string::npos);
        const auto whole = share::write(recipe, shipped::presets().catalogue);
        REQUIRE(whole);
        CHECK(whole->size() <= 4500);
        workspace::Recipe bare = recipe;
        bare.notes.clear();
        bare.steps.clear();
        const auto link = share::write(bare, shipped::presets().catalogue);
        REQUIRE(link);
        CHECK(link->size() <= 300);
    }
}

}  // namespace test_starters
