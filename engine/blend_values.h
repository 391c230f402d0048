// Values of one fat from its fatty acids, by the recommended practices AOCS Cd 1c-85 and Cd 3a-94. Plain
// formulae in double; who asks brings them to the grid. They read low for iodine where there are
// unsaponifiables, and do not hold for partial glycerides.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

#include "catalogue.h"

namespace blend {

inline constexpr std::string_view kIodineSource = "aocs_cd_1c";          // keys in presets/sources.json
inline constexpr std::string_view kSaponificationSource = "aocs_cd_3a";  // from memory
inline constexpr std::string_view kCoxSource = "cox_1980";               // likewise
inline constexpr double kWaxEster = 606;  // g/mol, jojoba's esters on average: Merck-Index-style entry

struct AcidFacts {
    std::string_view name;
    double molar_mass;  // g/mol
    int double_bonds;
};
const AcidFacts* find_acid(std::string_view name);  // null: "other", or one that is not known here
const AcidFacts* acid_at(std::size_t place);        // in the order profiles are listed; null behind the last

// g iodine that 1 % of an acid binds per 100 g of fat: the practice's factor where it prints one, else by its
// principle from molar mass and double bonds.
double iodine_factor(const AcidFacts& acid, bool free_acid);

// Nothing where the acids that are named come to less than half, or are bound in a way without a formula.
std::optional<double> iodine_value(const catalogue::FattyAcids& acids);
std::optional<double> saponification_value(const catalogue::FattyAcids& acids);

double saponification_of_triglyceride(double mean_acid_molar_mass);
double saponification_of_ester(double molar_mass);
double iodine_of_ester(double molar_mass, double double_bonds);

// (1 × 18:1 + 10.3 × 18:2 + 21.6 × 18:3) / 100, after Fatemi and Hammond 1980; nothing for a fat of which
// saturated acids and these make up less than half: the index does not know the others.
std::optional<double> cox_value(const catalogue::FattyAcids& acids);

}  // namespace blend
