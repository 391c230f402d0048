// How much of what may be in a product: one plain value with every published limit, list and table that the
// checks hold a formula against, each with document, edition, standing and product types. A gap is a row too:
// there is a rule whose figure is not known, so that its check is "not made". Nothing is judged here.
// (The file is not called limits.h: the C library's header of that name would no longer be found.)
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "composition.h"
#include "quantity.h"
#include "source.h"

namespace limits {

using quantity::Trace;
using source::Standing;

enum class Force { law, standard, guidance, warning };  // a standard of the trade; above it a warning is due
enum class Verdict { at_most, prohibited, unlimited, gap };

struct Cap {            // for one product type
    std::string where;  // a type of `types` ("lip"), an IFRA category ("5A"), or "any"
    Verdict verdict = Verdict::gap;
    Trace most;
    bool operator==(const Cap&) const = default;
};

struct Row {
    std::string id;                             // as printed: "III/102", "IFRA methyl eugenol"
    std::vector<composition::Id> constituents;  // counted together; or else
    std::vector<std::string> ingredients;       // whole ingredients, counted together, by catalogue id
    std::vector<std::string> names;             // and whatever is so called, in small letters
    std::string within;                         // % of this ingredient, not of the product; "" the product
    std::string document, edition;
    Force force = Force::guidance;
    std::vector<std::string> markets;                // "eu", "gb", "ni", "us", "ca"; empty: everywhere
    std::string from;                                // first day for a new product, YYYY-MM-DD; "" open
    std::int64_t from_months = 0, until_months = 0;  // of age, for a row about children; until 0: for all
    std::vector<Cap> caps;
    std::string source;
    Standing standing = Standing::estimate;
    std::string note;  // what is ambiguous about it and how it was read; "" nothing
    bool operator==(const Row&) const = default;
};

struct Type {  // a product type of a document: which of our product kinds fall under it
    std::string id;
    std::vector<std::string> products;
    std::string source;
    Standing standing = Standing::estimate;
    bool operator==(const Type&) const = default;
};

struct Allergen {  // one printed name of Annex III
    std::int64_t entry = 0;
    std::string label;                            // as it is printed
    std::vector<composition::Id> constituents;    // what counts towards it …
    std::vector<std::string> ingredients, names;  // … a constituent, or whole ingredients
    std::vector<std::string> cas;
    std::string members;  // as the entry has them; "" only itself
    bool old = false;     // on the list of 24
    std::string source;
    Standing standing = Standing::estimate;
    bool operator==(const Allergen&) const = default;
};
enum class List { none, old_24, extended_81 };
struct Regime {                       // which list holds for a product that is new on a market on a day
    std::string market, from, until;  // days inclusive; "" open
    List list = List::none;
    std::string reason;        // "regime.<reason>" says why
    std::string sell_through;  // last day for stock placed on the market before; "" none
    std::string document, source;
    Standing standing = Standing::estimate;
    bool operator==(const Regime&) const = default;
};

enum class Whom { use, age, person };
struct Level {       // of all essential oils together: what is usual, and where it ends
    std::string id;  // "face", "months_24", "pregnant"
    Whom whom = Whom::use;
    std::vector<std::string> products;               // of a use
    std::int64_t from_months = 0, until_months = 0;  // of an age; until 0: no end
    Trace usual, most;                               // both 0: none at all
    std::string document, edition, source;
    Standing standing = Standing::estimate;
    std::string note;
    bool operator==(const Level&) const = default;
};

struct Caution {
    std::string id;                                 // "caution.<id>" says it
    std::vector<std::string> ingredients;           // empty: goes for every essential oil
    std::int64_t stop_months = 0, warn_months = 0;  // not for, only with advice for a child younger than that
    std::vector<std::string> places;  // the child's: only there ("face", "lips"); empty: anywhere
    bool pregnancy = false;           // not in pregnancy or when breastfeeding
    std::string source;
    Standing standing = Standing::estimate;
    bool operator==(const Caution&) const = default;
};

struct Preservative {
    std::string ingredient, id;  // id as printed: "V/29"
    std::string document, edition;
    std::vector<Cap>
        caps;  // as sold: of the salt, where the ingredient is the salt of the acid that is limited
    std::string source;
    Standing standing = Standing::estimate;
    std::optional<catalogue::Range> working_percent;
    std::string working_source;
    Standing working_standing = Standing::estimate;
    std::optional<std::int64_t> ph_low, ph_high;  // grid of decimal.h; works in between
    std::string ph_source;
    Standing ph_standing = Standing::estimate;
    std::string note;
    bool operator==(const Preservative&) const = default;
};

struct Book {
    std::vector<source::Entry> sources;  // sorted by key; those of the catalogue are not repeated
    composition::Table composition;
    std::vector<Type> types;
    std::vector<Row> rows;
    std::vector<Row> phototoxic;  // each oil's own limit; of several the fractions are added
    std::vector<Allergen> allergens;
    Trace leave_on_above, rinse_off_above;  // an allergen is named strictly above
    std::vector<Regime> regimes;
    std::vector<Level> levels;
    std::vector<Caution> cautions;
    std::vector<Preservative> preservatives;
    bool operator==(const Book&) const = default;
};

// The cap of a row for a product kind: the strictest of the types it falls under; none: the row does not say
// anything about such products.
const Cap* cap_for(const Book& book, const std::vector<Cap>& caps, const catalogue::Product& product);
// A rule that is not about every product: `age` in months, absent for an adult.
bool is_for(const Row& row, std::optional<std::int64_t> age_months);
bool is_in(const Row& row, std::string_view market);  // "" not said: every market's rows
// The list that holds for a product new on `market` on `date`; null: the market is not covered.
const Regime* regime_on(const Book& book, std::string_view market, std::string_view date);
const Level* level_for_use(const Book& book, std::string_view product);
const Level* level_for_age(const Book& book, std::int64_t months);
const Level* level_for_person(const Book& book, std::string_view person);
const Preservative* find_preservative(const Book& book, std::string_view ingredient);
const source::Entry* find_source(const Book& book, std::string_view key);

}  // namespace limits
