// Lots: those of one ingredient, on its card; one of them, added or corrected; and which batches a lot went
// into.
#include <algorithm>
#include <utility>

#include "app.h"
#include "engine/money_said.h"
#include "engine/workspace_edits.h"
#include "engine/workspace_lots.h"
#include "engine/workspace_records.h"
#include "screens.h"
#include "typed.h"
#include "widget_button.h"
#include "widget_field.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

void add_part(std::string& text, const std::string& more, const char* between = " \xC2\xB7 ") {
    if (!more.empty()) text += (text.empty() ? "" : between) + more;
}

std::string under(app::App& app, const lot::Lot& lot, const std::string& id) {
    std::string words;
    const auto day = [&](const char* key, const std::string& said) {
        if (!said.empty()) add_part(words, app.say(key, {{"day", said}}));
    };
    day("lot.used_up_on", lot.used_up);
    day("record_ui.best_before", lot.best_before);
    day("lot.opened_on", lot.opened);
    if (lot.left && lot.used_up.empty()) {
        const workspace::OnShelf* now = workspace::find(app::shelf(app), id);
        const bool taken = now && now->taken.grid > 0;
        add_part(words, app.say(taken ? "lot.left_now" : "lot.left_on",
                                {{"g", app.grams(*lot.left)},
                                 {"day", lot.counted},
                                 {"left", taken ? app.grams(*now->left()) : ""},
                                 {"taken", taken ? app.grams(now->taken) : ""}}));
    }
    add_part(words, lot.supplier);
    return words;
}

std::string ingredient_name(const app::App& app, const std::string& id) {
    for (const catalogue::Ingredient& mine : app.mine)
        if (mine.id == id && !mine.name.empty()) return mine.name;
    const catalogue::Ingredient* known = catalogue::find_ingredient(app.presets.catalogue, id);
    if (!known) known = catalogue::find_ingredient(app.known(), id);
    return known && !known->name.empty() ? known->name : id;
}

// Where the units of one batch went, a line each.
std::string went(const app::App& app, const record::Record& record, const record::State& state) {
    std::string words;
    for (const std::size_t i : state.holds) {
        const record::Entry& entry = record.entries[i];
        const bool sent = entry.kind == record::Kind::sent;
        if (!sent && entry.kind != record::Kind::kept_back) continue;
        std::string one =
            app.say("record_ui.units", {{"n", std::to_string(entry.figure.value_or(0) / decimal::kOne)}});
        one += sent ? " \xE2\x86\x92 " + entry.text : ", " + app.say("record.kept_back");
        if (!sent) add_part(one, entry.text, ": ");
        add_part(one, entry.day, ", ");
        add_part(words, one, "\n");
    }
    if (state.left.value_or(0) > 0)
        add_part(words,
                 app.say("record_ui.left",
                         {{"left", std::to_string(*state.left)}, {"of", std::to_string(*state.filled)}}),
                 "\n");
    return words.empty() ? app.say("lot.whereabouts_unknown") : words;
}

}  // namespace

void lots_of_card(app::App& app, std::string_view ingredient) {
    kit::Kit& kit = app.kit;
    const std::string id(ingredient);
    widget::gap(18);
    widget::heading(kit, 3, app.say("lot.on_the_shelf"));
    std::string pressed;
    for (const workspace::Filed* filed : workspace::lots_of(app.work, id)) {
        const auto& lot = std::get<lot::Lot>(filed->what);
        widget::RowSpec row;
        row.title = lot.number;
        row.under = under(app, lot, filed->id);
        row.onward = true;
        if (widget::row(kit, "lot " + filed->id, row).pressed) pressed = filed->id;
        widget::hairline(kit);
    }
    widget::gap(6);
    widget::NumberSpec low;
    low.name = app.say("lot.low_under");
    low.unit = "g";
    low.read = typed::mass_or_none;
    low.may_be_empty = true;
    low.hint = app.say("settings.not_said");
    std::optional<std::int64_t> under_g;
    for (const lot::Threshold& one : app.work.settings.low)
        if (one.ingredient == id) under_g = one.grams.grid;
    if (const auto change = widget::number_field(kit, "low", under_g, low); change.changed)
        app::edit(app, workspace::set_low(app.work.settings, id, {change.value.value_or(0)}));
    widget::gap(8);
    const price::Pack* pack = price::pack_of(app.work.settings.prices, price::Of::ingredient, id);
    widget::RowSpec paid;
    paid.title = app.say("paid.title");
    paid.right = pack ? money::say(app.words, pack->paid + pack->delivery, pack->currency) : "";
    paid.onward = true;
    if (widget::row(kit, "paid", paid).pressed) return app::show_packs(app, price::Of::ingredient, id);
    widget::gap(8);
    if (widget::button(kit, "lot_add", app.say("lot.add"), widget::Look::plain, kit.width))
        return app::show_lot(app, id, "");
    if (!pressed.empty()) app::show_lot(app, id, pressed);
}

