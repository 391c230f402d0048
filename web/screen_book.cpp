// The formula book: recipes kept on this device, starters, the bin.
#include "app.h"
#include "engine/utf8.h"
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

std::string product_name(const app::App& app, const workspace::Recipe& recipe) {
    const catalogue::Product* product = catalogue::find_product(app.presets.catalogue, recipe.product);
    return product ? product->name : recipe.product;
}

std::string under(const app::App& app, const workspace::Kept& kept) {
    return app.say(
        "book.under",
        {{"product", product_name(app, kept.recipe)},
         {"lines", app.say("count.lines", {{"n", std::to_string(kept.recipe.formula.lines.size())}})},
         {"date", kept.changed.substr(0, 10)}});
}

// Shortened, where it would be longer than a title may be.
std::string copied_title(const app::App& app, std::string_view title) {
    const auto made = [&](std::string_view from) {
        return app.say("recipe.copy_of", {{"title", std::string(from)}});
    };
    const std::size_t added = made("").size();
    return made(utf8::start_within(title, workspace::kMostTitleBytes - added));
}

void troubles(app::App& app) {
    if (app.keeping.trouble() != keeping::Trouble::none) {
        widget::finding_badge(
            app.kit, finding::Severity::stop,
            app.say(app.keeping.trouble() == keeping::Trouble::full ? "store.full" : "store.refused"), "");
        widget::gap(12);
    }
    if (!app.keeping.damaged().empty()) {
        widget::finding_badge(app.kit, finding::Severity::caution,
                              app.say("store.damaged", {{"n", std::to_string(app.keeping.damaged().size())}}),
                              "");
        widget::gap(8);
        if (widget::button(app.kit, "save_damaged", app.say("store.save_damaged"))) app::save_damaged(app);
        if (app.ui.damaged_saved) {
            widget::gap(4);
            if (widget::button(app.kit, "forget_damaged", app.say("store.forget_damaged"),
                               widget::Look::quiet))
                app.keeping.forget_damaged();
        }
        widget::gap(12);
    }
}

}  // namespace

