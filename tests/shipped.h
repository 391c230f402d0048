// The shipped presets, read once, for the tests that need the real catalogue; their JSON; and files of
// tests/data.
#pragma once

#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/store.h"
#include "engine/store_limits.h"
#include "presets_data.h"

namespace shipped {

inline const store::Presets& presets() {
    static const store::Presets read = [] {
        auto made = store::unpack_presets(presets_data::kPacked);
        REQUIRE(made.ok());
        return made.value();
    }();
    return read;
}

inline const limits::Book& book() {
    static const limits::Book read = [] {
        auto made = store::unpack_limits(presets_data::kLimits);
        REQUIRE(made.ok());
        return made.value();
    }();
    return read;
}

inline const words::Table& english() {
    static const words::Table spelled_out = [] {
        for (const words::Table& table : presets().words)
            if (table.language == "en") return words::spelled_out(table);
        FAIL("there is no table of English words");
        return words::Table{};
    }();
    return spelled_out;
}

inline const workspace::Recipe& recipe(std::string_view stem) {
    for (const auto& [name, made] : presets().recipes)
        if (name == stem) return made;
    FAIL("there is no such preset recipe");
    return presets().recipes.front().second;
}

inline std::string content(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    REQUIRE_MESSAGE(file.good(), "there is no ", path.string());
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// A file of tests/data; `name` with its ending.
inline std::string data(const std::string& name) {
    return content(std::filesystem::path(TAREBENCH_SOURCE_DIR) / "tests/data" / name);
}

// The JSON itself, as it lies in presets/.
inline std::vector<store::File> files() {
    static const std::map<std::string, std::string> texts = [] {
        const std::filesystem::path folder = std::filesystem::path(TAREBENCH_SOURCE_DIR) / "presets";
        std::map<std::string, std::string> read;
        for (const auto& entry : std::filesystem::recursive_directory_iterator(folder)) {
            const std::filesystem::path name = entry.path().lexically_relative(folder);
            if (name.extension() == ".json" && *name.begin() != "schema")
                read[name.generic_string()] = content(entry.path());
        }
        return read;
    }();
    return std::vector<store::File>(texts.begin(), texts.end());
}

}  // namespace shipped
