// Own ingredients: a new one, changing one, their bin. Every change is kept at once, as everywhere; what is
// left empty is not known.
#include <algorithm>

#include "app.h"
#include "engine/sorting.h"
#include "engine/workspace_made.h"
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

using catalogue::Ingredient;

// Gives the changed text; what the engine refuses is said and not kept.
std::optional<std::string> text(app::App& app, const char* key, const std::string& name,
                                const std::string& value, int most, const char* about = nullptr) {
    widget::gap(10);
    widget::TextSpec spec;
    spec.name = name;
    spec.most_bytes = most;
    auto typed = widget::text_field(app.kit, key, value, spec);
    if (about) {
        widget::gap(2);
        widget::text(app.kit, app.say(about), theme::Type::small, widget::Ink::soft);
    }
    return typed;
}

widget::NumberChange number(app::App& app, const std::string& key, const std::string& name, const char* unit,
                            std::optional<std::int64_t> value,
                            result::Result<std::int64_t> (*read)(std::string_view)) {
    widget::NumberSpec spec;
    spec.name = name;
    spec.unit = unit;
    spec.read = read;
    spec.may_be_empty = true;
    spec.hint = app.say("own.not_known");
    return widget::number_field(app.kit, key, value, spec);
}

void base_facts(app::App& app, Ingredient& own) {
    kit::Kit& kit = app.kit;
    if (const auto typed = text(app, "name", app.say("own.name"), own.name, workspace::kMostOwnNameBytes);
        typed && !typed::words(*typed).empty()) {
        if (!own.names.empty()) own.names[own.names.count("en") ? "en" : own.names.begin()->first] = *typed;
        own.name = *typed;
    }
    widget::gap(6);
    widget::RowSpec role;
    role.title = own.role.empty() ? app.say("own.role_unknown") : app::role_words(app, own.role);
    role.under = app.say("stock.role");
    role.onward = true;
    if (widget::row(kit, "role", role).pressed) {
        app.ui.roles_of_own = true;
        app::show(app, app::Sheet::roles);
    }
    for (const auto& [market, key] : {std::pair{"eu", "own.inci_eu"}, {"us", "own.inci_us"}}) {
        const auto said = own.inci.find(market);
        const auto typed = text(app, key, app.say(key), said == own.inci.end() ? "" : said->second,
                                workspace::kMostOwnTextBytes);
        if (!typed) continue;
        if (typed->empty())
            own.inci.erase(market);
        else
            own.inci[market] = *typed;
    }
    widget::gap(10);
    const auto density =
        number(app, "density", app.say("card.density"), "g/mL",
               own.density ? std::optional(own.density->value.density.grid) : std::nullopt, typed::density);
    if (density.changed) {
        own.density.reset();
        if (density.value)
            own.density =
                source::Sourced<catalogue::DensityAt>{{{*density.value}, {}}, own.source, own.standing};
    }
    if (const auto typed = text(app, "source", app.say("own.source"), own.source,
                                workspace::kMostOwnTextBytes, "own.source_about"))
        own.source = *typed;
    widget::gap(10);
    widget::text(kit, app.say("own.standing"), theme::Type::small, widget::Ink::soft);
    widget::gap(4);
    const int standing = widget::choice(
        kit, "standing", app.say("own.standing"),
        {app.say("own.standing_document"), app.say("own.standing_supplier"), app.say("own.standing_practice"),
         app.say("own.standing_memory"), app.say("own.standing_estimate")},
        static_cast<int>(own.standing));
    if (standing >= 0) own.standing = static_cast<source::Standing>(standing);
}

std::string place_name(const app::App& app, const std::string& where) {
    const catalogue::Product* product = catalogue::find_product(app.presets.catalogue, where);
    return product ? product->name : app.say("card.ifra", {{"category", where}});
}

void limits(app::App& app, Ingredient& own) {
    kit::Kit& kit = app.kit;
    widget::gap(20);
    widget::heading(kit, 3, app.say("own.limits"));
    widget::text(kit, app.say("own.limits_about"), theme::Type::small, widget::Ink::soft);
    std::vector<std::string> places;  // those with a limit, and the one that has no figure yet
    for (const auto& [where, cap] : own.max_percent)
        places.push_back(where);
    if (!app.ui.own_limit_of.empty() && !own.max_percent.count(app.ui.own_limit_of))
        places.push_back(app.ui.own_limit_of);
    sorting::stable(places);
    for (const std::string& where : places) {
        ImGui::PushID(where.c_str());
        widget::gap(10);
        const auto cap = own.max_percent.find(where);
        const auto change = number(
            app, "cap", app.say("card.max_for", {{"where", place_name(app, where)}}), "%",
            cap == own.max_percent.end() ? std::nullopt : std::optional(cap->second.grid), typed::percent);
        ImGui::PopID();
        if (!change.changed) continue;
        if (change.value)
            own.max_percent[where] = quantity::Percent{*change.value};
        else
            own.max_percent.erase(where), app.ui.own_limit_of = where;  // its field stays to be typed into
    }
    widget::gap(8);
    if (widget::button(kit, "add_limit", app.say("own.limit_add"))) app::show(app, app::Sheet::own_limit);
}

