// What holds for every formula and batch, on thousands of random ones from fixed seeds.
// Round trips through files and links are in test_round_trips.cpp.
#include <algorithm>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "engine/batch.h"
#include "support.h"

namespace test_invariants {

using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;

namespace {

constexpr int kRounds = 5000;

Percent sum_of(const std::vector<Percent>& percents) {
    Percent sum;
    for (const Percent percent : percents)
        sum = sum + percent;
    return sum;
}

// One edit as a hand might make it, good or bad.
formula::Changed random_edit(chance::Generator& chance, const formula::Formula& formula) {
    const std::size_t line = chance.below(formula.lines.size() + 2),
                      other = chance.below(formula.lines.size() + 2);
    const std::string phase(1, static_cast<char>('A' + chance.below(6)));
    switch (chance.below(11)) {
        case 0: {
            formula::Line added = support::line("wax", chance.between(-10000, 300000), phase);
            added.rest = chance.below(4) == 0;
            return formula::add_line(formula, added);
        }
        case 1:
            return formula::set_percent(formula, line, {chance.between(-10000, 1010000)});
        case 2:
            return formula::set_ingredient(formula, line, chance.below(2) == 0 ? "shea" : "",
                                           chance.below(2) == 0 ? "Ida's" : "");
        case 3:
            return formula::set_rest(formula, line, chance.below(2) == 0);
        case 4:
            return formula::set_locked(formula, line, chance.below(3) == 0);
        case 5:
            return formula::move_line(formula, line, other);
        case 6:
            return formula::move_to_phase(formula, line, phase);
        case 7:
            return formula::remove_line(formula, line);
        case 8:
            return formula::add_phase(formula, {phase, chance.between(-1100000, 5100000), {}});
        case 9:
            return formula::set_phase(formula, chance.below(6), {phase, {}, {}});
        default:
            return formula::remove_phase(formula, phase);
    }
}

// The lines without their order and phases, to see that a move changes nothing else.
std::vector<std::string> contents(const formula::Formula& formula) {
    std::vector<std::string> all;
    for (const auto& line : formula.lines)
        all.push_back(line.ingredient + "|" + line.name + "|" + decimal::print(line.percent.grid) +
                      (line.rest ? "r" : ""));
    std::sort(all.begin(), all.end());
    return all;
}

}  // namespace

TEST_CASE("every random formula is sound and adds to exactly 100") {
    chance::Generator chance(2026);
    const auto shelf = support::shelf();
    for (int round = 0; round < kRounds; ++round) {
        const auto formula = support::random_formula(chance, shelf);
        REQUIRE(formula::checked(formula).value() == formula);
        REQUIRE(sum_of(formula::percents(formula).value()) == kHundred);
    }
}

TEST_CASE("every batch keeps its mass, and no line is a division or more off its share") {
    chance::Generator chance(2027);
    const auto shelf = support::shelf();
    for (int round = 0; round < kRounds; ++round) {
        CAPTURE(round);
        const auto formula = support::random_formula(chance, shelf);
        const auto request = support::random_request(chance, shelf);
        const auto made = batch::make(formula, request, shelf, "salve");
        REQUIRE(made.ok());
        REQUIRE(made->total.grid % request.division.grid == 0);
        REQUIRE(made->total >= made->asked);
        REQUIRE(made->total - made->asked < request.division);
        Mass sum;
        for (const auto& line : made->lines) {
            sum = sum + line.grams;
            REQUIRE(line.grams >= Mass{0});
            REQUIRE(line.grams.grid % request.division.grid == 0);
            // |grams - total x percent / 100| < division, without rounding: both sides times 100 %
            const std::int64_t off = line.grams.grid * kHundred.grid - made->total.grid * line.percent.grid;
            REQUIRE(std::abs(off) < request.division.grid * kHundred.grid);
            // the percent told is the percent weighed, to half a step of the grid
            const std::int64_t told = line.actual.grid * made->total.grid - line.grams.grid * kHundred.grid;
            REQUIRE(2 * std::abs(told) <= made->total.grid);
        }
        REQUIRE(sum == made->total);
    }
}

TEST_CASE("what is left of a containers' batch after the loss always fills them") {
    chance::Generator chance(2028);
    const auto shelf = support::shelf();
    int by_containers = 0;
    for (int round = 0; round < kRounds; ++round) {
        CAPTURE(round);
        const auto formula = support::random_formula(chance, shelf);
        const auto request = support::random_request(chance, shelf);
        const auto made = batch::make(formula, request, shelf, "salve");
        REQUIRE(made.ok());
        // total x (1 - loss) >= fill, without rounding; of a mass the fill is what is left, rounded down
        REQUIRE(made->total.grid * (kHundred - made->loss).grid >= made->fill.grid * kHundred.grid);
        if (request.amount != batch::Amount::containers) continue;
        by_containers += 1;
        // and 0.0001 g less would not do
        REQUIRE((made->asked.grid - 1) * (kHundred - made->loss).grid < made->fill.grid * kHundred.grid);
        REQUIRE(made->loss_usual == !request.loss.has_value());
    }
    CHECK(by_containers > kRounds / 3);
}

TEST_CASE("no line, and no ingredient on several lines, is rounded above its cap") {
    chance::Generator chance(2029);
    const auto shelf = support::shelf();
    int made_count = 0, tight = 0;
    for (int round = 0; round < kRounds; ++round) {
        CAPTURE(round);
        const auto formula = support::random_formula(chance, shelf);
        const auto percents = formula::percents(formula).value();
        std::vector<catalogue::Ingredient> own;
        for (const auto& ingredient : shelf.ingredients) {
            if (chance.below(2) == 0) continue;
            std::int64_t share = 0;
            for (std::size_t i = 0; i < percents.size(); ++i)
                if (formula.lines[i].ingredient == ingredient.id) share += percents[i].grid;
            own.push_back(ingredient);
            const std::int64_t slack = chance.below(2) == 0 ? 0 : chance.between(-10, 2000);
            own.back().max_percent["salve"] = {std::max<std::int64_t>(0, share + slack)};
        }
        const auto with_own = catalogue::with_own(shelf, own);
        const auto request = support::random_request(chance, shelf);
        const auto made = batch::make(formula, request, with_own, "salve");
        if (!made) {
            REQUIRE(made.error().code == result::Code::cap_leaves_no_room);
            tight += 1;
            continue;
        }
        made_count += 1;
        Mass sum;
        for (const auto& line : made->lines) {
            sum = sum + line.grams;
            const std::int64_t off = line.grams.grid * kHundred.grid - made->total.grid * line.percent.grid;
            REQUIRE(std::abs(off) < request.division.grid * kHundred.grid);
        }
        REQUIRE(sum == made->total);
        for (const auto& capped : own) {
            Mass weighed;
            for (std::size_t i = 0; i < formula.lines.size(); ++i)
                if (formula.lines[i].ingredient == capped.id) weighed = weighed + made->lines[i].grams;
            REQUIRE(weighed.grid * kHundred.grid <= made->total.grid * capped.max_percent.at("salve").grid);
        }
    }
    CHECK(made_count > kRounds / 4);
    CHECK(tight > kRounds / 50);
}

TEST_CASE("no row of edits leads to a formula that the check would refuse or change") {
    chance::Generator chance(2030);
    const auto shelf = support::shelf();
    int changed = 0, refused = 0;
    for (int round = 0; round < kRounds / 10; ++round) {
        formula::Formula formula = support::random_formula(chance, shelf);
        for (int step = 0; step < 40; ++step) {
            CAPTURE(round);
            CAPTURE(step);
            const auto next = random_edit(chance, formula);
            if (!next) {
                refused += 1;
                continue;
            }
            changed += 1;
            REQUIRE(formula::checked(*next).value() == *next);
            for (std::size_t i = 0; i < next->lines.size() && next->lines.size() == formula.lines.size(); ++i)
                REQUIRE(next->lines[i].percent <= kHundred);
            formula = *next;
        }
    }
    CHECK(changed > 4000);
    CHECK(refused > 2000);
}

TEST_CASE("moving lines about changes nothing but order and phase") {
    chance::Generator chance(2031);
    const auto shelf = support::shelf();
    for (int round = 0; round < kRounds; ++round) {
        const auto formula = support::random_formula(chance, shelf);
        const std::size_t from = chance.below(formula.lines.size()), to = chance.below(formula.lines.size());
        const auto moved = formula::move_line(formula, from, to).value();
        REQUIRE(contents(moved) == contents(formula));
        REQUIRE(moved.lines[to].ingredient == formula.lines[from].ingredient);
        const auto& phase = formula.phases[chance.below(formula.phases.size())].id;
        REQUIRE(contents(formula::move_to_phase(formula, from, phase).value()) == contents(formula));
    }
}

TEST_CASE("making any unlocked line the rest line, or no line, changes no percent") {
    chance::Generator chance(2032);
    const auto shelf = support::shelf();
    for (int round = 0; round < kRounds; ++round) {
        const auto formula = support::random_formula(chance, shelf);
        const auto before = formula::percents(formula).value();
        const auto changed =
            formula::set_rest(formula, chance.below(formula.lines.size()), chance.below(2) == 0);
        if (!changed) {
            REQUIRE(changed.error().code == result::Code::line_locked);
            continue;
        }
        REQUIRE(formula::percents(*changed).value() == before);
    }
}

TEST_CASE("a report on any recipe is in order and agrees with what it is made of") {
    chance::Generator chance(2033);
    const auto shelf = support::shelf();
    for (int round = 0; round < kRounds / 5; ++round) {
        const auto recipe = support::random_recipe(chance, shelf);
        REQUIRE(workspace::checked(recipe).value() == recipe);
        const auto report = analysis::of(recipe, shelf);
        REQUIRE(report.percents.value() == formula::percents(recipe.formula).value());
        REQUIRE(report.batch.ok() == (recipe.batch.amount != batch::Amount::none));
        for (std::size_t i = 1; i < report.findings.size(); ++i)
            REQUIRE(report.findings[i - 1].severity >= report.findings[i].severity);
        for (const auto& finding : report.findings) {
            const bool in_range = !finding.line || *finding.line < recipe.formula.lines.size();
            REQUIRE(in_range);
        }
    }
}

}  // namespace test_invariants
