// What is known about ingredients, containers and product kinds, and how to find it by id, link number or
// name. Shipped entries come from presets/ through store; a recipe's own ingredients are laid over them for
// that recipe.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity.h"
#include "source.h"

namespace catalogue {

enum class Phase { oil, water, cool_down, powder, either };

struct Range {  // figures on the grid of decimal.h, in the unit of the field that holds it
    std::int64_t min = 0, max = 0;
    bool operator==(const Range&) const = default;
};
struct DensityAt {
    quantity::Density density;
    std::optional<std::int64_t> temp_c_grid;  // some sources do not say at what temperature
    bool operator==(const DensityAt&) const = default;
};
struct FattyAcids {
    std::map<std::string, std::int64_t> percent;  // "18:1" -> % of all fatty acids, grid
    std::map<std::string, Range> range_percent;   // often from another source than the profile
    std::string range_source;
    source::Standing range_standing = source::Standing::estimate;
    std::string bound_as = "triglycerides";  // or "wax_esters", "free_acids": which formulae hold
    bool operator==(const FattyAcids&) const = default;
};

template <class T>
using Known = std::optional<source::Sourced<T>>;  // absent: not known

struct Part {  // of an own ingredient that is made from others
    std::string ingredient;
    quantity::Percent percent;
    bool operator==(const Part&) const = default;
};
struct Content {  // % of one constituent in the lot; what the paper does not say stays unsaid
    std::optional<quantity::Percent> min, typical, max;
    bool operator==(const Content&) const = default;
};
struct LotAnalysis {
    std::string lot, date, by;
    std::map<std::string, Content> constituents;
    bool operator==(const LotAnalysis&) const = default;
};

enum class MadeAs { infusion, blend, pre_dilution };
struct Made {  // of an own ingredient that is a made part; what is in it stands in its parts
    MadeAs as = MadeAs::blend;
    quantity::Percent yield = quantity::kHundred;  // strained mass ÷ what was put in and stays
    std::vector<std::string> infused_with;         // what was strained out again, by name
    bool operator==(const Made&) const = default;
};

struct Ingredient {
    std::string id;
    std::uint32_t number = 0;  // for links, append-only; 0 is used (water)
    bool own = false;          // came with a recipe or was entered here; has no number
    std::string name;
    std::map<std::string, std::string> inci;  // market ("eu", "us") -> name in the declaration
    std::string inci_source;
    std::string about;      // what it is, in a sentence or two
    std::string botanical;  // the plant, "Mentha × piperita"; absent for what is no plant, or no single one
    std::string part;       // which part of it and how it is won: "flowering tops, steam distilled"
    std::string part_source;
    std::vector<std::string> cas;  // registry numbers
    std::string cas_source;
    std::string role;  // "wax", "butter", "essential_oil", "preservative", … as in presets/README.md
    Phase phase = Phase::oil;
    Known<DensityAt> density;
    std::string density_unknown;  // why there is none
    Known<Range> melting_c, iodine_value, saponification_value, unsaponifiables_percent, shelf_life_months,
        usual_leave_on_percent;
    Known<FattyAcids> fatty_acids;
    Known<std::int64_t> flash_point_c;       // grid: from here on its vapour can be lit
    Known<std::vector<std::string>> traits;  // what a person or a law asks about: presets/README.md
    std::map<std::string, quantity::Percent>
        max_percent;                           // own ingredients: product kind or IFRA category -> cap
    std::map<std::string, std::string> names;  // own ingredients named in more than English: language -> name
    std::string based_on;                      // own ingredients: the shipped one it is a variety of
    std::vector<Part> parts;
    std::optional<LotAnalysis> analysis;
    std::optional<Made> made;
    std::string origin;
    std::optional<bool> vegan;
    std::string caution, note;
    std::string source;  // own ingredients: where the entry comes from
    source::Standing standing = source::Standing::document;
    bool operator==(const Ingredient&) const = default;
};

struct Container {
    std::string id;
    std::uint32_t number = 0;
    std::string name, kind;
    std::string material;            // "glass", "pp", … as in presets/README.md; "" where it is not known
    Known<std::int64_t> max_pour_c;  // grid; hottest sensible filling; absent: not known, or no such limit
    Known<Range> nominal_ml, fill_g;
    std::string note;
    bool operator==(const Container&) const = default;
};

struct UsualShare {  // "wax 20 to 30 %": common practice for a product kind
    std::string role;
    Range percent;
    std::string source;
    source::Standing standing = source::Standing::common_practice;
    bool operator==(const UsualShare&) const = default;
};
struct Product {
    std::string id;
    std::uint32_t number = 0;
    std::string name, contact, place;  // contact: "leave_on" | "rinse_off"
    Known<std::string> ifra_category;
    Known<bool> water_gets_in;  // wet hands or a shower reach it while it is used
    std::vector<UsualShare> usual;
    bool operator==(const Product&) const = default;
};

struct StandIn {              // what can be taken in the place of an ingredient
    std::string of, by;       // ids, or twice one role: any of that role for any other
    std::int64_t factor = 0;  // grid: grams of `by` for one gram of `of`
    Range range;              // how far apart makers' factors lie
    std::string note, source;
    source::Standing standing = source::Standing::estimate;
    bool operator==(const StandIn&) const = default;
};

struct Catalogue {
    std::vector<Ingredient> ingredients;  // sorted by id
    std::vector<Container> containers;
    std::vector<Product> products;       // in the order they are offered
    std::vector<StandIn> stand_ins;      // sorted by of, then by
    std::vector<source::Entry> sources;  // sorted by key
    bool operator==(const Catalogue&) const = default;
};

const Ingredient* find_ingredient(const Catalogue& catalogue, std::string_view id);
const Ingredient* find_ingredient(const Catalogue& catalogue, std::uint32_t number);
const Container* find_container(const Catalogue& catalogue, std::string_view id);
const Container* find_container(const Catalogue& catalogue, std::uint32_t number);
const Product* find_product(const Catalogue& catalogue, std::string_view id);
const Product* find_product(const Catalogue& catalogue, std::uint32_t number);
bool has_trait(const Ingredient& ingredient, std::string_view trait);
const source::Entry* find_source(const Catalogue& catalogue, std::string_view key);

// The ingredients that fit what was typed, best first: whole name, start of a word, inside a word; over name,
// id, plant and INCI names, ASCII letters compared without case.
std::vector<const Ingredient*> search(const Catalogue& catalogue, std::string_view typed, std::size_t most);

// `catalogue` with the own ingredients of one recipe laid over it (an own id that equals a shipped one is the
// own one).
Catalogue with_own(const Catalogue& catalogue, const std::vector<Ingredient>& own);

}  // namespace catalogue
