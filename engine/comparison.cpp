#include "comparison.h"

#include "analysis.h"
#include "analysis_blend.h"
#include "cost.h"
#include "utf8.h"

namespace comparison {
namespace {

using finding::Code;
using finding::Finding;
using workspace::Recipe;

// The row of a kind, made where there is none yet.
Row& row_of(Table& table, Part part, Unit unit, std::string_view key, std::size_t sides) {
    for (Row& row : table.rows)
        if (row.part == part && row.key == key) return row;
    return table.rows.emplace_back(
        Row{part, unit, std::string(key), "", std::vector<std::optional<std::int64_t>>(sides)});
}

void lines_of(Table& table, const Recipe& recipe, std::size_t side, std::size_t sides,
              const catalogue::Catalogue& shipped) {
    const auto percents = formula::percents(recipe.formula);
    for (std::size_t i = 0; i < recipe.formula.lines.size(); ++i) {
        const formula::Line& line = recipe.formula.lines[i];
        const std::string key = line.ingredient.empty() ? utf8::lowered(line.name) : line.ingredient;
        std::optional<std::int64_t> value;
        if (percents || !line.rest) value = percents ? (*percents)[i].grid : line.percent.grid;
        Row* found = nullptr;  // twice in one formula: two rows
        for (Row& row : table.rows)
            if (row.part == Part::lines && row.key == key && !row.values[side] && !found) found = &row;
        if (!found) {
            found = &table.rows.emplace_back(
                Row{Part::lines, Unit::percent, key, "", std::vector<std::optional<std::int64_t>>(sides)});
            found->name = workspace::display_name(shipped, line);
            for (const catalogue::Ingredient& own : recipe.own)
                if (own.id == line.ingredient && !own.name.empty()) found->name = own.name;
        }
        found->values[side] = value;
    }
}

// Of what it is made of and what follows; how far that is known stands beside it.
void blend_of(Table& table, const Recipe& recipe, std::size_t side, std::size_t sides, const Ground& ground) {
    const auto made = analysis::blended(recipe, ground.shipped, {});
    // To a tenth, Cox to a hundredth: finer than that they are not good for, and what does not show does not
    // differ.
    const auto put = [&](std::string_view key, Unit unit, std::optional<std::int64_t> value,
                         std::int64_t step = decimal::kOne / 10) {
        if (value) value = decimal::scale_nearest(*value, 1, step) * step;
        row_of(table, Part::blend, unit, key, sides).values[side] = value;
    };
    if (!made) return;
    const blend::Blend& blend = made->blend;
    const bool firm = made->firm.rough == blend::Rough::fits;
    put("firmness", Unit::number, firm ? std::optional(made->firm.firmness) : std::nullopt);
    for (std::size_t i = 0; i < blend::kKinds; ++i)
        put(blend::kind_name(static_cast<blend::Kind>(i)), Unit::percent, blend.shares[i].grid);
    put("iodine", Unit::number, blend.iodine.computed.value);
    put("saponification", Unit::number, blend.saponification.computed.value);
    put("cox", Unit::number, blend.oxidisability.cox.value, decimal::kOne / 100);
    const blend::Coverage& of = blend.profile.of;
    put("profile_known", Unit::percent,
        of.asked.grid > 0
            ? std::optional(decimal::scale_nearest(of.known.grid, 100 * decimal::kOne, of.asked.grid))
            : std::nullopt);
    for (const blend::Acid& acid : blend.profile.acids) {
        put("acid " + acid.name, Unit::percent, acid.percent.grid);
        row_of(table, Part::blend, Unit::percent, "acid " + acid.name, sides).name = acid.name;
    }
}

// An acid that only another side has is nought where the others are known.
void fill_acids(Table& table) {
    for (Row& row : table.rows)
        for (std::size_t side = 0; side < row.values.size(); ++side) {
            if (row.part != Part::blend || row.name.empty() || row.values[side]) continue;
            for (const Row& other : table.rows)
                if (other.part == Part::blend && !other.name.empty() && other.values[side])
                    row.values[side] = 0;
        }
}

void checks_of(Table& table, const safety::Report& report, std::size_t side, std::size_t sides) {
    std::int64_t counts[7] = {};  // by severity, and what is asked at a stall
    for (const Finding& one : report.findings) {
        ++counts[static_cast<int>(one.severity)];
        if (one.code == Code::origin_bee || one.code == Code::origin_wool) ++counts[4];
        if (one.code == Code::origin_nut) ++counts[5];
        if (one.code == Code::origin_depends) ++counts[6];
    }
    counts[3] = static_cast<std::int64_t>(report.not_made.size());
    constexpr std::string_view kKeys[] = {"notes",  "cautions", "stops",  "not_made",
                                          "animal", "nut",      "depends"};
    for (const int i : {2, 1, 0, 3, 4, 5, 6})
        row_of(table, Part::checks, Unit::count, kKeys[i], sides).values[side] = counts[i] * decimal::kOne;
}

void cost_of(Table& table, const Recipe& recipe, std::size_t side, std::size_t sides, const Ground& ground) {
    if (!ground.prices || ground.prices->currency.empty()) return;
    table.currency = ground.prices->currency;
    row_of(table, Part::cost, Unit::money, "ingredients", sides);
    row_of(table, Part::cost, Unit::percent, "cost_known", sides);
    const auto percents = formula::percents(recipe.formula);
    if (!percents) return;
    catalogue::Catalogue laid;
    if (!recipe.own.empty()) laid = catalogue::with_own(ground.shipped, recipe.own);
    const auto made = cost::of(
        {recipe.formula, *percents, nullptr, recipe.own.empty() ? ground.shipped : laid, ""}, *ground.prices);
    if (!made) return;
    row_of(table, Part::cost, Unit::money, "ingredients", sides).values[side] =
        money::grid_of(made->amount, made->currency);
    row_of(table, Part::cost, Unit::percent, "cost_known", sides).values[side] = made->known.grid;
}

bool alike(const Finding& one, const Finding& other) {
    return one.code == other.code && one.subject == other.subject && one.constituent == other.constituent &&
           one.rule == other.rule;
}

// Those of `one` that `other` has not.
std::vector<Finding> only(const safety::Report& one, const safety::Report& other) {
    std::vector<Finding> left;
    for (const Finding& mine : one.findings) {
        bool there = false;
        for (const Finding& theirs : other.findings)
            there = there || alike(mine, theirs);
        if (!there) left.push_back(mine);
    }
    return left;
}

}  // namespace

std::string_view part_name(Part part) {
    constexpr std::string_view kNames[] = {"lines", "blend", "checks", "cost"};
    return kNames[static_cast<int>(part)];
}

bool Row::differs() const {
    for (const auto& value : values)
        if (value != values.front()) return true;
    return false;
}

Table of(const std::vector<const Recipe*>& sides, const Ground& ground) {
    Table table;
    const std::size_t count = sides.size();
    std::vector<safety::Report> reports;
    for (std::size_t i = 0; i < count; ++i)
        lines_of(table, *sides[i], i, count, ground.shipped);
    for (std::size_t i = 0; i < count; ++i)
        blend_of(table, *sides[i], i, count, ground);
    fill_acids(table);
    for (std::size_t i = 0; i < count; ++i) {
        reports.push_back(
            analysis::checks(*sides[i], ground.shipped, ground.book, ground.bench, ground.mine));
        checks_of(table, reports.back(), i, count);
    }
    for (std::size_t i = 0; i < count; ++i)
        cost_of(table, *sides[i], i, count, ground);
    if (count > 1) {
        table.come = only(reports.back(), reports.front());
        table.gone = only(reports.front(), reports.back());
    }
    return table;
}

}  // namespace comparison
