// A remark of the checks: code, severity, the line it concerns, its figures, limit, rule, source and
// standing. The sentence is made from the table of words (key "finding.<code>"), and what to do about it from
// "finding.<code>.do", so screens, papers and mirror word it alike.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity.h"
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
    // what keeps
    water_suspected,  // a name that sounds like water, honey, milk, fresh plants; no preservative
    water_gets_in,    // no water in it, but wet hands or the shower reach it; subject: the product kind
    preservative_not_vouched,    // only an own entry that came with the recipe is called a preservative
    preservative_over_limit,     // value, limit: % of the product
    preservative_below_working,  // value, limit: % that is usual at least
    preservative_at_wrong_ph,    // value: the pH measured, limit: the pH up to which it works
    water_boils_off,             // value: °C at which a phase with water is held
    powder_feeds_germs,          // starch, clay, flour in a product with water
    powder_dusts,
    water_without_emulsifier,  // value: % of water, limit: % of oils
    antioxidant_missing,  // value: % of the product that is polyunsaturated, limit: % from which it counts
    antioxidant_too_much,
    // heat
    heated_too_hot,      // value: °C of its phase, limit: °C it bears
    hold_below_melting,  // value: °C of its phase, limit: °C at which it is molten
    near_flash_point,    // value: °C of its phase, limit: °C at which its vapour can be lit
    // what a person asks
    origin_nut,
    origin_soya,
    origin_gluten,
    origin_sesame,
    origin_bee,
    origin_wool,
    origin_depends,  // on the lot: ask
    // words and papers
    claims_sun_protection,    // material: the words found
    claims_medicine,          // material: the words found; unit: the market
    uv_filter_without_claim,  // zinc oxide, titanium dioxide
    colour_not_checked_here,  // unit: "lips" or "eyes"
    certificate_missing,      // of a bought scent or flavour; unit: the category
    certificate_forbids,      // of a bought scent or flavour; unit: the category
    certificate_over,         // value, limit; unit: the category
    certificate_peroxide,     // limit: mmol/L that the supplier's certificate must stay below
    share_usual_left,         // value, limit: % of all lines of a role; subject: the role
    // constituents, oils, allergens
    constituent_over,         // trace, trace_limit: % of the product, in the usual case too
    constituent_may_be_over,  // only in the worst case
    constituent_over_later,   // unit: the day from which the limit holds
    constituent_not_for_age,
    ingredient_over,  // trace, trace_limit: % of the product
    ingredient_prohibited,
    oil_impure,         // trace, trace_limit: % of the oil
    phototoxic_over,    // trace: % of what is allowed
    warning_due,        // trace, trace_limit: % of the product
    oils_over_for_use,  // trace, trace_limit: % of all oils together
    oils_over_for_age,
    oils_above_usual_for_age,
    oils_not_for_baby,
    oils_over_for_person,
    oil_not_for_child,  // value: its age, limit: the age from which on, years; rule: the caution
    oil_with_care_for_child,
    oil_not_in_pregnancy,
    allergens_to_name,  // value: how many; trace_limit: strictly above that %
};
inline constexpr int kCodes = static_cast<int>(Code::allergens_to_name) + 1;

struct Share {  // what one source brings to a sum
    std::string subject;
    quantity::Trace high, typical;
    bool of_bottle = false;  // by the bottle's own paper
    bool operator==(const Share&) const = default;
};

struct Finding {
    Code code{};
    Severity severity = Severity::note;
    std::optional<std::size_t> line;    // index into the formula
    std::string subject;                // ingredient id or name, container id, role
    std::optional<std::int64_t> value;  // on the grid of decimal.h
    std::optional<std::int64_t> limit;
    std::string unit;      // "%", "g", ""
    std::string material;  // of a container, where that is what the remark is about; words that were found
    std::string rule;      // the row as it is printed: "III/102", "IFRA 49 methyl eugenol"; "" common sense
    std::string edition;   // of the document the rule stands in
    std::string constituent;                       // id, where the remark is about one
    std::optional<quantity::Trace> trace;          // value and limit where they are finer than the grid
    std::optional<quantity::Trace> trace_limit;    // of decimal.h; the sentence then says these
    std::optional<quantity::Trace> trace_typical;  // of a sum, beside its worst case in trace
    std::vector<Share> shares;                     // which source brings how much, the largest first
    std::string source;  // key in the bibliography; "" only where the remark is arithmetic
    source::Standing standing = source::Standing::document;
    bool operator==(const Finding&) const = default;
};

std::string_view code_name(Code code);
std::string_view severity_name(Severity severity);

// The sentence; `subject_name` is the display name the caller has for finding.subject.
std::string say(const words::Table& table, const Finding& finding, std::string_view subject_name,
                std::string_view constituent_name = {});
// What to do about it, in plain words; "" where the sentence itself says so.
std::string advice(const words::Table& table, const Finding& finding, std::string_view subject_name,
                   std::string_view constituent_name = {});

}  // namespace finding
