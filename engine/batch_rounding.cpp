// Rounding to several scales at once. Whole numbers on the grid throughout.
#include "batch_rounding.h"

#include <algorithm>
#include <map>
#include <numeric>

#include "sorting.h"

namespace batch {
namespace {

using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;
using result::Code;
using result::Error;
using result::Result;

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

// The most steps of its scale each line may weigh in a batch of `total`; empty when there are no caps. Lines
// of one ingredient share its cap: what is left above their whole steps goes to the larger remainders first,
// one step each, as the sharing-out itself would.
std::vector<std::int64_t> most_steps(const Wanted& wanted, Mass total) {
    std::vector<std::int64_t> most;
    if (wanted.caps.empty()) return most;
    for (const Mass division : wanted.divisions)
        most.push_back(total.grid / division.grid + 1);  // no bound
    for (const Cap& cap : wanted.caps) {
        std::int64_t room = decimal::scale_down(total.grid, cap.most.grid, kHundred.grid);
        std::vector<std::int64_t> rest(wanted.divisions.size());
        for (const std::size_t i : cap.lines) {
            const std::int64_t step = wanted.divisions[i].grid;
            const std::int64_t exact = decimal::scale_down(total.grid, wanted.percents[i].grid, step);
            most[i] = exact / kHundred.grid;
            rest[i] = exact % kHundred.grid;
            room -= most[i] * step;
        }
        std::vector<std::size_t> takers = cap.lines;
        sorting::stable(takers, [&](std::size_t a, std::size_t b) { return rest[a] > rest[b]; });
        for (const std::size_t i : takers) {
            if (room < wanted.divisions[i].grid) continue;
            most[i] += 1;
            room -= wanted.divisions[i].grid;
        }
    }
    return most;
}

struct Group {  // the lines that are rounded to one division
    std::int64_t division = 0;
    std::vector<std::size_t> lines;
    std::vector<std::int64_t> weights, most;
    Percent share;
};

std::vector<Group> groups_of(const Wanted& wanted) {  // finest first
    std::map<std::int64_t, Group> by_division;
    for (std::size_t i = 0; i < wanted.percents.size(); ++i) {
        if (wanted.percents[i] <= Percent{0}) continue;
        Group& group = by_division[wanted.divisions[i].grid];
        group.division = wanted.divisions[i].grid;
        group.lines.push_back(i);
        group.weights.push_back(wanted.percents[i].grid);
        group.share = group.share + wanted.percents[i];
    }
    std::vector<Group> groups;
    for (auto& [division, group] : by_division)
        groups.push_back(std::move(group));
    return groups;
}

std::int64_t steps(Mass mass, std::int64_t division, bool up) {
    return std::max<std::int64_t>(
        0, up ? decimal::scale_up(mass.grid, 1, division) : decimal::scale_down(mass.grid, 1, division));
}

}  // namespace

std::vector<Cap> caps_of(const formula::Formula& formula, const catalogue::Catalogue& catalogue,
                         std::string_view product) {
    std::vector<Cap> caps;
    std::vector<bool> done(formula.lines.size(), false);
    for (std::size_t first = 0; first < formula.lines.size(); ++first) {
        const std::string& id = formula.lines[first].ingredient;
        if (done[first] || id.empty()) continue;
        const catalogue::Ingredient* ingredient = catalogue::find_ingredient(catalogue, id);
        const auto most = ingredient == nullptr ? std::nullopt : cap_of(*ingredient, product, catalogue);
        if (!most) continue;
        caps.push_back({{}, *most});
        for (std::size_t i = first; i < formula.lines.size(); ++i) {
            if (formula.lines[i].ingredient != id) continue;
            done[i] = true;
            caps.back().lines.push_back(i);
        }
    }
    return caps;
}

Result<Rounded> rounded(const Wanted& wanted) {
    std::vector<Group> groups = groups_of(wanted);
    if (groups.empty()) return Error{Code::formula_empty, "", ""};
    const std::int64_t coarsest = groups.back().division;
    const auto whole = [&](Mass mass) { return steps(mass, coarsest, wanted.may_exceed); };

    // What the caps are measured by: the total where it is known already, else the least it may become.
    const Mass least = groups.size() == 1  ? Mass{whole(wanted.asked) * coarsest}
                       : wanted.may_exceed ? wanted.asked
                                           : Mass{std::max<std::int64_t>(0, wanted.asked.grid - coarsest)};
    const std::vector<std::int64_t> most = most_steps(wanted, least);
    Rounded out;
    out.grams.resize(wanted.percents.size());
    for (Group& group : groups) {
        if (!most.empty())
            for (const std::size_t i : group.lines)
                group.most.push_back(most[i]);
        std::int64_t units = 0;
        if (&group == &groups.back()) {
            units = whole(wanted.asked - out.total);
        } else {
            units =
                decimal::scale_nearest(quantity::share_of(wanted.asked, group.share).grid, 1, group.division);
            if (!group.most.empty())
                units =
                    std::min(units, std::accumulate(group.most.begin(), group.most.end(), std::int64_t{0}));
        }
        const auto parts = decimal::share_out(units, group.weights, group.most);
        if (!parts) return parts.error();
        for (std::size_t i = 0; i < group.lines.size(); ++i)
            out.grams[group.lines[i]] = Mass{(*parts)[i] * group.division};
        out.total = out.total + Mass{units * group.division};
    }
    return out;
}

}  // namespace batch
