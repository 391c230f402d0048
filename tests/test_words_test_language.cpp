// The language made by rule, against the tag that browsers ask for it by (BCP 47; en-XA is the usual one for
// made-up accents).
#include "doctest/doctest.h"
#include "engine/utf8.h"
#include "engine/words_test_language.h"
#include "shipped.h"

namespace test_words_test_language {

namespace {
std::size_t letters(std::string_view text) {
    std::size_t count = 0;
    for (const char c : text)
        count += (static_cast<unsigned char>(c) & 0xC0) != 0x80;
    return count;
}
}  // namespace

TEST_CASE("test language: vowels twice, accents, and places left as they are") {
    words::Table table;
    table.entries["sum"] = {"Sum {percent} % of {n} lines", "Sum of {n} line"};
    const words::Table made = words::test_language(table);
    CHECK(made.language == "en-XA");
    CHECK(made.entries.at("sum").other == "Šüüm {percent} % ööf {n} lííñééš");
    CHECK(words::say(made, "sum", {{"percent", "99.5"}, {"n", "3"}}) == "Šüüm 99.5 % ööf 3 lííñééš");
    CHECK(made.entries.at("sum").one == "Šüüm ööf {n} lííñéé");
}

TEST_CASE("test language: the shipped words become a quarter to a half longer") {
    const words::Table& table = shipped::english();
    const words::Table made = words::test_language(table);
    REQUIRE(table.entries.size() > 400);
    REQUIRE(made.entries.size() == table.entries.size());
    std::size_t before = 0, after = 0;
    for (const auto& [key, entry] : table.entries) {
        before += letters(entry.other);
        after += letters(made.entries.at(key).other);
        CHECK(utf8::valid(made.entries.at(key).other));
    }
    CHECK(static_cast<double>(after) / static_cast<double>(before) == doctest::Approx(1.33).epsilon(0.1));
}

}  // namespace test_words_test_language
