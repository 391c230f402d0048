// Across records: which batches a lot went into and where their units went, by way of made parts too; and
// what was lost on the way in earlier batches of a recipe.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "record.h"

namespace record {

struct Use {
    std::size_t record = 0;               // of those given
    std::vector<std::size_t> lines;       // of its state
    std::optional<quantity::Mass> grams;  // over them; none: not known
    std::string by_way_of;                // batch number of the made part that holds the lot; "" it itself
    bool other_ingredient = false;        // the lot's number stands at another ingredient
    bool operator==(const Use&) const = default;
};

// `numbers`: of one lot, with those it was known by earlier; compared as same_number does. A number that
// stands at another ingredient is told too: ids change when an ingredient is copied, and a recall may miss
// nothing.
// "" for an ingredient fits any. In the order of the records, a batch that holds the lot itself only so.
std::vector<Use> uses_of(const std::vector<const Record*>& records, std::string_view ingredient,
                         const std::vector<std::string>& numbers);

struct Loss {
    quantity::Percent median;  // nearest 0.1 %
    std::size_t of = 0;        // records
    bool operator==(const Loss&) const = default;
};
inline constexpr std::size_t kLeastForLoss = 3, kMostForLoss = 7;
// Of the last records of the recipe whose loss is known, newest first as given; none where they are fewer
// than kLeastForLoss.
std::optional<Loss> usual_loss(const std::vector<const Record*>& newest_first, std::string_view recipe);

}  // namespace record
