#include "blend_firmness.h"

#include <algorithm>
#include <utility>

#include "bounds.h"
#include "sorting.h"

namespace blend {
namespace {

using quantity::Percent;

struct Strength {
    std::string_view id;
    double beeswax;
};
// One over the factor by which each stands in for beeswax: rules of the trade, from memory.
constexpr Strength kStrengths[] = {{"berry_wax", 1 / 1.3}, {"candelilla", 1 / 0.5},
                                   {"carnauba", 1 / 0.4},  {"rice_bran_wax", 1 / 0.7},
                                   {"soy_wax", 1 / 1.5},   {"sunflower_wax", 1 / 0.5}};
constexpr Strength kRoleStrengths[] = {{"wax", 1}, {"hard_fat", 0.7}, {"thickener", 0.5}};  // estimates

// What a butter and a soft fat bring, against beeswax: estimates, in twentieths.
constexpr std::int64_t kButter = 3, kSoft = 1, kWhole = 20;

constexpr Percent kMostWater = quantity::percent(3), kMostPowder = quantity::percent(20),
                  kMostUnknown = quantity::percent(10);
constexpr std::int64_t kMostBody = 1000 * decimal::kOne;

}  // namespace

double setting_strength(const catalogue::Ingredient& ingredient) {
    for (const Strength& one : kStrengths)
        if (one.id == ingredient.id) return one.beeswax;
    for (const Strength& one : kRoleStrengths)
        if (one.id == ingredient.role) return one.beeswax;
    return 0;
}

std::int64_t firmness(const Body& body) {
    return decimal::scale_nearest(body.wax.grid * kWhole + body.hard.grid * kButter + body.soft.grid * kSoft,
                                  1, kWhole);
}

Firm firm(const std::vector<Part>& parts) {
    Firm made;
    Percent water, powder, unknown;
    for (const Part& part : parts) {
        const Kind kind = kind_of(part.known);
        if (kind == Kind::water) water = water + part.percent;
        if (kind == Kind::powder) powder = powder + part.percent;
        if (kind == Kind::unknown) unknown = unknown + part.percent;
        if (part.known == nullptr) continue;
        if (const double strength = setting_strength(*part.known); strength > 0)
            made.body.wax.grid += decimal::rounded(decimal::to_double(part.percent.grid) * strength);
        else if (kind == Kind::hard)
            made.body.hard = made.body.hard + part.percent;
        else if (kind == Kind::soft)
            made.body.soft = made.body.soft + part.percent;
        else if (kind == Kind::liquid)
            made.body.liquid = made.body.liquid + part.percent;
    }
    made.rough = water > kMostWater       ? Rough::watery
                 : powder > kMostPowder   ? Rough::powdery
                 : unknown > kMostUnknown ? Rough::unknown
                                          : Rough::fits;
    made.firmness = firmness(made.body);
    return made;
}

Between between(std::int64_t firmness, const std::vector<Rung>& ladder) {
    Between found;
    for (std::size_t i = 0; i < ladder.size(); ++i) {
        const std::int64_t here = ladder[i].firmness;
        if (here == firmness) found.same = i;
        if (here < firmness && (!found.softer || here > ladder[*found.softer].firmness)) found.softer = i;
        if (here > firmness && (!found.firmer || here < ladder[*found.firmer].firmness)) found.firmer = i;
    }
    return found;
}

std::optional<result::Error> fault_of(const Rated& rated, const std::string& place) {
    if (auto fault = bounds::too_long(rated.title, kMostRatedBytes, place + "title")) return fault;
    if (rated.rating < 1 || rated.rating > kMostRating)
        return result::Error{result::Code::field_unknown_value, place + "rating",
                             std::to_string(rated.rating)};
    for (const auto& [percent, field] :
         {std::pair(rated.body.wax, "wax_percent"), std::pair(rated.body.hard, "hard_percent"),
          std::pair(rated.body.soft, "soft_percent"), std::pair(rated.body.liquid, "liquid_percent")})
        if (auto fault = bounds::outside(percent.grid, kMostBody, place + field)) return fault;
    return std::nullopt;
}

std::vector<Rated> rate(std::vector<Rated> list, Rated rated) {
    std::erase_if(list, [&](const Rated& one) { return one.title == rated.title && one.body == rated.body; });
    if (rated.rating == 0) return list;
    if (list.size() >= kMostRated) list.erase(list.begin());
    list.push_back(std::move(rated));
    return list;
}

std::optional<std::int64_t> expected_rating(std::int64_t asked, const std::vector<Rated>& list) {
    struct Pool {  // ratings that are taken together; their means rise
        std::int64_t low, high, sum, count;
    };
    std::vector<std::pair<std::int64_t, int>> sorted;
    for (const Rated& one : list)
        sorted.push_back({firmness(one.body), one.rating});
    sorting::stable(sorted, [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<Pool> pools;
    for (const auto& [at, rating] : sorted) {
        pools.push_back({at, at, rating, 1});
        while (pools.size() > 1) {
            const Pool last = pools.back();
            Pool& before = pools[pools.size() - 2];
            const bool rises = before.sum * last.count < last.sum * before.count && before.high < last.low;
            if (rises) break;
            before = {before.low, last.high, before.sum + last.sum, before.count + last.count};
            pools.pop_back();
        }
    }
    const auto mean = [](const Pool& pool) {
        return decimal::scale_nearest(pool.sum, decimal::kOne, pool.count);
    };
    for (std::size_t i = 0; i < pools.size(); ++i) {
        if (asked >= pools[i].low && asked <= pools[i].high) return mean(pools[i]);
        if (i == 0 || asked <= pools[i - 1].high || asked >= pools[i].low) continue;
        const std::int64_t from = mean(pools[i - 1]), to = mean(pools[i]);
        return from +
               decimal::scale_nearest(to - from, asked - pools[i - 1].high, pools[i].low - pools[i - 1].high);
    }
    return std::nullopt;
}

}  // namespace blend
