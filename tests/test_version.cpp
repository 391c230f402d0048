// What differs between two states of a formula, and versions of the recipes in the book.
#include <string>

#include "doctest/doctest.h"
#include "engine/version.h"
#include "engine/workspace_versions.h"
#include "shipped.h"
#include "support.h"

namespace test_version {

using quantity::percent;
using quantity::Percent;
using version::Change;
using workspace::Recipe;
using workspace::Version;
using workspace::Workspace;

namespace {

constexpr const char* kMonday = "2026-11-23T09:00:00Z";
constexpr const char* kFriday = "2026-11-27T09:00:00Z";

// Wax and oil, the oil as the rest.
formula::Formula waxed(std::int64_t wax) {
    return support::formula_of({support::line("wax", percent(wax).grid), support::rest("sunflower")});
}

Recipe salve(std::int64_t wax) {
    Recipe recipe;
    recipe.title = "Potting-shed salve";
    recipe.formula = waxed(wax);
    return recipe;
}

Workspace book() {
    Workspace work;
    workspace::add(work, "salve", salve(20), kMonday);
    return work;
}

std::string kept(Workspace& work, const Recipe& recipe, const char* name, const char* id) {
    const auto made = workspace::keep_version(work, "salve", recipe, name, id, kMonday);
    REQUIRE(made);
    return *made;
}

}  // namespace

TEST_CASE("lines are compared by ingredient, the rest line by what it comes to") {
    const auto lines = version::compare(waxed(20), waxed(22));
    REQUIRE(lines.size() == 2);
    CHECK(lines[0] == version::Line{0, 0, percent(20), percent(22), Change::percent, false});
    CHECK(lines[1] == version::Line{1, 1, percent(80), percent(78), Change::percent, false});
    CHECK(version::changes(lines) == 2);
    CHECK(version::changes(version::compare(waxed(20), waxed(20))) == 0);
}

TEST_CASE("a line that came, one that went and one that moved to another phase are told") {
    const auto one =
        support::formula_of({support::line("wax", percent(20).grid), support::line("shea", percent(10).grid),
                             support::rest("sunflower")});
    auto other = formula::add_phase(one, {"B", {}, {}}).value();
    other = formula::move_to_phase(other, 1, "B").value();
    other = formula::set_ingredient(other, 0, "oat", "").value();
    const auto lines = version::compare(one, other);
    REQUIRE(lines.size() == 4);
    CHECK(lines[0].change == Change::added);
    CHECK(lines[1].change == Change::same);
    CHECK(lines[2].moved);
    CHECK(lines[3].change == Change::gone);
    CHECK(lines[3].was == percent(20));
    CHECK_FALSE(lines[3].is.has_value());
    CHECK(version::changes(lines) == 3);
}

TEST_CASE("one ingredient in two lines is compared phase by phase") {
    const auto one =
        support::formula_of({support::line("wax", percent(20).grid, "A"),
                             support::line("wax", percent(5).grid, "B"), support::rest("sunflower")});
    auto other = formula::remove_line(one, 0).value();
    const auto lines = version::compare(one, other);
    CHECK(version::changes(lines) == 2);  // gone, and the rest line took it up
    CHECK(lines.back().was == percent(20));
}

TEST_CASE("of a formula that does not add to 100 the rest line is unknown, not nothing") {
    auto over = waxed(20);
    over.lines[0].percent = percent(120);
    const auto lines = version::compare(waxed(20), over);
    CHECK(lines[0].is == percent(120));
    CHECK_FALSE(lines[1].is.has_value());
}

TEST_CASE("a version is kept under a name; the same state is one version, whatever is made of it") {
    Workspace work = book();
    const std::string first = kept(work, salve(20), "softer", "v1");
    Recipe more = salve(20);
    more.batch.amount = batch::Amount::grams;
    more.batch.grams = quantity::grams(500);
    CHECK(kept(work, more, "", "v2") == first);
    CHECK(workspace::find_version(work, "v1")->name == "softer");
    CHECK(kept(work, more, "for the market", "v3") == first);
    CHECK(workspace::find_version(work, "v1")->name == "for the market");
    CHECK(kept(work, salve(22), "firmer", "v4") == "v4");
    const auto all = workspace::versions_of(work, "salve");
    REQUIRE(all.size() == 2);
    CHECK(all[0]->id == "v4");
    CHECK(workspace::versions_of(work, "another").empty());
}

TEST_CASE("one version of a recipe is pinned at the most") {
    Workspace work = book();
    kept(work, salve(20), "a", "v1");
    kept(work, salve(22), "b", "v2");
    CHECK(workspace::pin_version(work, "v1", true, kFriday));
    CHECK(workspace::pin_version(work, "v2", true, kFriday));
    CHECK_FALSE(workspace::find_version(work, "v1")->pinned);
    CHECK(workspace::find_version(work, "v2")->pinned);
    workspace::pin_version(work, "v2", false, kFriday);
    CHECK_FALSE(workspace::find_version(work, "v2")->pinned);
}

TEST_CASE("versions go with their recipe for good, but those that a record was made by") {
    Workspace work = book();
    kept(work, salve(20), "a", "v1");
    kept(work, salve(22), "b", "v2");
    workspace::freeze_version(work, "v2", kFriday);
    workspace::bin(work, "salve", kFriday);
    CHECK(workspace::versions_of(work, "salve").size() == 2);
    workspace::erase_binned(work, "salve");
    CHECK(workspace::find_version(work, "v1") == nullptr);
    CHECK(workspace::find_version(work, "v2") != nullptr);
}

TEST_CASE("what differs between two versions beside their lines is named") {
    Recipe other = salve(20);
    CHECK_FALSE(workspace::differences(salve(20), other).any());
    other.notes = "Stir longer.";
    other.steps.push_back({"", "Melt.", {}});
    const auto made = workspace::differences(salve(20), other);
    CHECK(made.changed_lines == 0);
    CHECK(made.notes);
    CHECK(made.steps);
    CHECK_FALSE(made.title);
}

TEST_CASE("a name that is too long, and a version too many, are refused") {
    Workspace work = book();
    CHECK_FALSE(workspace::keep_version(work, "salve", salve(20), std::string(61, 'x'), "v", kMonday));
    for (std::size_t i = 0; i < workspace::kMostVersions; ++i) {
        Recipe recipe = salve(20);
        recipe.notes = std::to_string(i);
        REQUIRE(workspace::keep_version(work, "salve", recipe, "n", "v" + std::to_string(i), kMonday));
    }
    CHECK_FALSE(workspace::keep_version(work, "salve", salve(20), "one more", "w", kMonday));
    CHECK(workspace::keep_version(work, "salve", salve(20), "", "w", kMonday));  // a record's is not
}

}  // namespace test_version
