// Batch records of this device: searched, each opened by a press; and the pattern of batch numbers.
#include "app.h"
#include "engine/record_number.h"
#include "engine/workspace_records.h"
#include "kept_rows.h"
#include "mirror.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

// "2026-11-26 · released · 4 of 12 units left"
std::string under(const app::App& app, const record::State& state) {
    std::string words = state.day + " \xC2\xB7 " +
                        app.say(!state.released   ? "record_ui.undecided"
                                : *state.released ? "record_ui.released"
                                                  : "record_ui.held");
    if (state.left)
        words += " \xC2\xB7 " + app.say("record_ui.left", {{"left", std::to_string(*state.left)},
                                                           {"of", std::to_string(*state.filled)}});
    return words;
}

void numbers(app::App& app) {
    kit::Kit& kit = app.kit;
    widget::gap(28);
    widget::heading(kit, 2, app.say("record_ui.numbers"));
    widget::gap(4);
    widget::text(kit, app.say("record_ui.numbers_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(8);
    workspace::Settings& settings = app.work.settings;
    const std::string shown =
        settings.batch_pattern.empty() ? std::string(record::kUsualPattern) : settings.batch_pattern;
    widget::TextSpec spec;
    spec.name = app.say("record_ui.pattern");
    spec.last = true;
    spec.most_bytes = static_cast<int>(record::kMostPatternBytes);
    if (const auto typed = widget::text_field(kit, "pattern", shown, spec)) settings.batch_pattern = *typed;
    widget::gap(8);
    std::vector<std::string> places;
    for (const record::Place place : record::kPlaces)
        places.emplace_back(record::written(place));
    const int pressed = widget::choice(kit, "place", app.say("record_ui.add_place"), places, -1);
    if (pressed >= 0 && shown.size() + 20 <= record::kMostPatternBytes) {
        settings.batch_pattern = shown + places[static_cast<std::size_t>(pressed)];
        kit.drafts.clear();
    }
    widget::gap(6);
    const workspace::Recipe* recipe = app::open_recipe(app);
    widget::text(kit, app.say("record_ui.next_number",
                              {{"number", workspace::next_batch_number(app.work, app::today(),
                                                                       recipe ? recipe->title : "")}}));
}

}  // namespace

void records(app::App& app) {
    kit::Kit& kit = app.kit;
    const std::size_t all = workspace::records(app.work).size();
    if (all == 0) {
        widget::text(kit, app.say("record_ui.none"));
        widget::gap(4);
        widget::text(kit, app.say("record_ui.none_about"), theme::Type::small, widget::Ink::soft);
    } else {
        widget::TextSpec search;
        search.name = app.say("record_ui.search");
        search.hint = app.say("record_ui.search_hint");
        search.search = true;
        search.last = true;
        search.most_bytes = 80;
        if (const auto typed = widget::text_field(kit, "search", app.ui.records.search, search))
            app.ui.records.search = *typed;
        kit.wish_blur = mirror::take_enter(widget::id_of("search")) != 0 || kit.wish_blur;
        widget::gap(8);
    }
    std::string pressed;
    const auto found = workspace::records_found(app.work, app.ui.records.search);
    if (all > 0 && found.empty()) widget::text(kit, app.say("record_ui.not_found"));
    for (const workspace::Filed* filed : found)
        kept_rows::row(kit, "row " + filed->id, [&] {
            const auto& record = std::get<record::Record>(filed->what);
            const record::State state = record::state_of(record);
            widget::RowSpec row;
            row.title = state.number + " \xC2\xB7 " +
                        (record.title.empty() ? app.say("recipe.untitled") : record.title);
            row.under = under(app, state);
            row.onward = true;
            if (widget::row(kit, filed->id, row).pressed) pressed = filed->id;
            widget::hairline(kit);
        });
    numbers(app);
    if (!pressed.empty()) app::show_record(app, pressed);
}

}  // namespace screens