void book(app::App& app) {
    kit::Kit& kit = app.kit;
    troubles(app);
    if (widget::button(kit, "new", app.say("book.new"), widget::Look::primary, kit.width))
        app::show(app, app::Sheet::new_recipe);
    widget::gap(16);

    mirror::Node list;
    list.id = widget::id_of("recipes");
    list.role = mirror::Role::list;
    list.name = app.say("book.title");
    mirror::open(list);
    std::size_t kept_count = 0, binned = 0;
    std::string pressed, menu;
    for (const workspace::Kept& kept : app.work.recipes) {
        if (!kept.binned.empty()) {
            ++binned;
            continue;
        }
        mirror::Node item;
        item.id = widget::id_of(kept.id);
        item.role = mirror::Role::item;
        mirror::open(item);
        if (kept_count++ > 0) widget::hairline(kit);
        const std::string title = kept.recipe.title.empty() ? app.say("recipe.untitled") : kept.recipe.title;
        const widget::RowPress press =
            widget::row(kit, kept.id,
                        {title, under(app, kept), "", app.say("book.menu_of", {{"title", title}}),
                         kept.id == app.work.open, false});
        mirror::close();
        if (press.menu)
            menu = kept.id;
        else if (press.pressed)
            pressed = kept.id;
    }
    mirror::close();
    if (kept_count == 0) widget::text(kit, app.say("book.empty"), theme::Type::body, widget::Ink::soft);

    widget::gap(24);
    widget::heading(kit, 2, app.say("book.starters"));
    widget::gap(2);
    widget::text(kit, app.say("book.starters_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(4);
    const workspace::Recipe* starter = nullptr;
    for (const auto& [stem, recipe] : app.presets.recipes) {
        if (widget::row(kit, stem,
                        {recipe.title,
                         product_name(app, recipe) + " \xC2\xB7 " +
                             app.say("count.lines", {{"n", std::to_string(recipe.formula.lines.size())}}),
                         "", "", false, false})
                .pressed)
            starter = &recipe;
    }
    if (binned > 0) {
        widget::gap(24);
        if (widget::button(kit, "bin", app.say("book.bin", {{"n", std::to_string(binned)}})))
            app::show(app, app::Sheet::bin);
    }

    if (!menu.empty()) {
        app.ui.recipe = menu;
        app::show(app, app::Sheet::recipe);
    } else if (!pressed.empty()) {
        app::open(app, pressed);
    } else if (starter) {
        app::keep(app, *starter);
    }
}

void recipe(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::Kept* kept = workspace::find(std::as_const(app.work), app.ui.recipe);
    if (!kept) return app::close_sheet(app);
    const std::string id = kept->id;
    auto choice = [&](std::string_view key) {
        const bool pressed = widget::row(kit, key, {app.say(key), "", "", "", false, false}).pressed;
        widget::hairline(kit);
        return pressed;
    };
    if (choice("recipe.open")) {
        app::close_sheet(app);
        app::open(app, id);
    } else if (choice("recipe.rename")) {
        app.ui.typed = kept->recipe.title;
        app::show(app, app::Sheet::rename);
    } else if (choice("recipe.copy")) {
        app::close_sheet(app);
        workspace::Recipe copy = kept->recipe;
        copy.title = copied_title(app, copy.title);
        app::keep(app, std::move(copy));
    } else if (choice("recipe.share")) {
        app::show(app, app::Sheet::share);
    } else if (choice("recipe.save_file")) {
        app::save_recipe_file(kept->recipe);
        app::close_sheet(app);
    } else if (choice("recipe.to_bin")) {
        app::bin(app, id);
        app::close_sheet(app);
    }
}

void bin(app::App& app) {
    kit::Kit& kit = app.kit;
    std::string restore, erase;
    bool any = false;
    for (const workspace::Kept& kept : app.work.recipes) {
        if (kept.binned.empty()) continue;
        any = true;
        const std::string title = kept.recipe.title.empty() ? app.say("recipe.untitled") : kept.recipe.title;
        widget::row(
            kit, kept.id,
            {title, app.say("bin.since", {{"date", kept.binned.substr(0, 10)}}), "", "", false, true});
        if (widget::button(kit, "restore" + kept.id, app.say("bin.restore", {{"title", title}}),
                           widget::Look::plain, kit.width))
            restore = kept.id;
        widget::gap(6);
        if (widget::button(kit, "erase" + kept.id, app.say("bin.erase", {{"title", title}}),
                           widget::Look::danger, kit.width))
            erase = kept.id;
        widget::gap(16);
    }
    if (!any) widget::text(kit, app.say("bin.empty"), theme::Type::body, widget::Ink::soft);
    if (!restore.empty()) {
        workspace::restore(app.work, restore);
        app::tell(app, app.say("bin.restored"));
    }
    if (!erase.empty()) {
        workspace::erase_binned(app.work, erase);
        app::tell(app, app.say("bin.erased"));
    }
}

void rename(app::App& app) {
    kit::Kit& kit = app.kit;
    workspace::Kept* kept = workspace::find(app.work, app.ui.recipe);
    if (!kept) return app::close_sheet(app);
    if (const auto typed = widget::text_field(
            kit, "title", app.ui.typed,
            {app.say("recipe.title"), "", false, false, false, true, workspace::kMostTitleBytes}))
        app.ui.typed = *typed;
    const bool enter = mirror::take_enter(widget::id_of("title"));
    widget::gap(16);
    if (widget::button(kit, "save", app.say("recipe.rename_done"), widget::Look::primary, kit.width) ||
        enter) {
        kept->recipe.title = typed::words(app.ui.typed);
        app::close_sheet(app);
    }
}

}  // namespace screens
