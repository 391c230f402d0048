// Batch records, lots and versions, done by name as assistive technology does it.
#include <string>

#include "engine/words_test_language.h"
#include "engine/workspace_lots.h"
#include "engine/workspace_records.h"
#include "engine/workspace_versions.h"
#include "hand.h"
#include "shipped.h"
#include "web/drawn_items.h"
#include "whole.h"

namespace test_screen_records {

using app::Screen;
using app::Sheet;
using hand::press;
using hand::reads;
using hand::write;
using mirror::Role;
using record::Record;
using record::State;

namespace {

// 100 g of the hand salve, about to be made.
struct Bench : hand::FirstVisit {
    Bench() {
        workspace::Recipe recipe = shipped::recipe("potting_shed_hand_salve");
        recipe.batch = {};
        recipe.batch.amount = batch::Amount::grams;
        recipe.batch.grams = quantity::grams(100);
        app::keep(app, recipe);
        hand::settle();
        hand::go(say("nav.batch"));
    }
    ~Bench() {
        platform::native::window().text_scale = 1;
        platform::native::window().language = "en";
    }
    std::string say(std::string_view key, const words::Arguments& arguments = {}) const {
        return app.say(key, arguments);
    }
    void begin() {
        press(say("record_ui.write"));
        write(say("record.who"), "Wren");
        press(say("record_ui.begin"));
        REQUIRE(app.ui.screen == Screen::record);
    }
    const Record& record() const {
        const Record* found = workspace::find_record(app.work, app.ui.records.record);
        REQUIRE(found != nullptr);
        return *found;
    }
    State state() const { return record::state_of(record()); }
    void add(const char* section, const char* kind) {
        press(say(section));
        REQUIRE(app.ui.sheet == Sheet::record_entry);
        if (hand::see(Role::button, say(kind))) press(say(kind));
    }
    void done() {
        press(say("record_ui.add"));
        REQUIRE(app.ui.sheet == Sheet::none);
    }
    void yield(const char* grams) {
        add("record_ui.went_add", "record.yield");
        write(say("record.yield"), grams);
        done();
    }
};

}  // namespace

TEST_CASE_FIXTURE(
    Bench,
    "records: a record is begun from the batch, written into, and there when the page is opened again") {
    begin();
    CHECK(record().lines.size() == app::open_recipe(app)->formula.lines.size());
    CHECK(state().who == "Wren");
    CHECK_FALSE(state().total.has_value());
    press(say("record_ui.as_planned"));
    CHECK(state().total == quantity::grams(100));
    yield("95");
    CHECK(reads(say("record_ui.loss", {{"percent", "5.0"}})));
    add("record_ui.went_add", "record.filled");
    write(say("record_ui.how_many"), "3");
    write(say("record_text.filled"), "tin");
    done();
    add("record_ui.units_went_add", "record.sent");
    write(say("record_ui.how_many"), "2");
    write(say("record_text.sent"), "market stall");
    done();
    press(say("record_ui.release_add"));
    write(say("record_text.release"), "clear, smells of lavender");
    done();
    CHECK(state().released == true);
    CHECK(state().left == 1);
    const std::string number = state().number;
    const Record before = record();

    hand::open_page();
    CHECK(app.ui.screen == Screen::records);
    write(say("record_ui.search"), "stall");
    const std::string row = number + " \xC2\xB7 " + before.title;
    CHECK(hand::button(row).description.find(say("record_ui.left", {{"left", "1"}, {"of", "3"}})) !=
          std::string::npos);
    press(row);
    CHECK(record() == before);
}

TEST_CASE_FIXTURE(Bench,
                  "records: pressing an entry corrects it; what it said stays among all that was written") {
    begin();
    yield("95");
    press(say("record.yield"));
    REQUIRE(app.ui.sheet == Sheet::record_entry);
    write(say("record.yield"), "90");
    press(say("record_ui.correct"));
    CHECK(record().entries.size() == 2);
    CHECK(state().yield == quantity::grams(90));
    CHECK_FALSE(reads(app.grams(quantity::grams(95))));
    press(say("record_ui.history_show", {{"n", "2"}}));
    CHECK(reads("corrected"));
    press(say("record.yield"));
    press(say("record_ui.withdraw_it"));
    write(say("record_text.withdrawn"), "another batch's");
    press(say("record_ui.withdraw"));
    CHECK(record().entries.size() == 3);
    CHECK_FALSE(state().yield.has_value());
}

TEST_CASE_FIXTURE(Bench, "records: what an entry lacks is said, nothing is added, and what was typed stays") {
    begin();
    add("record_ui.went_add", "record.temperature");
    write(say("record_text.temperature"), "the oils");
    press(say("record_ui.add"));
    CHECK(app.ui.message_is_problem);
    CHECK(app.ui.sheet == Sheet::record_entry);
    CHECK(record().entries.empty());
    CHECK(hand::field(say("record_text.temperature")).value == "the oils");
    write(say("record_ui.day"), "last week");
    CHECK(reads(say("own.date_form")));
}

TEST_CASE_FIXTURE(Bench, "records: a figure that cannot be read is not written down as the one before it") {
    begin();
    add("record_ui.went_add", "record.yield");
    write(say("record.yield"), "95");
    write(say("record.yield"), "9.5.1");
    press(say("record_ui.add"));
    CHECK(record().entries.empty());
    CHECK(app.ui.message_is_problem);
    CHECK(app.ui.message.find("9.5.1") != std::string::npos);
    CHECK(hand::field(say("record.yield")).value == "9.5.1");
    write(say("record.yield"), "95.1");
    done();
    CHECK(state().yield == quantity::Mass{951000});
}

TEST_CASE_FIXTURE(Bench, "records: a number that another batch has is refused before anything is begun") {
    begin();
    const std::string number = state().number;
    hand::go(say("nav.batch"));
    press(say("record_ui.write"));
    CHECK(hand::field(say("record.number")).value != number);
    write(say("record.number"), number);
    press(say("record_ui.begin"));
    CHECK(app.ui.message == say("record_ui.number_taken", {{"number", number}}));
    CHECK(workspace::records(app.work).size() == 1);
}

TEST_CASE_FIXTURE(Bench, "records: a pattern of one's own is put together by pressing its places") {
    hand::go(say("nav.more"));
    press(say("nav.records"));
    write(say("record_ui.pattern"), "HL ");
    press("[letters]");
    press("[count]");
    CHECK(app.work.settings.batch_pattern == "HL [letters][count]");
    CHECK(reads(say("record_ui.next_number", {{"number", "HL PSH1"}})));
    hand::go(say("nav.batch"));
    begin();
    CHECK(state().number == "HL PSH1");
}

TEST_CASE_FIXTURE(
    Bench, "lots: added on the ingredient's card, taken for a line, followed to where its units went") {
    const catalogue::Ingredient& wax = *catalogue::find_ingredient(
        app.presets.catalogue, app::open_recipe(app)->formula.lines[0].ingredient);
    hand::go(say("nav.stock"));
    press(wax.name);
    press(say("lot.add"));
    write(say("lot.number"), "BW-7");
    write(say("lot.best_before"), "2027-06-30");
    write(say("lot.left"), "a handful");
    press(say("lot.add"));
    CHECK(app.ui.message_is_problem);
    CHECK(app.work.filed.empty());
    write(say("lot.left"), "250");
    press(say("lot.add"));
    REQUIRE(app.ui.sheet == Sheet::card);
    CHECK(reads("BW-7"));
    press(say("sheet_ui.close"));

    hand::go(say("nav.batch"));
    begin();
    press(say("record_ui.lots_at_hand", {{"n", "1"}}));
    CHECK(state().lines[0].lot == "BW-7");
    CHECK(state().lines[0].best_before == "2027-06-30");
    press(say("record_ui.as_planned"));
    add("record_ui.units_went_add", "record.sent");
    write(say("record_ui.how_many"), "2");
    write(say("record_text.sent"), "market stall");
    done();
    const std::string row = state().number + " \xC2\xB7 " + record().title;

    press(wax.name);
    REQUIRE(app.ui.sheet == Sheet::record_line);
    press(say("lot.trace"));
    REQUIRE(app.ui.sheet == Sheet::trace);
    const mirror::Node& found = hand::button(row);
    CHECK(found.description.find("market stall") != std::string::npos);
    press(say("lot.copy"));
    CHECK(platform::native::copied().back().find("market stall") != std::string::npos);
    press(row);
    CHECK(app.ui.screen == Screen::record);
}

TEST_CASE_FIXTURE(
    Bench,
    "lots: a corrected number is found under the old one too, and a lot that is used up is offered no more") {
    app.ui.card = "beeswax_yellow";
    REQUIRE(workspace::add_lot(app.work, {"beeswax_yellow", "BW-1", {}, "", "", "", {}, "", "", "", {}}, "l1",
                               platform::now_utc()));
    begin();
    press(say("record_ui.lots_at_hand", {{"n", "1"}}));
    app::show_lot(app, "beeswax_yellow", "l1");
    whole::draw_again();
    write(say("lot.number"), "BW-7");
    press(say("lot.keep"));
    app::show_lot(app, "beeswax_yellow", "l1");
    whole::draw_again();
    press(say("lot.trace"));
    CHECK(reads(say("lot.batches", {{"n", "1"}})));
    app::show_lot(app, "beeswax_yellow", "l1");
    whole::draw_again();
    press(say("lot.use_up"));
    CHECK(workspace::lots_for(app.work, "beeswax_yellow").empty());
}

TEST_CASE_FIXTURE(Bench, "records: the loss of earlier batches is offered for the next one") {
    for (const char* grams : {"94", "90", "93"}) {
        hand::go(say("nav.batch"));
        begin();
        press(say("record_ui.as_planned"));
        yield(grams);
    }
    workspace::Recipe& recipe = *app::open_recipe(app);
    recipe.batch.amount = batch::Amount::containers;
    recipe.batch.containers = {{"tin_30ml", 3, {}, {}}};
    hand::go(say("nav.batch"));
    app::show(app, Sheet::amount);
    whole::draw_again();
    press(say("batch.loss_learned", {{"n", "3"}, {"percent", "7"}}));
    CHECK(app::open_recipe(app)->batch.loss == quantity::percent(7));
    CHECK_FALSE(reads(say("batch.loss_learned", {{"n", "3"}, {"percent", "7"}})));
}

TEST_CASE_FIXTURE(Bench, "records: a batch gives its number, day and count of units to the label") {
    begin();
    add("record_ui.went_add", "record.filled");
    write(say("record_ui.how_many"), "3");
    done();
    const State made = state();
    press(say("record_ui.label"));
    CHECK(app.ui.screen == Screen::label);
    hand::settle();
    CHECK(app.ui.label.details.batch_number == made.number);
    CHECK(app.ui.label.details.made_on == made.day);
    CHECK(app.ui.label.copies == 3);
}

TEST_CASE_FIXTURE(Bench,
                  "versions: kept under a name, laid beside what came after, and made the recipe again") {
    hand::go(say("nav.formula"));
    press(say("nav.versions"));
    write(say("version_ui.name"), "first");
    press(say("version_ui.keep"));
    const workspace::Recipe first = *app::open_recipe(app);
    workspace::Recipe& recipe = *app::open_recipe(app);
    const std::int64_t was = recipe.formula.lines[0].percent.grid;
    app::edit(app, formula::set_percent(recipe.formula, 0, {was + decimal::kOne}));
    whole::draw_again();
    CHECK(reads("first"));
    press("first");
    REQUIRE(app.ui.sheet == Sheet::version);
    CHECK(reads("+1"));
    press(say("version_ui.pin"), Role::checkbox);
    CHECK(reads(say("version_ui.the_one")));
    press(say("version_ui.take"));
    CHECK(app::open_recipe(app)->formula == first.formula);
    press(say("top.undo"));
    CHECK(app::open_recipe(app)->formula.lines[0].percent.grid == was + decimal::kOne);
    press("first");
    press(say("version_ui.branch"));
    CHECK(app.work.recipes.size() == 2);
    CHECK(app::open_recipe(app)->formula == first.formula);
    CHECK(workspace::versions_of(app.work, app.work.open).empty());
}

TEST_CASE_FIXTURE(Bench, "versions: a batch record freezes the one it was made by, once") {
    begin();
    hand::go(say("nav.batch"));
    begin();
    const auto all = workspace::versions_of(app.work, app.work.open);
    REQUIRE(all.size() == 1);
    hand::go(say("nav.formula"));
    press(say("nav.versions"));
    CHECK(hand::see(Role::button, app::version_name(app, all[0]->id)) != nullptr);
}

// Every screen and sheet of these, empty and with a record that holds all there is, in every size, in large
// letters and in a language a third longer.
TEST_CASE_FIXTURE(
    Bench, "records, lots and versions are whole in every size, in large letters and in longer words") {
    constexpr Screen kAll[] = {Screen::records, Screen::record, Screen::versions};
    constexpr Sheet kSheets[] = {Sheet::record_new, Sheet::record_entry, Sheet::record_line, Sheet::lot,
                                 Sheet::trace,      Sheet::version,      Sheet::card};
    app.ui.screen = Screen::records;
    whole::draw_again();
    CHECK(whole::faults() == "");
    app.ui.screen = Screen::versions;
    whole::draw_again();
    CHECK(whole::faults() == "");

    workspace::Filed everything = store::read_filed(shipped::data("v1_batch_record.json")).value();
    auto& record = std::get<Record>(everything.what);
    record.recipe = app.work.open;
    record.lines[1].name =
        "Donaudampfschifffahrtsgesellschaftskapit\u00E4nskaj\u00FCtenschl\u00FCsselbundpflegebalsam";
    record.entries.resize(10);
    workspace::Filed version = store::read_filed(shipped::data("v1_version.json")).value();
    std::get<workspace::Version>(version.what).of = app.work.open;
    app.ui.records.record = everything.id;
    app.ui.versions.version = version.id;
    app.ui.card = "beeswax_yellow";
    workspace::take_filed(app.work, everything);
    workspace::take_filed(app.work, version);
    workspace::take_filed(app.work, store::read_filed(shipped::data("v1_lot.json")).value());
    const auto look = [&] {
        for (const Screen screen : kAll) {
            CAPTURE(static_cast<int>(screen));
            app.ui.screen = screen;
            app.ui.records.all_entries = true;
            whole::draw_again();
            CHECK(whole::faults() == "");
            CHECK(whole::overlaps() == "");
        }
        for (int kind = -1; kind < record::kKinds; ++kind)
            for (const Sheet sheet : kSheets) {
                if (kind >= 0 && sheet != Sheet::record_entry) continue;
                CAPTURE(static_cast<int>(sheet));
                CAPTURE(kind);
                app.ui.screen = Screen::record;
                app::begin_entry(app, kind < 0 ? record::Kind::remark : static_cast<record::Kind>(kind));
                app::show_lot(app, "beeswax_yellow", "51be07");
                app.ui.records.lot_of = "beeswax_yellow";
                app.ui.records.lot_numbers = {"BW-7", "BW-1"};
                app.ui.records.known = {1, {}, "BW-7", "someday"};
                app::show(app, sheet);
                whole::draw_again();
                REQUIRE(app.ui.sheet == sheet);
                CHECK(whole::faults() == "");
                app::close_sheet(app);
            }
    };
    whole::in_every_size(app, look);
    for (const float scale : {1.3f, 2.0f}) {
        CAPTURE(scale);
        platform::native::window().text_scale = scale;
        hand::resize(360, 640);
        look();
    }
    platform::native::window().text_scale = 1;
    platform::native::window().language = std::string(words::kTestLanguage);
    hand::resize(360, 640);
    look();
}

}  // namespace test_screen_records
