// What screens may do with batch records, lots and versions: the engine's edits with the host's clock and
// ids.
#include <utility>

#include "app.h"
#include "engine/workspace_lots.h"
#include "engine/workspace_records.h"
#include "engine/workspace_versions.h"
#include "platform.h"

namespace app {
namespace {

// What is wrong, with words of its own for a number that is taken.
bool went_well(App& app, const result::Result<std::string>& made,
               const char* taken = "record_ui.number_taken") {
    app.ui.again = true;
    if (made) return true;
    const result::Error& error = made.error();
    tell(app,
         error.code == result::Code::preset_duplicate && error.place == "number"
             ? app.say(taken, {{"number", error.detail}})
             : words::say(app.words, error),
         true);
    return false;
}

}  // namespace

std::string today() {
    return platform::today();
}

void begin_record(App& app) {
    const workspace::Recipe* recipe = open_recipe(app);
    if (!recipe) return;
    RecordsIn& in = app.ui.records;
    in.day = platform::today();
    in.number = workspace::next_batch_number(app.work, in.day, recipe->title);
    const auto before = workspace::plain(workspace::records(app.work));
    in.who = before.empty() ? "" : record::state_of(*before.front()).who;
    show(app, Sheet::record_new);
}

void write_record(App& app) {
    const workspace::Recipe* recipe = open_recipe(app);
    if (!recipe || !app.analysis || !app.analysis->batch) return;
    const RecordsIn& in = app.ui.records;
    record::Record record = workspace::record_of(*recipe, app.work.open, *app.analysis->batch, app.known());
    record.number = in.number;
    record.day = in.day;
    record.who = in.who;
    const auto id = workspace::add_record(app.work, std::move(record), *recipe, {new_id(), new_id()},
                                          platform::now_utc());
    if (!went_well(app, id)) return;
    close_sheet(app);
    show_record(app, *id);
    ask_to_keep(app);
    tell(app, app.say("record_ui.written"));
}

void show_record(App& app, const std::string& id) {
    app.ui.records.record = id;
    app.ui.records.all_entries = false;
    app.ui.screen = Screen::record;
    app.ui.to_top = true;
    app.kit.keypad.target = 0;
    app.ui.again = true;
}

bool add_entry(App& app, record::Entry entry) {
    entry.id = new_id();
    if (entry.day.empty()) entry.day = platform::today();
    return went_well(
        app, workspace::add_entry(app.work, app.ui.records.record, std::move(entry), platform::now_utc()));
}

void begin_entry(App& app, record::Kind kind, const record::Entry* corrects) {
    const record::Record* record = workspace::find_record(app.work, app.ui.records.record);
    if (!record) return;
    record::Entry entry;
    if (corrects) {
        entry = *corrects;
        entry.corrects = corrects->id;
    }
    entry.kind = kind;
    entry.id.clear();
    entry.written.clear();
    if (!corrects) entry.day = platform::today();
    if (!corrects) entry.who = record::state_of(*record).who;
    if (kind == record::Kind::release && !corrects) entry.yes = true;
    app.ui.records.entry = std::move(entry);
    app.kit.drafts.clear();
    show(app, Sheet::record_entry);
}

void show_lot(App& app, const std::string& ingredient, const std::string& id) {
    const lot::Lot* lot = workspace::find_lot(app.work, id);
    app.ui.records.lot = lot ? id : "";
    app.ui.records.lot_in = lot ? *lot : lot::Lot{};
    if (!lot) app.ui.records.lot_in.ingredient = ingredient;
    app.kit.drafts.clear();
    show(app, Sheet::lot);
}

void keep_lot(App& app) {
    RecordsIn& in = app.ui.records;
    const std::string now = platform::now_utc();
    const lot::Lot* before = workspace::find_lot(app.work, in.lot);
    if (in.lot_in.left && (!before || before->left != in.lot_in.left || before->counted != in.lot_in.counted))
        in.lot_in.counted_at = now;
    if (!went_well(app,
                   in.lot.empty() ? workspace::add_lot(app.work, in.lot_in, new_id(), now)
                                  : workspace::set_lot(app.work, in.lot, in.lot_in, now),
                   "lot.number_taken"))
        return;
    ask_to_keep(app);
    show_card(app, in.lot_in.ingredient, app.ui.card_of_recipe);
}

void show_trace(App& app, std::string ingredient, std::vector<std::string> numbers) {
    app.ui.records.lot_of = std::move(ingredient);
    app.ui.records.lot_numbers = std::move(numbers);
    show(app, Sheet::trace);
}

void label_batch(App& app, const record::Record& record) {
    const record::State state = record::state_of(record);
    open(app, record.recipe, Screen::label);
    app.ui.label = {};
    app.ui.label.of = record.recipe;
    app.ui.label.details.batch_number = state.number;
    app.ui.label.details.made_on = app.ui.label.made_on = state.day;
    if (state.filled && *state.filled > 0) app.ui.label.copies = static_cast<std::size_t>(*state.filled);
}

void keep_version(App& app, std::string_view name) {
    const workspace::Recipe* recipe = open_recipe(app);
    if (!recipe) return;
    if (!went_well(app, workspace::keep_version(app.work, app.work.open, *recipe, name, new_id(),
                                                platform::now_utc())))
        return;
    app.ui.versions.name.clear();
    app.kit.drafts.clear();
    ask_to_keep(app);
    tell(app, app.say("version_ui.kept"));
}

void name_version(App& app, const std::string& id, std::string_view name) {
    went_well(app, workspace::name_version(app.work, id, name, platform::now_utc()));
}

void pin_version(App& app, const std::string& id, bool pinned) {
    workspace::pin_version(app.work, id, pinned, platform::now_utc());
    app.ui.again = true;
}

void take_version(App& app, const std::string& id) {
    const workspace::Version* version = workspace::find_version(app.work, id);
    const workspace::Recipe* now = open_recipe(app);
    if (!version || !now) return;
    workspace::Recipe again = version->recipe;
    again.batch = now->batch;  // how much is made is no part of it
    app.undo.deed_done();
    edit(app, result::Result<workspace::Recipe>(std::move(again)));
    app.kit.drafts.clear();
    close_sheet(app);
    tell(app, app.say("version_ui.taken", {{"name", version_name(app, id)}}));
}

void branch_version(App& app, const std::string& id) {
    const workspace::Version* version = workspace::find_version(app.work, id);
    if (!version) return;
    workspace::Recipe recipe = version->recipe;
    recipe.title = title_within(app, "version_ui.branch_of", recipe.title);
    recipe.made.reset();  // there is one made part of that id
    close_sheet(app);
    keep(app, std::move(recipe));
}

std::string version_name(const App& app, const std::string& id) {
    const workspace::Version* version = workspace::find_version(app.work, id);
    if (!version) return app.say("version_ui.now");
    if (!version->name.empty()) return version->name;
    for (const workspace::Filed& filed : app.work.filed) {
        const auto* record = std::get_if<record::Record>(&filed.what);
        if (record && record->version == id)
            return app.say("version_ui.of_batch", {{"number", record::state_of(*record).number}});
    }
    return app.say("version_ui.nameless");
}

}  // namespace app
