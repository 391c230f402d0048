// A formula: lines in percent by weight, in phases, with at most one rest line; and the edits a person makes
// on it. Every edit takes a formula and gives the changed one or says why not; the formula given is never
// half changed.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity.h"
#include "result.h"

namespace formula {

struct Hold {  // the line follows from a constituent that is to stay the same (worked out by the checks)
    std::string constituent;
    quantity::Percent percent;
    bool operator==(const Hold&) const = default;
};

struct Line {
    std::string ingredient;     // catalogue id, or ""
    std::string name;           // what was written, when the catalogue does not have it
    quantity::Percent percent;  // of the rest line: 0; what it comes to is worked out
    bool rest = false;
    std::string phase = "A";
    bool locked = false;
    std::optional<Hold> hold;
    bool strained = false;  // of a made part: what is strained out again, the plant of an infusion
    bool operator==(const Line&) const = default;
};

struct Phase {
    std::string id = "A";
    std::optional<std::int64_t> hold_c;       // °C on the grid of decimal.h: keep it there until clear
    std::optional<std::int64_t> add_below_c;  // add once the batch is under this
    bool operator==(const Phase&) const = default;
};

struct Step {
    std::string phase;  // "" when it belongs to no phase
    std::string text;
    std::optional<std::int64_t> minutes;  // whole minutes
    bool operator==(const Step&) const = default;
};

struct Formula {
    std::vector<Phase> phases;  // in the order they are made; every line's phase is one of them
    std::vector<Line> lines;    // grouped by phase in that order
    bool operator==(const Formula&) const = default;
};

inline constexpr std::size_t kMostLines = 100;
inline constexpr std::size_t kMostPhases = 12;
inline constexpr std::size_t kMostNameBytes = 80;

using Changed = result::Result<Formula>;

Changed add_line(Formula formula, Line line);  // at the end of its phase; makes the phase if new
Changed set_percent(Formula formula, std::size_t line, quantity::Percent percent);
Changed set_ingredient(Formula formula, std::size_t line, std::string ingredient, std::string name);
Changed set_rest(Formula formula, std::size_t line,
                 bool rest);  // making one the rest line frees the one before
Changed set_locked(Formula formula, std::size_t line, bool locked);
Changed set_strained(Formula formula, std::size_t line, bool strained);
Changed set_hold(Formula formula, std::size_t line, std::optional<Hold> hold);
Changed move_line(Formula formula, std::size_t from,
                  std::size_t to);  // takes the phase of its new neighbours
Changed move_to_phase(Formula formula, std::size_t line, std::string_view phase);
Changed remove_line(Formula formula, std::size_t line);
Changed add_phase(Formula formula, Phase phase);
Changed set_phase(Formula formula, std::size_t phase, Phase changed);  // renaming takes the lines along
Changed remove_phase(Formula formula, std::string_view phase);         // only when no line is in it

// A line turned from rest into a plain one keeps what it came to.

std::optional<std::size_t> rest_line(const Formula& formula);
quantity::Percent stated_sum(const Formula& formula);  // all lines but the rest line

// Every line's percent with the rest line filled in; adds to exactly 100.
// formula_empty, sum_not_hundred (detail: the sum), sum_over_hundred (detail: the sum), rest_twice.
result::Result<std::vector<quantity::Percent>> percents(const Formula& formula);

// What a stranger's or a file's formula must satisfy: phases unique and known, names short, at most one rest
// line, no negative percent, counts within bounds. Place: "lines[2].percent".
result::Result<Formula> checked(Formula formula);

}  // namespace formula
