// How much of a line may be: the published and constructed figures (T14, T17, T18, T32, EX-12, EX-13), and by
// random formulas that the ceiling passes, weighed too, while the next step of the grid does not.
#include <algorithm>
#include <string>
#include <vector>

#include "engine/batch_rounding.h"
#include "engine/ceiling.h"
#include "engine/chance.h"
#include "limited.h"

namespace test_ceiling {

namespace {

using limited::percent;
using limited::Setup;
using limited::trace;
using quantity::Mass;
using quantity::Percent;

ceiling::With with(Setup& setup, std::size_t line) {
    return [&setup, line](Percent share) {
        if (line < setup.formula.lines.size()) setup.formula.lines[line].percent = share;
        return setup.the();
    };
}

ceiling::Ceiling most(Setup& setup, std::size_t line, const ceiling::Weighed& weighed = {}) {
    const Percent before = setup.formula.lines[line].percent;
    const auto found = ceiling::of(with(setup, line), line, weighed);
    setup.formula.lines[line].percent = before;
    REQUIRE(found);
    return *found;
}

// Only the rows of this name hold.
Setup& only(Setup& setup, std::string_view row) {
    std::erase_if(setup.book.rows, [&](const limits::Row& one) { return one.id != row; });
    setup.book.levels.clear();
    return setup;
}

ceiling::Weighed scales(Setup& setup, std::size_t line, Mass total, Mass division) {
    return [&setup, line, total, division](Percent share) {
        setup.formula.lines[line].percent = share;
        const safety::Case the = setup.the();
        const std::vector<Mass> divisions(the.percents.size(), division);
        const auto made = batch::rounded({total, true, the.percents, divisions, {}});
        return made ? made->grams : std::vector<Mass>{};
    };
}

bool passes(const safety::Case& the, std::size_t line) {
    const safety::Bounds bounds = safety::bounds_of(the);
    return std::none_of(bounds.all.begin(), bounds.all.end(), [&](const safety::Bound& bound) {
        return safety::goes_beyond(the, bound) &&
               std::any_of(bound.terms.begin(), bound.terms.end(),
                           [&](const safety::Term& term) { return the.portions[term.portion].line == line; });
    });
}

// Weighed, worked out apart: grams of each line times its weight against the limit times the whole.
bool passes_weighed(const safety::Case& the, std::size_t line, const std::vector<Mass>& grams) {
    __extension__ typedef __int128 Wide;
    const safety::Bounds bounds = safety::bounds_of(the);
    Wide whole = 0;
    for (const Mass& one : grams)
        whole += one.grid;
    for (const safety::Bound& bound : bounds.all) {
        Wide sum = 0;
        bool counts = false;
        for (const safety::Term& term : bound.terms) {
            sum += static_cast<Wide>(grams[the.portions[term.portion].line].grid) * term.high *
                   quantity::kHundred.grid;
            counts = counts || the.portions[term.portion].line == line;
        }
        if (counts && sum > bound.most * whole) return false;
    }
    return true;
}

const std::vector<std::string>& oils() {
    static const std::vector<std::string> all = [] {
        std::vector<std::string> ids;
        for (const catalogue::Ingredient& one : shipped::presets().catalogue.ingredients)
            if (one.role == "essential_oil" || one.role == "extract") ids.push_back(one.id);
        return ids;
    }();
    return all;
}

const char* const kKinds[] = {"salve", "lip_balm", "face_oil", "body_scrub", "hand_lotion", "solid_perfume"};

Setup random_formula(chance::Generator& generator, std::size_t count) {
    Setup setup({});
    for (std::size_t i = 0; i < count; ++i) {
        const std::string& oil = oils()[static_cast<std::size_t>(generator.below(oils().size()))];
        const auto on = std::find_if(setup.formula.lines.begin(), setup.formula.lines.end(),
                                     [&](const formula::Line& line) { return line.ingredient == oil; });
        if (on == setup.formula.lines.end())
            setup.add(oil, "", Percent{static_cast<std::int64_t>(generator.below(8000))});
    }
    setup.with(kKinds[generator.below(std::size(kKinds))]);
    setup.in(generator.below(2) == 0 ? "eu" : "gb");
    return setup;
}

}  // namespace

TEST_CASE("T14: rose otto up to the EU's methyl eugenol limit: 0.04, 0.01 and 0.006 % of the oil") {
    for (const auto& [content, share] : {std::pair{0.5, 0.04}, std::pair{2.0, 0.01}, std::pair{3.3, 0.006}}) {
        Setup setup({{"rose_otto", 1}});
        setup.holding("rose_otto", {{"methyl_eugenol", content}});
        const ceiling::Ceiling found = most(setup, 0);
        CHECK(found.most == percent(share));
        CHECK(found.bound);
        REQUIRE(found.why);
        CHECK(found.why->rule == "III/102");
        CHECK(found.why->source == "cosing_iii_2024");
        only(setup, "Essential Oil Safety, methyl eugenol");  // a hundred times as much: 4, 1, 0.606 %
        const double guidance = content == 0.5 ? 4 : content == 2.0 ? 1 : 0.606;
        CHECK(most(setup, 0).most == percent(guidance));
    }
}

TEST_CASE("T17, T18, EX-12, EX-13, EX2-11: limit over content, cut off at the grid") {
    struct Example {
        const char *oil, *constituent;
        double content;
        const char *product, *row;
        double most;
    };
    for (const Example& one : {
             Example{"wintergreen", "methyl_salicylate", 99.9, "salve", "III/324", 0.06},
             Example{"wintergreen", "methyl_salicylate", 99.9, "lip_balm", "III/324", 0.03},
             Example{"cinnamon_bark", "cinnamal", 75, "salve", "Essential Oil Safety, cinnamal", 0.0666},
             Example{"lemongrass", "citral", 75, "lip_balm", "III/70", 0.1466},
             Example{"lemongrass", "citral", 75, "salve", "III/70", 0.2},
             Example{"basil_estragole", "estragole", 80, "salve", "IFRA 49 estragole", 0.0937},
             Example{"basil_estragole", "estragole", 80, "face_cream", "IFRA 49 estragole", 0.0077},
             Example{"basil_estragole", "estragole", 80, "lip_balm", "IFRA 49 estragole", 0.015},
             Example{"nutmeg", "safrole", 2, "salve", "II/360", 0.5},
         }) {
        CAPTURE(one.row);
        CAPTURE(one.product);
        Setup setup({{one.oil, 0}});
        only(setup.with(one.product).holding(one.oil, {{one.constituent, one.content}}), one.row);
        CHECK(most(setup, 0).most == percent(one.most));
    }
}

TEST_CASE("T32: the lower of an oil's own maximum and of what its constituent allows") {
    const auto at = [](const char* oil, const char* constituent, double content, const char* own,
                       const char* derived) {
        Setup by_oil({{oil, 0}}), by_constituent({{oil, 0}});
        only(by_oil.holding(oil, {{constituent, content}}), own);
        only(by_constituent.holding(oil, {{constituent, content}}), derived);
        return std::pair{most(by_oil, 0).most, most(by_constituent, 0).most};
    };
    CHECK(at("lemongrass", "citral", 88, "Essential Oil Safety, lemongrass",
             "Essential Oil Safety, citral") == std::pair{percent(0.7), percent(0.6818)});
    CHECK(at("cinnamon_bark", "cinnamal", 75, "Essential Oil Safety, cinnamon bark",
             "Essential Oil Safety, cinnamal") == std::pair{percent(0.07), percent(0.0666)});
    CHECK(at("clove_bud", "eugenol", 88, "Essential Oil Safety, clove bud",
             "Essential Oil Safety, eugenol") == std::pair{percent(0.5), percent(0.5681)});
    CHECK(at("anise", "estragole", 5, "Essential Oil Safety, anise", "Essential Oil Safety, estragole") ==
          std::pair{percent(2.4), percent(2.4)});
}

TEST_CASE("upward the usual amount is offered, and never more than the ceiling") {
    Setup setup({{"lavender", 0.2}});
    const ceiling::Ceiling found = most(setup, 0);
    CHECK(found.most > percent(2));
    REQUIRE(found.usual);
    CHECK(*found.usual <= percent(2));
    Setup rose({{"rose_otto", 0.001}});
    const ceiling::Ceiling low = most(rose, 0);
    REQUIRE(low.usual);
    CHECK(*low.usual <= low.most);
}

TEST_CASE("what other lines have taken up is not there any more; gaps are named") {
    Setup setup({{"bergamot", 0.2}, {"lemon_expressed", 0}});
    setup.with("face_oil");
    setup.book.rows.clear();
    const ceiling::Ceiling lemon = most(setup, 1);
    CHECK(lemon.most == percent(1));  // half of what is allowed is bergamot's
    CHECK(lemon.why->code == finding::Code::phototoxic_over);
    Setup clove({{"clove_bud", 0.1}});
    const auto gaps = most(clove, 0).gaps;
    CHECK(
        std::any_of(gaps.begin(), gaps.end(), [](const auto& gap) { return gap.row == "IFRA 51 eugenol"; }));
}

TEST_CASE("a line that may not be there at all has a ceiling of nothing, with the reason") {
    Setup setup({{"peppermint", 0.5}});
    const ceiling::Ceiling found = most(setup.child(20), 0);
    CHECK(found.most == Percent{0});
    CHECK(found.bound);
    REQUIRE(found.why);
    CHECK(found.why->severity == finding::Severity::stop);
    Setup wax({{"beeswax_white", 20}});
    CHECK_FALSE(most(wax, 0).bound);
    CHECK(most(wax, 0).most == quantity::kHundred);
    CHECK(ceiling::of(with(wax, 7), 7).error().code == result::Code::line_missing);
}

TEST_CASE("a coarse scale lowers the ceiling to what it can weigh") {
    Setup setup({{"cinnamon_bark", 0}});
    only(setup.holding("cinnamon_bark", {{"cinnamal", 75}}), "Essential Oil Safety, cinnamal");
    const ceiling::Ceiling fine = most(setup, 0, scales(setup, 0, quantity::grams(1000), Mass{100}));
    CHECK(fine.most == percent(0.0665));  // 0.66 g; 0.0666 % would be weighed as 0.67 g
    CHECK(fine.by_grams);
    const ceiling::Ceiling coarse = most(setup, 0, scales(setup, 0, quantity::grams(100), Mass{10000}));
    CHECK(coarse.by_grams == false);
    CHECK(coarse.most == percent(0.0666));  // rounds to nothing
}

TEST_CASE("the ceiling passes, as it is weighed too, and the next step does not: random formulas") {
    chance::Generator generator(20261126);
    int bound = 0, by_grams = 0;
    for (int round = 0; round < 60; ++round) {
        Setup setup = random_formula(generator, 1 + generator.below(6));
        const std::size_t line = static_cast<std::size_t>(generator.below(setup.formula.lines.size() - 1));
        if (setup.formula.lines.size() < 2) continue;
        const Mass total{static_cast<std::int64_t>(200'000 + 10'000 * generator.below(400))};
        const Mass division{generator.below(2) == 0 ? 100 : 1000};
        const ceiling::Weighed weighed = scales(setup, line, total, division);
        const ceiling::Ceiling found = most(setup, line, weighed);
        CAPTURE(round);
        CAPTURE(setup.formula.lines[line].ingredient);
        const safety::Case at = with(setup, line)(found.most);
        if (found.most.grid > 0) {
            CHECK(passes(at, line));
            CHECK(passes_weighed(at, line, weighed(found.most)));
        }
        if (!found.bound) continue;
        ++bound;
        by_grams += found.by_grams ? 1 : 0;
        const Percent next = found.most + Percent{1};
        const safety::Case beyond = with(setup, line)(next);
        CHECK_FALSE((passes(beyond, line) && passes_weighed(beyond, line, weighed(next))));
    }
    CHECK(bound > 30);
    CHECK(by_grams > 3);
}

TEST_CASE("more of an oil never lowers a constituent while the rest is free of it: random formulas") {
    chance::Generator generator(7);
    for (int round = 0; round < 300; ++round) {
        Setup setup = random_formula(generator, 1 + generator.below(8));
        const std::size_t line = static_cast<std::size_t>(generator.below(setup.formula.lines.size() - 1));
        const auto sums = [&] {
            const safety::Case the = setup.the();
            const safety::Contents contents = safety::contents_of(the);
            std::vector<quantity::Trace> all;
            for (composition::Id id = 0; id < setup.book.composition.constituents.size(); ++id)
                all.push_back(composition::total_of(contents.sums, contents.held, id).high);
            return all;
        };
        const auto before = sums();
        setup.formula.lines[line].percent =
            setup.formula.lines[line].percent + Percent{1 + static_cast<std::int64_t>(generator.below(5000))};
        const auto after = sums();
        for (std::size_t i = 0; i < before.size(); ++i)
            CHECK_MESSAGE(before[i] <= after[i], setup.book.composition.constituents[i].id);
    }
}

TEST_CASE("a line split in two changes no sum and no finding: random formulas") {
    chance::Generator generator(11);
    for (int round = 0; round < 100; ++round) {
        Setup setup = random_formula(generator, 1 + generator.below(6));
        if (setup.formula.lines.size() < 2) continue;
        const std::size_t line = static_cast<std::size_t>(generator.below(setup.formula.lines.size() - 1));
        const auto said = [&] {
            std::vector<std::string> all;
            for (const finding::Finding& one : setup.report().findings)
                all.push_back(std::string(finding::code_name(one.code)) + " " + one.rule + " " +
                              (one.trace ? words::trace(words::Table{}, *one.trace) : ""));
            std::sort(all.begin(), all.end());
            all.erase(std::unique(all.begin(), all.end()), all.end());
            return all;
        };
        const auto before = said();
        const Percent whole = setup.formula.lines[line].percent;
        const Percent part{
            static_cast<std::int64_t>(generator.below(static_cast<std::uint64_t>(whole.grid) + 1))};
        setup.formula.lines[line].percent = whole - part;
        setup.add(setup.formula.lines[line].ingredient, "", part);
        CHECK(said() == before);
    }
}

TEST_CASE("the same menthol from another bottle: the new percent, checked again") {
    Setup setup({{"my_mint", 2}});  // 40 % menthol: 0.8 % in the product, now from a bottle of 50 %
    setup.bottle("my_mint", "peppermint", {{"menthol", {{}, percent(50), {}}}}, true);
    const auto kept = ceiling::keeping(with(setup, 0), 0, {"menthol", percent(0.8)});
    REQUIRE(kept);
    CHECK(kept->percent == percent(1.6));
    CHECK(kept->comes_to == trace("0.8"));
    setup.with("lip_balm");
    const auto lips = ceiling::keeping(with(setup, 0), 0, {"menthol", percent(0.8)});
    REQUIRE(lips);
    CHECK(std::any_of(lips->beyond.begin(), lips->beyond.end(), [](const finding::Finding& one) {
        return one.code == finding::Code::oils_over_for_use;
    }));
    CHECK(ceiling::keeping(with(setup, 0), 0, {"santalol", percent(0.8)}).error().code ==
          result::Code::gives_too_little);
    CHECK(ceiling::keeping(with(setup, 0), 0, {"menthol", percent(80)}).error().code ==
          result::Code::sum_over_hundred);
}

TEST_CASE("of a recipe: with its batch and its scales, and a line that is not there is said") {
    workspace::Recipe recipe = shipped::recipe("harvest_supper_body_oil");
    recipe.market = "eu";
    recipe.date = "2026-11-25";
    std::size_t orange = 0;
    while (recipe.formula.lines[orange].ingredient != "sweet_orange")
        ++orange;
    const auto& shipped = shipped::presets().catalogue;
    const auto found = ceiling::of({recipe, orange, shipped, &shipped::book()});
    REQUIRE(found);
    CHECK(found->bound);
    CHECK(found->most > recipe.formula.lines[orange].percent);
    CHECK(found->most <=
          percent(2.5));  // 3 % of all oils, of which the others are half a percent, as weighed
    CHECK(found->most > percent(2.49));
    CHECK(found->why->code == finding::Code::oils_over_for_use);
    CHECK(found->usual == percent(2));
    CHECK(ceiling::of({recipe, 99, shipped, &shipped::book()}).error().code == result::Code::line_missing);
    const auto kept =
        ceiling::keeping({recipe, orange, shipped, &shipped::book()}, {"limonene", percent(0.9)});
    REQUIRE(kept);
    CHECK(kept->percent > percent(0.9));
    CHECK(kept->beyond.empty());
}

TEST_CASE(
    "what a line brings is what can be held: of a bottle of 50 % menthol at 2 %, 1 % comes to the product") {
    workspace::Recipe recipe = shipped::recipe("harvest_supper_body_oil");
    catalogue::Ingredient mint;
    mint.id = mint.name = "my_mint";
    mint.based_on = "peppermint";
    mint.analysis = catalogue::LotAnalysis{"L1", "", "", {{"menthol", {{}, percent(50), {}}}}};
    recipe.own = {mint};
    recipe.formula = {};
    recipe.formula.phases = {{}};
    formula::Line line;
    line.ingredient = "my_mint";
    line.percent = percent(2);
    recipe.formula.lines = {line};
    const auto& shipped = shipped::presets().catalogue;
    const auto brought = ceiling::brought({recipe, 0, shipped, &shipped::book(), {}, {mint}});
    REQUIRE_FALSE(brought.empty());
    CHECK(brought.front() == formula::Hold{"menthol", percent(1)});
    CHECK(ceiling::keeping({recipe, 0, shipped, &shipped::book(), {}, {mint}}, brought.front())->percent ==
          percent(2));
    recipe.formula.lines[0].ingredient = "beeswax_yellow";
    CHECK(ceiling::brought({recipe, 0, shipped, &shipped::book()}).empty());
    CHECK(ceiling::brought({recipe, 1, shipped, &shipped::book()}).empty());
}

}  // namespace test_ceiling
