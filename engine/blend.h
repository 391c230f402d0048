// What a formula is made of and what follows from it: shares by kind, melting ranges of its materials, fatty
// acids, iodine and saponification value, density, required HLB. Every figure says for how much of the weight
// it is known and how far it may be trusted. There is no melting point of a blend: no published rule is safe
// (eutectics of cocoa butter and lauric fats; wax in oil melts near the line of its solubility).
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "formula.h"
#include "quantity.h"
#include "result.h"
#include "source.h"

namespace blend {

enum class Kind { wax, hard, soft, liquid, volatile_oil, water, powder, other, unknown };
inline constexpr std::size_t kKinds = 9;
std::string_view kind_name(Kind kind);  // as files and words have it
Kind kind_of(const catalogue::Ingredient* known);
bool is_fatty(Kind kind);  // what fatty acids and their values are asked of; a stranger may be one

struct Part {  // of the finished product, made parts split into what they hold
    std::string id, name;
    const catalogue::Ingredient* known = nullptr;  // lies in the catalogue or the list that was given
    quantity::Percent percent;
};
// Each ingredient once. Errors: those of made::percents_of_product and made::split.
result::Result<std::vector<Part>> parts_of(const formula::Formula& formula,
                                           const catalogue::Catalogue& shipped,
                                           const std::vector<catalogue::Ingredient>& own);

struct Coverage {
    quantity::Percent asked, known;    // % of the product: of what is it asked, and of how much is it known
    std::vector<std::string> missing;  // names of those that say nothing
    source::Standing standing = source::Standing::document;  // of the loosest figure in it
    bool operator==(const Coverage&) const = default;
};
// Adds a part that is asked; `standing` where it says something.
void ask(Coverage& coverage, const Part& part, std::optional<source::Standing> standing);

struct Figure {
    std::optional<std::int64_t> value;  // grid
    Coverage of;
    bool operator==(const Figure&) const = default;
};
struct Span {
    std::optional<catalogue::Range> range;
    Coverage of;
    bool operator==(const Span&) const = default;
};

struct Acid {
    std::string name;  // "18:1", "ricinoleic", "other"
    quantity::Percent percent;
    bool operator==(const Acid&) const = default;
};
struct Profile {              // % of all fatty acids; adds to 100, in the order of length and double bonds
    std::vector<Acid> acids;  // none: nothing is known
    Coverage of;
    bool operator==(const Profile&) const = default;
};
Profile profile_of(const std::vector<Part>& parts);

struct Value {        // an iodine or saponification value
    Figure computed;  // from the fatty acids (blend_values.h)
    Span published;   // from the ranges that the materials' sources print
    bool operator==(const Value&) const = default;
};
Value iodine_of(const std::vector<Part>& parts);          // g iodine per 100 g
Value saponification_of(const std::vector<Part>& parts);  // mg KOH per g; not a lye amount

struct Driver {  // what a part brings to a sum, % of that sum
    std::string name;
    quantity::Percent share;
    bool operator==(const Driver&) const = default;
};
struct Oxidisability {
    Figure cox;                   // of what is fatty; a rank among oils, no length of time
    std::vector<Driver> drivers;  // the largest first
    bool operator==(const Oxidisability&) const = default;
};
Oxidisability oxidisability_of(const std::vector<Part>& parts);

struct Melting {
    std::string name;
    quantity::Percent percent;
    std::optional<catalogue::Range> range_c;
    std::string source;
    source::Standing standing = source::Standing::estimate;
    bool operator==(const Melting&) const = default;
};

struct Dense {
    std::int64_t temp_c_grid = 0;
    Figure density;  // g/mL
    bool operator==(const Dense&) const = default;
};

struct Setting {  // % of its volume that a melt poured at 70 °C loses until it has set
    quantity::Percent at_least;
    std::optional<quantity::Percent> at_most;  // none: what has no figure may lose any more
    Coverage of;                               // of both
    bool operator==(const Setting&) const = default;
};

struct Emulsifiers {                          // what the emulsifiers that are in it come to
    Figure hlb;                               // by weight
    std::optional<quantity::Percent> higher;  // of just two: % of the more water-loving one that would meet
    std::string higher_name, lower_name;      // what the oils require
    bool operator==(const Emulsifiers&) const = default;
};
struct Emulsion {
    Figure required;  // HLB of the oil phase, emulsifiers left out; ±1 and dependent on the source
    Emulsifiers emulsifiers;
    bool operator==(const Emulsion&) const = default;
};

struct Blend {
    std::array<quantity::Percent, kKinds> shares{};  // add to 100
    std::vector<Melting> melting;                    // of what is fatty, what melts last first
    Profile profile;
    Value iodine, saponification;
    Oxidisability oxidisability;
    std::vector<Dense> densities;      // at room, when poured, and at the temperature that was asked
    std::optional<Setting> setting;    // of what holds wax and no water
    std::optional<Emulsion> emulsion;  // of what holds water and oils
    bool operator==(const Blend&) const = default;
};
result::Result<Blend> of(const formula::Formula& formula, const catalogue::Catalogue& shipped,
                         const std::vector<catalogue::Ingredient>& own,
                         std::optional<std::int64_t> temp_c_grid = {});

}  // namespace blend
