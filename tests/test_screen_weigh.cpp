// Weighing out on the page, by name and by finger: line by line, mistakes and their choices, an adjustment;
// and the page killed and opened anew at every step, with nothing lost.
#include <algorithm>
#include <string>

#include "engine/weigh_out_ways.h"
#include "engine/workspace_records.h"
#include "engine/workspace_versions.h"
#include "hand.h"
#include "shipped.h"
#include "whole.h"

namespace test_screen_weigh {

using app::Screen;
using app::Sheet;
using hand::FirstVisit;
using mirror::Role;
using quantity::Mass;

namespace {

void drawn() {
    hand::push(platform::Kind::resized);
    hand::settle();
}

// The salve's batch is on the scale.
void begin(app::App& app) {
    app::keep(app, shipped::recipe("potting_shed_hand_salve"));
    app.ui.screen = Screen::batch;
    drawn();
    hand::press(app.say("batch.weigh_out"));
    REQUIRE(app.ui.screen == Screen::weigh);
}

const weigh_out::WeighOut& now(const app::App& app) {
    REQUIRE(app::weighing(app) != nullptr);
    return app::weighing(app)->weighing;
}

weigh_out::Standing standing(const app::App& app) {
    return weigh_out::standing_of(now(app));
}

const weigh_out::Row row(const app::App& app) {
    return standing(app).rows[now(app).at];
}

void pour(app::App& app, const char* figure) {
    hand::write(app.say("weigh.scale_shows"), figure);
    hand::press(app.say("weigh.in", {{"g", app.grams(*now(app).typed)}}));
}

void pour_as_asked(app::App& app) {
    hand::press(app.say("weigh.in", {{"g", app.grams(row(app).left)}}));
}

// Everything in memory is gone; what was stored comes back.
void kill_and_reload() {
    hand::open_page();
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "weighed as asked, line by line, to the end") {
    begin(app);
    CHECK(hand::reads(app.say("weigh.hot")));
    const std::size_t lines = now(app).plan.lines.size();
    for (std::size_t i = 0; i < lines; ++i)
        pour_as_asked(app);
    CHECK(standing(app).finished);
    CHECK(hand::reads(app.say("weigh.all_in")));
    CHECK(standing(app).poured == standing(app).total);
    CHECK_FALSE(hand::reads(app.say("weigh.hot")));
}

TEST_CASE_FIXTURE(FirstVisit,
                  "the figure is large and named; the bottom bar is gone; back leads to the batch") {
    begin(app);
    CHECK(hand::see(Role::tab, app.say("nav.batch")) == nullptr);
    const std::string asked =
        app.say("weigh.add") + " " + words::figure_fixed(app.words, row(app).left.grid, 2) + "\xC2\xA0g";
    bool large = false;
    for (const mirror::Node& node : mirror::nodes())
        large = large || (node.role == Role::status && node.name.rfind(asked, 0) == 0 && node.height > 100);
    CHECK(large);
    hand::press(app.say("weigh.back"));
    CHECK(app.ui.screen == Screen::batch);
    hand::press(app.say("batch.weigh_on"));
    CHECK(app.ui.screen == Screen::weigh);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "too much: the choices stand worked out, and in proportion brings the rest up") {
    begin(app);
    const Mass before = standing(app).total;
    pour(app, "45");
    REQUIRE(row(app).over);
    CHECK(hand::see(Role::button, app.say("weigh.scale_shows")) == nullptr);
    const app::WeighView view = app::weigh_view(app, true);
    CHECK(hand::reads(app.say("weigh.bring_up", {{"g", app.grams(view.options.front().then.total)}})));
    CHECK(hand::see(Role::button, app.say("weigh.do_leave")) != nullptr);
    CHECK(standing(app).total - before < quantity::grams(20));  // nothing is taken yet
    hand::press(app.say("weigh.do_bring_up"));
    CHECK_FALSE(row(app).over);
    CHECK(now(app).at != 0);
    CHECK(standing(app).total > before);
    CHECK(standing(app).percents[0] == quantity::percent(16));
}

TEST_CASE_FIXTURE(FirstVisit, "too little: what is missing is asked for; with no more of it there are ways") {
    begin(app);
    const Mass asked = row(app).left;
    pour(app, "20");
    CHECK(now(app).at == 0);
    CHECK(row(app).left == asked - quantity::grams(20));
    hand::press(app.say("weigh.no_more_of_it"));
    hand::press(app.say("weigh.do_smaller"));
    CHECK(now(app).at != 0);
    CHECK(standing(app).percents[0].grid / 100 == 1600);
}

TEST_CASE_FIXTURE(FirstVisit, "a slip is taken back") {
    begin(app);
    pour(app, "450");
    hand::press(app.say("weigh.take_back"));
    CHECK(now(app).acts.empty());
    CHECK(now(app).at == 0);
}

TEST_CASE_FIXTURE(FirstVisit, "a scale that switched itself off is read with the jug on it") {
    begin(app);
    hand::press(app.say("weigh.this_line"));
    hand::write(app.say("weigh.jug_empty"), "200");
    hand::press(app.say("sheet_ui.close"));
    const Mass whole = quantity::grams(200) + row(app).left;
    CHECK(hand::reads(app.say("weigh.not_zeroed_shows", {{"g", app.grams(whole)}})));
    hand::press(app.say("weigh.not_zeroed"));
    hand::write(app.say("weigh.scale_shows"), words::figure(app.words, whole.grid));
    hand::press(app.say("weigh.reads_now", {{"g", app.grams(whole)}}));
    CHECK(standing(app).rows[0].done);
    hand::write(app.say("weigh.scale_shows"), "100");
    hand::press(app.say("weigh.reads_now", {{"g", app.grams(quantity::grams(100))}}));
    CHECK(hand::reads(app.say("weigh.less_than_before")));
}

TEST_CASE_FIXTURE(FirstVisit, "lines in any order; lot and packet stay with their line") {
    begin(app);
    hand::press(now(app).plan.lines[4].name);
    CHECK(now(app).at == 4);
    hand::press(app.say("weigh.this_line"));
    hand::write(app.say("weigh.lot"), "OL-3");
    hand::write(app.say("weigh.at_hand"), "300");
    hand::press(app.say("sheet_ui.close"));
    CHECK(now(app).lots[4].lot == "OL-3");
    CHECK(now(app).plan.lines[4].have == quantity::grams(300));
    pour_as_asked(app);
    CHECK(now(app).at == 5);
}

TEST_CASE_FIXTURE(FirstVisit, "adjusted while warm: what to add is shown, then asked for") {
    begin(app);
    for (int i = 0; i < 5; ++i)
        pour_as_asked(app);
    hand::press(app.say("weigh.adjust"));
    const std::string wax = now(app).plan.lines[0].name;
    hand::write(app.say("adjust.new_percent", {{"name", wax}}), "18");
    CHECK(hand::reads(wax));
    hand::press(app.say("weigh.do_adjust"));
    CHECK(now(app).at == 0);
    CHECK(row(app).left > Mass{});
    pour_as_asked(app);
    while (!standing(app).finished)
        pour_as_asked(app);
    CHECK((standing(app).percents[0].grid + 50) / 100 == 1800);
}

TEST_CASE_FIXTURE(FirstVisit, "killed and opened anew at every step, it goes on where it was") {
    begin(app);
    int step = 0;
    const auto same_after = [&](const char* what) {
        CAPTURE(what);
        const weigh_out::WeighOut before = now(app);
        const std::string open = app.work.open;
        kill_and_reload();
        CHECK(app.ui.screen == Screen::weigh);
        CHECK(app.work.open == open);
        REQUIRE(app::weighing(app) != nullptr);
        CHECK(now(app) == before);
        ++step;
    };
    same_after("begun");
    hand::write(app.say("weigh.scale_shows"), "45");
    same_after("typed, not said to be in");
    CHECK(hand::field(app.say("weigh.scale_shows")).value == "45");
    hand::press(app.say("weigh.in", {{"g", app.grams(quantity::grams(45))}}));
    same_after("too much");
    hand::press(app.say("weigh.do_bring_up"));
    same_after("decided");
    pour(app, "10");
    same_after("too little");
    pour_as_asked(app);
    hand::press(app.say("weigh.steps"));
    hand::press(app.say("weigh_step.dates"), Role::checkbox);
    hand::press(
        app.say("weigh.timer_start", {{"what", app.say("formula.step_n", {{"n", "2"}})}, {"n", "20"}}));
    same_after("ticked, and a timer started");
    CHECK(hand::reads(app.say("weigh.minutes_left", {{"n", "20"}})));
    while (!standing(app).finished) {
        pour_as_asked(app);
        same_after("poured");
    }
    hand::press(app.say("weigh.adjust"));
    hand::write(app.say("adjust.new_percent", {{"name", now(app).plan.lines[0].name}}), "18");
    hand::press(app.say("weigh.do_adjust"));
    same_after("adjusted");
    pour_as_asked(app);
    while (!standing(app).finished)
        pour_as_asked(app);
    same_after("all in");
    CHECK(step > 10);
}

TEST_CASE_FIXTURE(FirstVisit, "a timer tells when its time is over, and rings once") {
    begin(app);
    hand::press(app.say("weigh.steps"));
    const std::string step = app.say("formula.step_n", {{"n", "2"}});
    hand::press(app.say("weigh.timer_start", {{"what", step}, {"n", "20"}}));
    hand::press(app.say("sheet_ui.close"));
    CHECK(hand::reads(
        app.say("weigh.timer", {{"what", step}, {"left", app.say("weigh.minutes_left", {{"n", "20"}})}})));
    const int before = platform::native::rung();
    platform::native::set_utc("2026-11-25T12:20:01Z");
    hand::wait(61000);
    CHECK(hand::reads(app.say("weigh.time_over", {{"what", step}})));
    hand::wait(61000);
    CHECK(platform::native::rung() == before + 1);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "the screen is kept on while it is weighed, and where it cannot, that is said") {
    begin(app);
    CHECK(platform::native::kept_awake());
    hand::push(platform::Kind::awake, 0, "no");
    hand::settle();
    CHECK(hand::reads(app.say("weigh.not_awake")));
    hand::push(platform::Kind::awake, 0, "yes");
    hand::settle();
    CHECK(hand::reads(app.say("weigh.awake")));
    hand::press(app.say("weigh.back"));
    CHECK_FALSE(platform::native::kept_awake());
}

TEST_CASE_FIXTURE(FirstVisit, "the first container corrects the count; dropping asks first") {
    begin(app);
    while (!standing(app).finished)
        pour_as_asked(app);
    hand::press(app.say("weigh.end"));
    REQUIRE(app.ui.sheet == Sheet::weigh_end);
    hand::write(app.say("weigh.first_fill"), "40");
    CHECK(standing(app).first_fill == quantity::grams(40));
    CHECK(hand::reads(app.say("weigh.fills", {{"n", "5"}, {"of", "8"}, {"loss", "5"}})));
    hand::press(app.say("weigh.drop"));
    CHECK(app::weighing(app) != nullptr);
    hand::press(app.say("weigh.drop_now"));
    CHECK(app::weighing(app) == nullptr);
    CHECK(app.ui.screen == Screen::batch);
    CHECK(hand::see(Role::button, app.say("batch.weigh_out")) != nullptr);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "every state and sheet of it is whole in every size, in large letters, in longer words") {
    const auto look = [&](const char* what) {
        CAPTURE(what);
        const auto whole_now = [&] {
            drawn();
            CHECK(whole::faults() == "");
            for (const Sheet sheet :
                 {Sheet::weigh_line, Sheet::weigh_adjust, Sheet::weigh_steps, Sheet::weigh_end}) {
                CAPTURE(static_cast<int>(sheet));
                app::show(app, sheet);
                drawn();
                CHECK(whole::faults() == "");
                app::close_sheet(app);
            }
        };
        for (const whole::Size size : whole::kSizes) {
            CAPTURE(size.width);
            hand::resize(size.width, size.height);
            whole_now();
        }
        hand::resize(360, 640);
        platform::native::window().text_scale = 2;
        whole_now();
        platform::native::window().text_scale = 1;
        drawn();
    };
    for (const std::string language : {"en-GB", "en-XA"}) {
        CAPTURE(language);
        platform::native::store().clear();
        hand::open_page();
        platform::native::window().language = language;
        drawn();
        begin(app);
        look("a line");
        pour(app, "20");
        hand::press(app.say("weigh.no_more_of_it"));
        look("too little");
        hand::press(app.say("weigh.do_add"));
        pour(app, "60");
        look("too much");
        hand::press(app.say("weigh.do_bring_up"));
        while (!standing(app).finished)
            pour_as_asked(app);
        look("all in");
    }
    platform::native::window().language = "en-GB";
    drawn();
}

TEST_CASE_FIXTURE(FirstVisit, "written down as a batch record; an adjustment leaves a version") {
    begin(app);
    const std::string recipe = app.work.open;
    while (!standing(app).finished)
        pour_as_asked(app);
    hand::press(app.say("weigh.adjust"));
    hand::write(app.say("adjust.new_percent", {{"name", now(app).plan.lines[0].name}}), "18");
    hand::press(app.say("weigh.do_adjust"));
    while (!standing(app).finished)
        pour_as_asked(app);
    hand::press(app.say("weigh.end"));
    hand::press(app.say("weigh.record"));
    CHECK(app::weighing(app) == nullptr);
    const auto records = workspace::records(app.work);
    REQUIRE(records.size() == 1);
    const auto& record = std::get<record::Record>(records.front()->what);
    CHECK(record.lines.size() > 6);
    CHECK_FALSE(record.lines.front().after);
    CHECK(record.lines.back().after);
    CHECK(record.lines.back().planned == Mass{});
    CHECK(workspace::versions_of(app.work, recipe).size() == 2);  // as it stood, and adjusted
    CHECK(hand::reads(record.number));
}

TEST_CASE_FIXTURE(FirstVisit,
                  "by finger: the keypad writes the figure, the button at the thumb says it is in") {
    begin(app);
    hand::tap(hand::field(app.say("weigh.scale_shows")));
    REQUIRE(app.kit.keypad.open());
    for (const char* key : {"4", "5"})
        hand::tap(hand::button(key));
    hand::tap(hand::button(app.say("keypad.done")));
    CHECK(now(app).typed == quantity::grams(45));
    hand::tap(hand::button(app.say("weigh.in", {{"g", app.grams(quantity::grams(45))}})));
    CHECK(row(app).over);
}

}  // namespace test_screen_weigh
