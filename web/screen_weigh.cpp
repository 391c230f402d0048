// A batch on the scale, one line at a time: what to add, so large that it is read from a metre, on which
// scale, what the scale shows then; or, where too much or too little is in, the ways on (screen_weigh_ways).
#include <algorithm>
#include <cmath>

#include "app.h"
#include "engine/weighed.h"
#include "mirror.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

using weigh_out::Row;
using weigh_out::WeighOut;

int places_shown(quantity::Mass division) {
    int places = decimal::kPlaces;
    for (std::int64_t rest = division.grid; places > 0 && rest % 10 == 0; rest /= 10)
        --places;
    return places;
}

std::string phase_title(const app::App& app, const formula::Phase& phase) {
    std::string title = app.say("phase.name", {{"id", phase.id}});
    const auto c = [&](std::int64_t at) { return words::figure(app.words, at); };
    if (phase.hold_c) title += " \xC2\xB7 " + app.say("phase.hold", {{"c", c(*phase.hold_c)}});
    if (phase.add_below_c) title += " \xC2\xB7 " + app.say("phase.add_below", {{"c", c(*phase.add_below_c)}});
    return title;
}

std::string reason_words(const app::App& app, const weighed::Reason& reason) {
    static constexpr const char* kWhy[] = {"weigh.why_melts", "weigh.why_clear", "weigh.why_emulsion",
                                           "weigh.why_flash", "weigh.why_sensitive"};
    const catalogue::Ingredient* one = catalogue::find_ingredient(app.known(), reason.ingredient);
    std::string text =
        app.say(kWhy[static_cast<int>(reason.why)], {{"name", one ? one->name : reason.ingredient},
                                                     {"c", words::figure(app.words, reason.c.value_or(0))}});
    if (!reason.source.empty()) text += " (" + app::source_words(app, reason.source, reason.standing) + ")";
    return text;
}

// The phase that the line belongs to, why it has its temperature, and the cautions where heat begins.
void phase_head(app::App& app, const workspace::KeptWeighOut& kept, const weigh_out::Standing& standing) {
    kit::Kit& kit = app.kit;
    const weigh_out::Plan& plan = kept.weighing.plan;
    const std::string& id = plan.lines[kept.weighing.at].phase;
    for (std::size_t i = 0; i < plan.phases.size(); ++i) {
        const formula::Phase& phase = plan.phases[i];
        if (phase.id != id) continue;
        if (plan.phases.size() > 1 || phase.hold_c || phase.add_below_c)
            widget::text(kit, phase_title(app, phase), theme::Type::strong, widget::Ink::accent);
        bool begun = false;
        for (std::size_t line = 0; line < plan.lines.size(); ++line)
            begun = begun || (plan.lines[line].phase == id && standing.rows[line].poured > quantity::Mass{});
        if (begun) break;
        if (const auto reason = weighed::reason_of(kept.recipe.formula, i, app.known()))
            widget::text(kit, reason_words(app, *reason), theme::Type::small, widget::Ink::soft);
        if (weighed::is_hot(phase)) {
            widget::gap(6);
            widget::finding_badge(kit, finding::Severity::caution, app.say("weigh.hot"), "");
        }
    }
    widget::gap(8);
}

std::string scale_words(const app::App& app, const weigh_out::Shows& shows, bool jug) {
    const std::vector<scales::Scale>& bench = app.work.settings.scales;
    const bool known = shows.place.scale && *shows.place.scale < bench.size();
    const std::string name = known ? bench[*shows.place.scale].name : "";
    const std::string division = app.grams(shows.place.division);
    std::string words = name.empty() ? app.say("weigh.on_scale", {{"g", division}})
                                     : app.say("weigh.on_scale_named", {{"name", name}, {"g", division}});
    if (jug) words += ", " + app.say(shows.place.in_jug ? "weigh.into_jug" : "weigh.in_dish");
    if (!shows.place.carried) words += ". " + app.say("weigh.in_portions");
    return words;
}

