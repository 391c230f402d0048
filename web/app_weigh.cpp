// What screens may do with a batch on the scale: the engine's edits with the host's clock. What stands and
// the ways on are worked out when something changed, not with every frame.
#include <algorithm>
#include <utility>

#include "app.h"
#include "engine/weighed.h"
#include "engine/workspace_records.h"
#include "engine/workspace_weigh_out.h"
#include "platform.h"

namespace app {

const workspace::KeptWeighOut* weighing(const App& app) {
    return app.work.open.empty() ? nullptr : workspace::weigh_out_of(app.work, app.work.open);
}

void weigh(App& app) {
    const workspace::Recipe* recipe = open_recipe(app);
    if (!recipe || !app.analysis) return;
    if (!weighing(app)) {
        if (!app.analysis->batch) return tell(app, words::say(app.words, app.analysis->batch.error()), true);
        auto plan = workspace::plan_of(*recipe, *app.analysis->batch, app.known(), app.analysed_on);
        if (!plan) return tell(app, words::say(app.words, plan.error()), true);
        const std::string id = app.work.open;
        workspace::begin_weigh_out(app.work, new_id(), id, std::move(plan).value(), platform::now_utc());
        ask_to_keep(app);
    }
    app.ui.weigh = {};
    app.ui.screen = Screen::weigh;
    app.ui.to_top = true;
    app.ui.again = true;
}

const WeighView& weigh_view(App& app, bool ways) {
    const workspace::KeptWeighOut& kept = *weighing(app);
    const weigh_out::WeighOut& now = kept.weighing;
    // What is typed or ticked changes nothing of it.
    if (app.weigh_view && app.weigh_view->id == kept.id && app.weigh_view->of.plan == now.plan &&
        app.weigh_view->of.acts == now.acts && app.weigh_view->of.at == now.at) {
        app.weigh_view->of = now;
        if (app.weigh_view->ways || !ways) return *app.weigh_view;
    }
    WeighView view;
    view.id = kept.id;
    view.of = now;
    view.standing = weigh_out::standing_of(view.of);
    view.ways = ways;
    if (!ways) {
        app.weigh_view = std::move(view);
        return *app.weigh_view;
    }
    view.options = weigh_out::options(view.of, view.of.at);
    for (const weigh_out::Option& option : view.options)
        view.remarks.push_back(option.possible && option.way != weigh_out::Way::add_more
                                   ? weighed::remarks(kept.recipe, option.then, app.presets.catalogue,
                                                      limits_book(app), app.mine)
                                   : std::vector<finding::Finding>());
    app.weigh_view = std::move(view);
    return *app.weigh_view;
}

void set_weighing(App& app, weigh_out::WeighOut changed) {
    const workspace::KeptWeighOut* kept = weighing(app);
    if (!kept) return;
    if (changed.at != kept->weighing.at) {
        app.ui.weigh.ways = false;
        app.kit.drafts.clear();  // of the other line
        app.kit.keypad.target = 0;
        app.ui.to_top = true;
    }
    workspace::set_weigh_out(app.work, std::string(kept->id), std::move(changed));
    app.ui.again = true;
}

namespace {

// With the acts of `after`, which was worked out some time ago; what was ticked since stays.
weigh_out::WeighOut decided(const workspace::KeptWeighOut& kept, const weigh_out::WeighOut& after) {
    weigh_out::WeighOut changed = kept.weighing;
    changed.acts = after.acts;
    changed.typed.reset();
    if (!changed.acts.empty() && changed.acts.back().at.empty()) changed.acts.back().at = platform::now_utc();
    return changed;
}

// On to the next line where this one is right; it stays where not.
void go_on(App& app, weigh_out::WeighOut changed) {
    const weigh_out::Standing standing = weigh_out::standing_of(changed);
    if (standing.rows[changed.at].done)
        if (const auto next = weigh_out::next(changed, standing, changed.at)) changed.at = *next;
    app.kit.drafts.clear();
    app.kit.keypad.target = 0;
    app.ui.weigh.ways = false;
    app.ui.to_top = true;
    set_weighing(app, std::move(changed));
}

}  // namespace

void pour(App& app) {
    const workspace::KeptWeighOut* kept = weighing(app);
    if (!kept) return;
    const weigh_out::WeighOut& now = kept->weighing;
    const bool typed = now.typed.has_value();
    const quantity::Mass shown = typed ? *now.typed : weigh_view(app).standing.rows[now.at].left;
    auto poured = weigh_out::pour(now, now.at, shown, !typed || now.zeroed, platform::now_utc());
    if (!poured) {
        const bool less = poured.error().code == result::Code::number_negative;
        return tell(app, less ? app.say("weigh.less_than_before") : words::say(app.words, poured.error()),
                    true);
    }
    go_on(app, std::move(poured).value());
}

void take_way(App& app, const weigh_out::WeighOut& after) {
    if (weighing(app)) go_on(app, decided(*weighing(app), after));
}

void take_adjustment(App& app, const weigh_out::WeighOut& after) {
    const workspace::KeptWeighOut* kept = weighing(app);
    if (!kept) return;
    weigh_out::WeighOut taken = decided(*kept, after);
    const weigh_out::Standing standing = weigh_out::standing_of(taken);
    const auto order = weigh_out::order(taken.plan);
    if (const auto next = weigh_out::next(taken, standing, order.back())) taken.at = *next;
    app.kit.drafts.clear();
    app.ui.to_top = true;
    set_weighing(app, std::move(taken));
    tell(app, app.say("weigh.adjusted"));
}

void take_jug(App& app, quantity::Mass empty) {
    if (const auto* kept = weighing(app))
        set_weighing(app, weigh_out::take_jug(kept->weighing, empty, platform::now_utc()));
}

void fill_first(App& app, quantity::Mass net) {
    if (const auto* kept = weighing(app))
        set_weighing(app, weigh_out::fill(kept->weighing, net, platform::now_utc()));
}

void start_timer(App& app, const std::string& what, std::int64_t minutes) {
    const workspace::KeptWeighOut* kept = weighing(app);
    if (!kept) return;
    weigh_out::WeighOut changed = kept->weighing;
    const auto of_it = [&](const weigh_out::Timer& timer) { return timer.what == what; };
    if (std::erase_if(changed.timers, of_it) == 0)  // pressed again, it is taken off
        changed.timers.push_back({what, platform::now_utc(), minutes});
    app.ui.weigh.told.erase(what);
    set_weighing(app, std::move(changed));
}

std::optional<std::int64_t> seconds_left(const weigh_out::Timer& timer) {
    return workspace::seconds_left(timer, platform::now_utc());
}

void follow_timers(App& app) {
    const workspace::KeptWeighOut* kept = weighing(app);
    if (!kept) return;
    platform::want_bell(!kept->weighing.timers.empty());
    for (const weigh_out::Timer& timer : kept->weighing.timers) {
        const auto left = seconds_left(timer);
        if (!left) continue;
        if (*left <= 0) {
            if (app.ui.weigh.told.insert(timer.what).second) {
                tell(app, app.say("weigh.time_over", {{"what", timer.what}}));
                platform::ring();
            }
            continue;
        }
        // Whole minutes are shown, in the last one seconds.
        const std::int64_t next = *left > 60 ? (*left - 1) % 60 + 1 : 1;
        platform::request_wake(static_cast<double>(next) * 1000);
    }
}

void record_weighing(App& app) {
    const workspace::KeptWeighOut* kept = weighing(app);
    if (!kept) return;
    const std::string day = platform::today();
    const auto filed =
        workspace::finish_weigh_out(app.work, std::string(kept->id), app.known(),
                                    {day, app.work.settings.maker.name, new_id(), new_id(), new_id(),
                                     app.say("weigh.version_name", {{"day", day}}), platform::now_utc()});
    if (!filed) return tell(app, words::say(app.words, filed.error()), true);
    app.ui.weigh = {};
    app.weigh_view.reset();
    close_sheet(app);
    app.ui.records.record = *filed;
    app.ui.screen = Screen::record;
    app.ui.to_top = true;
    const record::Record* record = workspace::find_record(app.work, *filed);
    const std::string number = record ? record->number : *filed;
    std::size_t taken = 0;
    const auto takings = workspace::takings(app.work, shelf(app), *filed);
    for (const workspace::Taking& one : takings)
        taken += one.why == workspace::NotTaken::none ? 1 : 0;
    tell(app, taken == 0 ? app.say("weigh.recorded", {{"number", number}})
                         : app.say("weigh.recorded_taken", {{"number", number},
                                                            {"n", std::to_string(taken)},
                                                            {"all", std::to_string(takings.size())}}));
}

void drop_weighing(App& app) {
    const workspace::KeptWeighOut* kept = weighing(app);
    if (!kept) return;
    workspace::drop_weigh_out(app.work, std::string(kept->id));
    app.ui.weigh = {};
    app.weigh_view.reset();
    close_sheet(app);
    app.ui.screen = Screen::batch;
    tell(app, app.say("weigh.dropped"));
}

}  // namespace app
