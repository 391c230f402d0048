// Own ingredients on the device and in recipes, and the bounds on both. Whether a word is one of ours (a
// role, a market, a product kind) is not asked: what a later version may know is kept. Parts that add to more
// than the whole are kept too; whoever splits such an entry takes them for unknown.
#include "workspace_own.h"

#include <algorithm>
#include <utility>

#include "bounds.h"
#include "made.h"

namespace workspace {
namespace {

using bounds::Fault;
using bounds::outside;
using bounds::too_long;
using bounds::unnamed;
using quantity::kHundred;
using result::Code;
using result::Error;

Fault too_many(std::size_t entries, std::string at) {
    if (entries <= kMostOwnEntries) return std::nullopt;
    return Error{Code::too_many, std::move(at), std::to_string(kMostOwnEntries)};
}

using Texts = std::map<std::string, std::string>;

Fault fault_of_texts(const Texts& texts, std::size_t most, const std::string& at) {
    if (auto fault = too_many(texts.size(), at)) return fault;
    for (const auto& [key, text] : texts) {
        if (auto fault = unnamed(key, kMostOwnNameBytes, at)) return fault;
        if (auto fault = too_long(text, most, at)) return fault;
    }
    return std::nullopt;
}

Fault fault_of_parts(const std::vector<catalogue::Part>& parts, const std::string& at) {
    if (auto fault = too_many(parts.size(), at)) return fault;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const std::string part = at + "[" + std::to_string(i) + "].";
        if (auto fault = unnamed(parts[i].ingredient, kMostOwnNameBytes, part + "ingredient")) return fault;
        if (auto fault = outside(parts[i].percent.grid, kHundred.grid, part + "percent")) return fault;
    }
    return std::nullopt;
}

Fault fault_of_analysis(const catalogue::LotAnalysis& analysis, const std::string& at) {
    if (auto fault = too_long(analysis.lot, kMostOwnNameBytes, at + ".lot")) return fault;
    if (auto fault = too_long(analysis.by, kMostOwnNameBytes, at + ".by")) return fault;
    if (!analysis.date.empty() && !is_date(analysis.date))
        return Error{Code::field_unknown_value, at + ".date", analysis.date.substr(0, kMostOwnNameBytes)};
    if (auto fault = too_many(analysis.constituents.size(), at + ".constituents")) return fault;
    for (const auto& [constituent, content] : analysis.constituents) {
        if (auto fault = unnamed(constituent, kMostOwnNameBytes, at + ".constituents")) return fault;
        for (const auto& percent : {content.min, content.typical, content.max})
            if (percent)
                if (auto fault = outside(percent->grid, kHundred.grid, at + ".constituents." + constituent))
                    return fault;
    }
    return std::nullopt;
}

}  // namespace

std::optional<Error> fault_of_own(const catalogue::Ingredient& own, const std::string& at) {
    if (auto fault = unnamed(own.id, kMostOwnNameBytes, at + "id")) return fault;
    if (auto fault = too_long(own.name, kMostOwnNameBytes, at + "names")) return fault;
    if (auto fault = fault_of_texts(own.names, kMostOwnNameBytes, at + "names")) return fault;
    if (auto fault = fault_of_texts(own.inci, kMostOwnTextBytes, at + "inci")) return fault;
    if (auto fault = too_long(own.role, kMostOwnNameBytes, at + "role")) return fault;
    if (auto fault = too_long(own.based_on, kMostOwnNameBytes, at + "based_on")) return fault;
    if (own.density)
        if (auto fault =
                outside(own.density->value.density.grid, 100 * decimal::kOne, at + "density_g_per_ml"))
            return fault;
    if (auto fault = fault_of_parts(own.parts, at + "parts")) return fault;
    if (own.analysis)
        if (auto fault = fault_of_analysis(*own.analysis, at + "analysis")) return fault;
    if (own.made) {
        if (own.made->yield <= quantity::Percent{0} || own.made->yield > kHundred)
            return Error{Code::yield_invalid, at + "made.yield_percent",
                         decimal::print(own.made->yield.grid)};
        if (auto fault = too_many(own.made->infused_with.size(), at + "made.infused_with")) return fault;
        for (const std::string& plant : own.made->infused_with)
            if (auto fault = unnamed(plant, kMostOwnNameBytes, at + "made.infused_with")) return fault;
    }
    if (auto fault = too_many(own.max_percent.size(), at + "max_percent")) return fault;
    for (const auto& [key, cap] : own.max_percent) {
        if (auto fault = unnamed(key, kMostOwnNameBytes, at + "max_percent")) return fault;
        if (auto fault = outside(cap.grid, kHundred.grid, at + "max_percent")) return fault;
    }
    const std::pair<const char*, const std::string*> texts[] = {{"inci_source", &own.inci_source},
                                                                {"origin", &own.origin},
                                                                {"caution", &own.caution},
                                                                {"note", &own.note},
                                                                {"source", &own.source}};
    for (const auto& [field, text] : texts)
        if (auto fault = too_long(*text, kMostOwnTextBytes, at + field)) return fault;
    return std::nullopt;
}

