// Screens and sheets with texts in letters that the page's own font lacks: whole in every size, the mirror
// with every letter, and each text one picture a line and no more.
#include <string>

#include "engine/writing.h"
#include "web/text_lines.h"
#include "whole.h"

namespace test_screen_scripts {

using namespace whole;
using hand::FirstVisit;

namespace {

constexpr const char* kTitle = "مرهم الشفاه بشمع العسل وزبدة الشيا";
constexpr const char* kWax = "蜜蝋のワックスと木の実の油から作ったやわらかい練りもの";
constexpr const char* kShea = "زبدة الشيا غير المكررة المعصورة على البارد";
constexpr const char* kNote =
    "Melt 🌿 slowly; 湯煎で溶かす。「蜜蝋」を加える。\n\nתערובת של שעווה ושמן, 70 °C";
constexpr const char* kStep = "ละลายในอ่างน้ำร้อนจนเป็นเนื้อเดียวกันแล้วเทลงในภาชนะ";

workspace::Recipe in_many_scripts() {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    recipe.title = kTitle;
    catalogue::Ingredient wax;
    wax.id = "own_wax";
    wax.name = kWax;
    wax.role = "wax";
    wax.source = "市場";
    recipe.own = {workspace::as_own(wax)};
    recipe.formula.lines.front().ingredient = wax.id;
    recipe.formula.lines.back().name = kShea;
    recipe.steps = {{recipe.formula.phases.front().id, kStep, 30}, {"", kNote, {}}};
    recipe.notes = kNote;
    return recipe;
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "screens with names in many scripts are whole in every size, light and dark") {
    app::keep(app, in_many_scripts());
    app.work.recipes.front().tags = {"هدية", "冬", "зима"};
    draw_again();
    in_every_size(app, [&] {
        for (const Screen screen : kScreens) {
            CAPTURE(static_cast<int>(screen));
            show_screen(app, screen);
            draw_again();
            CHECK(faults(Words::of_anyone) == "");
            CHECK(overlaps() == "");
        }
        for (const Sheet sheet : {Sheet::recipe, Sheet::rename, Sheet::tags, Sheet::line, Sheet::give_way,
                                  Sheet::in_amounts, Sheet::share, Sheet::ingredient, Sheet::to_hundred}) {
            CAPTURE(static_cast<int>(sheet));
            open_sheet(app, sheet);
            CHECK(faults(Words::of_anyone) == "");
            app::close_sheet(app);
        }
    });
}

TEST_CASE_FIXTURE(FirstVisit, "the mirror has such texts whole, however they are cut on the picture") {
    app::keep(app, in_many_scripts());
    draw_again();
    app.ui.screen = Screen::formula;
    draw_again();
    CHECK(hand::see(Role::heading, kTitle) != nullptr);
    CHECK(hand::see(Role::button, kWax) != nullptr);
    CHECK(hand::field(app.say("formula.notes")).value == kNote);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "a page that stands still draws none of its pictures again, another theme all it shows") {
    text_lines::start_over();
    app::keep(app, in_many_scripts());
    app.ui.screen = Screen::formula;
    draw_again();
    const int once = platform::native::lines_drawn();
    CHECK(once > 3);
    for (int i = 0; i < 4; ++i)
        draw_again();
    CHECK(platform::native::lines_drawn() == once);
    platform::native::window().prefers_dark = !platform::native::window().prefers_dark;
    hand::push(platform::Kind::preferences);
    hand::settle();
    const int twice = platform::native::lines_drawn();
    CHECK(twice > once);
    draw_again();
    CHECK(platform::native::lines_drawn() == twice);
}

TEST_CASE_FIXTURE(
    FirstVisit, "a name from right to left typed by hand is kept, told in a sentence of its own, and sent") {
    app::keep(app, app::blank_recipe(app));
    draw_again();
    hand::press(app.say("top.recipe"));
    hand::press(app.say("recipe.rename"));
    hand::write(app.say("recipe.title"), kTitle);
    hand::press(app.say("recipe.rename_done"));
    REQUIRE(app::open_recipe(app) != nullptr);
    CHECK(app::open_recipe(app)->title == kTitle);
    CHECK(app.say("book.menu_of", {{"title", kTitle}}).find(writing::set_apart(kTitle)) != std::string::npos);
    hand::open_page();
    REQUIRE(app::open_recipe(app) != nullptr);
    CHECK(app::open_recipe(app)->title == kTitle);
}

TEST_CASE_FIXTURE(FirstVisit, "a text too long for its field is cut between letters, not within one") {
    app::keep(app, app::blank_recipe(app));
    draw_again();
    hand::press(app.say("top.recipe"));
    hand::press(app.say("recipe.rename"));
    std::string families;
    for (int i = 0; i < 10; ++i)
        families += "👨‍👩‍👧‍👦";
    hand::write(app.say("recipe.title"), families);
    hand::press(app.say("recipe.rename_done"));
    const std::string title = app::open_recipe(app)->title;
    CHECK(title.size() <= workspace::kMostTitleBytes);
    CHECK_FALSE(title.empty());
    CHECK(title.size() % std::string("👨‍👩‍👧‍👦").size() == 0);
}

}  // namespace test_screen_scripts
