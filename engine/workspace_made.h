// Recipes that are made parts: declaring one, using it in another recipe as one ingredient, and how much of
// it a batch needs. What such an ingredient holds is worked out in made.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "batch.h"
#include "catalogue.h"
#include "result.h"
#include "workspace.h"
#include "workspace_own.h"

namespace workspace {

// Makes the recipe a made part, or changes how it is one; `id` is only taken where it is none yet.
result::Result<Recipe> set_made(Recipe recipe, std::string id, catalogue::MadeAs as, quantity::Percent yield);
Recipe without_made(Recipe recipe);  // lines are no longer strained either

const Kept* find_made(const Workspace& workspace, std::string_view id);  // in the book, by the made part's id

// The ingredient that a made part comes to, as it stands now: named by its title, an estimate.
result::Result<catalogue::Ingredient> made_ingredient(const Recipe& recipe,
                                                      const catalogue::Catalogue& shipped);

// Everything this device can offer beside the shipped ingredients: its own entries and its made parts, sorted
// by id. Made parts that cannot be made yet (no lines, a sum that is not 100) are left out.
std::vector<catalogue::Ingredient> mine(const Workspace& workspace, const catalogue::Catalogue& shipped);

// `into` with the made part in it as one ingredient. made_loop where that would hold `into` itself, also by
// way of other recipes of the book.
result::Result<Used> use_made(const Workspace& workspace, const catalogue::Catalogue& shipped, Recipe into,
                              std::string_view made_id);

// The recipe ready to have `id` in a line, and the id it stands under: shipped, its own already, or brought
// in from this device. "" and ids nobody knows stay as they are.
result::Result<Used> bring_in(const Workspace& workspace, const catalogue::Catalogue& shipped, Recipe into,
                              const std::string& id);

// `own` with what a recipe comes to as its parts, split into what is not made from others.
result::Result<catalogue::Ingredient> with_parts_of(catalogue::Ingredient own, const Recipe& recipe,
                                                    const catalogue::Catalogue& shipped);

struct Need {                 // of one made part for one batch
    std::string ingredient;   // its id in the recipe
    quantity::Mass grams;     // that the batch takes
    std::string recipe;       // id in the book of the recipe it is made by; "" when it is not there
    quantity::Mass to_weigh;  // in all to have so much of it, with what stays in the plant; 0: not known
    bool operator==(const Need&) const = default;
};
std::vector<Need> needs(const Workspace& workspace, const Recipe& recipe, const batch::Batch& batch);

// The made part's own recipe set to make this much.
result::Result<Recipe> set_batch_grams(Recipe recipe, quantity::Mass grams);

}  // namespace workspace
