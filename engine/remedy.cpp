// Finding remedies is trying them: every one is taken on a copy of the recipe, the batch is made again, and
// it is offered only if the line reads well then and no other line reads worse than before.
#include "remedy.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace remedy {
namespace {

using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;
using workspace::Recipe;

// One part in so many: a half, a fifth, a tenth … of the mix.
constexpr std::int64_t kStrengths[] = {2, 5, 10, 20, 50, 100};

struct Case {
    const Recipe& recipe;
    const batch::Batch& made;
    std::size_t line;
    const catalogue::Catalogue& catalogue;
    const scales::Bench& bench;

    const catalogue::Ingredient* ingredient(std::size_t at) const {
        return catalogue::find_ingredient(catalogue, recipe.formula.lines[at].ingredient);
    }
};

// Whether the batch of `changed` is one in which the line reads, and nothing reads worse for it.
std::optional<batch::Batch> tried(const Case& the, const Recipe& changed,
                                  const catalogue::Catalogue& catalogue) {
    auto again = batch::make(changed.formula, changed.batch, catalogue, changed.product, the.bench);
    if (!again || again->lines.size() != the.made.lines.size()) return std::nullopt;
    for (std::size_t i = 0; i < again->lines.size(); ++i) {
        const bool bad = batch::reads_badly(again->lines[i], again->total);
        if (bad && (i == the.line || !batch::reads_badly(the.made.lines[i], the.made.total)))
            return std::nullopt;
    }
    return std::move(again).value();
}

Recipe with_batch(const Recipe& recipe, Mass total) {
    Recipe changed = recipe;
    const batch::Amount before = recipe.batch.amount;
    if (!changed.batch.loss && (before == batch::Amount::containers || before == batch::Amount::people))
        changed.batch.loss = batch::kUsualLoss;  // as it was reckoned
    changed.batch.amount = batch::Amount::grams;
    changed.batch.grams = total;
    return changed;
}

// The batch at which the line reads; once more where it then goes to a coarser scale.
std::optional<Remedy> bigger_batch(const Case& the) {
    if (the.recipe.batch.amount == batch::Amount::stock) return std::nullopt;  // there is no more of it
    Mass division = the.made.lines[the.line].place.division;
    for (int attempt = 0; attempt < 4; ++attempt) {
        const Mass least = scales::least_batch(division, the.made.lines[the.line].percent);
        const std::int64_t step = std::max(division, the.made.division).grid;
        const Mass total{decimal::scale_up(least.grid, 1, step) * step};
        if (total > batch::kLargest) return std::nullopt;
        const Recipe changed = with_batch(the.recipe, total);
        if (const auto again = tried(the, changed, the.catalogue))
            return Remedy{Kind::bigger_batch, the.line, total, {}, {}};
        const auto bigger =
            batch::make(changed.formula, changed.batch, the.catalogue, changed.product, the.bench);
        if (!bigger || bigger->lines[the.line].place.division <= division) return std::nullopt;
        division = bigger->lines[the.line].place.division;
    }
    return std::nullopt;
}

std::optional<Remedy> finer_scale(const Case& the) {
    std::optional<Remedy> coarsest;  // of those that do
    for (const scales::Scale& scale : the.bench.scales) {
        if (scale.division <= Mass{0} || scale.division >= the.made.lines[the.line].place.division) continue;
        if (coarsest && scale.division <= coarsest->division) continue;
        Recipe changed = the.recipe;
        changed.batch.division = scale.division;
        if (tried(the, changed, the.catalogue))
            coarsest = Remedy{Kind::finer_scale, the.line, {}, scale.division, {}};
    }
    return coarsest;
}

bool is_liquid_oil(const catalogue::Ingredient* ingredient) {
    return ingredient != nullptr && ingredient->role == "liquid_oil";
}

// Whether it goes into oil: what belongs to water or is a solid of its own does not, and of what is unknown
// nobody can tell.
bool goes_into_oil(const catalogue::Ingredient* ingredient) {
    if (ingredient == nullptr || ingredient->own) return false;
    static constexpr std::string_view kOily[] = {"liquid_oil",       "antioxidant", "essential_oil",
                                                 "skin_conditioner", "soft_fat",    "solubiliser"};
    if (ingredient->phase == catalogue::Phase::water || ingredient->phase == catalogue::Phase::powder)
        return false;
    return std::find(std::begin(kOily), std::end(kOily), ingredient->role) != std::end(kOily);
}

// The oil that gives way: one that is weighed in the same phase of the recipe, else the rest line, else the
// largest. Where the rest is something else than liquid oil, there is none.
std::optional<std::size_t> oil_for(const Case& the) {
    const auto rest = formula::rest_line(the.recipe.formula);
    if (rest && !is_liquid_oil(the.ingredient(*rest))) return std::nullopt;
    const std::string& phase = the.recipe.formula.lines[the.line].phase;
    const auto rank = [&](std::size_t i) {
        return std::tuple(the.recipe.formula.lines[i].phase == phase, rest == i, the.made.lines[i].percent);
    };
    std::optional<std::size_t> best;
    for (std::size_t i = 0; i < the.recipe.formula.lines.size(); ++i) {
        const formula::Line& line = the.recipe.formula.lines[i];
        if (i == the.line || (line.locked && !line.rest) || line.hold || !is_liquid_oil(the.ingredient(i)))
            continue;
        if (!best || rank(i) > rank(*best)) best = i;
    }
    return best;
}

// What the batch has when the mix goes in, and what that takes it down to.
void cool(Mix& mix, const Case& the, Percent share) {
    const formula::Formula& formula = the.recipe.formula;
    const std::string& phase = formula.lines[the.line].phase;
    if (formula.lines[mix.oil].phase == phase) {  // melted together, unless it is a cool-down phase
        const auto is_it = [&](const formula::Phase& one) { return one.id == phase; };
        const auto at = std::find_if(formula.phases.begin(), formula.phases.end(), is_it);
        if (at == formula.phases.end() || !at->add_below_c) return;
    }
    const auto sets = [&](const formula::Line& line) {
        const auto* known = catalogue::find_ingredient(the.catalogue, line.ingredient);
        return known != nullptr && known->melting_c && known->melting_c->value.min > density::kRoom;
    };
    if (std::none_of(formula.lines.begin(), formula.lines.end(), sets)) return;
    std::optional<std::int64_t> hot;
    for (const formula::Phase& one : formula.phases) {
        if (one.hold_c) hot = one.hold_c;
        if (one.add_below_c && (!hot || *one.add_below_c < *hot)) hot = one.add_below_c;
        if (one.id == phase) break;
    }
    if (!hot || *hot <= density::kRoom) return;
    const std::int64_t drop = decimal::scale_nearest(*hot - density::kRoom, share.grid, kHundred.grid);
    if (drop < kMuchColder) return;
    mix.hot_c = *hot;
    mix.cooled_c = decimal::scale_nearest(*hot - drop, 1, decimal::kOne) * decimal::kOne;
}

// As little of a mix of one part in `parts` as reads on this division, at least `enough`: a whole number of
// steps of each part.
Mass to_mix(Mass division, std::int64_t parts, Mass enough) {
    const Mass least{scales::least_load(division).grid * parts};  // the small part is the least
    const std::int64_t step = division.grid * parts;
    return Mass{decimal::scale_up(std::max(least, enough).grid, 1, step) * step};
}

std::string unused_id(const Recipe& recipe, const catalogue::Catalogue& catalogue, const std::string& base) {
    const auto taken = [&](const std::string& id) {
        if (catalogue::find_ingredient(catalogue, id) != nullptr) return true;
        return std::any_of(recipe.own.begin(), recipe.own.end(),
                           [&](const auto& own) { return own.id == id; });
    };
    std::string id = base;
    for (int n = 2; taken(id); ++n)
        id = base + "_" + std::to_string(n);
    return id;
}

Recipe mixed(const Recipe& recipe, const Remedy& remedy, const catalogue::Catalogue& catalogue,
             const std::string& name) {
    Recipe changed = recipe;
    const Mix& mix = *remedy.mix;
    formula::Line& small = changed.formula.lines[remedy.line];
    formula::Line& oil = changed.formula.lines[mix.oil];
    const catalogue::Ingredient* known = catalogue::find_ingredient(catalogue, small.ingredient);
    const std::int64_t parts = kHundred.grid / mix.strength.grid;

    catalogue::Ingredient own;
    own.own = true;
    own.id = unused_id(recipe, catalogue, "mix_" + small.ingredient.substr(0, 60));
    own.name = name;
    own.parts = {{small.ingredient, mix.strength}, {oil.ingredient, kHundred - mix.strength}};
    own.made = catalogue::Made{catalogue::MadeAs::pre_dilution, kHundred, {}};
    own.standing = source::Standing::estimate;
    if (known != nullptr) {
        own.role = known->role;
        for (const auto& [where, cap] : known->max_percent)
            own.max_percent[where] = std::min(kHundred, Percent{cap.grid * parts});
    }
    changed.own.push_back(own);
    small.ingredient = own.id;
    small.name.clear();
    small.percent = Percent{small.percent.grid * parts};
    if (!oil.rest) oil.percent = oil.percent - Percent{small.percent.grid / parts * (parts - 1)};
    return changed;
}

std::optional<Remedy> mix_ahead(const Case& the) {
    const batch::Line& line = the.made.lines[the.line];
    if (the.recipe.formula.lines[the.line].rest || the.recipe.formula.lines[the.line].hold ||
        !goes_into_oil(the.ingredient(the.line)))
        return std::nullopt;
    const auto oil = oil_for(the);
    if (!oil || the.recipe.own.size() >= formula::kMostLines) return std::nullopt;
    for (const std::int64_t parts : kStrengths) {
        const Percent share{line.percent.grid * parts};
        if (Percent{line.percent.grid * (parts - 1)} > the.made.lines[*oil].percent) return std::nullopt;
        if (share > kHundred || the.made.total < scales::least_batch(line.place.division, share)) continue;
        Remedy remedy{Kind::mix_ahead, the.line, {}, {}, Mix{}};
        remedy.mix->oil = *oil;
        remedy.mix->strength = Percent{kHundred.grid / parts};
        const Recipe changed = mixed(the.recipe, remedy, the.catalogue, "");
        const auto again = tried(the, changed, catalogue::with_own(the.catalogue, changed.own));
        if (!again) continue;
        remedy.mix->weigh = again->lines[the.line].grams;
        remedy.mix->oil_left = again->lines[*oil].grams;
        const Mass all = to_mix(again->lines[the.line].place.division, parts, remedy.mix->weigh);
        remedy.mix->small = Mass{all.grid / parts};
        remedy.mix->with = all - remedy.mix->small;
        cool(*remedy.mix, the, share);
        return remedy;
    }
    return std::nullopt;
}

}  // namespace

