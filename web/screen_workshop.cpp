// The plan of a workshop: what is said of it, and what it takes. Nothing of it is worked out here.
#include <algorithm>

#include "app.h"
#include "engine/workshop_cost.h"
#include "engine/workspace_edits.h"
#include "kept_rows.h"
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

using ::workshop::Plan;

bool whole_field(app::App& app, const char* key, std::int64_t& value, const char* unit = "") {
    widget::NumberSpec spec;
    spec.name = app.say(key);
    spec.unit = unit;
    spec.read = typed::whole;
    const auto change = widget::number_field(app.kit, key, value * decimal::kOne, spec);
    if (change.value) value = *change.value / decimal::kOne;
    return change.value.has_value();
}

// "9:30", "09:30", "14"; nothing for what is no time of the day.
std::optional<std::int64_t> minutes_of(const std::string& text) {
    std::int64_t parts[2] = {0, 0};
    int at = 0, digits = 0;
    for (const char c : typed::words(text)) {
        if (c == ':' && at == 0 && digits > 0) {
            at = 1;
            digits = 0;
        } else if (c >= '0' && c <= '9' && digits < 2) {
            parts[at] = parts[at] * 10 + (c - '0');
            digits += 1;
        } else {
            return std::nullopt;
        }
    }
    if (digits == 0 || (at == 1 && digits != 2) || parts[0] > 23 || parts[1] > 59) return std::nullopt;
    return parts[0] * 60 + parts[1];
}

std::string clock_of(std::int64_t minutes) {
    const std::int64_t rest = minutes % 60;
    return std::to_string(minutes / 60) + (rest < 10 ? ":0" : ":") + std::to_string(rest);
}

bool starts(app::App& app, std::int64_t& value) {
    std::string& typing = app.ui.workshop_starts;
    if (typing.empty()) typing = clock_of(value);
    widget::TextSpec spec;
    spec.name = app.say("workshop_ui.starts");
    spec.most_bytes = 5;
    const auto typed = widget::text_field(app.kit, "starts", typing, spec);
    if (typed) typing = *typed;
    const auto minutes = minutes_of(typing);
    if (!minutes)
        widget::text(app.kit, app.say("workshop_ui.starts_form"), theme::Type::small, widget::Ink::stop);
    if (!typed || !minutes || *minutes == value) return false;
    value = *minutes;
    return true;
}

bool plan_fields(app::App& app, Plan& plan) {
    kit::Kit& kit = app.kit;
    bool changed = false;
    const auto two = [&](const auto& left, const auto& right) {
        widget::gap(10);
        widget::Columns columns = widget::begin_columns(kit);
        changed = left() || changed;
        widget::next_column(kit, columns);
        changed = right() || changed;
        widget::end_columns(kit, columns);
    };
    two([&] { return whole_field(app, "workshop.people", plan.people); },
        [&] { return whole_field(app, "workshop_ui.each", plan.each); });
    two([&] { return whole_field(app, "workshop_ui.stations", plan.stations); },
        [&] { return whole_field(app, "workshop_ui.spare", plan.spare); });
    two([&] { return whole_field(app, "workshop_ui.shown", plan.shown); },
        [&] { return starts(app, plan.starts); });
    widget::gap(10);
    widget::NumberSpec sample;
    sample.name = app.say("workshop_ui.sample");
    sample.unit = "g";
    sample.read = typed::mass_or_none;
    if (const auto change = widget::number_field(kit, "sample", plan.sample.grid, sample); change.value) {
        plan.sample = {*change.value};
        changed = true;
    }
    widget::gap(4);
    if (widget::tick(kit, "diluted", app.say("workshop_ui.diluted"), plan.diluted)) {
        plan.diluted = !plan.diluted;
        changed = true;
    }
    two([&] { return whole_field(app, "workshop_ui.watts", plan.watts, "W"); },
        [&] { return whole_field(app, "workshop_ui.amperes", plan.amperes, "A"); });
    two([&] { return whole_field(app, "workshop_ui.volts", plan.volts, "V"); }, [] { return false; });
    plan.stations = std::clamp(plan.stations, std::int64_t{1}, std::max(plan.people, std::int64_t{1}));
    return changed;
}

