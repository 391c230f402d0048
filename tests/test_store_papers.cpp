// What papers are made with is kept with the settings: tests/data/v1_settings_papers.json is frozen.
#include "doctest/doctest.h"
#include "engine/store.h"
#include "engine/workspace_edits.h"
#include "shipped.h"

namespace test_store_papers {

namespace {

workspace::Settings said() {
    workspace::Settings settings;
    settings.label_sheet = label_sheet::Sheet{
        label_sheet::Paper::letter, 2, 5, 1'016'000, 508'000, 39'000, 127'000, 48'000, 0, -5'000, 12'500};
    settings.workshop = {
        9,    2,        3,     0,
        2,    {25'000}, false, 1110,
        1200, 120,      20,    {{"shea", quantity::grams(250)}, {"Grandmother's balm", quantity::grams(30)}}};
    return settings;
}

}  // namespace

TEST_CASE("settings: the sheet of labels and the plan of a workshop are read as they were kept") {
    const std::string frozen = shipped::data("v1_settings_papers.json");
    const auto read = store::read_settings(frozen);
    REQUIRE(read.ok());
    CHECK(read->settings == said());
    CHECK(store::write_settings(said(), "") + "\n" == frozen);
}

TEST_CASE("settings: what nobody said of papers is not written") {
    const std::string plain = store::write_settings({}, "");
    CHECK(plain.find("workshop") == std::string::npos);
    CHECK(plain.find("label_sheet") == std::string::npos);
}

TEST_CASE("settings: a sheet or plan that cannot be is refused by its field") {
    std::string text = shipped::data("v1_settings_papers.json");
    const auto with = [&](const std::string& from, const std::string& to) {
        std::string changed = text;
        changed.replace(changed.find(from), from.size(), to);
        const auto read = store::read_settings(changed);
        return read.ok() ? std::string("read") : read.error().place;
    };
    CHECK(with("\"columns\":2", "\"columns\":0") == "label_sheet.columns");
    CHECK(with("\"columns\":2", "\"columns\":3") == "label_sheet.columns");  // beyond the paper
    CHECK(with("\"letter\"", "\"a3\"") == "label_sheet.paper");
    CHECK(with("\"people\":9", "\"people\":0") == "workshop.people");
    CHECK(with("\"people\":9", "\"people\":18446744073709551615") == "workshop.people");
    CHECK(with("\"pack_g\":250", "\"pack_g\":0") == "workshop.packs");
    CHECK(with("\"watts\":1200", "\"watt\":1200") == "workshop.watt");
    label_sheet::Sheet beyond;
    beyond.columns = 4;
    CHECK(workspace::set_label_sheet({}, beyond).error().place == "label_sheet.columns");
    CHECK(workspace::set_label_sheet(said(), std::nullopt)->label_sheet == std::nullopt);
}

}  // namespace test_store_papers
