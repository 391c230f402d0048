// The bench of this device: its scales and its jugs.
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

constexpr int kMostNameBytes = 40;

void name_field(app::App& app, const std::string& label, std::string& value) {
    widget::TextSpec name;
    name.name = label;
    name.most_bytes = kMostNameBytes;
    if (const auto typed = widget::text_field(app.kit, "name", value, name)) value = *typed;
}

void mass_field(app::App& app, const char* key, const std::string& label, quantity::Mass& value,
                bool may_be_nothing) {
    widget::NumberSpec spec;
    spec.name = label;
    spec.unit = "g";
    spec.read = may_be_nothing ? typed::mass_or_none : typed::mass;
    spec.may_be_empty = may_be_nothing;
    if (may_be_nothing) spec.hint = app.say("settings.not_said");
    std::optional<std::int64_t> shown = value.grid;
    if (may_be_nothing && value.grid <= 0) shown.reset();
    if (const auto change = widget::number_field(app.kit, key, shown, spec);
        may_be_nothing ? change.changed : change.value.has_value())
        value = quantity::Mass{change.value.value_or(0)};
}

void scale_list(app::App& app, workspace::Settings& settings) {
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
        name_field(app, app.say("settings.scale_name", {{"n", n}}), scale.name);
        widget::gap(8);
        mass_field(app, "division", app.say("settings.scale_division", {{"n", n}}), scale.division, false);
        widget::gap(8);
        mass_field(app, "capacity", app.say("settings.scale_capacity", {{"n", n}}), scale.capacity, true);
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
    if (settings.scales.size() < workspace::kMostScales &&
        widget::button(kit, "add_scale", app.say("settings.scale_add")))
        settings.scales.push_back({"", {1000}, {}});
}

void jug_list(app::App& app, workspace::Settings& settings) {
    kit::Kit& kit = app.kit;
    widget::heading(kit, 2, app.say("settings.jugs"));
    widget::gap(4);
    widget::text(kit, app.say("settings.jugs_about"), theme::Type::small, widget::Ink::soft);
    std::optional<std::size_t> removed;
    for (std::size_t i = 0; i < settings.jugs.size(); ++i) {
        ImGui::PushID(static_cast<int>(i));
        ImGui::PushID("jug");
        widget::gap(10);
        widget::begin_card(kit);
        const std::string n = std::to_string(i + 1);
        name_field(app, app.say("settings.jug_name", {{"n", n}}), settings.jugs[i].name);
        widget::gap(8);
        mass_field(app, "empty", app.say("settings.jug_empty", {{"n", n}}), settings.jugs[i].empty, true);
        widget::gap(4);
        if (widget::button(kit, "remove", app.say("settings.jug_remove", {{"n", n}}), widget::Look::quiet))
            removed = i;
        widget::end_card(kit);
        ImGui::PopID();
        ImGui::PopID();
    }
    if (removed) {
        settings.jugs.erase(settings.jugs.begin() + static_cast<std::ptrdiff_t>(*removed));
        if (settings.jug == removed)
            settings.jug.reset();
        else if (settings.jug && *settings.jug > *removed)
            settings.jug = *settings.jug - 1;
        kit.drafts.clear();
    }
    widget::gap(10);
    if (settings.jugs.size() < workspace::kMostJugs &&
        widget::button(kit, "add_jug", app.say("settings.jug_add")))
        settings.jugs.push_back(
            {app.say("settings.jug_n", {{"n", std::to_string(settings.jugs.size() + 1)}}), {}});
}

}  // namespace

void scales(app::App& app) {
    scale_list(app, app.work.settings);
    widget::gap(24);
    jug_list(app, app.work.settings);
}

}  // namespace screens
