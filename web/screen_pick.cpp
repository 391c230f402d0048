// A search among the shipped ingredients, for sheets where a written name is given its ingredient.
#include "app.h"
#include "mirror.h"
#include "screens.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"

namespace screens {

std::optional<std::string> picked(app::App& app, std::string_view chosen) {
    constexpr std::size_t kMostFound = 20;
    kit::Kit& kit = app.kit;
    widget::TextSpec spec;
    spec.name = app.say("ingredient.search");
    spec.hint = app.say("ingredient.search_hint");
    spec.search = true;
    spec.last = true;
    spec.most_bytes = formula::kMostNameBytes;
    if (const auto typed = widget::text_field(kit, "search", app.ui.search, spec)) app.ui.search = *typed;
    kit.wish_blur = mirror::take_enter(widget::id_of("search")) != 0 || kit.wish_blur;
    widget::gap(8);
    std::optional<std::string> found;
    if (app.ui.search.empty()) return found;
    ImGui::PushID("found");
    for (const catalogue::Ingredient* one :
         catalogue::search(app.presets.catalogue, app.ui.search, kMostFound)) {
        widget::RowSpec row;
        row.title = one->name;
        row.under = app.say("role." + one->role);
        row.chosen = one->id == chosen;
        if (widget::row(kit, one->id, row).pressed) found = one->id;
        widget::hairline(kit);
    }
    ImGui::PopID();
    return found;
}

}  // namespace screens
