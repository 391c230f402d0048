// Long recipes as links: what a thirty-line recipe with own ingredients, notes and steps comes to, what is
// left of it without them, and the sizes that a QR code takes. The texts are such as a maker writes.
#include <sstream>
#include <string>

#include "doctest/doctest.h"
#include "engine/qr.h"
#include "engine/share.h"
#include "engine/workspace_made.h"
#include "engine/workspace_own.h"
#include "sealed_link.h"
#include "shipped.h"
#include "support.h"

namespace test_share_long {

using quantity::percent;
using workspace::Recipe;

namespace {

const catalogue::Catalogue& known() {
    return shipped::presets().catalogue;
}

// A made part, a variety of a shipped butter with its supplier's limits, and a bottle with its own analysis.
std::vector<catalogue::Ingredient> three_own() {
    Recipe infusion;
    infusion.title = "Marigold and plantain oil";
    formula::Line petals = support::line("", percent(9).grid);
    petals.name = "Dried marigold petals";
    petals.strained = true;
    formula::Line leaves = petals;
    leaves.name = "Dried plantain leaves";
    leaves.percent = percent(3);
    infusion.formula = support::formula_of({support::line("sunflower_ho", percent(60).grid),
                                            support::line("jojoba", percent(28).grid), petals, leaves});
    infusion =
        workspace::set_made(infusion, "own_marigold_and_plantain_oil", catalogue::MadeAs::infusion, {825000})
            .value();

    catalogue::Ingredient shea = workspace::copy_of(*catalogue::find_ingredient(known(), "shea"));
    shea.id = "own_shea_unrefined";
    shea.name = "Shea, unrefined";
    shea.source = "supplier's sheet, lot 2417";
    shea.max_percent = {{"lip_balm", percent(40)}, {"salve", percent(60)}};

    catalogue::Ingredient lavender;
    lavender.id = "own_lavender_bed_four";
    lavender.name = "Lavender, bed four";
    lavender.role = "essential_oil";
    lavender.inci = {{"eu", "Lavandula Angustifolia Oil"}, {"us", "Lavandula Angustifolia (Lavender) Oil"}};
    lavender.density = source::Sourced<catalogue::DensityAt>{{{8850}, {}}, "", {}};
    lavender.analysis = catalogue::LotAnalysis{"L-7",
                                               "2026-08-01",
                                               "Hollow Lane",
                                               {{"linalool", {{}, quantity::Percent{351000}, {}}},
                                                {"linalyl_acetate", {{}, quantity::Percent{382000}, {}}},
                                                {"camphor", {{}, {}, quantity::Percent{5000}}}}};
    lavender.max_percent = {{"5A", {12000}}, {"1", {4000}}};
    lavender.source = "paper with the bottle";
    lavender.standing = source::Standing::supplier;
    return {workspace::made_ingredient(infusion, known()).value(), workspace::as_own(shea),
            workspace::as_own(lavender)};
}

Recipe thirty_lines() {
    Recipe recipe;
    recipe.title = "Frost-line elbow butter";
    recipe.product = "body_butter";
    recipe.own = three_own();
    std::vector<formula::Line> lines;
    for (const catalogue::Ingredient& own : recipe.own)
        lines.push_back(support::line(own.id, 12500 + 2500 * static_cast<std::int64_t>(lines.size())));
    const auto& all = known().ingredients;
    for (std::size_t i = 0; lines.size() < 30; i += 2) {
        const char* phase = lines.size() < 12 ? "A" : lines.size() < 22 ? "B" : "C";
        lines.push_back(support::line(all[i % all.size()].id,
                                      (105 + 17 * static_cast<std::int64_t>(lines.size())) * 100, phase));
    }
    lines[20].rest = true;
    lines[20].percent = {};
    recipe.formula = support::formula_of(lines);
    recipe.formula.phases[0].hold_c = 75 * decimal::kOne;
    recipe.formula.phases[2].add_below_c = 40 * decimal::kOne;
    recipe.steps = {
        {"", "Count the jars, wipe them with alcohol, weigh the empty jug.", {}},
        {"A", "Melt the waxes first, then the butters, in the water bath; hold until all is clear.", 20},
        {"B", "Warm the oils to the same heat and pour them in slowly, stirring with the glass rod.", 5},
        {"C", "Off the heat. Stir in the cool-down part and whip until it stands.", 10},
        {"", "Fill, tap out the air, let it rest overnight with the lids laid on loosely.", {}}};
    recipe.notes =
        "Sets softer in August: two parts more wax then. Ida likes it without the lavender, so keep "
        "a quarter back before the last phase. Shake the marigold oil.";
    recipe.batch =
        support::containers({{"jar_60ml", 12, {}, {}}, {"tin_30ml", 6, quantity::Mass{250000}, {}}}, 100);
    recipe.batch.loss = percent(4);
    return recipe;
}

std::size_t characters(const Recipe& recipe) {
    const auto link = share::write(recipe, known(), share::Form::shortest);
    REQUIRE(link.ok());
    CHECK(share::read(*link, known()).value() == recipe);
    return link->size() - 1;
}

}  // namespace

TEST_CASE(
    "share: thirty lines, three own ingredients, 500 characters of notes and steps take at most 1,400") {
    const Recipe recipe = thirty_lines();
    CHECK(recipe.formula.lines.size() == 30);
    CHECK(recipe.own.size() == 3);
    std::size_t written = recipe.notes.size();
    for (const formula::Step& step : recipe.steps)
        written += step.text.size();
    CHECK(written >= 500);
    CHECK(written <= 520);
    const std::size_t all = characters(recipe);
    MESSAGE("characters after the sign: ", all);
    CHECK(all <= 1400);
}

TEST_CASE("share: what is left without notes, and without steps, is shorter and says so") {
    const Recipe recipe = thirty_lines();
    const Recipe no_notes = share::cut_to(share::Extent::without_notes, recipe);
    const Recipe no_steps = share::cut_to(share::Extent::without_notes_and_steps, recipe);
    CHECK(no_notes.notes.empty());
    CHECK(no_notes.steps == recipe.steps);
    CHECK(no_steps.steps.empty());
    CHECK(no_steps.formula == recipe.formula);
    CHECK(share::cut_to(share::Extent::all, recipe) == recipe);
    MESSAGE("without notes: ", characters(no_notes), ", without steps too: ", characters(no_steps));
    CHECK(characters(no_notes) < characters(recipe));
    CHECK(characters(no_steps) < characters(no_notes));
}

TEST_CASE("share: every shipped recipe fits an easy QR code without its notes") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        const std::size_t bytes = characters(share::cut_to(share::Extent::without_notes_and_steps, recipe));
        MESSAGE(stem, ": ", characters(recipe), " characters, ",
                characters(share::cut_to(share::Extent::without_notes, recipe)), " without notes, ", bytes,
                " without steps");
        CHECK(bytes + 60 <= qr::kEasyBytes);  // 60 for the address before it
    }
}

