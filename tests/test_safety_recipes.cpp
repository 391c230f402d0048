// Whole recipes against the report: one deliberately bad recipe for each rule, which its file is named after,
// and the starters, which pass. What they are told besides is listed here, so that a rule that grows too loud
// or falls silent is seen.
#include <filesystem>
#include <map>
#include <set>
#include <string>

#include "doctest/doctest.h"
#include "engine/analysis.h"
#include "shipped.h"

namespace test_safety_recipes {

using finding::Code;
using finding::Severity;

namespace {

safety::Report report_of(const workspace::Recipe& recipe) {
    return analysis::checks(recipe, shipped::presets().catalogue, &shipped::book());
}

std::map<std::string, workspace::Recipe> unsafe_recipes() {
    std::map<std::string, workspace::Recipe> all;
    const std::filesystem::path folder = std::filesystem::path(TAREBENCH_SOURCE_DIR) / "tests/data";
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        const std::string stem = entry.path().stem().string();
        if (stem.rfind("unsafe_", 0) != 0) continue;
        const auto read = store::read_recipe(shipped::content(entry.path()));
        REQUIRE_MESSAGE(read.ok(), stem, read.ok() ? "" : " " + read.error().place);
        all.emplace(stem.substr(7), *read);
    }
    return all;
}

}  // namespace

TEST_CASE("a lotion without a preservative is stopped, and told what to do") {
    const auto recipes = unsafe_recipes();
    const safety::Report report = report_of(recipes.at("water_without_preservative"));
    REQUIRE(!report.findings.empty());
    CHECK(report.findings[0].code == Code::water_without_preservative);
    CHECK(report.findings[0].severity == Severity::stop);
    CHECK(report.findings[0].subject == "water");
}

TEST_CASE("each bad recipe raises what its file is named after, and no other stop") {
    std::set<std::string> files;
    for (const auto& [name, recipe] : unsafe_recipes()) {
        CAPTURE(name);
        files.insert(name);
        std::set<std::string> stops, codes;
        for (const finding::Finding& one : report_of(recipe).findings) {
            codes.insert(std::string(finding::code_name(one.code)));
            if (one.severity == Severity::stop) stops.insert(std::string(finding::code_name(one.code)));
        }
        CHECK(codes.count(name) == 1);
        stops.erase(name);
        for (const std::string& stop : stops)
            FAIL_CHECK("another stop: ", stop);
    }
    for (int code = static_cast<int>(Code::water_suspected); code < finding::kCodes; ++code) {
        const std::string name(finding::code_name(static_cast<Code>(code)));
        CAPTURE(name);
        CHECK(files.count(name) == 1);
    }
}

TEST_CASE("every finding of the bad recipes has a sentence without a gap, a source and something to do") {
    for (const auto& [name, recipe] : unsafe_recipes())
        for (const finding::Finding& one : report_of(recipe).findings) {
            CAPTURE(name);
            CAPTURE(finding::code_name(one.code));
            const std::string said = finding::say(shipped::english(), one, "Shea butter", "Limonene") +
                                     finding::advice(shipped::english(), one, "Shea butter", "Limonene");
            CHECK(said.find("[[") == std::string::npos);
            CHECK(said.find('{') == std::string::npos);
            CHECK(said.find("  ") == std::string::npos);
            const bool listed = catalogue::find_source(shipped::presets().catalogue, one.source) != nullptr ||
                                limits::find_source(shipped::book(), one.source) != nullptr;
            CHECK((one.source.empty() || listed));
        }
}

TEST_CASE("the starters pass: no stop and no caution, and these notes") {
    std::map<std::string, std::set<std::string>> notes;
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        for (const finding::Finding& one : report_of(recipe).findings) {
            const std::string code(finding::code_name(one.code));
            if (one.severity == Severity::note)
                notes[stem].insert(code);
            else
                FAIL_CHECK(code, " ", one.subject);
        }
    }
    for (const auto& [stem, told] : notes)
        for (const std::string& code : told) {
            CAPTURE(stem);
            CAPTURE(code);
            const bool of_origin = code.rfind("origin_", 0) == 0;
            const bool of_paper = code == "certificate_peroxide";
            // The lotion's water phase steams; the cuticle stick takes its lemon oil in while it still pours.
            const bool of_heat = code == "water_boils_off" || code == "near_flash_point";
            CHECK((of_origin || of_paper || of_heat || code == "allergens_to_name"));
        }
    CHECK(notes["seed_swap_cuticle_stick"].count("near_flash_point") == 1);
    CHECK(notes["kitchen_garden_hand_lotion"].count("water_boils_off") == 1);
}

TEST_CASE("no report calls a recipe safe: each says what could not be checked") {
    for (const auto& [stem, recipe] : shipped::presets().recipes) {
        CAPTURE(stem);
        const safety::Report report = report_of(recipe);
        CHECK(!report.not_made.empty());
        CHECK(!report.cautions.empty());
        CHECK(report.cautions.front() == "caution.defer");
        for (const std::string& key : report.cautions)
            CHECK(words::has(shipped::english(), key));
    }
}

}  // namespace test_safety_recipes
