// Texts with letters beyond the shipped font: how they fall into lines, how they are cut, and that a picture
// is made once and kept. The widths are the stand-in's of platform_native.cpp: half an em a letter, a whole
// one for a wide letter.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "engine/utf8.h"
#include "engine/writing.h"
#include "hand.h"
#include "web/picture_text.h"
#include "web/text_lines.h"
#include "web/widget_text.h"

namespace test_picture_text {

using hand::FirstVisit;
using theme::Type;

namespace {

constexpr const char* kScripts[] = {
    "مرهم الشفاه بشمع العسل وزبدة الشيا",                        // Arabic
    "משחת שפתיים עם שעוות דבורים",                               // Hebrew
    "शहद का मोम और शिया मक्खन",                                   // Hindi
    "บาล์มทาปากขี้ผึ้งและเชียบัตเตอร์",                                  // Thai
    "蜜蝋とシアバターのリップクリーム。",                        // Japanese
    "밀랍과 시어버터로 만든 립밤",                               // Korean
    "Бальзам для губ с пчелиным воском",                         // Russian
    "Βάλσαμο χειλιών με κερί μέλισσας",                          // Greek
    "Sáp dưỡng môi với bơ hạt mỡ và sáp ong",                    // Vietnamese
    "👨‍👩‍👧‍👦👩🏽‍🌾🇯🇵🌿🧴",  // emoji
    "Che\u0301ri, cre\u0300me le\u0301ge\u0300re",               // combining marks
    "Balm مرهم 日本 12.5 % 🌿",                                   // all at once
};

std::vector<text_lines::Line> lines_of(const std::string& text, float width, Type type = Type::body) {
    std::vector<text_lines::Line> lines;
    text_lines::each(text, type, width, [&](const text_lines::Line& line) { lines.push_back(line); });
    return lines;
}

std::string without_spaces(std::string text) {
    std::erase(text, ' ');
    return text;
}

// Ends of letters, counted from the text's start.
bool is_letter_end(const std::string& text, std::size_t at) {
    std::size_t end = 0;
    while (end < at)
        end = writing::letter_end(text, end);
    return end == at;
}

// Draws it in a window of its own, in a frame of its own.
void draw(const std::string& text, std::uint32_t rgb = 0x22211E, Type type = Type::body) {
    ImGui::NewFrame();
    ImGui::SetNextWindowSize({300, 300});
    ImGui::Begin("drawn");
    widget::draw_wrapped(ImGui::GetCursorScreenPos(), text, type, theme::paint(rgb), 280);
    ImGui::End();
    ImGui::Render();
}

int drawn() {
    return platform::native::lines_drawn();
}

}  // namespace

TEST_CASE_FIXTURE(FirstVisit, "a text in letters of the font needs no picture, one with others does") {
    CHECK_FALSE(picture_text::needed("Shea butter, 12.5 % – crème brûlée, žluťoučký", Type::body));
    for (const char* text : kScripts) {
        CAPTURE(text);
        CHECK(picture_text::needed(text, Type::body));
    }
}

TEST_CASE_FIXTURE(
    FirstVisit,
    "all that is shipped is in letters of the font: while there is nothing else, nothing is made") {
    const words::Table words = words::spelled_out(app.words);
    for (const auto& [key, entry] : words.entries)
        for (const Type type : {Type::body, Type::strong, Type::small}) {
            CAPTURE(key);
            CHECK_FALSE(picture_text::needed(entry.other, type));
            CHECK_FALSE(picture_text::needed(entry.one, type));
        }
    for (const catalogue::Ingredient& ingredient : app.presets.catalogue.ingredients) {
        CAPTURE(ingredient.id);
        CHECK_FALSE(picture_text::needed(ingredient.name, Type::strong));
        for (const auto& [market, inci] : ingredient.inci)
            CHECK_FALSE(picture_text::needed(inci, Type::body));
    }
    for (const auto& [stem, recipe] : app.presets.recipes) {
        app::keep(app, recipe);
        for (const char* place : {"nav.formula", "nav.batch", "nav.stock", "nav.more", "nav.book"})
            hand::go(app.say(place));
    }
    CHECK(platform::native::lines_measured() == 0);
    CHECK(drawn() == 0);
    CHECK(picture_text::bytes_kept() == 0);
}

TEST_CASE_FIXTURE(FirstVisit,
                  "every script is broken into lines that have room, between letters, and nothing is lost") {
    for (const std::string text : kScripts)
        for (const float width : {60.0f, 110.0f, 240.0f}) {
            CAPTURE(text);
            CAPTURE(width);
            std::string all;
            for (const text_lines::Line& line : lines_of(text, width)) {
                CHECK(text_lines::width(line, Type::body) <= width);
                CHECK(is_letter_end(text, static_cast<std::size_t>(line.words.data() - text.data())));
                CHECK_FALSE(line.words.empty());
                all += line.words;
            }
            CHECK(without_spaces(all) == without_spaces(text));
        }
}

TEST_CASE_FIXTURE(FirstVisit, "words with spaces between them are kept whole where they have room") {
    const std::string text = "مرهم الشفاه بشمع العسل";
    for (const text_lines::Line& line : lines_of(text, 90)) {
        const std::size_t start = static_cast<std::size_t>(line.words.data() - text.data()),
                          end = start + line.words.size();
        CHECK((start == 0 || text[start - 1] == ' '));
        CHECK((end == text.size() || text[end] == ' '));
    }
}

TEST_CASE_FIXTURE(FirstVisit, "no line of Japanese begins with a full stop or ends with an opening bracket") {
    const std::string text = "湯煎で溶かす。「蜜蝋」を加える。冷ます。";
    for (float width = 32; width < 200; width += 7)
        for (const text_lines::Line& line : lines_of(text, width)) {
            CHECK(line.words.rfind("。", 0) != 0);
            CHECK_FALSE(line.words.ends_with("「"));
        }
}

TEST_CASE_FIXTURE(FirstVisit,
                  "Thai is broken between words where the host knows them, else between letters") {
    const std::string text = "ครีมทามือจากขี้ผึ้ง";
    const auto first = [&] { return std::string(lines_of(text, 50).front().words); };
    CHECK(first() == "ครีมทามื");
    text_lines::start_over();
    platform::native::set_words({"ครีม", "ทา", "มือ", "จาก", "ขี้ผึ้ง"});
    CHECK(first() == "ครีมทา");
    text_lines::start_over();
}

TEST_CASE_FIXTURE(FirstVisit, "each paragraph runs its own way, each of its lines as the paragraph does") {
    const auto lines = lines_of("مرهم Shea\nBalm مرهم\n\nplain", 0);
    REQUIRE(lines.size() == 4);
    CHECK(lines[0].right_to_left);
    CHECK(lines[0].pictured);
    CHECK_FALSE(lines[1].right_to_left);
    CHECK(lines[1].pictured);
    CHECK(lines[2].words.empty());
    CHECK_FALSE(lines[3].pictured);
    for (const text_lines::Line& line : lines_of("مرهم Shea Shea Shea Shea", 50)) {
        CHECK(line.right_to_left);
        CHECK(line.pictured);
    }
}

TEST_CASE_FIXTURE(FirstVisit, "a text is cut between letters, with an ellipsis, to what has room") {
    for (const std::string text : kScripts)
        for (const float width : {40.0f, 90.0f, 130.0f}) {
            CAPTURE(text);
            CAPTURE(width);
            const std::string cut = text_lines::cut(text, Type::body, width);
            CHECK(utf8::valid(cut));
            CHECK(cut.ends_with("…"));
            const std::string kept = cut.substr(0, cut.size() - std::string("…").size());
            CHECK(text.rfind(kept, 0) == 0);
            CHECK(is_letter_end(text, kept.size()));
            CHECK(widget::measure(cut, Type::body).x <= width + 1);
        }
    CHECK(writing::right_to_left(
        text_lines::cut(kScripts[0], Type::body, 60)));  // the ellipsis goes to the left
}

TEST_CASE_FIXTURE(FirstVisit,
                  "bytes that are no UTF-8 are measured, broken, cut and drawn as signs of their absence") {
    for (const std::string text : {"\xFF\xFE\xFD", "日\xE6\x97", "\xC3(", "مر\xD9", "a\xED\xA0\x80z"}) {
        CHECK(widget::measure(text, Type::body, 40).x > 0);
        CHECK_FALSE(text_lines::cut(text, Type::body, 10).empty());
        draw(text);
    }
    REQUIRE_FALSE(platform::native::lines().empty());
    for (const auto& [texture, line] : platform::native::lines())
        CHECK(utf8::valid(line.text));
    text_lines::start_over();
}

TEST_CASE_FIXTURE(FirstVisit, "a picture is drawn once for a type and colour and kept while it is seen") {
    text_lines::start_over();
    const int before = drawn();
    draw("蜜蝋");
    CHECK(drawn() == before + 1);
    const int measured = platform::native::lines_measured();
    for (int i = 0; i < 5; ++i)
        draw("蜜蝋");
    CHECK(drawn() == before + 1);
    CHECK(platform::native::lines_measured() == measured);
    draw("蜜蝋", 0xF2ECE2);
    CHECK(drawn() == before + 2);
    draw("蜜蝋", 0xF2ECE2, Type::strong);
    CHECK(drawn() == before + 3);
    CHECK(platform::native::lines().size() == 3);
    const platform::native::Line& last = platform::native::lines().rbegin()->second;
    CHECK(last.text == "蜜蝋");
    CHECK(last.rgb == 0xF2ECE2);
    CHECK(last.look.strong);
    CHECK_FALSE(last.look.right_to_left);
    text_lines::start_over();
    CHECK(platform::native::lines().empty());
    CHECK(picture_text::bytes_kept() == 0);
}

TEST_CASE_FIXTURE(FirstVisit, "a device of another density has its pictures drawn anew") {
    text_lines::start_over();
    draw("蜜蝋");
    const std::size_t coarse = picture_text::bytes_kept();
    platform::native::window().pixel_ratio = 3;
    draw("蜜蝋");
    CHECK(platform::native::lines().size() == 1);
    CHECK(picture_text::bytes_kept() > coarse);
    text_lines::start_over();
}

TEST_CASE_FIXTURE(FirstVisit, "however many texts go by, the pictures that are kept stay within their room") {
    text_lines::start_over();
    platform::native::window().pixel_ratio = 3;
    std::string text = "蜜蝋";
    for (int i = 0; i < 400; ++i)
        draw("蜜蝋蜜蝋蜜蝋蜜蝋蜜蝋 " + std::to_string(i), 0, Type::title);
    CHECK(picture_text::bytes_kept() <= (8u << 20) + (1u << 20));
    CHECK(platform::native::lines().size() < 200);
    bool last_is_kept = false;
    for (const auto& [texture, line] : platform::native::lines())
        last_is_kept = last_is_kept || line.text.ends_with(" 399");
    CHECK(last_is_kept);
    text_lines::start_over();
}

TEST_CASE_FIXTURE(FirstVisit, "after the graphics were lost every picture is made anew") {
    draw("蜜蝋");
    REQUIRE(platform::native::lines().size() == 1);
    hand::push(platform::Kind::context_lost);
    hand::settle();
    CHECK(platform::native::lines().empty());
    draw("蜜蝋");
    hand::push(platform::Kind::context_restored);
    hand::settle();
    CHECK(platform::native::lines().empty());
}

TEST_CASE_FIXTURE(FirstVisit, "a line out of sight is not made into a picture") {
    const int before = drawn();
    ImGui::NewFrame();
    ImGui::SetNextWindowSize({300, 300});
    ImGui::Begin("drawn");
    widget::draw_wrapped({10, 5000}, "蜜蝋", Type::body, 0xFFFFFFFF, 0);
    widget::draw_wrapped({10, -500}, "蜜蝋", Type::body, 0xFFFFFFFF, 0);
    ImGui::End();
    ImGui::Render();
    CHECK(drawn() == before);
}

TEST_CASE("letters are drawn in one place, where those that the font lacks are seen to") {
    for (const auto& entry :
         std::filesystem::directory_iterator(std::filesystem::path(TAREBENCH_SOURCE_DIR) / "web")) {
        const std::string name = entry.path().filename().string();
        if (entry.path().extension() != ".cpp" && entry.path().extension() != ".h") continue;
        std::ifstream stream(entry.path(), std::ios::binary);
        const std::string source{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
        for (const char* way : {"AddText(", "RenderText", "ImGui::Text", "ImGui::InputText", "ImGui::Button(",
                                "ImGui::LabelText"}) {
            CAPTURE(name);
            CAPTURE(way);
            CHECK((source.find(way) == std::string::npos ||
                   (name == "widget_text.cpp" && way == std::string("AddText("))));
        }
        for (const char* way : {"CalcTextSize", "CalcWordWrap"}) {
            CAPTURE(name);
            CHECK((source.find(way) == std::string::npos || name == "text_lines.cpp"));
        }
    }
}

}  // namespace test_picture_text
