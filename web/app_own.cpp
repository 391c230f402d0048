// What screens may do with ingredients: the engine's edits on own entries with the host's clock, and cards.
#include "app.h"
#include "engine/workspace_made.h"
#include "platform.h"

namespace app {

void refresh_mine(App& app) {
    std::vector<catalogue::Ingredient> mine = workspace::mine(app.work, app.presets.catalogue);
    if (mine == app.mine) return;
    app.mine = std::move(mine);
    app.analysed.reset();  // what counts as the person's own has changed
    app.ui.again = true;
}

std::string role_words(const App& app, const std::string& role) {
    const std::string key = "role." + role;
    return words::has(app.words, key) ? app.say(key) : role;
}

const char* made_key(catalogue::MadeAs as) {
    switch (as) {
        case catalogue::MadeAs::infusion:
            return "made.infusion";
        case catalogue::MadeAs::blend:
            return "made.blend";
        case catalogue::MadeAs::pre_dilution:
            break;
    }
    return "made.pre_dilution";
}

source::Standing source_standing(const App& app, std::string_view key) {
    const source::Entry* entry = catalogue::find_source(app.presets.catalogue, key);
    return entry ? entry->standing : source::Standing::estimate;
}

void show_card(App& app, const std::string& id, bool of_recipe) {
    app.ui.card = id;
    app.ui.card_of_recipe = of_recipe;
    show(app, Sheet::card);
}

namespace {

void say_why(App& app, const result::Error& error) {
    tell(app, words::say(app.words, error), true);
}

}  // namespace

void add_own(App& app, catalogue::Ingredient own) {
    const auto id = workspace::add_own(app.work, app.presets.catalogue, std::move(own), platform::now_utc());
    if (!id) return say_why(app, id.error());
    app.ui.own = *id;
    app.ui.typed.clear();
    app.ui.own_limit_of.clear();
    refresh_mine(app);
    show(app, Sheet::own);
}

void copy_own(App& app, const catalogue::Ingredient& of) {
    catalogue::Ingredient copy = of.own ? of : workspace::copy_of(of);
    add_own(app, std::move(copy));
}

void edit_own(App& app, catalogue::Ingredient changed) {
    const auto id = workspace::set_own(app.work, std::move(changed), platform::now_utc());
    if (!id) return say_why(app, id.error());
    refresh_mine(app);
    app.ui.again = true;
}

void bin_own(App& app, const std::string& id) {
    if (!workspace::bin_own(app.work, id, platform::now_utc())) return;
    refresh_mine(app);
    tell(app, app.say("own.binned"));
}

void restore_own(App& app, const std::string& id) {
    if (!workspace::restore_own(app.work, id)) return;
    refresh_mine(app);
    tell(app, app.say("own.restored"));
}

void erase_own(App& app, const std::string& id) {
    if (workspace::erase_own(app.work, id)) tell(app, app.say("bin.erased"));
}

void keep_own(App& app, const std::string& id) {
    const workspace::Recipe* recipe = open_recipe(app);
    if (!recipe) return;
    const auto kept = workspace::keep_own(app.work, app.presets.catalogue, *recipe, id, platform::now_utc());
    if (!kept) return say_why(app, kept.error());
    app.undo.deed_done();
    refresh_mine(app);
    edit(app, result::Result<workspace::Recipe>(kept->recipe));
    app.ui.card = kept->id;
    tell(app, app.say("own.kept"));
}

}  // namespace app
