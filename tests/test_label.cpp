// What stands on a label, what is missing from it, and the demonstration recipes' labels in every market
// (tests/data/labels.txt).
#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "engine/labelling.h"
#include "shipped.h"
#include "support.h"

namespace test_label {

using label::Aside;
using label::Entry;
using label::Field;
using label::State;
using labelling::Details;
using labelling::Labelled;
using market::Market;

namespace {

const catalogue::Catalogue& shelf() {
    return shipped::presets().catalogue;
}

workspace::Recipe orchard(std::string_view market) {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.market = market;
    return recipe;
}

workspace::Recipe keeping_24(workspace::Recipe recipe) {
    recipe.label.keeping = {24, 12, false};
    return recipe;
}

// Nothing to be named.
labelling::Allergens worked_out() {
    labelling::Allergens none;
    none.named = std::vector<declaration::Named>{};
    return none;
}

labelling::Allergens allergens_of(const workspace::Recipe& recipe) {
    return labelling::allergens_of(recipe, shelf(), {}, &shipped::book(), shipped::english());
}

Details details() {
    Details all;
    all.maker = {"Hollow Lane Allotments", "1 Hollow Lane, Hollowham", "hello@hollow-lane.example", ""};
    all.made_on = "2026-11-26";
    all.batch_number = "26-11";
    return all;
}

Labelled of(const workspace::Recipe& recipe, const Details& details = {},
            const labelling::Allergens& allergens = {}) {
    const analysis::Analysis report = analysis::of(recipe, shelf());
    auto made = labelling::of(recipe, report.batch ? std::optional(*report.batch) : std::nullopt, shelf(),
                              details, allergens, shipped::english());
    REQUIRE(made.ok());
    return std::move(made).value();
}

const Entry* entry(const label::Label& label, Field field) {
    for (const Entry& one : label.entries)
        if (one.field == field) return &one;
    return nullptr;
}

bool remarked(const label::Label& label, std::string_view part) {
    return std::any_of(label.remarks.begin(), label.remarks.end(),
                       [&](const std::string& one) { return one.find(part) != std::string::npos; });
}

std::string plain(std::string text) {
    for (std::size_t at = text.find("\xC2\xA0"); at != std::string::npos; at = text.find("\xC2\xA0", at))
        text.replace(at, 2, " ");
    return text;
}

}  // namespace

TEST_CASE("a lip balm for the EU with all that it needs") {
    const Labelled made = of(keeping_24(orchard("eu")), details(), worked_out());
    CHECK(
        plain(made.label.text) ==
        "Orchard lip balm\n"
        "Lip balm\n"
        "4.25 g\n"
        "Ingredients: Helianthus Annuus Seed Oil, Cera Alba, Butyrospermum Parkii Butter, "
        "Simmondsia Chinensis Seed Oil, Ricinus Communis Seed Oil, Theobroma Cacao Seed Butter, Tocopherol\n"
        "Best used before the end of 10/2028\n"
        "Batch 26-11\n"
        "Hollow Lane Allotments, 1 Hollow Lane, Hollowham\n"
        "hello@hollow-lane.example");
    for (const Entry& one : made.label.entries)
        CHECK(one.state != State::missing);
    // The catalogue's fill is not a weighing.
    CHECK(entry(made.label, Field::net)->state == State::doubtful);
    CHECK(remarked(made.label, "lower end"));
}

TEST_CASE("what is not said is missing where the market asks for it, and not asked where none does") {
    const Labelled eu = of(orchard("eu"));
    for (const Field field : {Field::durability, Field::batch, Field::responsible})
        CHECK(entry(eu.label, field)->state == State::missing);
    CHECK(entry(eu.label, Field::contact)->state == State::not_asked);
    CHECK(remarked(eu.label, "How long it keeps"));
    CHECK(entry(eu.label, Field::list)->state == State::doubtful);  // allergens were not worked out
    const Labelled us = of(orchard("us"));
    for (const Field field : {Field::responsible, Field::contact})
        CHECK(entry(us.label, field)->state == State::missing);
    for (const Field field : {Field::durability, Field::batch})
        CHECK(entry(us.label, field)->state == State::not_asked);
    CHECK(entry(us.label, Field::list)->state == State::given);  // no list of allergens is in force there
    workspace::Recipe no_batch = orchard("eu");
    no_batch.batch = {};
    CHECK(entry(of(no_batch).label, Field::net)->state == State::missing);
    Details half = details();
    half.maker.address.clear();
    CHECK(entry(of(orchard("eu"), half).label, Field::responsible)->state == State::missing);
}

TEST_CASE("Canada is asked in English and French") {
    const Labelled made = of(orchard("ca"), details());
    CHECK(entry(made.label, Field::identity)->text == "Lip balm / Baume \xC3\xA0 l\xC3\xA8vres");
    CHECK(entry(made.label, Field::list)->text.rfind("Ingredients / Ingr\xC3\xA9\x64ients : ", 0) == 0);
    CHECK(entry(made.label, Field::list)->aside == Aside::tag_or_page);  // C.R.C., c. 869, s. 21.5
    workspace::Recipe own = orchard("ca");
    own.label.identity = "Winter balm";
    own.label.warnings = {"Keep out of eyes."};
    const Labelled half = of(own, details());
    CHECK(entry(half.label, Field::identity)->state == State::doubtful);
    CHECK(remarked(half.label, "in French"));
    CHECK(entry(half.label, Field::warnings)->text == "Caution / Mise en garde : Keep out of eyes.");
    CHECK(remarked(half.label, "write both"));
}

TEST_CASE("allergens are named by the list that holds on the market and the day, with the reason beside it") {
    workspace::Recipe recipe = shipped::recipe("greenhouse_foot_scrub");
    const auto names = [&](const char* market, const char* date) {
        recipe.market = market;
        recipe.date = date;
        std::set<std::string> all;
        for (const declaration::Item& one : of(recipe, {}, allergens_of(recipe)).list.items)
            if (one.allergen) all.insert(one.name);
        return all;
    };
    // EX-19: the old list of 24 until 31 July 2026, 81 entries from 1 August 2026; Great Britain 24; US none.
    CHECK(names("eu", "2026-08-01").count("Menthol") == 1);
    CHECK(names("eu", "2026-07-31").count("Menthol") == 0);
    CHECK(names("eu", "2026-07-31").count("Limonene") == 1);
    CHECK(names("gb", "2026-11-26").count("Menthol") == 0);
    CHECK(names("ni", "2026-11-26").count("Menthol") == 1);
    CHECK(names("ca", "2026-04-11").empty());
    CHECK(names("ca", "2026-04-12").count("Limonene") == 1);
    CHECK(names("ca", "2026-08-01").count("Menthol") == 1);
    CHECK(names("us", "2026-11-26").empty());
    // The oil is an entry itself and named already.
    recipe.market = "eu";
    recipe.date = "2026-11-26";
    const Labelled made = of(recipe, {}, allergens_of(recipe));
    const auto same = [](const declaration::Item& one) { return one.name == "Mentha Piperita Oil"; };
    CHECK(std::count_if(made.list.items.begin(), made.list.items.end(), same) == 1);
    CHECK(remarked(made.label, allergens_of(recipe).reason));
}

TEST_CASE("warnings that the checks call for: a law's is printed, the others are offered") {
    // EX-21, CA2-5: eucalyptus oil in Canada, 0.022 % no caution, 0.03 % caution.
    workspace::Recipe recipe = orchard("ca");
    recipe.date = "2026-11-26";
    recipe.product = "body_oil";
    const auto with = [&](std::int64_t grid) {
        workspace::Recipe changed = recipe;
        changed.formula =
            support::formula_of({support::rest("sunflower"), support::line("eucalyptus_globulus", grid)});
        const safety::Report report = analysis::checks(changed, shelf(), &shipped::book());
        return labelling::of(changed, {}, shelf(), details(), allergens_of(changed), shipped::english(),
                             &report)
            .value();
    };
    const Labelled none = with(220), due = with(300);
    CHECK(none.label.text.find("Poison Control Centre") == std::string::npos);
    CHECK(due.label.text.find("Poison Control Centre") != std::string::npos);
    CHECK(due.label.text.find("centre antipoison") != std::string::npos);
    CHECK(remarked(due.label, "exact ones"));
    CHECK(due.warnings.front().due);
    // Nuts are offered.
    const workspace::Recipe balm = orchard("eu");
    const safety::Report report = analysis::checks(balm, shelf(), &shipped::book());
    const auto offered = labelling::warnings_of(balm, report.findings, shelf(), shipped::english());
    CHECK(std::any_of(offered.begin(), offered.end(), [](const labelling::Warning& one) {
        return !one.due && one.sentence.find("Shea butter") != std::string::npos;
    }));
}

TEST_CASE("what is not known to hold anything is told beside the list") {
    workspace::Recipe recipe = orchard("eu");
    recipe.formula.lines.push_back(support::line("", quantity::Percent{10'000}.grid, "C"));
    recipe.formula.lines.back().name = "Grandmother's scent";
    const labelling::Allergens allergens = allergens_of(recipe);
    REQUIRE(allergens.named.has_value());
    CHECK(std::count(allergens.unknown.begin(), allergens.unknown.end(), "Grandmother's scent") == 1);
    CHECK(remarked(of(recipe, {}, allergens).label, "Grandmother's scent"));
}

TEST_CASE("the customer card answers for every demonstration recipe") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        const safety::Report report = analysis::checks(recipe, shelf(), &shipped::book());
        const customer_card::Card card =
            labelling::card_of(recipe, report, shelf(), {}, &shipped::book(), shipped::english());
        CHECK(card.answers.size() == customer_card::kTopics);
        CHECK(card.text.find("[[") == std::string::npos);
        CHECK(card.text.find("not looked at") == std::string::npos);
    }
    const workspace::Recipe balm = orchard("eu");
    const customer_card::Card card =
        labelling::card_of(balm, analysis::checks(balm, shelf(), &shipped::book()), shelf(), {},
                           &shipped::book(), shipped::english());
    CHECK(card.text.find("Nuts and kernels: Shea butter") != std::string::npos);
    CHECK(card.text.find("From bees: ") != std::string::npos);
}

TEST_CASE("every shipped product kind has a French name, and no other") {
    std::set<std::string> wanted;
    for (const catalogue::Product& one : shelf().products)
        wanted.insert("kind_french." + one.id);
    for (const std::string& key : wanted)
        CHECK(words::has(shipped::english(), key));
    for (const auto& [key, text] : shipped::english().entries)
        if (key.rfind("kind_french.", 0) == 0) CHECK(wanted.count(key) == 1);
}

TEST_CASE("over 30 months the months after opening stand in the date's place") {
    workspace::Recipe recipe = orchard("eu");
    recipe.label.keeping = {36, 12, false};
    CHECK(entry(of(recipe).label, Field::durability)->text == "12\xC2\xA0M");
    recipe.label.keeping.opened_months.reset();
    const Labelled unsaid = of(recipe);
    CHECK(entry(unsaid.label, Field::durability)->state == State::missing);
    CHECK(remarked(unsaid.label, "months after opening"));
    recipe.label.keeping.never_opened = true;
    CHECK(entry(of(recipe).label, Field::durability)->state == State::not_asked);
}

TEST_CASE("letters are as high as the panel asks") {
    const auto with_panel = [](const char* market) {
        workspace::Recipe recipe = orchard(market);
        recipe.label.panel = type_height::Panel{type_height::Shape::cylinder, 508'000, 508'000};  // EX2-3
        return of(recipe);
    };
    const Labelled us = with_panel("us");
    REQUIRE(us.label.heights.has_value());
    CHECK(entry(us.label, Field::net)->height->printed == "1/16 in");
    CHECK(entry(us.label, Field::list)->height->printed == "1/16 in");
    CHECK_FALSE(us.label.heights->at_the_foot);
    const Labelled eu = with_panel("eu");
    CHECK(entry(eu.label, Field::net)->height->printed == "2 mm");
    CHECK_FALSE(entry(eu.label, Field::list)->height.has_value());
}

TEST_CASE("the weight said for a jar is what the label says; a volume goes by the density of what is in it") {
    const Labelled scrub = [] {
        workspace::Recipe recipe = shipped::recipe("greenhouse_foot_scrub");
        recipe.market = "us";
        return of(recipe, details());
    }();
    CHECK(plain(scrub.label.net->text) == "Net wt. 4.58 oz. (130 g)");  // said: 130 g
    CHECK(entry(scrub.label, Field::net)->state == State::given);
    workspace::Recipe oil = shipped::recipe("harvest_supper_body_oil");
    oil.market = "ca";
    const Labelled made = of(oil, details());
    CHECK(made.label.net->volume);
    CHECK(made.net->usual);
    CHECK(made.net->mass < analysis::of(oil, shelf()).batch->fills.front().each);
}

TEST_CASE("a market that is not known is refused by name; none is the EU") {
    workspace::Recipe recipe = orchard("au");
    const auto made = labelling::of(recipe, {}, shelf(), {}, {}, shipped::english());
    REQUIRE_FALSE(made.ok());
    CHECK(made.error().place == "market");
    CHECK(made.error().detail == "au");
    CHECK(labelling::market_of(orchard("")).value() == Market::eu);
}

TEST_CASE("sources that a label names are in the bibliography and stand as they stand there") {
    for (const auto& [market, id] : market::kAll) {
        const Labelled made = of(orchard(id), details());
        std::vector<std::pair<std::string_view, source::Standing>> named;
        for (const Entry& one : made.label.entries)
            if (!one.source.empty()) named.emplace_back(one.source, one.standing);
        for (const sale_needs::Need& one : made.needs)
            named.emplace_back(one.source, one.standing);
        for (const auto& [key, standing] : named) {
            CAPTURE(key);
            const source::Entry* known = catalogue::find_source(shelf(), key);
            REQUIRE(known != nullptr);
            CHECK(known->standing == standing);
        }
    }
}

TEST_CASE("the demonstration recipes' labels in every market are those of tests/data/labels.txt") {
    std::string all;
    for (const auto& [stem, shipped_recipe] : shipped::presets().recipes)
        for (const auto& [market, id] : market::kAll) {
            workspace::Recipe recipe = keeping_24(shipped_recipe);
            recipe.market = id;
            recipe.date = "2026-11-26";
            const Labelled made = of(recipe, details(), allergens_of(recipe));
            all += "== " + stem + ", " + std::string(id) + "\n" + made.label.text + "\n";
            for (const std::string& remark : made.label.remarks)
                all += "-- " + remark + "\n";
            all += "\n";
        }
    if (all != shipped::data("labels.txt")) {
        // The new text beside the build, to be compared and, where it is right, copied.
        std::ofstream("labels.txt.new", std::ios::binary) << all;
        FAIL_CHECK("labels.txt.new differs from tests/data/labels.txt");
    }
}

}  // namespace test_label
