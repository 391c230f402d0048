#include "record_trace.h"

#include <algorithm>

#include "decimal.h"
#include "record_number.h"
#include "sorting.h"

namespace record {
namespace {

using quantity::Mass;
using quantity::Percent;

bool is_one_of(const std::vector<std::string>& numbers, std::string_view lot) {
    return !lot.empty() && std::any_of(numbers.begin(), numbers.end(),
                                       [&](const std::string& one) { return same_number(one, lot); });
}

// What the batch took of a lot; no lines: nothing.
Use use_of(const State& state, std::string_view ingredient, const std::vector<std::string>& numbers) {
    Use use;
    use.grams = Mass{};
    use.other_ingredient = true;
    for (std::size_t i = 0; i < state.lines.size(); ++i) {
        const Weighed& line = state.lines[i];
        if (!is_one_of(numbers, line.lot)) continue;
        use.lines.push_back(i);
        if (ingredient.empty() || line.ingredient.empty() || line.ingredient == ingredient)
            use.other_ingredient = false;
        if (use.grams && line.weighed)
            use.grams = *use.grams + *line.weighed;
        else
            use.grams.reset();
    }
    return use;
}

}  // namespace

std::vector<Use> uses_of(const std::vector<const Record*>& records, std::string_view ingredient,
                         const std::vector<std::string>& numbers) {
    std::vector<State> states;
    for (const Record* one : records)
        states.push_back(state_of(*one));
    std::vector<Use> found(records.size());
    std::vector<std::size_t> to_follow;
    const auto look_for = [&](std::string_view of, const std::vector<std::string>& lots,
                              const std::string& by_way_of) {
        for (std::size_t i = 0; i < records.size(); ++i) {
            if (!found[i].lines.empty()) continue;
            Use use = use_of(states[i], of, lots);
            if (use.lines.empty()) continue;
            use.record = i;
            use.by_way_of = by_way_of;
            found[i] = std::move(use);
            to_follow.push_back(i);
        }
    };
    look_for(ingredient, numbers, "");
    for (std::size_t next = 0; next < to_follow.size(); ++next) {
        const std::size_t through = to_follow[next];
        look_for(records[through]->makes, {states[through].number}, states[through].number);
    }
    std::erase_if(found, [](const Use& use) { return use.lines.empty(); });
    return found;
}

std::optional<Loss> usual_loss(const std::vector<const Record*>& newest_first, std::string_view recipe) {
    std::vector<std::int64_t> losses;
    for (const Record* one : newest_first) {
        if (one->recipe != recipe || recipe.empty()) continue;
        if (const auto loss = state_of(*one).loss) losses.push_back(loss->grid);
        if (losses.size() == kMostForLoss) break;
    }
    if (losses.size() < kLeastForLoss) return std::nullopt;
    sorting::stable(losses);
    const std::size_t middle = losses.size() / 2;
    const std::int64_t twice =
        losses.size() % 2 == 1 ? 2 * losses[middle] : losses[middle - 1] + losses[middle];
    constexpr std::int64_t kTenth = decimal::kOne / 10;
    return Loss{Percent{decimal::scale_nearest(twice, 1, 2 * kTenth) * kTenth}, losses.size()};
}

}  // namespace record
