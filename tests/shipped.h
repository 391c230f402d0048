// The shipped presets, read once, for the tests that need the real catalogue; and files of tests/data.
#pragma once

#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "doctest/doctest.h"
#include "engine/store.h"
#include "presets_data.h"

namespace shipped {

inline const store::Presets& presets() {
    static const store::Presets read = [] {
        std::vector<store::File> files;
        for (unsigned long i = 0; i < presets_data::kCount; ++i)
            files.emplace_back(presets_data::kFiles[i].name,
                               std::string_view(presets_data::kFiles[i].text, presets_data::kFiles[i].size));
        auto made = store::read_presets(files);
        REQUIRE(made.ok());
        return made.value();
    }();
    return read;
}

inline const words::Table& english() {
    for (const words::Table& table : presets().words)
        if (table.language == "en") return table;
    FAIL("there is no table of English words");
    return presets().words.front();
}

inline const workspace::Recipe& recipe(std::string_view stem) {
    for (const auto& [name, made] : presets().recipes)
        if (name == stem) return made;
    FAIL("there is no such preset recipe");
    return presets().recipes.front().second;
}

// A file of tests/data; `name` with its ending.
inline std::string data(const std::string& name) {
    std::ifstream file(std::string(TAREBENCH_SOURCE_DIR) + "/tests/data/" + name, std::ios::binary);
    REQUIRE_MESSAGE(file.good(), "there is no tests/data/", name);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

}  // namespace shipped
