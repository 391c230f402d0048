// The card of one ingredient: what it is, its names, its figures each with source and standing, cautions, and
// what can be done with it. What is not known is said to be unknown, with the reason where there is one. Of
// an own entry that is based on a shipped one, figures it does not say itself are shown as the shipped one's.
#include <algorithm>

#include "app.h"
#include "engine/density.h"
#include "engine/workspace_made.h"
#include "mirror.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

using catalogue::Ingredient;

struct Card {
    app::App& app;
    const Ingredient& one;
    const Ingredient* base;  // the shipped ingredient an own entry is based on
    bool of_recipe;          // as the open recipe holds it

    std::string figure(std::int64_t grid) const { return words::figure(app.words, grid); }

    void fact(std::string_view label, const std::string& value, const std::string& source) const {
        widget::gap(10);
        widget::text(app.kit, app.say(label), theme::Type::small, widget::Ink::soft);
        widget::text(app.kit, value, theme::Type::strong);
        if (!source.empty()) widget::text(app.kit, source, theme::Type::small, widget::Ink::soft);
    }
    void unknown(std::string_view label, const std::string& why) const {
        fact(label, app.say("card.unknown"), why.empty() ? app.say("card.unknown_why") : why);
    }
    // Said by the entry itself, else by what it is based on.
    void range(std::string_view label, const char* value,
               catalogue::Known<catalogue::Range> Ingredient::*field) const {
        const auto* known = one.*field ? &*(one.*field) : base && base->*field ? &*(base->*field) : nullptr;
        if (!known) return unknown(label, "");
        std::string source = app::source_words(app, known->source, known->standing);
        if (!(one.*field)) source = app.say("card.from_base", {{"name", base->name}, {"source", source}});
        const bool point = known->value.min == known->value.max;
        fact(label,
             app.say(value, {{"range", point ? figure(known->value.max)
                                             : app.say("card.range", {{"min", figure(known->value.min)},
                                                                      {"max", figure(known->value.max)}})}}),
             source);
    }
};

std::string own_source(const app::App& app, const Ingredient& own) {
    const source::Entry* entry = catalogue::find_source(app.presets.catalogue, own.source);
    if (entry || own.source.empty()) return app::source_words(app, own.source, own.standing);
    return own.source + "; " + app::source_words(app, "", own.standing);
}

void names(const Card& card) {
    const Ingredient& one = card.one;
    app::App& app = card.app;
    for (const auto& [market, key] : {std::pair{"eu", "card.inci_eu"}, {"us", "card.inci_us"}}) {
        const auto inci = one.inci.find(market);
        if (inci == one.inci.end() || inci->second.empty())
            card.unknown(key, app.say("card.inci_unknown"));
        else
            card.fact(key, inci->second,
                      one.own ? own_source(app, one)
                              : app::source_words(app, one.inci_source,
                                                  app::source_standing(app, one.inci_source)));
    }
    for (const auto& [language, name] : one.names)
        if (name != one.name) card.fact("card.also_called", name + " (" + language + ")", "");
    const Ingredient& plant = card.base && one.botanical.empty() ? *card.base : one;
    if (!plant.botanical.empty()) card.fact("card.botanical", plant.botanical, "");
    if (!plant.part.empty())
        card.fact(
            "card.part", plant.part,
            plant.part_source.empty()
                ? ""
                : app::source_words(app, plant.part_source, app::source_standing(app, plant.part_source)));
    std::string cas;
    for (const std::string& number : one.cas)
        cas += (cas.empty() ? "" : ", ") + number;
    if (!cas.empty())
        card.fact("card.cas", cas,
                  app::source_words(app, one.cas_source, app::source_standing(app, one.cas_source)));
}

