// What stands in for what, worked out in a formula, and the nearest formula without an ingredient. Factors
// are those of presets/stand_ins.json; what is said of them is tested here, not whether they are right.
#include <cmath>
#include <set>

#include "doctest/doctest.h"
#include "engine/swap.h"
#include "shipped.h"

namespace test_swap {

using quantity::Percent;
using result::Code;
using swap::Basis;
using swap::StandIn;

namespace {

const catalogue::Catalogue& known() {
    return shipped::presets().catalogue;
}

// Percent 0: the rest line.
formula::Formula formula_of(const std::vector<std::pair<const char*, double>>& lines) {
    formula::Formula formula;
    formula.phases.push_back({});
    for (const auto& [id, percent] : lines) {
        formula::Line line;
        line.ingredient = id;
        line.percent = {decimal::rounded(percent)};
        line.rest = percent == 0;
        formula.lines.push_back(line);
    }
    return formula;
}

StandIn stand_in(const char* of, const char* by) {
    for (const StandIn& one : swap::stand_ins(known(), of))
        if (one.ingredient == by) return one;
    FAIL("there is none");
    return {};
}

double percent_of(const formula::Formula& formula, const char* id) {
    const auto all = formula::percents(formula);
    REQUIRE(all.ok());
    double sum = 0;
    for (std::size_t i = 0; i < formula.lines.size(); ++i)
        if (formula.lines[i].ingredient == id) sum += decimal::to_double((*all)[i].grid);
    return sum;
}

const swap::Share& share(const std::vector<swap::Share>& all, const char* key) {
    for (const swap::Share& one : all)
        if (one.key == key) return one;
    FAIL("no such share");
    return all.front();
}

}  // namespace

TEST_CASE("swap: 20 % beeswax is 10 % candelilla by the factor a half, and the rest line takes up the 10 %") {
    const StandIn half = stand_in("beeswax_yellow", "candelilla");
    CHECK(half.factor == 5000);
    CHECK(half.basis == Basis::factor);
    CHECK(half.standing == source::Standing::memory);
    const auto after =
        swap::taken(formula_of({{"beeswax_yellow", 20}, {"shea", 30}, {"olive", 0}}), 0, half, known());
    REQUIRE(after.ok());
    CHECK(percent_of(*after, "candelilla") == 10);
    CHECK(percent_of(*after, "shea") == 30);
    CHECK(percent_of(*after, "olive") == 60);
    CHECK(after->lines[2].rest);
}

TEST_CASE(
    "swap: a factor is turned round, and leads over a third ingredient, each with its range and as an "
    "estimate") {
    const StandIn back = stand_in("candelilla", "beeswax_yellow");
    CHECK(back.factor == 20000);
    CHECK(back.range == catalogue::Range{14286, 25000});  // 1/0.7 and 1/0.4
    CHECK(back.basis == Basis::worked_out);
    CHECK(back.standing == source::Standing::estimate);
    const StandIn over = stand_in("candelilla", "carnauba");
    CHECK(over.factor == 8000);  // 2 × 0.4
    CHECK(over.by_way_of == "beeswax_yellow");
    CHECK(over.range == catalogue::Range{3572, 12500});  // 1.4286 × 0.25 and 2.5 × 0.5
    CHECK(stand_in("shea", "kokum").basis == Basis::same_role);
    CHECK(stand_in("shea", "kokum").standing == source::Standing::estimate);
    CHECK(stand_in("olive", "sunflower").basis == Basis::factor);
    CHECK_FALSE(stand_in("olive", "sunflower").note.empty());
}

TEST_CASE("swap: nothing stands in by weight for what is there for its scent or for what it does") {
    for (const char* id : {"lavender", "phenoxyethanol", "tocopherol", "ewax_nf", "zinc_oxide", "vanilla"})
        CHECK(swap::stand_ins(known(), id).empty());
    CHECK(swap::stand_ins(known(), "nobody").empty());
    CHECK(swap::stand_ins(known(), "lanolin").front().ingredient == "cupuacu");
}

TEST_CASE(
    "swap: the best known come first, none twice, none is the ingredient itself, each says where from") {
    for (const catalogue::Ingredient& one : known().ingredients) {
        const std::vector<StandIn> all = swap::stand_ins(known(), one.id);
        std::set<std::string> seen{one.id};
        for (std::size_t i = 0; i < all.size(); ++i) {
            CAPTURE(one.id);
            CAPTURE(all[i].ingredient);
            CHECK(seen.insert(all[i].ingredient).second);
            CHECK(catalogue::find_source(known(), all[i].source) != nullptr);
            CHECK(all[i].range.min <= all[i].factor);
            CHECK(all[i].factor <= all[i].range.max);
            if (i > 0) CHECK(all[i - 1].basis <= all[i].basis);
        }
    }
}

TEST_CASE("swap: every line of every starter by all that can stand in for it still adds to 100") {
    std::size_t count = 0;
    for (const auto& [stem, recipe] : shipped::presets().recipes)
        for (std::size_t line = 0; line < recipe.formula.lines.size(); ++line)
            for (const StandIn& one : swap::stand_ins(known(), recipe.formula.lines[line].ingredient)) {
                const auto after = swap::taken(recipe.formula, line, one, known());
                if (!after) {
                    CHECK(after.error().code == Code::gives_too_little);
                    continue;
                }
                ++count;
                const auto all = formula::percents(*after);
                REQUIRE(all.ok());
                Percent sum;
                for (const Percent percent : *all)
                    sum = sum + percent;
                CHECK(sum == quantity::kHundred);
                CHECK(formula::checked(*after).ok());
            }
    CHECK(count > 200);
}

TEST_CASE("swap: the rest line itself, no rest line, and a line that is there already") {
    const StandIn wax = stand_in("beeswax_yellow", "candelilla");
    // The wax is the rest line: the oil there is most of takes up the difference.
    const auto rest =
        swap::taken(formula_of({{"beeswax_yellow", 0}, {"olive", 50}, {"castor", 20}}), 0, wax, known());
    REQUIRE(rest.ok());
    CHECK(percent_of(*rest, "candelilla") == 15);
    CHECK(percent_of(*rest, "olive") == 65);
    CHECK(rest->lines[0].rest);
    // Joined with what is there.
    const auto joined = swap::taken(formula_of({{"olive", 30}, {"shea", 30}, {"castor", 0}}), 0,
                                    stand_in("olive", "castor"), known());
    REQUIRE(joined.ok());
    CHECK(joined->lines.size() == 2);
    CHECK(percent_of(*joined, "castor") == 70);
    const auto plain =
        swap::taken(formula_of({{"candelilla", 10}, {"beeswax_yellow", 10}, {"olive", 80}}), 1, wax, known());
    REQUIRE(plain.ok());
    CHECK(percent_of(*plain, "candelilla") == 15);
    CHECK(percent_of(*plain, "olive") == 85);
}

TEST_CASE("swap: what cannot be is said: locked, nothing that gives way, too little, no such line, no sum") {
    const StandIn wax = stand_in("beeswax_yellow", "candelilla"),
                  back = stand_in("candelilla", "beeswax_yellow");
    auto locked = formula_of({{"beeswax_yellow", 20}, {"olive", 0}});
    locked.lines[0].locked = true;
    CHECK(swap::taken(locked, 0, wax, known()).error().code == Code::line_locked);
    locked = formula_of({{"beeswax_yellow", 20}, {"olive", 80}});
    locked.lines[1].locked = true;
    CHECK(swap::taken(locked, 0, wax, known()).error().code == Code::nothing_gives_way);
    const auto little =
        swap::taken(formula_of({{"candelilla", 60}, {"shea", 10}, {"olive", 0}}), 0, back, known());
    CHECK(little.error().code == Code::gives_too_little);
    CHECK(swap::taken(locked, 7, wax, known()).error().code == Code::line_missing);
    CHECK(swap::taken(formula_of({{"beeswax_yellow", 20}, {"olive", 30}}), 0, wax, known()).error().code ==
          Code::sum_not_hundred);
}

TEST_CASE(
    "swap: the nearest without beeswax keeps the wax by its factors and leaves the rest to the rest line") {
    const auto before = formula_of({{"beeswax_yellow", 20}, {"shea", 30}, {"olive", 0}});
    const auto one = swap::nearest(before, {0, {"candelilla"}, false}, known());
    REQUIRE(one.ok());
    CHECK(percent_of(one->formula, "candelilla") == 10);
    CHECK(percent_of(one->formula, "olive") == 60);
    CHECK_FALSE(one->apart);
    CHECK(share(one->roles, "wax").is == quantity::percent(20));
    const auto there = swap::nearest(formula_of({{"beeswax_yellow", 20}, {"candelilla", 5}, {"olive", 0}}),
                                     {0, {"candelilla"}, false}, known());
    REQUIRE(there.ok());  // on top of what there is
    CHECK(percent_of(there->formula, "candelilla") == 15);
    CHECK(there->formula.lines.size() == 2);
    const auto two = swap::nearest(before, {0, {"candelilla", "rice_bran_wax"}, false}, known());
    REQUIRE(two.ok());  // half of the wax by each, where nothing else decides
    CHECK(percent_of(two->formula, "candelilla") == doctest::Approx(5));
    CHECK(percent_of(two->formula, "rice_bran_wax") == doctest::Approx(7));
    CHECK(percent_of(two->formula, "olive") == doctest::Approx(58));
}

TEST_CASE(
    "swap: the nearest without coconut is babassu, which differs in few of the fatty acids, and says how "
    "far") {
    const auto before = formula_of({{"coconut", 40}, {"olive", 60}});
    const auto found = swap::nearest(before, {0, {"babassu", "cocoa"}, false}, known());
    REQUIRE(found.ok());
    CHECK(percent_of(found->formula, "babassu") > 35);
    REQUIRE(found->apart);
    CHECK(*found->apart < quantity::percent(10));
    CHECK(*found->apart > Percent{0});
    double other = 0, whole = 0;  // what is told adds up to what is told
    for (const swap::Share& acid : found->acids) {
        other += std::abs(decimal::to_double(acid.is.grid - acid.was.grid)) / 2;
        whole += decimal::to_double(acid.was.grid);
    }
    CHECK(decimal::to_double(found->apart->grid) == doctest::Approx(100 * other / whole).epsilon(1e-3));
}

TEST_CASE("swap: no split of two oils in steps of 0.1 % is nearer than the one that is given") {
    const auto before = formula_of({{"almond", 50}, {"shea", 30}, {"beeswax_yellow", 20}});
    const std::vector<std::string> by{"olive", "sunflower"};
    const auto found = swap::nearest(before, {0, by, false}, known());
    REQUIRE(found.ok());
    const auto acid = [&](const std::string& id, const std::string& key) {
        const auto& percent = catalogue::find_ingredient(known(), id)->fatty_acids->value.percent;
        const auto at = percent.find(key);
        return at == percent.end() ? 0.0 : decimal::to_double(at->second) / 100;
    };
    const auto off = [&](double first) {
        double sum = 0;
        for (const swap::Share& one : found->acids) {
            const double is = acid(by[0], one.key) * first + acid(by[1], one.key) * (50 - first);
            sum += std::pow(is - acid("almond", one.key) * 50, 2);
        }
        return sum;
    };
    double best = 0;
    for (int tenths = 0; tenths <= 500; ++tenths)
        if (off(tenths / 10.0) < off(best)) best = tenths / 10.0;
    CHECK(percent_of(found->formula, "olive") == doctest::Approx(best).epsilon(1e-6));
    CHECK(percent_of(found->formula, "sunflower") == doctest::Approx(50 - best).epsilon(1e-6));
}

TEST_CASE("swap: with others moving it is never further off, locked lines stay, and the sum is 100") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        for (std::size_t line = 0; line < recipe.formula.lines.size(); ++line) {
            std::vector<std::string> by;
            for (const StandIn& one : swap::stand_ins(known(), recipe.formula.lines[line].ingredient))
                if (by.size() < 4) by.push_back(one.ingredient);
            if (by.empty() || recipe.formula.lines[line].locked) continue;
            const auto still = swap::nearest(recipe.formula, {line, by, false}, known());
            const auto moving = swap::nearest(recipe.formula, {line, by, true}, known());
            REQUIRE(still.ok());
            REQUIRE(moving.ok());
            for (const auto* one : {&still, &moving}) {
                const auto all = formula::percents((*one)->formula);
                REQUIRE(all.ok());
                CHECK(formula::checked((*one)->formula).ok());
                for (const formula::Line& left : (*one)->formula.lines)
                    CHECK(left.ingredient != recipe.formula.lines[line].ingredient);
            }
        }
    }
}

