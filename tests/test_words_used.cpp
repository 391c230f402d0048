// The keys of the table of words against the sources: each key that a source names is in the table, and each
// key of the table is named by a source or belongs to a family whose keys are put together while the program
// runs. Reads the text between quotation marks; what is glued together there ("error." + code) is checked by
// its list of codes instead.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <string>

#include "engine/finding.h"
#include "engine/safety.h"
#include "shipped.h"

namespace test_words_used {

namespace {

struct Named {
    std::map<std::string, std::string> said;    // key in a call of say -> file
    std::map<std::string, std::string> quoted;  // every text that looks like a key -> file
};

Named named_in(const char* folder) {
    static const std::regex said(R"re(\bsay\(\s*(?:[A-Za-z_().]+,\s*)?"([a-z_]+\.[a-z0-9_]+)")re");
    static const std::regex quoted(R"re("([a-z_]+\.[a-z0-9_]+)")re");
    Named named;
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(TAREBENCH_SOURCE_DIR) + "/" + folder)) {
        if (entry.path().extension() != ".cpp" && entry.path().extension() != ".h") continue;
        std::ifstream file(entry.path(), std::ios::binary);
        std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
        text = std::regex_replace(text, std::regex("#include[^\n]*"), "");
        const std::string name = entry.path().filename().string();
        for (std::sregex_iterator at(text.begin(), text.end(), said), end; at != end; ++at)
            named.said[(*at)[1]] = name;
        for (std::sregex_iterator at(text.begin(), text.end(), quoted), end; at != end; ++at)
            named.quoted[(*at)[1]] = name;
    }
    return named;
}

std::string family(const std::string& key) {
    return key.substr(0, key.find('.'));
}

const std::set<std::string> kMadeAtRunTime = {"acid",   "ask",     "check",       "compare",     "cost",
                                              "error",  "finding", "kind_french", "material",    "paper",
                                              "pasted", "record",  "record_ask",  "record_text", "role",
                                              "sale",   "storing", "unmade",      "oil_caution", "regime"};

}  // namespace

TEST_CASE("a key that a screen says is in the table") {
    const Named web = named_in("web");
    CHECK(web.said.count("book.new") == 1);
    CHECK(words::has(shipped::english(), "book.new"));
}

TEST_CASE("no source says a key that the table lacks") {
    for (const char* folder : {"web", "engine"})
        for (const auto& [key, file] : named_in(folder).said) {
            CAPTURE(key);
            CAPTURE(file);
            CHECK(words::has(shipped::english(), key));
        }
}

TEST_CASE("no text of web/ that looks like a key is missing from the table") {
    // Tables of screens, lists of cautions, keys chosen by a condition.
    std::set<std::string> families;
    for (const auto& [key, entry] : shipped::english().entries)
        families.insert(family(key));
    for (const auto& [key, file] : named_in("web").quoted) {
        if (families.count(family(key)) == 0) continue;
        CAPTURE(key);
        CAPTURE(file);
        CHECK(words::has(shipped::english(), key));
    }
}

TEST_CASE("no key of the table has been left behind by the sources") {
    const Named web = named_in("web"), engine = named_in("engine");
    for (const auto& [key, entry] : shipped::english().entries) {
        if (kMadeAtRunTime.count(family(key)) != 0) continue;
        CAPTURE(key);
        CHECK(web.quoted.count(key) + engine.quoted.count(key) > 0);
    }
}

TEST_CASE("every failure, finding, role and material has its words, and no words are for one that is gone") {
    std::set<std::string> wanted;
    for (int code = 0; code <= static_cast<int>(result::Code::link_content); ++code)
        wanted.insert("error." + std::string(words::code_name(static_cast<result::Code>(code))));
    for (int code = 0; code < finding::kCodes; ++code)
        wanted.insert("finding." + std::string(finding::code_name(static_cast<finding::Code>(code))));
    for (int rule = 0; rule < safety::kRules; ++rule)
        wanted.insert("check." + std::string(safety::rule_name(static_cast<safety::Rule>(rule))));
    for (int reason = 0; reason < safety::kReasons; ++reason)
        wanted.insert("unmade." + std::string(safety::reason_name(static_cast<safety::Reason>(reason))));
    for (const std::string& key : wanted) {
        CAPTURE(key);
        CHECK(words::has(shipped::english(), key));
    }
    std::set<std::string> roles;
    for (const catalogue::Ingredient& ingredient : shipped::presets().catalogue.ingredients)
        roles.insert("role." + ingredient.role);
    for (const auto& [stem, recipe] : shipped::presets().recipes)
        for (const catalogue::Ingredient& own : recipe.own)
            roles.insert("role." + own.role);
    for (const std::string& key : roles) {
        CAPTURE(key);
        CHECK(words::has(shipped::english(), key));
    }
    for (const catalogue::Container& container : shipped::presets().catalogue.containers) {
        CAPTURE(container.material);
        CHECK(words::has(shipped::english(), "material." + container.material));
    }
    for (const limits::Caution& caution : shipped::book().cautions)
        wanted.insert("oil_caution." + caution.id);
    for (const limits::Regime& regime : shipped::book().regimes)
        wanted.insert("regime." + regime.reason);
    for (const std::string& key : wanted) {
        CAPTURE(key);
        CHECK(words::has(shipped::english(), key));
    }
    for (const auto& [key, entry] : shipped::english().entries) {
        CAPTURE(key);
        const bool listed = family(key) == "oil_caution" || family(key) == "regime" ||
                            family(key) == "error" || family(key) == "finding" || family(key) == "check" ||
                            family(key) == "unmade";
        if (!listed) continue;
        const bool advice = key.size() > 3 && key.compare(key.size() - 3, 3, ".do") == 0;
        CHECK(wanted.count(advice ? key.substr(0, key.size() - 3) : key) == 1);
    }
}

TEST_CASE("every placeholder of the table is closed and plainly named") {
    const std::regex placeholder(R"re(\{[a-z]+\})re");
    for (const auto& [key, entry] : shipped::english().entries)
        for (const std::string* text : {&entry.other, &entry.one}) {
            CAPTURE(key);
            const std::string left = std::regex_replace(*text, placeholder, "");
            CHECK(left.find('{') == std::string::npos);
            CHECK(left.find('}') == std::string::npos);
        }
}

}  // namespace test_words_used
