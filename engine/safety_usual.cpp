// What makers usually take: of one ingredient, counted over all lines that hold it, and of all that has one
// role in this kind of product. Beyond it is a caution, below it a note; neither is a limit of safety or law.
// Essential oils in all have guidance of their own, and antioxidants a family, so both are left to these.
#include "safety_family.h"

namespace safety {
namespace {

using finding::Code;
using finding::Severity;
using quantity::Percent;

struct RoleSum {
    const Portion* first = nullptr;
    Percent percent;
    bool by_itself = false;  // on a line of its own, not only within a made part
};

std::vector<RoleSum> sums_of(const Case& the) {
    std::vector<RoleSum> sums;
    for (const Portion& portion : the.portions) {
        if (portion.known == nullptr) continue;
        RoleSum* found = nullptr;
        for (RoleSum& one : sums)
            if (one.first->ingredient == portion.ingredient) found = &one;
        if (found == nullptr) found = &sums.emplace_back(RoleSum{&portion, {}, false});
        found->percent = found->percent + portion.percent;
        found->by_itself =
            found->by_itself || the.formula->lines[portion.line].ingredient == portion.ingredient;
    }
    return sums;
}

bool counts_as(const catalogue::Ingredient& one, std::string_view role) {
    if (role == "water_phase") return one.phase == catalogue::Phase::water;
    if (role == "oils") return one.role == "liquid_oil" || one.role == "butter" || one.role == "soft_fat";
    return one.role == role;
}

void of_roles(const Case& the, Report& report) {
    if (the.product == nullptr) return not_made(report, Rule::usual_share, Reason::product_unsaid);
    std::vector<std::string> looked_at;
    for (const catalogue::UsualShare& usual : the.product->usual) {
        if (usual.role == "essential_oil" || usual.role == "antioxidant") continue;
        Percent sum;
        for (const Portion& portion : the.portions) {
            const bool counts = portion.known != nullptr && counts_as(*portion.known, usual.role);
            if (counts) sum = sum + portion.percent;
            if (counts) add_once(looked_at, subject(portion));
        }
        const bool over = sum.grid > usual.percent.max;
        if (sum == Percent{0} || (!over && sum.grid >= usual.percent.min)) continue;
        report.findings.push_back(
            sourced(measured(about(Code::share_usual_left, Severity::note, {}, usual.role), sum.grid,
                             over ? usual.percent.max : usual.percent.min, "%"),
                    usual.source, usual.standing));
    }
    made(report, Rule::usual_share, std::move(looked_at));
}

}  // namespace

void usual_of_ingredients(const Case& the, Report& report) {
    if (the.product == nullptr) return not_made(report, Rule::usual_ingredient, Reason::product_unsaid);
    if (the.product->contact != "leave_on")
        return not_made(report, Rule::usual_ingredient, Reason::no_figure);
    std::vector<std::string> looked_at, without;
    for (const RoleSum& sum : sums_of(the)) {
        const catalogue::Ingredient& known = *sum.first->known;
        const auto& usual = known.usual_leave_on_percent;
        add_once(usual ? looked_at : without, sum.first->ingredient);
        if (!usual || sum.percent == Percent{0}) continue;
        const bool over = sum.percent.grid > usual->value.max;
        const bool under = sum.percent.grid < usual->value.min && sum.by_itself;
        if ((!over && !under) || (over && known.role == "antioxidant")) continue;
        report.findings.push_back(
            sourced(measured(about(Code::usual_range_left, over ? Severity::caution : Severity::note,
                                   sum.first->line, sum.first->ingredient),
                             sum.percent.grid, over ? usual->value.max : usual->value.min, "%"),
                    usual->source, usual->standing));
    }
    made(report, Rule::usual_ingredient, std::move(looked_at));
    if (!without.empty()) not_made(report, Rule::usual_ingredient, Reason::no_figure, std::move(without));
}

void usual(const Case& the, Report& report) {
    usual_of_ingredients(the, report);
    of_roles(the, report);
}

}  // namespace safety
