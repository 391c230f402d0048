// What is understood of pasted lists. tests/data/pasted holds messy lists, each with what is to be understood
// of it beside it (*.expected, in the words of pasted_shown.h), read with the base ingredients alone, so that
// new ones do not change the outcome.
#include <algorithm>
#include <filesystem>
#include <set>
#include <string>

#include "doctest/doctest.h"
#include "engine/pasted.h"
#include "pasted_shown.h"
#include "shipped.h"
#include "support.h"

namespace test_pasted {

using pasted::Basis;
using pasted::Code;
using pasted::Kind;

namespace {

const catalogue::Catalogue& base() {
    static const catalogue::Catalogue kept = [] {
        catalogue::Catalogue all = shipped::presets().catalogue;
        std::erase_if(all.ingredients, [](const auto& one) { return one.number > 68; });
        return all;
    }();
    return kept;
}

pasted::List read(std::string_view text, const pasted::Said& said = {}) {
    return pasted::read(text, base(), said);
}

std::vector<std::string> stems() {
    std::vector<std::string> all;
    for (const auto& file :
         std::filesystem::directory_iterator(std::string(TAREBENCH_SOURCE_DIR) + "/tests/data/pasted"))
        if (file.path().extension() == ".txt") all.push_back("pasted/" + file.path().stem().string());
    std::sort(all.begin(), all.end());
    return all;
}

bool has(const std::vector<pasted::Remark>& remarks, Code code) {
    return std::any_of(remarks.begin(), remarks.end(), [&](const auto& one) { return one.code == code; });
}

// Essential oils as a catalogue might name them.
catalogue::Catalogue with_oils() {
    catalogue::Catalogue all = base();
    std::vector<catalogue::Ingredient> oils;
    for (const auto& [id, name] :
         {std::pair("peppermint", "Peppermint oil"), std::pair("tea_tree", "Tea tree oil"),
          std::pair("lavender", "Lavender oil"), std::pair("lemon_expressed", "Lemon oil, expressed"),
          std::pair("lemon_distilled", "Lemon oil, distilled"),
          std::pair("chamomile_roman", "Chamomile oil, Roman")})
        oils.push_back(support::ingredient(id, 0, name, "essential_oil", catalogue::Phase::cool_down, 9000));
    return catalogue::with_own(all, oils);
}

std::string matched(const catalogue::Catalogue& all, const std::string& name) {
    const pasted::List list = pasted::read(name + " 1 %", all);
    REQUIRE(list.entries.size() == 1);
    const pasted::Entry& entry = list.entries[0];
    if (!entry.ingredient.empty()) return entry.ingredient;
    std::string out = "?";
    for (const std::string& id : entry.offered)
        out += " " + id;
    return out;
}

}  // namespace

TEST_CASE("every messy list is understood as written beside it, or refused with the place") {
    REQUIRE(stems().size() >= 40);
    for (const std::string& stem : stems()) {
        INFO("list: ", stem);
        CHECK(pasted_shown::list(read(shipped::data(stem + ".txt"))) == shipped::data(stem + ".expected"));
    }
}

TEST_CASE("no line is lost: each line with words or numbers has an entry of its own or is part of one") {
    for (const std::string& stem : stems()) {
        INFO("list: ", stem);
        const std::string text = shipped::data(stem + ".txt");
        std::set<std::size_t> seen;
        std::string all;
        for (const pasted::Entry& entry : read(text).entries) {
            seen.insert(entry.line);
            all += entry.text + "\n";
            CHECK(entry.line > 0);
            CHECK(entry.column > 0);
        }
        std::size_t line = 1, start = 0;
        while (start < text.size()) {
            std::size_t end = text.find_first_of("\r\n", start);
            if (end == std::string::npos) end = text.size();
            const std::string one = text.substr(start, end - start);
            const bool says = std::any_of(one.begin(), one.end(), [](char c) {
                return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
            });
            CAPTURE(line);
            if (says) CHECK((seen.count(line) == 1 || all.find(one) != std::string::npos));
            start = end + (text.substr(end, 2) == "\r\n" ? 2 : 1);
            line += 1;
        }
    }
}

TEST_CASE("a list becomes a recipe: title, phases, percents that add to 100, batch, steps, notes") {
    const auto recipe = pasted::recipe_of(read(shipped::data("pasted/24_method_below.txt")));
    REQUIRE(recipe.ok());
    CHECK(recipe->title == "Elbow butter");
    REQUIRE(recipe->formula.lines.size() == 4);
    CHECK(formula::percents(recipe->formula).ok());
    CHECK(recipe->batch.amount == batch::Amount::grams);
    CHECK(recipe->batch.grams == quantity::grams(100));
    CHECK(recipe->steps.size() == 3);
    CHECK(recipe->steps[0].text == "Melt the butters at 60 °C for 20 minutes.");
    CHECK(recipe->notes == "Keeps 6 months.");
}

TEST_CASE("percents that do not add to 100 are kept as the list says them") {
    const pasted::List list = read(shipped::data("pasted/27_does_not_add.txt"));
    CHECK(has(list.remarks, Code::percents_off));
    const auto recipe = pasted::recipe_of(list);
    REQUIRE(recipe.ok());
    CHECK(formula::stated_sum(recipe->formula) == quantity::percent(95));
}

TEST_CASE("a line to 100 becomes the rest line") {
    const auto recipe = pasted::recipe_of(read("Beeswax, white 20 %\nOlive oil ad 100"));
    REQUIRE(recipe.ok());
    CHECK(recipe->formula.lines[1].rest);
    CHECK((*formula::percents(recipe->formula))[1] == quantity::percent(80));
}

TEST_CASE("weights are shared out by largest remainder") {
    const auto recipe = pasted::recipe_of(read("Beeswax, white 1 g\nOlive oil 1 g\nCocoa butter 1 g"));
    REQUIRE(recipe.ok());
    CHECK(recipe->formula.lines[0].percent.grid == 333334);
    CHECK(recipe->formula.lines[2].percent.grid == 333333);
}

TEST_CASE("what numbers without a unit are is guessed, said, and can be switched") {
    const std::string text = "Beeswax, white 20\nOlive oil 80";
    CHECK(read(text).basis == Basis::percent);
    CHECK(has(read(text).remarks, Code::unit_guessed));
    pasted::Said said;
    said.unitless = Basis::mass;
    CHECK(read(text, said).basis == Basis::mass);
    CHECK(read(text, said).grams == quantity::grams(100));
    CHECK_FALSE(has(read(text, said).remarks, Code::unit_guessed));
    CHECK(read("Beeswax, white 20\nOlive oil 60").basis == Basis::parts);
    CHECK(read("Beeswax, white 20\nOlive oil 60 g").basis == Basis::mass);
}

TEST_CASE("a choice between several ingredients is the person's, and densities follow it") {
    const std::string text = "Sunflower oil 10 mL\nBeeswax 20 g";
    const pasted::List list = read(text);
    REQUIRE(list.entries[0].offered.size() == 2);
    CHECK_FALSE(list.entries[0].grams.has_value());
    pasted::Said said;
    said.chosen[0] = "sunflower_ho";
    said.chosen[1] = "";
    const pasted::List chosen = read(text, said);
    CHECK(chosen.entries[0].ingredient == "sunflower_ho");
    REQUIRE(chosen.entries[0].grams.has_value());
    CHECK(chosen.entries[0].remarks.empty());
    const auto recipe = pasted::recipe_of(chosen);
    REQUIRE(recipe.ok());
    CHECK(recipe->formula.lines[1].name == "Beeswax");
}

TEST_CASE("a line that is left out is not in the recipe, and the others share what is left") {
    pasted::Said said;
    said.left_out.insert(1);
    const auto recipe =
        pasted::recipe_of(read("Beeswax, white 20 g\nOlive oil 60 g\nCocoa butter 20 g", said));
    REQUIRE(recipe.ok());
    REQUIRE(recipe->formula.lines.size() == 2);
    CHECK(recipe->formula.lines[0].percent == quantity::percent(50));
}

TEST_CASE("essential oils are found by plant, by EO and by essential oil") {
    const catalogue::Catalogue all = with_oils();
    CHECK(matched(all, "lavender") == "lavender");
    CHECK(matched(all, "Lavender essential oil") == "lavender");
    CHECK(matched(all, "peppermint EO") == "peppermint");
    CHECK(matched(all, "peppermint oil") == "peppermint");
    CHECK(matched(all, "tea tree oil") == "tea_tree");
    CHECK(matched(all, "organic tea tree EO") == "tea_tree");
    CHECK(matched(all, "Roman chamomile EO") == "chamomile_roman");
    CHECK(matched(all, "lemon EO") == "? lemon_distilled lemon_expressed");
    CHECK(matched(all, "lavender flowers") != "lavender");
    CHECK(matched(all, "peppermint tea") != "peppermint");
}

TEST_CASE("a name is matched exactly or by one clear best; a near miss is offered, never taken") {
    CHECK(matched(base(), "Butyrospermum Parkii Butter") == "shea");
    CHECK(matched(base(), "grape seed oil") == "grapeseed");
    CHECK(matched(base(), "apricot oil") == "apricot");
    CHECK(matched(base(), "sunflower lecithin") == "? sunflower");
    CHECK(matched(base(), "cocoa powder") == "? cocoa");
    CHECK(matched(base(), "Sheaa butter") == "? shea");
    CHECK(matched(base(), "moon dust") == "?");
    CHECK(matched(base(), "oil") == "?");
    CHECK(matched(base(), "Water, potassium sorbate, phenoxyethanol blend") == "?");
}

TEST_CASE("spoons and drops become grams with their stated error, and never stand in the recipe") {
    const pasted::List list = read("Olive oil 3 tbsp\nCastor oil 20 drops");
    REQUIRE(list.entries.size() == 2);
    REQUIRE(list.entries[1].grams.has_value());
    CHECK(list.entries[1].grams->low < list.entries[1].grams->usual);
    CHECK(list.entries[1].grams->usual < list.entries[1].grams->high);
    // 20 drops of 1/30 mL at 0.959 g/mL
    CHECK(list.entries[1].grams->usual == 6394);
    const auto recipe = pasted::recipe_of(list);
    REQUIRE(recipe.ok());
    CHECK(recipe->notes.empty());
    CHECK(recipe->batch.amount == batch::Amount::grams);
}

TEST_CASE("a recipe holds a hundred lines; further ones are refused with their place") {
    std::string text;
    for (int i = 0; i < 105; ++i)
        text += "Olive oil " + std::to_string(i + 1) + " g\n";
    const pasted::List list = read(text);
    REQUIRE(list.entries.size() == 105);
    CHECK_FALSE(has(list.entries[99].remarks, Code::too_many_lines));
    CHECK(has(list.entries[100].remarks, Code::too_many_lines));
    CHECK(list.entries[100].line == 101);
    CHECK(pasted::recipe_of(list).ok());
}

TEST_CASE("a hundred kilobytes are read as far as entries go, and the place where they end is said") {
    std::string text;
    while (text.size() < 100'000)
        text += "Shea butter 1 %, ";
    const pasted::List inline_list = read(text);
    CHECK(inline_list.entries.size() <= pasted::kMostEntries);
    CHECK(has(inline_list.remarks, Code::too_many_lines));
    std::string lines;
    while (lines.size() < 100'000)
        lines += "Mystery " + std::to_string(lines.size()) + "\n";
    const pasted::List list = read(lines);
    REQUIRE(has(list.remarks, Code::too_many_lines));
    CHECK(list.remarks[0].line == pasted::kMostEntries + 1);
    CHECK(has(read(std::string(pasted::kMostBytes + 1, 'x')).remarks, Code::too_long));
}

TEST_CASE("no text is no list, and what is not a list does not look like one") {
    CHECK(read("").entries.empty());
    CHECK(read("  \n\t\n").entries.empty());
    CHECK_FALSE(pasted::looks_like_list(read("")));
    CHECK_FALSE(pasted::looks_like_list(read("Dear Ada,\nsee you on Sunday at the shed!")));
    CHECK(pasted::looks_like_list(read("Beeswax 20")));
    CHECK_FALSE(pasted::recipe_of(read("Dear Ada")).ok());
}

TEST_CASE("every remark has a name of its own and an English sentence") {
    std::set<std::string> names;
    for (int i = 0; i <= static_cast<int>(Code::weight_missing); ++i) {
        const std::string name(pasted::code_name(static_cast<Code>(i)));
        CAPTURE(name);
        CHECK(names.insert(name).second);
        CHECK(words::has(shipped::english(), "pasted." + name));
    }
}

}  // namespace test_pasted
