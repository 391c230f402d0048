// Percents are as they are typed, so that a formula that does not add up yet is checked all the same; the
// rest line has what is left, and 0 when that is less than nothing. A line that is a made part becomes what
// it holds. Strained lines go out again: what stays is taken as the whole, to the last step of the grid.
#include "analysis_case.h"

#include <algorithm>
#include <utility>

#include "made.h"
#include "workspace_own.h"

namespace analysis {
namespace {

using quantity::kHundred;
using quantity::Percent;
using safety::Portion;

struct Maker {
    const workspace::Recipe& recipe;
    const catalogue::Catalogue& shipped;
    const std::vector<catalogue::Ingredient>& mine;
    std::vector<Portion>& portions;

    bool is_mine(const catalogue::Ingredient* own) const {
        return own != nullptr && std::find(mine.begin(), mine.end(), *own) != mine.end();
    }

    void add(std::size_t line, const std::string& id, const std::string& name, Percent percent) {
        Portion& portion = portions.emplace_back();
        portion.line = line;
        portion.ingredient = id;
        portion.name = name;
        portion.percent = percent;
        if (id.empty()) return;
        portion.known = catalogue::find_ingredient(shipped, id);
        if (portion.known != nullptr) return;
        portion.own = workspace::own_of(recipe, id);
        portion.vouched_for = is_mine(portion.own);
        if (portion.own == nullptr) return;
        const auto* base = catalogue::find_ingredient(shipped, portion.own->based_on);
        portion.known = base != nullptr ? base : portion.own;
    }

    void take(std::size_t line, Percent percent) {
        const formula::Line& said = recipe.formula.lines[line];
        const catalogue::Ingredient* own = recipe.own.empty() || said.ingredient.empty()
                                               ? nullptr
                                               : workspace::own_of(recipe, said.ingredient);
        if (own == nullptr || own->parts.empty() || percent == Percent{0})
            return add(line, said.ingredient, said.name, percent);
        formula::Formula alone;
        alone.lines.push_back(said);
        const auto split = made::split(alone, {percent}, shipped, recipe.own);
        if (!split || split->shares.empty()) return add(line, said.ingredient, said.name, percent);
        for (const made::Share& share : split->shares) {
            add(line, share.ingredient, share.name, share.percent);
            portions.back().vouched_for = portions.back().vouched_for && is_mine(own);
        }
    }
};

// What each line comes to in the product once the strained ones are out.
std::vector<Percent> without_strained(const workspace::Recipe& recipe, const std::vector<Percent>& percents) {
    std::vector<std::int64_t> weights;
    bool any = false;
    std::int64_t sum = 0, all = 0;
    for (std::size_t i = 0; i < percents.size(); ++i) {
        any = any || recipe.formula.lines[i].strained;
        weights.push_back(recipe.formula.lines[i].strained ? 0 : percents[i].grid);
        sum += weights.back();
        all += percents[i].grid;
    }
    if (!any || sum == 0) return percents;
    const auto shares = decimal::share_out(all, weights);
    std::vector<Percent> left;
    for (std::size_t i = 0; i < percents.size(); ++i)
        left.push_back({shares ? (*shares)[i] : weights[i]});
    return left;
}

}  // namespace

safety::Case case_of(const workspace::Recipe& recipe, const catalogue::Catalogue& shipped,
                     const std::vector<catalogue::Ingredient>& mine, const limits::Book* book) {
    safety::Case the;
    the.formula = &recipe.formula;
    the.shipped = &shipped;
    the.stated_sum = formula::stated_sum(recipe.formula);
    if (formula::rest_line(recipe.formula)) the.rest = kHundred - the.stated_sum;
    for (const formula::Line& line : recipe.formula.lines)
        the.percents.push_back(line.rest ? std::max(Percent{0}, *the.rest) : line.percent);
    const std::vector<Percent> left = without_strained(recipe, the.percents);
    the.portions.reserve(left.size());
    Maker maker{recipe, shipped, mine, the.portions};
    for (std::size_t i = 0; i < left.size(); ++i) {
        const formula::Line& line = recipe.formula.lines[i];
        if (!line.strained)
            maker.take(i, left[i]);
        else
            the.strained.push_back(line.ingredient.empty() ? line.name : line.ingredient);
    }
    the.product = catalogue::find_product(shipped, recipe.product);
    the.market = recipe.market;
    the.date = recipe.date;
    the.person = recipe.person;
    the.age_months = recipe.age_months;
    the.ph = recipe.measured_ph;
    the.title = recipe.title;
    the.notes = recipe.notes;
    the.book = book;
    return the;
}

}  // namespace analysis
