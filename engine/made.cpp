// Splitting and making. Shares are integers on the grid, shared out by largest remainder wherever something
// is split, so that they add up exactly; each step down may cost a share one step of the grid.
#include "made.h"

#include <algorithm>
#include <utility>

#include "sorting.h"

namespace made {
namespace {

using catalogue::Ingredient;
using quantity::kHundred;
using quantity::Mass;
using quantity::Percent;
using result::Code;
using result::Error;

const Ingredient* find(const std::vector<Ingredient>& own, std::string_view id) {
    for (const Ingredient& one : own)
        if (one.id == id) return &one;
    return nullptr;
}

std::string name_of(const Ingredient& own) {
    return own.name.empty() ? own.id : own.name;
}

Percent sum_of(const std::vector<catalogue::Part>& parts) {
    Percent sum;
    for (const catalogue::Part& part : parts)
        sum = sum + part.percent;
    return sum;
}

using Path = std::vector<const Ingredient*>;

// The names from where the loop closes, a line each: "A\nB\nA".
Error loop(const Path& path, const Ingredient& again) {
    std::string names;
    for (auto at = std::find(path.begin(), path.end(), &again); at != path.end(); ++at)
        names += name_of(**at) + "\n";
    return {Code::made_loop, "ingredients", names + name_of(again)};
}

struct Splitter {
    const catalogue::Catalogue& shipped;
    const std::vector<Ingredient>& own;
    std::vector<std::int64_t> due;  // of each own entry: what is still to be split
    Split split;

    // Whether this entry is split; a shipped id is what is shipped.
    bool splits(const Ingredient& mine) const {
        const Percent sum = sum_of(mine.parts);
        return sum > Percent{0} && sum <= kHundred && !catalogue::find_ingredient(shipped, mine.id);
    }

    void add(const std::string& ingredient, const std::string& name, std::int64_t grid) {
        if (grid == 0) return;
        for (Share& share : split.shares) {
            const bool same = share.ingredient == ingredient && (!ingredient.empty() || share.name == name);
            if (same) return void(share.percent.grid += grid);
        }
        split.shares.push_back({ingredient, name, {grid}});
    }

    void take(const std::string& id, const std::string& name, std::int64_t grid) {
        const Ingredient* mine = id.empty() ? nullptr : find(own, id);
        if (mine != nullptr && splits(*mine)) {
            due[static_cast<std::size_t>(mine - own.data())] += grid;
            return;
        }
        const bool says_nonsense =
            mine != nullptr && !mine->parts.empty() && catalogue::find_ingredient(shipped, id) == nullptr;
        if (says_nonsense) split.unsplit.grid += grid;
        add(id, name, grid);
    }

    std::optional<Error> part(std::size_t at) {
        const Ingredient& mine = own[at];
        std::vector<std::int64_t> weights;
        for (const catalogue::Part& part : mine.parts)
            weights.push_back(part.percent.grid);
        weights.push_back((kHundred - sum_of(mine.parts)).grid);
        const auto shares = decimal::share_out(std::exchange(due[at], 0), weights);
        if (!shares) return shares.error();
        for (std::size_t i = 0; i < mine.parts.size(); ++i)
            take(mine.parts[i].ingredient, "", (*shares)[i]);
        split.unsplit.grid += shares->back();
        add(mine.id, "", shares->back());
        return std::nullopt;
    }
};

// Depth first over all. `order` gets every entry after what it holds; `depth` counts made parts within.
struct Walk {
    const std::vector<Ingredient>& own;
    Path path;
    std::vector<const Ingredient*> order;
    std::vector<std::size_t> depth;

    std::optional<Error> into(const Ingredient& from) {
        if (std::find(path.begin(), path.end(), &from) != path.end()) return loop(path, from);
        std::size_t& mine = depth[static_cast<std::size_t>(&from - own.data())];
        if (mine != 0) return std::nullopt;
        path.push_back(&from);
        std::size_t deepest = 0;
        for (const catalogue::Part& part : from.parts) {
            const Ingredient* next = find(own, part.ingredient);
            if (next == nullptr) continue;
            if (auto fault = into(*next)) return fault;
            deepest = std::max(deepest, depth[static_cast<std::size_t>(next - own.data())]);
        }
        path.pop_back();
        mine = deepest + 1;
        order.push_back(&from);
        return std::nullopt;
    }

