// From what is said about a container to grams. Fills are rounded to the nearest 0.0001 g.
#include "batch_fill.h"

namespace batch {
namespace {

using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;
using quantity::Volume;
using result::Code;
using result::Error;
using result::Result;

std::string field(const std::string& place, std::string_view name) {
    return place + "." + std::string(name);
}

std::optional<Error> fault_of(Mass said, const std::string& place) {
    if (said <= Mass{0}) return Error{Code::batch_zero, place, ""};
    if (said > kLargest) return Error{Code::batch_too_large, place, decimal::print(kLargest.grid)};
    return std::nullopt;
}

// The share of what it holds, through the density.
Result<Fill> by_volume(Fill fill, const Containers& said, const std::string& place,
                       const density::Blend& cold, const std::string& name) {
    fill.share_usual = !said.fill_percent;
    fill.share = said.fill_percent.value_or(kUsualShare);
    fill.from = said.water_g ? FillFrom::water : FillFrom::said_volume;
    if (*fill.share <= Percent{0}) return Error{Code::batch_zero, field(place, "fill_percent"), ""};
    if (*fill.share > kHundred)
        return Error{Code::number_too_large, field(place, "fill_percent"), decimal::print(fill.share->grid)};
    if (!fill.holds) return Error{Code::fill_unknown, field(place, "fill_percent"), name};
    if (cold.density.grid <= 0)
        return Error{Code::density_unknown, field(place, said.water_g ? "water_g" : "fill_percent"), ""};
    const Volume volume{decimal::scale_nearest(fill.holds->grid, fill.share->grid, kHundred.grid)};
    fill.each = quantity::mass_of(volume, cold.density);
    return fill;
}

Result<Fill> weighed(Fill fill, const Containers& said, const std::string& place, const Densities& densities,
                     const catalogue::Container* container) {
    if (said.test_fill_g || said.fill_g) {  // the weight is all that is needed: the container may be one the
                                            // catalogue does not have
        fill.from = said.test_fill_g ? FillFrom::test_fill : FillFrom::said_weight;
        fill.each = said.test_fill_g ? *said.test_fill_g : *said.fill_g;
        if (auto fault = fault_of(fill.each, field(place, said.test_fill_g ? "test_fill_g" : "fill_g")))
            return *fault;
        return fill;
    }
    if (said.water_g || said.fill_percent) {
        if (container == nullptr && !said.water_g)
            return Error{Code::container_unknown, field(place, "id"), said.id};
        return by_volume(std::move(fill), said, place, densities.cold, container ? container->name : said.id);
    }
    if (said.id.empty()) return Error{Code::amount_missing, field(place, "fill_g"), ""};
    if (container == nullptr) return Error{Code::container_unknown, field(place, "id"), said.id};
    if (!container->fill_g || container->fill_g->value.max <= 0)
        return Error{Code::fill_unknown, field(place, "id"), container->name};
    fill.each = Mass{container->fill_g->value.max};
    fill.from = FillFrom::usual_weight;
    return fill;
}

}  // namespace

Volume capacity_of(Mass water) {
    return quantity::volume_of(water, density::kWater);
}

Result<Fill> fill_of(const Containers& said, const std::string& place, const Densities& densities,
                     const catalogue::Catalogue& catalogue) {
    if (said.count <= 0) return Error{Code::batch_zero, field(place, "count"), ""};
    if (said.count > kMostContainers)
        return Error{Code::too_many, field(place, "count"), std::to_string(kMostContainers)};
    const catalogue::Container* container = catalogue::find_container(catalogue, said.id);
    Fill fill;
    fill.container = said.id;
    fill.count = said.count;
    if (said.water_g) {
        if (auto fault = fault_of(*said.water_g, field(place, "water_g"))) return *fault;
        fill.holds = capacity_of(*said.water_g);
    } else if (container != nullptr && container->nominal_ml && container->nominal_ml->value.max > 0) {
        fill.holds = Volume{container->nominal_ml->value.max};
    }
    auto made = weighed(std::move(fill), said, place, densities, container);
    if (!made) return made;
    if (made->each > kLargest || made->each <= Mass{0})
        return Error{made->each > kLargest ? Code::batch_too_large : Code::batch_zero, field(place, "id"),
                     made->each > kLargest ? decimal::print(kLargest.grid) : ""};
    if (densities.cold.density.grid > 0 && densities.cold.known >= kEnoughKnown)
        made->cold = quantity::volume_of(made->each, densities.cold.density);
    if (densities.warm && densities.warm->density.grid > 0 && densities.warm->known >= kEnoughKnown)
        made->warm = quantity::volume_of(made->each, densities.warm->density);
    return made;
}

}  // namespace batch
