// What could stand in a line's place: one for it by a factor with its standing, or of several the nearest
// formula; each beside the recipe as it is, and taken by one button.
#include <algorithm>

#include "app.h"
#include "engine/swap.h"
#include "kept_rows.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"
#include "widget_tick.h"

namespace screens {
namespace {

using swap::StandIn;

std::string stand_in_name(const app::App& app, const std::string& id) {
    const catalogue::Ingredient* one = catalogue::find_ingredient(app.known(), id);
    return one ? one->name : id;
}

// "0.5 g for 1 g (0.4 to 0.7) · from memory · of an animal"
std::string stand_in_words(const app::App& app, const StandIn& one) {
    const auto figure = [&](std::int64_t grid) {  // to 0.01
        return words::figure(app.words, decimal::scale_nearest(grid, 1, 100) * 100);
    };
    std::string text;
    const auto add = [&](const std::string& more) { text += (text.empty() ? "" : " \xC2\xB7 ") + more; };
    if (one.basis == swap::Basis::same_role) {
        add(app.say("swap_ui.same_role"));
    } else {
        add(app.say("swap_ui.factor", {{"factor", figure(one.factor)}}));
        if (one.range.min != one.range.max)
            add(app.say("swap_ui.range", {{"min", figure(one.range.min)}, {"max", figure(one.range.max)}}));
        if (!one.by_way_of.empty())
            add(app.say("swap_ui.over", {{"name", stand_in_name(app, one.by_way_of)}}));
        add(app::source_words(app, one.source, one.standing));
    }
    const catalogue::Ingredient* known = catalogue::find_ingredient(app.known(), one.ingredient);
    if (known && known->vegan == false) add(app.say("swap_ui.animal"));
    if (known && !known->own && !known->vegan) add(app.say("swap_ui.depends"));
    if (known && catalogue::has_trait(*known, "nut")) add(app.say("swap_ui.nut"));
    return text;
}

std::string percent_there(const app::App& app, const formula::Formula& changed, const std::string& id) {
    const auto all = formula::percents(changed);
    for (std::size_t i = 0; all && i < changed.lines.size(); ++i)
        if (changed.lines[i].ingredient == id)
            return app.say("card.percent", {{"range", words::figure(app.words, (*all)[i].grid)}});
    return "";
}

// The changed formula beside the recipe as it is, and the button that takes it. True: it was taken.
bool with_the_swap(app::App& app, const workspace::Recipe& now,
                   const result::Result<formula::Formula>& changed) {
    kit::Kit& kit = app.kit;
    widget::gap(10);
    if (!changed) {
        widget::finding_badge(kit, finding::Severity::caution, words::say(app.words, changed.error()), "");
        widget::gap(10);
        return false;
    }
    workspace::Recipe after = now;
    after.formula = *changed;
    compared(app, app::compared(app, {now, after}), {app.say("version_ui.now"), app.say("swap_ui.after")});
    widget::gap(12);
    const bool taken = widget::button(kit, "take", app.say("adjust.take"), widget::Look::primary, kit.width);
    widget::gap(18);
    if (taken) app::take_swap(app, *changed);
    return taken;
}

void one_for_it(app::App& app, const workspace::Recipe& now, std::size_t line,
                const std::vector<StandIn>& all) {
    app::SwapIn& in = app.ui.swap;
    for (const StandIn& one : all) {
        const auto changed = swap::taken(now.formula, line, one, app.known());
        widget::RowSpec row;
        row.title = stand_in_name(app, one.ingredient);
        row.under = stand_in_words(app, one);
        if (changed) row.right = percent_there(app, *changed, one.ingredient);
        row.chosen = in.by == one.ingredient;
        row.onward = !row.chosen;
        kept_rows::row(app.kit, "row " + one.ingredient, [&] {
            if (widget::row(app.kit, one.ingredient, row).pressed) {
                in.by = row.chosen ? "" : one.ingredient;
                app.ui.again = true;
            }
            widget::hairline(app.kit);
        });
        if (!row.chosen) continue;
        if (!one.note.empty()) {
            widget::gap(8);
            widget::text(app.kit, one.note, theme::Type::small, widget::Ink::soft);
        }
        if (with_the_swap(app, now, changed)) return;
    }
}

void swap_shares(app::App& app, const char* title, const std::vector<swap::Share>& all, bool roles) {
    bool any = false;
    for (const swap::Share& one : all) {
        if (one.was == one.is) continue;
        if (!any) {
            widget::gap(14);
            widget::heading(app.kit, 2, app.say(title));
        }
        any = true;
        widget::RowSpec row;
        row.title = roles ? app::role_words(app, one.key) : one.key;
        row.right = app.say("adjust.change", {{"from", words::figure_fixed(app.words, one.was.grid, 1)},
                                              {"to", words::figure_fixed(app.words, one.is.grid, 1)}});
        row.plain = true;
        widget::row(app.kit, (roles ? "role " : "acid ") + one.key, row);
        widget::hairline(app.kit);
    }
}

void nearest_of(app::App& app, const workspace::Recipe& now, std::size_t line,
                const std::vector<StandIn>& all) {
    kit::Kit& kit = app.kit;
    app::SwapIn& in = app.ui.swap;
    widget::text(kit, app.say("swap_ui.nearest_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    for (const StandIn& one : all) {
        const auto at = std::find(in.several.begin(), in.several.end(), one.ingredient);
        if (!widget::tick(kit, "by_" + one.ingredient, stand_in_name(app, one.ingredient),
                          at != in.several.end()))
            continue;
        if (at == in.several.end())
            in.several.push_back(one.ingredient);
        else
            in.several.erase(at);
        app.ui.again = true;
    }
    widget::gap(8);
    if (widget::tick(kit, "move", app.say("swap_ui.move"), in.others_move)) {
        in.others_move = !in.others_move;
        app.ui.again = true;
    }
    if (in.several.empty()) return;
    const auto found = swap::nearest(now.formula, {line, in.several, in.others_move}, app.known());
    widget::gap(12);
    if (!found) return (void)with_the_swap(app, now, found.error());
    widget::text(kit, found->apart
                          ? app.say("swap_ui.apart",
                                    {{"percent", words::figure_fixed(app.words, found->apart->grid, 1)}})
                          : app.say("swap_ui.no_profile"));
    std::string unknown;
    for (const std::string& one : found->unprofiled)
        unknown += (unknown.empty() ? "" : ", ") + stand_in_name(app, one);
    if (!unknown.empty()) {
        widget::gap(6);
        widget::finding_badge(kit, finding::Severity::note,
                              app.say("swap_ui.unprofiled", {{"names", unknown}}), "");
    }
    if (with_the_swap(app, now, found->formula)) return;
    swap_shares(app, "swap_ui.acids", found->acids, false);
    swap_shares(app, "swap_ui.roles", found->roles, true);
}

}  // namespace

void swaps(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::Recipe* open = app::open_recipe(app);
    if (!open || !app.analysed) return nothing_open(app);
    const workspace::Recipe now = *open;  // a press changes it
    app::SwapIn& in = app.ui.swap;
    std::optional<std::size_t> line;
    for (std::size_t i = 0; i < now.formula.lines.size(); ++i)
        if (!in.of.empty() && now.formula.lines[i].ingredient == in.of) line = i;
    if (app.ui.line < now.formula.lines.size() && now.formula.lines[app.ui.line].ingredient == in.of)
        line = app.ui.line;
    if (!line) {
        widget::text(kit, app.say("swap_ui.which"));
        widget::gap(6);
    }
    if (!line || in.of.empty()) {
        bool any = false;
        for (std::size_t i = 0; i < now.formula.lines.size(); ++i) {
            const catalogue::Ingredient* one =
                catalogue::find_ingredient(app.known(), now.formula.lines[i].ingredient);
            if (!one || !swap::by_weight(one->role)) continue;
            any = true;
            widget::RowSpec row;
            row.title = one->name;
            row.under = app::role_words(app, one->role);
            row.onward = true;
            if (widget::row(kit, "line " + std::to_string(i), row).pressed) {
                in = {};
                in.of = one->id;
                app.ui.line = i;
                app.ui.to_top = app.ui.again = true;
            }
            widget::hairline(kit);
        }
        if (!any) widget::text(kit, app.say("swap_ui.none"), theme::Type::small, widget::Ink::soft);
        return;
    }
    widget::heading(kit, 2, app.say("swap_ui.instead", {{"name", stand_in_name(app, in.of)}}));
    widget::gap(4);
    widget::text(kit, app.say("swap_ui.about"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    if (widget::button(kit, "other_line", app.say("swap_ui.other_line"), widget::Look::quiet)) {
        in = {};
        app.ui.again = true;
        return;
    }
    const std::vector<StandIn> all = swap::stand_ins(app.known(), in.of);
    if (all.empty()) {
        widget::text(kit, app.say("swap_ui.none"), theme::Type::small, widget::Ink::soft);
        return;
    }
    widget::gap(6);
    const int how = widget::choice(kit, "how", app.say("swap_ui.how"),
                                   {app.say("swap_ui.one"), app.say("swap_ui.several")}, in.nearest ? 1 : 0);
    if (how >= 0) {
        in.nearest = how == 1;
        if (in.nearest && in.several.empty())
            for (std::size_t i = 0; i < all.size() && i < 2; ++i)
                in.several.push_back(all[i].ingredient);
        app.ui.again = true;
    }
    widget::gap(10);
    in.nearest ? nearest_of(app, now, *line, all) : one_for_it(app, now, *line, all);
}

}  // namespace screens