void lot(app::App& app) {
    kit::Kit& kit = app.kit;
    app::RecordsIn& in = app.ui.records;
    lot::Lot& lot = in.lot_in;
    if (lot.ingredient.empty()) return app::close_sheet(app);
    const auto text = [&](const char* key, std::string& value) {
        widget::gap(10);
        widget::TextSpec spec;
        spec.name = app.say(key);
        spec.most_bytes = static_cast<int>(lot::kMostTextBytes);
        if (const auto typed = widget::text_field(kit, key, value, spec)) value = *typed;
    };
    const auto day = [&](const char* key, std::string& value) {
        widget::gap(10);
        if (const auto typed = day_field(app, key, app.say(key), value)) value = *typed;
    };
    widget::text(kit, ingredient_name(app, lot.ingredient), theme::Type::strong);
    text("lot.number", lot.number);
    day("lot.best_before", lot.best_before);
    day("lot.opened", lot.opened);
    widget::gap(10);
    widget::NumberSpec opened;
    opened.name = app.say("lot.opened_months");
    opened.read = typed::whole;
    opened.may_be_empty = true;
    opened.hint = app.say("own.not_known");
    std::optional<std::int64_t> months = lot.opened_months;
    if (months) *months *= decimal::kOne;
    if (const auto change = widget::number_field(kit, "opened_months", months, opened); change.changed) {
        lot.opened_months.reset();
        if (change.value) lot.opened_months = *change.value / decimal::kOne;
    }
    text("lot.supplier", lot.supplier);
    widget::gap(10);
    widget::NumberSpec left;
    left.name = app.say("lot.left");
    left.unit = "g";
    left.read = typed::mass_or_none;
    left.may_be_empty = true;
    left.hint = app.say("own.not_known");
    std::optional<std::int64_t> grid;
    if (lot.left) grid = lot.left->grid;
    if (const auto change = widget::number_field(kit, "left", grid, left); change.changed) {
        lot.left.reset();
        if (change.value) lot.left = quantity::Mass{*change.value};
        lot.counted = change.value ? app::today() : "";
    }
    widget::gap(2);
    widget::text(kit, app.say("lot.left_about"), theme::Type::small, widget::Ink::soft);
    widget::gap(16);
    bool keep = widget::button(kit, "keep", app.say(in.lot.empty() ? "lot.add" : "lot.keep"),
                               widget::Look::primary, kit.width);
    if (!in.lot.empty()) {
        widget::gap(8);
        const bool gone = !lot.used_up.empty();
        if (widget::button(kit, "used up", app.say(gone ? "lot.not_used_up" : "lot.use_up"),
                           widget::Look::plain, kit.width)) {
            lot.used_up = gone ? "" : app::today();
            keep = true;
        }
        widget::gap(8);
        if (widget::button(kit, "trace", app.say("lot.trace"), widget::Look::plain, kit.width))
            return app::show_trace(app, lot.ingredient,
                                   workspace::numbers_of(app.work, lot.ingredient, lot.number));
    }
    if (keep && app::all_read(app)) app::keep_lot(app);
}

void trace(app::App& app) {
    kit::Kit& kit = app.kit;
    const app::RecordsIn& in = app.ui.records;
    if (in.lot_numbers.empty()) return app::close_sheet(app);
    std::string numbers;
    for (const std::string& number : in.lot_numbers)
        add_part(numbers, number, ", ");
    widget::heading(kit, 3, ingredient_name(app, in.lot_of));
    widget::text(kit, app.say("record_ui.lot", {{"lot", numbers}}));
    const auto filed = workspace::records(app.work);
    const auto uses = workspace::batches_with(app.work, in.lot_of, in.lot_numbers);
    widget::gap(4);
    widget::text(kit, app.say("lot.batches", {{"n", std::to_string(uses.size())}}), theme::Type::small,
                 widget::Ink::soft);
    std::string pressed, copied;
    for (const record::Use& use : uses) {
        const auto& record = std::get<record::Record>(filed[use.record]->what);
        const record::State state = record::state_of(record);
        widget::RowSpec row;
        row.title = state.number + " \xC2\xB7 " + record.title;
        std::string first = state.day;
        add_part(first, use.grams ? app.say("lot.took", {{"g", app.grams(*use.grams)}})
                                  : app.say("lot.took_unknown"));
        row.under = first;
        if (!use.by_way_of.empty())
            add_part(row.under, app.say("lot.by_way_of", {{"number", use.by_way_of}}), "\n");
        if (use.other_ingredient) add_part(row.under, app.say("lot.other_ingredient"), "\n");
        add_part(row.under, went(app, record, state), "\n");
        row.onward = true;
        if (widget::row(kit, filed[use.record]->id, row).pressed) pressed = filed[use.record]->id;
        widget::hairline(kit);
        add_part(copied, row.title + "\n" + row.under, "\n\n");
    }
    widget::gap(6);
    widget::text(kit, app.say("lot.trace_about"), theme::Type::small, widget::Ink::soft);
    if (!uses.empty()) {
        widget::gap(10);
        if (widget::button(kit, "copy", app.say("lot.copy"), widget::Look::plain, kit.width))
            app::copy_text(app, ingredient_name(app, in.lot_of) + ", " +
                                    app.say("record_ui.lot", {{"lot", numbers}}) + "\n\n" + copied);
    }
    if (pressed.empty()) return;
    app::close_sheet(app);
    app::show_record(app, pressed);
}

}  // namespace screens