void figures(const Card& card) {
    const Ingredient& one = card.one;
    app::App& app = card.app;
    const std::string role = app::role_words(app, one.role);
    if (role.empty())
        card.unknown("card.role", app.say("card.not_entered"));
    else
        card.fact("card.role", role, "");
    const Ingredient* placed = one.own ? card.base : &one;
    static constexpr const char* kPhases[] = {"card.phase_oil", "card.phase_water", "card.phase_cool_down",
                                              "card.phase_powder", "card.phase_either"};
    if (placed) card.fact("card.phase", app.say(kPhases[static_cast<int>(placed->phase)]), "");
    card.range("card.usual", "card.percent", &Ingredient::usual_leave_on_percent);
    for (const auto& [where, cap] : one.max_percent) {
        const catalogue::Product* product = catalogue::find_product(app.presets.catalogue, where);
        widget::gap(10);
        widget::text(
            app.kit,
            app.say("card.max_for",
                    {{"where", product ? product->name : app.say("card.ifra", {{"category", where}})}}),
            theme::Type::small, widget::Ink::soft);
        widget::text(app.kit, app.say("card.percent", {{"range", card.figure(cap.grid)}}),
                     theme::Type::strong);
        widget::text(app.kit, own_source(app, one), theme::Type::small, widget::Ink::soft);
    }
    if (one.density) {
        const auto& density = *one.density;
        std::string value = app.say("card.g_per_ml", {{"range", card.figure(density.value.density.grid)}});
        if (density.value.temp_c_grid)
            value += " " + app.say("card.at_c", {{"c", card.figure(*density.value.temp_c_grid)}});
        card.fact("card.density", value,
                  one.own ? own_source(app, one) : app::source_words(app, density.source, density.standing));
    } else if (const density::Blend blend = density::of(one, app.known()); blend.density.grid > 0) {
        card.fact("card.density", app.say("card.g_per_ml", {{"range", card.figure(blend.density.grid)}}),
                  app.say("card.density_of_parts", {{"known", card.figure(blend.known.grid)}}));
    } else {
        card.unknown("card.density", one.density_unknown);
    }
    card.range("card.melting", "card.celsius", &Ingredient::melting_c);
    card.range("card.shelf_life", "card.months", &Ingredient::shelf_life_months);
    const Ingredient& kin = one.own && card.base ? *card.base : one;
    if (kin.origin.empty())
        card.unknown("card.origin", app.say("card.not_entered"));
    else
        card.fact("card.origin", kin.origin, "");
    if (kin.vegan)
        card.fact("card.vegan", app.say(*kin.vegan ? "card.yes" : "card.no"), "");
    else
        card.unknown("card.vegan", app.say("card.vegan_ask"));
}

void made_of(const Card& card) {
    const Ingredient& one = card.one;
    app::App& app = card.app;
    if (one.made) {
        std::string words = app.say(app::made_key(one.made->as));
        if (one.made->yield != quantity::kHundred)
            words += ", " + app.say("card.yield", {{"percent", card.figure(one.made->yield.grid)}});
        card.fact("card.made", words, "");
        std::string plants;
        for (const std::string& plant : one.made->infused_with)
            plants += (plants.empty() ? "" : ", ") + plant;
        if (!plants.empty()) card.fact("card.infused_with", plants, app.say("card.infused_about"));
    }
    if (!one.parts.empty()) {
        widget::gap(10);
        widget::text(app.kit, app.say("card.parts"), theme::Type::small, widget::Ink::soft);
        for (std::size_t i = 0; i < one.parts.size(); ++i) {
            formula::Line line;
            line.ingredient = one.parts[i].ingredient;
            ImGui::PushID(static_cast<int>(i));
            widget::row(app.kit, "part",
                        {workspace::display_name(app.known(), line), "",
                         app.say("card.percent", {{"range", card.figure(one.parts[i].percent.grid)}}), "",
                         false, true});
            ImGui::PopID();
        }
    }
    if (one.analysis) {
        std::string paper = one.analysis->lot;
        for (const std::string* more : {&one.analysis->date, &one.analysis->by})
            if (!more->empty()) paper += (paper.empty() ? "" : " \xC2\xB7 ") + *more;
        card.fact("card.analysis", paper.empty() ? app.say("card.analysis_nameless") : paper, "");
        for (const auto& [constituent, content] : one.analysis->constituents) {
            std::string value;
            if (content.typical) value = card.figure(content.typical->grid);
            if (content.min || content.max) {
                const std::string low = content.min ? card.figure(content.min->grid) : "0";
                const std::string high =
                    content.max ? card.figure(content.max->grid) : card.figure(quantity::kHundred.grid);
                value += (value.empty() ? "" : ", ") + app.say("card.range", {{"min", low}, {"max", high}});
            }
            widget::row(
                app.kit, "constituent " + constituent,
                {constituent, "",
                 value.empty() ? app.say("card.unknown") : app.say("card.percent", {{"range", value}}), "",
                 false, true});
        }
    }
}

