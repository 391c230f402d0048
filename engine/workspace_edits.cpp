// The edits of one recipe. What formula can do on its own is left to it; here stands what has to change in
// two places at once. The bounds are those of workspace::checked.
#include "workspace_edits.h"

#include <algorithm>
#include <utility>

#include "blend_firmness.h"

namespace workspace {
namespace {

using result::Code;
using result::Error;

std::string place(std::size_t step, std::string_view field = "") {
    std::string at = "steps[" + std::to_string(step) + "]";
    if (!field.empty()) at += "." + std::string(field);
    return at;
}

std::optional<Error> fault_of_step(const Recipe& recipe, const formula::Step& step, std::size_t at) {
    if (step.text.size() > kMostStepBytes)
        return Error{Code::text_too_long, place(at, "text"), std::to_string(kMostStepBytes)};
    if (step.minutes && *step.minutes < 0)
        return Error{Code::number_negative, place(at, "minutes"), std::to_string(*step.minutes)};
    if (step.minutes && *step.minutes > kMostStepMinutes)
        return Error{Code::number_too_large, place(at, "minutes"), std::to_string(*step.minutes)};
    const auto& phases = recipe.formula.phases;
    const bool known = std::any_of(phases.begin(), phases.end(),
                                   [&](const formula::Phase& phase) { return phase.id == step.phase; });
    if (!step.phase.empty() && !known) return Error{Code::phase_missing, place(at, "phase"), step.phase};
    return std::nullopt;
}

// What no step has: said as a line that is not there is.
Error no_step(std::size_t step) {
    return {Code::line_missing, place(step), ""};
}

}  // namespace

Changed set_phase(Recipe recipe, std::size_t phase, formula::Phase changed) {
    const std::string before =
        phase < recipe.formula.phases.size() ? recipe.formula.phases[phase].id : std::string();
    const std::string after = changed.id;
    auto formula = formula::set_phase(std::move(recipe.formula), phase, std::move(changed));
    if (!formula) return formula.error();
    recipe.formula = std::move(formula).value();
    for (formula::Step& step : recipe.steps)
        if (step.phase == before && !before.empty()) step.phase = after;
    return recipe;
}

Changed remove_phase(Recipe recipe, std::string_view phase) {
    const std::string gone(phase);  // may be part of the recipe that changes
    auto formula = formula::remove_phase(std::move(recipe.formula), gone);
    if (!formula) return formula.error();
    recipe.formula = std::move(formula).value();
    for (formula::Step& step : recipe.steps)
        if (step.phase == gone) step.phase.clear();
    return recipe;
}

Changed add_step(Recipe recipe, formula::Step step) {
    const std::size_t at = recipe.steps.size();
    if (at >= kMostSteps) return Error{Code::too_many, "steps", std::to_string(kMostSteps)};
    if (auto fault = fault_of_step(recipe, step, at)) return *fault;
    recipe.steps.push_back(std::move(step));
    return recipe;
}

Changed set_step(Recipe recipe, std::size_t step, formula::Step changed) {
    if (step >= recipe.steps.size()) return no_step(step);
    if (auto fault = fault_of_step(recipe, changed, step)) return *fault;
    recipe.steps[step] = std::move(changed);
    return recipe;
}

Changed remove_step(Recipe recipe, std::size_t step) {
    if (step >= recipe.steps.size()) return no_step(step);
    recipe.steps.erase(recipe.steps.begin() + static_cast<std::ptrdiff_t>(step));
    return recipe;
}

Changed with_formula(Recipe recipe, const formula::Changed& changed) {
    if (!changed) return changed.error();
    recipe.formula = *changed;
    return recipe;
}

Changed set_notes(Recipe recipe, std::string notes) {
    if (notes.size() > kMostNotesBytes)
        return Error{Code::text_too_long, "notes", std::to_string(kMostNotesBytes)};
    recipe.notes = std::move(notes);
    return recipe;
}

Changed set_title(Recipe recipe, std::string title) {
    if (title.size() > kMostTitleBytes)
        return Error{Code::text_too_long, "title", std::to_string(kMostTitleBytes)};
    recipe.title = std::move(title);
    return recipe;
}

Changed set_product(Recipe recipe, std::string product) {
    if (product.empty()) return Error{Code::name_empty, "product", ""};
    if (product.size() > formula::kMostNameBytes)
        return Error{Code::text_too_long, "product", std::to_string(formula::kMostNameBytes)};
    recipe.product = std::move(product);
    return recipe;
}

Changed set_market(Recipe recipe, std::string market) {
    recipe.market = std::move(market);
    return checked(std::move(recipe));
}

Changed set_date(Recipe recipe, std::string date) {
    recipe.date = std::move(date);
    return checked(std::move(recipe));
}

Changed set_person(Recipe recipe, std::string person) {
    recipe.person = std::move(person);
    return checked(std::move(recipe));
}

Changed set_age(Recipe recipe, std::optional<std::int64_t> months) {
    recipe.age_months = months;
    return checked(std::move(recipe));
}

Changed set_ph(Recipe recipe, std::optional<std::int64_t> measured) {
    recipe.measured_ph = measured;
    return checked(std::move(recipe));
}

Changed set_label(Recipe recipe, label::Said said) {
    if (auto fault = label::fault_of(said, "label.")) return *fault;
    recipe.label = std::move(said);
    return recipe;
}

result::Result<Settings> set_maker(Settings settings, label::Maker maker) {
    if (auto fault = label::fault_of(maker, "maker.")) return *fault;
    settings.maker = std::move(maker);
    return settings;
}

result::Result<Settings> set_label_sheet(Settings settings, std::optional<label_sheet::Sheet> sheet) {
    if (sheet)
        if (auto fault = label_sheet::fault_of(*sheet, "label_sheet.")) return *fault;
    settings.label_sheet = sheet;
    return settings;
}

result::Result<Settings> set_workshop(Settings settings, workshop::Plan plan) {
    if (auto fault = workshop::fault_of(plan, "workshop.")) return *fault;
    settings.workshop = std::move(plan);
    return settings;
}

result::Result<Settings> set_pack(Settings settings, const formula::Line& line, quantity::Mass pack) {
    const std::string& of = line.ingredient.empty() ? line.name : line.ingredient;
    std::vector<workshop::Pack> packs;
    for (workshop::Pack& one : settings.workshop.packs)
        if (one.ingredient != of) packs.push_back(std::move(one));
    if (pack.grid > 0) packs.push_back({of, pack});
    workshop::Plan plan = std::move(settings.workshop);
    plan.packs = std::move(packs);
    return set_workshop(std::move(settings), std::move(plan));
}

result::Result<Settings> set_prices(Settings settings, const result::Result<price::Book>& changed) {
    if (!changed) return changed.error();
    if (auto fault = price::fault_of(*changed, "prices.")) return *fault;
    settings.prices = *changed;
    return settings;
}

result::Result<Settings> set_low(Settings settings, const std::string& ingredient, quantity::Mass under) {
    std::vector<lot::Threshold> low;
    for (lot::Threshold& one : settings.low)
        if (one.ingredient != ingredient) low.push_back(std::move(one));
    if (under.grid > 0) low.push_back({ingredient, under});
    if (auto fault = lot::fault_of(low, "low")) return *fault;
    settings.low = std::move(low);
    return settings;
}

result::Result<Settings> rate_firmness(Settings settings, blend::Rated rated) {
    if (rated.rating != 0)
        if (auto fault = blend::fault_of(rated, "firmness.")) return *fault;
    settings.firmness = blend::rate(std::move(settings.firmness), std::move(rated));
    return settings;
}

}  // namespace workspace
