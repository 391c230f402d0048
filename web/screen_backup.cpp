// The backup: its part of More, its reminder at the head of the book, and the sheet that shows what a backup
// would bring before anything is changed.
#include <utility>

#include "app.h"
#include "mirror.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

using workspace_backup::Choice;
using workspace_backup::Entry;
using workspace_backup::State;

std::string title_of(const app::App& app, const workspace::Kept& kept) {
    return kept.recipe.title.empty() ? app.say("recipe.untitled") : kept.recipe.title;
}

// "changed 2026-11-23, 6 ingredients, in the bin"
std::string about(const app::App& app, std::string_view key, const workspace::Kept& kept) {
    std::string said = app.say(
        key, {{"date", kept.changed.empty() ? app.say("restore.no_date") : kept.changed.substr(0, 10)},
              {"lines", app.say("count.lines", {{"n", std::to_string(kept.recipe.formula.lines.size())}})}});
    if (!kept.binned.empty()) said += " \xC2\xB7 " + app.say("restore.in_bin");
    return said;
}

void changed_entry(app::App& app, Entry& entry) {
    kit::Kit& kit = app.kit;
    const workspace::Kept* mine = workspace::find(std::as_const(app.work), entry.mine);
    if (!mine) return;
    widget::begin_card(kit);
    widget::heading(kit, 3, title_of(app, entry.theirs));
    widget::gap(4);
    widget::text(kit, about(app, "restore.here", *mine), theme::Type::small, widget::Ink::soft);
    widget::text(kit, about(app, "restore.there", entry.theirs), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    const int choice =
        widget::choice(kit, "choice", app.say("restore.choice_of", {{"title", title_of(app, entry.theirs)}}),
                       {app.say("restore.both"), app.say("restore.mine"), app.say("restore.theirs")},
                       static_cast<int>(entry.choice));
    if (choice >= 0) entry.choice = static_cast<Choice>(choice);
    widget::end_card(kit);
    widget::gap(10);
}

// "1 recipe is in no backup yet. 3 batch records, …"; "" where all is.
std::string not_in_backup(const app::App& app) {
    std::string words;
    const auto add = [&](const char* key, std::size_t n) {
        if (n > 0) words += (words.empty() ? "" : " ") + app.say(key, {{"n", std::to_string(n)}});
    };
    add("backup.not_in", workspace_backup::not_in_backup(app.work));
    add("backup.filed_not_in", workspace_backup::filed_not_in_backup(app.work));
    return words;
}

}  // namespace

void backup(app::App& app) {
    kit::Kit& kit = app.kit;
    widget::heading(kit, 2, app.say("backup.title"));
    widget::gap(4);
    widget::text(kit, app.say("backup.last", {{"when", app::last_backup_words(app)}}));
    if (const std::string words = not_in_backup(app); !words.empty())
        widget::text(kit, words, theme::Type::small,
                     app::backup_due(app) ? widget::Ink::caution : widget::Ink::soft);
    widget::gap(8);
    if (widget::button(kit, "back_up", app.say("backup.make"), widget::Look::plain, kit.width))
        app::back_up(app);
    widget::gap(8);
    if (widget::button(kit, "put_back", app.say("backup.open"), widget::Look::plain, kit.width))
        app::open_file();
    widget::gap(4);
    widget::text(kit, app.say("backup.about"), theme::Type::small, widget::Ink::soft);
    storage_standing(app);
}

void backup_reminder(app::App& app) {
    if (!app::backup_due(app)) return;
    kit::Kit& kit = app.kit;
    widget::gap(24);
    widget::finding_badge(
        kit, finding::Severity::note,
        not_in_backup(app) + " " + app.say("backup.last", {{"when", app::last_backup_words(app)}}), "");
    widget::gap(8);
    if (widget::button(kit, "back_up", app.say("backup.make"))) app::back_up(app);
    if (!app.ui.storage_lasts.value_or(false)) storage_standing(app);  // why it matters
}

void restore(app::App& app) {
    kit::Kit& kit = app.kit;
    if (!app.ui.restore) return app::close_sheet(app);
    workspace_backup::Preview& preview = *app.ui.restore;
    const auto n = [](std::size_t count) { return std::to_string(count); };
    widget::heading(
        kit, 3,
        app.say("restore.counts",
                {{"fresh", n(preview.fresh)}, {"changed", n(preview.changed)}, {"same", n(preview.same)}}));
    widget::gap(4);
    widget::text(kit,
                 preview.made.empty() ? app.say("restore.about")
                                      : app.say("restore.about_made", {{"date", preview.made.substr(0, 10)}}),
                 theme::Type::small, widget::Ink::soft);
    if (!preview.own.empty()) {
        widget::gap(4);
        widget::text(kit, app.say("restore.own", {{"n", n(preview.own.size())}}));
    }
    if (!preview.filed.empty()) {
        widget::gap(4);
        widget::text(kit, app.say("restore.filed", {{"n", n(preview.filed.size())}}));
    }
    if (!preview.damaged.empty()) {
        widget::gap(8);
        widget::finding_badge(kit, finding::Severity::caution,
                              app.say("restore.damaged", {{"n", n(preview.damaged.size())}}), "");
    }
    widget::gap(12);
    const bool brings =
        preview.fresh + preview.changed + preview.damaged.size() + preview.own.size() + preview.filed.size() >
            0 ||
        preview.settings;
    bool put = false, leave = false;
    if (brings) {  // before the lists: a long one must not hide them
        widget::Columns columns = widget::begin_columns(kit);
        put = widget::button(kit, "put", app.say("restore.put"), widget::Look::primary, kit.width);
        widget::next_column(kit, columns);
        leave = widget::button(kit, "leave", app.say("restore.leave"), widget::Look::plain, kit.width);
        widget::end_columns(kit, columns);
    } else {
        leave = widget::button(kit, "leave", app.say("restore.all_here"), widget::Look::plain, kit.width);
    }
    int index = 0;
    if (preview.changed > 0) {
        widget::gap(18);
        widget::heading(kit, 3, app.say("restore.changed"));
        widget::gap(2);
        widget::text(kit, app.say("restore.changed_about"), theme::Type::small, widget::Ink::soft);
        widget::gap(8);
        for (Entry& entry : preview.entries) {
            ImGui::PushID(++index);
            if (entry.state == State::changed) changed_entry(app, entry);
            ImGui::PopID();
        }
    }
    if (preview.fresh > 0) {
        widget::gap(18);
        widget::heading(kit, 3, app.say("restore.fresh"));
        for (const Entry& entry : preview.entries) {
            if (entry.state != State::fresh) continue;
            ImGui::PushID(++index);
            widget::row(
                kit, "fresh",
                {title_of(app, entry.theirs), about(app, "restore.row", entry.theirs), "", "", false, true});
            ImGui::PopID();
            widget::hairline(kit);
        }
    }
    if (preview.settings) {
        widget::gap(18);
        widget::heading(kit, 3, app.say("restore.settings"));
        widget::gap(2);
        widget::text(kit, app.say("restore.settings_about"), theme::Type::small, widget::Ink::soft);
        widget::gap(8);
        const int choice = widget::choice(
            kit, "settings", app.say("restore.settings"),
            {app.say("restore.settings_mine"), app.say("restore.settings_theirs")}, preview.take_settings);
        if (choice >= 0) preview.take_settings = choice == 1;
    }
    if (put) {
        app::put_back(app);
    } else if (leave) {
        app.ui.restore.reset();
        app::close_sheet(app);
    }
}

}  // namespace screens
