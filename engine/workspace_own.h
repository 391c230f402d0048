// Own ingredients: those of this device, and the copies that recipes hold of them. A recipe carries a copy of
// every own ingredient it uses, so that it can travel and so that nothing is lost when an entry goes. What a
// stranger's recipe brings stays in that recipe: it never overwrites an entry of this device, and counts as
// one of this device's only once the person has kept it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "result.h"
#include "workspace.h"

namespace workspace {

inline constexpr std::size_t kMostOwn = 100;            // of one recipe
inline constexpr std::size_t kMostOwnNameBytes = 80;    // ids, names, roles, lots, constituents
inline constexpr std::size_t kMostOwnTextBytes = 1000;  // notes, cautions, sources, declaration names
inline constexpr std::size_t kMostOwnEntries = 100;     // of each list within one entry

// The first fault, with its place: "ingredients[2].density_g_per_ml". `at` stands before the field.
std::optional<result::Error> fault_of_own(const catalogue::Ingredient& own, const std::string& at);
// Of all of one recipe: each by itself, no id twice, none that holds itself.
std::optional<result::Error> fault_of_own(const std::vector<catalogue::Ingredient>& own);

// ---- this device's own ingredients ----
// "Ringelblumen-Öl" -> "own_ringelblumen_l"; numbered on where shipped data, this device or one of its
// recipes have that id.
std::string free_id(const Workspace& workspace, const catalogue::Catalogue& shipped, std::string_view name);
// A copy of a shipped ingredient to be changed: with based_on, and only what an own entry may say. No id yet.
catalogue::Ingredient copy_of(const catalogue::Ingredient& shipped);
// Only what an own entry may say: figures have the source and standing of the whole entry.
catalogue::Ingredient as_own(catalogue::Ingredient ingredient);

result::Result<std::string> add_own(Workspace& workspace, const catalogue::Catalogue& shipped,
                                    catalogue::Ingredient own, std::string now);  // gives the id it got
result::Result<std::string> set_own(Workspace& workspace, catalogue::Ingredient changed, std::string now);
void put_own(Workspace& workspace, KeptOwn kept);  // as it was kept elsewhere: another window, a backup
bool bin_own(Workspace& workspace, std::string_view id, std::string now);
bool restore_own(Workspace& workspace, std::string_view id);
bool erase_own(Workspace& workspace, std::string_view id);  // only from the bin; recipes keep their copies
const KeptOwn* find_own(const Workspace& workspace, std::string_view id);
std::size_t recipes_with(const Workspace& workspace, std::string_view id);  // in the book, not in the bin

// ---- own ingredients within a recipe ----
const catalogue::Ingredient* own_of(const Recipe& recipe, std::string_view id);

enum class Origin {
    shipped,     // not an own entry of the recipe
    mine,        // the same as this device's
    mine_other,  // this device has another one under this id
    came_along   // with the recipe
};
// `mine`: what this device has under this id, if anything.
Origin origin_of(const Recipe& recipe, std::string_view id, const catalogue::Ingredient* mine);

struct Used {
    Recipe recipe;
    std::string id;  // under which the recipe holds it now
};
// The recipe with a copy of `own` in it and of what that is made of (looked for in `held`). One that is there
// already is used; another one of the same id stays what it is, and the new one takes a free id.
result::Result<Used> use_own(Recipe recipe, const catalogue::Ingredient& own,
                             const std::vector<catalogue::Ingredient>& held);
// The recipe's entry of this id replaced by `mine`: the newer figures of the person's own entry.
result::Result<Recipe> take_mine(Recipe recipe, const catalogue::Ingredient& mine,
                                 const std::vector<catalogue::Ingredient>& held);
// Keeps what came with a recipe among this device's own, under a new id, which the recipe then holds too.
result::Result<Used> keep_own(Workspace& workspace, const catalogue::Catalogue& shipped, Recipe recipe,
                              std::string_view id, std::string now);
// Without the copies no line needs any more, where this device has the same entry.
Recipe without_unused(Recipe recipe, const std::vector<catalogue::Ingredient>& mine);

}  // namespace workspace