void takes(app::App& app, const Plan& plan, const ::workshop::Workshop& made) {
    kit::Kit& kit = app.kit;
    const auto n = [](std::int64_t count) { return std::to_string(count); };
    widget::gap(18);
    widget::heading(kit, 2, app.say("workshop_ui.result"));
    widget::text(kit, app.say("workshop.in_all_said", {{"g", app.grams(made.total)}, {"n", n(made.units)}}),
                 theme::Type::strong);
    std::int64_t told = 0;
    for (const ::workshop::Kit& one : made.kits) {
        if (one.people == told) continue;
        told = one.people;
        widget::text(kit,
                     app.say("workshop_ui.kit",
                             {{"people", n(one.people)}, {"g", app.grams(one.total)}, {"n", n(one.units)}}));
    }
    if (const auto head = app::per_head(app))
        widget::text(kit, app.say("workshop.per_head") + ": " +
                              ::workshop::per_head_said(app.words, *head, plan.people));
    if (made.dilution)
        widget::text(kit, app.say("workshop.dilution_said",
                                  {{"g", app.grams(made.dilution->total)},
                                   {"percent", words::figure(app.words, made.dilution->strength.grid)}}));
    if (made.power.each == 0)
        widget::finding_badge(kit, finding::Severity::caution,
                              app.say("workshop.power_none", {{"watts", n(plan.watts)}}), "");
    else
        widget::text(kit, app.say("workshop_ui.power",
                                  {{"plates", n(made.power.plates)}, {"circuits", n(made.power.circuits)}}));
    widget::gap(12);
    const auto open = [&](app::Paper paper, const std::string& under) {
        widget::RowSpec row;
        row.title = app::paper_title(app, paper);
        row.under = under;
        row.onward = true;
        if (widget::row(kit, row.title, row).pressed) app::read(app, paper);
        widget::hairline(kit);
    };
    open(app::Paper::workshop, app.say("workshop_ui.plan_about"));
    open(app::Paper::handouts, app.say("workshop_ui.handouts_about", {{"n", n(plan.people)}}));
}

void packs(app::App& app, const ::workshop::Workshop& made) {
    kit::Kit& kit = app.kit;
    widget::gap(18);
    widget::heading(kit, 2, app.say("workshop_ui.packs"));
    widget::text(kit, app.say("workshop_ui.packs_about"), theme::Type::small, widget::Ink::soft);
    for (const ::workshop::Total& one : made.totals)
        kept_rows::row(kit, "pack" + std::to_string(one.line), [&] {
            const formula::Line& line = app.analysed->formula.lines[one.line];
            const std::string name = workspace::display_name(app.known(), line);
            widget::gap(10);
            widget::NumberSpec spec;
            spec.name = app.say("workshop_ui.pack_of", {{"name", name}});
            spec.unit = "g";
            spec.read = typed::mass;
            spec.may_be_empty = true;
            spec.hint = app.say("settings.not_said");
            std::optional<std::int64_t> shown;
            if (one.bought) shown = one.bought->each.grid;
            const std::string key = "pack" + std::to_string(one.line);
            if (const auto change = widget::number_field(kit, key, shown, spec); change.changed)
                app::edit(app, workspace::set_pack(app.work.settings, line, {change.value.value_or(0)}));
            widget::text(kit,
                         one.bought
                             ? app.say("shopping.packs", {{"n", std::to_string(one.bought->count)},
                                                          {"g", app.grams(one.bought->each)}}) +
                                   " \xC2\xB7 " +
                                   app.say("workshop_ui.need_buy", {{"need", app.grams(one.need)},
                                                                    {"left", app.grams(one.bought->left)}})
                             : app.say("workshop_ui.need", {{"need", app.grams(one.need)}}),
                         theme::Type::small, widget::Ink::soft);
        });
}

}  // namespace

void workshop(app::App& app) {
    if (!app::open_recipe(app) || !app.analysed || !app.analysis) return nothing_open(app);
    kit::Kit& kit = app.kit;
    widget::text(kit, app.say("workshop_ui.about"), theme::Type::small, widget::Ink::soft);
    Plan plan = app.work.settings.workshop;
    if (plan_fields(app, plan)) app::edit(app, workspace::set_workshop(app.work.settings, plan));
    const auto& made = app::workshop_of(app);
    if (!made) {
        widget::gap(12);
        return widget::finding_badge(kit, finding::Severity::note, words::say(app.words, made.error()), "");
    }
    takes(app, app.work.settings.workshop, *made);
    packs(app, *made);
}

}  // namespace screens