const Ingredient* shown(app::App& app, const workspace::Recipe* recipe) {
    if (app.ui.card_of_recipe && recipe)
        if (const Ingredient* own = workspace::own_of(*recipe, app.ui.card)) return own;
    for (const Ingredient& mine : app.mine)
        if (mine.id == app.ui.card) return &mine;
    if (const Ingredient* shipped = catalogue::find_ingredient(app.presets.catalogue, app.ui.card))
        return shipped;
    return catalogue::find_ingredient(app.known(), app.ui.card);
}

// What can be done with an entry of the recipe that is not the same as the person's own.
void belonging(const Card& card, const workspace::Recipe& recipe, const Ingredient* mine) {
    app::App& app = card.app;
    kit::Kit& kit = app.kit;
    const workspace::Origin origin = workspace::origin_of(recipe, card.one.id, mine);
    if (origin != workspace::Origin::came_along && origin != workspace::Origin::mine_other) return;
    const bool other = origin == workspace::Origin::mine_other;
    widget::finding_badge(kit, finding::Severity::note,
                          app.say(other ? "card.other_about" : "card.came_along_about"), "");
    widget::gap(8);
    if (other) {
        if (widget::button(kit, "take_mine", app.say("card.take_mine"), widget::Look::plain, kit.width)) {
            app.undo.deed_done();
            app::edit(app, workspace::take_mine(recipe, *mine, app.mine));
        }
        widget::gap(8);
    }
    if (widget::button(kit, "keep", app.say("card.keep"), widget::Look::plain, kit.width))
        app::keep_own(app, card.one.id);
    widget::gap(8);
}

void deeds(const Card& card) {
    app::App& app = card.app;
    kit::Kit& kit = app.kit;
    const std::string id = card.one.id;
    const workspace::KeptOwn* kept = workspace::find_own(app.work, id);
    const bool mine = kept && kept->binned.empty() && kept->ingredient == card.one;
    const workspace::Kept* made = workspace::find_made(app.work, id);
    widget::gap(18);
    if (mine && widget::button(kit, "edit", app.say("card.edit"), widget::Look::primary, kit.width)) {
        app.ui.own = id;
        return app::show(app, app::Sheet::own);
    }
    if (made && widget::button(kit, "recipe", app.say("card.open_recipe", {{"title", made->recipe.title}}),
                               widget::Look::plain, kit.width)) {
        const std::string recipe = made->id;
        app::close_sheet(app);
        return app::open(app, recipe);
    }
    if (mine || made) widget::gap(8);
    if (widget::button(kit, "copy", app.say("card.copy"), widget::Look::plain, kit.width))
        return app::copy_own(app, card.one);
    if (mine) {
        widget::gap(8);
        if (widget::button(kit, "bin", app.say("card.to_bin"), widget::Look::danger, kit.width)) {
            app::bin_own(app, id);
            app::close_sheet(app);
        }
    }
}

}  // namespace

void card(app::App& app) {
    const workspace::Recipe* recipe = app::open_recipe(app);
    const Ingredient* found = shown(app, recipe);
    if (!found) return app::close_sheet(app);
    const Ingredient one = *found;  // what is pressed below may change the list it stands in
    const Ingredient* base = catalogue::find_ingredient(app.presets.catalogue, one.based_on);
    const Card card{app, one, one.own ? base : nullptr, app.ui.card_of_recipe};

    if (card.of_recipe && recipe) {
        const auto mine = std::find_if(app.mine.begin(), app.mine.end(),
                                       [&](const Ingredient& own) { return own.id == one.id; });
        const Ingredient same = mine == app.mine.end() ? Ingredient{} : *mine;
        belonging(card, *recipe, mine == app.mine.end() ? nullptr : &same);
    }
    const std::string& about = one.about.empty() && card.base ? card.base->about : one.about;
    if (!about.empty()) widget::text(app.kit, about);
    if (card.base)
        widget::text(app.kit, app.say("card.based_on", {{"name", card.base->name}}), theme::Type::small,
                     widget::Ink::soft);
    for (const Ingredient* said : {&one, card.base})
        if (said && !said->caution.empty()) {
            widget::gap(8);
            widget::finding_badge(app.kit, finding::Severity::caution, said->caution, "");
        }
    lots_of_card(app, one.id);
    made_of(card);
    names(card);
    figures(card);
    const std::string& note = one.note.empty() && card.base ? card.base->note : one.note;
    if (!note.empty()) card.fact("card.note", note, "");
    deeds(card);
}

}  // namespace screens