std::vector<Remedy> remedies_for(const Recipe& recipe, const batch::Batch& made, std::size_t line,
                                 const catalogue::Catalogue& catalogue, const scales::Bench& bench) {
    const Case the{recipe, made, line, catalogue, bench};
    std::vector<Remedy> found;
    for (const auto work_out : {finer_scale, mix_ahead, bigger_batch})
        if (const auto remedy = work_out(the)) found.push_back(*remedy);
    return found;
}

result::Result<Recipe> take(const Recipe& recipe, const Remedy& remedy, const catalogue::Catalogue& catalogue,
                            const std::string& mix_name) {
    using result::Code;
    if (remedy.line >= recipe.formula.lines.size() ||
        (remedy.mix && remedy.mix->oil >= recipe.formula.lines.size()))
        return {Code::line_missing, "", ""};
    Recipe changed = recipe;
    switch (remedy.kind) {
        case Kind::bigger_batch:
            changed = with_batch(recipe, remedy.total);
            break;
        case Kind::finer_scale:
            changed.batch.division = remedy.division;
            break;
        case Kind::mix_ahead:
            changed = mixed(recipe, remedy, catalogue, mix_name);
            break;
    }
    return changed;
}

namespace {

words::Arguments arguments_of(const words::Table& table, const Remedy& remedy, std::string_view subject,
                              std::string_view oil) {
    const Mix mix = remedy.mix.value_or(Mix{});
    const auto figure = [&](std::int64_t grid) { return words::figure(table, grid); };
    return {{"subject", std::string(subject)},      {"oil", std::string(oil)},
            {"total", figure(remedy.total.grid)},   {"division", figure(remedy.division.grid)},
            {"small", figure(mix.small.grid)},      {"with", figure(mix.with.grid)},
            {"weigh", figure(mix.weigh.grid)},      {"left", figure(mix.oil_left.grid)},
            {"hot", figure(mix.hot_c.value_or(0))}, {"cold", figure(mix.cooled_c.value_or(0))}};
}

}  // namespace

