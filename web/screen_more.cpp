// More: settings of this device, the backup, saving the page, what it is, cautions, where the figures come
// from.
#include "app.h"
#include "kept_rows.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

void caution(app::App& app, std::string_view key) {
    widget::gap(8);
    widget::finding_badge(app.kit, finding::Severity::caution, app.say(key), "");
}

}  // namespace

void more(app::App& app) {
    kit::Kit& kit = app.kit;
    workspace::Settings& settings = app.work.settings;
    update_offer(app);
    widget::RowSpec reading;
    reading.title = app.say("new.reading");
    reading.under = app.say("new.reading_about");
    reading.onward = true;
    if (widget::row(kit, "reading", reading).pressed) {
        app.ui.screen = app::Screen::reading;
        app.ui.to_top = true;
    }
    widget::RowSpec records;
    records.title = app.say("nav.records");
    records.under = app.say("record_ui.about");
    records.onward = true;
    if (widget::row(kit, "records", records).pressed) {
        app.ui.screen = app::Screen::records;
        app.ui.to_top = true;
    }
    widget::gap(20);
    widget::heading(kit, 2, app.say("settings.sign"));
    widget::gap(6);
    const int sign = widget::choice(
        kit, "sign", app.say("settings.sign"),
        {app.say("settings.sign_system"), app.say("settings.sign_point"), app.say("settings.sign_comma")},
        static_cast<int>(settings.sign));
    if (sign >= 0) settings.sign = static_cast<workspace::DecimalSign>(sign);
    widget::gap(20);
    widget::heading(kit, 2, app.say("settings.theme"));
    widget::gap(6);
    const int theme = widget::choice(
        kit, "theme", app.say("settings.theme"),
        {app.say("settings.theme_system"), app.say("settings.theme_light"), app.say("settings.theme_dark")},
        static_cast<int>(settings.theme));
    if (theme >= 0) settings.theme = static_cast<workspace::Theme>(theme);
    widget::gap(24);
    scales(app);

    widget::gap(24);
    widget::heading(kit, 2, app.say("maker.title"));
    widget::RowSpec row;
    row.title = settings.maker.name.empty() ? app.say("settings.not_said") : settings.maker.name;
    row.under = settings.maker.address;
    row.onward = true;
    if (widget::row(kit, "maker", row).pressed) app::show(app, app::Sheet::maker);

    widget::gap(24);
    backup(app);

    widget::gap(24);
    widget::heading(kit, 2, app.say("settings.address"));
    widget::gap(4);
    widget::text(kit, app.say(app::from_disk() ? "settings.address_about_disk" : "settings.address_about"),
                 theme::Type::small, widget::Ink::soft);
    widget::gap(6);
    widget::TextSpec address;
    address.name = app.say("settings.address");
    address.bare = true;
    address.address = true;
    address.hint = app.say("settings.address_hint");
    address.most_bytes = 200;
    address.last = true;
    if (const auto typed = widget::text_field(kit, "address", settings.hosted_address, address))
        settings.hosted_address = *typed;

    widget::gap(24);
    widget::heading(kit, 2, app.say("settings.page"));
    widget::gap(4);
    widget::text(kit, app.say("settings.page_about"), theme::Type::small, widget::Ink::soft);
    widget::text(kit, app.say("settings.page_phone"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    if (widget::button(kit, "save_page", app.say("settings.save_page"), widget::Look::plain, kit.width))
        app::save_page();

    widget::gap(24);
    widget::heading(kit, 2, app.say("settings.cautions"));
    for (const char* key :
         {"caution.heat", "caution.cloths", "caution.oils", "caution.water", "caution.weigh"})
        caution(app, key);
    widget::gap(8);
    widget::text(kit, app.say("caution.defer"), theme::Type::small, widget::Ink::soft);

    widget::gap(24);
    widget::heading(kit, 2, app.say("settings.about"));
    widget::gap(4);
    widget::text(kit, app.say("settings.about_text"));
    widget::gap(8);
    if (widget::button(
            kit, "sources",
            app.say("settings.sources", {{"n", std::to_string(app.presets.catalogue.sources.size())}}),
            widget::Look::plain, kit.width))
        app::show(app, app::Sheet::source_list);
}

void source_list(app::App& app) {
    const auto draw = [&](const source::Entry& entry) {
        std::string under = entry.section;
        const auto add = [&](const std::string& more) {
            if (!more.empty()) under += (under.empty() ? "" : "\n") + more;
        };
        add(entry.address);
        add(entry.note);
        add(app::source_words(app, "", entry.standing));
        widget::row(app.kit, entry.key, {entry.title, under, "", "", false, true});
        widget::hairline(app.kit);
    };
    for (const source::Entry& entry : app.presets.catalogue.sources)
        kept_rows::row(app.kit, "row " + entry.key, [&] { draw(entry); });
}

}  // namespace screens
