#include "assessor_pack.h"

#include <algorithm>
#include <array>

#include "declaration.h"
#include "made.h"
#include "sorting.h"

namespace assessor_pack {
namespace {

using catalogue::Ingredient;
using quantity::Percent;

bool is_one_of(std::string_view role, std::initializer_list<std::string_view> roles) {
    return std::find(roles.begin(), roles.end(), role) != roles.end();
}

std::vector<Paper> papers_of(const Ingredient* one, const Material& material) {
    std::vector<Paper> wanted{Paper::safety_sheet, Paper::specification};
    if (one == nullptr) {
        wanted.push_back(Paper::composition);
        return wanted;
    }
    const bool scent = is_one_of(one->role, {"essential_oil", "extract", "fragrance", "flavour"});
    if (scent && !material.analysis) wanted.push_back(Paper::lot_analysis);
    if (scent) wanted.insert(wanted.end(), {Paper::ifra_certificate, Paper::allergen_sheet});
    if (material.inci.size() != 1 || is_one_of(one->role, {"fragrance", "flavour", "preservative"}))
        wanted.push_back(Paper::composition);
    if (!one->vegan) wanted.push_back(Paper::origin);
    if (is_one_of(one->role, {"powder", "water", "scrub"}) && one->id != "water")
        wanted.push_back(Paper::germ_count);
    return wanted;
}

void strained_within(const std::vector<Ingredient>& own, const std::string& id, std::size_t depth,
                     std::vector<std::string>& names) {
    if (depth > made::kDeepest) return;
    for (const Ingredient& one : own) {
        if (one.id != id) continue;
        if (one.made)
            for (const std::string& plant : one.made->infused_with)
                if (std::find(names.begin(), names.end(), plant) == names.end()) names.push_back(plant);
        for (const catalogue::Part& part : one.parts)
            strained_within(own, part.ingredient, depth + 1, names);
    }
}

}  // namespace

result::Result<Pack> of(const formula::Formula& formula, const catalogue::Catalogue& shipped,
                        const std::vector<Ingredient>& own, std::string_view title, std::string_view product,
                        market::Market market) {
    const auto percents = made::percents_of_product(formula);
    if (!percents) return percents.error();
    const auto split = made::split(formula, *percents, shipped, own);
    if (!split) return split.error();
    Pack pack;
    pack.title = title;
    pack.product = product;
    pack.market = market;
    if (const catalogue::Product* kind = catalogue::find_product(shipped, product)) {
        pack.contact = kind->contact;
        pack.place = kind->place;
    }
    for (const made::Share& share : split->shares) {
        const Ingredient* one = catalogue::find_ingredient(shipped, share.ingredient);
        for (const Ingredient& mine : own)
            if (one == nullptr && !share.ingredient.empty() && mine.id == share.ingredient) one = &mine;
        Material material;
        material.ingredient = share.ingredient;
        material.name = one != nullptr && !one->name.empty() ? one->name
                        : share.name.empty()                 ? share.ingredient
                                                             : share.name;
        material.percent = share.percent;
        if (one != nullptr) {
            const declaration::Names names = declaration::names_of(*one, shipped, market);
            material.inci = names.names;
            material.inci_source = names.source;
            material.inci_standing = names.standing;
            material.function = one->role;
            material.cas = one->cas;
            material.botanical = one->botanical;
            material.part = one->part;
            material.analysis = one->analysis;
            pack.holds_water = pack.holds_water || one->role == "water";
        }
        material.wanted = papers_of(one, material);
        pack.materials.push_back(std::move(material));
    }
    sorting::stable(pack.materials,
                    [](const Material& a, const Material& b) { return a.percent > b.percent; });
    for (const formula::Line& line : formula.lines) {
        if (line.strained) {
            const Ingredient* plant = catalogue::find_ingredient(shipped, line.ingredient);
            pack.strained.push_back(plant != nullptr ? plant->name : line.name);
        } else {
            strained_within(own, line.ingredient, 0, pack.strained);
        }
    }
    pack.wanted = {Paper::method, Paper::stability};
    if (pack.holds_water) pack.wanted.insert(pack.wanted.end(), {Paper::challenge, Paper::ph});
    pack.wanted.insert(pack.wanted.end(), {Paper::keeping_opened, Paper::packaging, Paper::label,
                                           Paper::claims, Paper::unwanted_effects});
    return pack;
}

std::string_view paper_name(Paper paper) {
    constexpr std::array<std::string_view, kPapers> kNames{
        "safety_sheet",    "specification", "lot_analysis", "ifra_certificate",
        "allergen_sheet",  "composition",   "origin",       "germ_count",
        "method",          "stability",     "challenge",    "ph",
        "keeping_opened",  "packaging",     "label",        "claims",
        "unwanted_effects"};
    return kNames[static_cast<std::size_t>(paper)];
}

}  // namespace assessor_pack