// The figure that is read from a metre: as large as the column lets it.
void big_figure(app::App& app, const std::string& label, quantity::Mass mass, quantity::Mass division,
                const std::string& under) {
    kit::Kit& kit = app.kit;
    const theme::Colours& c = theme::colours();
    const std::string big = words::figure_fixed(app.words, mass.grid, places_shown(division));
    const float room = kit.width - 32, unit = widget::measure(" g", theme::Type::figure).x;
    theme::Type type = theme::Type::bench;
    for (const theme::Type smaller : {theme::Type::hero, theme::Type::figure})
        if (widget::measure(big, type).x + unit > room) type = smaller;
    const ImVec2 start = ImGui::GetCursorScreenPos();
    const ImVec2 figure = widget::measure(big, type), small = widget::measure(label, theme::Type::body, room),
                 low = under.empty() ? ImVec2(0, 0) : widget::measure(under, theme::Type::body, room);
    const float top = start.y + 10 + small.y;
    const ImRect box(start, {start.x + kit.width, top + figure.y + low.y + 12});
    mirror::Node node;
    node.id = widget::id_of("to_add");
    node.role = mirror::Role::status;
    node.name = label + " " + app.say("unit.grams", {{"n", big}}) + ". " + under;
    widget::fill_place(node, box);
    mirror::add(node);
    widget::draw_panel(box, c.accent_soft, c.on_accent_soft);
    const ImU32 ink = theme::paint(c.on_accent_soft);
    widget::draw_wrapped({start.x + 16, start.y + 10}, label, theme::Type::body, ink, room);
    widget::draw_wrapped({start.x + 16, top}, big, type, ink, 0);
    widget::draw_wrapped(
        {start.x + 16 + figure.x, top + theme::baseline(type) - theme::baseline(theme::Type::figure)}, " g",
        theme::Type::figure, ink, 0);
    widget::draw_wrapped({start.x + 16, top + figure.y}, under, theme::Type::body, ink, room);
    ImGui::Dummy(box.GetSize());
}

// What the scale shows when all of it is in: with the jug on it or zeroed, each as large as a title.
void shown_then(app::App& app, const weigh_out::Shows& shows) {
    if (!shows.not_zeroed) return;
    widget::gap(8);
    const auto g = [&](quantity::Mass mass) {
        return app.say(
            "unit.grams",
            {{"n", words::figure_fixed(app.words, mass.grid, places_shown(shows.place.division))}});
    };
    widget::text(app.kit, app.say("weigh.not_zeroed_shows", {{"g", g(*shows.not_zeroed)}}),
                 theme::Type::title);
}

void read_off(app::App& app, const workspace::KeptWeighOut& kept, const weigh_out::Shows& shows) {
    kit::Kit& kit = app.kit;
    const WeighOut& now = kept.weighing;
    const bool may_be_whole = weigh_out::standing_of(now).jug.has_value();
    widget::gap(10);
    widget::NumberSpec spec;
    spec.name = app.say("weigh.scale_shows");
    spec.unit = "g";
    spec.read = typed::mass_or_none;
    spec.may_be_empty = true;
    spec.large = true;
    spec.hint = words::figure_fixed(app.words,
                                    (now.zeroed || !shows.not_zeroed ? shows.zeroed : *shows.not_zeroed).grid,
                                    places_shown(shows.place.division));
    std::optional<std::int64_t> value;
    if (now.typed) value = now.typed->grid;
    ImGui::PushID(static_cast<int>(now.at));
    const auto change = widget::number_field(kit, "shows", value, spec);
    ImGui::PopID();
    WeighOut changed = now;
    if (change.changed) {
        changed.typed.reset();
        if (change.value) changed.typed = quantity::Mass{*change.value};
    }
    if (may_be_whole) {
        widget::gap(8);
        const int pressed =
            widget::choice(kit, "zeroed", app.say("weigh.read_how"),
                           {app.say("weigh.zeroed"), app.say("weigh.not_zeroed")}, now.zeroed ? 0 : 1);
        if (pressed >= 0) changed.zeroed = pressed == 0;
    }
    if (changed != now) app::set_weighing(app, std::move(changed));
}

