// What to do about a line that is too small for its scale: a bigger batch, a finer scale, or a mix made ahead
// in a liquid oil. Each is worked out in full and tried before it is offered: taken, it removes the finding.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "batch.h"
#include "catalogue.h"
#include "quantity.h"
#include "result.h"
#include "scales.h"
#include "words.h"
#include "workspace.h"

namespace remedy {

enum class Kind { bigger_batch, finer_scale, mix_ahead };

struct Mix {
    std::size_t oil = 0;         // line of the liquid oil that gives way
    quantity::Percent strength;  // of the small ingredient in the mix
    quantity::Mass small, with;  // how much of it is mixed into how much of the oil
    quantity::Mass weigh;        // of the mix, for the batch
    quantity::Mass oil_left;     // what the oil's own line weighs then
    // The oil comes out of a hot phase and goes in cold: °C the batch would fall to, from what it has then.
    // Only where something in it sets; both parts taken to hold heat alike (an estimate).
    std::optional<std::int64_t> hot_c, cooled_c;
    bool operator==(const Mix&) const = default;
};

struct Remedy {
    Kind kind = Kind::bigger_batch;
    std::size_t line = 0;     // index into the formula
    quantity::Mass total;     // bigger batch: what is weighed in all
    quantity::Mass division;  // finer scale: its division
    std::optional<Mix> mix;   // mix ahead
    bool operator==(const Remedy&) const = default;
};

// A drop by so much or more may set the batch (an estimate; trials decide).
inline constexpr std::int64_t kMuchColder = 5 * decimal::kOne;  // °C

// For one line of `made`; `catalogue` with the recipe's own ingredients laid over it.
std::vector<Remedy> remedies_for(const workspace::Recipe& recipe, const batch::Batch& made, std::size_t line,
                                 const catalogue::Catalogue& catalogue, const scales::Bench& bench);

// The recipe with the remedy taken. A mix becomes an own ingredient made of its two parts, under `mix_name`
// (in the person's language); its line keeps the phase, the oil's line gives way by what the mix brings.
result::Result<workspace::Recipe> take(const workspace::Recipe& recipe, const Remedy& remedy,
                                       const catalogue::Catalogue& catalogue, const std::string& mix_name);

// The remedy as a sentence, and as the few words of a button; names as the caller shows them.
std::string say(const words::Table& table, const Remedy& remedy, std::string_view subject,
                std::string_view oil);
std::string say_short(const words::Table& table, const Remedy& remedy, std::string_view subject,
                      std::string_view oil);

// What is to be mixed ahead for the made parts of a batch: as little as its scale still reads, and enough.
struct Ahead {
    std::size_t line = 0;               // the line that takes the mix
    quantity::Mass total;               // to be mixed
    std::vector<quantity::Mass> parts;  // in the order of the ingredient's parts; add to total exactly
    bool operator==(const Ahead&) const = default;
};
std::vector<Ahead> mixed_ahead(const workspace::Recipe& recipe, const batch::Batch& made,
                               const catalogue::Catalogue& catalogue);

}  // namespace remedy
