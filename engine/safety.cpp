// Names, the few things every family does, and the report: one family after the other, in the order in which
// a maker would ask. A family that finds nothing of its kind in a product still says that it looked.
#include "safety_family.h"

#include <algorithm>
#include <utility>

#include "sorting.h"

namespace safety {

using finding::Finding;

std::string_view rule_name(Rule rule) {
    switch (rule) {
        case Rule::sums:
            return "sums";
        case Rule::known_names:
            return "known_names";
        case Rule::usual_ingredient:
            return "usual_ingredient";
        case Rule::usual_share:
            return "usual_share";
        case Rule::water_preserved:
            return "water_preserved";
        case Rule::water_gets_in:
            return "water_gets_in";
        case Rule::preservative_limit:
            return "preservative_limit";
        case Rule::preservative_working:
            return "preservative_working";
        case Rule::preservative_ph:
            return "preservative_ph";
        case Rule::emulsion:
            return "emulsion";
        case Rule::powders:
            return "powders";
        case Rule::antioxidant:
            return "antioxidant";
        case Rule::heat:
            return "heat";
        case Rule::melting:
            return "melting";
        case Rule::flash_point:
            return "flash_point";
        case Rule::origin:
            return "origin";
        case Rule::sun_protection:
            return "sun_protection";
        case Rule::claims:
            return "claims";
        case Rule::colours:
            return "colours";
        case Rule::bought_scents:
            return "bought_scents";
        case Rule::peroxide:
            return "peroxide";
        case Rule::constituents:
            return "constituents";
        case Rule::oils:
            return "oils";
        case Rule::oil_total:
            return "oil_total";
        case Rule::persons:
            return "persons";
        case Rule::phototoxic:
            return "phototoxic";
        case Rule::allergens:
            return "allergens";
        case Rule::laboratory:
            return "laboratory";
    }
    return "";
}

std::string_view reason_name(Reason reason) {
    switch (reason) {
        case Reason::no_figure:
            return "no_figure";
        case Reason::no_book:
            return "no_book";
        case Reason::product_unsaid:
            return "product_unsaid";
        case Reason::market_unsaid:
            return "market_unsaid";
        case Reason::market_not_covered:
            return "market_not_covered";
        case Reason::ph_unsaid:
            return "ph_unsaid";
        case Reason::temperature_unsaid:
            return "temperature_unsaid";
        case Reason::name_unknown:
            return "name_unknown";
        case Reason::certificate_unsaid:
            return "certificate_unsaid";
        case Reason::age_unsaid:
            return "age_unsaid";
        case Reason::person_unsaid:
            return "person_unsaid";
        case Reason::laboratory:
            return "laboratory";
    }
    return "";
}

bool under_law_of(const Case& the, std::string_view market) {
    return the.market.empty() || the.market == market || (the.market == "ni" && market == "eu");
}

std::string subject(const Portion& portion) {
    return portion.ingredient.empty() ? portion.name : portion.ingredient;
}

std::string subject(const Case& the, std::size_t line) {
    const formula::Line& said = the.formula->lines[line];
    return said.ingredient.empty() ? said.name : said.ingredient;
}

Finding about(finding::Code code, finding::Severity severity, std::optional<std::size_t> line,
              std::string subject) {
    Finding finding;
    finding.code = code;
    finding.severity = severity;
    finding.line = line;
    finding.subject = std::move(subject);
    return finding;
}

Finding measured(Finding finding, std::int64_t value, std::optional<std::int64_t> limit, std::string unit) {
    finding.value = value;
    finding.limit = limit;
    finding.unit = std::move(unit);
    return finding;
}

Finding sourced(Finding finding, std::string_view source, source::Standing standing) {
    finding.source = source;
    finding.standing = standing;
    return finding;
}

// Stops first, then cautions, then notes; within each what concerns the whole, then line by line.
void sort(std::vector<Finding>& findings) {
    sorting::stable(findings, [](const Finding& a, const Finding& b) {
        if (a.severity != b.severity) return a.severity > b.severity;
        return a.line < b.line;  // none before any
    });
}

const formula::Phase* phase_of(const Case& the, std::size_t line) {
    for (const formula::Phase& phase : the.formula->phases)
        if (phase.id == the.formula->lines[line].phase) return &phase;
    return nullptr;
}

void add_once(std::vector<std::string>& list, std::string subject) {
    if (std::find(list.begin(), list.end(), subject) == list.end()) list.push_back(std::move(subject));
}

std::string spaced(std::string_view text) {
    std::string out = " ";
    for (const char c : text) {
        const char small = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
        const bool letter = (small >= 'a' && small <= 'z') || (small >= '0' && small <= '9') ||
                            (static_cast<unsigned char>(small) & 0x80) != 0;
        if (letter) {
            out += small;
        } else if (out.back() != ' ') {
            out += ' ';
        }
    }
    if (out.back() != ' ') out += ' ';
    return out;
}

void made(Report& report, Rule rule, std::vector<std::string> looked_at) {
    report.made.push_back({rule, "", std::move(looked_at)});
}

void not_made(Report& report, Rule rule, Reason reason, std::vector<std::string> about) {
    report.not_made.push_back({rule, "", reason, std::move(about)});
}

namespace {

constexpr void (*kFamilies[])(const Case&, Report&) = {
    sums, usual,  preservation, preservatives, emulsion, powder,       antioxidant,
    heat, origin, claims,       colours,       scents,   certificates, limited};

// What is always at hand; the first is for every product.
std::vector<std::string> cautions_for(const Case& the) {
    std::vector<std::string> keys = {"caution.defer"};
    bool melts = false, scented = false;
    for (const Portion& portion : the.portions) {
        if (portion.known == nullptr) continue;
        const std::string& role = portion.known->role;
        melts = melts || role == "wax" || role == "hard_fat" || role == "butter" || role == "soft_wax";
        scented = scented || role == "essential_oil" || role == "extract";
    }
    for (const formula::Phase& phase : the.formula->phases)
        melts = melts || phase.hold_c.has_value();
    if (melts) keys.emplace_back("caution.heat");
    if (scented) keys.emplace_back("caution.oils");
    keys.emplace_back("caution.water");
    keys.emplace_back("caution.cloths");
    keys.emplace_back("caution.weigh");
    return keys;
}

}  // namespace

Report of(const Case& the) {
    Report report;
    for (const auto family : kFamilies)
        family(the, report);
    not_made(report, Rule::laboratory, Reason::laboratory);  // of no product, so that none looks finished
    sort(report.findings);
    report.cautions = cautions_for(the);
    return report;
}

std::vector<Finding> at_hand(const Case& the) {
    Report report;
    sums(the, report);
    usual_of_ingredients(the, report);
    water(the, report);
    return std::move(report.findings);
}

}  // namespace safety
