// Every screen and every sheet, drawn without a window in every size that counts, light and dark: nothing
// breaks and all of it is whole (whole.h). How it looks is for eyes: web/run and the pictures of tests/page.
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "engine/words_test_language.h"
#include "web/theme.h"
#include "web/widget_keypad.h"
#include "web/widget_text.h"
#include "whole.h"

namespace test_screens {

using namespace whole;
using hand::FirstVisit;

TEST_CASE_FIXTURE(FirstVisit, "a new page shows an empty book, starters and the way to a new recipe") {
    CHECK(hand::see(Role::heading, app.say("book.title")) != nullptr);
    CHECK(hand::reads(app.say("book.empty")));
    CHECK(hand::see(Role::button, app.say("book.new")) != nullptr);
    for (const auto& [stem, recipe] : app.presets.recipes)
        CHECK(hand::see(Role::button, recipe.title) != nullptr);
    CHECK(faults() == "");
}

TEST_CASE_FIXTURE(FirstVisit, "every screen is whole in every size, light and dark, for every recipe") {
    for (const workspace::Recipe& recipe : recipes()) {
        CAPTURE(recipe.title);
        app::keep(app, recipe);
        draw_again();
        in_every_size(app, [&] {
            for (const Screen screen : kScreens) {
                CAPTURE(static_cast<int>(screen));
                show_screen(app, screen);
                draw_again();
                CHECK(faults() == "");
                CHECK(overlaps() == "");
            }
        });
    }
}

TEST_CASE_FIXTURE(
    FirstVisit,
    "every sheet is whole, on a phone for every recipe, and for one in every size, light and dark") {
    app::keep(app, app::blank_recipe(app));
    app::bin(app, app.work.open);
    const auto look = [&](const workspace::Recipe& recipe) {
        for (const Sheet sheet : all_sheets()) {
            CAPTURE(static_cast<int>(sheet));
            const bool of_line = sheet == Sheet::line || sheet == Sheet::hold || sheet == Sheet::give_way ||
                                 sheet == Sheet::fit_amount || sheet == Sheet::in_amounts;
            if (recipe.formula.lines.empty() && of_line) continue;
            open_sheet(app, sheet);
            REQUIRE(app.ui.sheet == sheet);
            CHECK(faults() == "");
            app::close_sheet(app);
        }
    };
    for (const workspace::Recipe& recipe : recipes()) {
        CAPTURE(recipe.title);
        app::keep(app, recipe);
        draw_again();
        look(recipe);
    }
    const workspace::Recipe lotion = shipped::recipe("kitchen_garden_hand_lotion");
    app::keep(app, lotion);
    draw_again();
    in_every_size(app, [&] { look(lotion); });
}

// A title may be cut, for it can be read whole on the recipe's sheet; words of the table may not.
TEST_CASE_FIXTURE(FirstVisit, "in a language a third longer all is whole, and no words are cut on a phone") {
    platform::native::window().language = std::string(words::kTestLanguage);
    workspace::Recipe recipe = shipped::recipe("potting_shed_hand_salve");
    recipe.title = "Salve";
    app::keep(app, recipe);
    for (const Size size : {Size{360, 640}, Size{320, 568}}) {
        hand::resize(size.width, size.height);
        CAPTURE(size.width);
        REQUIRE(app.say("nav.book") == "Böööök");
        const auto nothing_cut = [&] {
            for (const std::string& words : drawn_items::cut_words()) {
                const bool typed = !app.work.own.empty() && words == app.work.own.front().ingredient.name;
                CHECK_MESSAGE((typed || size.width < 360), "cut: ", words);
            }
        };
        for (const Screen screen : kScreens) {
            CAPTURE(static_cast<int>(screen));
            show_screen(app, screen);
            draw_again();
            CHECK(faults() == "");
            CHECK(overlaps() == "");
            nothing_cut();
        }
        for (const Sheet sheet : all_sheets()) {
            CAPTURE(static_cast<int>(sheet));
            open_sheet(app, sheet);
            CHECK(faults() == "");
            nothing_cut();
            app::close_sheet(app);
        }
    }
}

// A person's own size of letters. Twice the usual one on phones (WCAG 2.2, success criterion 1.4.4), between
// the two on a tablet, where a column is wide enough for what stands side by side.
struct Letters {
    Size size;
    float scale;
};
constexpr Letters kLarge[] = {{{360, 640}, 2}, {{320, 568}, 2}, {{360, 640}, 1.3f}, {{820, 1180}, 1.5f}};

template <class Look>
void in_large_letters(app::App& app, Look look) {
    for (const workspace::Recipe& recipe : {difficult(), app.presets.recipes.front().second}) {
        CAPTURE(recipe.title);
        app::keep(app, recipe);
        for (const Letters& letters : kLarge) {
            CAPTURE(letters.size.width);
            CAPTURE(letters.scale);
            platform::native::window().text_scale = letters.scale;
            hand::resize(letters.size.width, letters.size.height);
            look();
            app::close_sheet(app);
        }
    }
}

TEST_CASE_FIXTURE(FirstVisit, "every screen is whole in large letters") {
    in_large_letters(app, [&] {
        for (const Screen screen : kScreens) {
            CAPTURE(static_cast<int>(screen));
            show_screen(app, screen);
            draw_again();
            CHECK(faults() == "");
            CHECK(overlaps() == "");
        }
    });
}

TEST_CASE_FIXTURE(FirstVisit, "every sheet is whole in large letters") {
    app::keep(app, app::blank_recipe(app));
    app::bin(app, app.work.open);
    in_large_letters(app, [&] {
        for (const Sheet sheet : all_sheets()) {
            CAPTURE(static_cast<int>(sheet));
            open_sheet(app, sheet);
            REQUIRE(app.ui.sheet == sheet);
            CHECK(faults() == "");
            app::close_sheet(app);
        }
    });
}

// What a person has typed may be cut where it can be read whole elsewhere; words of the table may not.
TEST_CASE_FIXTURE(FirstVisit, "no words of ours are cut in large letters") {
    workspace::Recipe recipe = shipped::recipe("potting_shed_hand_salve");
    recipe.title = "Salve";
    app::keep(app, recipe);
    for (const Letters& letters : kLarge) {
        CAPTURE(letters.size.width);
        CAPTURE(letters.scale);
        platform::native::window().text_scale = letters.scale;
        hand::resize(letters.size.width, letters.size.height);
        const auto nothing_cut = [&] {
            for (const std::string& words : drawn_items::cut_words()) {
                bool typed = !app.work.own.empty() && words == app.work.own.front().ingredient.name;
                for (const Node& node : mirror::nodes())  // a field's, which shows all while it is edited
                    typed = typed || node.value == words;
                CHECK_MESSAGE(typed, "cut: ", words);
            }
        };
        for (const Screen screen : kScreens) {
            show_screen(app, screen);
            draw_again();
            nothing_cut();
        }
        for (const Sheet sheet : all_sheets()) {
            open_sheet(app, sheet);
            nothing_cut();
            app::close_sheet(app);
        }
    }
}

TEST_CASE_FIXTURE(FirstVisit,
                  "letters twice as large make what holds them twice as high, and the bar no wider") {
    app::keep(app, app.presets.recipes.front().second);
    draw_again();
    const auto high = [&](Role role, const std::string& name) {
        return hand::found(hand::see(role, name), name).height;
    };
    const std::string steps = app.say("formula.steps"), place = app.say("nav.formula");
    const float heading = high(Role::heading, steps), tab = high(Role::tab, place);
    const int changes = platform::native::font_changes();
    platform::native::window().text_scale = 2;
    hand::push(platform::Kind::preferences);
    hand::settle();
    CHECK(platform::native::font_changes() == changes + 1);
    CHECK(high(Role::heading, steps) == doctest::Approx(2 * heading));
    CHECK(high(Role::tab, place) > tab);
    platform::native::window().text_scale = 0.8f;  // smaller ones are no smaller: targets, legibility
    hand::push(platform::Kind::preferences);
    hand::settle();
    CHECK(high(Role::heading, steps) == heading);
}

TEST_CASE_FIXTURE(FirstVisit, "the places of the bar keep their words whole in large letters") {
    platform::native::window().text_scale = 2;
    hand::resize(320, 568);
    for (const char* place : {"nav.book", "nav.formula", "nav.batch", "nav.stock", "nav.more"}) {
        CAPTURE(place);
        CHECK(widget::measure(app.say(place), theme::Type::label).x <= 320.0f / 5);
    }
}

TEST_CASE_FIXTURE(FirstVisit,
                  "in large letters the keypad leaves its field in sight and all keys in the window") {
    platform::native::window().text_scale = 2;
    app::keep(app, app.presets.recipes.front().second);
    app.ui.screen = Screen::formula;
    hand::resize(320, 568);
    hand::tap(160, 3);  // by finger from here on
    for (const Node& node : mirror::nodes())
        if (node.role == Role::field_decimal && !node.disabled) {
            hand::push(platform::Kind::node_click, node.id);
            hand::settle();
            break;
        }
    REQUIRE(app.kit.keypad.open());
    CHECK(faults() == "");
    const Node done = hand::button(app.say("keypad.done"));
    CHECK(done.y + done.height <= 568);
    for (const Node& node : mirror::nodes())
        if (node.id == app.kit.keypad.target) {
            CHECK(node.y >= theme::top_bar());
            CHECK(node.y + node.height <= 568 - widget::keypad_height());
        }
}

TEST_CASE_FIXTURE(FirstVisit,
                  "the finest screen in the largest letters needs no texture that an old phone refuses") {
    platform::native::window().pixel_ratio = 3;
    platform::native::window().text_scale = 2;
    draw_again();
    CHECK(ImGui::GetIO().Fonts->TexHeight <= 4096);
    CHECK(ImGui::GetIO().Fonts->TexWidth <= 2048);
}

// What is drawn in a colour that the system has not: the first of them, "" when there is none.
std::string foreign_colour(const platform::SystemColours& s) {
    const std::set<std::uint32_t> own{s.canvas,      s.canvas_text,    s.link_text, s.button_face,
                                      s.button_text, s.button_border,  s.field,     s.field_text,
                                      s.highlight,   s.highlight_text, s.gray_text};
    for (const ImDrawList* list : ImGui::GetDrawData()->CmdLists)
        for (const ImDrawVert& point : list->VtxBuffer) {
            const std::uint32_t rgb = (point.col >> IM_COL32_R_SHIFT & 255) << 16 |
                                      (point.col >> IM_COL32_G_SHIFT & 255) << 8 |
                                      (point.col >> IM_COL32_B_SHIFT & 255);
            if (own.count(rgb) > 0 || point.col >> IM_COL32_A_SHIFT == 0) continue;
            std::ostringstream out;
            out << std::hex << rgb << std::dec << " at " << point.pos.x << ", " << point.pos.y << " by "
                << list->_OwnerName;
            return out.str();
        }
    return "";
}

TEST_CASE_FIXTURE(FirstVisit, "where the system forces its colours nothing is drawn in any other") {
    platform::Window& window = platform::native::window();
    window.forced_colours = true;
    window.system = {0x000000, 0xFFFF00, 0x00FFFF, 0x101010, 0xFFFF10, 0xFFFF20,
                     0x202020, 0xFFFF30, 0x0000A0, 0xFFFFFF, 0x00FF00};
    for (const workspace::Recipe& recipe : {over_full(), app.presets.recipes.front().second}) {
        app::keep(app, recipe);
        app::tell(app, app.say("store.refused"), true);
        for (const Screen screen : kScreens) {
            CAPTURE(static_cast<int>(screen));
            show_screen(app, screen);
            draw_again();
            CHECK(foreign_colour(window.system) == "");
        }
        for (const Sheet sheet : all_sheets()) {
            CAPTURE(static_cast<int>(sheet));
            open_sheet(app, sheet);
            CHECK(faults() == "");
            CHECK(foreign_colour(window.system) == "");
            app::close_sheet(app);
        }
    }
}

TEST_CASE_FIXTURE(FirstVisit, "another size of letters, contrast or colour is drawn at once") {
    platform::Window& window = platform::native::window();
    const auto drawn_once = [&](auto change) {
        const int before = platform::native::drawn();
        change();
        hand::push(platform::Kind::preferences);
        hand::settle();
        CHECK(platform::native::drawn() == before + 1);
    };
    drawn_once([&] { window.text_scale = 1.5f; });
    drawn_once([&] { window.more_contrast = true; });
    CHECK(theme::colours().paper == theme::palette(false, true).paper);
    drawn_once([&] { window.forced_colours = true; });
    CHECK(theme::colours().link == window.system.link_text);
    drawn_once([&] { window.system.link_text = 0x551A8B; });
    CHECK(theme::colours().link == 0x551A8B);
}

// Nothing moves but the list under a finger and, where it is wished for, its gliding on (test_touch.cpp).
TEST_CASE_FIXTURE(FirstVisit, "a sheet and the keypad are there at once: one picture, and nothing follows") {
    for (const bool reduced : {false, true}) {
        CAPTURE(reduced);
        platform::native::window().reduced_motion = reduced;
        app::keep(app, app.presets.recipes.front().second);
        app.ui.screen = Screen::formula;
        draw_again();
        const auto one_picture = [&](auto deed) {
            const int before = platform::native::drawn();
            deed();
            CHECK(platform::native::drawn() == before + 1);
            hand::wait(2000);
            CHECK(platform::native::drawn() == before + 1);
        };
        one_picture([&] { hand::press(app.say("top.recipe")); });
        one_picture([&] { hand::press(app.say("sheet_ui.close")); });
    }
}

TEST_CASE_FIXTURE(FirstVisit, "screens without an open recipe lead to the book") {
    for (const char* place : {"Formula", "Batch"}) {
        hand::go(place);
        CHECK(faults() == "");
        hand::press(app.say("formula.to_book"));
        CHECK(app.ui.screen == Screen::book);
    }
}

TEST_CASE_FIXTURE(FirstVisit,
                  "the keypad, a message and a problem in a field are whole at the smallest size") {
    app::keep(app, app.presets.recipes.front().second);
    hand::resize(320, 568);
    app::tell(app, app.say("store.refused"), true);
    hand::push(platform::Kind::resized);
    hand::settle();
    CHECK(faults() == "");
    for (const Node& node : mirror::nodes())
        if (node.role == Role::field_decimal && node.visible && !node.disabled) {
            hand::tap(Node(node));
            break;
        }
    REQUIRE(app.kit.keypad.open());
    CHECK(faults() == "");
    for (const char* key : {"1", "2", "3", ".", "4", ".", "5"})
        hand::key(key);
    CHECK(faults() == "");
    hand::key("Escape");
    CHECK(faults() == "");
}

TEST_CASE_FIXTURE(FirstVisit,
                  "a notch, a home bar and a phone's keyboard cover nothing that is to be pressed") {
    platform::native::window().inset_top = 44;
    platform::native::window().inset_bottom = 34;
    app::keep(app, app.presets.recipes.front().second);
    for (const Screen screen : kScreens) {
        show_screen(app, screen);
        draw_again();
        CHECK(faults() == "");
        for (const Node& node : mirror::nodes())
            if (node.visible && interactive(node)) {
                CAPTURE(node.name);
                CHECK(node.y >= 44);
                CHECK(node.y + node.height / 2 <= 640 - 34);
            }
    }
    platform::native::window().keyboard = 300;
    draw_again();
    for (const Node& node : mirror::nodes())
        if (node.visible && interactive(node)) CHECK(node.y + node.height / 2 <= 640 - 300);
}

TEST_CASE_FIXTURE(FirstVisit, "a finer device draws finer letters and lays out the same") {
    const Node before = hand::button("New recipe");
    const int changes = platform::native::font_changes();
    platform::native::window().pixel_ratio = 3;
    draw_again();
    CHECK(platform::native::font_changes() == changes + 1);
    const Node after = hand::button("New recipe");
    CHECK(after.height == before.height);
    CHECK(after.width == doctest::Approx(before.width).epsilon(0.02));
    platform::native::window().pixel_ratio = 2;
    draw_again();
}

TEST_CASE_FIXTURE(FirstVisit, "what happens is drawn once, and not at all where it changes nothing") {
    app::keep(app, app.presets.recipes.front().second);
    draw_again();
    const int before = platform::native::drawn();
    hand::go(app.say("nav.batch"));
    CHECK(platform::native::drawn() == before + 1);
    hand::push(platform::Kind::copied);
    hand::settle();
    CHECK(platform::native::drawn() == before + 2);
    hand::push(platform::Kind::saved);
    hand::settle();
    CHECK(platform::native::drawn() == before + 2);
    hand::push(platform::Kind::hidden);  // by then the canvas may have lost it
    hand::settle();
    CHECK(platform::native::drawn() == before + 3);
}

TEST_CASE_FIXTURE(FirstVisit, "nothing is drawn while nothing happens") {
    app::keep(app, app.presets.recipes.front().second);
    draw_again();
    const int drawn = platform::native::drawn(), mirrors = platform::native::mirrors();
    for (int i = 0; i < 100; ++i)
        hand::wait(100);
    CHECK(platform::native::drawn() == drawn);
    CHECK(platform::native::mirrors() == mirrors);
}

}  // namespace test_screens
