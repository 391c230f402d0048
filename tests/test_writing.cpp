// Letters as a reader counts them, the way a text runs, where a line may end. Expected from Unicode Standard
// Annexes #29 (its table 1a and the emoji rules), #9 (P2, P3) and #14, and from how the scripts are set in
// print.
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/words.h"
#include "engine/writing.h"

namespace test_writing {

namespace {

std::vector<std::string> letters(const std::string& text) {
    std::vector<std::string> all;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = writing::letter_end(text, at);
        REQUIRE(end > at);
        all.push_back(text.substr(at, end - at));
        at = end;
    }
    return all;
}

using Letters = std::vector<std::string>;

// The text with a stroke wherever a line may end between two letters.
std::string with_breaks(const std::string& text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = writing::letter_end(text, at);
        out += text.substr(at, end - at);
        if (writing::may_break(text, end)) out += "|";
        at = end;
    }
    return out;
}

}  // namespace

TEST_CASE("a letter ends where the next one begins: Latin, Greek, Cyrillic, kana") {
    CHECK(letters("Oil") == Letters{"O", "i", "l"});
    CHECK(letters("Λάδι") == Letters{"Λ", "ά", "δ", "ι"});
    CHECK(letters("Крем") == Letters{"К", "р", "е", "м"});
    CHECK(letters("シア") == Letters{"シ", "ア"});
    CHECK(letters("").empty());
}

TEST_CASE("marks stay with their letter") {
    CHECK(letters("e\u0301a") == Letters{"e\u0301", "a"});        // combining acute
    CHECK(letters("o\u031B\u0301") == Letters{"o\u031B\u0301"});  // Vietnamese, taken apart
    CHECK(letters("شَمْع") == Letters{"شَ", "مْ", "ع"});              // Arabic vowel signs
    CHECK(letters("שֶׁמֶן") == Letters{"שֶׁ", "מֶ", "ן"});              // Hebrew points
    CHECK(letters("ที่นี่") == Letters{"ที่", "นี่"});                    // Thai vowel and tone
    CHECK(letters("か\u3099") == Letters{"か\u3099"});            // voiced by a mark of its own
    CHECK(letters("\u1112\u1161\u11AB\u1100") ==
          Letters{"\u1112\u1161\u11AB", "\u1100"});  // conjoining hangul
}

TEST_CASE("consonants of India that are bound together are one letter") {
    CHECK(letters("क्षि") == Letters{"क्षि"});
    CHECK(letters("हिन्दी") == Letters{"हि", "न्दी"});
    CHECK(letters("ক্ত") == Letters{"ক্ত"});
}

TEST_CASE("families, flags, skin tones and keycaps are one letter each") {
    CHECK(letters("👩‍🌾👨‍👩‍👧‍👦") ==
          Letters{"👩‍🌾", "👨‍👩‍👧‍👦"});
    CHECK(letters("🇫🇷🇯🇵") == Letters{"🇫🇷", "🇯🇵"});
    CHECK(letters("👍🏽!") == Letters{"👍🏽", "!"});
    CHECK(letters("1️⃣2") == Letters{"1️⃣", "2"});
    CHECK(letters("❤️") == Letters{"❤️"});
}

TEST_CASE("bytes that are no UTF-8 are a letter each and end") {
    CHECK(letters("\xFF\xFE") == Letters{"\xFF", "\xFE"});
    CHECK(letters("a\xE6\x97") == Letters{"a", "\xE6", "\x97"});
    CHECK(letters("\xCC\x81") == Letters{"\xCC\x81"});  // a mark with no letter
}

TEST_CASE("a text runs as its first letter with a direction does") {
    CHECK(writing::right_to_left("مرهم الشفاه"));
    CHECK(writing::right_to_left("12 % שמן"));
    CHECK(writing::right_to_left("(«مرهم»)"));
    CHECK(writing::right_to_left("🌿 مرهم"));
    CHECK_FALSE(writing::right_to_left("Balm مرهم"));
    CHECK_FALSE(writing::right_to_left("日本 שמן"));
    CHECK_FALSE(writing::right_to_left("Λάδι"));
    CHECK_FALSE(writing::right_to_left("١٢ %"));  // figures alone have none
    CHECK_FALSE(writing::right_to_left("🌿 12"));
    CHECK_FALSE(writing::right_to_left(""));
    CHECK_FALSE(writing::right_to_left("\xFF\xFE"));
}

TEST_CASE("between ideographs and kana a line may end, but not before what closes or after what opens") {
    CHECK(with_breaks("日本語") == "日|本|語");
    CHECK(with_breaks("湯煎で、溶かす。") == "湯|煎|で、|溶|か|す。");
    CHECK(with_breaks("「蜜蝋」を") == "「蜜|蝋」|を");
    CHECK(with_breaks("シャンプー") == "シャ|ン|プー");
    CHECK(with_breaks("🌿🌿") == "🌿|🌿");
}

TEST_CASE("words of scripts with spaces are not torn") {
    for (const std::string text : {"butter", "Крем", "مرهم", "שמן", "한국어", "हिन्दी", "12.5", "e\u0301a"}) {
        CAPTURE(text);
        CHECK(with_breaks(text) == text);
    }
}

TEST_CASE("Thai may end a line between letters, but not after a vowel that is written first") {
    CHECK(with_breaks("เนย") == "เน|ย");
    CHECK(with_breaks("น้ำมัน") == "น้ำ|มั|น");
}

TEST_CASE("a part that runs from right to left is set apart in a sentence, others stay as they are") {
    words::Table table;
    table.entries["line.of"] = {"{name}, 12 g", ""};
    CHECK(words::say(table, "line.of", {{"name", "Shea"}}) == "Shea, 12 g");
    CHECK(words::say(table, "line.of", {{"name", "シア"}}) == "シア, 12 g");
    CHECK(words::say(table, "line.of", {{"name", "شمع"}}) == "\u2068شمع\u2069, 12 g");
    CHECK(writing::without_marks("\u2068شمع\u2069, 12 g") == "شمع, 12 g");
    CHECK(writing::without_marks("\u2069\u2068") == "");
}

}  // namespace test_writing
