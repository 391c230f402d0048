// Sheets for what comes in and goes out: a new recipe, a pasted link or file, what was understood of it,
// sharing.
#include "app.h"
#include "engine/share.h"
#include "mirror.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_qr.h"
#include "widget_text.h"

namespace screens {
namespace {

constexpr std::size_t kMostDrawn =
    480;  // bytes of a long paste that the canvas shows: what follows the field stays in reach

}  // namespace

void new_recipe(app::App& app) {
    kit::Kit& kit = app.kit;
    const auto choice = [&](std::string_view key, std::string_view about) {
        const bool pressed =
            widget::row(kit, key, {app.say(key), app.say(about), "", "", false, false}).pressed;
        widget::hairline(kit);
        return pressed;
    };
    if (choice("new.blank", "new.blank_about")) {
        app::close_sheet(app);
        return app::keep(app, app::blank_recipe(app));
    }
    const auto paste = [&](app::Sheet sheet) {
        app.ui.typed.clear();
        app.ui.typed_problem.clear();
        app::show(app, sheet);
    };
    if (choice("new.list", "new.list_about")) return paste(app::Sheet::paste_list);
    if (choice("new.reading", "new.reading_about")) {
        app::close_sheet(app);
        app.ui.screen = app::Screen::reading;
        app.ui.to_top = true;
        return;
    }
    if (choice("new.link", "new.link_about")) return paste(app::Sheet::from_text);
    if (choice("new.file", "new.file_about")) app::open_file();
    widget::gap(18);
    widget::heading(kit, 3, app.say("book.starters"));
    for (const auto& [stem, recipe] : app.presets.recipes) {
        if (widget::row(
                kit, stem,
                {recipe.title, app.say("count.lines", {{"n", std::to_string(recipe.formula.lines.size())}}),
                 "", "", false, false})
                .pressed) {
            app::close_sheet(app);
            return app::keep(app, recipe);
        }
        widget::hairline(kit);
    }
}

// Whatever is pasted here is told apart when it is read: a list may come into the field for a link.
void from_text(app::App& app) {
    kit::Kit& kit = app.kit;
    const bool list = app.ui.sheet == app::Sheet::paste_list;
    widget::TextSpec spec;
    spec.name = app.say(list ? "new.list_here" : "new.paste_here");
    spec.hint = list ? app.say("new.list_hint") : "";
    spec.note = true;
    spec.last = true;
    spec.most_drawn = kMostDrawn;
    if (list) {
        widget::text(kit, app.say("new.list_help"), theme::Type::small, widget::Ink::soft);
        widget::gap(8);
    }
    if (const auto typed = widget::text_field(kit, "text", app.ui.typed, spec)) {
        app.ui.typed = *typed;
        app.ui.typed_problem.clear();
    }
    if (!app.ui.typed_problem.empty()) {
        widget::gap(8);
        widget::finding_badge(kit, finding::Severity::stop, app.ui.typed_problem, "");
    }
    widget::gap(14);
    if (widget::button(kit, "read", app.say("new.read"), widget::Look::primary, kit.width))
        app::take_in(app, app.ui.typed);
}

void incoming(app::App& app) {
    kit::Kit& kit = app.kit;
    if (!app.ui.incoming) return app::close_sheet(app);
    const workspace::Recipe& recipe = *app.ui.incoming;
    widget::text(kit, app.say("incoming.about"), theme::Type::small, widget::Ink::soft);
    widget::gap(10);
    widget::heading(kit, 3, recipe.title.empty() ? app.say("recipe.untitled") : recipe.title);
    widget::gap(10);
    bool keep = false, leave = false;
    widget::Columns columns =
        widget::begin_columns(kit);  // before the lines: a long recipe must not hide them
    keep = widget::button(kit, "keep", app.say("incoming.keep"), widget::Look::primary, kit.width);
    widget::next_column(kit, columns);
    leave = widget::button(kit, "leave", app.say("incoming.leave"), widget::Look::plain, kit.width);
    widget::end_columns(kit, columns);
    widget::gap(10);
    const catalogue::Catalogue known = catalogue::with_own(app.presets.catalogue, recipe.own);
    for (std::size_t i = 0; i < recipe.formula.lines.size(); ++i) {
        const formula::Line& line = recipe.formula.lines[i];
        const std::string right =
            line.rest ? app.say("line.rest_short") : words::figure(app.words, line.percent.grid) + " %";
        ImGui::PushID(static_cast<int>(i));
        const auto* ingredient = catalogue::find_ingredient(known, line.ingredient);
        const std::string under = line.ingredient.empty()         ? app.say("line.unknown")
                                  : ingredient && ingredient->own ? app.say("incoming.own")
                                                                  : "";
        widget::row(kit, "line", {workspace::display_name(known, line), under, right, "", false, true});
        ImGui::PopID();
        widget::hairline(kit);
    }
    if (!recipe.notes.empty()) {
        widget::gap(8);
        widget::text(kit, recipe.notes, theme::Type::small);
    }
    if (!keep && !leave) return;
    workspace::Recipe taken = std::move(*app.ui.incoming);
    app.ui.incoming.reset();
    app::close_sheet(app);
    if (keep) app::keep(app, std::move(taken));
}

namespace {

// The extents that differ for this recipe, each with the length of its link; pressing one chooses it.
void extents(app::App& app, const workspace::Recipe& recipe) {
    struct Row {
        share::Extent extent;
        const char* key;
        bool differs;
    };
    const Row rows[] = {
        {share::Extent::all, "share.all", true},
        {share::Extent::without_notes, "share.without_notes", !recipe.notes.empty()},
        {share::Extent::without_notes_and_steps, "share.without_steps", !recipe.steps.empty()}};
    for (const Row& row : rows) {
        if (!row.differs) continue;
        const auto link =
            share::write(share::cut_to(row.extent, recipe), app.presets.catalogue, share::Form::shortest);
        std::string under = link ? "" : words::say(app.words, link.error());
        if (link) {
            const std::size_t bytes = app::link_address(app, *link).size();
            const char* qr = bytes <= qr::kEasyBytes   ? "share.qr_easy"
                             : bytes <= qr::kMostBytes ? "share.qr_dense"
                                                       : "share.qr_none";
            under = app.say("share.length", {{"n", std::to_string(link->size() - 1)}}) + " \xC2\xB7 " +
                    app.say(qr);
        }
        if (widget::row(app.kit, row.key,
                        {app.say(row.key), under, "", "", row.extent == app.ui.share_extent, false})
                .pressed) {
            app.ui.share_extent = row.extent;
            app.ui.again = true;
        }
        widget::hairline(app.kit);
    }
    widget::gap(4);
    widget::text(app.kit,
                 app.say("share.qr_about", {{"easy", std::to_string(qr::kEasyBytes)},
                                            {"most", std::to_string(qr::kMostBytes)}}),
                 theme::Type::small, widget::Ink::soft);
    widget::gap(12);
}

// Below what can be copied: nobody scans what they hold in their own hand.
void code(app::App& app, const std::string& title, const std::string& address) {
    const std::optional<qr::Code>& made = app::code_of(app, address);
    widget::gap(18);
    widget::heading(app.kit, 3, app.say("share.code"));
    widget::gap(6);
    if (!made) {
        widget::finding_badge(app.kit, finding::Severity::note,
                              app.say("share.code_none", {{"n", std::to_string(address.size())},
                                                          {"most", std::to_string(qr::kMostBytes)}}),
                              "");
        return;
    }
    widget::qr_code(app.kit, "code", *made,
                    app.say("share.code_of", {{"title", title.empty() ? app.say("recipe.untitled") : title},
                                              {"n", std::to_string(made->side)}}));
    widget::gap(6);
    widget::text(app.kit, app.say("share.code_about"), theme::Type::small, widget::Ink::soft);
}

}  // namespace

void share(app::App& app) {
    kit::Kit& kit = app.kit;
    const workspace::Kept* kept = workspace::find(std::as_const(app.work), app.ui.recipe);
    if (!kept) return app::close_sheet(app);
    const auto link = share::write(share::cut_to(app.ui.share_extent, kept->recipe), app.presets.catalogue,
                                   share::Form::shortest);
    extents(app, kept->recipe);
    if (!link) {
        widget::finding_badge(kit, finding::Severity::caution, words::say(app.words, link.error()), "");
    } else {
        const std::string address = app::link_address(app, *link);
        widget::text(kit, app.say("share.about"), theme::Type::body);
        widget::gap(12);
        if (!app::address_is_hosted(app)) {
            widget::finding_badge(kit, finding::Severity::note, app.say("share.no_address"), "");
            widget::gap(12);
        }
        if (app::can_share() && app::address_is_hosted(app)) {
            if (widget::button(kit, "send", app.say("share.send"), widget::Look::primary, kit.width))
                app::share(kept->recipe.title, address);
            widget::gap(8);
        }
        if (widget::button(kit, "copy", app.say("share.copy"),
                           app::can_share() ? widget::Look::plain : widget::Look::primary, kit.width))
            app::copy_text(app, address);
        widget::gap(14);
        widget::TextSpec spec;
        spec.name = app.say("share.link", {{"n", std::to_string(link->size() - 1)}});
        spec.last = true;
        widget::text_field(kit, "link", address,
                           spec);  // to be copied by hand; what is typed into it is dropped
        code(app, kept->recipe.title, address);
    }
    widget::gap(16);
    if (widget::button(kit, "file", app.say("recipe.save_file"), widget::Look::plain, kit.width))
        app::save_recipe_file(kept->recipe);
}

}  // namespace screens
