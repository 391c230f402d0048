// The formula book: recipes kept on this device, found by search, tag and order; starters, the bin.
#include <algorithm>
#include <utility>

#include "app.h"
#include "engine/workspace_book.h"
#include "engine/workspace_edits.h"
#include "engine/writing.h"
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
    std::string words =
        app.say("book.under",
                {{"product", product_name(app, kept.recipe)},
                 {"lines", app.say("count.lines", {{"n", std::to_string(kept.recipe.formula.lines.size())}})},
                 {"date", kept.changed.substr(0, 10)}});
    for (const std::string& tag : kept.tags)
        words += " \xC2\xB7 " + writing::set_apart(tag);
    return words;
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

// Search, tags and order; only where there is something to choose among.
workspace_book::View looked_for(app::App& app, std::size_t in_book) {
    kit::Kit& kit = app.kit;
    if (in_book < 2) {
        app.ui.book_search.clear();
        app.ui.book_tag.clear();
        return {};
    }
    widget::TextSpec spec;
    spec.name = app.say("book.search");
    spec.hint = app.say("book.search_hint");
    spec.bare = true;
    spec.search = true;
    spec.most_bytes = 80;
    if (const auto typed = widget::text_field(kit, "search", app.ui.book_search, spec))
        app.ui.book_search = *typed;
    kit.wish_blur = mirror::take_enter(widget::id_of("search")) != 0 || kit.wish_blur;
    widget::gap(8);
    workspace::Settings& settings = app.work.settings;
    const int sort = widget::choice(
        kit, "sort", app.say("book.sort"),
        {app.say("book.sort_changed"), app.say("book.sort_title"), app.say("book.sort_product")},
        static_cast<int>(settings.sort));
    if (sort >= 0) settings.sort = static_cast<workspace::Sort>(sort);
    const std::vector<std::string> tags = workspace_book::tags(app.work);
    const auto same = [&](const std::string& tag) { return tag == app.ui.book_tag; };
    const auto at = std::find_if(tags.begin(), tags.end(), same);
    if (at == tags.end()) app.ui.book_tag.clear();
    if (!tags.empty()) {
        widget::gap(8);
        std::vector<std::string> options{app.say("book.any_tag")};
        options.insert(options.end(), tags.begin(), tags.end());
        const int chosen = at == tags.end() ? 0 : static_cast<int>(at - tags.begin()) + 1;
        const int tag = widget::choice(kit, "tag", app.say("book.tag"), options, chosen);
        if (tag >= 0) app.ui.book_tag = tag == 0 ? "" : tags[static_cast<std::size_t>(tag - 1)];
    }
    widget::gap(12);
    return {app.ui.book_search, app.ui.book_tag, settings.sort};
}

}  // namespace

void book_foot(app::App& app) {
    if (widget::button(app.kit, "new", app.say("book.new"), widget::Look::primary, app.kit.width))
        app::show(app, app::Sheet::new_recipe);
}

void book(app::App& app) {
    kit::Kit& kit = app.kit;
    troubles(app);
    update_offer(app);
    if (!app.ui.foot) {
        book_foot(app);
        widget::gap(16);
    }

    std::size_t in_book = 0, binned = 0;
    for (const workspace::Kept& kept : app.work.recipes)
        ++(kept.binned.empty() ? in_book : binned);
    const workspace_book::View view = looked_for(app, in_book);

    mirror::Node list;
    list.id = widget::id_of("recipes");
    list.role = mirror::Role::list;
    list.name = app.say("book.title");
    mirror::open(list);
    std::size_t shown = 0;
    std::string pressed, menu;
    for (const workspace::Kept* row : workspace_book::shown(app.work, app.presets.catalogue, view)) {
        const workspace::Kept& kept = *row;
        mirror::Node item;
        item.id = widget::id_of(kept.id);
        item.role = mirror::Role::item;
        mirror::open(item);
        if (shown++ > 0) widget::hairline(kit);
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
    if (in_book == 0) {
        widget::text(kit, app.say("book.empty"), theme::Type::body, widget::Ink::soft);
    } else if (shown == 0) {
        widget::text(kit, app.say("book.none_found"), theme::Type::body, widget::Ink::soft);
        widget::gap(8);
        if (widget::button(kit, "show_all", app.say("book.show_all"))) {
            app.ui.book_search.clear();
            app.ui.book_tag.clear();
        }
    }
    backup_reminder(app);

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
    } else if (choice("recipe.tags")) {
        app.ui.typed.clear();
        app.ui.typed_problem.clear();
        app::show(app, app::Sheet::tags);
    } else if (choice("recipe.copy")) {
        app::close_sheet(app);
        workspace::Recipe copy = kept->recipe;
        copy.title = app::title_within(app, "recipe.copy_of", copy.title);
        app::keep(app, std::move(copy));
    } else if (choice(kept->recipe.made ? "recipe.made_change" : "recipe.made")) {
        app::show(app, app::Sheet::made);
    } else if (choice("ask.card")) {
        if (id != app.work.open) app::open(app, id);
        app::show(app, app::Sheet::customer_card);
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

void tags(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::Kept* kept = workspace::find(std::as_const(app.work), app.ui.recipe);
    if (!kept) return app::close_sheet(app);
    const std::string id = kept->id;
    widget::text(kit, app.say("tags.about"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    std::string wished, put_off;
    for (const std::string& tag : kept->tags) {  // those it has, then those of the others
        if (widget::button(kit, "off " + tag, app.say("tags.off", {{"tag", tag}}), widget::Look::plain,
                           kit.width))
            put_off = tag;
        widget::gap(8);
    }
    for (const std::string& tag : workspace_book::tags(app.work)) {
        if (workspace_book::has_tag(*kept, tag)) continue;
        if (widget::button(kit, "on " + tag, app.say("tags.on", {{"tag", tag}}), widget::Look::quiet,
                           kit.width))
            wished = tag;
        widget::gap(8);
    }
    widget::TextSpec spec;
    spec.name = app.say("tags.new");
    spec.last = true;
    spec.most_bytes = static_cast<int>(workspace::kMostTagBytes);
    if (const auto typed = widget::text_field(kit, "tag", app.ui.typed, spec)) {
        app.ui.typed = *typed;
        app.ui.typed_problem.clear();
    }
    const bool enter = mirror::take_enter(widget::id_of("tag")) != 0;
    if (!app.ui.typed_problem.empty()) {
        widget::gap(8);
        widget::finding_badge(kit, finding::Severity::stop, app.ui.typed_problem, "");
    }
    widget::gap(12);
    if (widget::button(kit, "add", app.say("tags.add"), widget::Look::primary, kit.width) || enter)
        wished = app.ui.typed;
    else if (wished.empty() && put_off.empty())
        return;
    if (!put_off.empty()) workspace::untag(app.work, id, put_off);
    if (!wished.empty() || put_off.empty()) {
        const auto put_on = workspace::tag(app.work, id, wished);
        app.ui.typed_problem = put_on ? "" : words::say(app.words, put_on.error());
        if (put_on) app.ui.typed.clear();
    }
    app.ui.again = true;
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
    const bool enter = mirror::take_enter(widget::id_of("title")) != 0;
    widget::gap(16);
    if (widget::button(kit, "save", app.say("recipe.rename_done"), widget::Look::primary, kit.width) ||
        enter) {
        const auto renamed = workspace::set_title(kept->recipe, typed::words(app.ui.typed));
        if (!renamed) return app::tell(app, words::say(app.words, renamed.error()), true);
        kept->recipe = *renamed;
        app::close_sheet(app);
    }
}

}  // namespace screens
