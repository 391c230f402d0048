// Any script in a recipe: kept, sent, found and printed as it was written.
#include <string>

#include "doctest/doctest.h"
#include "engine/catalogue.h"
#include "engine/markup.h"
#include "engine/share.h"
#include "engine/store.h"
#include "engine/utf8.h"
#include "engine/workspace_book.h"
#include "engine/workspace_own.h"
#include "shipped.h"

namespace test_scripts {

namespace {

struct Script {
    const char *name, *title, *ingredient, *note, *part;  // part: of the title, as it may be searched for
};
constexpr Script kScripts[] = {
    {"Arabic", "مرهم الشفاه", "زبدة الشيا", "تُذاب في حمام مائي.", "الشفاه"},
    {"Hebrew", "משחת שפתיים", "שעוות דבורים", "ממיסים באמבט מים.", "שפתיים"},
    {"Hindi", "होंठों का बाम", "मधुमोम", "पानी के ऊपर पिघलाएँ।", "बाम"},
    {"Thai", "ลิปบาล์ม", "ขี้ผึ้ง", "ละลายในอ่างน้ำร้อน", "บาล์ม"},
    {"Japanese", "リップクリーム", "蜜蝋", "湯煎で溶かす。", "クリーム"},
    {"Korean", "립밤", "밀랍", "중탕으로 녹인다.", "밤"},
    {"Russian", "Бальзам для губ", "Пчелиный воск", "Растопить на водяной бане.", "бальзам"},
    {"Greek", "Βάλσαμο χειλιών", "Κερί μέλισσας", "Λιώνουμε σε μπεν μαρί.", "ΒΆΛΣΑΜΟ"},
    {"Vietnamese", "Son Dưỡng Ẩm", "Sáp ong", "Đun cách thủy.", "ẩm"},
    {"emoji", "🌿 👩🏽‍🌾 balm 🇯🇵", "🐝 wax", "👨‍👩‍👧‍👦 ❤️",
     "👩🏽‍🌾"},
    {"combining marks", "Cre\u0301me", "Cire\u0302", "a\u0301\u0323\u0308", "e\u0301"},
};

workspace::Recipe recipe_of(const Script& script) {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    catalogue::Ingredient own;
    own.id = "own_1";
    own.name = script.ingredient;
    own.role = "wax";
    own.source = script.note;
    recipe.title = script.title;
    recipe.notes = script.note;
    recipe.own = {workspace::as_own(own)};
    recipe.formula.lines.front().ingredient = own.id;
    recipe.formula.lines.back().name = script.ingredient;
    recipe.steps = {{"", script.note, {}}};
    return recipe;
}

workspace::Workspace book() {
    workspace::Workspace work;
    for (const Script& script : kScripts)
        workspace::add(work, script.name, recipe_of(script), "2026-11-25T12:00:00Z");
    return work;
}

std::string found_by(const std::string& search) {
    const workspace::Workspace work = book();
    std::string all;
    for (const workspace::Kept* kept :
         workspace_book::shown(work, shipped::presets().catalogue, {search, "", workspace::Sort::title}))
        all += (all.empty() ? "" : ", ") + kept->id;
    return all;
}

}  // namespace

TEST_CASE("scripts: a recipe in any script comes back from its file and its link, letter by letter") {
    for (const Script& script : kScripts) {
        CAPTURE(script.name);
        const workspace::Recipe recipe = recipe_of(script);
        CHECK(store::read_recipe(store::write_recipe(recipe)).value() == recipe);
        const auto link = share::write(recipe, shipped::presets().catalogue);
        REQUIRE(link.ok());
        CHECK(share::read(*link, shipped::presets().catalogue).value() == recipe);
    }
}

TEST_CASE("scripts: a recipe is found by its title, its ingredient, whatever the case, and by nothing else") {
    for (const Script& script : kScripts) {
        CAPTURE(script.name);
        CHECK(found_by(script.part) == script.name);
        CHECK(found_by(script.ingredient) == script.name);
    }
    CHECK(found_by("ПЧЕЛИНЫЙ воск") == "Russian");
    CHECK(found_by("χειλιών") == "Greek");
    CHECK(found_by("リップ　蜜蝋") == "Japanese");  // with the wide space of its keyboard
    CHECK(found_by("蜜　リップ　苺") == "");
    CHECK(found_by("蜞") == "");  // begins with the bytes of a letter that is there, and is another
    CHECK(found_by("\xFF") == "");
}

TEST_CASE("scripts: sorting by title knows small letters from capital ones in no script") {
    workspace::Workspace work;
    for (const char* title : {"Яблоко", "абрикос", "Бальзам", "ёлка", "Ёж"}) {
        workspace::Recipe recipe;
        recipe.title = title;
        workspace::add(work, title, recipe, "2026-11-25T12:00:00Z");
    }
    std::string all;
    for (const workspace::Kept* kept :
         workspace_book::shown(work, shipped::presets().catalogue, {"", "", workspace::Sort::title}))
        all += kept->recipe.title + " ";
    CHECK(all == "абрикос Бальзам Яблоко Ёж ёлка ");
}

TEST_CASE("scripts: small letters of all alphabets that have two sorts, and nothing else changes") {
    CHECK(utf8::lowered("ÄÖÜ×ÞÐ ÿŸ") == "äöü×þð ÿÿ");
    CHECK(utf8::lowered("ŁŻŠŇİıŒĦ") == "łżšňİıœħ");
    CHECK(utf8::lowered("ȘȚ") == "șț");
    CHECK(utf8::lowered("ΆΈΉΊΌΎΏ ΑΩ ΛΌΓΟΣ λόγος") == "άέήίόύώ αω λόγοσ λόγοσ");
    CHECK(utf8::lowered("ЀЁЏАЯ Ґ Ӓ") == "ѐёџая ґ ӓ");
    CHECK(utf8::lowered("ԱՖ") == "աֆ");
    CHECK(utf8::lowered("ẨỸ Ḗ") == "ẩỹ ḗ");
    CHECK(utf8::lowered("ＡＺ") == "ａｚ");
    for (const char* text : {"مرهم", "שמן", "मोम", "ขี้ผึ้ง", "蜜蝋", "밀랍", "🌿", "\xFF\xC3", "ß", "µ½"})
        CHECK(utf8::lowered(text) == text);
}

TEST_CASE("scripts: an own ingredient in any script is found in the catalogue") {
    catalogue::Catalogue mine;
    for (const Script& script : kScripts) {
        catalogue::Ingredient one;
        one.id = std::string("own_") + script.name;
        one.name = script.ingredient;
        mine.ingredients.push_back(one);
    }
    for (const Script& script : kScripts) {
        CAPTURE(script.name);
        const auto found = catalogue::search(mine, script.ingredient, 5);
        REQUIRE(found.size() == 1);
        CHECK(found.front()->name == script.ingredient);
    }
    CHECK(catalogue::search(mine, "κερί ΜΈΛΙΣΣΑς", 5).size() == 1);
}

TEST_CASE("scripts: on paper a text from right to left says so, and others are written as ever") {
    markup::Writer page;
    page.leaf("h1", "مرهم 12");
    page.leaf("td", "蜜蝋", {{"class", "n"}});
    page.leaf("td", "Shea שמן", {{"class", "n"}});
    page.open("li");
    page.text("שמן");
    page.text("oil");
    page.close();
    CHECK(page.finish() ==
          "<!doctype html>\n<h1 dir=\"auto\">مرهم 12</h1>\n<td class=\"n\">蜜蝋</td>\n"
          "<td class=\"n\" dir=\"auto\">Shea שמן</td>\n<li><bdi>שמן</bdi>oil</li>\n");
}

}  // namespace test_scripts
