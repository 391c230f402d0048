// A class that makes one recipe together: kits for its stations, a demonstration, spare kits, what is diluted
// beforehand, what is bought, what is weighed the day before, hotplates against circuits, and the order of
// the day by the recipe's own steps. The plan is the device's; it travels with no recipe.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "batch.h"
#include "catalogue.h"
#include "formula.h"
#include "quantity.h"
#include "result.h"
#include "scales.h"

namespace workshop {

struct Pack {                // what an ingredient is sold in
    std::string ingredient;  // id, or the name of a line without one
    quantity::Mass grams;
    bool operator==(const Pack&) const = default;
};

struct Plan {
    std::int64_t people = 12, each = 1, stations = 3;  // each: units for one person
    std::int64_t shown = 1, spare = 1;                 // units of the demonstration; kits more than stations
    quantity::Mass sample{10000};   // of the demonstration, for each person to try on the skin; 0: none
    bool diluted = true;            // essential oils come to the stations diluted
    std::int64_t starts = 10 * 60;  // minutes of the day
    std::int64_t watts = 1500, volts = 230, amperes = 16;  // of a hotplate; of a circuit and its fuse
    std::vector<Pack> packs;
    bool operator==(const Plan&) const = default;
};
inline constexpr std::int64_t kMostPeople = 200, kMostEach = 50, kMostSpare = 20;
inline constexpr std::size_t kMostPacks = 200;
std::optional<result::Error> fault_of(const Plan& plan, const std::string& at);

struct Bought {
    std::int64_t count = 0;
    quantity::Mass each, left;  // left: over what is needed
    bool operator==(const Bought&) const = default;
};
quantity::Mass pack_of(const std::vector<Pack>& packs, const formula::Line& line);  // 0: not said
std::optional<Bought> bought(quantity::Mass need, quantity::Mass pack);             // none: no pack was said

// The recipe as far as a workshop asks.
struct Recipe {
    const formula::Formula& formula;
    const std::vector<formula::Step>& steps;
    const batch::Request& batch;
    std::string_view product;
};

struct Kit {
    std::int64_t people = 0, units = 0;  // people 0: the demonstration
    quantity::Mass total;
    std::vector<quantity::Mass> grams;  // of each line; 0 for what comes diluted
    quantity::Mass mix;                 // of the dilution
    bool operator==(const Kit&) const = default;
};

struct Dilution {  // of all essential oils together, in a liquid oil of the recipe
    std::size_t oil = 0;
    quantity::Percent strength;
    quantity::Mass total, with;  // with: of the oil
    struct Part {
        std::size_t line = 0;
        quantity::Mass grams;
        bool operator==(const Part&) const = default;
    };
    std::vector<Part> parts;
    bool operator==(const Dilution&) const = default;
};

enum class Ahead { day_before, evaporates, preservative, active, heat_sensitive, water, unknown };

struct Total {             // of one ingredient, over all kits
    std::size_t line = 0;  // the first that holds it
    quantity::Mass need;
    std::optional<Bought> bought;
    bool operator==(const Total&) const = default;
};

// A circuit is loaded to this much of what its fuse holds, for hours on end (common practice).
inline constexpr quantity::Percent kLoad{80 * decimal::kOne};
struct Power {
    std::int64_t usable = 0;                          // watts of one circuit
    std::int64_t plates = 0, each = 0, circuits = 0;  // each: on one circuit; 0: not even one
    bool operator==(const Power&) const = default;
};

struct Slot {
    enum class Kind { set_up, welcome, step, clear_up } kind = Kind::step;
    std::int64_t from = 0;                // minutes of the day
    std::optional<std::int64_t> minutes;  // none: the step says none
    std::size_t step = 0;
    bool operator==(const Slot&) const = default;
};
inline constexpr std::int64_t kSetUp = 30, kWelcome = 15, kClearUp = 15;  // minutes, common practice

struct Asked {                       // what people are asked before they come
    std::string_view key;            // "workshop.ask_nut"
    std::vector<std::size_t> lines;  // that it is asked for; none: of everybody
    bool operator==(const Asked&) const = default;
};

struct Workshop {
    batch::Containers unit;  // what one unit is
    quantity::Mass unit_g;
    std::vector<Kit> kits;   // one a station
    std::vector<Kit> spare;  // each like the largest of them
    std::optional<Kit> demonstration;
    std::optional<Dilution> dilution;  // none: nothing to dilute, or no oil to take for it
    std::vector<Ahead> ahead;          // of each line
    std::vector<Total> totals;
    std::int64_t units = 0;  // in all, what is filled
    quantity::Mass total;
    Power power;
    std::vector<Slot> day;
    std::vector<Asked> asked;
};

// Errors: those of batch::make; amount_missing where the recipe says no unit; field_unknown_value for a plan
// out of bounds. `known`: with the recipe's own ingredients laid over.
result::Result<Workshop> of(const Recipe& recipe, const Plan& plan, const catalogue::Catalogue& known);

}  // namespace workshop
