// Everything as one file, out and in. What a backup holds and what putting it back does is the engine's.
#include <utility>

#include "app.h"
#include "engine/workspace_backup.h"
#include "platform.h"

namespace app {

void back_up(App& app) {
    std::vector<std::string> damaged;
    for (const keeping::Damaged& one : app.keeping.damaged())
        damaged.push_back(one.text);
    const std::string now = platform::now_utc();
    platform::save_file("tarebench-backup-" + platform::today() + ".json", "application/json",
                        store::write_backup(app.work, damaged, now));
    app.work.settings.last_backup = now;
    tell(app, app.say("backup.done", {{"n", std::to_string(app.work.recipes.size())}}));
}

void take_backup(App& app, std::string_view text) {
    auto content = store::read_backup(text);
    if (!content) {
        std::string problem = words::say(app.words, content.error());
        if (app.ui.sheet == Sheet::from_text)
            app.ui.typed_problem = std::move(problem);
        else
            tell(app, std::move(problem), true);
        app.ui.again = true;
        return;
    }
    app.ui.restore = workspace_backup::preview(app.work, std::move(content).value());
    show(app, Sheet::restore);
}

void put_back(App& app) {
    if (!app.ui.restore) return;
    const workspace_backup::Preview preview = std::move(*app.ui.restore);
    app.ui.restore.reset();
    std::vector<std::string> ids;
    for (std::size_t i = 0; i < preview.entries.size(); ++i)
        ids.push_back(new_id());
    const std::size_t came = workspace_backup::put_back(app.work, preview, ids, app.say("restore.tag"));
    const std::size_t own = workspace_backup::put_back_own(app.work, preview, app.presets.catalogue);
    const std::size_t filed = workspace_backup::put_back_filed(app.work, preview);
    refresh_mine(app);
    for (const std::string& damaged : preview.damaged)
        app.keeping.keep_aside(damaged);
    close_sheet(app);
    app.kit.drafts.clear();
    app.ui.screen = Screen::book;
    app.ui.to_top = true;
    if (came == 0 && own > 0) return tell(app, app.say("restore.own_done", {{"n", std::to_string(own)}}));
    if (came == 0 && filed > 0)
        return tell(app, app.say("restore.filed_done", {{"n", std::to_string(filed)}}));
    tell(app, came > 0 ? app.say("restore.done", {{"n", std::to_string(came)}}) : app.say("restore.nothing"));
}

std::string last_backup_words(const App& app) {
    const std::string& last = app.work.settings.last_backup;
    const auto days = workspace_backup::days_between(last, platform::now_utc());
    if (last.empty() || !days) return app.say("backup.never");
    if (*days == 0) return app.say("backup.today");
    return app.say("backup.days_ago", {{"n", std::to_string(*days)}});
}

bool backup_due(const App& app) {
    return workspace_backup::due(app.work, platform::now_utc());
}

}  // namespace app
