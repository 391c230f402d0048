// Beside the scale: the order at the bench to be ticked off, the recipe's own steps with their timers, what
// belongs to one line, and the end of it all.
#include <algorithm>

#include "app.h"
#include "engine/weighed.h"
#include "engine/writing.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace screens {
namespace {

using quantity::Mass;
using weigh_out::WeighOut;

std::string time_words(const app::App& app, std::int64_t seconds) {
    if (seconds <= 0) return app.say("weigh.over_since", {{"n", std::to_string(-seconds / 60)}});
    if (seconds <= 60) return app.say("weigh.seconds_left", {{"n", std::to_string(seconds)}});
    return app.say("weigh.minutes_left", {{"n", std::to_string((seconds + 59) / 60)}});
}

const weigh_out::Timer* timer_of(const WeighOut& now, const std::string& what) {
    for (const weigh_out::Timer& timer : now.timers)
        if (timer.what == what) return &timer;
    return nullptr;
}

bool is_ticked(const WeighOut& now, const std::string& step) {
    return std::find(now.ticked.begin(), now.ticked.end(), step) != now.ticked.end();
}

void tick_step(app::App& app, const std::string& step, const std::string& words) {
    const workspace::KeptWeighOut* kept = app::weighing(app);
    ImGui::PushID(step.c_str());
    const bool pressed = widget::tick(app.kit, "step", words, is_ticked(kept->weighing, step));
    ImGui::PopID();
    if (!pressed) return;
    WeighOut changed = kept->weighing;
    if (std::erase(changed.ticked, step) == 0) changed.ticked.push_back(step);
    app::set_weighing(app, std::move(changed));
}

std::optional<Mass> mass_field(app::App& app, const char* key, const std::string& name,
                               std::optional<Mass> value) {
    widget::NumberSpec spec;
    spec.name = name;
    spec.unit = "g";
    spec.read = typed::mass_or_none;
    spec.may_be_empty = true;
    spec.hint = app.say("settings.not_said");
    std::optional<std::int64_t> shown;
    if (value) shown = value->grid;
    const auto change = widget::number_field(app.kit, key, shown, spec);
    if (!change.changed) return value;
    if (!change.value) return std::nullopt;
    return Mass{*change.value};
}

}  // namespace

void weigh_timers(app::App& app) {
    const workspace::KeptWeighOut* kept = app::weighing(app);
    for (const weigh_out::Timer& timer : kept->weighing.timers) {
        const auto left = app::seconds_left(timer);
        if (!left) continue;
        widget::text(app.kit,
                     app.say("weigh.timer", {{"what", timer.what}, {"left", time_words(app, *left)}}),
                     theme::Type::strong, *left <= 0 ? widget::Ink::caution : widget::Ink::accent);
        widget::gap(6);
    }
}

void weigh_steps(app::App& app) {
    kit::Kit& kit = app.kit;
    if (!app::weighing(app)) return app::close_sheet(app);
    const workspace::KeptWeighOut kept = *app::weighing(app);
    weigh_timers(app);
    widget::heading(kit, 2, app.say("weigh.bench_order"));
    widget::text(kit, app.say("weigh.bench_order_about"), theme::Type::small, widget::Ink::soft);
    for (const std::string_view step : weighed::bench_order(kept.recipe.formula, app.known()))
        tick_step(app, std::string(step), app.say(step));
    if (kept.recipe.steps.empty()) return;
    widget::gap(14);
    widget::heading(kit, 2, app.say("weigh.own_steps"));
    for (std::size_t i = 0; i < kept.recipe.steps.size(); ++i) {
        const formula::Step& step = kept.recipe.steps[i];
        const std::string n = std::to_string(i + 1), what = app.say("formula.step_n", {{"n", n}});
        widget::gap(8);
        tick_step(app, "own " + n, writing::set_apart(step.text));
        if (!step.minutes || *step.minutes <= 0) continue;
        const weigh_out::Timer* timer = timer_of(kept.weighing, what);
        ImGui::PushID(static_cast<int>(i));
        if (widget::button(kit, "timer",
                           app.say(timer ? "weigh.timer_stop" : "weigh.timer_start",
                                   {{"what", what}, {"n", std::to_string(*step.minutes)}})))
            app::start_timer(app, what, *step.minutes);
        ImGui::PopID();
    }
}

