// From percent to grams. Everything here is whole numbers on the grid but the densities and what the scales'
// steps leave uncertain. The way from fill to batch goes always upwards, so the pour suffices.
#include "batch.h"

#include <algorithm>
#include <utility>

#include "batch_rounding.h"

namespace batch {
namespace {

using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;
using result::Code;
using result::Error;
using result::Result;

constexpr Mass kNothing{0};

std::string in_grams(Mass mass) {
    return decimal::print(mass.grid);
}

// What people ask for, as containers: people × each units, or `each` grams for everyone.
Result<std::vector<Containers>> for_people(const Request& request) {
    if (request.people <= 0) return Error{Code::batch_zero, "batch.people", ""};
    if (request.each <= 0) return Error{Code::batch_zero, "batch.each", ""};
    if (request.people > kMostContainers || request.each > kMostContainers)
        return Error{Code::too_many, request.people > kMostContainers ? "batch.people" : "batch.each",
                     std::to_string(kMostContainers)};
    Containers unit = request.unit.value_or(Containers{});
    if (request.unit) {
        if (request.people * request.each > kMostContainers)
            return Error{Code::too_many, "batch.each", std::to_string(kMostContainers)};
        unit.count = request.people * request.each;
    } else {
        unit.count = request.people;
        unit.fill_g = quantity::grams(request.each);
    }
    return std::vector<Containers>{unit};
}

// Fills, what they take and what is to be weighed for that.
Result<Batch> filled(Batch batch, const std::vector<Containers>& containers, const std::string& list,
                     const catalogue::Catalogue& catalogue) {
    if (containers.empty()) return Error{Code::amount_missing, list, ""};
    const Densities densities{batch.density, batch.warm};
    for (std::size_t i = 0; i < containers.size(); ++i) {
        const std::string place = list == "batch.unit" ? list : list + "[" + std::to_string(i) + "]";
        const auto fill = fill_of(containers[i], place, densities, catalogue);
        if (!fill) return fill.error();
        // Count and weight are bounded, so the product is far from 2^63; the sum is checked at each step.
        batch.fill = batch.fill + Mass{fill->each.grid * fill->count};
        if (batch.fill > kLargest) return Error{Code::batch_too_large, list, in_grams(kLargest)};
        batch.fills.push_back(*fill);
    }
    batch.asked = Mass{decimal::scale_up(batch.fill.grid, kHundred.grid, (kHundred - batch.loss).grid)};
    if (batch.asked > kLargest) return Error{Code::batch_too_large, "batch.loss_percent", in_grams(kLargest)};
    return batch;
}

Result<Batch> from_stock(Batch batch, const formula::Formula& formula, const std::vector<Percent>& percents,
                         const Request& request, const catalogue::Catalogue& catalogue) {
    if (request.stock.empty()) return Error{Code::amount_missing, "batch.stock", ""};
    batch.reach = supplies_of(formula, percents, request.stock, catalogue);
    const auto asked = reach_of(*batch.reach, batch.division);
    if (!asked) return Error{Code::stock_not_needed, "batch.stock", request.stock.front().ingredient};
    batch.asked = *asked;
    if (batch.asked > kLargest) return Error{Code::batch_too_large, "batch.stock", in_grams(kLargest)};
    if (batch.asked < batch.division) {
        for (const Supply& supply : batch.reach->supplies)
            if (supply.have && Mass{decimal::scale_down(supply.have->grid, kHundred.grid,
                                                        supply.share.grid)} < batch.division)
                return Error{Code::stock_too_little, "batch.stock", supply.ingredient};
        return Error{Code::stock_too_little, "batch.stock", ""};
    }
    return batch;
}

// What the request comes to before the division: fills, loss, fill and asked of the batch.
Result<Batch> asked_for(Batch batch, const formula::Formula& formula, const std::vector<Percent>& percents,
                        const Request& request, const catalogue::Catalogue& catalogue) {
    const bool is_filled = request.amount == Amount::containers || request.amount == Amount::people;
    batch.loss_usual = is_filled && !request.loss;
    batch.loss = request.loss ? *request.loss : is_filled ? kUsualLoss : Percent{0};
    if (batch.loss < Percent{0} || batch.loss >= kHundred)
        return Error{Code::loss_invalid, "batch.loss_percent", decimal::print(batch.loss.grid)};
    if (request.amount == Amount::containers)
        return filled(std::move(batch), request.containers, "batch.containers", catalogue);
    if (request.amount == Amount::people) {
        const auto containers = for_people(request);
        if (!containers) return containers.error();
        return filled(std::move(batch), *containers, "batch.unit", catalogue);
    }
    if (request.amount == Amount::stock)
        return from_stock(std::move(batch), formula, percents, request, catalogue);
    if (request.grams <= kNothing) return Error{Code::batch_zero, "batch.grams", ""};
    if (request.grams > kLargest) return Error{Code::batch_too_large, "batch.grams", in_grams(kLargest)};
    batch.asked = request.grams;
    return batch;
}

// A cap that the percents themselves leave, before any rounding.
std::optional<Error> over_cap(const std::vector<Cap>& caps, const std::vector<Percent>& percents) {
    for (const Cap& cap : caps) {
        Percent sum;
        for (const std::size_t i : cap.lines)
            sum = sum + percents[i];
        if (sum > cap.most)
            return Error{Code::cap_leaves_no_room, "lines[" + std::to_string(cap.lines.front()) + "].percent",
                         decimal::print(cap.most.grid)};
    }
    return std::nullopt;
}

struct Weighed {
    Rounded rounded;
    std::vector<scales::Place> places;
};

Result<Weighed> weighed(Mass asked, bool may_exceed, Mass division, const std::vector<Percent>& percents,
                        const std::vector<Cap>& caps, const scales::Bench& bench) {
    std::vector<Mass> loads;
    for (const Percent percent : percents)
        loads.push_back(quantity::share_of(asked, percent));
    Weighed out{{}, scales::assign(loads, division, bench)};
    std::vector<Mass> divisions;
    for (const scales::Place& place : out.places)
        divisions.push_back(place.division);
    const auto made = rounded({asked, may_exceed, percents, divisions, caps});
    if (!made)
        return Error{made.error().code, "batch.division_g",
                     caps.empty() ? "" : decimal::print(caps.front().most.grid)};
    out.rounded = *made;
    return out;
}

// Rounding may take a step too much of what several lines share: then the batch gives way, step by step.
Result<Weighed> within_stock(Batch& batch, const std::vector<Percent>& percents, const std::vector<Cap>& caps,
                             const scales::Bench& bench) {
    Mass asked = batch.asked;
    for (;;) {
        auto out = weighed(asked, false, batch.division, percents, caps, bench);
        if (!out) return out;
        Mass coarsest = batch.division;
        for (const scales::Place& place : out->places)
            coarsest = std::max(coarsest, place.division);
        if (settle(*batch.reach, out->rounded.grams, out->rounded.total, batch.division)) return out;
        // A quarter of what would surely do, so that little of the reach is given away.
        Mass less = coarsest;
        for (const Supply& supply : batch.reach->supplies)
            if (supply.left && *supply.left < kNothing)
                less = std::max(less, Mass{decimal::scale_down(-supply.left->grid, kHundred.grid / 4,
                                                               supply.share.grid)});
        asked = asked - less;
        if (asked < batch.division) return Error{Code::stock_too_little, "batch.stock", ""};
    }
}

std::vector<Line> lines_of(const Weighed& weighed, const std::vector<Percent>& percents) {
    const std::vector<Mass>& grams = weighed.rounded.grams;
    const Mass total = weighed.rounded.total;
    std::vector<Mass> divisions;
    for (const scales::Place& place : weighed.places)
        divisions.push_back(place.division);
    const std::vector<Percent> uncertain = scales::percent_uncertainty(grams, divisions);
    std::vector<Line> lines;
    for (std::size_t i = 0; i < grams.size(); ++i) {
        Line line{i, percents[i], grams[i], {}, 0, weighed.places[i], uncertain[i]};
        line.actual = Percent{decimal::scale_nearest(grams[i].grid, kHundred.grid, total.grid)};
        // (grams / (total x percent / 100) - 1) x 100; the difference is a step or so, so nothing overflows.
        const std::int64_t exact = total.grid * percents[i].grid;
        if (exact > 0)
            line.error_grid =
                decimal::scale_nearest(grams[i].grid * kHundred.grid - exact, kHundred.grid, exact);
        lines.push_back(line);
    }
    return lines;
}

bool holds_water(const formula::Formula& formula, const std::vector<Percent>& percents,
                 const catalogue::Catalogue& catalogue) {
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        const auto* ingredient = catalogue::find_ingredient(catalogue, formula.lines[i].ingredient);
        if (ingredient != nullptr && percents[i] > Percent{0} && density::is_watery(*ingredient)) return true;
    }
    return false;
}

}  // namespace