TEST_CASE("share: without a made part the same recipe is as short, in the usual form too") {
    Recipe recipe = thirty_lines();
    for (catalogue::Ingredient& own : recipe.own)
        own.made.reset();
    const std::string link = share::write(recipe, known()).value();
    CHECK(link.size() - 1 <= 1400);
    CHECK(share::read(link, known()).value() == recipe);
}

TEST_CASE("share: the usual form is version 1 as long as it is short, the shortest may be version 2") {
    Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.notes.clear();
    recipe.steps.resize(2);
    const std::string usual = share::write(recipe, known()).value();
    const std::string shortest = share::write(recipe, known(), share::Form::shortest).value();
    CHECK(usual.substr(0, 3) == "#AY");  // version byte 1, then an array
    CHECK(shortest.substr(0, 3) == "#Ao");
    CHECK(shortest.size() < usual.size());
    CHECK(share::read(usual, known()).value() == recipe);
    CHECK(share::read(shortest, known()).value() == recipe);
}

TEST_CASE(
    "share: every beginning of a link of version 2 is called cut short, and a changed letter is never read") {
    const std::string link = share::write(thirty_lines(), known()).value();
    for (std::size_t length = 2; length < link.size(); ++length) {
        CAPTURE(length);
        CHECK(share::read(link.substr(0, length), known()).error().code == result::Code::link_truncated);
    }
    for (std::size_t at = 1; at < link.size(); ++at) {
        std::string changed = link;
        changed[at] = changed[at] == 'A' ? 'B' : 'A';
        if (changed != link) CHECK_FALSE(share::read(changed, known()).ok());
    }
}

TEST_CASE("share: the frozen links of version 2 read as the frozen files, for ever") {
    std::istringstream lines(shipped::data("links_v2.txt"));
    int count = 0;
    for (std::string file, link; lines >> file >> link; ++count) {
        CAPTURE(file);
        const Recipe recipe = store::read_recipe(shipped::data(file)).value();
        CHECK(share::read(link, known()).value() == recipe);
        CHECK(share::write(recipe, known(), share::Form::shortest).value() == link);
    }
    CHECK(count >= 4);
}

TEST_CASE("share: a table entry of version 2 that is not known here is called newer") {
    const std::string link = sealed_link::link_of(
        [](cbor::Writer& writer) {
            writer.array(2);
            writer.array(3);
            writer.text("");
            writer.integer(1);
            writer.integer(4);
            writer.array(2);
            writer.integer(99);
            writer.integer(0);
        },
        2);
    CHECK(share::read(link, known()).error().code == result::Code::link_newer);
}

}  // namespace test_share_long
