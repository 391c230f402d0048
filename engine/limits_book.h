// How much of what may be in a product: one plain value with every published limit, list and table that the
// checks hold a formula against, each row with its document, edition, standing and the product types it is
// for. A gap is a row too: it says that a rule exists whose figure is not known, so that a check is called
// "not made" and never passed. Nothing is judged here; that is safety's business.
// (The file is not called limits.h: the C library's header of that name would no longer be found.)
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "composition.h"
#include "quantity.h"
#include "source.h"

namespace limits {

using quantity::Percent;
using quantity::Trace;
using Standing = source::Standing;

enum class Force { law, industry, guidance };  // what follows from going beyond it
enum class Verdict { at_most, below, prohibited, unlimited, gap };

struct Cap {            // for one product type
    std::string where;  // a type of `types` ("lip", "leave_on_skin_other"), an IFRA category "5A", or "any"
    Verdict verdict = Verdict::gap;
    Trace most;
    bool operator==(const Cap&) const = default;
};

struct Row {
    std::string id;               // as printed: "III/102", "IFRA methyl eugenol"
    bool of_ingredients = false;  // `of` are ingredients (a whole oil), not constituents
    std::vector<std::string> of;  // counted together
    std::string document, edition;
    Force force = Force::guidance;
    std::vector<std::string> markets;                // "eu", "gb", "ni", "us", "ca"; empty: everywhere
    std::string from, until;                         // first and last day of a new product; "" open
    std::int64_t from_months = 0, until_months = 0;  // of age; until 0: no end
    std::vector<Cap> caps;
    std::string source;
    Standing standing = Standing::estimate;
    std::string note;  // what is ambiguous about it and how it was read; "" nothing
    bool operator==(const Row&) const = default;
};

struct Type {  // of the law's product types: which of our product kinds fall under it
    std::string id;
    std::vector<std::string> products;
    std::string source;
    Standing standing = Standing::estimate;
    bool operator==(const Type&) const = default;
};

struct Allergen {  // one printed name of Annex III
    int entry = 0;
    std::string label;                                   // as it is printed
    std::vector<std::string> constituents, ingredients;  // what counts towards it; empty: not in our data
    std::vector<std::string> cas;
    std::string members;  // as the entry names them
    bool old = false;     // on the list of 24
    bool group = false;
    std::string source;
    Standing standing = Standing::estimate;
    bool operator==(const Allergen&) const = default;
};
enum class List { none, old_24, extended_81 };
struct Regime {                       // which list is in force for a product new on a market on a day
    std::string market, from, until;  // "" open; days inclusive
    List list = List::none;
    std::string reason;        // key of a sentence, "regime.eu_extended"
    std::string sell_through;  // last day for stock that was placed before; "" none
    std::string document, source;
    Standing standing = Standing::estimate;
    bool operator==(const Regime&) const = default;
};

struct Level {       // of essential oils in all, for a use or an age: what is usual and where it ends
    std::string id;  // "lips", "pregnancy", "months_24"
    std::vector<std::string> products;  // for a use; empty: not bound to product kinds
    std::int64_t from_months = 0, until_months = 0;
    Trace usual, most;
    bool none = false;  // not at all
    std::string source;
    Standing standing = Standing::estimate;
    std::string note;
    bool operator==(const Level&) const = default;
};

enum class When { always, children, pregnancy, epilepsy };
struct Caution {
    std::string id;                        // "menthol": the sentence is "caution.menthol"
    std::vector<std::string> ingredients;  // empty: for every oil
    When when = When::always;
    std::int64_t stop_months = 0, warn_months = 0;  // children below these ages
    std::vector<std::string> places;                // only on these ("face", "lips"); empty: anywhere
    std::string source;
    Standing standing = Standing::estimate;
    bool operator==(const Caution&) const = default;
};

struct Preservative {
    std::string ingredient, id;  // id as printed: "V/29"
    std::optional<Trace> most;   // as sold: of the salt, where the salt is the ingredient
    std::optional<Trace> working_low, working_high;
    std::optional<std::int64_t> ph_low, ph_high;  // grid of decimal.h
    std::string document, edition, source, working_source, ph_source;
    Standing standing = Standing::estimate, working_standing = Standing::estimate,
             ph_standing = Standing::estimate;
    std::string note;
    bool operator==(const Preservative&) const = default;
};

struct Book {
    composition::Table composition;
    std::vector<Type> types;
    std::vector<Row> rows;  // phototoxic limits too: rows of edition "phototoxic", summed as fractions
    std::vector<Allergen> allergens;
    Trace leave_on_above, rinse_off_above;  // an allergen is printed strictly above
    std::vector<Regime> regimes;
    std::vector<Level> uses, ages;
    std::vector<Caution> cautions;
    std::vector<Preservative> preservatives;
    bool operator==(const Book&) const = default;
};

}  // namespace limits
