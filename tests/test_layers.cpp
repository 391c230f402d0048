// Reads the includes of engine/ and web/ and fails on an arrow that DEVELOPERS.md does not draw. Leans on the
// source folder being there when the tests run. Looks at include lines and at script text in C++, not at
// calls: a screen that reached a clock through the app would pass.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "doctest/doctest.h"

namespace test_layers {

namespace {

struct File {
    std::string path;  // "engine/decimal.h"
    std::string text;
};

struct Include {
    std::string path;
    bool quoted = false;  // "…", not <…>
};

using Names = std::set<std::string>;

// Nouns of the engine, level by level. A file belongs to the noun it is named by, or begins with:
// store_presets.cpp is part of store.
const std::vector<Names> kLevels = {
    {"result", "words", "finding", "source", "chance", "decimal", "quantity", "date", "money", "utf8",
     "sorting", "writing", "base64url", "bounds", "cbor", "checksum", "shorthand", "market", "qr"},
    {"catalogue", "composition", "formula", "declaration", "limits", "density", "made", "measures", "scales",
     "net_contents", "type_height", "durability", "label_sheet"},
    {"simplex", "least_squares"},
    {"adjustment", "batch", "weigh_out", "record", "lot", "version", "blend", "safety", "label", "price",
     "keeping", "swap", "reading", "trials", "sale_needs", "assessor_pack", "customer_card"},
    {"workspace", "remedy", "analysis", "ceiling", "pasted", "declaration_read", "labelling", "reading_list",
     "weighed", "workshop", "storing", "comparison", "cost", "pricing"},
    {"markup", "documents", "batch_sheet", "store", "share", "listed_recipe"},
    {"door"},
};

// File, clock, locale, console, threads, and what differs between two standard libraries.
const Names kNeverInEngine = {"fstream",       "iostream",      "ostream", "istream", "sstream", "iomanip",
                              "cstdio",        "stdio.h",       "ctime",   "time.h",  "chrono",  "locale",
                              "clocale",       "locale.h",      "thread",  "mutex",   "future",  "random",
                              "unordered_map", "unordered_set", "regex",   "format",  "ranges",  "expected",
                              "iostream.h",    "filesystem"};
const Names kNeverInWeb = {"fstream", "iostream", "filesystem", "thread",
                           "ctime",   "chrono",   "locale",     "clocale"};

bool begins(const std::string& text, const std::string& beginning) {
    return text.rfind(beginning, 0) == 0;
}

bool is_library(const Include& include, const std::string& name) {
    return begins(include.path, name) && !(begins(include.path, "engine/") || begins(include.path, "web/"));
}

std::vector<Include> includes_of(const std::string& text) {
    std::vector<Include> found;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        line.erase(std::remove(line.begin(), line.end(), ' '), line.end());
        if (!begins(line, "#include") || line.size() < 10) continue;
        const bool quoted = line[8] == '"';
        const auto end = line.find(quoted ? '"' : '>', 9);
        found.push_back({line.substr(9, end - 9), quoted});
    }
    return found;
}

std::string stem(const std::string& path) {
    const auto slash = path.rfind('/');
    const std::string name = slash == std::string::npos ? path : path.substr(slash + 1);
    return name.substr(0, name.rfind('.'));
}

// The longest noun that the name is, or begins with; "" for a stranger.
std::string noun_of(const std::string& path) {
    const std::string name = stem(path);
    std::string best;
    for (const Names& level : kLevels)
        for (const std::string& noun : level)
            if ((name == noun || begins(name, noun + "_")) && noun.size() > best.size()) best = noun;
    return best;
}

int level_of(const std::string& noun) {
    for (std::size_t level = 0; level < kLevels.size(); ++level)
        if (kLevels[level].count(noun)) return static_cast<int>(level);
    return -1;
}

std::string wrong_in_engine(const std::string& from, const Include& include) {
    const std::string noun = noun_of(from);
    const int level = level_of(noun);
    if (level < 0) return "has no level: give its noun one in test_layers.cpp and DEVELOPERS.md";
    const bool door = noun == "door";
    if (begins(include.path, "nlohmann"))
        return (noun == "store" || door) && from != "engine/store.h" ? "" : "JSON belongs in store and door";
    if (!include.quoted) {
        if (kNeverInEngine.count(include.path) && !door)
            return "no file, clock, locale or console in the engine";
        if (begins(include.path, "emscripten") || begins(include.path, "imgui"))
            return "the engine stands alone";
        return "";
    }
    if (include.path == "presets_data.h") return door ? "" : "packed presets are handed in by the caller";
    if (include.path.find('/') != std::string::npos)
        return "the engine includes its own files without a folder";
    const std::string other = noun_of(include.path);
    const int below = level_of(other);
    if (below < 0) return "the engine stands alone";
    if (other == noun) return "";
    if (below > level) return "is on a higher level";
    if (level == 2 && below != 0) return "plain mathematics knows nothing of the trade";
    if (below == level && level == 3) return "neighbours on level 3 meet in analysis";
    if (noun == "store" && (other == "analysis" || level_of(other) == 5))
        return "store knows records, not answers";
    if (level == 5 && other == "store") return "only the door and the screens read files";
    return "";
}

std::string wrong_in_web(const std::string& from, const Include& include) {
    const std::string name = stem(from);
    const bool platform = begins(name, "platform");
    const bool trade = begins(include.path, "engine/");
    const std::string other = stem(include.path);
    if (is_library(include, "nlohmann")) return "JSON stays in the engine";
    if (kNeverInWeb.count(include.path) && !platform)
        return "only the platform reaches files, clock and locale";
    if (name == "backend_web" && (is_library(include, "GLES") || begins(include.path, "imgui"))) return "";
    if (is_library(include, "emscripten") || is_library(include, "GLES"))
        return name == "platform_web" ? "" : "only platform_web.cpp knows the browser";
    if (trade && noun_of(include.path) == "door") return "the command line is no part of the page";
    if (trade && begins(other, "store_") && other != "store_limits")
        return "store.h is the door to files, store_limits.h to the book that is read later";
    if (from == "web/platform.h") return include.quoted ? "platform.h includes nothing of ours" : "";
    if (name == "platform_web" && include.quoted && other != "platform" && !begins(other, "imgui"))
        return "the browser half knows platform.h and no more";
    const bool widget = begins(name, "widget_") && name != "widget_gallery";
    const bool screen = begins(name, "screen_");
    if (screen && begins(other, "screen_") && other != name) return "a screen knows no other screen";
    if (screen && other == "platform") return "a screen knows no platform";
    if (widget && (other == "app" || begins(other, "screen_"))) return "a widget knows no app and no screen";
    if (widget && trade && level_of(noun_of(include.path)) > 1)
        return "a widget shows words, numbers and things, no answers";
    return "";
}

// A way from file to file that ends where it began, "" if there is none.
std::string circle(const std::map<std::string, Names>& arrows) {
    std::map<std::string, int> state;  // 1: on the way, 2: done
    std::string found;
    const auto visit = [&](const auto& self, const std::string& at) -> void {
        state[at] = 1;
        if (const auto here = arrows.find(at); here != arrows.end())
            for (const std::string& next : here->second) {
                if (state[next] == 1) found = at + " and " + next + " include each other";
                if (state[next] == 0) self(self, next);
            }
        state[at] = 2;
    };
    for (const auto& [from, to] : arrows)
        if (state[from] == 0) visit(visit, from);
    return found;
}

std::vector<std::string> complaints(const std::vector<File>& files) {
    std::vector<std::string> found;
    std::map<std::string, Names> arrows;  // between nouns of the engine
    for (const File& file : files) {
        const bool engine = begins(file.path, "engine/");
        for (const Include& include : includes_of(file.text)) {
            const std::string wrong =
                engine ? wrong_in_engine(file.path, include) : wrong_in_web(file.path, include);
            if (!wrong.empty()) found.push_back(file.path + " includes " + include.path + ": " + wrong);
            const std::string from = noun_of(file.path), to = noun_of(include.path);
            if (engine && include.quoted && !to.empty() && from != to) arrows[from].insert(to);
        }
        for (const char* script : {"EM_ASM", "EM_JS", "emscripten_run_script"})
            if (file.text.find(script) != std::string::npos)
                found.push_back(file.path + " holds " + script + ": scripts live in shell/");
    }
    if (const std::string round = circle(arrows); !round.empty()) found.push_back(round);
    return found;
}

// Debian 12's emscripten drops a declaration that takes a list or an object apart (const [x, y] = …) as
// unused when it optimises: the page would stop at the first use. Says where one stands.
std::vector<std::string> taken_apart(const File& script) {
    static const std::regex kDeclaration("(const|let|var)\\s*[\\[{]");
    std::vector<std::string> found;
    std::istringstream lines(script.text);
    int number = 0;
    for (std::string line; std::getline(lines, line);)
        if (++number; std::regex_search(line, kDeclaration))
            found.push_back(script.path + ":" + std::to_string(number));
    return found;
}

std::vector<File> read_rooms(const std::vector<std::string>& rooms, const std::set<std::string>& endings) {
    namespace fs = std::filesystem;
    std::vector<File> files;
    for (const std::string& room : rooms)
        for (const auto& entry : fs::directory_iterator(fs::path(TAREBENCH_SOURCE_DIR) / room)) {
            if (!endings.count(entry.path().extension().string())) continue;
            std::ifstream stream(entry.path(), std::ios::binary);
            files.push_back({room + "/" + entry.path().filename().string(),
                             {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()}});
        }
    std::sort(files.begin(), files.end(), [](const File& a, const File& b) { return a.path < b.path; });
    return files;
}

}  // namespace

