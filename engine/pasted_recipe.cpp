// A recipe from what was understood of a pasted list: see pasted.h. Phases come in the order of the list;
// notes keep what the list says beside its amounts.
#include <algorithm>

#include "pasted.h"
#include "utf8.h"

namespace pasted {
namespace {

void add_note(std::string& notes, const std::string& more) {
    if (more.empty()) return;
    const std::string with = (notes.empty() ? "" : "\n") + more;
    if (notes.size() + with.size() <= workspace::kMostNotesBytes) notes += with;
}

}  // namespace

result::Result<workspace::Recipe> recipe_of(const List& list) {
    workspace::Recipe recipe;
    recipe.title = list.title;
    bool rest = false;
    for (const Entry& entry : list.entries) {
        if (entry.left_out) continue;
        if (entry.kind == Kind::note && !entry.name.empty()) add_note(recipe.notes, entry.text);
        if (entry.kind == Kind::step) {
            if (recipe.steps.size() < workspace::kMostSteps)
                recipe.steps.push_back(
                    {"", std::string(utf8::start_within(entry.text, workspace::kMostStepBytes)), {}});
            else
                add_note(recipe.notes, entry.text);
        }
        if (entry.kind != Kind::ingredient) continue;
        if (recipe.formula.lines.size() >= formula::kMostLines) continue;  // refused, and says so
        const bool known = std::any_of(recipe.formula.phases.begin(), recipe.formula.phases.end(),
                                       [&](const formula::Phase& phase) { return phase.id == entry.phase; });
        if (!known) recipe.formula.phases.push_back({entry.phase, {}, {}});
        formula::Line line;
        line.ingredient = entry.ingredient;
        if (line.ingredient.empty()) line.name = entry.name.empty() ? entry.text : entry.name;
        line.name = std::string(utf8::start_within(line.name, formula::kMostNameBytes));
        line.phase = entry.phase;
        line.percent = entry.percent.value_or(quantity::Percent{});
        line.rest = !rest && entry.amount && entry.amount->rest;
        rest = rest || line.rest;
        recipe.formula.lines.push_back(std::move(line));
        if (!entry.aside.empty()) add_note(recipe.notes, entry.name + ": " + entry.aside);
    }
    if (recipe.formula.lines.empty()) return {result::Code::formula_empty, "lines"};
    if (list.grams && *list.grams > quantity::Mass{0} && *list.grams <= batch::kLargest) {
        recipe.batch.amount = batch::Amount::grams;
        recipe.batch.grams = *list.grams;
    }
    return workspace::checked(std::move(recipe));
}

}  // namespace pasted
