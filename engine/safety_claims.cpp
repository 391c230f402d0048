// Words in title and notes that would make a cosmetic a medicine or a drug, or promise protection from the
// sun. The title stands on the label: a stop; notes may be private: a caution. Where a word counts is by
// market; with no market said every market counts. English words only, and only these: a claim can be made in
// a thousand ways, so that finding none says nothing about the rest of the label. US examples (pain, muscles,
// depression, sleep) as a law firm quotes the FDA; SPF makes a drug there (21 CFR part 352 and 740.19). The
// rest from memory of what EU, GB and Canada call a medicinal purpose.
#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using source::Standing;

// Bits of the markets where a word counts.
constexpr unsigned kEu = 1, kGb = 2, kUs = 4, kCa = 8, kAll = kEu | kGb | kUs | kCa;
struct Market {
    std::string_view id, shown;
    unsigned bit;
};
constexpr Market kMarkets[] = {
    {"eu", "EU", kEu}, {"ni", "NI", kEu}, {"gb", "GB", kGb}, {"us", "US", kUs}, {"ca", "CA", kCa}};

// A space at the beginning and end means a whole word; without one at the end, any ending.
struct Claim {
    std::string_view words;
    unsigned where;
};
constexpr Claim kMedicine[] = {
    {" heal ", kAll},
    {" heals ", kAll},
    {" healing ", kAll},
    {" cure ", kAll},
    {" cures ", kAll},
    {" treats ", kAll},
    {" remedy ", kAll},
    {" medicine ", kAll},
    {" medicinal ", kAll},
    {" therapeutic ", kAll},
    {" therapy ", kUs | kCa},
    {" eczema ", kAll},
    {" psoriasis ", kAll},
    {" dermatitis ", kAll},
    {" rosacea ", kAll},
    {" acne ", kAll},
    {" fung", kAll},
    {" athlete s foot ", kAll},
    {" ringworm ", kAll},
    {" cold sore", kAll},
    {" herpes ", kAll},
    {" wart", kAll},
    {" wound", kAll},
    {" antibacterial ", kAll},
    {" antiseptic ", kAll},
    {" antifungal ", kAll},
    {" antiviral ", kAll},
    {" infect", kAll},
    {" inflammat", kAll},
    {" anti inflammat", kAll},
    {" arthritis ", kAll},
    {" rheuma", kAll},
    {" painkill", kAll},
    {" pain relie", kAll},
    {" relieves pain ", kAll},
    {" sore muscle", kUs | kCa},
    {" relaxes muscles ", kUs},
    {" muscle relie", kAll},
    {" headache", kAll},
    {" migraine", kAll},
    {" insomnia ", kAll},
    {" helps sleep ", kUs},
    {" depression ", kAll},
    {" anxiety ", kAll},
    {" nappy rash ", kAll},
    {" diaper rash ", kAll},
    {" lip protectant ", kUs},
    {" skin protectant ", kUs},
    {" varicose ", kAll},
};
constexpr Claim kSun[] = {
    {" spf ", kAll},       {" sunscreen", kAll}, {" sun screen", kAll},
    {" sunblock", kAll},   {" sun block", kAll}, {" sun protection ", kAll},
    {" sun cream ", kAll}, {" suncream ", kAll}, {" uv protection ", kAll},
    {" uva ", kAll},       {" uvb ", kAll},      {" protects from the sun ", kAll},
};
// "No sun protection", "not a medicine": what is denied is no claim.
constexpr std::string_view kDenied[] = {" no",  " not a", " not",     " never",
                                        " nor", " non",   " without", " is no"};

unsigned markets_of(const Case& the) {
    unsigned bits = 0;
    for (const Market& market : kMarkets)
        if (the.market.empty() || the.market == market.id) bits |= market.bit;
    return bits;
}

bool ends_with(std::string_view text, std::string_view ending) {
    return text.size() >= ending.size() && text.substr(text.size() - ending.size()) == ending;
}

bool is_denied(std::string_view before) {
    for (const std::string_view word : kDenied)
        if (ends_with(before, word)) return true;
    return false;
}

bool says(const std::string& text, std::string_view words) {
    for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1))
        if (!is_denied(std::string_view(text).substr(0, at))) return true;
    return false;
}

std::string shown(std::string_view words) {
    while (!words.empty() && words.front() == ' ')
        words.remove_prefix(1);
    while (!words.empty() && words.back() == ' ')
        words.remove_suffix(1);
    return std::string(words);
}

template <std::size_t kCount>
void look(const std::string& text, const Claim (&claims)[kCount], unsigned here, Code code, Severity severity,
          Report& report) {
    std::string found;
    unsigned where = 0;
    for (const Claim& claim : claims) {
        if ((claim.where & here) == 0 || !says(text, claim.words)) continue;
        found += (found.empty() ? "" : ", ") + shown(claim.words);
        where |= claim.where & here;
    }
    if (found.empty()) return;
    auto told = sourced(about(code, severity, {}, ""), kMemory, Standing::memory);
    told.material = found;
    for (const Market& market : kMarkets)
        if ((where & market.bit) != 0 && market.id != "ni")
            told.unit += (told.unit.empty() ? "" : ", ") + std::string(market.shown);
    report.findings.push_back(std::move(told));
}

void filters(const Case& the, Report& report) {
    std::vector<std::string> told;
    for (const Portion& portion : the.portions) {
        if (portion.known == nullptr || !catalogue::has_trait(*portion.known, "uv_filter")) continue;
        const std::size_t before = told.size();
        add_once(told, subject(portion));
        if (told.size() == before) continue;
        report.findings.push_back(
            sourced(about(Code::uv_filter_without_claim, Severity::note, portion.line, subject(portion)),
                    portion.known->traits->source, portion.known->traits->standing));
    }
    made(report, Rule::sun_protection, std::move(told));
}

}  // namespace

void claims(const Case& the, Report& report) {
    const std::string title = spaced(the.title), notes = spaced(the.notes);
    const unsigned here = markets_of(the);
    look(title, kSun, kAll, Code::claims_sun_protection, Severity::stop, report);
    look(notes, kSun, kAll, Code::claims_sun_protection, Severity::caution, report);
    filters(the, report);
    if (here == 0) return not_made(report, Rule::claims, Reason::market_not_covered);
    look(title, kMedicine, here, Code::claims_medicine, Severity::stop, report);
    look(notes, kMedicine, here, Code::claims_medicine, Severity::caution, report);
    made(report, Rule::claims);
}

}  // namespace safety
