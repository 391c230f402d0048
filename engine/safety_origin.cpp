// What a person asks at the stall: nuts, soya, gluten, sesame, bees, wool. Each is told once for each
// ingredient. Names that are not in the list are looked at word by word, which finds "hazelnut oil" and
// misses "praline": they stay listed as not checked. Nothing here ever says that a product is free of
// anything.
#include <array>

#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using source::Standing;

struct Trait {
    std::string_view name;
    Code code;
    std::array<std::string_view, 16> words;  // as they stand in a name, small letters; "" none
};
constexpr std::array<Trait, 6> kTraits = {{
    {"nut",
     Code::origin_nut,
     {"nut", "nuts", "almond", "hazelnut", "walnut", "cashew", "pistachio", "pecan", "macadamia", "brazil",
      "peanut", "arachis", "shea", "coconut", "marzipan", "argan"}},
    {"soya", Code::origin_soya, {"soya", "soy", "soybean", "soja", "lecithin"}},
    {"gluten",
     Code::origin_gluten,
     {"wheat", "barley", "rye", "oat", "oats", "oatmeal", "spelt", "malt", "triticum", "avena", "hordeum",
      "secale", "gluten", "wheatgerm"}},
    {"sesame", Code::origin_sesame, {"sesame", "sesamum", "tahini"}},
    {"bee", Code::origin_bee, {"honey", "propolis", "beeswax", "cera", "bee", "royal"}},
    {"wool", Code::origin_wool, {"lanolin", "wool"}},
}};

// "Treatment is vegan" or not is no safety matter, but it is asked.
bool depends_on_lot(const catalogue::Ingredient& one) {
    return !one.own && !one.vegan.has_value();
}

bool named_after(const Trait& trait, const std::string& name) {
    for (const std::string_view word : trait.words)
        if (!word.empty() && name.find(" " + std::string(word) + " ") != std::string::npos) return true;
    return false;
}

// Scents named after a nut hold none as a rule, and are told all the same: the seller knows.
std::string name_of(const Portion& portion) {
    std::string name = portion.ingredient.empty() ? portion.name : portion.ingredient;
    if (portion.own != nullptr) name += " " + portion.own->name;
    return spaced(name);
}

}  // namespace

void origin(const Case& the, Report& report) {
    std::vector<std::string> looked_at, unknown;
    for (const Portion& portion : the.portions) {
        if (portion.percent == quantity::Percent{0}) continue;
        const bool listed = portion.known != nullptr && portion.known != portion.own && portion.vouched_for;
        const bool based = portion.known != nullptr && portion.known != portion.own;
        std::vector<std::string>& list = listed ? looked_at : unknown;
        const std::size_t before = list.size();
        add_once(list, subject(portion));
        if (list.size() == before) continue;
        const std::string name = portion.own == nullptr && listed ? std::string() : name_of(portion);
        for (const Trait& trait : kTraits) {
            const bool known = based && catalogue::has_trait(*portion.known, trait.name);
            if (!known && !named_after(trait, name)) continue;
            auto told = about(trait.code, Severity::note, portion.line, subject(portion));
            report.findings.push_back(known ? sourced(std::move(told), portion.known->traits->source,
                                                      portion.known->traits->standing)
                                            : sourced(std::move(told), kCommonPractice, Standing::estimate));
        }
        if (based && depends_on_lot(*portion.known))
            report.findings.push_back(
                sourced(about(Code::origin_depends, Severity::note, portion.line, subject(portion)), kMemory,
                        Standing::memory));
    }
    made(report, Rule::origin, std::move(looked_at));
    if (!unknown.empty()) not_made(report, Rule::origin, Reason::name_unknown, std::move(unknown));
}

}  // namespace safety
