#include "workshop_cost.h"

#include "money_said.h"

namespace workshop {

result::Result<cost::PerHead> per_head(const Recipe& recipe, std::string_view recipe_id, const Plan& plan,
                                       const Workshop& made, const catalogue::Catalogue& known,
                                       const price::Book& book) {
    std::vector<cost::Need> needs;
    for (const Total& total : made.totals)
        needs.push_back({total.line, total.need});
    return cost::per_head({recipe.formula, needs, made.unit.id, made.units, plan.people, known, recipe_id},
                          book);
}

std::string per_head_said(const words::Table& words, const cost::PerHead& made, std::int64_t people) {
    const auto sum = [&](money::Amount one) { return money::say(words, one, made.currency); };
    std::string said = words::say(words, made.missing.empty() ? "workshop.head_said" : "workshop.head_least",
                                  {{"one", sum({made.low.minor + (made.more > 0 ? 1 : 0)})},
                                   {"all", sum(made.used)},
                                   {"people", std::to_string(people)},
                                   {"percent", words::figure_fixed(words, made.known.grid, 1)}});
    if (made.bought) said += " " + words::say(words, "workshop.head_bought", {{"all", sum(*made.bought)}});
    return said;
}

}  // namespace workshop
