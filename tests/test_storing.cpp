// How long something keeps: from the days of what it is made of, never from a rule of thumb.
#include "doctest/doctest.h"
#include "engine/analysis_blend.h"
#include "engine/door.h"
#include "engine/storing.h"
#include "shipped.h"
#include "support.h"

namespace test_storing {

using storing::Answer;
using storing::By;
using storing::Note;

namespace {

lot::Lot lot_of(std::string ingredient, std::string number, std::string best_before) {
    lot::Lot one;
    one.ingredient = std::move(ingredient);
    one.number = std::move(number);
    one.best_before = std::move(best_before);
    return one;
}

workspace::Recipe balm() {
    workspace::Recipe recipe;
    recipe.title = "Balm";
    recipe.product = "salve";
    recipe.formula = support::formula_of({support::line("beeswax_yellow", 200000),
                                          support::line("olive", 500000), support::line("hemp", 300000)});
    return recipe;
}

std::vector<lot::Lot> dated() {
    return {lot_of("beeswax_yellow", "W1", "2030-01-31"), lot_of("olive", "O1", "2028-06-30"),
            lot_of("hemp", "H1", "2027-03-31")};
}

storing::Storing ask(const workspace::Recipe& recipe, const std::vector<lot::Lot>& lots,
                     std::int64_t margin = 0) {
    const auto made = analysis::blended(recipe, shipped::presets().catalogue, {lots, "2026-11-26", margin});
    REQUIRE(made.ok());
    return made->storing;
}

bool notes(const storing::Storing& made, Note note) {
    for (const storing::NoteAbout& one : made.notes)
        if (one.note == note) return true;
    return false;
}

}  // namespace

TEST_CASE("the raw material that is over first says how long the whole keeps") {
    const storing::Storing made = ask(balm(), dated());
    CHECK(made.answer == Answer::dated);
    CHECK(made.best_before == "2027-03-31");
    CHECK(made.materials.front().id == "hemp");
    CHECK(made.materials.front().lot == "H1");
    CHECK(made.materials.front().by == By::best_before);
    CHECK(made.months == 4);
    CHECK(made.dates.known == quantity::kHundred);
    CHECK(made.materials[1].id == "olive");
    CHECK(made.materials[2].months_left == 38);
}

TEST_CASE(
    "from opening it keeps what its supplier says, and where nobody says, the printed day is not trusted "
    "alone") {
    auto lots = dated();
    lots[1].opened = "2026-08-31";
    lots[1].opened_months = 6;
    storing::Storing made = ask(balm(), lots);
    CHECK(made.best_before == "2027-02-28");  // half a year on from the last of August
    CHECK(made.materials.front().id == "olive");
    CHECK(made.materials.front().by == By::opened);
    CHECK_FALSE(made.materials.front().opened);
    lots[1].opened_months = 60;  // beyond the printed day
    CHECK(ask(balm(), lots).materials[1].by == By::best_before);
    lots[1].opened_months.reset();
    made = ask(balm(), lots);
    CHECK(made.materials[1].opened);
    CHECK(made.materials[1].date == "2028-06-30");
    lots[1].best_before.clear();
    CHECK(ask(balm(), lots).materials.back().by == By::no_date);
}

TEST_CASE("of two lots the shorter counts, and one that is used up or empty does not") {
    auto lots = dated();
    lots.push_back(lot_of("olive", "O2", "2027-01-31"));
    CHECK(ask(balm(), lots).materials.front().lot == "O2");
    lots.back().used_up = "2026-11-01";
    CHECK(ask(balm(), lots).materials.front().lot == "H1");
    lots.back().used_up.clear();
    lots.back().left = quantity::Mass{0};
    CHECK(ask(balm(), lots).materials.front().lot == "H1");
    lots.push_back(lot_of("olive", "O3", ""));
    CHECK(ask(balm(), lots).materials[1].lot == "O1");
}

TEST_CASE("coverage falls when a date is taken away, and the material is named") {
    auto lots = dated();
    lots.pop_back();
    const storing::Storing made = ask(balm(), lots);
    CHECK(made.answer == Answer::dated);
    CHECK(made.best_before == "2028-06-30");
    CHECK(made.dates.known == quantity::percent(70));
    CHECK(made.dates.missing == std::vector<std::string>{"Hemp seed oil"});
    CHECK(made.materials.back().by == By::no_lot);
    CHECK(made.materials.back().sealed_months == catalogue::Range{3 * decimal::kOne, 9 * decimal::kOne});
    const storing::Storing none = ask(balm(), {});
    CHECK(none.answer == Answer::not_known);
    CHECK(none.best_before.empty());
    CHECK(none.dates.known == quantity::Percent{0});
}

TEST_CASE("a raw material that is past its day is said to be") {
    auto lots = dated();
    lots[0].best_before = "2026-11-25";
    const storing::Storing made = ask(balm(), lots);
    CHECK(made.answer == Answer::over);
    CHECK(made.materials.front().months_left == -1);
}

TEST_CASE("months that are kept in hand come off the day") {
    CHECK(ask(balm(), dated(), 1).best_before == "2027-02-28");
    CHECK(ask(balm(), dated(), 5).answer == Answer::over);
}

TEST_CASE("up to 30 months the label bears a date, over it the months after opening") {
    // Regulation (EC) 1223/2009, Art. 19(1)(c), by way of durability.
    auto lots = dated();
    for (lot::Lot& one : lots)
        one.best_before = "2029-05-26";
    workspace::Recipe recipe = balm();
    recipe.label.keeping.opened_months = 12;
    storing::Storing made = ask(recipe, lots);
    CHECK(made.months == 30);
    CHECK(made.mark.mark == durability::Mark::best_before);
    CHECK(made.mark.date == "04/2029");
    for (lot::Lot& one : lots)
        one.best_before = "2029-06-26";
    made = ask(recipe, lots);
    CHECK(made.months == 31);
    CHECK(made.mark.mark == durability::Mark::after_opening);
    recipe.market = "us";
    CHECK(ask(recipe, lots).mark.mark == durability::Mark::none_asked);
}

TEST_CASE("of what holds water only a test can tell") {
    const workspace::Recipe& lotion = shipped::recipe("kitchen_garden_hand_lotion");
    std::vector<lot::Lot> lots;
    for (const formula::Line& line : lotion.formula.lines)
        lots.push_back(lot_of(line.ingredient, "1", "2028-01-31"));
    const storing::Storing made = ask(lotion, lots);
    CHECK(made.answer == Answer::only_a_test);
    CHECK(made.best_before.empty());
    CHECK_FALSE(made.months.has_value());
    CHECK(made.after_opening.why == "water");
    CHECK(made.after_opening.standing == source::Standing::common_practice);
    CHECK(notes(made, Note::use_spatula));
    CHECK_FALSE(notes(made, Note::keep_dry));
}

TEST_CASE("a name nobody knows may hold water, and that is said") {
    workspace::Recipe recipe = balm();
    recipe.formula.lines[2].ingredient.clear();
    recipe.formula.lines[2].name = "Rose honey";
    const storing::Storing made = ask(recipe, dated());
    CHECK(notes(made, Note::stranger));
    CHECK(made.dates.missing == std::vector<std::string>{"Rose honey"});
}

TEST_CASE("hemp oil drives the oxidation of a balm that is mostly olive oil") {
    const storing::Storing made = ask(balm(), dated());
    // (50 × 1.81 + 30 × 10.32) / 80 = 5.00; hemp brings 77 %.
    CHECK(std::abs(decimal::to_double(*made.oxidisability.cox.value) - 5.0) < 0.05);
    REQUIRE(made.oxidisability.drivers.size() == 2);
    CHECK(made.oxidisability.drivers[0].name == "Hemp seed oil");
    CHECK(std::abs(decimal::to_double(made.oxidisability.drivers[0].share.grid) - 77.4) < 0.5);
    CHECK(made.oxidisability.cox.of.known == quantity::percent(80));
}

TEST_CASE("storage is told from what is in it") {
    const storing::Storing made = ask(shipped::recipe("frost_line_elbow_butter"), {});
    for (const Note note : {Note::cool_dark, Note::keep_dry, Note::grains, Note::scent_fades, Note::trial})
        CHECK(notes(made, note));
    CHECK(made.after_opening.why == "dry");
    CHECK(ask(shipped::recipe("greenhouse_foot_scrub"), {}).after_opening.why == "wet_hands");
    for (int note = 0; note <= static_cast<int>(Note::trial); ++note) {
        const storing::NoteAbout about{static_cast<Note>(note), "Coconut oil",
                                       catalogue::Range{240000, 260000}};
        const std::string said = storing::say(shipped::english(), about);
        CHECK(said.find("[[") == std::string::npos);
        CHECK(said.find('{') == std::string::npos);
    }
    std::size_t words = 0;
    for (const auto& [key, entry] : shipped::english().entries)
        words += key.rfind("storing.", 0) == 0;
    CHECK(words == static_cast<std::size_t>(Note::trial) + 1);
}

TEST_CASE("how long a lot keeps once open is kept with it, and refused where it is no time") {
    workspace::Filed filed;
    filed.id = "a1";
    lot::Lot lot = dated()[0];
    lot.opened = "2026-11-01";
    lot.opened_months = 6;
    filed.what = lot;
    const auto read = store::read_filed(store::write_filed(filed));
    REQUIRE(read.ok());
    CHECK(std::get<lot::Lot>(read->what) == lot);
    lot.opened_months = lot::kMostOpenedMonths + 1;
    filed.what = lot;
    CHECK_FALSE(store::read_filed(store::write_filed(filed)).ok());
}

TEST_CASE("days and months of the calendar") {
    CHECK(storing::day_after_months("2026-08-31", 6) == "2027-02-28");
    CHECK(storing::day_after_months("2027-08-31", 6) == "2028-02-29");
    CHECK(storing::day_after_months("2026-01-15", -1) == "2025-12-15");
    CHECK(storing::day_after_months("2026-13-01", 1).empty());
    CHECK(storing::day_after_months("0000-01-01", -1).empty());
    CHECK(storing::months_between("2026-11-26", "2027-11-25") == 11);
    CHECK(storing::months_between("2026-11-26", "2027-11-26") == 12);
    CHECK(storing::months_between("2026-08-31", "2027-02-28") == 6);
    CHECK(storing::months_between("2026-11-26", "2026-11-26") == 0);
    CHECK(storing::months_between("2026-11-26", "2026-11-25") == -1);
    CHECK(storing::months_between("2026-11-26", "2026-10-31") == -1);
    CHECK_FALSE(storing::months_between("", "2026-11-25").has_value());
}

TEST_CASE("the verb tells blend and keeping of every starter, with lots beside it") {
    for (const char* name : {"orchard_lip_balm", "kitchen_garden_hand_lotion"}) {
        const auto answer =
            door::run("blend", store::write_recipe(shipped::recipe(name)), shipped::presets());
        CHECK(answer.exit_code == 0);
        for (const char* words : {"\"shares\"", "\"fatty_acids\"", "\"saponification_value\"", "\"keeping\"",
                                  "\"after_opening_months\""})
            CHECK(answer.out.find(words) != std::string::npos);
        CHECK(answer.out.find("[[") == std::string::npos);
    }
    const std::string recipe = store::write_recipe(balm());
    const auto beside = [&](const std::string& more) {
        return door::run("blend", "{\"recipe\":" + recipe + "," + more + "}", shipped::presets());
    };
    const auto answer = beside(
        R"("made_on":"2026-11-26","temp_c":70,"lots":[{"ingredient":"hemp","number":"H1","best_before":"2027-03-31"}])");
    CHECK(answer.exit_code == 0);
    CHECK(answer.out.find("\"best_before\": \"2027-03-31\"") != std::string::npos);
    CHECK(answer.out.find("\"because_of\": \"Hemp seed oil\"") != std::string::npos);
    CHECK(answer.out.find("\"temp_c\": 70") != std::string::npos);
    CHECK(answer.out.find("\"shrinks_on_setting\": {\"poured_at_c\": 70") != std::string::npos);
    CHECK(beside(R"("made_on":"yesterday")").err.rfind("made_on: ", 0) == 0);
    CHECK(beside(R"("lots":[{"ingredient":"hemp"}])").err.rfind("lots[0].number: ", 0) == 0);
    CHECK(beside(R"("lots":[{"ingredient":"hemp","number":"1","opened":"soon"}])")
              .err.rfind("lots[0].opened: ", 0) == 0);
    CHECK(beside(R"("prices":{})").exit_code == 2);
}

}  // namespace test_storing
