// One batch record: what it was, what was weighed, what happened since, group by group; what a record is
// asked for and this one has not. Nothing is changed here: a press adds an entry, which may correct another.
#include <algorithm>
#include <utility>

#include "app.h"
#include "engine/workspace_lots.h"
#include "engine/workspace_records.h"
#include "engine/workspace_versions.h"
#include "kept_rows.h"
#include "screens.h"
#include "widget_button.h"
#include "widget_list.h"
#include "widget_press.h"
#include "widget_text.h"

namespace screens {
namespace {

struct Group {
    const char* title;
    const char* add;
    record::Kind first;
    std::vector<record::Kind> kinds;
};

void record_section(app::App& app, std::string_view key) {
    widget::gap(24);
    widget::heading(app.kit, 2, app.say(key));
}
void soft_words(app::App& app, const std::string& words) {
    widget::text(app.kit, words, theme::Type::small, widget::Ink::soft);
}
void add_to(std::string& text, const std::string& more, const char* between = " \xC2\xB7 ") {
    if (!more.empty()) text += (text.empty() ? "" : between) + more;
}

std::string number_words(const app::App& app, std::int64_t count) {
    return app.say("record_ui.units", {{"n", std::to_string(count)}});
}

// "72.5 °C", "4 units"; "" for a kind without a figure.
std::string figure_words(const app::App& app, const record::Entry& entry) {
    if (!entry.figure) return "";
    switch (record::figure_of(entry.kind)) {
        case record::Figure::celsius:
            return app.say("card.celsius", {{"range", words::figure(app.words, *entry.figure)}});
        case record::Figure::ph:
            return words::figure(app.words, *entry.figure);
        case record::Figure::grams:
            return app.grams({*entry.figure});
        default:
            return number_words(app, *entry.figure / decimal::kOne);
    }
}

std::string kind_words(const app::App& app, record::Kind kind) {
    return app.say("record." + std::string(record::name(kind)));
}

// What an entry says of lines: "Beeswax 20.1 g, lot BW-7".
std::string lines_words(const app::App& app, const record::Record& record, const record::Entry& entry) {
    std::string all;
    for (const record::Known& known : entry.lines) {
        if (known.line >= record.lines.size()) continue;
        std::string one = record.lines[known.line].name;
        if (known.weighed) one += " " + app.grams(*known.weighed);
        if (!known.lot.empty()) add_to(one, app.say("record_ui.lot", {{"lot", known.lot}}), ", ");
        if (!known.best_before.empty())
            add_to(one, app.say("record_ui.best_before", {{"day", known.best_before}}), ", ");
        add_to(all, one, "\n");
    }
    return all;
}

bool entry_row(app::App& app, const record::Record& record, const record::Entry& entry,
               const std::string& remark) {
    widget::RowSpec row;
    row.title = kind_words(app, entry.kind);
    if (entry.kind == record::Kind::release)
        row.title = app.say(entry.yes ? "record_ui.released" : "record_ui.held");
    row.right = figure_words(app, entry);
    add_to(row.under, entry.text, "\n");
    for (const auto& [key, text] :
         {std::pair("record_ui.smell_is", &entry.smell), std::pair("record_ui.colour_is", &entry.colour),
          std::pair("record_ui.texture_is", &entry.texture)})
        if (!text->empty()) add_to(row.under, app.say(key, {{"text", *text}}), "\n");
    add_to(row.under, lines_words(app, record, entry), "\n");
    std::string when = entry.day;
    add_to(when, entry.who);
    add_to(row.under, when, "\n");
    add_to(row.under, remark, "\n");
    row.plain = !remark.empty() || entry.kind == record::Kind::withdrawn;
    row.onward = !row.plain && row.right.empty();
    const bool pressed = widget::row(app.kit, "entry " + entry.id, row).pressed;
    widget::hairline(app.kit);
    return pressed;
}

void head(app::App& app, const record::Record& record, const record::State& state) {
    kit::Kit& kit = app.kit;
    if (widget::button(kit, "all", app.say("record_ui.all"), widget::Look::quiet)) {
        app.ui.screen = app::Screen::records;
        app.ui.again = true;
    }
    widget::gap(4);
    widget::heading(kit, 2, record.title.empty() ? app.say("recipe.untitled") : record.title);
    widget::text(kit, state.who.empty()
                          ? app.say("record_ui.made_on", {{"day", state.day}})
                          : app.say("record_ui.made_by", {{"day", state.day}, {"who", state.who}}));
    std::string decided = app.say("record_ui.undecided_long");
    for (const std::size_t i : state.holds)
        if (const record::Entry& entry = record.entries[i]; entry.kind == record::Kind::release)
            decided = app.say(entry.yes ? "record_ui.released_for" : "record_ui.held_for",
                              {{"reason", entry.text}});
    widget::text(kit, decided);
    std::string units;
    if (state.filled)
        units = app.say("record_ui.whereabouts", {{"filled", number_words(app, *state.filled)},
                                                  {"sent", std::to_string(state.sent.value_or(0))},
                                                  {"kept", std::to_string(state.kept_back.value_or(0))},
                                                  {"left", std::to_string(state.left.value_or(0))}});
    if (!units.empty()) widget::text(kit, units);
    if (state.left.value_or(0) < 0) {
        widget::gap(6);
        widget::finding_badge(kit, finding::Severity::caution, app.say("record_ui.more_than_filled"), "");
    }
}

void missing(app::App& app, const record::Record& record, const record::State& state) {
    const std::vector<record::Asked> asked = record::missing(record, state);
    widget::gap(10);
    if (asked.empty())
        return widget::text(app.kit, app.say("record_ui.complete"), theme::Type::small, widget::Ink::soft);
    std::string names;
    for (const record::Asked one : asked) {
        const auto n =
            std::count_if(state.lines.begin(), state.lines.end(), [&](const record::Weighed& line) {
                return one == record::Asked::lots ? line.lot.empty() : !line.weighed;
            });
        add_to(names, app.say("record_ask." + std::string(record::name(one)), {{"n", std::to_string(n)}}),
               ", ");
    }
    widget::finding_badge(app.kit, finding::Severity::note, app.say("record_ui.missing", {{"what", names}}),
                          app.say("record_ui.missing_source",
                                  {{"source", app::source_words(app, "memory", source::Standing::memory)}}));
}

// Those of which a batch has one lot at hand and none is written.
std::vector<record::Known> lots_at_hand(const app::App& app, const record::State& state) {
    std::vector<record::Known> known;
    for (std::size_t i = 0; i < state.lines.size(); ++i)
        if (state.lines[i].lot.empty())
            if (const auto lot = workspace::only_lot(app.work, state.lines[i].ingredient))
                known.push_back({i, std::nullopt, lot->number, lot->best_before});
    return known;
}

void lines(app::App& app, const record::State& state) {
    kit::Kit& kit = app.kit;
    record_section(app, "record_ui.weighed");
    std::optional<std::size_t> pressed;
    std::vector<record::Known> as_planned;
    const auto takings = workspace::takings(app.work, app::shelf(app), app.ui.records.record);
    for (std::size_t i = 0; i < state.lines.size(); ++i) {
        const record::Weighed& line = state.lines[i];
        widget::RowSpec row;
        row.title = line.name;
        row.under = line.after && line.planned.grid == 0
                        ? app.say("record_ui.after")
                        : app.say("record_ui.planned", {{"g", app.grams(line.planned)}});
        add_to(row.under, line.lot.empty() ? app.say("record_ui.lot_unknown")
                                           : app.say("record_ui.lot", {{"lot", line.lot}}));
        if (!line.best_before.empty())
            add_to(row.under, app.say("record_ui.best_before", {{"day", line.best_before}}));
        if (i < takings.size()) add_to(row.under, app::taken_words(app, takings[i]));
        row.right = line.weighed ? app.grams(*line.weighed) : app.say("own.not_known");
        if (widget::row(kit, "line " + std::to_string(i), row).pressed) pressed = i;
        widget::hairline(kit);
        if (!line.weighed && line.planned.grid > 0) as_planned.push_back({i, line.planned, "", ""});
    }
    widget::gap(4);
    if (state.total) widget::text(kit, app.say("record_ui.total", {{"g", app.grams(*state.total)}}));
    if (state.loss)
        widget::text(kit, app.say("record_ui.loss",
                                  {{"percent", words::figure_fixed(app.words, state.loss->grid, 1)}}));
    record::Entry entry;
    entry.kind = record::Kind::weighed;
    entry.who = state.who;
    if (!as_planned.empty()) {
        widget::gap(8);
        if (widget::button(kit, "planned", app.say("record_ui.as_planned"), widget::Look::plain, kit.width)) {
            entry.lines = as_planned;
            app::add_entry(app, entry);
        }
    }
    if (std::vector<record::Known> known = lots_at_hand(app, state); !known.empty()) {
        widget::gap(8);
        if (widget::button(kit, "lots",
                           app.say("record_ui.lots_at_hand", {{"n", std::to_string(known.size())}}),
                           widget::Look::plain, kit.width)) {
            entry.lines = std::move(known);
            app::add_entry(app, entry);
        }
    }
    if (!pressed) return;
    app.ui.records.known = {*pressed, state.lines[*pressed].weighed, state.lines[*pressed].lot,
                            state.lines[*pressed].best_before};
    kit.drafts.clear();
    app::show(app, app::Sheet::record_line);
}

void group(app::App& app, const record::Record& record, const record::State& state, const Group& of) {
    record_section(app, of.title);
    const record::Entry* pressed = nullptr;
    for (const std::size_t i : state.holds) {
        const record::Entry& entry = record.entries[i];
        if (std::find(of.kinds.begin(), of.kinds.end(), entry.kind) == of.kinds.end()) continue;
        kept_rows::row(app.kit, "row " + entry.id, [&] {
            if (entry_row(app, record, entry, "")) pressed = &entry;
        });
    }
    widget::gap(6);
    if (widget::button(app.kit, of.add, app.say(of.add), widget::Look::plain, app.kit.width))
        return app::begin_entry(app, of.first);
    if (pressed) app::begin_entry(app, pressed->kind, pressed);
}

// All entries in the order they were written, with what became of those that do not hold.
void history(app::App& app, const record::Record& record) {
    record_section(app, "record_ui.history");
    soft_words(app, app.say("record_ui.history_about"));
    widget::gap(6);
    if (!app.ui.records.all_entries) {
        if (widget::button(app.kit, "history",
                           app.say("record_ui.history_show", {{"n", std::to_string(record.entries.size())}}),
                           widget::Look::plain, app.kit.width))
            app.ui.records.all_entries = app.ui.again = true;
        return;
    }
    ImGui::PushID("history");
    const record::Entry* pressed = nullptr;
    for (const record::Entry& entry : record.entries) {
        std::string remark;
        for (const record::Entry& later : record.entries)
            if (later.corrects == entry.id)
                remark = app.say(later.kind == record::Kind::withdrawn ? "record_ui.is_withdrawn"
                                                                       : "record_ui.is_corrected",
                                 {{"day", later.written.substr(0, 10)}});
        kept_rows::row(app.kit, "row " + entry.id, [&] {
            if (entry_row(app, record, entry, remark)) pressed = &entry;
        });
    }
    ImGui::PopID();
    if (pressed) app::begin_entry(app, pressed->kind, pressed);
}

void deeds(app::App& app, const record::Record& record, const record::State& state) {
    kit::Kit& kit = app.kit;
    widget::gap(24);
    if (widget::button(kit, "paper", app.say("record_ui.paper"), widget::Look::plain, kit.width))
        return app::read(app, app::Paper::batch_record);
    widget::gap(8);
    if (!record.makes.empty()) {  // it is a lot of others
        if (widget::button(kit, "trace", app.say("record_ui.used_in"), widget::Look::plain, kit.width))
            return app::show_trace(app, record.makes, {state.number});
        widget::gap(8);
    }
    const workspace::Kept* kept = workspace::find(std::as_const(app.work), record.recipe);
    if (kept && kept->binned.empty()) {
        if (widget::button(kit, "label", app.say("record_ui.label"), widget::Look::plain, kit.width))
            return app::label_batch(app, record);
        widget::gap(8);
        if (widget::button(kit, "recipe", app.say("card.open_recipe", {{"title", kept->recipe.title}}),
                           widget::Look::plain, kit.width))
            return app::open(app, record.recipe);
        widget::gap(8);
    }
    if (workspace::find_version(app.work, record.version) &&
        widget::button(kit, "version", app.say("record_ui.version"), widget::Look::plain, kit.width))
        app::branch_version(app, record.version);
}

}  // namespace

void record(app::App& app) {
    const record::Record* found = workspace::find_record(app.work, app.ui.records.record);
    if (!found) {
        app.ui.screen = app::Screen::records;
        app.ui.again = true;
        return;
    }
    const record::Record record = *found;  // a press adds to it
    const record::State state = record::state_of(record);
    head(app, record, state);
    missing(app, record, state);
    lines(app, state);
    const Group groups[] = {
        {"record_ui.went",
         "record_ui.went_add",
         record::Kind::temperature,
         {record::Kind::temperature, record::Kind::ph, record::Kind::yield, record::Kind::filled,
          record::Kind::remark}},
        {"record_ui.units_went",
         "record_ui.units_went_add",
         record::Kind::sent,
         {record::Kind::sent, record::Kind::kept_back}},
        {"record_ui.release", "record_ui.release_add", record::Kind::release, {record::Kind::release}},
        {"record_ui.look", "record_ui.look_add", record::Kind::look, {record::Kind::look}},
        {"record_ui.complaints",
         "record_ui.complaints_add",
         record::Kind::complaint,
         {record::Kind::complaint}},
        {"record_ui.head",
         "record_ui.head_add",
         record::Kind::number,
         {record::Kind::number, record::Kind::day, record::Kind::who}},
    };
    for (const Group& one : groups)
        group(app, record, state, one);
    history(app, record);
    deeds(app, record, state);
}

}  // namespace screens