std::optional<Error> fault_of_own(const std::vector<catalogue::Ingredient>& own) {
    if (own.size() > kMostOwn) return Error{Code::too_many, "ingredients", std::to_string(kMostOwn)};
    for (std::size_t i = 0; i < own.size(); ++i) {
        const std::string at = "ingredients[" + std::to_string(i) + "].";
        if (auto fault = fault_of_own(own[i], at)) return fault;
        for (std::size_t before = 0; before < i; ++before)
            if (own[before].id == own[i].id) return Error{Code::preset_duplicate, at + "id", own[i].id};
    }
    return made::fault_of_parts(own);
}

namespace {

using catalogue::Ingredient;

const Ingredient* in(const std::vector<Ingredient>& all, std::string_view id) {
    for (const Ingredient& one : all)
        if (one.id == id) return &one;
    return nullptr;
}

std::vector<KeptOwn>::iterator place_of(Workspace& workspace, std::string_view id) {
    return std::lower_bound(
        workspace.own.begin(), workspace.own.end(), id,
        [](const KeptOwn& one, std::string_view wanted) { return one.ingredient.id < wanted; });
}

KeptOwn* kept_own(Workspace& workspace, std::string_view id) {
    const auto at = place_of(workspace, id);
    return at != workspace.own.end() && at->ingredient.id == id ? &*at : nullptr;
}

std::string slug(std::string_view name) {
    std::string out = "own";
    bool apart = true;
    for (const char c : name) {
        const bool capital = c >= 'A' && c <= 'Z';
        if (!capital && !(c >= 'a' && c <= 'z') && !(c >= '0' && c <= '9')) {
            apart = true;
            continue;
        }
        if (out.size() >= 40) break;
        if (std::exchange(apart, false)) out += '_';
        out += static_cast<char>(capital ? c - 'A' + 'a' : c);
    }
    return out;
}

// The first of "x", "x_2", "x_3", … that is free.
template <class Taken>
std::string numbered_on(const std::string& id, Taken taken) {
    std::string free = id;
    for (int n = 2; taken(free); ++n)
        free = id + "_" + std::to_string(n);
    return free;
}

void rename(Recipe& recipe, const std::string& from, const std::string& to) {
    for (formula::Line& line : recipe.formula.lines)
        if (line.ingredient == from) line.ingredient = to;
    for (batch::Stock& stock : recipe.batch.stock)
        if (stock.ingredient == from) stock.ingredient = to;
    for (Ingredient& own : recipe.own) {
        if (own.id == from) own.id = to;
        for (catalogue::Part& part : own.parts)
            if (part.ingredient == from) part.ingredient = to;
    }
}

// Puts `own` and, before it, what it is made of into the recipe; gives the id it has there. `way`: the ids of
// the ones that are being put in, so that a loop ends.
std::string put_in(Recipe& recipe, Ingredient own, const std::vector<Ingredient>& held,
                   std::vector<std::string>& way) {
    way.push_back(own.id);
    for (catalogue::Part& part : own.parts) {
        const Ingredient* next = in(held, part.ingredient);
        if (next == nullptr || std::find(way.begin(), way.end(), next->id) != way.end()) continue;
        part.ingredient = put_in(recipe, *next, held, way);
    }
    way.pop_back();
    const Ingredient* there = in(recipe.own, own.id);
    if (there != nullptr && *there == own) return own.id;
    own.id = numbered_on(own.id, [&](const std::string& id) {
        const Ingredient* taken = in(recipe.own, id);
        if (taken == nullptr) return false;
        Ingredient as_named = own;
        as_named.id = id;
        return *taken != as_named;
    });
    if (in(recipe.own, own.id) == nullptr) recipe.own.push_back(own);
    return own.id;
}

}  // namespace

