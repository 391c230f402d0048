// A pasted ingredient list and what was understood of it: one entry for each thing that stands in it, with
// its place, and a formula made from them. Nothing is dropped: every line becomes an ingredient, a heading, a
// total, a note or a step, and what can't be used says why. Guesses are remarks, never silent.
#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "measures.h"
#include "quantity.h"
#include "result.h"
#include "workspace.h"

namespace pasted {

inline constexpr std::size_t kMostBytes = 200'000;
inline constexpr std::size_t kMostEntries = 500;
inline constexpr std::size_t kMostOffered = 8;

enum class Kind { ingredient, heading, phase, total, note, step };

enum class Code {
    // the amount or name can't be used as it stands; the line is kept at 0 %
    number_unclear,   // "1,234.5": thousands or decimals? detail: the number
    number_too_fine,  // finer than 0.0001
    number_too_large,
    amount_missing,
    amount_vague,     // a pinch, a capsule; detail: the word
    amount_shared,    // "of each": one amount for several ingredients
    amounts_mixed,    // percent and weights in one list, and no total that joins them
    unit_unknown,     // detail: the word after the number
    density_unknown,  // a volume of something whose density is not known; detail: why, or ""
    measured_loose,   // a volume of powder or pieces: bulk density is not known
    name_missing,     // an amount of nothing
    rest_twice,       // a second line "to 100"
    rest_over,        // the others are more than the line is to fill up to
    rest_by_volume,   // "to 1000 mL": a rest in volume is not worked out
    too_many_lines,   // detail: how many fit
    too_long,         // the text, or a name; detail: how many bytes fit
    // understood, with something to know
    amount_as_needed,  // q.s. that is not the rest line: 0 % until someone says
    amount_range,      // "2 to 3": the middle is taken
    rest_guessed,      // q.s. taken as the rest line
    unit_guessed,      // of the whole list: numbers without a unit; detail: what they were taken for
    name_several,      // several ingredients fit: choose
    name_unknown,      // kept as written
    sum_differs,       // the list says another total than its lines add to; detail: what they add to
    percents_off,      // percents that do not add to 100, kept as they are; detail: the sum
    weight_missing,    // of the whole list: lines without a weight, the percents are without them
};
bool refuses(Code code);                // the first group above
std::string_view code_name(Code code);  // "number_unclear": the sentence is "pasted.<name>"

struct Remark {
    Code code{};
    std::size_t line = 0, column = 0;  // in the text, from 1; 0 for the whole
    std::string detail;
    bool operator==(const Remark&) const = default;
};

struct Amount {
    std::string_view measure;  // id in measures.h, "" for a number without a unit
    measures::Span count;      // how many of it
    bool rest = false;         // fills up to `count`, or to 100
    bool operator==(const Amount&) const = default;
};

struct Entry {
    Kind kind = Kind::note;
    std::size_t line = 0, column = 0;          // where it begins, from 1
    std::string text;                          // as pasted, without the space around it
    std::string name;                          // of an ingredient, heading or total
    std::string aside;                         // what else the line says
    std::string ingredient;                    // catalogue id, "" when none was matched
    std::vector<std::string> offered;          // ids to choose from, best first
    std::string phase;                         // id, of an ingredient or phase
    std::optional<Amount> amount;              // as read
    std::optional<measures::Span> grams;       // what that is, where it is known
    std::optional<quantity::Percent> percent;  // in the formula; none of a rest line
    std::vector<Remark> remarks;
    bool left_out = false;  // by the person
    bool operator==(const Entry&) const = default;
};

enum class Basis { none, percent, mass, parts };

// What the person says about a list once it was shown.
struct Said {
    std::optional<Basis> unitless;              // what numbers without a unit are
    std::map<std::size_t, std::string> chosen;  // entry -> ingredient id, "" for as written
    std::set<std::size_t> left_out;             // entries
    bool operator==(const Said&) const = default;
};

struct List {
    std::string title;
    std::vector<Entry> entries;
    Basis basis = Basis::none;
    bool has_unitless = false;            // switching `Said::unitless` would change something
    Basis unitless = Basis::none;         // what they were taken for
    std::optional<std::int64_t> sum;      // of the lines in the unit of the basis, rest line filled in
    std::optional<quantity::Mass> grams;  // of the whole, where it is known
    std::vector<Remark> remarks;          // on the whole; those of entries stand there
    bool operator==(const List&) const = default;
};

List read(std::string_view text, const catalogue::Catalogue& catalogue, const Said& said = {});

std::size_t ingredients(const List& list);  // entries of that kind that are not left out
bool looks_like_list(const List& list);     // at least one ingredient with an amount, or two that are known

// What is kept: title, formula (by largest remainder, or the percents as the list says them), notes, steps,
// and the batch in grams where the list has one. formula_empty when there is no ingredient.
result::Result<workspace::Recipe> recipe_of(const List& list);

}  // namespace pasted
