// The ways on from a line with too much or too little, each worked out in full before it is taken.
#include <algorithm>
#include <cmath>

#include "app.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

using quantity::Mass;
using weigh_out::Option;
using weigh_out::Row;
using weigh_out::Standing;
using weigh_out::Way;

void listed(std::string& list, const std::string& one) {
    list += (list.empty() ? "" : ", ") + one;
}

// "Shea butter 2.25 g, olive oil 30.38 g"
struct Adding {
    std::string now, later;  // to lines that are begun; of lines that are not
};
Adding adding(const app::App& app, const Standing& was, const Standing& then) {
    Adding adding;
    for (std::size_t i = 0; i < then.rows.size(); ++i) {
        const Row& row = then.rows[i];
        if (row.left == Mass{} || (row.left == was.rows[i].left && row.poured == Mass{})) continue;
        listed(row.poured > Mass{} ? adding.now : adding.later,
               app.say("batch.mix_part", {{"name", weigh_name(app, i)}, {"g", app.grams(row.left)}}));
    }
    return adding;
}

// "Beeswax 21.95 % instead of 20.00 %", where a hundredth of a percent tells.
std::string percents_words(const app::App& app, const Standing& then) {
    const workspace::KeptWeighOut* kept = app::weighing(app);
    std::string list;
    for (std::size_t i = 0; kept && i < then.percents.size(); ++i) {
        const quantity::Percent meant = kept->weighing.plan.lines[i].percent;
        if (std::abs(then.percents[i].grid - meant.grid) < 50) continue;
        listed(list,
               app.say("weigh.instead_of", {{"name", weigh_name(app, i)},
                                            {"to", words::figure_fixed(app.words, then.percents[i].grid, 2)},
                                            {"from", words::figure_fixed(app.words, meant.grid, 2)}}));
    }
    return list.empty() ? app.say("weigh.as_formula") : list;
}

std::string title_of(const app::App& app, const Option& option, bool over) {
    const std::string total = app.grams(option.then.total);
    switch (option.way) {
        case Way::add_more:
            break;
        case Way::proportion:
            if (!over) return app.say("weigh.smaller", {{"g", total}});
            return app.say(option.whole ? "weigh.bring_up" : "weigh.bring_up_part", {{"g", total}});
        case Way::take_up:
            return app.say("weigh.takes_up", {{"name", weigh_name(app, *option.other)},
                                              {"g", app.grams(option.then.rows[*option.other].target)}});
        case Way::accept:
            return app.say("weigh.leave", {{"g", total}});
    }
    return app.say("weigh.add_missing");
}

std::string deed_of(const app::App& app, const Option& option, bool over) {
    switch (option.way) {
        case Way::add_more:
            break;
        case Way::proportion:
            return app.say(over ? "weigh.do_bring_up" : "weigh.do_smaller");
        case Way::take_up:
            return app.say("weigh.do_take_up", {{"name", weigh_name(app, *option.other)}});
        case Way::accept:
            return app.say("weigh.do_leave");
    }
    return app.say("weigh.do_add");
}

// True: it was pressed.
bool way(app::App& app, const app::WeighView& view, std::size_t which, bool over) {
    kit::Kit& kit = app.kit;
    const Option& option = view.options[which];
    const auto small = [&](const std::string& words) {
        widget::gap(4);
        widget::text(kit, words, theme::Type::small, widget::Ink::soft);
    };
    if (option.way == Way::proportion && !option.possible) {
        if (!over) return false;  // what else is in already is too much for a smaller batch: nothing to say
        small(option.pot_full ? app.say("weigh.pot_full")
              : option.short_of
                  ? app.say("weigh.too_little_of", {{"name", weigh_name(app, *option.short_of)}})
                  : app.say("weigh.no_gain"));
        return false;
    }
    widget::begin_card(kit);
    widget::text(kit, title_of(app, option, over), theme::Type::strong);
    if (option.way == Way::add_more) {
        const Row& row = option.then.rows[view.of.at];
        widget::text(kit, app.grams(row.left));
    } else {
        const Adding add = adding(app, view.standing, option.then);
        if (!add.now.empty()) widget::text(kit, app.say("weigh.add_now", {{"list", add.now}}));
        if (!add.later.empty()) widget::text(kit, app.say("weigh.add_later", {{"list", add.later}}));
        small(app.say("weigh.comes_to", {{"list", percents_words(app, option.then)}}));
        if (!option.whole && option.short_of)
            small(app.say("weigh.not_further", {{"name", weigh_name(app, *option.short_of)}}));
        else if (!option.whole && option.pot_full)
            small(app.say("weigh.not_further_pot"));
        if (option.beyond > Mass{} && view.of.plan.containers > 0)
            small(app.say("weigh.beyond", {{"g", app.grams(option.beyond)}}));
        for (const finding::Finding& one : view.remarks[which]) {
            widget::gap(6);
            widget::finding_badge(
                kit, one.severity,
                finding::say(app.words, one, app::subject_name(app, one), app::constituent_name(app, one)),
                one.source.empty() ? "" : app::source_words(app, one.source, one.standing));
        }
    }
    widget::gap(8);
    ImGui::PushID(static_cast<int>(which));
    const bool pressed = widget::button(kit, "take", deed_of(app, option, over),
                                        which == 0 ? widget::Look::primary : widget::Look::plain, kit.width);
    ImGui::PopID();
    widget::end_card(kit);
    return pressed;
}

}  // namespace

