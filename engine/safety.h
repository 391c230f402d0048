// What is checked in one formula for one product kind, market, date and person, and what could not be. A
// check that cannot be made is listed with its reason and never counts as made; nothing is ever called safe.
// The families of rules are declared in safety_family.h, one file each. Knows neither recipe nor batch:
// analysis makes the Case, which points into what it was made from.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "finding.h"
#include "formula.h"
#include "quantity.h"

namespace limits {
struct Book;
}

namespace safety {

// One thing that is in the product in the end, by way of one line of the formula. A line that is a made part
// gives one portion for each thing it holds, any other line gives one.
struct Portion {
    std::size_t line = 0;
    std::string ingredient, name;  // an id, or only a name
    quantity::Percent percent;     // of the whole product
    // What the checks go by: shipped; else the shipped one that an own entry is based on; else that entry.
    const catalogue::Ingredient* known = nullptr;
    const catalogue::Ingredient* own = nullptr;  // the recipe's entry, if it is one
    bool vouched_for = true;  // shipped, or an own entry of this device: it may take a remark away
};

struct Case {
    const formula::Formula* formula = nullptr;
    const catalogue::Catalogue* shipped = nullptr;
    std::vector<quantity::Percent> percents;  // of each line; the rest line's is 0 when nothing is left
    std::optional<quantity::Percent> rest;    // what the rest line comes to, below 0 too
    quantity::Percent stated_sum;             // without the rest line
    std::vector<Portion> portions;            // line by line; strained lines are not in the product
    std::vector<std::string> strained;        // names of what was strained out again
    const catalogue::Product* product = nullptr;
    std::string market;                      // "eu", "gb", "ni", "us", "ca"; "" not said
    std::string date;                        // YYYY-MM-DD on which it is first sold or given; "" not said
    std::string person;                      // "adult", "child", "pregnant"; "" not said
    std::optional<std::int64_t> age_months;  // of the youngest it is for, whole months
    std::optional<std::int64_t> ph;          // as measured, on the grid of decimal.h
    std::string_view title, notes;           // for the words in them
    const limits::Book* book = nullptr;      // none: no limit can be looked up, and the report says so
};

enum class Rule {
    sums,
    known_names,
    usual_ingredient,
    usual_share,
    water_preserved,
    water_gets_in,
    preservative_limit,
    preservative_working,
    preservative_ph,
    emulsion,
    powders,
    antioxidant,
    heat,
    melting,
    flash_point,
    origin,
    sun_protection,
    claims,
    colours,
    bought_scents,
    peroxide,
    constituents,
    oils,
    oil_total,
    persons,
    phototoxic,
    allergens,
    laboratory,
};
inline constexpr int kRules = static_cast<int>(Rule::laboratory) + 1;

enum class Reason {  // why a check is not made
    no_figure,
    no_book,
    product_unsaid,
    market_unsaid,
    market_not_covered,
    ph_unsaid,
    temperature_unsaid,
    name_unknown,
    certificate_unsaid,
    age_unsaid,
    person_unsaid,
    laboratory,
};
inline constexpr int kReasons = static_cast<int>(Reason::laboratory) + 1;

struct Made {
    Rule rule{};
    std::string row;                     // "III/102" where one row of a document was checked, else ""
    std::vector<std::string> looked_at;  // ingredient ids or names; empty: nothing of the kind is in it
    bool operator==(const Made&) const = default;
};
struct NotMade {
    Rule rule{};
    std::string row;
    Reason reason{};
    std::vector<std::string> about;  // ingredient ids or names it could not be made for; empty: for all
    bool operator==(const NotMade&) const = default;
};

struct Report {
    std::vector<finding::Finding> findings;  // stops first, then cautions, then notes; by line
    std::vector<Made> made;
    std::vector<NotMade> not_made;
    std::vector<std::string> cautions;  // keys of what is always to be said, "caution.heat"
    bool operator==(const Report&) const = default;
};

std::string_view rule_name(Rule rule);        // "check.<name>" is its line in the table of words
std::string_view reason_name(Reason reason);  // "unmade.<name>"

// All families in a fixed order, findings sorted.
Report of(const Case& the);
// Only what needs no table and shows while lines are typed: sums, what is usual, water. The whole report says
// these too.
std::vector<finding::Finding> at_hand(const Case& the);

}  // namespace safety
