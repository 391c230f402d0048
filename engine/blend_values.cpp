#include "blend_values.h"

#include "decimal.h"

namespace blend {
namespace {

// In the order of length and double bonds, as profiles are listed. Molar masses from atomic masses.
constexpr AcidFacts kAcids[] = {
    {"6:0", 116.16, 0},  {"8:0", 144.21, 0},  {"10:0", 172.26, 0},           {"12:0", 200.32, 0},
    {"14:0", 228.37, 0}, {"16:0", 256.42, 0}, {"16:1", 254.41, 1},           {"18:0", 284.48, 0},
    {"18:1", 282.46, 1}, {"18:2", 280.45, 2}, {"18:3", 278.43, 3},           {"20:0", 312.53, 0},
    {"20:1", 310.51, 1}, {"22:0", 340.58, 0}, {"22:1", 338.57, 1},           {"22:2", 336.55, 2},
    {"24:0", 368.64, 0}, {"24:1", 366.62, 1}, {"hydroxystearic", 300.48, 0}, {"ricinoleic", 298.46, 1},
};

struct Printed {  // AOCS Cd 1c-85: factors for triglycerides and for free acids
    std::string_view acid;
    double triglyceride, free;
};
constexpr Printed kPrinted[] = {{"16:1", 0.950, 0.9976}, {"18:1", 0.860, 0.8986}, {"18:2", 1.732, 1.810},
                                {"18:3", 2.616, 2.735},  {"20:1", 0.785, 0.8175}, {"22:1", 0.723, 0.7497}};

constexpr double kIodine = 253.81;                // g/mol, I2
constexpr double kGlycerol = 92.09, kWater = 18;  // g/mol, as AOCS Cd 3a-94 has them
constexpr double kPotash = 56.1;                  // g/mol, KOH

struct Named {                                        // of a profile, the acids that are known
    double percent = 0, moles = 0, double_bonds = 0;  // double bonds: of each molecule, times percent
};
Named named(const catalogue::FattyAcids& acids) {
    Named sum;
    for (const auto& [name, grid] : acids.percent) {
        const AcidFacts* acid = find_acid(name);
        if (acid == nullptr) continue;
        const double percent = decimal::to_double(grid);
        sum.percent += percent;
        sum.moles += percent / acid->molar_mass;
        sum.double_bonds += percent * acid->double_bonds;
    }
    return sum;
}

constexpr double kHalf = 50;  // % of the acids

}  // namespace

const AcidFacts* find_acid(std::string_view name) {
    for (const AcidFacts& acid : kAcids)
        if (acid.name == name) return &acid;
    return nullptr;
}

const AcidFacts* acid_at(std::size_t place) {
    return place < std::size(kAcids) ? &kAcids[place] : nullptr;
}

double iodine_factor(const AcidFacts& acid, bool free_acid) {
    for (const Printed& one : kPrinted)
        if (one.acid == acid.name) return free_acid ? one.free : one.triglyceride;
    const double mass =  // of what holds one molecule of it
        free_acid ? acid.molar_mass : acid.molar_mass + (kGlycerol - 3 * 18.015) / 3;
    return acid.double_bonds * kIodine / mass;
}

std::optional<double> iodine_value(const catalogue::FattyAcids& acids) {
    const Named sum = named(acids);
    if (sum.percent < kHalf) return std::nullopt;
    // Of the alcohols of a wax ester nothing is said: they are taken to be like its acids.
    if (acids.bound_as == "wax_esters") return iodine_of_ester(kWaxEster, 2 * sum.double_bonds / sum.percent);
    const bool free_acid = acids.bound_as == "free_acids";
    if (!free_acid && acids.bound_as != "triglycerides") return std::nullopt;
    double value = 0;
    for (const auto& [name, grid] : acids.percent)
        if (const AcidFacts* acid = find_acid(name))
            value += decimal::to_double(grid) * iodine_factor(*acid, free_acid);
    return value;
}

std::optional<double> saponification_value(const catalogue::FattyAcids& acids) {
    const Named sum = named(acids);
    if (sum.percent < kHalf) return std::nullopt;
    if (acids.bound_as == "wax_esters") return saponification_of_ester(kWaxEster);
    const double mean = sum.percent / sum.moles;
    if (acids.bound_as == "free_acids") return 1000 * kPotash / mean;
    if (acids.bound_as != "triglycerides") return std::nullopt;
    return saponification_of_triglyceride(mean);
}

double saponification_of_triglyceride(double mean_acid_molar_mass) {
    return 3 * kPotash * 1000 / (3 * mean_acid_molar_mass + kGlycerol - 3 * kWater);
}

double saponification_of_ester(double molar_mass) {
    return 1000 * kPotash / molar_mass;
}

double iodine_of_ester(double molar_mass, double double_bonds) {
    return 100 * kIodine * double_bonds / molar_mass;
}

std::optional<double> cox_value(const catalogue::FattyAcids& acids) {
    double value = 0, known = 0;
    for (const auto& [name, grid] : acids.percent) {
        const AcidFacts* acid = find_acid(name);
        if (acid == nullptr) continue;
        const double percent = decimal::to_double(grid);
        const double rate = name == "18:1" ? 1 : name == "18:2" ? 10.3 : name == "18:3" ? 21.6 : 0;
        if (rate > 0 || acid->double_bonds == 0) known += percent;
        value += rate * percent / 100;
    }
    if (known < kHalf) return std::nullopt;
    return value;
}

}  // namespace blend