    std::optional<Error> over_all() {
        for (const Ingredient& one : own)
            if (auto fault = into(one)) return fault;
        for (std::size_t i = 0; i < own.size(); ++i)
            if (depth[i] > kDeepest && !own[i].parts.empty())
                return Error{Code::made_too_deep, "ingredients[" + std::to_string(i) + "]",
                             std::to_string(kDeepest)};
        return std::nullopt;
    }
};

Walk walk_of(const std::vector<Ingredient>& own) {
    return {own, {}, {}, std::vector<std::size_t>(own.size(), 0)};
}

// A cap of 0.5 % on a part that is a tenth of the whole leaves 5 % of the whole; rounded down, at most 100.
void carry_caps(const Ingredient& part, Percent share, std::map<std::string, Percent>& caps) {
    for (const auto& [where, cap] : part.max_percent) {
        const Percent whole{
            std::min(kHundred.grid, decimal::scale_down(cap.grid, kHundred.grid, share.grid))};
        const auto [at, is_new] = caps.emplace(where, whole);
        if (!is_new) at->second = std::min(at->second, whole);
    }
}

// "A, B" by market, where every part has a name there; the larger part first.
void carry_inci(std::vector<catalogue::Part> parts, const catalogue::Catalogue& known,
                std::map<std::string, std::string>& inci) {
    sorting::stable(parts, [](const auto& a, const auto& b) { return a.percent > b.percent; });
    for (const char* market : {"eu", "us"}) {
        std::string names;
        for (const catalogue::Part& part : parts) {
            const Ingredient* one = catalogue::find_ingredient(known, part.ingredient);
            const auto name = one == nullptr ? inci.end() : one->inci.find(market);
            if (one == nullptr || name == one->inci.end() || name->second.empty()) return inci.clear();
            if (names.find(name->second) == std::string::npos)
                names += (names.empty() ? "" : ", ") + name->second;
        }
        if (!names.empty()) inci[market] = names;
    }
}

}  // namespace

result::Result<std::vector<Percent>> percents_of_product(const formula::Formula& formula) {
    result::Result<std::vector<Percent>> percents = formula::percents(formula);
    if (!percents) return percents;
    std::vector<std::int64_t> weights;
    bool strained = false, stays = false;
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        weights.push_back(formula.lines[i].strained ? 0 : (*percents)[i].grid);
        strained = strained || formula.lines[i].strained;
        stays = stays || weights.back() > 0;
    }
    if (!strained) return percents;
    if (!stays) return Error{Code::made_empty, "lines", ""};
    const auto shares = decimal::share_out(kHundred.grid, weights);
    if (!shares) return shares.error();
    for (std::size_t i = 0; i < shares->size(); ++i)
        percents.value()[i] = {(*shares)[i]};
    return percents;
}

// Holders are split before what they hold, each once with all that is due of it: the work is that of reading
// the parts, however they are woven into one another.
result::Result<Split> split(const formula::Formula& formula, const std::vector<Percent>& percents,
                            const catalogue::Catalogue& shipped, const std::vector<Ingredient>& own) {
    Walk walk = walk_of(own);
    if (auto fault = walk.over_all()) return *fault;
    Splitter splitter{shipped, own, std::vector<std::int64_t>(own.size(), 0), {}};
    for (std::size_t i = 0; i < formula.lines.size() && i < percents.size(); ++i)
        splitter.take(formula.lines[i].ingredient, formula.lines[i].name, percents[i].grid);
    for (auto at = walk.order.rbegin(); at != walk.order.rend(); ++at) {
        const auto index = static_cast<std::size_t>(*at - own.data());
        if (splitter.due[index] == 0) continue;
        if (auto fault = splitter.part(index)) return *fault;
    }
    return splitter.split;
}

std::optional<Error> fault_of_parts(const std::vector<Ingredient>& own) {
    return walk_of(own).over_all();
}

result::Result<Ingredient> ingredient_of(const formula::Formula& formula, catalogue::MadeAs as, Percent yield,
                                         const catalogue::Catalogue& known) {
    const auto percents = formula::percents(formula);
    if (!percents) return percents.error();
    if (yield <= Percent{0} || yield > kHundred)
        return Error{Code::yield_invalid, "made.yield_percent", decimal::print(yield.grid)};
    Ingredient made;
    made.own = true;
    made.made = catalogue::Made{as, yield, {}};
    std::vector<std::int64_t> weights;
    for (std::size_t i = 0; i < formula.lines.size(); ++i) {
        const formula::Line& line = formula.lines[i];
        const std::string said = line.ingredient.empty() ? line.name : line.ingredient;
        if ((*percents)[i] <= Percent{0}) continue;
        if (line.strained) {
            const Ingredient* plant = catalogue::find_ingredient(known, line.ingredient);
            made.made->infused_with.push_back(plant != nullptr && !plant->name.empty() ? plant->name
                                              : line.name.empty()                      ? said
                                                                                       : line.name);
            continue;
        }
        const auto same = std::find_if(made.parts.begin(), made.parts.end(),
                                       [&](const catalogue::Part& part) { return part.ingredient == said; });
        if (same != made.parts.end()) {
            weights[static_cast<std::size_t>(same - made.parts.begin())] += (*percents)[i].grid;
            continue;
        }
        made.parts.push_back({said, {}});
        weights.push_back((*percents)[i].grid);
    }
    if (made.parts.empty()) return Error{Code::made_empty, "lines", ""};
    const auto shares = decimal::share_out(kHundred.grid, weights);
    if (!shares) return shares.error();
    Percent most;
    for (std::size_t i = 0; i < made.parts.size(); ++i) {
        made.parts[i].percent.grid = (*shares)[i];
        const Ingredient* part = catalogue::find_ingredient(known, made.parts[i].ingredient);
        if (part == nullptr) continue;
        if (made.parts[i].percent > most) made.role = part->role, most = made.parts[i].percent;
        if (made.parts[i].percent > Percent{0}) carry_caps(*part, made.parts[i].percent, made.max_percent);
    }
    if (made.made->infused_with.empty()) carry_inci(made.parts, known, made.inci);
    return made;
}

result::Result<Mass> to_weigh(const formula::Formula& formula, Percent yield, Mass wanted) {
    const auto percents = formula::percents(formula);
    if (!percents) return percents.error();
    if (yield <= Percent{0} || yield > kHundred)
        return Error{Code::yield_invalid, "made.yield_percent", decimal::print(yield.grid)};
    Percent stays;
    for (std::size_t i = 0; i < formula.lines.size(); ++i)
        if (!formula.lines[i].strained) stays = stays + (*percents)[i];
    if (stays <= Percent{0}) return Error{Code::made_empty, "lines", ""};
    const std::int64_t put_in = decimal::scale_up(wanted.grid, kHundred.grid, yield.grid);
    return Mass{decimal::scale_up(put_in, kHundred.grid, stays.grid)};
}

}  // namespace made
