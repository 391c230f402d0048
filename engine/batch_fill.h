// What one container takes: the ways of saying it, and what it comes to in grams, cold and warm.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "catalogue.h"
#include "density.h"
#include "quantity.h"
#include "result.h"

namespace batch {

// How the fill of one container is said, the first of these that is there: by a test fill (one filled,
// weighed, its empty weight off), by weight, by volume (fill_percent of what it holds, through the blend's
// density), else the container's usual weight from the catalogue (upper end, so that the pour suffices).
// What it holds: by the water it takes to the brim where that was weighed, else the nominal volume.
struct Containers {
    std::string id;  // "" for none: portions by weight
    std::int64_t count = 1;
    std::optional<quantity::Mass> fill_g;
    std::optional<quantity::Percent> fill_percent;
    std::optional<quantity::Mass> test_fill_g = std::nullopt;
    std::optional<quantity::Mass> water_g = std::nullopt;
    bool operator==(const Containers&) const = default;
};

inline constexpr quantity::Mass kLargest{1'000'000 *
                                         decimal::kOne};  // 1 t: beyond it a typing slip is likelier
inline constexpr std::int64_t kMostContainers = 10000;
// A volume is told where the density is known for this much of the weight (an estimate of what still tells).
inline constexpr quantity::Percent kEnoughKnown{90 * decimal::kOne};
// Of the brim, where water was weighed and no share said: room for the lid (common practice).
inline constexpr quantity::Percent kUsualShare{90 * decimal::kOne};

enum class FillFrom { said_weight, said_volume, usual_weight, test_fill, water };
struct Fill {  // one kind of container
    std::string container;
    std::int64_t count = 0;
    quantity::Mass each;
    FillFrom from = FillFrom::usual_weight;
    std::optional<quantity::Percent> share;  // of what it holds, for said_volume and water
    bool share_usual = false;                // kUsualShare was taken
    std::optional<quantity::Volume> holds;   // brim by water, else the nominal volume's upper figure
    std::optional<quantity::Volume>
        cold;  // what `each` comes to at room temperature, where a density is known
    std::optional<quantity::Volume> warm;  // and when it is poured
    bool operator==(const Fill&) const = default;
};

struct Densities {  // of the batch as it stands in the container, and as it is poured
    density::Blend cold;
    std::optional<density::Blend> warm;
};

// `place` stands before the field of a fault: "batch.containers[2]".
result::Result<Fill> fill_of(const Containers& said, const std::string& place, const Densities& densities,
                             const catalogue::Catalogue& catalogue);

// By the density of water at 20 °C.
quantity::Volume capacity_of(quantity::Mass water);

}  // namespace batch
