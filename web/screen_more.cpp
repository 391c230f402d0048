// More: settings of this device, the backup, saving the page, what it is, cautions, where the figures come
// from.
#include "app.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

void scales(app::App& app, workspace::Settings& settings) {
    kit::Kit& kit = app.kit;
    widget::heading(kit, 2, app.say("settings.scales"));
    widget::gap(4);
    widget::text(kit, app.say("settings.scales_about"), theme::Type::small, widget::Ink::soft);
    std::optional<std::size_t> removed;
    for (std::size_t i = 0; i < settings.scales.size(); ++i) {
        workspace::Scale& scale = settings.scales[i];
        ImGui::PushID(static_cast<int>(i));
        widget::gap(10);
        widget::begin_card(kit);
        const std::string n = std::to_string(i + 1);
        widget::TextSpec name;
        name.name = app.say("settings.scale_name", {{"n", n}});
        name.most_bytes = 40;
        if (const auto typed = widget::text_field(kit, "name", scale.name, name)) scale.name = *typed;
        widget::gap(8);
        widget::NumberSpec division;
        division.name = app.say("settings.scale_division", {{"n", n}});
        division.unit = "g";
        division.read = typed::mass;
        if (const auto change = widget::number_field(kit, "division", scale.division.grid, division);
            change.value)
            scale.division = quantity::Mass{*change.value};
        widget::gap(8);
        widget::NumberSpec capacity;
        capacity.name = app.say("settings.scale_capacity", {{"n", n}});
        capacity.unit = "g";
        capacity.read = typed::mass_or_none;
        capacity.may_be_empty = true;
        capacity.hint = app.say("settings.not_said");
        std::optional<std::int64_t> carries;
        if (scale.capacity.grid > 0) carries = scale.capacity.grid;
        if (const auto change = widget::number_field(kit, "capacity", carries, capacity); change.changed)
            scale.capacity = quantity::Mass{change.value.value_or(0)};
        if (settings.scales.size() > 1) {
            widget::gap(4);
            if (widget::button(kit, "remove", app.say("settings.scale_remove", {{"n", n}}),
                               widget::Look::quiet))
                removed = i;
        }
        widget::end_card(kit);
        ImGui::PopID();
    }
    if (removed) {
        settings.scales.erase(settings.scales.begin() + static_cast<std::ptrdiff_t>(*removed));
        kit.drafts.clear();  // they belong to scales by place
    }
    widget::gap(10);
    if (settings.scales.size() < 8 && widget::button(kit, "add_scale", app.say("settings.scale_add")))
        settings.scales.push_back({"", {1000}, {}});
}

void caution(app::App& app, std::string_view key) {
    widget::gap(8);
    widget::finding_badge(app.kit, finding::Severity::caution, app.say(key), "");
}

}  // namespace

void more(app::App& app) {
    kit::Kit& kit = app.kit;
    workspace::Settings& settings = app.work.settings;
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
    scales(app, settings);

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
    address.hint = app.say("settings.address_hint");
    address.most_bytes = 200;
    address.last = true;
    if (const auto typed = widget::text_field(kit, "address", settings.hosted_address, address))
        settings.hosted_address = *typed;

    widget::gap(24);
    widget::heading(kit, 2, app.say("settings.page"));
    widget::gap(4);
    widget::text(kit, app.say("settings.page_about"), theme::Type::small, widget::Ink::soft);
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
    for (const source::Entry& entry : app.presets.catalogue.sources) {
        std::string under = entry.section;
        const auto add = [&](const std::string& more) {
            if (!more.empty()) under += (under.empty() ? "" : "\n") + more;
        };
        add(entry.address);
        add(entry.note);
        add(app::source_words(app, "", entry.standing));
        widget::row(app.kit, entry.key, {entry.title, under, "", "", false, true});
        widget::hairline(app.kit);
    }
}

}  // namespace screens