TEST_CASE("layers: every include in engine/ and web/ follows an arrow that is drawn") {
    const std::vector<File> files = read_rooms({"engine", "web"}, {".h", ".cpp"});
    REQUIRE(files.size() > 20);
    for (const std::string& complaint : complaints(files))
        FAIL_CHECK(complaint);
}

TEST_CASE("layers: arrows that are drawn pass") {
    const std::vector<File> fine = {
        {"engine/decimal.h", "#pragma once\n#include <string>\n#include \"result.h\"\n"},
        {"engine/decimal_read.cpp", "#include \"decimal.h\"\n#include \"utf8.h\"\n"},
        {"engine/density.cpp", "#include \"catalogue.h\"\n#include \"formula.h\"\n"},
        {"engine/batch.cpp", "#include \"batch.h\"\n#include \"density.h\"\n"},
        {"engine/analysis.h", "#include \"batch.h\"\n#include \"workspace.h\"\n"},
        {"engine/store_presets.cpp", "#include <nlohmann/json.hpp>\n#include \"store.h\"\n"},
        {"engine/batch_sheet.cpp", "#include \"documents.h\"\n#include \"markup.h\"\n"},
        {"engine/door.cpp", "#include <cstdio>\n#include \"presets_data.h\"\n#include \"door.h\"\n"},
        {"web/screen_batch.cpp",
         "#include \"app.h\"\n#include \"engine/analysis.h\"\n#include \"widget_list.h\"\n"},
        {"web/widget_list.cpp", "#include \"engine/words.h\"\n#include \"imgui.h\"\n#include \"theme.h\"\n"},
        {"web/platform_web.cpp",
         "#include <emscripten/html5.h>\n#include \"imgui.h\"\n#include \"platform.h\"\n"},
    };
    for (const std::string& complaint : complaints(fine))
        FAIL_CHECK(complaint);
}

