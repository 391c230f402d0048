#include "blend_hlb.h"

#include <algorithm>

namespace blend {
namespace {

using quantity::Percent;
using source::Standing;

constexpr std::string_view kTable = "ocl_2022_hlb";  // keys in presets/sources.json
constexpr std::string_view kPolysorbate = "pmc_4137601";
constexpr std::string_view kMemory = "memory";

// Beeswax: older lists have 9, the table that was read 12.
constexpr Hlb kRequired[] = {
    {"beeswax_white", 120000, kTable, Standing::document},
    {"beeswax_yellow", 120000, kTable, Standing::document},
    {"candelilla", 145000, kMemory, Standing::memory},
    {"carnauba", 145000, kMemory, Standing::memory},
    {"castor", 140000, kMemory, Standing::memory},
    {"cetearyl_alcohol", 155000, kMemory, Standing::memory},
    {"cetyl_alcohol", 155000, kMemory, Standing::memory},
    {"cocoa", 60000, kMemory, Standing::memory},
    {"coconut", 80000, kMemory, Standing::memory},
    {"ipm", 115000, kTable, Standing::document},
    {"jojoba", 65000, kMemory, Standing::memory},
    {"lanolin", 100000, kMemory, Standing::memory},
    {"mango", 80000, kMemory, Standing::memory},
    {"mct", 55000, kMemory, Standing::memory},
    {"shea", 80000, kMemory, Standing::memory},
    {"squalane", 120000, kMemory, Standing::memory},
    {"stearic_acid", 150000, kTable, Standing::document},
};
// Oils that are triglycerides ask for much the same: lists give 6 to 8.
constexpr Hlb kLiquidFat{"", 70000, kMemory, Standing::memory};

constexpr Hlb kEmulsifiers[] = {{"glyceryl_stearate", 38000, kTable, Standing::document},
                                {"polysorbate_80", 150000, kPolysorbate, Standing::document}};

constexpr Percent kWorthMixing = quantity::percent(3);

}  // namespace

const Hlb* required_hlb(const catalogue::Ingredient& ingredient) {
    for (const Hlb& one : kRequired)
        if (one.ingredient == ingredient.id) return &one;
    const bool fat = ingredient.fatty_acids && ingredient.fatty_acids->value.bound_as == "triglycerides";
    return fat && ingredient.role == "liquid_oil" ? &kLiquidFat : nullptr;
}

const Hlb* hlb_of_emulsifier(std::string_view ingredient) {
    for (const Hlb& one : kEmulsifiers)
        if (one.ingredient == ingredient) return &one;
    return nullptr;
}

std::optional<std::int64_t> mean_hlb(const std::vector<Weighed>& parts) {
    std::int64_t sum = 0, weight = 0;
    for (const Weighed& one : parts) {
        sum += one.percent.grid * one.hlb;
        weight += one.percent.grid;
    }
    if (weight <= 0) return std::nullopt;
    return decimal::scale_nearest(sum, 1, weight);
}

std::optional<Percent> share_of_higher(std::int64_t required, std::int64_t low, std::int64_t high) {
    if (low >= high || required < low || required > high) return std::nullopt;
    return Percent{decimal::scale_nearest(quantity::kHundred.grid, required - low, high - low)};
}

std::optional<Emulsion> emulsion_of(const std::vector<Part>& parts) {
    Percent water, oils;
    Emulsion made;
    std::vector<Weighed> asked, held;
    std::vector<const Part*> known;
    for (const Part& part : parts) {
        const Kind kind = kind_of(part.known);
        if (kind == Kind::water) water = water + part.percent;
        if (is_fatty(kind)) {
            oils = oils + part.percent;
            const Hlb* one = part.known ? required_hlb(*part.known) : nullptr;
            ask(made.required.of, part, one ? std::optional(one->standing) : std::nullopt);
            if (one) asked.push_back({part.percent, one->hlb});
        }
        if (part.known && (part.known->role == "emulsifier" || part.known->role == "solubiliser")) {
            const Hlb* one = hlb_of_emulsifier(part.id);
            ask(made.emulsifiers.hlb.of, part, one ? std::optional(one->standing) : std::nullopt);
            if (one) held.push_back({part.percent, one->hlb});
            if (one) known.push_back(&part);
        }
    }
    if (water < kWorthMixing || oils < kWorthMixing) return std::nullopt;
    made.required.value = mean_hlb(asked);
    made.emulsifiers.hlb.value = mean_hlb(held);
    if (held.size() == 2 && made.required.value) {
        const std::size_t high = held[0].hlb > held[1].hlb ? 0 : 1;
        made.emulsifiers.higher = share_of_higher(*made.required.value, held[1 - high].hlb, held[high].hlb);
        made.emulsifiers.higher_name = known[high]->name;
        made.emulsifiers.lower_name = known[1 - high]->name;
    }
    return made;
}

}  // namespace blend
