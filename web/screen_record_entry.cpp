// What is written into a batch record: its head when it is begun, an entry or a correction, what is known of
// one line. Nothing is kept before it is said so.
#include <algorithm>
#include <utility>

#include "app.h"
#include "engine/date.h"
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

void text(app::App& app, const char* key, const std::string& name, std::string& value, bool note = false,
          std::size_t most = record::kMostShortBytes) {
    widget::gap(10);
    widget::TextSpec spec;
    spec.name = name;
    spec.note = note;
    spec.most_bytes = static_cast<int>(most);
    if (const auto typed = widget::text_field(app.kit, key, value, spec)) value = *typed;
}

void day(app::App& app, const char* key, const std::string& name, std::string& value) {
    widget::gap(10);
    if (const auto typed = day_field(app, key, name, value)) value = *typed;
}

// The kinds that stand in one group of the record.
std::vector<record::Kind> kin(record::Kind kind) {
    static const std::vector<record::Kind> kGroups[] = {
        {record::Kind::temperature, record::Kind::ph, record::Kind::yield, record::Kind::filled,
         record::Kind::remark},
        {record::Kind::sent, record::Kind::kept_back},
        {record::Kind::number, record::Kind::day, record::Kind::who}};
    for (const std::vector<record::Kind>& group : kGroups)
        if (std::find(group.begin(), group.end(), kind) != group.end()) return group;
    return {kind};
}

void which(app::App& app, record::Entry& entry) {
    const std::vector<record::Kind> kinds = kin(entry.kind);
    if (kinds.size() < 2 || !entry.corrects.empty()) return;
    std::vector<std::string> names;
    for (const record::Kind kind : kinds)
        names.push_back(app.say("record." + std::string(record::name(kind))));
    const auto at = std::find(kinds.begin(), kinds.end(), entry.kind) - kinds.begin();
    const int pressed =
        widget::choice(app.kit, "kind", app.say("record_ui.what"), names, static_cast<int>(at));
    if (pressed < 0 || pressed == at) return;
    entry.kind = kinds[static_cast<std::size_t>(pressed)];
    entry.figure.reset();
    entry.text.clear();
    app.kit.drafts.clear();
}

void figure(app::App& app, record::Entry& entry) {
    const record::Figure kind = record::figure_of(entry.kind);
    if (kind == record::Figure::none) return;
    widget::gap(10);
    widget::NumberSpec spec;
    spec.name = app.say("record." + std::string(record::name(entry.kind)));
    spec.large = true;
    spec.may_be_empty = true;
    spec.read = typed::whole;
    if (kind == record::Figure::celsius)
        spec.unit =
            "\xC2\xB0"
            "C",
        spec.read = typed::celsius;
    if (kind == record::Figure::ph) spec.read = typed::ph;
    if (kind == record::Figure::grams) spec.unit = "g", spec.read = typed::mass_or_none;
    if (kind == record::Figure::units || kind == record::Figure::units_or_none) {
        spec.name = app.say("record_ui.how_many");
        spec.hint = kind == record::Figure::units ? "" : app.say("own.not_known");
    }
    const std::string key = "figure " + std::string(record::name(entry.kind));
    if (const auto change = widget::number_field(app.kit, key, entry.figure, spec); change.changed)
        entry.figure = change.value;
}

void words_of(app::App& app, record::Entry& entry) {
    if (entry.kind == record::Kind::look) {
        text(app, "smell", app.say("record_ui.smell"), entry.smell);
        text(app, "colour", app.say("record_ui.colour"), entry.colour);
        text(app, "texture", app.say("record_ui.texture"), entry.texture);
    }
    const std::string name(record::name(entry.kind));
    const std::string key = "record_text." + name;
    if (entry.kind == record::Kind::day) return day(app, "head day", app.say(key), entry.text);
    const bool short_one = entry.kind == record::Kind::number || entry.kind == record::Kind::who ||
                           record::figure_of(entry.kind) == record::Figure::celsius ||
                           record::figure_of(entry.kind) == record::Figure::units;
    text(app, ("text " + name).c_str(), app.say(key), entry.text, !short_one,
         entry.kind == record::Kind::number ? record::kMostNumberBytes
         : short_one                        ? record::kMostShortBytes
                                            : record::kMostTextBytes);
}

// The lot that one line was taken from, out of those at hand.
void offered_lots(app::App& app, const std::string& ingredient, record::Known& known) {
    const std::vector<workspace::Choice> lots = workspace::lots_for(app.work, ingredient);
    if (lots.empty()) return;
    widget::gap(8);
    std::vector<std::string> names;
    int chosen = -1;
    for (std::size_t i = 0; i < lots.size(); ++i) {
        names.push_back(
            lots[i].best_before.empty()
                ? lots[i].number
                : app.say("record_ui.lot_until", {{"lot", lots[i].number}, {"day", lots[i].best_before}}));
        if (lots[i].number == known.lot) chosen = static_cast<int>(i);
    }
    widget::text(app.kit, app.say("record_ui.at_hand"), theme::Type::small, widget::Ink::soft);
    widget::gap(4);
    const int pressed = widget::choice(app.kit, "at hand", app.say("record_ui.at_hand"), names, chosen);
    if (pressed < 0) return;
    known.lot = lots[static_cast<std::size_t>(pressed)].number;
    known.best_before = lots[static_cast<std::size_t>(pressed)].best_before;
    app.kit.drafts.clear();
}

}  // namespace

