// Water feeds what grows. Whether it is in the product, may be by its name, or gets in while it is used; and
// whether anything guards against it. What an unknown hand calls a preservative guards nothing here. How much
// of a preservative, and at which pH, is asked in safety_preservatives.cpp.
#include <algorithm>
#include <iterator>

#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using quantity::Percent;
using source::Standing;

// Names that sound watery, as people write them; whole words, small letters, also in the languages that
// suppliers' names come in.
constexpr std::string_view kWatery[] = {
    "water", "aqua",    "eau",   "wasser", "agua",        "acqua", "hydrosol", "hydrolat", "hydrolate",
    "juice", "jus",     "saft",  "zumo",   "succo",       "aloe",  "honey",    "honig",    "miel",
    "miele", "milk",    "milch", "lait",   "leche",       "latte", "yoghurt",  "yogurt",   "tea",
    "tee",   "vinegar", "essig", "syrup",  "coconutmilk", "broth", "puree"};
// A plant with its sap in it.
constexpr std::string_view kFresh[] = {"fresh", "frisch", "frische", "frais", "fresco", "fresca"};
// What sounds like water and is an oil or a scent: "tea tree oil", "rose water fragrance".
constexpr std::string_view kOily[] = {"oil",    "oel",   "huile", "aceite",    "olio",    "butter", "wax",
                                      "beurre", "wachs", "tree",  "fragrance", "flavour", "flavor"};

template <std::size_t kCount>
bool has_word(const std::string& name, const std::string_view (&list)[kCount]) {
    return std::any_of(std::begin(list), std::end(list), [&](std::string_view word) {
        return name.find(" " + std::string(word) + " ") != std::string::npos;
    });
}

bool sounds_watery(std::string_view written) {
    const std::string name = spaced(written);
    return has_word(name, kFresh) || (has_word(name, kWatery) && !has_word(name, kOily));
}

// Only what nothing firm is known of: a name, an own entry that is based on nothing, or one of a stranger's.
bool may_be_watery(const Portion& portion) {
    if (portion.percent == Percent{0}) return false;
    if (portion.known != nullptr && portion.known != portion.own && portion.vouched_for) return false;
    if (portion.own != nullptr && sounds_watery(portion.own->name)) return true;
    return sounds_watery(portion.ingredient.empty() ? portion.name : portion.ingredient);
}

bool is_preservative(const Portion& portion) {
    return portion.known != nullptr && portion.known->role == "preservative" && portion.percent > Percent{0};
}

struct Seen {
    std::optional<std::size_t> wet;       // portion
    std::optional<std::size_t> perhaps;   // sounds like it
    std::optional<std::size_t> stranger;  // called a preservative by nobody one knows
    bool guarded = false;
    std::vector<std::string> looked_at;
};

Seen look(const Case& the) {
    Seen seen;
    for (std::size_t i = 0; i < the.portions.size(); ++i) {
        const Portion& portion = the.portions[i];
        if (portion.percent == Percent{0}) continue;
        if (is_preservative(portion)) {
            seen.guarded = seen.guarded || portion.vouched_for;
            if (!portion.vouched_for && !seen.stranger) seen.stranger = i;
            add_once(seen.looked_at, subject(portion));
        } else if (portion.known != nullptr && holds_water(*portion.known)) {
            if (!seen.wet) seen.wet = i;
            add_once(seen.looked_at, subject(portion));
        } else if (may_be_watery(portion)) {
            if (!seen.perhaps) seen.perhaps = i;
            add_once(seen.looked_at, subject(portion));
        }
    }
    return seen;
}

void remark(const Case& the, Report& report, Code code, Severity severity, std::size_t portion) {
    const Portion& one = the.portions[portion];
    report.findings.push_back(sourced(about(code, severity, one.line, subject(the, one.line)),
                                      kCommonPractice, Standing::common_practice));
}

// Plants that went in with their sap and came out again leave water behind.
const std::string* fresh_plant(const Case& the) {
    for (const std::string& plant : the.strained)
        if (has_word(spaced(plant), kFresh)) return &plant;
    for (const Portion& portion : the.portions)
        if (portion.own != nullptr && portion.own->made)
            for (const std::string& plant : portion.own->made->infused_with)
                if (has_word(spaced(plant), kFresh)) return &plant;
    return nullptr;
}

void gets_in(const Case& the, const Seen& seen, Report& report) {
    if (the.product == nullptr) return not_made(report, Rule::water_gets_in, Reason::product_unsaid);
    const auto& way = the.product->water_gets_in;
    if (way && way->value && !seen.wet && !seen.guarded && !the.formula->lines.empty())
        report.findings.push_back(sourced(about(Code::water_gets_in, Severity::caution, {}, the.product->id),
                                          way->source, way->standing));
    made(report, Rule::water_gets_in);
}

// Held hot, an open pot loses water, and everything else in it grows stronger.
void boils_off(const Case& the, Report& report) {
    constexpr std::int64_t kSteams = 60 * decimal::kOne;
    std::vector<const formula::Phase*> told;
    for (const Portion& portion : the.portions) {
        const formula::Phase* phase = phase_of(the, portion.line);
        const bool hot = phase != nullptr && phase->hold_c && *phase->hold_c >= kSteams;
        if (!hot || portion.known == nullptr || !holds_water(*portion.known)) continue;
        if (std::find(told.begin(), told.end(), phase) != told.end()) continue;
        told.push_back(phase);
        report.findings.push_back(sourced(
            measured(about(Code::water_boils_off, Severity::note, portion.line, subject(the, portion.line)),
                     *phase->hold_c, {}, "°C"),
            kCommonPractice, Standing::common_practice));
    }
}

}  // namespace

// Water, and all that is mostly water, wherever it stands; solvents and aqueous ones of the water phase.
bool holds_water(const catalogue::Ingredient& ingredient) {
    return ingredient.role == "water" || (ingredient.phase == catalogue::Phase::water &&
                                          (ingredient.role == "solvent" || ingredient.role == "aqueous"));
}

Percent water_in(const Case& the) {
    Percent sum;
    for (const Portion& portion : the.portions)
        if (portion.known != nullptr && holds_water(*portion.known)) sum = sum + portion.percent;
    return sum;
}

void water(const Case& the, Report& report) {
    const Seen seen = look(the);
    if (!seen.guarded) {
        if (seen.wet) remark(the, report, Code::water_without_preservative, Severity::stop, *seen.wet);
        if (seen.stranger)
            remark(the, report, Code::preservative_not_vouched, Severity::caution, *seen.stranger);
        if (!seen.wet && seen.perhaps)
            remark(the, report, Code::water_suspected, Severity::caution, *seen.perhaps);
        const std::string* plant = fresh_plant(the);
        if (!seen.wet && !seen.perhaps && plant != nullptr)
            report.findings.push_back(sourced(about(Code::water_suspected, Severity::caution, {}, *plant),
                                              kCommonPractice, Standing::common_practice));
    }
    gets_in(the, seen, report);
    made(report, Rule::water_preserved, seen.looked_at);
}

void preservation(const Case& the, Report& report) {
    water(the, report);
    boils_off(the, report);
}

}  // namespace safety
