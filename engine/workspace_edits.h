// Edits on one recipe beyond its lines: phases with the steps that name them, steps, notes, kind of product.
// Each takes a recipe and gives the changed one or says why not. Edits on lines alone are formula's.
#pragma once

#include <string>
#include <string_view>

#include "result.h"
#include "workspace.h"

namespace workspace {

using Changed = result::Result<Recipe>;

Changed set_phase(Recipe recipe, std::size_t phase,
                  formula::Phase changed);                    // renaming takes lines and steps along
Changed remove_phase(Recipe recipe, std::string_view phase);  // only without lines; its steps then name none

Changed add_step(Recipe recipe, formula::Step step);  // at the end
Changed set_step(Recipe recipe, std::size_t step, formula::Step changed);
Changed remove_step(Recipe recipe, std::size_t step);

// The recipe with a changed formula, or why that could not be changed.
Changed with_formula(Recipe recipe, const formula::Changed& changed);

Changed set_notes(Recipe recipe, std::string notes);
Changed set_title(Recipe recipe, std::string title);
Changed set_product(Recipe recipe, std::string product);

// For whom and where it is meant, and what was measured: what the checks go by. "" and nothing: not said.
Changed set_market(Recipe recipe, std::string market);
Changed set_date(Recipe recipe, std::string date);
Changed set_person(Recipe recipe, std::string person);
Changed set_age(Recipe recipe, std::optional<std::int64_t> months);
Changed set_ph(Recipe recipe, std::optional<std::int64_t> measured);

Changed set_label(Recipe recipe, label::Said said);
// Of the device, not of a recipe: who answers for what is made here.
result::Result<Settings> set_maker(Settings settings, label::Maker maker);
// What papers are made with: the sheet of labels (none: cut out), the plan of a workshop, what an ingredient
// is sold in (0 g: not said).
result::Result<Settings> set_label_sheet(Settings settings, std::optional<label_sheet::Sheet> sheet);
result::Result<Settings> set_workshop(Settings settings, workshop::Plan plan);
result::Result<Settings> set_pack(Settings settings, const formula::Line& line, quantity::Mass pack);
result::Result<Settings> set_prices(Settings settings, const result::Result<price::Book>& changed);
// 0 g: none of its own.
result::Result<Settings> set_low(Settings settings, const std::string& ingredient, quantity::Mass under);
// How firm a person found what was made; rating 0 takes it back.
result::Result<Settings> rate_firmness(Settings settings, blend::Rated rated);

}  // namespace workspace
