// Made parts in the book. A recipe holds a copy of what a made part came to when it was put in; the loops
// that are looked for here run through the recipes themselves, because copies are renewed from them.
#include "workspace_made.h"

#include <algorithm>
#include <utility>

#include "made.h"
#include "sorting.h"

namespace workspace {
namespace {

using catalogue::Ingredient;
using quantity::Mass;
using quantity::Percent;
using result::Code;
using result::Error;

std::string title_of(const Recipe& recipe) {
    return recipe.title.empty() && recipe.made ? recipe.made->id : recipe.title;
}

// Whether what `recipe` holds comes to `wanted` in the end; `names` are the ones on the way.
struct Search {
    const Workspace& workspace;
    std::string_view wanted;
    std::vector<std::string> names;
    std::vector<std::string> seen;

    bool in_recipe(const Recipe& recipe) {
        return std::any_of(recipe.formula.lines.begin(), recipe.formula.lines.end(),
                           [&](const formula::Line& line) { return in(recipe, line.ingredient); });
    }
    bool in(const Recipe& recipe, const std::string& id) {
        if (id.empty()) return false;
        if (id == wanted) return true;
        if (std::find(seen.begin(), seen.end(), id) != seen.end()) return false;
        seen.push_back(id);
        if (const Kept* kept = find_made(workspace, id)) {
            names.push_back(title_of(kept->recipe));
            if (in_recipe(kept->recipe)) return true;
            names.pop_back();
        }
        const Ingredient* own = own_of(recipe, id);
        if (own == nullptr) return false;
        names.push_back(own->name.empty() ? own->id : own->name);
        for (const catalogue::Part& part : own->parts)
            if (in(recipe, part.ingredient)) return true;
        names.pop_back();
        return false;
    }
};

std::optional<Error> loop_of(const Workspace& workspace, const Recipe& into, const Recipe& made) {
    if (!into.made) return std::nullopt;
    Search search{workspace, into.made->id, {}, {}};
    const std::string first = title_of(into), second = title_of(made);
    if (made.made->id == into.made->id) return Error{Code::made_loop, "lines", first + "\n" + first};
    if (!search.in_recipe(made)) return std::nullopt;
    std::string names = first + "\n" + second;
    for (const std::string& name : search.names)
        names += "\n" + name;
    return Error{Code::made_loop, "lines", names + "\n" + first};
}

}  // namespace

result::Result<Recipe> set_made(Recipe recipe, std::string id, catalogue::MadeAs as, Percent yield) {
    if (yield <= Percent{0} || yield > quantity::kHundred)
        return Error{Code::yield_invalid, "made.yield_percent", decimal::print(yield.grid)};
    if (recipe.made) id = recipe.made->id;
    if (id.empty()) return Error{Code::name_empty, "made.id", ""};
    recipe.made = MadePart{std::move(id), as, yield};
    return recipe;
}

Recipe without_made(Recipe recipe) {
    recipe.made.reset();
    for (formula::Line& line : recipe.formula.lines)
        line.strained = false;
    return recipe;
}

const Kept* find_made(const Workspace& workspace, std::string_view id) {
    for (const Kept& kept : workspace.recipes)
        if (kept.binned.empty() && kept.recipe.made && kept.recipe.made->id == id) return &kept;
    return nullptr;
}

result::Result<Ingredient> made_ingredient(const Recipe& recipe, const catalogue::Catalogue& shipped) {
    if (!recipe.made) return Error{Code::field_missing, "made", "made"};
    auto made = made::ingredient_of(recipe.formula, recipe.made->as, recipe.made->yield,
                                    catalogue::with_own(shipped, recipe.own));
    if (!made) return made;
    made.value().id = recipe.made->id;
    made.value().name = title_of(recipe);
    made.value().source = recipe.title;
    made.value().standing = source::Standing::estimate;
    return as_own(std::move(made).value());
}

std::vector<Ingredient> mine(const Workspace& workspace, const catalogue::Catalogue& shipped) {
    std::vector<Ingredient> all;
    for (const KeptOwn& kept : workspace.own)
        if (kept.binned.empty()) all.push_back(kept.ingredient);
    for (const Kept& kept : workspace.recipes) {
        if (!kept.binned.empty() || !kept.recipe.made) continue;
        if (auto made = made_ingredient(kept.recipe, shipped)) all.push_back(std::move(made).value());
    }
    sorting::stable(all, [](const Ingredient& a, const Ingredient& b) { return a.id < b.id; });
    return all;
}

result::Result<Used> use_made(const Workspace& workspace, const catalogue::Catalogue& shipped, Recipe into,
                              std::string_view made_id) {
    const Kept* kept = find_made(workspace, made_id);
    if (kept == nullptr) return Error{Code::not_a_recipe, std::string(made_id), ""};
    if (auto fault = loop_of(workspace, into, kept->recipe)) return *fault;
    const auto made = made_ingredient(kept->recipe, shipped);
    if (!made) return made.error();
    return use_own(std::move(into), *made, kept->recipe.own);
}

result::Result<Used> bring_in(const Workspace& workspace, const catalogue::Catalogue& shipped, Recipe into,
                              const std::string& id) {
    if (own_of(into, id) != nullptr) return Used{std::move(into), id};
    if (find_made(workspace, id) != nullptr) return use_made(workspace, shipped, std::move(into), id);
    const KeptOwn* kept = find_own(workspace, id);
    if (kept == nullptr || !kept->binned.empty()) return Used{std::move(into), id};
    return use_own(std::move(into), kept->ingredient, mine(workspace, shipped));
}

result::Result<Ingredient> with_parts_of(Ingredient own, const Recipe& recipe,
                                         const catalogue::Catalogue& shipped) {
    const MadePart as = recipe.made.value_or(MadePart{"", catalogue::MadeAs::blend, quantity::kHundred});
    const auto made =
        made::ingredient_of(recipe.formula, as.as, as.yield, catalogue::with_own(shipped, recipe.own));
    if (!made) return made.error();
    formula::Formula parts;
    std::vector<Percent> percents;
    for (const catalogue::Part& part : made->parts) {
        formula::Line line;
        line.ingredient = part.ingredient;
        parts.lines.push_back(line);
        percents.push_back(part.percent);
    }
    const auto split = made::split(parts, percents, shipped, recipe.own);
    if (!split) return split.error();
    own.parts.clear();
    for (const made::Share& share : split->shares)
        own.parts.push_back({share.ingredient, share.percent});
    own.made = made->made;
    if (own.role.empty()) own.role = made->role;
    return own;
}

std::vector<Need> needs(const Workspace& workspace, const Recipe& recipe, const batch::Batch& batch) {
    std::vector<Need> all;
    for (const batch::Line& line : batch.lines) {
        if (line.line >= recipe.formula.lines.size() || line.grams == Mass{0}) continue;
        const Ingredient* own = own_of(recipe, recipe.formula.lines[line.line].ingredient);
        if (own == nullptr || !own->made) continue;
        const auto same = std::find_if(all.begin(), all.end(),
                                       [&](const Need& need) { return need.ingredient == own->id; });
        if (same == all.end())
            all.push_back({own->id, line.grams, "", {}});
        else
            same->grams = same->grams + line.grams;
    }
    for (Need& need : all) {
        const Kept* kept = find_made(workspace, need.ingredient);
        if (kept == nullptr) continue;
        need.recipe = kept->id;
        const auto weigh = made::to_weigh(kept->recipe.formula, kept->recipe.made->yield, need.grams);
        if (weigh) need.to_weigh = *weigh;
    }
    return all;
}

result::Result<Recipe> set_batch_grams(Recipe recipe, Mass grams) {
    if (grams <= Mass{0}) return Error{Code::batch_zero, "batch.grams", ""};
    if (grams > batch::kLargest)
        return Error{Code::batch_too_large, "batch.grams", decimal::print(batch::kLargest.grid)};
    recipe.batch.amount = batch::Amount::grams;
    recipe.batch.grams = grams;
    return recipe;
}

}  // namespace workspace