TEST_CASE("layers: arrows that are not drawn are each found") {
    const std::vector<File> wrong = {
        {"engine/decimal.cpp", "#include \"formula.h\"\n"},
        {"engine/decimal.cpp", "  #  include <iostream>\n"},
        {"engine/formula.cpp", "#include <nlohmann/json.hpp>\n"},
        {"engine/store.h", "#include <nlohmann/json.hpp>\n"},
        {"engine/batch.cpp", "#include \"cost.h\"\n"},
        {"engine/batch.cpp", "#include \"imgui.h\"\n"},
        {"engine/batch.cpp", "#include <emscripten.h>\n"},
        {"engine/batch.cpp", "#include \"engine/density.h\"\n"},
        {"engine/batch.cpp", "#include <ctime>\n"},
        {"engine/simplex.cpp", "#include \"catalogue.h\"\n"},
        {"engine/store.cpp", "#include \"analysis.h\"\n"},
        {"engine/share.cpp", "#include \"store.h\"\n"},
        {"engine/share.cpp", "#include \"door.h\"\n"},
        {"engine/words.cpp", "#include \"presets_data.h\"\n"},
        {"engine/helpers.h", "#include <string>\n"},
        {"web/screen_batch.cpp", "#include \"screen_book.h\"\n"},
        {"web/screen_batch.cpp", "#include \"platform.h\"\n"},
        {"web/screen_batch.cpp", "#include <emscripten.h>\n"},
        {"web/widget_list.cpp", "#include \"app.h\"\n"},
        {"web/widget_list.cpp", "#include \"engine/analysis.h\"\n"},
        {"web/app.cpp", "#include <emscripten/html5.h>\n"},
        {"web/app.cpp", "#include <chrono>\n"},
        {"web/app.cpp", "#include <nlohmann/json.hpp>\n"},
        {"web/app.cpp", "#include \"engine/door.h\"\n"},
        {"web/app.cpp", "#include \"engine/store_json.h\"\n"},
        {"web/app.cpp", "EM_ASM({ alert(1); });\n"},
        {"web/platform.h", "#include \"engine/decimal.h\"\n"},
        {"web/platform_web.cpp", "#include \"app.h\"\n"},
        {"web/platform_web.cpp", "#include \"engine/batch.h\"\n"},
    };
    for (const File& file : wrong) {
        CAPTURE(file.path);
        CAPTURE(file.text);
        CHECK(complaints({file}).size() == 1);
    }
}

TEST_CASE("layers: two files of one level that include each other are found") {
    CHECK(complaints({{"engine/density.h", "#include \"formula.h\"\n"}}).empty());
    CHECK(complaints({{"engine/density.h", "#include \"formula.h\"\n"},
                      {"engine/formula.h", "#include \"density.h\"\n"}})
              .size() == 1);
}

TEST_CASE("layers: no bridge declares by taking apart, which an older optimiser drops") {
    int bridges = 0;
    for (const File& script : read_rooms({"shell"}, {".js"})) {
        if (!begins(script.path, "shell/lib_")) continue;
        ++bridges;
        for (const std::string& place : taken_apart(script))
            FAIL_CHECK(place);
    }
    CHECK(bridges > 0);
    CHECK(taken_apart({"a.js", "const x = 1;\nfor (const [a, b] of c) {}\nlet {d} = e;\n"}) ==
          std::vector<std::string>{"a.js:2", "a.js:3"});
}

}  // namespace test_layers
