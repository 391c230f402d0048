// What the acts of a weighing come to, for the sources of weigh_out and nobody else.
#pragma once

#include <optional>
#include <vector>

#include "weigh_out.h"

namespace weigh_out {

inline constexpr quantity::Mass kNothing{0};
inline constexpr quantity::Mass kLargest{1'000'000 * decimal::kOne};  // 1 t, as a batch

struct Replay {
    const Plan& plan;
    std::vector<quantity::Percent> percents;
    std::vector<quantity::Mass> targets, poured;
    std::vector<char>
        kept;  // too much of it was accepted: it may grow with the batch, and is not asked about
    std::vector<char> closed;  // too little was: no more of it is added
    quantity::Mass batch, in_jug;
    std::optional<quantity::Mass> jug, first_fill;

    explicit Replay(const WeighOut& weighing);
    void take(const Act& act);

    std::size_t size() const { return targets.size(); }
    quantity::Mass tolerance(std::size_t line) const;
    bool is_done(std::size_t line) const;
    bool is_over(std::size_t line) const;
    quantity::Mass in_end(std::size_t line) const;
    // A line's share of a batch, to its scale's division; a capped one is rounded down.
    quantity::Mass share(std::size_t line, quantity::Percent percent, quantity::Mass of) const;
    void retarget();  // every line anew from percents and batch

    // Percents with one line at another; empty where nothing gives way.
    std::vector<quantity::Percent> adjusted(std::size_t line, quantity::Percent percent, bool rest) const;
};

// Shares that add to exactly 100; none for nothing.
std::vector<quantity::Percent> percents_of(const std::vector<quantity::Mass>& masses);

}  // namespace weigh_out
