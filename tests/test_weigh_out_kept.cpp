// A weigh-out from a recipe, as a record, in a backup, and what the checks say of what it becomes. The
// weighing itself: test_weigh_out.cpp.
#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "engine/door.h"
#include "engine/store.h"
#include "engine/store_json.h"
#include "engine/weigh_out_ways.h"
#include "engine/weighed.h"
#include "engine/workspace_weigh_out.h"
#include "shipped.h"

namespace test_weigh_out_kept {

using quantity::grams;
using quantity::Mass;
using weigh_out::WeighOut;

namespace {

constexpr const char* kNow = "2026-11-26T09:00:00Z";

weigh_out::Plan plan_for(const workspace::Recipe& recipe, const scales::Bench& bench = {}) {
    const auto report = analysis::of(recipe, shipped::presets().catalogue, bench);
    REQUIRE(report.batch.ok());
    return workspace::plan_of(recipe, *report.batch, shipped::presets().catalogue, bench).value();
}

workspace::Workspace begun(const char* stem) {
    workspace::Workspace work;
    workspace::add(work, "salve", shipped::recipe(stem), kNow);
    REQUIRE(workspace::begin_weigh_out(work, "w1", "salve", plan_for(shipped::recipe(stem)), kNow));
    return work;
}

// One of everything that a record can hold.
workspace::KeptWeighOut everything() {
    workspace::KeptWeighOut kept = begun("potting_shed_hand_salve").weighing.front();
    WeighOut& now = kept.weighing;
    now.plan.jug = grams(150);
    now.plan.pot = grams(900);
    now.plan.lines[1].have = grams(80);
    now = weigh_out::pour(now, 0, Mass{2000100}, false, "2026-11-26T09:10:00Z").value();
    now = weigh_out::take_jug(now, grams(90), kNow);
    for (const weigh_out::Option& option : weigh_out::options(now, 0))
        if (option.way == weigh_out::Way::proportion) now = option.after;
    now = weigh_out::pour(now, 1, grams(20), true, "").value();
    now = weigh_out::adjusted(now, 0, quantity::percent(18), true).value().after;
    now = weigh_out::fill(now, Mass{275000}, "");
    now.at = 3;
    now.typed = Mass{123400};
    now.zeroed = false;
    now.ticked = {"weigh_step.dates", "own 2"};
    now.timers = {{"Step 2", "2026-11-26T09:15:00Z", 20}};
    now.lots = {{"BW-7", "2027-03-31"}, {}, {"S1", ""}};
    kept.saves = 12;
    kept.changed = kNow;
    return kept;
}

}  // namespace

TEST_CASE("a weigh-out begins with the batch's own grams, in the recipe's phases") {
    const workspace::Workspace work = begun("potting_shed_hand_salve");
    const workspace::KeptWeighOut* kept = workspace::weigh_out_of(work, "salve");
    REQUIRE(kept != nullptr);
    const auto batch = *analysis::of(kept->recipe, shipped::presets().catalogue).batch;
    for (const batch::Line& line : batch.lines)
        CHECK(kept->weighing.plan.lines[line.line].grams == line.grams);
    CHECK(weigh_out::standing_of(kept->weighing).total == batch.total);
    CHECK(kept->weighing.plan.containers == 8);
    CHECK(kept->weighing.plan.lines[5].capped);  // vitamin E
    CHECK_FALSE(kept->weighing.plan.lines[0].capped);
    CHECK(kept->recipe == shipped::recipe("potting_shed_hand_salve"));
    CHECK_FALSE(weigh_out::fault_of(kept->weighing).has_value());
}

TEST_CASE("there is one at a time of each recipe, and it is dropped by its id") {
    workspace::Workspace work = begun("potting_shed_hand_salve");
    CHECK_FALSE(workspace::begin_weigh_out(work, "w2", "salve", {}, kNow));
    CHECK_FALSE(workspace::begin_weigh_out(work, "w2", "nobody", {}, kNow));
    CHECK_FALSE(workspace::drop_weigh_out(work, "w2"));
    CHECK(workspace::drop_weigh_out(work, "w1"));
    CHECK(workspace::weigh_out_of(work, "salve") == nullptr);
}

TEST_CASE("with a recipe that is erased for good its weigh-out goes, not with one in the bin") {
    workspace::Workspace work = begun("potting_shed_hand_salve");
    REQUIRE(workspace::bin(work, "salve", kNow));
    CHECK(workspace::weigh_out_of(work, "salve") != nullptr);
    REQUIRE(workspace::erase_binned(work, "salve"));
    CHECK(work.weighing.empty());
}

TEST_CASE("what is at hand and an own cap go along") {
    workspace::Recipe recipe = shipped::recipe("potting_shed_hand_salve");
    recipe.batch.stock = {{"shea", grams(40)}};
    const weigh_out::Plan plan = plan_for(recipe, {{}, scales::Jug{"tall", grams(200)}});
    CHECK(plan.lines[1].have == grams(40));
    CHECK_FALSE(plan.lines[0].have.has_value());
    CHECK(plan.jug == grams(200));
}

TEST_CASE("every weigh-out that is written reads as the same") {
    const workspace::KeptWeighOut kept = everything();
    const auto read = store::read_weigh_out(store::write_weigh_out(kept));
    REQUIRE(read.ok());
    CHECK(*read == kept);
}

TEST_CASE("the frozen weigh-out of format 1 reads with everything in it") {
    const auto kept = store::read_weigh_out(shipped::data("v1_weigh_out.json"));
    REQUIRE(kept.ok());
    CHECK(kept->of == "salve");
    CHECK(kept->saves == 12);
    CHECK(kept->weighing.acts.size() == 6);
    CHECK(kept->weighing.at == 3);
    CHECK(kept->weighing.typed == Mass{123400});
    CHECK_FALSE(kept->weighing.zeroed);
    CHECK(kept->weighing.lots[0] == weigh_out::Lot{"BW-7", "2027-03-31"});
    CHECK(kept->weighing.timers[0].minutes == 20);
    const weigh_out::Standing standing = weigh_out::standing_of(kept->weighing);
    CHECK(standing.rows[0].poured == Mass{500100});
    CHECK(standing.first_fill == Mass{275000});
}

TEST_CASE("a weigh-out that cannot have been written is refused with its place") {
    const std::string whole = shipped::data("v1_weigh_out.json");
    const auto refused = [&](const std::string& from, const std::string& to) {
        std::string text = whole;
        REQUIRE(text.find(from) != std::string::npos);
        text.replace(text.find(from), from.size(), to);
        const auto read = store::read_weigh_out(text);
        REQUIRE_FALSE(read.ok());
        return read.error();
    };
    CHECK(refused("\"weigh_out\":1", "\"weigh_out\":2").code == result::Code::version_newer);
    CHECK(refused("\"do\":\"pour\"", "\"do\":\"spill\"").place == "acts[0].do");
    CHECK(refused("\"at\":3", "\"at\":33").code == result::Code::line_missing);
    CHECK(refused("\"typed_g\":12.34", "\"typed_g\":-1").code == result::Code::number_negative);
    CHECK_FALSE(store::read_weigh_out(whole.substr(0, 500)).ok());
    CHECK_FALSE(store::read_weigh_out("").ok());
}

TEST_CASE("a backup brings a weigh-out back, where none is under way of its recipe") {
    workspace::Workspace work = begun("potting_shed_hand_salve");
    const auto content = store::read_backup(store::write_backup(work, {}, kNow));
    REQUIRE(content.ok());
    REQUIRE(content->weighing.size() == 1);
    workspace::Workspace other;
    workspace_backup::put_back(other, workspace_backup::preview(other, *content), {"n1"}, "");
    CHECK(workspace::weigh_out_of(other, "salve") != nullptr);
    workspace_backup::put_back(other, workspace_backup::preview(other, *content), {"n2"}, "");
    CHECK(other.weighing.size() == 1);
}

TEST_CASE("a preservative that a choice brings below its working range is told of") {
    const workspace::Recipe recipe = shipped::recipe("kitchen_garden_hand_lotion");
    WeighOut now;
    now.plan = plan_for(recipe);
    // Half of the phenoxyethanol, and no more there is.
    now = weigh_out::pour(now, 7, Mass{now.plan.lines[7].grams.grid / 200 * 100}, true, "").value();
    bool told = false;
    for (const weigh_out::Option& option : weigh_out::options(now, 7)) {
        if (option.way != weigh_out::Way::accept) continue;
        for (const finding::Finding& one :
             weighed::remarks(recipe, option.then, shipped::presets().catalogue, &shipped::book()))
            told = told || one.code == finding::Code::preservative_below_working;
    }
    CHECK(told);
    const auto as_meant = weigh_out::standing_of(WeighOut{plan_for(recipe), {}, 0, {}, true, {}, {}, {}});
    CHECK(weighed::remarks(recipe, as_meant, shipped::presets().catalogue, &shipped::book()).empty());
}

TEST_CASE("a phase says why it is hot or cooled") {
    const auto& known = shipped::presets().catalogue;
    const auto& salve = shipped::recipe("potting_shed_hand_salve").formula;
    const auto hot = weighed::reason_of(salve, 0, known);
    REQUIRE(hot.has_value());
    CHECK(hot->why == weighed::Why::melts);
    CHECK(hot->ingredient == "beeswax_yellow");
    CHECK(weighed::is_hot(salve.phases[0]));
    CHECK_FALSE(weighed::is_hot(salve.phases[2]));
    const auto& lotion = shipped::recipe("kitchen_garden_hand_lotion").formula;
    CHECK(weighed::reason_of(lotion, 0, known)->why == weighed::Why::emulsion);
    CHECK(weighed::reason_of(salve, 9, known) == std::nullopt);
    const auto order = weighed::bench_order(shipped::recipe("harvest_supper_body_oil").formula, known);
    CHECK(order.front() == "weigh_step.dates");
    CHECK(std::find(order.begin(), order.end(), "weigh_step.wax") == order.end());
}

TEST_CASE("a timer counts on while the page is away") {
    const weigh_out::Timer timer{"Step 2", "2026-11-26T23:50:00Z", 20};
    CHECK(workspace::seconds_left(timer, "2026-11-27T00:05:30Z") == 270);
    CHECK(workspace::seconds_left(timer, "2026-11-27T00:11:00Z") == -60);
    CHECK_FALSE(workspace::seconds_left(timer, "soon").has_value());
}

TEST_CASE("door: weigh says what is next, and works the choices out") {
    const std::string recipe = store::write_recipe(shipped::recipe("potting_shed_hand_salve"));
    const auto ask = [&](const std::string& more) {
        return door::run("weigh", "{\"recipe\":" + recipe + more + "}", shipped::presets(),
                         presets_data::kLimits);
    };
    const auto tree = store_json::parse(ask("").out).value();
    CHECK(tree["finished"] == false);
    CHECK(tree["next"]["line"] == 0);
    CHECK(tree["choices"].empty());
    const auto over = store_json::parse(ask(",\"acts\":[{\"line\":0,\"shows_g\":50}]").out).value();
    CHECK(over["choices"][0]["choose"] == "proportion");
    CHECK(over["lines"][0]["over"] == true);
    const auto taken = store_json::parse(
        ask(",\"acts\":[{\"line\":0,\"shows_g\":50},{\"line\":0,\"choose\":\"proportion\"}]").out);
    CHECK(taken.value()["choices"].empty());
    CHECK(taken.value()["lines"][0]["done"] == true);
    CHECK(ask(",\"acts\":[{\"line\":0,\"choose\":\"dance\"}]").err.rfind("acts[0].choose: ", 0) == 0);
    CHECK(ask(",\"acts\":[{\"line\":9,\"shows_g\":1}]").exit_code == 2);
}

}  // namespace test_weigh_out_kept