TEST_CASE("swap: what has no profile is named, where fatty acids decide") {
    const auto before = formula_of({{"almond", 50}, {"shea", 50}});
    CHECK(swap::nearest(before, {0, {"olive"}, false}, known())->unprofiled.empty());
    CHECK(swap::nearest(before, {0, {"olive", "squalane"}, false}, known())->unprofiled ==
          std::vector<std::string>{"squalane"});
    catalogue::Catalogue less = known();  // a datum is removed, and it is said
    for (catalogue::Ingredient& one : less.ingredients)
        if (one.id == "olive") one.fatty_acids.reset();
    CHECK(swap::nearest(before, {0, {"olive"}, false}, less)->unprofiled ==
          std::vector<std::string>{"olive"});
    for (catalogue::Ingredient& one : less.ingredients)
        if (one.id == "almond") one.fatty_acids.reset();
    CHECK_FALSE(swap::nearest(before, {0, {"olive"}, false}, less)->apart);
}

TEST_CASE("swap: a wish for nothing, for a stranger, for the ingredient itself is refused with its place") {
    const auto before = formula_of({{"almond", 50}, {"shea", 50}});
    CHECK(swap::nearest(before, {0, {}, false}, known()).error().place == "by");
    CHECK(swap::nearest(before, {0, {"olive", "nobody"}, false}, known()).error().place == "by[1]");
    CHECK(swap::nearest(before, {0, {"almond"}, false}, known()).error().code == Code::field_unknown_value);
    CHECK(swap::nearest(before, {9, {"olive"}, false}, known()).error().code == Code::line_missing);
    CHECK(swap::nearest(before, {0, std::vector<std::string>(21, "olive"), false}, known()).error().code ==
          Code::too_many);
}

}  // namespace test_swap
