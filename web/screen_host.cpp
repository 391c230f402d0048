// What the browser offers around the page, where it matters: a newer version at the head of the book and of
// More, and how long what is stored lasts beside the backup.
#include "app.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {

void update_offer(app::App& app) {
    if (!app.ui.update_ready) return;
    widget::finding_badge(app.kit, finding::Severity::note, app.say("page.update"), "");
    widget::gap(8);
    if (widget::button(app.kit, "take_update", app.say("page.update_take"))) app::take_update(app);
    widget::gap(16);
}

void storage_standing(app::App& app) {
    if (app::from_disk()) return;
    const auto say = [&](std::string_view key) {
        widget::gap(8);
        widget::text(app.kit, app.say(key), theme::Type::small, widget::Ink::soft);
    };
    if (app.ui.storage_lasts) say(*app.ui.storage_lasts ? "storage.lasts" : "storage.may_go");
    if (!app::installed()) say("storage.seven_days");
}

}  // namespace screens