Request of_grams(Request request, quantity::Mass grams) {
    request.amount = Amount::grams;
    request.grams = grams;
    return request;
}

Result<Batch> make(const formula::Formula& formula, const Request& request,
                   const catalogue::Catalogue& catalogue, std::string_view product,
                   const scales::Bench& bench) {
    const auto percents = formula::percents(formula);
    if (!percents) return percents.error();
    if (request.amount == Amount::none) return Error{Code::amount_missing, "batch", ""};
    if (request.division <= kNothing || request.division > kLargest)
        return Error{Code::division_invalid, "batch.division_g", decimal::print(request.division.grid)};

    Batch blank;
    blank.division = request.division;
    blank.density = density::of(formula, *percents, catalogue);
    blank.pour_c = density::pour_c(formula);
    if (blank.pour_c && !holds_water(formula, *percents, catalogue)) {
        blank.warm = density::warm(formula, *percents, catalogue, *blank.pour_c);
        if (blank.warm->known <= Percent{0}) blank.warm.reset();
    }
    auto made = asked_for(std::move(blank), formula, *percents, request, catalogue);
    if (!made) return made;
    Batch batch = std::move(made).value();

    const std::vector<Cap> caps = caps_of(formula, catalogue, product);
    if (auto fault = over_cap(caps, *percents)) return *fault;
    const auto out = batch.reach ? within_stock(batch, *percents, caps, bench)
                                 : weighed(batch.asked, true, batch.division, *percents, caps, bench);
    if (!out) return out.error();
    batch.total = out->rounded.total;
    if (batch.total > kLargest) return Error{Code::batch_too_large, "batch.division_g", in_grams(kLargest)};
    if (batch.total <= kNothing) return Error{Code::batch_zero, "batch.division_g", ""};
    if (request.amount == Amount::grams || request.amount == Amount::stock)
        batch.fill = Mass{decimal::scale_down(batch.total.grid, (kHundred - batch.loss).grid, kHundred.grid)};
    batch.lines = lines_of(*out, *percents);
    return batch;
}

bool reads_badly(const Line& line, Mass total) {
    if (line.percent <= Percent{0}) return false;
    // share = total x percent / 100, against 20 divisions; without rounding the share first
    return total < scales::least_batch(line.place.division, line.percent);
}

}  // namespace batch
