// What a batch costs, to the minor unit: by line, phase, batch and unit, with containers, labels, boxes, work
// and overhead. Exact costs are kept in fractions of a minor unit; whole ones are shared out from the top by
// largest remainder, so that every level adds to the one above it. What has no price is said and counted as
// nothing: then the sums are "at least".
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "batch.h"
#include "catalogue.h"
#include "formula.h"
#include "money.h"
#include "price.h"
#include "quantity.h"
#include "result.h"

namespace cost {

inline constexpr std::int64_t kFine = 100'000;                      // of one minor unit
inline constexpr std::int64_t kMostFine = 400'000'000'000 * kFine;  // of one line or kind
inline constexpr quantity::Mass kWithoutBatch{1000 *
                                              decimal::kOne};  // what is reckoned where no batch is said

enum class Kind { ingredients, containers, labels, boxes, work, overhead };
inline constexpr int kKinds = static_cast<int>(Kind::overhead) + 1;
std::string_view name(Kind kind);  // in JSON and in the keys of words

enum class Why {
    no_price,
    no_rate,      // it is priced in a currency that has none; what: its code
    no_density,   // it is priced by volume
    strained_out  // of a made part: what was strained out again; its cost is not known from the part
};
std::string_view name(Why why);
struct Missing {
    Kind kind = Kind::ingredients;
    std::size_t at = 0;  // the line; of containers the kind, as the batch has them
    std::string what;    // id or name: of the line, or of what the line's made part holds
    Why why = Why::no_price;
    bool operator==(const Missing&) const = default;
};

struct Line {
    quantity::Mass grams;
    quantity::Percent known;  // of its weight
    std::int64_t fine = 0;    // what is known of its cost
    money::Amount amount;     // its part of the batch
    bool operator==(const Line&) const = default;
};
struct Phase {
    std::string id;
    money::Amount amount;
    bool operator==(const Phase&) const = default;
};
struct Units {              // of one kind of container
    std::string container;  // "" for portions by weight
    std::int64_t count = 0;
    quantity::Mass each;
    money::Amount amount;  // all of them
    money::Amount one;     // of one, to the nearest minor unit: what a price is put on
    money::Amount low;  // of one, rounded down; so many of them cost one minor unit more, so that they add up
    std::int64_t more = 0;
    money::Amount containers;  // of `amount`
    bool operator==(const Units&) const = default;
};

struct Used {  // a rate that was reckoned with
    std::string from, to, day, source;
    std::int64_t amount = 0, gives = 0;
    bool operator==(const Used&) const = default;
};

struct Cost {
    std::string currency;
    quantity::Mass total;              // weighed
    bool batch = false;                // of the recipe's batch; else of kWithoutBatch, and ingredients alone
    std::vector<Line> lines;           // of the formula, in its order
    std::vector<Phase> phases;         // add to the ingredients
    money::Amount kinds[kKinds];       // add to `amount`
    quantity::Percent shares[kKinds];  // of it, to 0.01 %; add to 100 where there is any
    money::Amount amount;
    money::Amount lost;                  // of the ingredients: what stays in jug and spatula
    std::vector<Units> units;            // add to `amount`; none: nothing is filled
    std::int64_t count = 0;              // of all units
    quantity::Percent known;             // share of the weight that has a price; 100 only where all of it has
    std::optional<money::Amount> fixed;  // as the book says, in this currency
    std::vector<Missing> missing;
    std::vector<Used> rates;
    bool operator==(const Cost&) const = default;
};

struct Asked {
    const formula::Formula& formula;
    const std::vector<quantity::Percent>& percents;
    const batch::Batch* batch;          // null: none
    const catalogue::Catalogue& known;  // with the recipe's own ingredients laid over
    std::string_view recipe;            // id in the book
};
// field_missing where no currency is said; number_too_large where a sum goes beyond what is kept.
result::Result<Cost> of(const Asked& asked, const price::Book& book);

struct Need {  // of one ingredient of the formula
    std::size_t line = 0;
    quantity::Mass grams;
};
struct PerHead {
    std::string currency;
    money::Amount used;  // ingredients, containers and labels that go into it
    money::Amount low;   // of one person; so many of them pay one minor unit more
    std::int64_t more = 0;
    std::optional<money::Amount> bought;  // where packs are bought whole; none: not every one has a price
    quantity::Percent known;              // as of a cost
    std::vector<Missing> missing;
    bool operator==(const PerHead&) const = default;
};
struct Class {
    const formula::Formula& formula;
    const std::vector<Need>& needs;  // of each ingredient in all
    std::string_view container;      // that each unit is filled into; "" none
    std::int64_t units = 0, people = 1;
    const catalogue::Catalogue& known;
    std::string_view recipe;
};
result::Result<PerHead> per_head(const Class& of, const price::Book& book);

}  // namespace cost
