// Bought scents, flavours and whatever else comes with a certificate: an own entry holds the most that it
// allows, by product kind or IFRA category, entered once. 0 is "not approved". Lines of one entry count
// together. Of a scent without a certificate nothing is known, and that is said. Its allergens are the
// entry's analysis, which the families of constituents read.
#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using quantity::Percent;

bool is_bought_scent(const catalogue::Ingredient& own) {
    return own.role == "fragrance" || own.role == "flavour" || own.role == "flavor" || own.role == "parfum" ||
           own.role == "aroma" || own.role == "scent";
}

struct Most {
    Percent percent;
    std::string where;
};
// The stricter of what it says for this product kind and for its category.
std::optional<Most> most_of(const Case& the, const catalogue::Ingredient& own) {
    std::optional<Most> most;
    const auto take = [&](const std::string& key) {
        const auto found = own.max_percent.find(key);
        if (found != own.max_percent.end() && (!most || found->second < most->percent))
            most = Most{found->second, key};
    };
    take(the.product->id);
    if (the.product->ifra_category) take(the.product->ifra_category->value);
    return most;
}

void hold_against(const Most& most, const Portion& first, Percent sum, Report& report) {
    if (sum <= most.percent) return;
    auto told =
        measured(about(most.percent == Percent{0} ? Code::certificate_forbids : Code::certificate_over,
                       Severity::stop, first.line, subject(first)),
                 sum.grid, most.percent.grid, most.where);
    told.rule = "certificate";
    told.edition = first.own->source;
    report.findings.push_back(sourced(std::move(told), "", first.own->standing));
}

}  // namespace

void scents(const Case& the, Report& report) {
    std::vector<std::string> looked_at, without;
    for (const Portion& portion : the.portions) {
        if (portion.own == nullptr || portion.percent == Percent{0}) continue;
        const catalogue::Ingredient& own = *portion.own;
        if (own.max_percent.empty() && !is_bought_scent(own)) continue;
        const std::size_t before = looked_at.size() + without.size();
        const std::optional<Most> most = the.product == nullptr ? std::nullopt : most_of(the, own);
        // What a stranger's entry allows may forbid, and never clears.
        add_once(most && portion.vouched_for ? looked_at : without, subject(portion));
        if (looked_at.size() + without.size() == before) continue;
        if (!most) {
            auto told = about(Code::certificate_missing, Severity::caution, portion.line, subject(portion));
            if (the.product != nullptr && the.product->ifra_category)
                told.unit = the.product->ifra_category->value;
            report.findings.push_back(
                sourced(std::move(told), kCommonPractice, source::Standing::common_practice));
            continue;
        }
        Percent sum;
        for (const Portion& other : the.portions)
            if (other.own == portion.own) sum = sum + other.percent;
        hold_against(*most, portion, sum, report);
    }
    made(report, Rule::bought_scents, std::move(looked_at));
    if (!without.empty())
        not_made(report, Rule::bought_scents, Reason::certificate_unsaid, std::move(without));
}

}  // namespace safety
