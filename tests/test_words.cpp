// The table of words: looking up, filling in, plural forms, and that every failure has its sentence.
// The shipped table is read here with a JSON library of the tests, not through store.
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <string>

#include "doctest/doctest.h"
#include "engine/finding.h"
#include "engine/words.h"
#include "nlohmann/json.hpp"

namespace test_words {

namespace {

words::Table small_table() {
    words::Table table;
    table.language = "en";
    table.plural_rule = "one_other";
    table.entries["hello"] = {"Hello {name}, {greeting}", ""};
    table.entries["jars"] = {"{n} jars", "{n} jar"};
    table.entries["open"] = {"a { b", ""};
    table.entries["error.sum_not_hundred"] = {"{place}: {detail} %", ""};
    table.entries["error.number_malformed"] = {"{detail}?", ""};
    return table;
}

words::Table english() {
    std::ifstream file(std::string(TAREBENCH_SOURCE_DIR) + "/presets/words/en.json");
    std::stringstream text;
    text << file.rdbuf();
    const auto json = nlohmann::json::parse(text.str(), nullptr, false);
    words::Table table;
    table.language = json["language"];
    table.plural_rule = json["plural_rule"];
    for (const auto& [key, value] : json["words"].items()) {
        if (value.is_string())
            table.entries[key].other = value.get<std::string>();
        else
            table.entries[key] = {value["other"].get<std::string>(), value["one"].get<std::string>()};
    }
    return table;
}

// The names in braces.
std::set<std::string> names_in(const std::string& text) {
    std::set<std::string> names;
    for (auto open = text.find('{'); open != std::string::npos; open = text.find('{', open + 1))
        names.insert(text.substr(open + 1, text.find('}', open) - open - 1));
    return names;
}

constexpr int kCodes = static_cast<int>(result::Code::link_content) + 1;
constexpr int kFindings = finding::kCodes;

}  // namespace

TEST_CASE("a text is looked up and filled in") {
    CHECK(words::say(small_table(), "hello", {{"name", "Ada"}, {"greeting", "good day"}}) ==
          "Hello Ada, good day");
    CHECK(words::has(small_table(), "hello"));
    CHECK_FALSE(words::has(small_table(), "goodbye"));
}

TEST_CASE("a missing text shows its key, a missing argument its name") {
    CHECK(words::say(small_table(), "goodbye") == "[[goodbye]]");
    CHECK(words::say(small_table(), "hello", {{"name", "Ada"}}) == "Hello Ada, {greeting}");
    CHECK(words::say(small_table(), "open") == "a { b");
}

TEST_CASE("what is filled in is not searched again") {
    CHECK(words::say(small_table(), "hello", {{"name", "{greeting}"}, {"greeting", "x"}}) ==
          "Hello {greeting}, x");
}

TEST_CASE("the argument n picks the plural form by the rule of the language") {
    words::Table table = small_table();
    CHECK(words::say(table, "jars", {{"n", "1"}}) == "1 jar");
    CHECK(words::say(table, "jars", {{"n", "0"}}) == "0 jars");
    CHECK(words::say(table, "jars", {{"n", "14"}}) == "14 jars");
    CHECK(words::say(table, "jars", {{"n", "1,5"}}) == "1,5 jars");
    CHECK(words::say(table, "jars") == "{n} jars");
    table.plural_rule = "one_upto_two";
    CHECK(words::say(table, "jars", {{"n", "0"}}) == "0 jar");
    CHECK(words::say(table, "jars", {{"n", "1.5"}}) == "1.5 jar");
    CHECK(words::say(table, "jars", {{"n", "2"}}) == "2 jars");
    table.plural_rule = "none";
    CHECK(words::say(table, "jars", {{"n", "1"}}) == "1 jars");
}

TEST_CASE("figures take the decimal sign of the table, a person's own text stays as typed") {
    words::Table table = small_table();
    table.sign = decimal::Sign::comma;
    CHECK(words::figure(table, 125000) == "12,5");
    CHECK(words::figure_fixed(table, 125000, 2) == "12,50");
    CHECK(words::say(table, result::Error{result::Code::sum_not_hundred, "lines", "99.5"}) ==
          "lines: 99,5 %");
    CHECK(words::say(table, result::Error{result::Code::number_malformed, "character 4", "1.5x"}) == "1.5x?");
}

TEST_CASE("every failure code has a name of its own and an English sentence") {
    const words::Table table = english();
    std::set<std::string> names;
    for (int i = 0; i < kCodes; ++i) {
        const std::string name(words::code_name(static_cast<result::Code>(i)));
        CAPTURE(i);
        REQUIRE_FALSE(name.empty());
        CHECK(names.insert(name).second);
        const std::string key = "error." + name;
        CAPTURE(key);
        REQUIRE(words::has(table, key));
        for (const std::string& in_braces : names_in(table.entries.find(key)->second.other))
            CHECK((in_braces == "detail" || in_braces == "place"));
    }
    for (const auto& [key, entry] : table.entries)
        if (key.rfind("error.", 0) == 0) CHECK_MESSAGE(names.count(key.substr(6)) == 1, key);
}

TEST_CASE("every finding has a name of its own and an English sentence") {
    const words::Table table = english();
    std::set<std::string> names;
    for (int i = 0; i < kFindings; ++i) {
        const std::string name(finding::code_name(static_cast<finding::Code>(i)));
        CAPTURE(i);
        REQUIRE_FALSE(name.empty());
        CHECK(names.insert(name).second);
        const std::string key = "finding." + name;
        CAPTURE(key);
        REQUIRE(words::has(table, key));
        static const std::set<std::string> filled_in = {
            "subject", "value", "limit", "unit", "material", "rule", "edition", "constituent", "typical"};
        for (const std::string& said : {key, key + ".do"}) {
            if (!words::has(table, said)) continue;
            for (const std::string& in_braces : names_in(table.entries.find(said)->second.other))
                CHECK(filled_in.count(in_braces) == 1);
        }
        // What came with the report on safety says besides what to do; the older sentences say both in one.
        if (i > static_cast<int>(finding::Code::water_without_preservative))
            CHECK(words::has(table, key + ".do"));
    }
    for (const auto& [key, entry] : table.entries) {
        if (key.rfind("finding.", 0) != 0) continue;
        const std::string name = key.substr(8);
        const bool advice = name.size() > 3 && name.substr(name.size() - 3) == ".do";
        CHECK_MESSAGE(names.count(advice ? name.substr(0, name.size() - 3) : name) == 1, key);
    }
}

TEST_CASE("English sentences are whole sentences on one line") {
    for (const auto& [key, entry] : english().entries) {
        if (key.rfind("error.", 0) != 0 && key.rfind("finding.", 0) != 0) continue;
        CAPTURE(key);
        CHECK(entry.other.find('\n') == std::string::npos);
        CHECK(entry.other.size() > 15);
        CHECK(entry.other.back() == '.');
    }
}

}  // namespace test_words