// Every line with what is in: to be chosen in any order.
void all_lines(app::App& app, const workspace::KeptWeighOut& kept, const weigh_out::Standing& standing) {
    kit::Kit& kit = app.kit;
    const WeighOut& now = kept.weighing;
    widget::gap(18);
    widget::heading(kit, 2, app.say("weigh.lines"));
    mirror::Node list;
    list.id = widget::id_of("lines");
    list.role = mirror::Role::list;
    list.name = app.say("weigh.lines");
    mirror::open(list);
    std::optional<std::size_t> chosen;
    for (const std::size_t i : weigh_out::order(now.plan)) {
        const Row& row = standing.rows[i];
        mirror::Node item;
        item.id = widget::id_of("item" + std::to_string(i));
        item.role = mirror::Role::item;
        mirror::open(item);
        widget::RowSpec spec;
        spec.title = weigh_name(app, i);
        spec.right = app.grams(row.done || row.over ? row.poured : row.left);
        spec.under = row.over   ? app.say("weigh.too_much", {{"g", app.grams(row.poured - row.target)}})
                     : row.done ? app.say("weigh.is_in")
                     : row.poured > quantity::Mass{} ? app.say("weigh.begun", {{"g", app.grams(row.poured)}})
                                                     : app.say("weigh.to_come");
        spec.under += " \xC2\xB7 " +
                      app.say("batch.percent",
                              {{"percent", words::figure_fixed(app.words, standing.percents[i].grid, 2)}});
        spec.chosen = i == now.at;
        if (widget::row(kit, "line" + std::to_string(i), spec).pressed) chosen = i;
        mirror::close();
        widget::hairline(kit);
    }
    mirror::close();
    if (!chosen) return;
    WeighOut changed = now;
    changed.at = *chosen;
    changed.typed.reset();
    app.ui.to_top = true;
    app::set_weighing(app, std::move(changed));
}

void onward(app::App& app, const char* key, const char* title, const std::string& under, app::Sheet sheet) {
    widget::RowSpec row;
    row.title = app.say(title);
    row.under = under;
    row.onward = true;
    if (widget::row(app.kit, key, row).pressed) app::show(app, sheet);
    widget::hairline(app.kit);
}

void more_to_do(app::App& app, const workspace::KeptWeighOut& kept, const weigh_out::Standing& standing) {
    kit::Kit& kit = app.kit;
    widget::gap(18);
    onward(app, "steps", "weigh.steps", "", app::Sheet::weigh_steps);
    onward(app, "this_line", "weigh.this_line", app.say("weigh.this_line_about"), app::Sheet::weigh_line);
    if (standing.poured > quantity::Mass{})
        onward(app, "adjust", "weigh.adjust", app.say("weigh.adjust_short"), app::Sheet::weigh_adjust);
    onward(app, "end", "weigh.end", app.say("weigh.end_short"), app::Sheet::weigh_end);
    widget::gap(8);
    if (!kept.weighing.acts.empty() &&
        widget::button(kit, "back", app.say("weigh.take_back"), widget::Look::plain, kit.width)) {
        kit.drafts.clear();
        app::set_weighing(app, weigh_out::take_back(kept.weighing));
    }
    widget::gap(12);
    if (app.ui.awake)
        widget::text(kit, app.say(*app.ui.awake ? "weigh.awake" : "weigh.not_awake"), theme::Type::small,
                     widget::Ink::soft);
}

}  // namespace

std::string weigh_name(const app::App& app, std::size_t line) {
    const workspace::KeptWeighOut* kept = app::weighing(app);
    return kept && line < kept->weighing.plan.lines.size() ? kept->weighing.plan.lines[line].name : "";
}

