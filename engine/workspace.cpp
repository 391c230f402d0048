// The edits on the book, and the check of a recipe that came from outside.
// Bounds on what a recipe brings along besides its lines (containers, dates) stand here, those on own
// ingredients in workspace_own.cpp; whether its ids are known to a catalogue is not asked: an unknown one is
// kept.
#include "workspace.h"

#include <algorithm>
#include <utility>

#include "bounds.h"
#include "date.h"
#include "utf8.h"
#include "workspace_own.h"
#include "workspace_versions.h"

namespace workspace {
namespace {

using bounds::Fault;
using bounds::outside;
using bounds::too_long;
using bounds::unnamed;
using bounds::whole_outside;
using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;
using result::Code;
using result::Error;

constexpr std::size_t kMostShortBytes = 80;  // ids, markets, roles
constexpr std::size_t kMostContainerKinds = 50;
constexpr std::size_t kMostStock = formula::kMostLines;
constexpr std::int64_t kMostPeople = 10000;

std::string place(std::string_view list, std::size_t index, std::string_view field) {
    return std::string(list) + "[" + std::to_string(index) + "]." + std::string(field);
}

Fault fault_of_head(const Recipe& recipe) {
    if (auto fault = too_long(recipe.title, kMostTitleBytes, "title")) return fault;
    if (auto fault = unnamed(recipe.product, kMostShortBytes, "product")) return fault;
    if (auto fault = too_long(recipe.market, kMostShortBytes, "market")) return fault;
    if (!recipe.date.empty() && !is_date(recipe.date))
        return Error{Code::field_unknown_value, "date", recipe.date};
    if (auto fault = too_long(recipe.person, kMostShortBytes, "person")) return fault;
    if (recipe.age_months)
        if (auto fault = whole_outside(*recipe.age_months, kMostAgeMonths, "age_months")) return fault;
    if (recipe.measured_ph && (*recipe.measured_ph < 0 || *recipe.measured_ph > kMostPh))
        return Error{Code::field_unknown_value, "measured_ph", decimal::print(*recipe.measured_ph)};
    if (auto fault = label::fault_of(recipe.label, "label.")) return fault;
    if (recipe.made) {
        if (auto fault = unnamed(recipe.made->id, kMostShortBytes, "made.id")) return fault;
        if (recipe.made->yield <= Percent{0} || recipe.made->yield > kHundred)
            return Error{Code::yield_invalid, "made.yield_percent", decimal::print(recipe.made->yield.grid)};
    }
    return too_long(recipe.notes, kMostNotesBytes, "notes");
}

Fault fault_of_steps(const Recipe& recipe) {
    if (recipe.steps.size() > kMostSteps) return Error{Code::too_many, "steps", std::to_string(kMostSteps)};
    for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
        const formula::Step& step = recipe.steps[i];
        if (auto fault = too_long(step.text, kMostStepBytes, place("steps", i, "text"))) return fault;
        if (step.minutes)
            if (auto fault = whole_outside(*step.minutes, kMostStepMinutes, place("steps", i, "minutes")))
                return fault;
        const auto is_its_phase = [&](const formula::Phase& phase) { return phase.id == step.phase; };
        const auto& phases = recipe.formula.phases;
        if (!step.phase.empty() && std::none_of(phases.begin(), phases.end(), is_its_phase))
            return Error{Code::phase_missing, place("steps", i, "phase"), step.phase};
    }
    return std::nullopt;
}

Fault fault_of_fill(const batch::Containers& one, std::string_view where) {
    const auto at = [&](std::string_view field) { return std::string(where) + "." + std::string(field); };
    if (auto fault = whole_outside(one.count, batch::kMostContainers, at("count"))) return fault;
    const std::pair<std::string_view, const std::optional<Mass>*> masses[] = {
        {"fill_g", &one.fill_g}, {"test_fill_g", &one.test_fill_g}, {"water_g", &one.water_g}};
    for (const auto& [field, mass] : masses)
        if (*mass)
            if (auto fault = outside((*mass)->grid, batch::kLargest.grid, at(field))) return fault;
    if (one.fill_percent)
        if (auto fault = outside(one.fill_percent->grid, kHundred.grid, at("fill_percent"))) return fault;
    return std::nullopt;
}

Fault fault_of_containers(const std::vector<batch::Containers>& containers) {
    if (containers.size() > kMostContainerKinds)
        return Error{Code::too_many, "batch.containers", std::to_string(kMostContainerKinds)};
    for (std::size_t i = 0; i < containers.size(); ++i) {
        const std::string where = "batch.containers[" + std::to_string(i) + "]";
        if (auto fault = unnamed(containers[i].id, kMostShortBytes, where + ".id")) return fault;
        if (auto fault = fault_of_fill(containers[i], where)) return fault;
    }
    return std::nullopt;
}

// Whether a batch can be made of it is for batch to say; here only figures that no batch could mean are
// refused.
Fault fault_of_batch(const batch::Request& batch) {
    if (batch.division <= Mass{0} || batch.division > batch::kLargest)
        return Error{Code::division_invalid, "batch.division_g", decimal::print(batch.division.grid)};
    if (batch.loss && (*batch.loss < Percent{0} || *batch.loss >= kHundred))
        return Error{Code::loss_invalid, "batch.loss_percent", decimal::print(batch.loss->grid)};
    if (auto fault = outside(batch.grams.grid, batch::kLargest.grid, "batch.grams")) return fault;
    if (auto fault = fault_of_containers(batch.containers)) return fault;
    if (auto fault = whole_outside(batch.people, kMostPeople, "batch.people")) return fault;
    if (auto fault = whole_outside(batch.each, kMostPeople, "batch.each")) return fault;
    if (batch.unit) {  // no container: portions by weight
        if (auto fault = too_long(batch.unit->id, kMostShortBytes, "batch.unit.id")) return fault;
        if (auto fault = fault_of_fill(*batch.unit, "batch.unit")) return fault;
    }
    if (batch.stock.size() > kMostStock)
        return Error{Code::too_many, "batch.stock", std::to_string(kMostStock)};
    for (std::size_t i = 0; i < batch.stock.size(); ++i) {
        if (auto fault =
                unnamed(batch.stock[i].ingredient, kMostShortBytes, place("batch.stock", i, "ingredient")))
            return fault;
        if (auto fault =
                outside(batch.stock[i].grams.grid, batch::kLargest.grid, place("batch.stock", i, "grams")))
            return fault;
    }
    return std::nullopt;
}

}  // namespace