std::string say(const words::Table& table, const Remedy& remedy, std::string_view subject,
                std::string_view oil) {
    const words::Arguments arguments = arguments_of(table, remedy, subject, oil);
    switch (remedy.kind) {
        case Kind::bigger_batch:
            return words::say(table, "remedy.bigger_batch", arguments);
        case Kind::finer_scale:
            return words::say(table, "remedy.finer_scale", arguments);
        case Kind::mix_ahead:
            return words::say(table, "remedy.mix_ahead", arguments) +
                   (remedy.mix && remedy.mix->cooled_c ? " " + words::say(table, "remedy.mix_cold", arguments)
                                                       : std::string());
    }
    return "";
}

std::string say_short(const words::Table& table, const Remedy& remedy, std::string_view subject,
                      std::string_view oil) {
    const words::Arguments arguments = arguments_of(table, remedy, subject, oil);
    switch (remedy.kind) {
        case Kind::bigger_batch:
            return words::say(table, "remedy.bigger_batch_short", arguments);
        case Kind::finer_scale:
            return words::say(table, "remedy.finer_scale_short", arguments);
        case Kind::mix_ahead:
            return words::say(table, "remedy.mix_ahead_short", arguments);
    }
    return "";
}

std::vector<Ahead> mixed_ahead(const Recipe& recipe, const batch::Batch& made,
                               const catalogue::Catalogue& catalogue) {
    std::vector<Ahead> all;
    for (const batch::Line& line : made.lines) {
        const auto* known = catalogue::find_ingredient(catalogue, recipe.formula.lines[line.line].ingredient);
        if (known == nullptr || known->parts.empty() || line.grams <= Mass{0}) continue;
        if (known->made && known->made->as == catalogue::MadeAs::infusion) continue;
        Percent sum, least = kHundred;
        std::vector<std::int64_t> weights;
        for (const catalogue::Part& part : known->parts) {
            sum = sum + part.percent;
            if (part.percent > Percent{0}) least = std::min(least, part.percent);
            weights.push_back(part.percent.grid);
        }
        if (sum != kHundred) continue;
        // Such that the smallest part reads; in steps that give every part of a plain mix whole ones.
        const Mass division = line.place.division;
        const Mass enough = std::max(line.grams, scales::least_batch(division, least));
        const bool plain = kHundred.grid % least.grid == 0;
        const std::int64_t step = division.grid * (plain ? kHundred.grid / least.grid : 1);
        const Mass total{decimal::scale_up(enough.grid, 1, step) * step};
        if (total > batch::kLargest) continue;
        const auto parts = decimal::share_out(total.grid / division.grid, weights);
        if (!parts) continue;
        Ahead ahead{line.line, total, {}};
        for (const std::int64_t units : *parts)
            ahead.parts.push_back(Mass{units * division.grid});
        all.push_back(ahead);
    }
    return all;
}

}  // namespace remedy