void analysis(app::App& app, Ingredient& own) {
    kit::Kit& kit = app.kit;
    widget::gap(20);
    widget::heading(kit, 3, app.say("own.analysis"));
    widget::text(kit, app.say("own.analysis_about"), theme::Type::small, widget::Ink::soft);
    catalogue::LotAnalysis lot = own.analysis.value_or(catalogue::LotAnalysis{});
    const catalogue::LotAnalysis before = lot;
    if (const auto typed = text(app, "lot", app.say("own.lot"), lot.lot, workspace::kMostOwnNameBytes))
        lot.lot = *typed;
    // A day is taken once it is one; until then what is typed stays in the field.
    if (app.ui.own_date_of != own.id) {
        app.ui.own_date_of = own.id;
        app.ui.own_date = lot.date;
    }
    if (const auto typed = text(app, "date", app.say("own.date"), app.ui.own_date, 10)) {
        app.ui.own_date = *typed;
        if (typed->empty() || workspace::is_date(*typed)) lot.date = *typed;
    }
    if (!app.ui.own_date.empty() && app.ui.own_date != lot.date) {
        widget::gap(2);
        widget::text(kit, app.say("own.date_form"), theme::Type::small, widget::Ink::stop);
    }
    if (const auto typed = text(app, "by", app.say("own.by"), lot.by, workspace::kMostOwnNameBytes))
        lot.by = *typed;
    std::string remove;
    for (auto& [constituent, content] : lot.constituents) {
        ImGui::PushID(constituent.c_str());
        widget::gap(12);
        widget::heading(kit, 4, constituent);
        for (const auto& [key, field] : {std::pair{"own.content_min", &content.min},
                                         {"own.content_typical", &content.typical},
                                         {"own.content_max", &content.max}}) {
            widget::gap(4);
            const auto change = number(app, key, app.say(key, {{"name", constituent}}), "%",
                                       *field ? std::optional((*field)->grid) : std::nullopt, typed::percent);
            if (!change.changed) continue;
            field->reset();
            if (change.value) *field = quantity::Percent{*change.value};
        }
        if (widget::button(kit, "remove", app.say("own.constituent_remove", {{"name", constituent}}),
                           widget::Look::quiet))
            remove = constituent;
        ImGui::PopID();
    }
    if (!remove.empty()) lot.constituents.erase(remove);
    if (const auto typed =
            text(app, "constituent", app.say("own.constituent"), app.ui.typed, workspace::kMostOwnNameBytes))
        app.ui.typed = *typed;
    const bool enter = mirror::take_enter(widget::id_of("constituent")) != 0;
    widget::gap(6);
    const std::string name = typed::words(app.ui.typed);
    const bool full = lot.constituents.size() >= workspace::kMostOwnEntries;
    if ((widget::button(kit, "add_constituent", app.say("own.constituent_add"), widget::Look::plain, 0,
                        name.empty() || full) ||
         enter) &&
        !name.empty() && !full) {
        lot.constituents.try_emplace(name);
        app.ui.typed.clear();
    }
    if (lot == before) return;
    own.analysis = lot;
    if (lot == catalogue::LotAnalysis{}) own.analysis.reset();
}

void parts(app::App& app, Ingredient& own) {
    kit::Kit& kit = app.kit;
    widget::gap(20);
    widget::heading(kit, 3, app.say("card.parts"));
    widget::text(kit, app.say("own.parts_about"), theme::Type::small, widget::Ink::soft);
    for (std::size_t i = 0; i < own.parts.size(); ++i) {
        formula::Line line;
        line.ingredient = own.parts[i].ingredient;
        ImGui::PushID(static_cast<int>(i));
        widget::row(
            kit, "part",
            {workspace::display_name(app.known(), line), "",
             app.say("card.percent", {{"range", words::figure(app.words, own.parts[i].percent.grid)}}), "",
             false, true});
        ImGui::PopID();
    }
    widget::gap(8);
    if (widget::button(kit, "parts_from", app.say("own.parts_from"), widget::Look::plain, kit.width))
        app::show(app, app::Sheet::own_parts);
    if (!own.parts.empty()) {
        widget::gap(4);
        if (widget::button(kit, "parts_none", app.say("own.parts_none"), widget::Look::quiet)) {
            own.parts.clear();
            own.made.reset();
        }
    }
}

}  // namespace