std::string free_id(const Workspace& workspace, const catalogue::Catalogue& shipped, std::string_view name) {
    return numbered_on(slug(name), [&](const std::string& id) {
        if (find_own(workspace, id) != nullptr || catalogue::find_ingredient(shipped, id) != nullptr)
            return true;
        return std::any_of(workspace.recipes.begin(), workspace.recipes.end(), [&](const Kept& kept) {
            return own_of(kept.recipe, id) != nullptr || (kept.recipe.made && kept.recipe.made->id == id);
        });
    });
}

Ingredient as_own(Ingredient ingredient) {
    Ingredient own;
    own.own = true;
    own.id = std::move(ingredient.id);
    own.name = std::move(ingredient.name);
    own.names = std::move(ingredient.names);
    own.inci = std::move(ingredient.inci);
    own.role = std::move(ingredient.role);
    own.based_on = std::move(ingredient.based_on);
    own.parts = std::move(ingredient.parts);
    own.analysis = std::move(ingredient.analysis);
    own.made = std::move(ingredient.made);
    own.max_percent = std::move(ingredient.max_percent);
    own.source = std::move(ingredient.source);
    own.standing = ingredient.standing;
    if (ingredient.density)
        own.density = source::Sourced<catalogue::DensityAt>{
            {ingredient.density->value.density, {}}, own.source, own.standing};
    return own;
}

// The figures of a shipped entry have several sources; the copy has one, so the density's is taken, and the
// standing is the loosest that any of them can claim once its owner is no longer named.
Ingredient copy_of(const Ingredient& shipped) {
    Ingredient own = shipped;
    own.based_on = shipped.id;
    own.id.clear();
    own.parts.clear();
    own.source = shipped.density ? shipped.density->source : shipped.inci_source;
    own.standing = shipped.density ? shipped.density->standing : source::Standing::memory;
    if (shipped.inci_source == "memory" && !shipped.inci.empty())
        own.standing = std::max(own.standing, source::Standing::memory);
    return as_own(std::move(own));
}

result::Result<std::string> add_own(Workspace& workspace, const catalogue::Catalogue& shipped, Ingredient own,
                                    std::string now) {
    if (own.name.empty()) return Error{Code::name_empty, "names", ""};
    own.id = free_id(workspace, shipped, own.name);
    own = as_own(std::move(own));
    if (auto fault = fault_of_own(own, "")) return *fault;
    std::string id = own.id;
    workspace.own.insert(place_of(workspace, id), KeptOwn{std::move(own), 0, std::move(now), ""});
    return id;
}

result::Result<std::string> set_own(Workspace& workspace, Ingredient changed, std::string now) {
    KeptOwn* kept = kept_own(workspace, changed.id);
    if (kept == nullptr) return Error{Code::field_unknown_value, "id", changed.id};
    changed = as_own(std::move(changed));
    if (changed.name.empty()) return Error{Code::name_empty, "names", ""};
    if (auto fault = fault_of_own(changed, "")) return *fault;
    std::vector<Ingredient> all{changed};  // parts may lead through other entries of this device
    for (const KeptOwn& other : workspace.own)
        if (other.ingredient.id != changed.id) all.push_back(other.ingredient);
    if (auto fault = made::fault_of_parts(all)) return *fault;
    if (kept->ingredient == changed) return changed.id;
    kept->ingredient = std::move(changed);
    kept->changed = std::move(now);
    return kept->ingredient.id;
}

void put_own(Workspace& workspace, KeptOwn kept) {
    if (KeptOwn* there = kept_own(workspace, kept.ingredient.id))
        *there = std::move(kept);
    else
        workspace.own.insert(place_of(workspace, kept.ingredient.id), std::move(kept));
}

