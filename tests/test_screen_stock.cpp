// Stock, the ingredient's card, own ingredients and made parts, done by name as assistive technology does it.
#include <string>

#include "engine/share.h"
#include "engine/workspace_made.h"
#include "engine/workspace_own.h"
#include "hand.h"
#include "shipped.h"

namespace test_screen_stock {

using app::Screen;
using app::Sheet;
using hand::FirstVisit;
using mirror::Role;

namespace {

const catalogue::Ingredient& shipped_one(const char* id) {
    return *catalogue::find_ingredient(shipped::presets().catalogue, id);
}

const catalogue::Ingredient& only_own(const app::App& app) {
    REQUIRE(app.work.own.size() == 1);
    return app.work.own.front().ingredient;
}

void new_own(app::App& app, const std::string& name) {
    hand::go(app.say("nav.stock"));
    hand::press(app.say("stock.new"));
    hand::write(app.say("own.name"), name);
    hand::press(app.say("own.create"));
    REQUIRE(app.ui.sheet == Sheet::own);
}

// An infusion in the book, its petals strained out, 80 % yield.
workspace::Recipe infusion() {
    workspace::Recipe recipe;
    recipe.title = "Marigold oil";
    formula::Line oil, petals;
    oil.ingredient = "sunflower_ho";
    oil.percent = quantity::percent(90);
    petals.name = "Dried petals";
    petals.percent = quantity::percent(10);
    recipe.formula = formula::add_line({{{"A", {}, {}}}, {}}, oil).value();
    recipe.formula = formula::add_line(recipe.formula, petals).value();
    return recipe;
}

// What a stranger's recipe brings: an oil of theirs.
workspace::Recipe strangers() {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    catalogue::Ingredient plum;
    plum.id = "own_plum_oil";
    plum.name = "Plum kernel oil";
    plum.role = "liquid_oil";
    plum.source = "a market stall";
    recipe.own = {workspace::as_own(plum)};
    recipe.formula.lines.back().ingredient = plum.id;
    return recipe;
}

// In the open sheet, where the page beneath has something of the same name.
void press_in_sheet(const std::string& name) {
    std::uint32_t id = 0;
    for (const mirror::Node& node : mirror::nodes())
        if (node.role == Role::button && node.name == name) id = node.id;
    REQUIRE(id != 0);
    hand::push(platform::Kind::node_click, id);
    hand::settle();
}

void add_to_first_phase(app::App& app, const std::string& search, const std::string& name) {
    hand::press(app.say("formula.add_line", {{"id", "A"}}));
    hand::write(app.say("ingredient.search"), search);
    hand::press(name);
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit,
                  "Stock lists what is shipped; searching and a role leave fewer; pressing opens the card") {
    hand::go(app.say("nav.stock"));
    CHECK(app.ui.screen == Screen::stock);
    CHECK(hand::see(Role::button, shipped_one("shea").name) != nullptr);
    hand::write(app.say("ingredient.search"), "jojoba");
    CHECK(hand::see(Role::button, shipped_one("shea").name) == nullptr);
    CHECK(hand::see(Role::button, shipped_one("jojoba").name) != nullptr);
    hand::write(app.say("ingredient.search"), "");
    hand::press(app.say("stock.all_roles"));
    hand::press(app.say("role.wax"));
    CHECK(hand::see(Role::button, shipped_one("jojoba").name) == nullptr);
    hand::press(shipped_one("beeswax_yellow").name);
    CHECK(app.ui.sheet == Sheet::card);
    CHECK(hand::see(Role::dialog, shipped_one("beeswax_yellow").name) != nullptr);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "a card gives each figure with source and standing, and says what is not known") {
    hand::go(app.say("nav.stock"));
    const catalogue::Ingredient& wax = shipped_one("beeswax_yellow");
    hand::press(wax.name);
    CHECK(hand::reads(wax.inci.at("eu")));
    CHECK(hand::reads(wax.inci.at("us")));
    REQUIRE(wax.melting_c.has_value());
    CHECK(hand::reads(app::source_words(app, wax.melting_c->source, wax.melting_c->standing)));
    CHECK(hand::reads(app.say("card.melting")));
    CHECK(hand::reads(app.say("role.wax")));
    CHECK(hand::reads(app.say("card.phase_oil")));
    for (const catalogue::Ingredient& one : app.presets.catalogue.ingredients) {
        if (one.density) continue;
        app::show_card(app, one.id, false);
        hand::push(platform::Kind::resized);
        hand::settle();
        CHECK(hand::reads(one.density_unknown));
        break;
    }
}

TEST_CASE_FIXTURE(FirstVisit, "the card is reached from a line of the formula") {
    app::keep(app, shipped::recipe("orchard_lip_balm"));
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::press(shipped_one("beeswax_yellow").name);
    hand::press(app.say("line.about"));
    CHECK(app.ui.sheet == Sheet::card);
    CHECK(app.ui.card == "beeswax_yellow");
}

TEST_CASE_FIXTURE(FirstVisit,
                  "a new own ingredient is filled in, kept, and there when the page is opened again") {
    new_own(app, "Plum kernel oil");
    hand::press(app.say("own.role_unknown"));
    hand::press(app.say("role.liquid_oil"));
    REQUIRE(app.ui.sheet == Sheet::own);
    hand::write(app.say("own.inci_eu"), "Prunus Domestica Seed Oil");
    hand::write(app.say("card.density"), "0.915");
    hand::write(app.say("own.source"), "supplier's sheet");
    hand::press(app.say("own.standing_supplier"));
    hand::press(app.say("own.limit_add"));
    hand::press(catalogue::find_product(app.presets.catalogue, "salve")->name);
    hand::write(
        app.say("card.max_for", {{"where", catalogue::find_product(app.presets.catalogue, "salve")->name}}),
        "20");
    hand::write(app.say("own.lot"), "24-118");
    hand::write(app.say("own.date"), "2026-08-01");
    hand::write(app.say("own.constituent"), "tocopherol");
    hand::press(app.say("own.constituent_add"));
    hand::write(app.say("own.content_typical", {{"name", "tocopherol"}}), "0.1");
    hand::press(app.say("sheet_ui.done"));

    const catalogue::Ingredient made = only_own(app);
    CHECK(made.id == "own_plum_kernel_oil");
    CHECK(made.role == "liquid_oil");
    CHECK(made.inci.at("eu") == "Prunus Domestica Seed Oil");
    CHECK(made.density->value.density.grid == 9150);
    CHECK(made.standing == source::Standing::supplier);
    CHECK(made.max_percent.at("salve") == quantity::percent(20));
    REQUIRE(made.analysis.has_value());
    CHECK(made.analysis->date == "2026-08-01");
    CHECK(made.analysis->constituents.at("tocopherol").typical == quantity::Percent{1000});
    hand::open_page();
    CHECK(only_own(app) == made);
    hand::go(app.say("nav.stock"));
    hand::press("Plum kernel oil");
    CHECK(hand::reads("supplier's sheet"));
}

TEST_CASE_FIXTURE(FirstVisit, "a date that is none stays in its field, is said to be none, and is not kept") {
    new_own(app, "Plum kernel oil");
    hand::write(app.say("own.date"), "last week");
    CHECK(hand::reads(app.say("own.date_form")));
    CHECK(hand::field(app.say("own.date")).value == "last week");
    CHECK_FALSE(only_own(app).analysis.has_value());
}

TEST_CASE_FIXTURE(FirstVisit,
                  "a shipped ingredient is copied and changed; the copy shows what it does not say itself") {
    hand::go(app.say("nav.stock"));
    hand::press(shipped_one("shea").name);
    hand::press(app.say("card.copy"));
    REQUIRE(app.ui.sheet == Sheet::own);
    hand::write(app.say("own.name"), "Shea, unrefined");
    hand::press(app.say("sheet_ui.done"));
    CHECK(only_own(app).based_on == "shea");
    CHECK(only_own(app).name == "Shea, unrefined");
    hand::press("Shea, unrefined");
    CHECK(hand::reads(app.say("card.based_on", {{"name", shipped_one("shea").name}})));
    if (shipped_one("shea").melting_c) CHECK(hand::reads(app.say("card.melting")));
}

TEST_CASE_FIXTURE(
    FirstVisit,
    "an own ingredient is used in a formula, goes to the bin and comes back; the recipe keeps it") {
    new_own(app, "Plum kernel oil");
    hand::press(app.say("sheet_ui.done"));
    hand::go(app.say("nav.book"));
    hand::press(app.say("book.new"));
    hand::press(app.say("new.blank"));
    add_to_first_phase(app, "plum", "Plum kernel oil");
    const workspace::Recipe& recipe = *app::open_recipe(app);
    REQUIRE(recipe.own.size() == 1);
    CHECK(recipe.formula.lines[0].ingredient == "own_plum_kernel_oil");
    CHECK_FALSE(hand::reads(app.say("line.came_along")));
    hand::go(app.say("nav.stock"));
    hand::press("Plum kernel oil");
    hand::press(app.say("card.to_bin"));
    CHECK(app::open_recipe(app)->own.size() == 1);
    hand::press(app.say("stock.bin", {{"n", "1"}}));
    hand::press(app.say("bin.restore", {{"title", "Plum kernel oil"}}));
    CHECK(app.work.own.front().binned.empty());
    hand::press(app.say("sheet_ui.close"));
    hand::go(app.say("nav.formula"));
    hand::press("Plum kernel oil");
    hand::press(app.say("line.remove"));
    CHECK(app::open_recipe(app)->own.empty());  // no line needs the copy, and this device has the entry
}

TEST_CASE_FIXTURE(FirstVisit,
                  "what came with a recipe is shown apart, and kept under a new id when the person says so") {
    new_own(app, "Plum oil");
    hand::press(app.say("sheet_ui.done"));
    const std::string link = share::write(strangers(), app.presets.catalogue).value();
    hand::push(platform::Kind::fragment, 0, link);
    hand::settle();
    CHECK(hand::reads(app.say("incoming.own")));
    hand::press(app.say("incoming.keep"));
    CHECK(hand::reads(app.say("line.came_along")) == false);  // a description, not a text
    hand::press("Plum kernel oil");
    hand::press(app.say("line.about"));
    CHECK(hand::reads(app.say("card.other_about")));
    hand::press(app.say("card.keep"));
    CHECK(app.work.own.size() == 2);
    const workspace::Recipe& recipe = *app::open_recipe(app);
    CHECK(recipe.own.front().id != "own_plum_oil");
    CHECK(workspace::find_own(app.work, "own_plum_oil")->ingredient.name == "Plum oil");
    CHECK(recipe.formula.lines.back().ingredient == recipe.own.front().id);
    CHECK_FALSE(hand::reads(app.say("card.other_about")));
    hand::press(app.say("sheet_ui.close"));
    hand::press(app.say("top.undo"));
    CHECK(app::open_recipe(app)->own.front().id == "own_plum_oil");
}

TEST_CASE_FIXTURE(FirstVisit,
                  "an infusion is declared, strained, used as one ingredient, and its batch is worked out") {
    app::keep(app, infusion());
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::press(app.say("top.recipe"));
    hand::press(app.say("recipe.made"));
    hand::press(app.say("made.infusion"));
    hand::write(app.say("made.yield"), "80");
    press_in_sheet("Dried petals");
    hand::press(app.say("sheet_ui.done"));
    const workspace::Recipe made = *app::open_recipe(app);
    REQUIRE(made.made.has_value());
    CHECK(made.made->yield == quantity::percent(80));
    CHECK(made.formula.lines[1].strained);

    app::keep(app, app::blank_recipe(app));
    hand::push(platform::Kind::resized);
    hand::settle();
    add_to_first_phase(app, "marigold", "Marigold oil");
    hand::write(app.say("line.percent_of", {{"name", "Marigold oil"}}), "100");
    hand::go(app.say("nav.batch"));
    hand::press(app.say("batch.say_how_much"));
    hand::press(app.say("batch.by_mass"));
    hand::write(app.say("batch.mass"), "100");
    hand::press(app.say("sheet_ui.done"));
    CHECK(hand::reads(app.say("made.needs")));
    hand::press(app.say("made.make", {{"name", "Marigold oil"}}));
    CHECK(app::open_recipe(app)->title == "Marigold oil");
    CHECK(app.ui.screen == Screen::batch);
    CHECK(app::open_recipe(app)->batch.grams == quantity::Mass{1388889});  // 100 / 0.8 / 0.9, rounded up

    hand::go(app.say("nav.formula"));
    add_to_first_phase(app, "marigold", "Marigold oil");
    CHECK(app.ui.message.find("Marigold oil holds Marigold oil") != std::string::npos);
    CHECK(app::open_recipe(app)->formula.lines.size() == 2);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "the share sheet tells the length with and without notes, and what a QR code takes") {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.steps.clear();
    recipe.notes.clear();
    // Letters without rhyme or reason, until the code is a dense one.
    for (unsigned n = 1; share::write(recipe, app.presets.catalogue, share::Form::shortest)->size() < 800;
         n = n * 75 % 65537)
        recipe.notes += static_cast<char>('!' + n % 90);
    app::keep(app, recipe);
    hand::push(platform::Kind::resized);
    hand::settle();
    hand::press(app.say("top.recipe"));
    hand::press(app.say("recipe.share"));
    CHECK(hand::see(Role::button, app.say("share.all")) != nullptr);
    const auto length = [&](share::Extent extent) {
        return share::write(share::cut_to(extent, recipe), app.presets.catalogue, share::Form::shortest)
                   .value()
                   .size() -
               1;
    };
    const auto described = [&](const char* key) { return hand::button(app.say(key)).description; };
    CHECK(described("share.all")
              .find(app.say("share.length", {{"n", std::to_string(length(share::Extent::all))}})) == 0);
    CHECK(described("share.all").find(app.say("share.qr_dense")) != std::string::npos);
    CHECK(described("share.without_notes").find(app.say("share.qr_easy")) != std::string::npos);
    hand::press(app.say("share.without_notes"));
    hand::press(app.say("share.copy"));
    REQUIRE(platform::native::copied().size() == 1);
    const std::string copied = platform::native::copied().front();
    CHECK(share::read(copied, app.presets.catalogue).value().notes.empty());
    CHECK(app::open_recipe(app)->notes == recipe.notes);
}

}  // namespace test_screen_stock
