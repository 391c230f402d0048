// From percent to grams. Everything here is whole numbers on the grid but the blend density, which is only
// asked for where a fill is said by volume. Fills are rounded to the nearest 0.0001 g, the way from fill to
// batch always upwards, so the pour suffices.
#include "batch.h"

#include <algorithm>
#include <utility>

namespace batch {
namespace {

using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;
using result::Code;
using result::Error;
using result::Result;

constexpr Mass kNothing{0};

std::string place(std::size_t container, std::string_view field) {
    return "batch.containers[" + std::to_string(container) + "]." + std::string(field);
}

std::string in_grams(Mass mass) {
    return decimal::print(mass.grid);
}

Result<Fill> fill_of(const Containers& said, std::size_t at, const density::Blend& blend,
                     const catalogue::Catalogue& catalogue) {
    Fill fill{said.id, said.count, {}, FillFrom::said_weight};
    if (said.count <= 0) return Error{Code::batch_zero, place(at, "count"), ""};
    if (said.count > kMostContainers)
        return Error{Code::too_many, place(at, "count"), std::to_string(kMostContainers)};
    if (said.fill_g) {  // the weight is all that is needed: the container may be one the catalogue does not
                        // have
        if (*said.fill_g <= kNothing) return Error{Code::batch_zero, place(at, "fill_g"), ""};
        if (*said.fill_g > kLargest)
            return Error{Code::batch_too_large, place(at, "fill_g"), in_grams(kLargest)};
        fill.each = *said.fill_g;
        return fill;
    }
    const catalogue::Container* container = catalogue::find_container(catalogue, said.id);
    if (container == nullptr) return Error{Code::container_unknown, place(at, "id"), said.id};
    if (said.fill_percent) {
        if (*said.fill_percent <= Percent{0}) return Error{Code::batch_zero, place(at, "fill_percent"), ""};
        if (*said.fill_percent > kHundred)
            return Error{Code::number_too_large, place(at, "fill_percent"),
                         decimal::print(said.fill_percent->grid)};
        if (!container->nominal_ml || container->nominal_ml->value.max <= 0)
            return Error{Code::fill_unknown, place(at, "fill_percent"), container->name};
        if (blend.density.grid <= 0) return Error{Code::density_unknown, place(at, "fill_percent"), ""};
        const quantity::Volume volume{
            decimal::scale_nearest(container->nominal_ml->value.max, said.fill_percent->grid, kHundred.grid)};
        fill.each = quantity::mass_of(volume, blend.density);
        fill.from = FillFrom::said_volume;
    } else {
        if (!container->fill_g || container->fill_g->value.max <= 0)
            return Error{Code::fill_unknown, place(at, "id"), container->name};
        fill.each = Mass{container->fill_g->value.max};
        fill.from = FillFrom::usual_weight;
    }
    if (fill.each > kLargest) return Error{Code::batch_too_large, place(at, "id"), in_grams(kLargest)};
    return fill;
}

// What the request comes to before the division: fills, loss, fill and asked of the batch.
Result<Batch> asked_for(Batch batch, const Request& request, const catalogue::Catalogue& catalogue) {
    const bool containers = request.amount == Amount::containers;
    batch.loss_usual = containers && !request.loss;
    batch.loss = request.loss ? *request.loss : containers ? kUsualLoss : Percent{0};
    if (batch.loss < Percent{0} || batch.loss >= kHundred)
        return Error{Code::loss_invalid, "batch.loss_percent", decimal::print(batch.loss.grid)};
    const Percent kept = kHundred - batch.loss;

    if (!containers) {
        if (request.grams <= kNothing) return Error{Code::batch_zero, "batch.grams", ""};
        if (request.grams > kLargest) return Error{Code::batch_too_large, "batch.grams", in_grams(kLargest)};
        batch.asked = request.grams;
        return batch;
    }
    if (request.containers.empty()) return Error{Code::amount_missing, "batch.containers", ""};
    for (std::size_t i = 0; i < request.containers.size(); ++i) {
        const auto fill = fill_of(request.containers[i], i, batch.density, catalogue);
        if (!fill) return fill.error();
        // Count and weight are bounded, so the product is far from 2^63; the sum is checked at each step.
        batch.fill = batch.fill + Mass{fill->each.grid * fill->count};
        if (batch.fill > kLargest)
            return Error{Code::batch_too_large, "batch.containers", in_grams(kLargest)};
        batch.fills.push_back(*fill);
    }
    if (batch.fill <= kNothing) return Error{Code::batch_zero, "batch.containers", ""};
    batch.asked = Mass{decimal::scale_up(batch.fill.grid, kHundred.grid, kept.grid)};
    if (batch.asked > kLargest) return Error{Code::batch_too_large, "batch.loss_percent", in_grams(kLargest)};
    return batch;
}

// The cap an own ingredient brings for this product, by kind or by IFRA category: the smaller one where both
// are said.
std::optional<Percent> cap_of(const catalogue::Ingredient& ingredient, std::string_view product,
                              const catalogue::Catalogue& catalogue) {
    std::optional<Percent> cap;
    const auto take = [&](const std::string& key) {
        const auto found = ingredient.max_percent.find(key);
        if (found != ingredient.max_percent.end() && (!cap || found->second < *cap)) cap = found->second;
    };
    take(std::string(product));
    const catalogue::Product* kind = catalogue::find_product(catalogue, product);
    if (kind != nullptr && kind->ifra_category) take(kind->ifra_category->value);
    return cap;
}

struct Caps {
    std::vector<std::int64_t> most;        // units per line; empty when no line has a cap
    std::optional<std::size_t> line_over;  // a line whose percent is over its cap before any rounding
    std::optional<Percent> cap;            // of line_over, or else of the first capped line
};

// The most units each line may get. Lines of one ingredient share its cap: what is left above their whole
// units goes to the larger remainders first, one unit each, as the sharing-out itself would.
Caps caps_of(const formula::Formula& formula, const std::vector<Percent>& percents, std::int64_t units,
             const catalogue::Catalogue& catalogue, std::string_view product) {
    Caps caps;
    std::vector<bool> done(formula.lines.size(), false);
    for (std::size_t first = 0; first < formula.lines.size(); ++first) {
        const std::string& id = formula.lines[first].ingredient;
        if (done[first] || id.empty()) continue;
        const catalogue::Ingredient* ingredient = catalogue::find_ingredient(catalogue, id);
        const auto cap = ingredient == nullptr ? std::nullopt : cap_of(*ingredient, product, catalogue);
        if (!cap) continue;
        if (caps.most.empty()) caps.most.assign(formula.lines.size(), units);

        std::vector<std::size_t> same;
        Percent sum;
        std::int64_t room = decimal::scale_down(units, cap->grid, kHundred.grid);
        for (std::size_t i = first; i < formula.lines.size(); ++i) {
            if (formula.lines[i].ingredient != id) continue;
            done[i] = true;
            same.push_back(i);
            sum = sum + percents[i];
            caps.most[i] = decimal::scale_down(units, percents[i].grid, kHundred.grid);
            room -= caps.most[i];
        }
        if (!caps.cap) caps.cap = cap;
        if (sum > *cap && !caps.line_over) {
            caps.line_over = first;
            caps.cap = cap;
        }
        const auto rest = [&](std::size_t i) {  // of percent x units over 100 %, without the whole units
            return percents[i].grid * units - caps.most[i] * kHundred.grid;
        };
        std::stable_sort(same.begin(), same.end(),
                         [&](std::size_t a, std::size_t b) { return rest(a) > rest(b); });
        for (std::size_t k = 0; k < same.size() && room > 0; ++k, --room)
            caps.most[same[k]] += 1;
    }
    return caps;
}

Line line_of(std::size_t index, Percent percent, std::int64_t given, std::int64_t units, Mass division,
             Mass total) {
    Line line{index, percent, Mass{given * division.grid}, {}, 0};
    line.actual = Percent{decimal::scale_nearest(line.grams.grid, kHundred.grid, total.grid)};
    // (given / (units x percent / 100) - 1) x 100; the difference is under one unit, so nothing overflows.
    const std::int64_t exact = units * percent.grid;
    if (exact > 0)
        line.error_grid = decimal::scale_nearest(given * kHundred.grid - exact, kHundred.grid, exact);
    return line;
}

}  // namespace

Request of_grams(Request request, quantity::Mass grams) {
    request.amount = Amount::grams;
    request.grams = grams;
    return request;
}

Result<Batch> make(const formula::Formula& formula, const Request& request,
                   const catalogue::Catalogue& catalogue, std::string_view product) {
    const auto percents = formula::percents(formula);
    if (!percents) return percents.error();
    if (request.amount == Amount::none) return Error{Code::amount_missing, "batch", ""};
    if (request.amount == Amount::people) return Error{Code::amount_unsupported, "batch.people", ""};
    if (request.amount == Amount::stock) return Error{Code::amount_unsupported, "batch.stock", ""};
    if (request.division <= kNothing || request.division > kLargest)
        return Error{Code::division_invalid, "batch.division_g", decimal::print(request.division.grid)};

    Batch blank;
    blank.division = request.division;
    blank.density = density::of(formula, *percents, catalogue);
    auto made = asked_for(std::move(blank), request, catalogue);
    if (!made) return made;
    Batch batch = std::move(made).value();

    const std::int64_t units = decimal::scale_up(batch.asked.grid, 1, batch.division.grid);
    batch.total = Mass{units * batch.division.grid};
    if (batch.total > kLargest) return Error{Code::batch_too_large, "batch.division_g", in_grams(kLargest)};
    if (request.amount == Amount::grams)
        batch.fill = Mass{decimal::scale_down(batch.total.grid, (kHundred - batch.loss).grid, kHundred.grid)};

    const Caps caps = caps_of(formula, *percents, units, catalogue, product);
    if (caps.line_over)
        return Error{Code::cap_leaves_no_room, "lines[" + std::to_string(*caps.line_over) + "].percent",
                     decimal::print(caps.cap->grid)};
    std::vector<std::int64_t> weights;
    for (const Percent percent : *percents)
        weights.push_back(percent.grid);
    const auto parts = decimal::share_out(units, weights, caps.most);
    if (!parts)
        return Error{parts.error().code, "batch.division_g", caps.cap ? decimal::print(caps.cap->grid) : ""};
    for (std::size_t i = 0; i < parts->size(); ++i)
        batch.lines.push_back(line_of(i, (*percents)[i], (*parts)[i], units, batch.division, batch.total));
    return batch;
}

}  // namespace batch