bool bin_own(Workspace& workspace, std::string_view id, std::string now) {
    KeptOwn* kept = kept_own(workspace, id);
    if (kept == nullptr || !kept->binned.empty() || now.empty()) return false;
    kept->binned = std::move(now);
    return true;
}

bool restore_own(Workspace& workspace, std::string_view id) {
    KeptOwn* kept = kept_own(workspace, id);
    if (kept == nullptr || kept->binned.empty()) return false;
    kept->binned.clear();
    return true;
}

bool erase_own(Workspace& workspace, std::string_view id) {
    const KeptOwn* kept = kept_own(workspace, id);
    if (kept == nullptr || kept->binned.empty()) return false;
    workspace.own.erase(place_of(workspace, id));
    return true;
}

const KeptOwn* find_own(const Workspace& workspace, std::string_view id) {
    for (const KeptOwn& kept : workspace.own)
        if (kept.ingredient.id == id) return &kept;
    return nullptr;
}

std::size_t recipes_with(const Workspace& workspace, std::string_view id) {
    return static_cast<std::size_t>(std::count_if(
        workspace.recipes.begin(), workspace.recipes.end(),
        [&](const Kept& kept) { return kept.binned.empty() && own_of(kept.recipe, id) != nullptr; }));
}

const Ingredient* own_of(const Recipe& recipe, std::string_view id) {
    return id.empty() ? nullptr : in(recipe.own, id);
}

Origin origin_of(const Recipe& recipe, std::string_view id, const Ingredient* mine) {
    const Ingredient* own = own_of(recipe, id);
    if (own == nullptr) return Origin::shipped;
    if (mine == nullptr) return Origin::came_along;
    return *own == *mine ? Origin::mine : Origin::mine_other;
}

result::Result<Used> use_own(Recipe recipe, const Ingredient& own, const std::vector<Ingredient>& held) {
    std::vector<std::string> way;
    Used used{std::move(recipe), ""};
    used.id = put_in(used.recipe, own, held, way);
    if (auto fault = fault_of_own(used.recipe.own)) return *fault;
    return used;
}

result::Result<Recipe> take_mine(Recipe recipe, const Ingredient& mine, const std::vector<Ingredient>& held) {
    if (std::erase_if(recipe.own, [&](const Ingredient& own) { return own.id == mine.id; }) == 0)
        return Error{Code::field_unknown_value, "ingredients", mine.id};
    auto used = use_own(std::move(recipe), mine, held);
    if (!used) return used.error();
    return std::move(used.value().recipe);
}

result::Result<Used> keep_own(Workspace& workspace, const catalogue::Catalogue& shipped, Recipe recipe,
                              std::string_view id, std::string now) {
    const Ingredient* own = own_of(recipe, id);
    if (own == nullptr) return Error{Code::field_unknown_value, "ingredients", std::string(id)};
    Ingredient mine = *own;
    if (mine.name.empty()) mine.name = mine.id;
    auto kept = add_own(workspace, shipped, mine, std::move(now));
    if (!kept) return kept.error();
    const std::string from(id);  // may be part of the recipe that changes
    rename(recipe, from, *kept);
    for (Ingredient& one : recipe.own)
        if (one.id == *kept) one = find_own(workspace, *kept)->ingredient;
    return Used{std::move(recipe), std::move(kept).value()};
}

Recipe without_unused(Recipe recipe, const std::vector<Ingredient>& mine) {
    const auto needed = [&](const std::string& id) {
        for (const formula::Line& line : recipe.formula.lines)
            if (line.ingredient == id) return true;
        for (const Ingredient& own : recipe.own)
            for (const catalogue::Part& part : own.parts)
                if (part.ingredient == id) return true;
        return false;
    };
    for (std::size_t before = recipe.own.size() + 1; before != recipe.own.size();) {
        before = recipe.own.size();
        std::erase_if(recipe.own, [&](const Ingredient& own) {
            const Ingredient* same = in(mine, own.id);
            return same != nullptr && *same == own && !needed(own.id);
        });
    }
    return recipe;
}

}  // namespace workspace
