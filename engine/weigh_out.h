// A batch being weighed: what was meant, what was poured and decided so far, in order; and what stands then.
// Everything follows from the plan and the acts, so that what is kept says all and a slip is taken back by
// leaving the last act out. Nothing is ever asked to be taken out of the jug. Knows no recipe and no clock;
// workspace_weigh_out makes one from a recipe, and what becomes of it.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "formula.h"
#include "quantity.h"
#include "result.h"
#include "scales.h"

namespace weigh_out {

struct Line {                   // of the formula, as it stood when the weighing began
    std::string ingredient;     // id, or ""
    std::string name;           // as it was called
    std::string phase, role;    // role: of the catalogue, "" for a name alone
    bool rest = false;          // the rest line
    bool capped = false;        // never rounded up, and right to one division: oils, preservatives, own caps
    quantity::Percent percent;  // as the formula says
    quantity::Mass grams;       // as the batch has it
    quantity::Mass division;    // of the scale it is weighed on
    std::optional<quantity::Percent> most;  // a cap of its own
    std::optional<quantity::Mass> have;     // at hand in all for this batch; nothing: not known
    bool operator==(const Line&) const = default;
};

struct Plan {
    std::vector<Line> lines;
    std::vector<formula::Phase> phases;
    quantity::Mass division{100};       // of the batch
    quantity::Mass fill, each;          // what all containers take, and one of the first kind
    std::int64_t containers = 0;        // in all; 0: none said
    quantity::Percent loss;             // what stays in the jug
    std::optional<quantity::Mass> jug;  // its empty weight
    std::optional<quantity::Mass> pot;  // the most it holds
    bool operator==(const Plan&) const = default;
};

enum class Deed {
    pour,        // line, amount that went in, by what the scale showed
    proportion,  // the whole batch to `amount`, every line in proportion
    take_up,     // `other` takes up what `line` has too much or too little of
    accept,      // the line stays as it is
    adjust,  // `line` to `percent`, the batch to `amount`; `rest`: the rest line gives way, else the others
    jug,     // another jug, of this empty weight; what follows goes into that
    fill     // the first container took this much
};
struct Act {
    Deed deed = Deed::pour;
    std::size_t line = 0, other = 0;
    quantity::Mass amount;
    quantity::Percent percent;
    bool rest = false;   // of adjust: see there; of proportion: there is no more of the line
    bool zeroed = true;  // of a pour: how the scale was read, and what it showed
    quantity::Mass shown;
    std::string at;  // instant, UTC; "" not known
    bool operator==(const Act&) const = default;
};

struct Timer {
    std::string what;     // the host's name for it
    std::string started;  // instant, UTC
    std::int64_t minutes = 0;
    bool operator==(const Timer&) const = default;
};
struct Lot {
    std::string lot, best_before;
    bool operator==(const Lot&) const = default;
};

struct WeighOut {
    Plan plan;
    std::vector<Act> acts;
    std::size_t at = 0;                   // the line that is before the person
    std::optional<quantity::Mass> typed;  // what the scale shows, not said to be in yet
    bool zeroed = true;                   // how it is read
    std::vector<std::string> ticked;      // what is done of the order at the bench
    std::vector<Timer> timers;
    std::vector<Lot> lots;  // of each line; shorter: not said
    bool operator==(const WeighOut&) const = default;
};

inline constexpr std::size_t kMostActs = 2000;
inline constexpr quantity::Percent kTolerance = quantity::percent(1);  // of a line (common practice)

struct Row {
    quantity::Percent percent;            // that is meant now
    quantity::Mass target, poured, left;  // left: to add
    quantity::Mass tolerance;
    bool done = false;  // right within the tolerance, or left as it is
    bool over = false;  // too much of it, and nothing decided yet
    bool operator==(const Row&) const = default;
};
struct Standing {
    std::vector<Row> rows;
    quantity::Mass batch;                      // that the percents are of
    quantity::Mass total;                      // in all when everything asked for is in
    quantity::Mass poured;                     // in all so far
    quantity::Mass in_jug;                     // so far, of the jug in use
    std::optional<quantity::Mass> jug;         // its empty weight
    std::optional<quantity::Mass> first_fill;  // what the first container took
    std::vector<quantity::Percent> percents;   // of each line in the end; add to exactly 100
    bool finished = false;                     // every line is done
    bool operator==(const Standing&) const = default;
};
Standing standing_of(const WeighOut& weighing);

// Lines in the order they are best weighed: phase by phase, waxes first within each (common practice).
std::vector<std::size_t> order(const Plan& plan);
// The first line after `from` in that order that is not done; nothing when all are.
std::optional<std::size_t> next(const WeighOut& weighing, const Standing& standing, std::size_t from);

// Where the rest of a line is weighed now, and what the scale shows when it is in.
struct Shows {
    scales::Place place;
    quantity::Mass zeroed;
    std::optional<quantity::Mass> not_zeroed;  // jug and all; nothing where that is not known
    bool operator==(const Shows&) const = default;
};
Shows shows(const WeighOut& weighing, const Standing& standing, std::size_t line,
            const std::vector<scales::Scale>& bench);

// What went in, by what the scale showed. line_missing; number_negative: it shows less than was there before;
// field_missing: read without zeroing, and the jug's weight is not known; too_many.
result::Result<WeighOut> pour(WeighOut weighing, std::size_t line, quantity::Mass shown, bool zeroed,
                              std::string at);

WeighOut take_back(WeighOut weighing);                                 // the last act
WeighOut fill(WeighOut weighing, quantity::Mass net, std::string at);  // one said just before is corrected
WeighOut take_jug(WeighOut weighing, quantity::Mass empty, std::string at);

// What a file may hold: indices within the lines, amounts within bounds. The place of the first fault.
std::optional<result::Error> fault_of(const WeighOut& weighing);

}  // namespace weigh_out
