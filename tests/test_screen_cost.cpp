// Cost, prices and what is left on the shelf, done by name as assistive technology does it.
#include <string>

#include "engine/workspace_edits.h"
#include "engine/workspace_lots.h"
#include "hand.h"
#include "shipped.h"

namespace test_screen_cost {

using app::Screen;
using app::Sheet;
using hand::FirstVisit;
using mirror::Role;

namespace {

void draw_again() {
    hand::push(platform::Kind::resized);
    hand::settle();
}

// A starter of the book, opened at its cost, reckoned in euros.
void open_cost(app::App& app, const char* stem = "orchard_lip_balm") {
    app::keep(app, shipped::recipe(stem));
    app.ui.screen = Screen::cost;
    draw_again();
    if (app.work.settings.prices.currency.empty()) hand::write(app.say("cost_ui.currency"), "eur");
    REQUIRE(app.work.settings.prices.currency == "EUR");
}

void enter_pack(app::App& app, const char* size, const char* paid) {
    REQUIRE(app.ui.sheet == Sheet::pack);
    hand::write(app.say(app.ui.price.of == price::Of::ingredient ? "paid.size" : "paid.pieces"), size);
    hand::write(app.say("paid.price"), paid);
    hand::press(app.say("paid.add"));
}

// Is something described with these words?
bool described(const std::string& words) {
    for (const mirror::Node& node : mirror::nodes())
        if (node.description.find(words) != std::string::npos) return true;
    return false;
}

std::string name_of(const char* id) {
    return catalogue::find_ingredient(shipped::presets().catalogue, id)->name;
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "cost: prices are entered line by line, and what is not known is said") {
    open_cost(app, "potting_shed_hand_salve");
    CHECK_FALSE(hand::reads("At least"));
    CHECK(hand::reads(app.say("card.unknown")));
    CHECK(hand::reads(app.say("cost.no_price", {{"what", name_of("castor")}})));
    CHECK_FALSE(hand::reads("add up to"));  // nothing does, yet
    hand::press(name_of("castor"));
    enter_pack(app, "500", "8.90");
    CHECK(hand::reads("At least"));
    CHECK(hand::reads("100.0\xC2\xA0% of what is known"));
    REQUIRE(app.work.settings.prices.packs.size() == 1);
    CHECK(app.work.settings.prices.packs[0].what == "castor");
    CHECK(app.work.settings.prices.packs[0].paid == money::Amount{890});
    CHECK_FALSE(hand::reads(app.say("cost.no_price", {{"what", name_of("castor")}})));
    CHECK(app::cost_of(app)->amount > money::Amount{});
    hand::press(name_of("castor"));  // there is one now
    CHECK(hand::reads(app.say("paid.is_used")));
    hand::press(app.say("paid.other"));
    enter_pack(app, "1000", "12.00");
    CHECK(app.work.settings.prices.packs.size() == 2);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "cost: work, overhead and prices are typed, and the price says margin and mark-up") {
    open_cost(app);
    hand::write(app.say("cost_ui.minutes_batch"), "60");
    hand::write(app.say("cost_ui.hour"), "14");
    hand::write(app.say("cost_ui.overhead_percent"), "10");
    const price::Book& book = app.work.settings.prices;
    CHECK(price::making_of(book, app.work.open).minutes_batch == 60 * decimal::kOne);
    CHECK(book.hour == money::Sum{{1400}, "EUR"});
    CHECK(app::cost_of(app)->amount == money::Amount{1540});
    CHECK(hand::reads(app.say("money.amount", {{"n", "15.40"}, {"currency", "EUR"}})));
    hand::write(app.say("cost_ui.step", {{"name", app.say("cost_ui.wholesale")}}), "50");
    CHECK(book.wholesale == price::Step{price::By::margin, 50 * decimal::kOne});
    CHECK(hand::reads("mark-up 100.0"));
    hand::write(app.say("cost_ui.fixed"), "45");
    CHECK(hand::reads("sold bring in what is fixed"));
    hand::write(app.say("cost_ui.hour"), "14.005");  // there is no such coin
    CHECK(book.hour == money::Sum{{1400}, "EUR"});
}

TEST_CASE_FIXTURE(FirstVisit,
                  "cost: a price in another currency asks for its rate, and counts once it is there") {
    open_cost(app);
    hand::press(name_of("shea"));
    hand::write(app.say("paid.currency"), "gbp");
    enter_pack(app, "1 kg", "12");
    const std::string missing = app.say("cost.no_rate", {{"name", name_of("shea")}, {"what", "GBP"}});
    CHECK(hand::reads(missing));
    hand::press(app.say("rate.title"));
    hand::write(app.say("rate.from"), "gbp");
    hand::write(app.say("rate.amount"), "1");
    hand::write(app.say("rate.gives"), "1.16");
    hand::press(app.say("rate.add"));
    REQUIRE(app.work.settings.prices.rates.size() == 1);
    CHECK(app.work.settings.prices.rates[0].to == "EUR");
    app::close_sheet(app);
    draw_again();
    CHECK_FALSE(hand::reads(missing));
}

TEST_CASE_FIXTURE(FirstVisit, "cost: what cannot be read is not kept as what stood there before, but said") {
    open_cost(app);
    const price::Book& book = app.work.settings.prices;
    hand::press(name_of("castor"));
    hand::write(app.say("paid.price"), "5");
    for (const char* price : {"abc", "1,2,3", "-5", "99999999999999999999"}) {
        CAPTURE(price);
        enter_pack(app, "100", price);
        CHECK(app.ui.sheet == Sheet::pack);
        CHECK(book.packs.empty());
        CHECK(app.ui.message.find(price) != std::string::npos);
    }
    enter_pack(app, "100", "");
    CHECK(hand::reads(app.say("paid.price_missing")));
    hand::write(app.say("paid.currency"), "eu");
    enter_pack(app, "100", "5");
    CHECK(hand::reads(app.say("cost_ui.currency_form")));
    hand::write(app.say("paid.currency"), "eur");
    enter_pack(app, "100", "5");
    CHECK(book.packs.size() == 1);

    hand::press(app.say("rate.title"));
    hand::write(app.say("rate.from"), "gbp");
    hand::write(app.say("rate.gives"), "1.2");
    for (const char* amount : {"1", "abc", "-1"})
        hand::write(app.say("rate.amount"), amount);
    hand::press(app.say("rate.add"));
    CHECK(book.rates.empty());
    hand::write(app.say("rate.amount"), "0");  // per nothing
    hand::press(app.say("rate.add"));
    CHECK(book.rates.empty());
    hand::write(app.say("rate.amount"), "1");
    hand::press(app.say("rate.add"));
    CHECK(book.rates.size() == 1);
}

TEST_CASE_FIXTURE(FirstVisit, "cost: what was entered is there when the page is opened again") {
    open_cost(app);
    hand::press(name_of("castor"));
    enter_pack(app, "500", "8.90");
    const price::Book before = app.work.settings.prices;
    hand::open_page();
    CHECK(app.work.settings.prices == before);
}

TEST_CASE_FIXTURE(FirstVisit, "cost: a workshop says what it costs a head, on the page and on paper") {
    open_cost(app);
    hand::press(name_of("castor"));
    enter_pack(app, "500", "8.90");
    app.ui.screen = Screen::workshop;
    draw_again();
    REQUIRE(app::per_head(app).has_value());
    CHECK(hand::reads(app.say("workshop.per_head")));
    CHECK(hand::reads("prices are known for 10"));
}

TEST_CASE_FIXTURE(FirstVisit, "stock: what runs low stands first, and a batch record takes from the shelf") {
    open_cost(app);
    lot::Lot lot;
    lot.ingredient = "castor";
    lot.number = "C-1";
    lot.left = quantity::grams(100);
    lot.counted = "2026-11-01";
    REQUIRE(workspace::add_lot(app.work, lot, "lot", "2026-11-01T09:00:00Z"));
    hand::go(app.say("nav.stock"));
    CHECK_FALSE(hand::reads(app.say("stock.low")));
    app::show_card(app, "castor", false);
    draw_again();
    hand::write(app.say("lot.low_under"), "200");
    CHECK(app.work.settings.low == std::vector<lot::Threshold>{{"castor", quantity::grams(200)}});
    app::close_sheet(app);
    draw_again();
    CHECK(hand::reads(app.say("stock.low")));
    CHECK(described(app.say("stock.low_own", {{"left", app.grams(quantity::grams(100))},
                                              {"wanted", app.grams(quantity::grams(200))}})));
    app.ui.screen = Screen::batch;
    draw_again();
    app::begin_record(app);
    app::write_record(app);
    draw_again();
    hand::press(app.say("record_ui.as_planned"));
    hand::press(app.say("record_ui.lots_at_hand", {{"n", "1"}}));
    const quantity::Mass left = *workspace::find(app::shelf(app), "lot")->left();
    CHECK(left < quantity::grams(100));
    CHECK(described(app.say("record_ui.taken", {{"left", app.grams(left)}})));
    CHECK(workspace::find_lot(app.work, "lot")->left == quantity::grams(100));
    hand::open_page();
    CHECK(workspace::find(app::shelf(app), "lot")->left() == left);
}

}  // namespace test_screen_cost