bool weigh_has_foot(const app::App& app) {
    const workspace::KeptWeighOut* kept = app::weighing(app);
    return kept && !weigh_out::standing_of(kept->weighing).rows[kept->weighing.at].over;
}

void weigh_foot(app::App& app) {
    const workspace::KeptWeighOut* kept = app::weighing(app);
    if (!kept) return;
    const WeighOut& now = kept->weighing;
    const weigh_out::Standing standing = app::weigh_view(app).standing;
    if (standing.finished) {
        if (widget::button(app.kit, "finish", app.say("weigh.end"), widget::Look::primary, app.kit.width))
            app::show(app, app::Sheet::weigh_end);
        return;
    }
    if (standing.rows[now.at].done) {
        if (widget::button(app.kit, "next", app.say("weigh.next"), widget::Look::primary, app.kit.width)) {
            WeighOut changed = now;
            changed.at = weigh_out::next(now, standing, now.at).value_or(now.at);
            app::set_weighing(app, std::move(changed));
        }
        return;
    }
    const std::string shown = app.grams(now.typed.value_or(standing.rows[now.at].left));
    const char* key = now.typed && !now.zeroed ? "weigh.reads_now" : "weigh.in";
    if (widget::button(app.kit, "in", app.say(key, {{"g", shown}}), widget::Look::primary, app.kit.width))
        app::pour(app);
}

void weigh(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::KeptWeighOut* under_way = app::weighing(app);
    if (!under_way) {
        widget::text(kit, app.say("weigh.none"), theme::Type::body, widget::Ink::soft);
        return;
    }
    const workspace::KeptWeighOut kept = *under_way;  // what is pressed below may change it
    const weigh_out::Standing standing = app::weigh_view(app).standing;
    const WeighOut& now = kept.weighing;
    const Row& row = standing.rows[now.at];
    weigh_timers(app);
    if (standing.finished) {
        big_figure(app, app.say("weigh.all_in"), standing.poured, now.plan.division, "");
        widget::gap(8);
    } else {
        phase_head(app, kept, standing);
        widget::text(kit, weigh_name(app, now.at), theme::Type::title);
        widget::gap(4);
        if (row.over) {
            weigh_ways(app);
        } else if (row.done) {
            widget::text(kit, app.say("weigh.line_in", {{"g", app.grams(row.poured)}}));
        } else {
            const weigh_out::Shows shows = weigh_out::shows(now, standing, now.at, app.work.settings.scales);
            big_figure(app, app.say(row.poured > quantity::Mass{} ? "weigh.still_add" : "weigh.add"),
                       row.left, shows.place.division, scale_words(app, shows, standing.jug.has_value()));
            shown_then(app, shows);
            read_off(app, kept, shows);
            if (!app.ui.foot) {
                widget::gap(10);
                weigh_foot(app);
            }
            widget::gap(4);
            if (app.ui.weigh.ways)
                weigh_ways(app);
            else if (widget::button(kit, "ways", app.say("weigh.no_more_of_it"), widget::Look::quiet)) {
                app.ui.weigh.ways = true;
                app.ui.again = true;
            }
        }
    }
    if (!app.ui.foot && (standing.finished || row.done)) {
        widget::gap(8);
        weigh_foot(app);
    }
    if (!standing.finished) {
        std::size_t in = 0;
        for (const Row& one : standing.rows)
            in += one.done ? 1 : 0;
        widget::gap(6);
        widget::text(kit,
                     app.say("weigh.progress", {{"n", std::to_string(in)},
                                                {"of", std::to_string(standing.rows.size())},
                                                {"g", app.grams(standing.poured)},
                                                {"total", app.grams(standing.total)}}),
                     theme::Type::small, widget::Ink::soft);
    }
    all_lines(app, kept, standing);
    more_to_do(app, kept, standing);
}

}  // namespace screens