void weigh_ways(app::App& app) {
    kit::Kit& kit = app.kit;
    const app::WeighView view = app::weigh_view(app, true);
    const Row& row = view.standing.rows[view.of.at];
    const std::string in = app.grams(row.poured), meant = app.grams(row.target);
    const std::int64_t step = view.of.plan.lines[view.of.at].division.grid;
    const Mass tolerance{row.tolerance.grid / step * step};
    if (row.over)
        widget::finding_badge(
            kit, finding::Severity::caution,
            app.say("weigh.over", {{"in", in}, {"meant", meant}, {"g", app.grams(row.poured - row.target)}}),
            app.say("weigh.tolerance", {{"g", app.grams(tolerance)}}));
    else
        widget::text(kit, app.say("weigh.under", {{"in", in}, {"meant", meant}}));
    std::optional<std::size_t> taken;
    for (std::size_t i = 0; i < view.options.size(); ++i) {
        widget::gap(10);
        if (way(app, view, i, row.over)) taken = i;
    }
    if (!taken) return;
    app.ui.weigh.ways = false;
    app.ui.again = true;
    if (view.options[*taken].way != Way::add_more) app::take_way(app, view.options[*taken].after);
}

// How much of which line is added while it is warm, worked out before it is taken.
void weigh_adjust(app::App& app) {
    kit::Kit& kit = app.kit;
    if (!app::weighing(app)) return app::close_sheet(app);
    const app::WeighView view = app::weigh_view(app);
    const weigh_out::Plan& plan = view.of.plan;
    app::WeighIn& in = app.ui.weigh;
    if (in.line >= plan.lines.size()) in.line = 0;
    widget::text(kit, app.say("weigh.adjust_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(10);
    std::vector<std::string> names;
    for (const weigh_out::Line& line : plan.lines)
        names.push_back(line.name);
    if (const int pressed =
            widget::choice(kit, "which", app.say("weigh.which"), names, static_cast<int>(in.line));
        pressed >= 0) {
        in.line = static_cast<std::size_t>(pressed);
        in.percent.reset();
        kit.drafts.clear();
        app.ui.again = true;
    }
    const quantity::Percent now = view.standing.percents[in.line];
    widget::gap(10);
    widget::NumberSpec spec;
    spec.name = app.say("adjust.new_percent", {{"name", plan.lines[in.line].name}});
    spec.unit = "%";
    spec.read = typed::percent;
    spec.large = true;
    ImGui::PushID(static_cast<int>(in.line));
    if (const auto change = widget::number_field(kit, "percent", in.percent.value_or(now).grid, spec);
        change.value) {
        in.percent = quantity::Percent{*change.value};
        app.ui.again = true;
    }
    ImGui::PopID();
    const auto rest = std::find_if(plan.lines.begin(), plan.lines.end(),
                                   [](const weigh_out::Line& line) { return line.rest; });
    if (rest != plan.lines.end() && !plan.lines[in.line].rest) {
        widget::gap(8);
        const int pressed = widget::choice(
            kit, "gives", app.say("weigh.gives_way"),
            {app.say("weigh.all_give"), app.say("weigh.one_gives", {{"name", rest->name}})}, in.rest ? 1 : 0);
        if (pressed >= 0) {
            in.rest = pressed == 1;
            app.ui.again = true;
        }
    }
    const bool wanted = in.percent && *in.percent != now;
    std::optional<result::Result<Option>> worked;
    if (wanted)
        worked = weigh_out::adjusted(view.of, in.line, *in.percent, in.rest && !plan.lines[in.line].rest);
    widget::gap(12);
    if (worked && worked->ok()) {
        const Standing& then = (*worked)->then;
        const Adding add = adding(app, view.standing, then);
        if (!add.now.empty())
            widget::text(kit, app.say("weigh.add_now", {{"list", add.now}}), theme::Type::strong);
        if (!add.later.empty()) widget::text(kit, app.say("weigh.add_later", {{"list", add.later}}));
        widget::text(kit, app.say("weigh.comes_to", {{"list", percents_words(app, then)}}),
                     theme::Type::small, widget::Ink::soft);
        widget::text(kit, app.say("weigh.in_all", {{"g", app.grams(then.total)}}), theme::Type::small,
                     widget::Ink::soft);
    } else if (worked) {
        const result::Error& error = worked->error();
        widget::finding_badge(kit, finding::Severity::caution,
                              error.code == result::Code::batch_too_large ? app.say("weigh.adjust_too_much")
                                                                          : words::say(app.words, error),
                              "");
    }
    widget::gap(12);
    if (!widget::button(kit, "take", app.say("weigh.do_adjust"), widget::Look::primary, kit.width,
                        !(worked && worked->ok())))
        return;
    in.percent.reset();
    kit.drafts.clear();
    const weigh_out::WeighOut after = (*worked)->after;
    app::close_sheet(app);
    app::take_adjustment(app, after);
}

}  // namespace screens