void weigh_line(app::App& app) {
    kit::Kit& kit = app.kit;
    if (!app::weighing(app)) return app::close_sheet(app);
    const WeighOut now = app::weighing(app)->weighing;
    const weigh_out::Standing standing = app::weigh_view(app).standing;
    const std::size_t at = now.at;
    WeighOut changed = now;
    changed.lots.resize(std::max(changed.lots.size(), at + 1));
    widget::heading(kit, 2, weigh_name(app, at));
    widget::gap(8);
    widget::TextSpec text;
    text.name = app.say("weigh.lot");
    text.most_bytes = 40;
    if (const auto lot = widget::text_field(kit, "lot", changed.lots[at].lot, text))
        changed.lots[at].lot = *lot;
    widget::gap(8);
    text.name = app.say("weigh.best_before");
    text.hint = app.say("weigh.best_before_hint");
    if (const auto date = widget::text_field(kit, "best_before", changed.lots[at].best_before, text))
        changed.lots[at].best_before = *date;
    widget::gap(8);
    const Mass poured = standing.rows[at].poured;
    std::optional<Mass> left;
    if (now.plan.lines[at].have) left = std::max(Mass{}, *now.plan.lines[at].have - poured);
    const auto said = mass_field(app, "have", app.say("weigh.at_hand"), left);
    if (said != left) {
        changed.plan.lines[at].have.reset();
        if (said) changed.plan.lines[at].have = *said + poured;
    }
    widget::gap(14);
    widget::heading(kit, 2, app.say("weigh.jug"));
    widget::text(kit, app.say("weigh.jug_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    const auto pot = mass_field(app, "pot", app.say("weigh.pot"), now.plan.pot);
    changed.plan.pot = pot;
    widget::gap(8);
    const bool begun = standing.poured > Mass{};
    if (!begun) changed.plan.jug = mass_field(app, "jug", app.say("weigh.jug_empty"), now.plan.jug);
    if (now.lots.empty() && changed.lots == std::vector<weigh_out::Lot>(changed.lots.size()))
        changed.lots.clear();
    if (changed != now) return app::set_weighing(app, std::move(changed));
    if (!begun) return;
    std::optional<Mass>& other = app.ui.weigh.jug;
    other = mass_field(app, "jug", app.say("weigh.other_empty"), other ? other : standing.jug);
    widget::gap(8);
    if (!widget::button(kit, "other", app.say("weigh.other_jug"), widget::Look::plain, kit.width, !other))
        return;
    const Mass empty = *other;
    other.reset();
    kit.drafts.clear();
    app::take_jug(app, empty);
    app::close_sheet(app);
}

void weigh_end(app::App& app) {
    kit::Kit& kit = app.kit;
    if (!app::weighing(app)) return app::close_sheet(app);
    const app::WeighView view = app::weigh_view(app);
    const weigh_out::Plan& plan = view.of.plan;
    if (!view.standing.finished) {
        widget::text(kit, app.say("weigh.not_finished"), theme::Type::body, widget::Ink::caution);
        widget::gap(10);
    }
    widget::text(kit, app.say("weigh.dry_glass"), theme::Type::small, widget::Ink::soft);
    widget::gap(10);
    if (plan.containers > 0) {
        const auto net = mass_field(app, "fill", app.say("weigh.first_fill"), view.standing.first_fill);
        if (net && net != view.standing.first_fill && *net > Mass{}) app::fill_first(app, *net);
        widget::gap(6);
        widget::text(kit,
                     app.say("weigh.fills", {{"n", std::to_string(weigh_out::count_of(plan, view.standing))},
                                             {"of", std::to_string(plan.containers)},
                                             {"loss", words::figure(app.words, plan.loss.grid)}}));
        widget::gap(14);
    }
    if (view.standing.poured > Mass{} &&
        widget::button(kit, "record", app.say("weigh.record"), widget::Look::primary, kit.width))
        return app::record_weighing(app);
    widget::gap(8);
    app::WeighIn& in = app.ui.weigh;
    if (!in.dropping) {
        if (widget::button(kit, "drop", app.say("weigh.drop"), widget::Look::quiet)) {
            in.dropping = true;
            app.ui.again = true;
        }
        return;
    }
    widget::text(kit, app.say("weigh.drop_about"));
    widget::gap(8);
    if (widget::button(kit, "drop_now", app.say("weigh.drop_now"), widget::Look::danger, kit.width))
        app::drop_weighing(app);
}

}  // namespace screens