std::optional<std::string> day_field(app::App& app, std::string_view key, const std::string& name,
                                     const std::string& value) {
    widget::TextSpec spec;
    spec.name = name;
    spec.hint = app.say("record_ui.day_hint");
    spec.most_bytes = 10;
    auto typed = widget::text_field(app.kit, key, value, spec);
    if (!value.empty() && !date::is_day(value)) {
        widget::gap(2);
        widget::text(app.kit, app.say("own.date_form"), theme::Type::small, widget::Ink::stop);
    }
    return typed;
}

void record_new(app::App& app) {
    app::RecordsIn& in = app.ui.records;
    const workspace::Recipe* recipe = app::open_recipe(app);
    if (!recipe || !app.analysis || !app.analysis->batch) return app::close_sheet(app);
    widget::text(app.kit, app.say("record_ui.new_about"), theme::Type::small, widget::Ink::soft);
    text(app, "number", app.say("record.number"), in.number, false, record::kMostNumberBytes);
    day(app, "day", app.say("record.day"), in.day);
    text(app, "who", app.say("record.who"), in.who);
    widget::gap(16);
    if (widget::button(app.kit, "write", app.say("record_ui.begin"), widget::Look::primary, app.kit.width))
        app::write_record(app);
}

void record_entry(app::App& app) {
    kit::Kit& kit = app.kit;
    const record::Record* record = workspace::find_record(app.work, app.ui.records.record);
    if (!record) return app::close_sheet(app);
    record::Entry& entry = app.ui.records.entry;
    const bool correction = !entry.corrects.empty();
    if (correction) {
        widget::text(kit, app.say("record_ui.correct_about"), theme::Type::small, widget::Ink::soft);
        widget::gap(6);
    }
    if (entry.kind == record::Kind::withdrawn || entry.kind == record::Kind::weighed) {
        entry.kind = record::Kind::withdrawn;
        entry.lines.clear();
    }
    which(app, entry);
    if (entry.kind == record::Kind::release) {
        const int yes = widget::choice(kit, "yes", app.say("record.release"),
                                       {app.say("record_ui.release_yes"), app.say("record_ui.release_no")},
                                       entry.yes ? 0 : 1);
        if (yes >= 0) entry.yes = yes == 0;
    }
    figure(app, entry);
    words_of(app, entry);
    day(app, "entry day", app.say("record_ui.day"), entry.day);
    text(app, "entry who", app.say("record_ui.who"), entry.who);
    widget::gap(16);
    if (widget::button(kit, "write",
                       app.say(entry.kind == record::Kind::withdrawn ? "record_ui.withdraw"
                               : correction                          ? "record_ui.correct"
                                                                     : "record_ui.add"),
                       widget::Look::primary, kit.width) &&
        app::all_read(app) && app::add_entry(app, entry))
        return app::close_sheet(app);
    if (!correction || entry.kind == record::Kind::withdrawn) return;
    widget::gap(8);
    if (widget::button(kit, "withdraw", app.say("record_ui.withdraw_it"), widget::Look::danger, kit.width)) {
        record::Entry withdrawn;
        withdrawn.kind = record::Kind::withdrawn;
        withdrawn.corrects = entry.corrects;
        withdrawn.who = entry.who;
        withdrawn.day = app::today();
        entry = std::move(withdrawn);
        kit.drafts.clear();
        app.ui.again = true;
    }
}

void record_line(app::App& app) {
    kit::Kit& kit = app.kit;
    const record::Record* record = workspace::find_record(app.work, app.ui.records.record);
    record::Known& known = app.ui.records.known;
    if (!record || known.line >= record->lines.size()) return app::close_sheet(app);
    const record::State state = record::state_of(*record);
    const record::Weighed line = state.lines[known.line];
    widget::text(kit, app.say("record_ui.planned", {{"g", app.grams(line.planned)}}), theme::Type::small,
                 widget::Ink::soft);
    widget::gap(8);
    widget::NumberSpec weighed;
    weighed.name = app.say("record_ui.scale_showed");
    weighed.unit = "g";
    weighed.read = typed::mass_or_none;
    weighed.may_be_empty = true;
    weighed.large = true;
    weighed.hint = app.say("own.not_known");
    std::optional<std::int64_t> grid;
    if (known.weighed) grid = known.weighed->grid;
    if (const auto change = widget::number_field(kit, "weighed", grid, weighed); change.changed) {
        known.weighed.reset();
        if (change.value) known.weighed = quantity::Mass{*change.value};
    }
    offered_lots(app, line.ingredient, known);
    text(app, "lot", app.say("record_ui.lot_printed"), known.lot);
    day(app, "best before", app.say("lot.best_before"), known.best_before);
    widget::gap(16);
    if (widget::button(kit, "write", app.say("record_ui.add"), widget::Look::primary, kit.width) &&
        app::all_read(app)) {
        record::Entry entry;  // only what is new
        entry.kind = record::Kind::weighed;
        entry.who = state.who;
        record::Known fresh = known;
        if (fresh.weighed == line.weighed) fresh.weighed.reset();
        if (fresh.lot == line.lot) fresh.lot.clear();
        if (fresh.best_before == line.best_before) fresh.best_before.clear();
        const bool anything = fresh.weighed || !fresh.lot.empty() || !fresh.best_before.empty();
        entry.lines = {fresh};
        if (!anything || app::add_entry(app, entry)) return app::close_sheet(app);
    }
    if (line.lot.empty()) return;
    widget::gap(8);
    if (widget::button(kit, "trace", app.say("lot.trace"), widget::Look::plain, kit.width))
        app::show_trace(app, line.ingredient, workspace::numbers_of(app.work, line.ingredient, line.lot));
}

}  // namespace screens
