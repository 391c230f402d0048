// A value or the one reason why there is none: the closed list of failure codes, with the place they concern.
// The sentence for a code is in words; nothing here prints or throws.
#pragma once

#include <cassert>
#include <optional>
#include <string>
#include <utility>

namespace result {

enum class Code {
    // numbers as typed
    number_empty,
    number_malformed,
    number_ambiguous,  // "1,234.5": thousands or decimals?
    number_too_fine,   // finer than the grid that is kept
    number_too_large,
    number_negative,
    unit_unknown,
    division_by_zero,  // in typed arithmetic
    // formula
    line_missing,   // no such line
    phase_missing,  // no such phase
    phase_twice,    // two phases of one name
    phase_in_use,   // a phase that still has lines
    name_empty,     // a line with neither ingredient nor name
    text_too_long,
    too_many,          // lines, phases, steps, containers over what one recipe holds
    rest_twice,        // two rest lines
    sum_not_hundred,   // no rest line and the lines do not add to 100
    sum_over_hundred,  // the other lines leave less than nothing for the rest line
    formula_empty,
    line_locked,
    nothing_gives_way,    // no unlocked line that could take up a change
    gives_too_little,     // the lines that were to give way hold less than is asked of them
    locked_over_hundred,  // the locked lines alone are over 100 %
    no_wax,               // nothing that makes a formula firmer or softer
    no_oil,               // no liquid oil to give way to wax
    // batch
    amount_missing,    // neither grams nor containers said
    stock_not_needed,  // nothing of what is at hand is in the formula
    stock_too_little,  // what is at hand does not make one step of the scale
    batch_zero,
    batch_too_large,
    division_invalid,
    loss_invalid,  // not from 0 to under 100 %
    container_unknown,
    fill_unknown,        // neither weight nor usable volume known for this container
    density_unknown,     // a volume was said and nothing of the formula has a density
    density_invalid,     // not above 0
    cap_leaves_no_room,  // at this division no rounding keeps every capped line under its cap
    // made parts
    made_loop,      // a made part that holds itself; detail: the names on the way, a line each
    made_too_deep,  // made parts within made parts beyond what is followed
    made_empty,     // nothing is left after straining
    yield_invalid,  // not above 0 to 100 %
    // reading a list of ingredients
    list_empty,
    item_missing,   // a statement about an ingredient that is not on the list, or about none
    item_twice,     // one ingredient twice in one statement
    range_crossed,  // the least is more than the most
    line_beyond,    // the 1 % line behind the end of the list
    // files
    json_malformed,
    not_a_recipe,
    field_missing,
    field_type,           // a text where a number belongs, and the like
    field_unknown_value,  // a word outside the closed list of the field
    version_newer,
    checksum_wrong,
    preset_unit_missing,
    preset_source_missing,
    preset_duplicate,
    preset_unsorted,
    // links
    link_not_ours,
    link_truncated,
    link_altered,
    link_not_canonical,
    link_newer,
    link_too_long,
    link_content,  // well packed, but not a recipe that could have been written
};

struct Error {
    Code code = Code::number_empty;
    std::string place;   // where: "lines[2].percent", "character 4", "" when it concerns the whole
    std::string detail;  // the offending text, or the figure the sentence needs
    bool operator==(const Error&) const = default;
};

template <class T>
class Result {
  public:
    Result(T value) : value_(std::move(value)) {}
    Result(Error error) : error_(std::move(error)) {}
    Result(Code code, std::string place = "", std::string detail = "")
        : error_{code, std::move(place), std::move(detail)} {}

    explicit operator bool() const { return value_.has_value(); }
    bool ok() const { return value_.has_value(); }
    const T& value() const& {
        assert(value_);
        return *value_;
    }
    T& value() & {
        assert(value_);
        return *value_;
    }
    T&& value() && {
        assert(value_);
        return std::move(*value_);
    }
    const T& operator*() const& { return value(); }
    const T* operator->() const {
        assert(value_);
        return &*value_;
    }
    T* operator->() {
        assert(value_);
        return &*value_;
    }
    const Error& error() const {
        assert(!value_);
        return error_;
    }

  private:
    std::optional<T> value_;
    Error error_;
};

}  // namespace result
