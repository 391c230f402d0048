// Small builders that several tests share: a catalogue with invented figures, formulas from a few numbers,
// and random formulas, batches and recipes from a seed. Figures here prove arithmetic, they say nothing of
// the trade.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "engine/catalogue.h"
#include "engine/chance.h"
#include "engine/formula.h"
#include "engine/workspace.h"

namespace support {

inline catalogue::Ingredient ingredient(std::string id, std::uint32_t number, std::string name,
                                        std::string role, catalogue::Phase phase, std::int64_t density_grid) {
    catalogue::Ingredient one;
    one.id = std::move(id);
    one.number = number;
    one.name = std::move(name);
    one.role = std::move(role);
    one.phase = phase;
    if (density_grid > 0)
        one.density = source::Sourced<catalogue::DensityAt>{
            {{density_grid}, 20 * decimal::kOne}, "memory", source::Standing::memory};
    return one;
}

inline catalogue::Container container(std::string id, std::uint32_t number, std::int64_t ml_grid,
                                      std::int64_t g_grid) {
    catalogue::Container one;
    one.id = std::move(id);
    one.number = number;
    one.name = one.id;
    if (ml_grid > 0)
        one.nominal_ml =
            source::Sourced<catalogue::Range>{{ml_grid, ml_grid}, "memory", source::Standing::memory};
    if (g_grid > 0)
        one.fill_g =
            source::Sourced<catalogue::Range>{{g_grid / 2, g_grid}, "memory", source::Standing::memory};
    return one;
}

// Sorted by id, as a catalogue is. "mystery" has no density.
inline catalogue::Catalogue shelf() {
    using catalogue::Phase;
    catalogue::Catalogue shelf;
    shelf.ingredients = {
        ingredient("benzyl_alcohol", 6, "Benzyl alcohol", "preservative", Phase::cool_down, 10450),
        ingredient("jojoba", 5, "Jojoba oil", "liquid_oil", Phase::oil, 8680),
        ingredient("mystery", 7, "Mystery butter", "butter", Phase::oil, 0),
        ingredient("oat", 4, "Oat flour", "powder", Phase::powder, 0),
        ingredient("shea", 3, "Shea butter", "butter", Phase::oil, 9100),
        ingredient("sunflower", 2, "Sunflower oil", "liquid_oil", Phase::oil, 9200),
        ingredient("water", 0, "Water", "water", Phase::water, 10000),
        ingredient("wax", 1, "Beeswax", "wax", Phase::oil, 9600)};
    shelf.ingredients[5].usual_leave_on_percent = source::Sourced<catalogue::Range>{
        {10 * decimal::kOne, 80 * decimal::kOne}, "memory", source::Standing::memory};
    shelf.containers = {container("jar", 1, 60 * decimal::kOne, 55 * decimal::kOne),
                        container("tin", 2, 30 * decimal::kOne, 0), container("tube", 3, 0, 45000)};
    catalogue::Product salve, scrub;
    salve.id = "salve";
    salve.number = 1;
    salve.contact = "leave_on";
    salve.ifra_category = source::Sourced<std::string>{"5A", "memory", source::Standing::memory};
    scrub.id = "scrub";
    scrub.number = 2;
    scrub.contact = "rinse_off";
    shelf.products = {salve, scrub};
    return shelf;
}

inline formula::Line line(std::string ingredient, std::int64_t percent_grid, std::string phase = "A") {
    formula::Line one;
    one.ingredient = std::move(ingredient);
    one.percent = {percent_grid};
    one.phase = std::move(phase);
    return one;
}

inline formula::Line rest(std::string ingredient, std::string phase = "A") {
    formula::Line one = line(std::move(ingredient), 0, std::move(phase));
    one.rest = true;
    return one;
}

// A formula out of lines, with the phases they name in the order they come.
inline formula::Formula formula_of(const std::vector<formula::Line>& lines) {
    formula::Formula made;
    for (const formula::Line& one : lines) {
        bool known = false;
        for (const formula::Phase& phase : made.phases)
            known = known || phase.id == one.phase;
        if (!known) made.phases.push_back({one.phase, {}, {}});
        made.lines.push_back(one);
    }
    return made;
}

inline batch::Request grams(std::int64_t grams_grid, std::int64_t division_grid) {
    batch::Request request;
    request.amount = batch::Amount::grams;
    request.grams = {grams_grid};
    request.division = {division_grid};
    return request;
}

inline batch::Request containers(std::vector<batch::Containers> wanted, std::int64_t division_grid) {
    batch::Request request;
    request.amount = batch::Amount::containers;
    request.containers = std::move(wanted);
    request.division = {division_grid};
    return request;
}

// 1 to 12 lines over 1 to 4 phases that add to exactly 100; some have a rest line, some tiny or empty lines,
// some a name that no catalogue has, some a lock or a hold.
inline formula::Formula random_formula(chance::Generator& chance, const catalogue::Catalogue& catalogue) {
    const std::size_t phases = 1 + chance.below(4), lines = 1 + chance.below(12);
    formula::Formula made;
    for (std::size_t i = 0; i < phases; ++i) {
        formula::Phase phase{std::string(1, static_cast<char>('A' + i)), {}, {}};
        if (chance.below(3) == 0) phase.hold_c = chance.between(20, 85) * decimal::kOne;
        if (chance.below(3) == 0) phase.add_below_c = chance.between(300000, 500000);
        made.phases.push_back(phase);
    }
    std::vector<std::int64_t> weights;
    for (std::size_t i = 0; i < lines; ++i)
        weights.push_back(chance.below(10) == 0 ? 0 : chance.between(1, chance.below(3) == 0 ? 20 : 5000));
    weights[0] += 1;
    const auto shares = decimal::share_out(quantity::kHundred.grid, weights).value();
    std::vector<std::size_t> of_phase;
    for (std::size_t i = 0; i < lines; ++i)
        of_phase.push_back(chance.below(phases));
    for (std::size_t phase = 0; phase < phases; ++phase)
        for (std::size_t i = 0; i < lines; ++i) {
            if (of_phase[i] != phase) continue;
            formula::Line one = line("", shares[i], made.phases[phase].id);
            if (chance.below(8) == 0)
                one.name = "Grandmother's jar " + std::to_string(chance.below(100));
            else
                one.ingredient = catalogue.ingredients[chance.below(catalogue.ingredients.size())].id;
            one.locked = chance.below(8) == 0;
            if (chance.below(12) == 0) one.hold = formula::Hold{"thymol", {chance.between(0, 5000)}};
            made.lines.push_back(one);
        }
    if (chance.below(2) == 0) {
        formula::Line& one = made.lines[chance.below(lines)];
        one.rest = true;
        one.percent = {};
    }
    return made;
}

// Grams or containers; containers only of kinds whose fill is known or said, so that a batch can be made.
inline batch::Request random_request(chance::Generator& chance, const catalogue::Catalogue& catalogue) {
    static constexpr std::int64_t kDivisions[] = {10, 100, 200, 500, 1000, 10000, 50000};
    const std::int64_t division = kDivisions[chance.below(7)];
    batch::Request request =
        grams(chance.between(1, chance.below(2) == 0 ? 1'000'000 : 50'000'000), division);
    if (chance.below(2) == 0) {
        request = containers({}, division);
        for (std::uint64_t kinds = 1 + chance.below(3); kinds > 0; --kinds) {
            const auto& kind = catalogue.containers[chance.below(catalogue.containers.size())];
            batch::Containers some{kind.id, chance.between(1, 40), {}, {}};
            if (!kind.fill_g || chance.below(3) == 0)
                some.fill_g = quantity::Mass{chance.between(1000, 2'000'000)};
            request.containers.push_back(some);
        }
    }
    if (chance.below(2) == 0) request.loss = quantity::Percent{chance.between(0, 300'000)};
    return request;
}

inline label::Said random_label(chance::Generator& chance) {
    label::Said said;
    if (chance.below(2) == 0) said.identity = "Winter balm";
    if (chance.below(3) == 0) said.identity_french = "Baume d\xE2\x80\x99hiver";
    if (chance.below(2) == 0) said.keeping.months = chance.between(0, label::kMostMonths);
    if (chance.below(3) == 0) said.keeping.opened_months = chance.between(0, 36);
    said.keeping.never_opened = chance.below(5) == 0;
    said.scent_together = chance.below(4) == 0;
    said.leaflet = chance.below(4) == 0;
    if (chance.below(3) == 0) said.colours = {"mica", "own_rust"};
    if (chance.below(5) == 0) said.nano = {"zinc_oxide"};
    if (chance.below(5) == 0) said.may_contain = {"mica"};
    if (chance.below(3) == 0) said.warnings = {"Keep out of eyes.", "Sets hard in winter."};
    if (chance.below(4) == 0) said.directions = {"Warm it in the hand first."};
    if (chance.below(3) == 0)
        said.panel =
            type_height::Panel{static_cast<type_height::Shape>(chance.below(4)), chance.between(1, 3'000'000),
                               chance.between(1, 3'000'000), chance.below(4) == 0};
    return said;
}

inline workspace::Recipe random_recipe(chance::Generator& chance, const catalogue::Catalogue& catalogue) {
    static constexpr const char* kTitles[] = {"Orchard lip balm",
                                              "Potting-shed hand salve",
                                              "Frost-line elbow butter",
                                              "Ringelblumen-Salbe für Oma",
                                              "",
                                              "手のバーム"};
    workspace::Recipe recipe;
    recipe.title = kTitles[chance.below(6)];
    recipe.product = catalogue.products[chance.below(catalogue.products.size())].id;
    if (chance.below(2) == 0) recipe.market = chance.below(2) == 0 ? "eu" : "us";
    if (chance.below(3) == 0) recipe.date = "2026-0" + std::to_string(1 + chance.below(9)) + "-17";
    if (chance.below(3) == 0) recipe.person = "child_over_3";
    if (chance.below(4) == 0) recipe.age_months = chance.between(0, 200);
    if (chance.below(4) == 0) recipe.label = random_label(chance);
    if (chance.below(4) == 0) recipe.measured_ph = chance.between(0, 140) * (decimal::kOne / 10);
    recipe.formula = random_formula(chance, catalogue);
    for (std::uint64_t steps = chance.below(5); steps > 0; --steps) {
        formula::Step step{"", "Stir until clear, then pour.", {}};
        if (chance.below(2) == 0) step.phase = recipe.formula.phases[0].id;
        if (chance.below(2) == 0) step.minutes = chance.between(0, 60);
        recipe.steps.push_back(step);
    }
    if (chance.below(5) != 0) recipe.batch = random_request(chance, catalogue);
    if (chance.below(3) == 0) recipe.notes = "Sets softer in August.\nKept one back.";
    return recipe;
}

}  // namespace support