void own_new(app::App& app) {
    kit::Kit& kit = app.kit;
    widget::text(kit, app.say("own.new_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(10);
    widget::TextSpec spec;
    spec.name = app.say("own.name");
    spec.last = true;
    spec.most_bytes = workspace::kMostOwnNameBytes;
    if (const auto typed = widget::text_field(kit, "name", app.ui.typed, spec)) app.ui.typed = *typed;
    const bool enter = mirror::take_enter(widget::id_of("name")) != 0;
    widget::gap(14);
    const std::string name = typed::words(app.ui.typed);
    if ((widget::button(kit, "create", app.say("own.create"), widget::Look::primary, kit.width,
                        name.empty()) ||
         enter) &&
        !name.empty()) {
        Ingredient own;
        own.name = name;
        own.standing = source::Standing::estimate;
        app::add_own(app, std::move(own));
    }
}

void own(app::App& app) {
    const workspace::KeptOwn* kept = workspace::find_own(app.work, app.ui.own);
    if (!kept || !kept->binned.empty()) return app::close_sheet(app);
    Ingredient now = kept->ingredient;
    if (const Ingredient* base = catalogue::find_ingredient(app.presets.catalogue, now.based_on))
        widget::text(app.kit, app.say("card.based_on", {{"name", base->name}}), theme::Type::small,
                     widget::Ink::soft);
    base_facts(app, now);
    limits(app, now);
    parts(app, now);
    analysis(app, now);
    if (const std::size_t used = workspace::recipes_with(app.work, now.id); used > 0) {
        widget::gap(14);
        widget::text(app.kit, app.say("own.copies_about", {{"n", std::to_string(used)}}), theme::Type::small,
                     widget::Ink::soft);
    }
    widget::gap(18);
    const bool done =
        widget::button(app.kit, "done", app.say("sheet_ui.done"), widget::Look::primary, app.kit.width);
    if (now != kept->ingredient) app::edit_own(app, std::move(now));
    if (done) app::close_sheet(app);
}

void own_limit(app::App& app) {
    const workspace::KeptOwn* kept = workspace::find_own(app.work, app.ui.own);
    if (!kept) return app::close_sheet(app);
    std::vector<std::pair<std::string, std::string>> places;
    for (const catalogue::Product& product : app.presets.catalogue.products)
        places.emplace_back(product.id, product.name);
    std::vector<std::string> categories;
    for (const catalogue::Product& product : app.presets.catalogue.products)
        if (product.ifra_category &&
            std::find(categories.begin(), categories.end(), product.ifra_category->value) == categories.end())
            categories.push_back(product.ifra_category->value);
    sorting::stable(categories);
    for (const std::string& category : categories)
        places.emplace_back(category, place_name(app, category));
    std::string chosen;
    for (const auto& [id, name] : places) {
        if (kept->ingredient.max_percent.count(id)) continue;
        if (widget::row(app.kit, id, {name, "", "", "", false, false}).pressed) chosen = id;
        widget::hairline(app.kit);
    }
    if (chosen.empty()) return;
    app.ui.own_limit_of = chosen;
    app::show(app, app::Sheet::own);
}

// Takes what a recipe of the book comes to as the parts of an own ingredient.
void own_parts(app::App& app) {
    const workspace::KeptOwn* kept = workspace::find_own(app.work, app.ui.own);
    if (!kept) return app::close_sheet(app);
    widget::text(app.kit, app.say("own.parts_choose"), theme::Type::small, widget::Ink::soft);
    widget::gap(6);
    const workspace::Kept* chosen = nullptr;
    for (const workspace::Kept& recipe : app.work.recipes) {
        if (!recipe.binned.empty()) continue;
        const std::string title =
            recipe.recipe.title.empty() ? app.say("recipe.untitled") : recipe.recipe.title;
        if (widget::row(
                app.kit, recipe.id,
                {title, app.say("count.lines", {{"n", std::to_string(recipe.recipe.formula.lines.size())}}),
                 "", "", false, false})
                .pressed)
            chosen = &recipe;
        widget::hairline(app.kit);
    }
    if (app.work.recipes.empty()) widget::text(app.kit, app.say("book.empty"));
    if (!chosen) return;
    const auto changed = workspace::with_parts_of(kept->ingredient, chosen->recipe, app.presets.catalogue);
    if (changed)
        app::edit_own(app, *changed);
    else
        app::tell(app, words::say(app.words, changed.error()), true);
    app::show(app, app::Sheet::own);
}

void own_bin(app::App& app) {
    kit::Kit& kit = app.kit;
    std::string restore, erase;
    bool any = false;
    for (const workspace::KeptOwn& kept : app.work.own) {
        if (kept.binned.empty()) continue;
        any = true;
        const std::string& id = kept.ingredient.id;
        widget::row(kit, id,
                    {kept.ingredient.name, app.say("bin.since", {{"date", kept.binned.substr(0, 10)}}), "",
                     "", false, true});
        if (widget::button(kit, "restore " + id, app.say("bin.restore", {{"title", kept.ingredient.name}}),
                           widget::Look::plain, kit.width))
            restore = id;
        widget::gap(6);
        if (widget::button(kit, "erase " + id, app.say("bin.erase", {{"title", kept.ingredient.name}}),
                           widget::Look::danger, kit.width))
            erase = id;
        widget::gap(16);
    }
    if (!any) widget::text(kit, app.say("bin.empty"), theme::Type::body, widget::Ink::soft);
    if (!restore.empty()) app::restore_own(app, restore);
    if (!erase.empty()) app::erase_own(app, erase);
}

}  // namespace screens
