// Puts the answers of its files together, and counts what is in a formula by kind.
#include "blend.h"

#include <algorithm>
#include <utility>

#include "blend_hlb.h"
#include "blend_setting.h"
#include "density.h"
#include "made.h"
#include "sorting.h"

namespace blend {
namespace {

using catalogue::Ingredient;
using quantity::kHundred;
using quantity::Percent;
using source::Standing;

constexpr std::string_view kKindNames[] = {"wax",   "hard",   "soft",  "liquid", "volatile",
                                           "water", "powder", "other", "unknown"};

struct Role {
    std::string_view role;
    Kind kind;
};
constexpr Role kRoles[] = {{"wax", Kind::wax},
                           {"hard_fat", Kind::hard},
                           {"butter", Kind::hard},
                           {"thickener", Kind::hard},
                           {"soft_fat", Kind::soft},
                           {"soft_wax", Kind::soft},
                           {"liquid_oil", Kind::liquid},
                           {"essential_oil", Kind::volatile_oil},
                           {"extract", Kind::volatile_oil},
                           {"water", Kind::water},
                           {"aqueous", Kind::water},
                           {"solvent", Kind::water},
                           {"powder", Kind::powder},
                           {"scrub", Kind::powder},
                           {"colourant", Kind::powder},
                           {"", Kind::unknown}};

const Ingredient* find_own(const std::vector<Ingredient>& own, std::string_view id) {
    for (const Ingredient& one : own)
        if (one.id == id) return &one;
    return nullptr;
}

std::string name_of(const Part& part) {
    if (part.known != nullptr && !part.known->name.empty()) return part.known->name;
    return part.name.empty() ? part.id : part.name;
}

std::vector<Melting> melting_of(const std::vector<Part>& parts) {
    std::vector<Melting> list;
    for (const Part& part : parts) {
        if (!is_fatty(kind_of(part.known))) continue;
        Melting one;
        one.name = name_of(part);
        one.percent = part.percent;
        if (part.known != nullptr && part.known->melting_c) {
            one.range_c = part.known->melting_c->value;
            one.source = part.known->melting_c->source;
            one.standing = part.known->melting_c->standing;
        }
        list.push_back(std::move(one));
    }
    sorting::stable(list, [](const Melting& a, const Melting& b) {
        if (!a.range_c || !b.range_c) return a.range_c.has_value() && !b.range_c;
        return a.range_c->max > b.range_c->max;
    });
    return list;
}

// The loosest standing of the figures behind the density of an ingredient, or of the parts that stand in.
Standing density_standing(const catalogue::Catalogue& known, const Ingredient& ingredient, int depth) {
    if (ingredient.density) return ingredient.density->standing;
    Standing loosest = Standing::document;
    for (const catalogue::Part& part : ingredient.parts)
        if (const Ingredient* one = catalogue::find_ingredient(known, part.ingredient); one && depth > 0)
            loosest = std::max(loosest, density_standing(known, *one, depth - 1));
    return loosest;
}

Dense density_at(const formula::Formula& formula, const std::vector<Percent>& percents,
                 const catalogue::Catalogue& known, std::int64_t temp_c_grid) {
    const bool room = temp_c_grid == density::kRoom;
    const auto blended = [&](const formula::Formula& of, const std::vector<Percent>& shares) {
        return room ? density::of(of, shares, known) : density::warm(of, shares, known, temp_c_grid);
    };
    Dense dense;
    dense.temp_c_grid = temp_c_grid;
    const density::Blend whole = blended(formula, percents);
    if (whole.known > Percent{0}) dense.density.value = whole.density.grid;
    dense.density.of.asked = kHundred;
    dense.density.of.known = whole.known;
    dense.density.of.standing = room ? Standing::document : Standing::memory;  // of the rule for warmth
    formula::Formula alone = formula;
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        if (percents[i] <= Percent{0}) continue;
        alone.lines = {formula.lines[i]};
        const Ingredient* one = catalogue::find_ingredient(known, formula.lines[i].ingredient);
        if (blended(alone, {kHundred}).known == kHundred && one != nullptr) {
            dense.density.of.standing = std::max(dense.density.of.standing, density_standing(known, *one, 8));
            continue;
        }
        dense.density.of.missing.push_back(one && !one->name.empty()       ? one->name
                                           : formula.lines[i].name.empty() ? formula.lines[i].ingredient
                                                                           : formula.lines[i].name);
    }
    return dense;
}

}  // namespace

std::string_view kind_name(Kind kind) {
    return kKindNames[static_cast<std::size_t>(kind)];
}

Kind kind_of(const Ingredient* known) {
    if (known == nullptr) return Kind::unknown;
    for (const Role& one : kRoles)
        if (one.role == known->role) return one.kind;
    return Kind::other;
}

bool is_fatty(Kind kind) {
    return kind == Kind::wax || kind == Kind::hard || kind == Kind::soft || kind == Kind::liquid ||
           kind == Kind::unknown;
}

result::Result<std::vector<Part>> parts_of(const formula::Formula& formula,
                                           const catalogue::Catalogue& shipped,
                                           const std::vector<Ingredient>& own) {
    const auto percents = made::percents_of_product(formula);
    if (!percents) return percents.error();
    const auto split = made::split(formula, *percents, shipped, own);
    if (!split) return split.error();
    std::vector<Part> parts;
    for (const made::Share& share : split->shares) {
        if (share.percent <= Percent{0}) continue;
        Part part{share.ingredient, share.name, catalogue::find_ingredient(shipped, share.ingredient),
                  share.percent};
        if (part.known == nullptr && !part.id.empty()) part.known = find_own(own, part.id);
        part.name = name_of(part);
        parts.push_back(std::move(part));
    }
    return parts;
}

void ask(Coverage& coverage, const Part& part, std::optional<Standing> standing) {
    coverage.asked = coverage.asked + part.percent;
    if (!standing) {
        coverage.missing.push_back(part.name);
        return;
    }
    coverage.known = coverage.known + part.percent;
    coverage.standing = std::max(coverage.standing, *standing);
}

result::Result<Blend> of(const formula::Formula& formula, const catalogue::Catalogue& shipped,
                         const std::vector<Ingredient>& own, std::optional<std::int64_t> temp_c_grid) {
    const auto parts = parts_of(formula, shipped, own);
    if (!parts) return parts.error();
    const auto percents = made::percents_of_product(formula);
    Blend blend;
    for (const Part& part : *parts) {
        Percent& share = blend.shares[static_cast<std::size_t>(kind_of(part.known))];
        share = share + part.percent;
    }
    blend.melting = melting_of(*parts);
    blend.profile = profile_of(*parts);
    blend.iodine = iodine_of(*parts);
    blend.saponification = saponification_of(*parts);
    blend.oxidisability = oxidisability_of(*parts);
    blend.emulsion = emulsion_of(*parts);
    std::optional<catalogue::Catalogue> laid_over;
    if (!own.empty()) laid_over = catalogue::with_own(shipped, own);
    const catalogue::Catalogue& known = laid_over ? *laid_over : shipped;
    blend.setting = setting_of(*parts, known);
    blend.densities.push_back(density_at(formula, *percents, known, density::kRoom));
    for (const std::optional<std::int64_t>& temp : {density::pour_c(formula), temp_c_grid}) {
        bool there = !temp;
        for (const Dense& one : blend.densities)
            there = there || one.temp_c_grid == *temp;
        if (!there) blend.densities.push_back(density_at(formula, *percents, known, *temp));
    }
    return blend;
}

}  // namespace blend
