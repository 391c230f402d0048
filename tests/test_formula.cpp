// Formulas: the rest line, and every edit with what it refuses.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/formula.h"
#include "support.h"

namespace test_formula {

using formula::Formula;
using quantity::Percent;
using result::Code;
using support::line;
using support::rest;

namespace {

// A: wax 20, shea 30 · B: sunflower takes the rest (45) · C: vitamin E 5
Formula balm() {
    return support::formula_of(
        {line("wax", 200000), line("shea", 300000), rest("sunflower", "B"), line("vitamin_e", 50000, "C")});
}

std::string order(const Formula& formula) {
    std::string text;
    for (const auto& one : formula.lines)
        text += one.phase + ":" + one.ingredient + one.name + " ";
    return text;
}

}  // namespace

TEST_CASE("the rest line takes what is left to 100") {
    const auto percents = formula::percents(balm());
    REQUIRE(percents.ok());
    CHECK(*percents == std::vector<Percent>{{200000}, {300000}, {450000}, {50000}});
    CHECK(formula::stated_sum(balm()) == quantity::percent(55));
    CHECK(formula::rest_line(balm()) == 2u);
}

TEST_CASE("a formula that does not make 100 has no percents, and says its sum") {
    CHECK(formula::percents(Formula{}).error().code == Code::formula_empty);

    const Formula under = support::formula_of({line("wax", 200000), line("shea", 795000)});
    CHECK(formula::percents(under).error() == result::Error{Code::sum_not_hundred, "lines", "99.5"});
    const Formula barely = support::formula_of({line("wax", 200000), line("shea", 800001)});
    CHECK(formula::percents(barely).error() == result::Error{Code::sum_not_hundred, "lines", "100.0001"});
    const Formula over = support::formula_of({line("wax", 600000), line("shea", 600000), rest("sunflower")});
    CHECK(formula::percents(over).error() == result::Error{Code::sum_over_hundred, "lines", "120"});
    const Formula twice = support::formula_of({rest("wax"), rest("shea")});
    CHECK(formula::percents(twice).error() == result::Error{Code::rest_twice, "lines[1].rest", ""});
}

TEST_CASE("a rest line may come to nothing") {
    const Formula full = support::formula_of({line("wax", 1000000), rest("shea")});
    CHECK(formula::percents(full).value() == std::vector<Percent>{{1000000}, {0}});
}

TEST_CASE("a line is added at the end of its phase, and a new phase with it") {
    const Formula more = formula::add_line(balm(), line("jojoba", 10000, "A")).value();
    CHECK(order(more) == "A:wax A:shea A:jojoba B:sunflower C:vitamin_e ");
    const Formula phase = formula::add_line(balm(), line("jojoba", 10000, "D")).value();
    CHECK(order(phase) == "A:wax A:shea B:sunflower C:vitamin_e D:jojoba ");
    CHECK(phase.phases.size() == 4);
    CHECK(formula::add_line(Formula{}, line("wax", 0)).value().phases.size() == 1);
}

TEST_CASE("a line goes into an empty phase between two others") {
    Formula formula = formula::remove_line(balm(), 2).value();
    formula = formula::add_line(formula, line("jojoba", 10000, "B")).value();
    CHECK(order(formula) == "A:wax A:shea B:jojoba C:vitamin_e ");
}

TEST_CASE("lines that cannot stand are not added") {
    CHECK(formula::add_line(balm(), line("", 10000)).error().code == Code::name_empty);
    CHECK(formula::add_line(balm(), line("jojoba", -1)).error() ==
          result::Error{Code::number_negative, "lines[4].percent", "-0.0001"});
    CHECK(formula::add_line(balm(), line("jojoba", 1000001)).error().code == Code::number_too_large);
    CHECK(formula::add_line(balm(), line("jojoba", 1, "")).error().code == Code::name_empty);
    auto named = line("", 1);
    named.name = std::string(81, 'x');
    CHECK(formula::add_line(balm(), named).error() ==
          result::Error{Code::text_too_long, "lines[4].name", "80"});
    named.name.pop_back();
    CHECK(formula::add_line(balm(), named).ok());

    Formula full;
    for (std::size_t i = 0; i < formula::kMostLines; ++i)
        full = formula::add_line(full, line("wax", 0)).value();
    CHECK(formula::add_line(full, line("wax", 0)).error() == result::Error{Code::too_many, "lines", "100"});
}

TEST_CASE("a second rest line added frees the first, which keeps what it came to") {
    const Formula changed = formula::add_line(balm(), rest("jojoba", "B")).value();
    CHECK(changed.lines[2].percent == Percent{450000});
    CHECK_FALSE(changed.lines[2].rest);
    CHECK(changed.lines[3].rest);
    CHECK(formula::percents(changed).value()[3] == Percent{0});
}

TEST_CASE("a percent is set, and a percent written into the rest line makes it plain") {
    CHECK(formula::set_percent(balm(), 0, {250000}).value().lines[0].percent == Percent{250000});
    const Formula plain = formula::set_percent(balm(), 2, {400000}).value();
    CHECK_FALSE(plain.lines[2].rest);
    CHECK(formula::stated_sum(plain) == quantity::percent(95));
    CHECK(formula::set_percent(balm(), 9, {1}).error().code == Code::line_missing);
    CHECK(formula::set_percent(balm(), 0, {-1}).error().code == Code::number_negative);
    CHECK(formula::set_percent(balm(), 0, {1000001}).error().code == Code::number_too_large);
}

TEST_CASE("making another line the rest line changes no percent") {
    const auto before = formula::percents(balm()).value();
    const Formula changed = formula::set_rest(balm(), 0, true).value();
    CHECK(changed.lines[0].rest);
    CHECK(changed.lines[0].percent == Percent{0});
    CHECK_FALSE(changed.lines[2].rest);
    CHECK(formula::percents(changed).value() == before);
}

TEST_CASE("a rest line made plain keeps what it came to, or 0 where that is below nothing") {
    const Formula plain = formula::set_rest(balm(), 2, false).value();
    CHECK(plain.lines[2].percent == Percent{450000});
    CHECK(formula::percents(plain).ok());
    const Formula over = support::formula_of({line("wax", 600000), line("shea", 600000), rest("sunflower")});
    CHECK(formula::set_rest(over, 2, false).value().lines[2].percent == Percent{0});
    CHECK(formula::set_rest(balm(), 2, true).value() == balm());
    CHECK(formula::set_rest(balm(), 7, true).error().code == Code::line_missing);
}

TEST_CASE("a locked line keeps its amount, its ingredient and its being there, but may be moved") {
    const Formula kept = formula::set_locked(balm(), 0, true).value();
    for (const auto& refused :
         {formula::set_percent(kept, 0, {1}), formula::set_ingredient(kept, 0, "carnauba", ""),
          formula::set_rest(kept, 0, true), formula::remove_line(kept, 0)}) {
        REQUIRE_FALSE(refused.ok());
        CHECK(refused.error() == result::Error{Code::line_locked, "lines[0]", ""});
    }
    CHECK(order(formula::move_line(kept, 0, 1).value()) == "A:shea A:wax B:sunflower C:vitamin_e ");
    CHECK(formula::set_percent(formula::set_locked(kept, 0, false).value(), 0, {1}).ok());
}

TEST_CASE("a locked rest line is not freed by way of another line") {
    const Formula kept = formula::set_locked(balm(), 2, true).value();
    CHECK(formula::set_rest(kept, 0, true).error() == result::Error{Code::line_locked, "lines[2]", ""});
    CHECK(formula::add_line(kept, rest("jojoba")).error().code == Code::line_locked);
}

TEST_CASE("an ingredient is swapped for another or for a name") {
    CHECK(formula::set_ingredient(balm(), 1, "mango", "").value().lines[1].ingredient == "mango");
    const Formula named = formula::set_ingredient(balm(), 1, "", "Ida's butter").value();
    CHECK(named.lines[1].name == "Ida's butter");
    CHECK(named.lines[1].percent == Percent{300000});
    CHECK(formula::set_ingredient(balm(), 1, "", "").error().code == Code::name_empty);
    CHECK(formula::set_ingredient(balm(), 1, std::string(81, 'x'), "").error().code == Code::text_too_long);
}

TEST_CASE("a moved line joins the phase of its new neighbours") {
    struct Row {
        std::size_t from, to;
        const char* order;
    };
    for (const Row& row : {Row{0, 0, "A:wax A:shea B:sunflower C:vitamin_e "},
                           Row{0, 1, "A:shea A:wax B:sunflower C:vitamin_e "},
                           Row{1, 2, "A:wax B:sunflower B:shea C:vitamin_e "},
                           Row{0, 3, "A:shea B:sunflower C:vitamin_e C:wax "},
                           Row{3, 2, "A:wax A:shea B:vitamin_e B:sunflower "},
                           Row{3, 0, "A:vitamin_e A:wax A:shea B:sunflower "},
                           Row{2, 1, "A:wax A:sunflower A:shea C:vitamin_e "},
                           Row{2, 3, "A:wax A:shea C:vitamin_e C:sunflower "}}) {
        CAPTURE(row.from);
        CAPTURE(row.to);
        const auto moved = formula::move_line(balm(), row.from, row.to);
        REQUIRE(moved.ok());
        CHECK(order(*moved) == row.order);
        CHECK(formula::checked(*moved).value() == *moved);
    }
    CHECK(formula::move_line(balm(), 4, 0).error().code == Code::line_missing);
    CHECK(formula::move_line(balm(), 0, 4).error().code == Code::line_missing);
}

TEST_CASE("a line moved to a phase goes to its end") {
    CHECK(order(formula::move_to_phase(balm(), 3, "A").value()) == "A:wax A:shea A:vitamin_e B:sunflower ");
    CHECK(order(formula::move_to_phase(balm(), 0, "C").value()) == "A:shea B:sunflower C:vitamin_e C:wax ");
    CHECK(formula::move_to_phase(balm(), 0, "A").value() == balm());
    CHECK(formula::move_to_phase(balm(), 0, "Z").error() ==
          result::Error{Code::phase_missing, "phases", "Z"});
}

TEST_CASE("phases are added, renamed with their lines, and removed when empty") {
    CHECK(formula::add_phase(balm(), {"D", {}, {}}).value().phases.size() == 4);
    CHECK(formula::add_phase(balm(), {"B", {}, {}}).error().code == Code::phase_twice);
    CHECK(formula::add_phase(balm(), {"", {}, {}}).error().code == Code::name_empty);
    CHECK(formula::add_phase(balm(), {"D", 501 * decimal::kOne, {}}).error().code == Code::number_too_large);

    const Formula renamed = formula::set_phase(balm(), 0, {"Melt", 75 * decimal::kOne, {}}).value();
    CHECK(order(renamed) == "Melt:wax Melt:shea B:sunflower C:vitamin_e ");
    CHECK(renamed.phases[0].hold_c == 75 * decimal::kOne);
    CHECK(formula::set_phase(balm(), 0, {"B", {}, {}}).error().code == Code::phase_twice);
    CHECK(formula::set_phase(balm(), 3, {"D", {}, {}}).error().code == Code::phase_missing);

    CHECK(formula::remove_phase(balm(), "C").error().code == Code::phase_in_use);
    CHECK(formula::remove_phase(balm(), "D").error().code == Code::phase_missing);
    CHECK(formula::remove_phase(formula::remove_line(balm(), 3).value(), "C").value().phases.size() == 2);

    Formula many;
    for (std::size_t i = 0; i < formula::kMostPhases; ++i)
        many = formula::add_phase(many, {std::to_string(i), {}, {}}).value();
    CHECK(formula::add_phase(many, {"one more", {}, {}}).error().code == Code::too_many);
}

TEST_CASE("a stranger's formula is checked, each fault with its place") {
    CHECK(formula::checked(balm()).value() == balm());
    CHECK(formula::checked(Formula{}).ok());

    const auto fault = [](auto change) {
        Formula formula = balm();
        change(formula);
        return formula::checked(formula).error();
    };
    using result::Error;
    CHECK(fault([](Formula& f) { f.lines[1].percent = {-1}; }) ==
          Error{Code::number_negative, "lines[1].percent", "-0.0001"});
    CHECK(fault([](Formula& f) { f.lines[1].percent = {1000001}; }).code == Code::number_too_large);
    CHECK(fault([](Formula& f) { f.lines[1].ingredient = ""; }) == Error{Code::name_empty, "lines[1]", ""});
    CHECK(fault([](Formula& f) { f.lines[1].name = std::string(81, 'x'); }).place == "lines[1].name");
    CHECK(fault([](Formula& f) { f.lines[3].phase = "Q"; }) ==
          Error{Code::phase_missing, "lines[3].phase", "Q"});
    CHECK(fault([](Formula& f) { f.lines[3].rest = true; }) == Error{Code::rest_twice, "lines[3].rest", ""});
    CHECK(fault([](Formula& f) { f.phases[2].id = "A"; }) == Error{Code::phase_twice, "phases[2].id", "A"});
    CHECK(fault([](Formula& f) { f.phases[2].id = ""; }).place == "phases[2].id");
    CHECK(fault([](Formula& f) { f.phases[1].hold_c = 9999999; }).place == "phases[1].hold_c");
    CHECK(fault([](Formula& f) { f.phases[1].add_below_c = -9999999; }).place == "phases[1].add_below_c");
    CHECK(fault([](Formula& f) {
              f.lines[0].hold = formula::Hold{"", {1}};
          }).place == "lines[0].hold.constituent");
    CHECK(fault([](Formula& f) {
              f.lines[0].hold = formula::Hold{"thymol", {-1}};
          }).place == "lines[0].hold.percent");
    CHECK(fault([](Formula& f) { f.lines.resize(101, f.lines[0]); }).code == Code::too_many);
    CHECK(fault([](Formula& f) { f.phases.resize(13, f.phases[0]); }).code == Code::too_many);
}

TEST_CASE("checking puts lines into the order of their phases and forgets a rest line's own percent") {
    Formula mixed = balm();
    mixed.lines = {line("vitamin_e", 50000, "C"), line("wax", 200000), rest("sunflower", "B"),
                   line("shea", 300000)};
    mixed.lines[2].percent = {7};
    CHECK(formula::checked(mixed).value() == balm());
}

}  // namespace test_formula