scales::Bench bench_of(const Settings& settings) {
    scales::Bench bench{settings.scales, std::nullopt};
    if (settings.jug && *settings.jug < settings.jugs.size()) bench.jug = settings.jugs[*settings.jug];
    return bench;
}

void add(Workspace& workspace, std::string id, Recipe recipe, std::string now) {
    workspace.open = id;
    workspace.recipes.insert(workspace.recipes.begin(),
                             Kept{std::move(id), std::move(recipe), 0, std::move(now), "", {}});
}

result::Result<std::string> copy(Workspace& workspace, std::string_view id, std::string new_id,
                                 std::string copied_title, std::string now) {
    const Kept* kept = find(workspace, id);
    if (kept == nullptr) return Error{Code::not_a_recipe, std::string(id), ""};
    if (auto fault = too_long(copied_title, kMostTitleBytes, "title")) return *fault;
    Recipe recipe = kept->recipe;
    recipe.title = std::move(copied_title);
    add(workspace, new_id, std::move(recipe), std::move(now));
    return new_id;
}

bool bin(Workspace& workspace, std::string_view id, std::string now) {
    Kept* kept = find(workspace, id);
    if (kept == nullptr || !kept->binned.empty() || now.empty()) return false;
    kept->binned = std::move(now);
    if (workspace.open == id) workspace.open.clear();
    return true;
}

bool restore(Workspace& workspace, std::string_view id) {
    Kept* kept = find(workspace, id);
    if (kept == nullptr || kept->binned.empty()) return false;
    kept->binned.clear();
    return true;
}

bool erase_binned(Workspace& workspace, std::string_view id) {
    const Kept* kept = find(workspace, id);
    if (kept == nullptr || kept->binned.empty()) return false;
    forget_versions(workspace, kept->id);
    std::erase_if(workspace.weighing, [&](const KeptWeighOut& one) { return one.of == kept->id; });
    workspace.recipes.erase(workspace.recipes.begin() + (kept - workspace.recipes.data()));
    return true;
}

result::Result<std::string> tag(Workspace& workspace, std::string_view id, std::string_view tag) {
    Kept* kept = find(workspace, id);
    if (kept == nullptr) return Error{Code::not_a_recipe, std::string(id), ""};
    std::string said;  // one blank for any run of them
    for (const char c : tag) {
        const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
        if (!blank)
            said += c;
        else if (!said.empty() && said.back() != ' ')
            said += ' ';
    }
    if (!said.empty() && said.back() == ' ') said.pop_back();
    if (said.empty()) return Error{Code::name_empty, "tags", ""};
    if (auto fault = too_long(said, kMostTagBytes, "tags")) return *fault;
    for (const std::string& there : kept->tags)
        if (utf8::lowered(there) == utf8::lowered(said)) return there;
    if (kept->tags.size() >= kMostTags) return Error{Code::too_many, "tags", std::to_string(kMostTags)};
    kept->tags.push_back(said);
    return said;
}

bool untag(Workspace& workspace, std::string_view id, std::string_view tag) {
    Kept* kept = find(workspace, id);
    if (kept == nullptr) return false;
    return std::erase_if(kept->tags, [&](const std::string& there) {
               return utf8::lowered(there) == utf8::lowered(tag);
           }) > 0;
}

Kept* find(Workspace& workspace, std::string_view id) {
    for (Kept& kept : workspace.recipes)
        if (kept.id == id) return &kept;
    return nullptr;
}

const Kept* find(const Workspace& workspace, std::string_view id) {
    for (const Kept& kept : workspace.recipes)
        if (kept.id == id) return &kept;
    return nullptr;
}

bool is_date(std::string_view text) {
    return date::is_day(text);
}

result::Result<Recipe> checked(Recipe recipe) {
    if (auto fault = fault_of_head(recipe)) return *fault;
    auto formula = formula::checked(std::move(recipe.formula));
    if (!formula) return formula.error();
    recipe.formula = std::move(formula).value();
    if (auto fault = fault_of_own(recipe.own)) return *fault;
    if (auto fault = fault_of_steps(recipe)) return *fault;
    if (auto fault = fault_of_batch(recipe.batch)) return *fault;
    return recipe;
}

std::string display_name(const catalogue::Catalogue& catalogue, const formula::Line& line) {
    const catalogue::Ingredient* ingredient = catalogue::find_ingredient(catalogue, line.ingredient);
    if (ingredient != nullptr && !ingredient->name.empty()) return ingredient->name;
    return line.name.empty() ? line.ingredient : line.name;
}

}  // namespace workspace
