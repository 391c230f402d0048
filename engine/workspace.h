// Everything a person keeps on one device: recipes, the bin, settings. Plain values with ==, changed only by
// the edits below, so that a test can do whatever a hand can and a step back is a copy put back.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "batch.h"
#include "blend_rated.h"
#include "catalogue.h"
#include "formula.h"
#include "label_said.h"
#include "label_sheet.h"
#include "lot.h"
#include "price.h"
#include "reading_kept.h"
#include "record.h"
#include "result.h"
#include "scales.h"
#include "weigh_out.h"
#include "workshop.h"

namespace workspace {

struct MadePart {    // a recipe that other recipes use as one ingredient
    std::string id;  // under which they hold it; one of its kind on this device
    catalogue::MadeAs as = catalogue::MadeAs::infusion;
    quantity::Percent yield = quantity::kHundred;  // strained mass ÷ what was put in and stays
    bool operator==(const MadePart&) const = default;
};

struct Recipe {
    std::string title;
    std::string product = "salve";            // catalogue id of the product kind
    std::string market, date, person;         // "" when not said; date YYYY-MM-DD
    std::optional<std::int64_t> age_months;   // of the youngest it is for, whole months
    std::optional<std::int64_t> measured_ph;  // of the finished product, on the grid of decimal.h
    label::Said label;                        // what its label says beside the formula
    formula::Formula formula;
    std::vector<catalogue::Ingredient> own;
    std::vector<formula::Step> steps;
    batch::Request batch;
    std::string notes;
    std::optional<MadePart> made;
    bool operator==(const Recipe&) const = default;
};

inline constexpr std::size_t kMostTitleBytes = 80;
inline constexpr std::size_t kMostNotesBytes = 20000;
inline constexpr std::size_t kMostSteps = 60;
inline constexpr std::size_t kMostStepBytes = 1000;
inline constexpr std::int64_t kMostAgeMonths = 1500;
inline constexpr std::int64_t kMostPh = 14 * decimal::kOne;
inline constexpr std::int64_t kMostStepMinutes = 100000;  // ten weeks: a maceration takes six

struct Kept {        // one entry of the formula book
    std::string id;  // made on this device, never shared
    Recipe recipe;
    std::uint64_t saves = 0;        // save counter
    std::string changed;            // instant, UTC: 2026-11-25T12:00:00Z; "" unknown
    std::string binned;             // instant when it went to the bin; "" when it is in the book
    std::vector<std::string> tags;  // of this device's book, never shared; in the order they were put on
    bool operator==(const Kept&) const = default;
};

struct KeptOwn {  // one entry of this device's own ingredients; recipes that use it hold a copy
    catalogue::Ingredient ingredient;
    std::uint64_t saves = 0;
    std::string changed, binned;  // as of a recipe
    bool operator==(const KeptOwn&) const = default;
};

struct Version {           // a state of a recipe that was named, or frozen by a batch record
    std::string of, name;  // id of the recipe in the book; "" no name
    bool frozen = false;   // by a record: stays when its recipe goes
    bool pinned = false;   // the one; of a recipe's versions one at the most
    Recipe recipe;
    bool operator==(const Version&) const = default;
};

// What is filed on this device beside the book: batch records, lots, versions. Changed by the edits of
// workspace_records.h, workspace_lots.h and workspace_versions.h alone.
struct Filed {
    std::string id;  // made on this device
    std::variant<record::Record, lot::Lot, Version> what;
    std::string made;     // instant
    std::string changed;  // instant
    std::uint64_t saves = 0;
    bool operator==(const Filed&) const = default;
};

struct KeptWeighOut {    // one that is under way, so that it goes on at the same line whatever happens to the
                         // page
    std::string id, of;  // its own; of the recipe in the book
    Recipe recipe;       // as it stood when the weighing began
    weigh_out::WeighOut weighing;
    std::uint64_t saves = 0;
    std::string changed;  // as of a recipe
    std::string begun;    // instant
    bool operator==(const KeptWeighOut&) const = default;
};

using scales::Jug;
using scales::Scale;

enum class Theme { system, light, dark };
enum class DecimalSign { system, point, comma };
enum class Sort { changed, title, product };  // of the book

struct Settings {
    std::string language = "en";
    DecimalSign sign = DecimalSign::system;
    Theme theme = Theme::system;
    std::string hosted_address;  // what goes before '#' when the page was opened from disk
    Sort sort = Sort::changed;
    std::string last_backup;  // instant when everything was last handed over as a file; "" never
    std::vector<Scale> scales{{"", {100}, {}}, {"", {10000}, {}}};  // 0.01 g and 1 g
    std::vector<Jug> jugs;
    label::Maker maker;              // who answers for what is made here; stands on labels
    std::string batch_pattern;       // of batch numbers (record_number.h); "" the usual one
    std::optional<std::size_t> jug;  // the one in use: lines are weighed into it one after another
    std::optional<label_sheet::Sheet> label_sheet;  // none: labels are cut out
    workshop::Plan workshop;
    price::Book prices;
    std::vector<lot::Threshold> low;     // own thresholds of what runs low
    std::vector<blend::Rated> firmness;  // how firm a person found what was made
    reading::Kept reading;               // the list of ingredients that was asked about last
    bool operator==(const Settings&) const = default;
};

inline constexpr std::size_t kMostScales = 8;
inline constexpr std::size_t kMostJugs = 20;

scales::Bench bench_of(const Settings& settings);

struct Workspace {
    std::vector<Kept> recipes;           // newest first
    std::vector<KeptOwn> own;            // sorted by id
    std::vector<Filed> filed;            // in the order it was made
    std::uint64_t filings = 0;           // edits on those, so that nobody needs to compare them all
    std::vector<KeptWeighOut> weighing;  // under way, in no order
    Settings settings;
    std::string open;   // id of the open recipe, "" none
    std::string place;  // where on the page one was, in the host's words; "" at the start
    bool operator==(const Workspace&) const = default;
};

// Edits on the book. `id` and `now` come from the host: the engine has no clock and no chance.
void add(Workspace& workspace, std::string id, Recipe recipe, std::string now);  // and opens it
result::Result<std::string> copy(Workspace& workspace, std::string_view id, std::string new_id,
                                 std::string copied_title, std::string now);
bool bin(Workspace& workspace, std::string_view id, std::string now);
bool restore(Workspace& workspace, std::string_view id);
bool erase_binned(Workspace& workspace, std::string_view id);
// A tag is kept as typed, without blanks around it; one that differs in case alone is the same.
inline constexpr std::size_t kMostTags = 12;
inline constexpr std::size_t kMostTagBytes = 40;
result::Result<std::string> tag(Workspace& workspace, std::string_view id, std::string_view tag);
bool untag(Workspace& workspace, std::string_view id, std::string_view tag);
Kept* find(Workspace& workspace, std::string_view id);
const Kept* find(const Workspace& workspace, std::string_view id);

// A recipe that came from outside, checked against every bound above and formula::checked; place of the first
// fault.
result::Result<Recipe> checked(Recipe recipe);
bool is_date(std::string_view text);  // a day of the calendar as YYYY-MM-DD
std::string display_name(const catalogue::Catalogue& catalogue, const formula::Line& line);

}  // namespace workspace
