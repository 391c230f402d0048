// A remark of the checks: code, severity, the line it concerns, its figures, limit, source and standing.
// The sentence is made from the table of words (key "finding.<code>"), so screens, papers and mirror word it
// alike.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "source.h"
#include "words.h"

namespace finding {

enum class Severity { note, caution, stop };

enum class Code {
    sum_not_hundred,  // value: the sum in %
    rest_negative,    // value: what would be left, below zero
    formula_empty,
    line_empty,            // a line at 0 %
    line_twice,            // the same ingredient on two lines of one phase
    ingredient_unknown,    // a name that is not in the catalogue: checks on it cannot be made
    usual_range_left,      // value, limit: percent against the usual range
    line_rounds_to_zero,   // value: grams asked
    line_error_large,      // value: one step of the scale in % of the line, limit: tolerance
    batch_rounded,         // value: grams taken, limit: grams asked
    density_partly_known,  // value: % of the weight whose density is known
    line_too_heavy,        // value: grams, limit: the most that any scale carries
    warm_over_brim,        // value: mL when poured, limit: mL the container holds; subject: the container
    pour_too_hot,          // value, limit: °C; subject: the container, with its material
    stock_unknown,         // an ingredient whose amount at hand is not said, so it does not limit
    stock_not_needed,      // something at hand that no line takes
    water_without_preservative,
};

struct Finding {
    Code code{};
    Severity severity = Severity::note;
    std::optional<std::size_t> line;    // index into the formula
    std::string subject;                // ingredient id or name, container id
    std::optional<std::int64_t> value;  // on the grid of decimal.h
    std::optional<std::int64_t> limit;
    std::string unit;      // "%", "g", ""
    std::string material;  // of a container, where that is what the remark is about
    std::string source;    // key in the bibliography; "" only where the remark is arithmetic
    source::Standing standing = source::Standing::document;
    bool operator==(const Finding&) const = default;
};

std::string_view code_name(Code code);
std::string_view severity_name(Severity severity);

// The sentence; `subject_name` is the display name the caller has for finding.subject.
std::string say(const words::Table& table, const Finding& finding, std::string_view subject_name);

}  // namespace finding
