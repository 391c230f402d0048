// What a browser offers around the page: a newer version of it, and a promise to keep what is stored.
#include "app.h"
#include "platform.h"

namespace app {

bool installed() {
    return platform::window().installed;
}

void ask_to_keep(App& app) {
    if (from_disk() || app.ui.storage_lasts.value_or(false)) return;
    platform::ask_to_keep();
}

// Loading anew loses what is in no record yet: a number that cannot be read, something looked at and not
// kept.
void take_update(App& app) {
    const bool unfinished = !app.kit.drafts.empty() || app.ui.incoming || app.ui.list_in || app.ui.restore;
    if (unfinished) return tell(app, app.say("page.update_unfinished"), true);
    app.ui.take_update = 2;  // this step writes, the next one knows whether that went well
    platform::request_frame();
}

void load_update(App& app) {
    if (app.keeping.trouble() == keeping::Trouble::none) return platform::take_update();
    tell(app, app.say("page.update_unkept"), true);
    platform::request_frame();  // this step has drawn already
}

}  // namespace app
