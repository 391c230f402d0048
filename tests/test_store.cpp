// Recipes as files, what is kept on the device, and what must be refused: every tests/data/bad_recipe_*.json
// has its row here.
#include <algorithm>
#include <filesystem>
#include <set>
#include <string>

#include "doctest/doctest.h"
#include "engine/store.h"
#include "engine/store_json.h"
#include "shipped.h"

namespace test_store {

using result::Code;

namespace {

// One record's text with the checksum made by the writer, for slots.
std::string record_text(std::uint64_t saves, const std::string& json) {
    return store::write_record({saves, json});
}

struct Bad {
    const char* file;
    Code code;
    const char* place;
};

const Bad kBad[] = {
    {"cut_off", Code::json_malformed, "character 131"},
    {"utf8", Code::json_malformed, "character 67"},
    {"list", Code::not_a_recipe, ""},
    {"other_kind", Code::not_a_recipe, "kind"},
    {"no_version", Code::not_a_recipe, ""},
    {"version_newer", Code::version_newer, "tarebench"},
    {"version_zero", Code::field_unknown_value, "tarebench"},
    {"version_text", Code::field_type, "tarebench"},
    {"key_twice", Code::preset_duplicate, "lines[0].percent"},
    {"key_unknown", Code::field_unknown_value, "lines[0].colour"},
    {"no_lines", Code::field_missing, "lines"},
    {"lines_object", Code::field_type, "lines"},
    {"line_text", Code::field_type, "lines[0]"},
    {"line_nameless", Code::name_empty, "lines[1]"},
    {"percent_missing", Code::field_missing, "lines[0].percent"},
    {"percent_text", Code::field_type, "lines[0].percent"},
    {"percent_null", Code::field_type, "lines[0].percent"},
    {"percent_fine", Code::number_too_fine, "lines[0].percent"},
    {"percent_negative", Code::number_negative, "lines[0].percent"},
    {"percent_over", Code::number_too_large, "lines[0].percent"},
    {"percent_endless", Code::json_malformed, "character 155"},
    {"percent_of_rest", Code::field_unknown_value, "lines[0].percent"},
    {"rest_twice", Code::rest_twice, "lines[1].rest"},
    {"rest_text", Code::field_type, "lines[0].rest"},
    {"hold_empty", Code::field_missing, "lines[0].hold.percent"},
    {"phase_missing", Code::phase_missing, "lines[0].phase"},
    {"phase_twice", Code::phase_twice, "phases[1].id"},
    {"phase_too_hot", Code::number_too_large, "phases[0].hold_c"},
    {"step_phase", Code::phase_missing, "steps[0].phase"},
    {"step_half_minute", Code::number_too_fine, "steps[0].minutes"},
    {"step_too_long", Code::text_too_long, "steps[0].text"},
    {"title_too_long", Code::text_too_long, "title"},
    {"date", Code::field_unknown_value, "date"},
    {"amount_twice", Code::field_missing, "batch.amount"},
    {"amount_unknown", Code::field_unknown_value, "batch.amount"},
    {"count_fraction", Code::number_too_fine, "batch.containers[0].count"},
    {"count_huge", Code::number_too_large, "batch.containers[0].count"},
    {"loss_whole", Code::loss_invalid, "batch.loss_percent"},
    {"division_zero", Code::division_invalid, "batch.division_g"},
    {"grams_negative", Code::number_negative, "batch.grams"},
    {"stock_list", Code::field_type, "batch.stock"},
    {"own_nameless", Code::field_missing, "ingredients[0].id"},
    {"own_twice", Code::preset_duplicate, "ingredients[1].id"},
    {"own_standing", Code::field_unknown_value, "ingredients[0].standing"},
    {"own_density_zero", Code::number_negative, "ingredients[0].density_g_per_ml"},
    {"too_many_lines", Code::too_many, "lines"},
    {"too_deep", Code::too_many, "lines[0][0][0][0][0][0][0]…"},
};

}  // namespace

TEST_CASE("store: a recipe file gives the recipe, and the recipe the file") {
    const char* kFile =
        R"({"tarebench":1,"kind":"formula","title":"Orchard lip balm","product":"lip_balm",
            "lines":[{"ingredient":"beeswax_yellow","percent":22.5,"phase":"A"},
                     {"name":"Plum kernel oil","rest":true,"phase":"B"}],
            "batch":{"containers":[{"id":"lip_tube_round","count":14}],"loss_percent":5,"division_g":0.01}})";
    const workspace::Recipe recipe = store::read_recipe(kFile).value();
    CHECK(recipe.title == "Orchard lip balm");
    CHECK(recipe.formula.lines[0].percent == quantity::Percent{225000});
    CHECK(recipe.formula.lines[1].name == "Plum kernel oil");
    CHECK(recipe.formula.phases.size() == 2);  // made from the lines
    CHECK(recipe.batch.containers[0].count == 14);
    CHECK(store::read_recipe(store::write_recipe(recipe)).value() == recipe);
}

TEST_CASE("store: every bad file is refused with its reason and its place") {
    for (const Bad& bad : kBad) {
        INFO("file: ", std::string(bad.file));
        const auto read = store::read_recipe(shipped::data(std::string("bad_recipe_") + bad.file + ".json"));
        REQUIRE_FALSE(read.ok());
        CHECK(words::code_name(read.error().code) == words::code_name(bad.code));
        CHECK(read.error().place == bad.place);
    }
}

TEST_CASE("store: every bad file has its row") {
    std::set<std::string> rows;
    for (const Bad& bad : kBad)
        rows.insert(std::string("bad_recipe_") + bad.file + ".json");
    for (const auto& entry :
         std::filesystem::directory_iterator(std::string(TAREBENCH_SOURCE_DIR) + "/tests/data")) {
        const std::string name = entry.path().filename().string();
        if (name.rfind("bad_recipe_", 0) == 0) CHECK_MESSAGE(rows.count(name) == 1, name);
    }
}

TEST_CASE("store: the written file keeps the order of the contract and the figures as they are read") {
    const std::string text =
        store::write_recipe(store::read_recipe(shipped::data("v1_recipe_everything.json")).value());
    std::size_t at = 0;
    for (const char* key : {"\"tarebench\": 1", "\"kind\": \"formula\"", "\"title\"", "\"product\"",
                            "\"market\"", "\"date\"", "\"person\"", "\"lines\"", "\"ingredients\"",
                            "\"phases\"", "\"steps\"", "\"batch\"", "\"notes\""}) {
        INFO("key: ", std::string(key));
        const std::size_t found = text.find(std::string("\n  ") + key);
        REQUIRE(found != std::string::npos);
        CHECK(found >= at);
        at = found;
    }
    CHECK(text.find("\"percent\": 33.3333,") != std::string::npos);
    CHECK(text.find("\"hold_c\": 62.5,") != std::string::npos);
    CHECK(text.find("{\"ingredient\": \"olive\", \"rest\": true, \"phase\": \"warm\"}") != std::string::npos);
}

TEST_CASE("store: a text with quotes, breaks and control characters comes back") {
    workspace::Recipe recipe;
    recipe.title = "\"Quoted\" \\ slash / tab\t\x01\x7F \xC3\xBC \xF0\x9F\xAB\x99";
    recipe.notes = "one\ntwo\r\n";
    const auto back = store::read_recipe(store::write_recipe(recipe));
    CHECK(back.value() == recipe);
}

TEST_CASE("store: bytes that are no text are replaced, so that a file can always be read again") {
    workspace::Recipe recipe;
    recipe.title = "cut \xC3";
    CHECK(store::read_recipe(store::write_recipe(recipe)).value().title == "cut \xEF\xBF\xBD");
}

TEST_CASE("store: every figure on the grid is written shortest and read back as itself") {
    for (std::int64_t grid = 0; grid <= 1'000'000; grid += 37) {
        store_json::Writer writer(store_json::Layout::one_line);
        writer.figure(grid);
        const std::string text = writer.finish();
        CHECK(text.size() <= 8);
        const auto tree = store_json::parse(text);
        store_json::Failure failure;
        CHECK(store_json::figure_of(*tree, "", failure) == grid);
        CHECK_FALSE(failure.failed());
    }
}

TEST_CASE("store: two entries of one ingredient in stock are one amount of it") {
    workspace::Recipe recipe;
    recipe.batch.amount = batch::Amount::stock;
    recipe.batch.stock = {{"shea", {10000}}, {"jojoba", {20000}}, {"shea", {5000}}};
    const auto back = store::read_recipe(store::write_recipe(recipe));
    CHECK(back.value().batch.stock == std::vector<batch::Stock>{{"shea", {15000}}, {"jojoba", {20000}}});
}

TEST_CASE("store: the ways of saying a fill and what a person gets come back whole") {
    workspace::Recipe recipe;
    recipe.batch.amount = batch::Amount::people;
    recipe.batch.people = 12;
    recipe.batch.each = 2;
    batch::Containers one{"jar_60ml", 3, {}, quantity::percent(85)};
    one.water_g = quantity::Mass{641200};
    recipe.batch.containers = {one};
    one.id = "";
    one.count = 1;
    one.water_g.reset();
    one.test_fill_g = quantity::Mass{43100};
    recipe.batch.unit = one;
    const std::string file = store::write_recipe(recipe);
    CHECK(store::read_recipe(file).value().batch == recipe.batch);
    CHECK(file.find("\"unit\": {\"test_fill_g\": 4.31") != std::string::npos);
}

TEST_CASE("store: who answers for products on this device comes back, and is in no recipe") {
    workspace::Settings settings;
    settings.maker = {"Hollow Lane Allotments", "1 Hollow Lane, Hollowham", "hello@hollow-lane.example", ""};
    const auto back = store::read_settings(store::write_settings(settings, ""));
    REQUIRE(back.ok());
    CHECK(back->settings == settings);
    CHECK(store::write_settings({}, "").find("maker") == std::string::npos);
}

TEST_CASE("store: a question about a list of ingredients comes back with what was decided and said") {
    workspace::Settings settings;
    settings.reading = {
        "Cera Alba, Lanolin", "Lantern Street balm", "lip_balm", "eu", "2026-08-01", {}, 1, {},
        {"3 linalool"}};
    settings.reading.decided = {{0, "beeswax_yellow", 0}, {1, "", 4}};
    settings.reading.said = {reading::amount(0, 123400, std::nullopt),
                             reading::group("waxes", {0, 1}, {}, 500000)};
    settings.reading.said[1].on = false;
    const std::string json = store::write_settings(settings, "");
    const auto back = store::read_settings(json);
    REQUIRE(back.ok());
    CHECK(back->settings == settings);
    for (const auto& [from, to] :
         {std::pair{"\"group\"", "\"grope\""}, {"\"entries\":[0", "\"entries\":[0.5"}}) {
        std::string damaged = json;
        const std::size_t at = damaged.find(from);
        REQUIRE(at != std::string::npos);
        damaged.replace(at, std::string_view(from).size(), to);
        const auto read = store::read_settings(damaged);
        REQUIRE_FALSE(read.ok());
        CHECK(read.error().place.rfind("reading.said[", 0) == 0);
    }
}

TEST_CASE("store: a maker whose name is longer than a label takes is refused with its place") {
    workspace::Settings settings;
    settings.maker.address = std::string(label::kMostLineBytes, 'w');
    CHECK(store::read_settings(store::write_settings(settings, "")).ok());
    settings.maker.address += 'w';
    const auto read = store::read_settings(store::write_settings(settings, ""));
    REQUIRE_FALSE(read.ok());
    CHECK(read.error().code == Code::text_too_long);
    CHECK(read.error().place == "maker.address");
}

TEST_CASE("store: what a recipe says for its label comes back, and is left out where nothing is said") {
    workspace::Recipe recipe = shipped::recipe("orchard_lip_balm");
    CHECK(store::write_recipe(recipe).find("\"label\"") == std::string::npos);
    recipe.label.identity = "Winter balm";
    recipe.label.keeping = {24, {}, false};
    recipe.label.warnings = {"Keep out of eyes."};
    recipe.label.panel = type_height::Panel{type_height::Shape::round_top, 0, 600'000, false};
    const std::string file = store::write_recipe(recipe);
    CHECK(file.find("\"panel\": {\"shape\": \"round_top\", \"width_mm\": 60}") != std::string::npos);
    CHECK(store::read_recipe(file).value() == recipe);
}

TEST_CASE("store: a label that nobody could mean is refused with its place") {
    const auto place = [](const char* label) {
        const auto read = store::read_recipe(
            std::string(
                R"({"tarebench":1,"kind":"formula","title":"x","lines":[{"ingredient":"shea","percent":100,)"
                R"("phase":"A"}],"label":)") +
            label + "}");
        REQUIRE_FALSE(read.ok());
        return read.error().place;
    };
    CHECK(place(R"({"keeps_months":601})") == "label.keeps_months");
    CHECK(place(R"({"keeps_months":1.5})") == "label.keeps_months");
    CHECK(place(R"({"colours":[""]})") == "label.colours[0]");
    CHECK(place(R"({"warnings":"x"})") == "label.warnings");
    CHECK(place(R"({"panel":{"shape":"heart","width_mm":5}})") == "label.panel.shape");
    CHECK(place(R"({"panel":{"shape":"cylinder","width_mm":5}})") == "label.panel");
    CHECK(place(R"({"colour":[]})") == "label.colour");
}

TEST_CASE("store: scales and jugs of the bench come back, and a jug that is not there is none") {
    workspace::Settings settings;
    settings.scales = {{"fine", {100}, quantity::grams(200)}};
    settings.jugs = {{"tall", quantity::Mass{1874000}}, {"small", {}}};
    settings.jug = 0;
    const auto back = store::read_settings(store::write_settings(settings, ""));
    REQUIRE(back.ok());
    CHECK(back->settings == settings);
    CHECK(workspace::bench_of(back->settings).jug == scales::Jug{"tall", {1874000}});
    settings.jug = 7;
    CHECK_FALSE(store::read_settings(store::write_settings(settings, ""))->settings.jug.has_value());
    CHECK_FALSE(workspace::bench_of(settings).jug.has_value());
}

TEST_CASE("store: five megabytes of brackets or keys are refused and not built") {
    CHECK(store::read_recipe(std::string(4'000'000, '[')).error().code == Code::too_many);
    CHECK(store::read_recipe(std::string(5'000'001, ' ')).error().code == Code::too_many);
    std::string keys = "{";
    for (int i = 0; i < 5000; ++i)
        keys += (i == 0 ? "\"k" : ",\"k") + std::to_string(i) + "\":0";
    CHECK(store::read_recipe(keys + "}").error().code == Code::too_many);
}

TEST_CASE("store: a record tells its counter, its checksum and its text") {
    const store::Record record{7, R"({"tarebench":1})"};
    const std::string text = store::write_record(record);
    CHECK(text.substr(0, 2) == "7 ");
    CHECK(text.substr(10) == R"( {"tarebench":1})");
    CHECK(store::read_record(text).value() == record);
    CHECK(store::read_record(store::write_record({UINT64_MAX, ""})).value() == store::Record{UINT64_MAX, ""});
}

TEST_CASE("store: a record with any character changed, added or taken away is refused") {
    const std::string text = record_text(12, R"({"title":"Frost-line elbow butter"})");
    for (std::size_t i = 0; i < text.size(); ++i) {
        std::string changed = text;
        changed[i] = static_cast<char>(changed[i] ^ 1);
        CHECK_FALSE(store::read_record(changed).ok());
        CHECK_FALSE(store::read_record(text.substr(0, i)).ok());
        changed = text;
        changed.insert(i, "0");
        CHECK_FALSE(store::read_record(changed).ok());
    }
    for (const char* text_of_another :
         {"", " ", "7", "x 00000000 {}", "99999999999999999999 00000000 {}", "7 CBF43926"})
        CHECK(store::read_record(text_of_another).error().code == Code::checksum_wrong);
}

TEST_CASE("store: of two valid records the one with the higher counter is taken and the other key is next") {
    const std::string older = record_text(3, "{}"), newer = record_text(4, "[]");
    store::Chosen chosen = store::choose({newer, older});
    CHECK(chosen.record == store::Record{4, "[]"});
    CHECK(chosen.next_slot == 'b');
    CHECK(chosen.damaged.empty());
    chosen = store::choose({older, newer});
    CHECK(chosen.record == store::Record{4, "[]"});
    CHECK(chosen.next_slot == 'a');
    chosen = store::choose({record_text(10, "{}"), record_text(9, "[]")});  // as numbers, not as texts
    CHECK(chosen.record->saves == 10);
}

TEST_CASE("store: a damaged record is kept aside and the older one is used") {
    const std::string older = record_text(3, "{}");
    const std::string damaged = record_text(4, "[]") + "x";
    const store::Chosen chosen = store::choose({older, damaged});
    CHECK(chosen.record == store::Record{3, "{}"});
    CHECK(chosen.damaged == std::vector<std::string>{damaged});
    CHECK(chosen.next_slot == 'b');
}

TEST_CASE(
    "store: with nothing to read the first key is next, but not over something damaged if it can be helped") {
    CHECK(store::choose({}).next_slot == 'a');
    CHECK_FALSE(store::choose({}).record.has_value());
    const store::Chosen one = store::choose({"damaged", std::nullopt});
    CHECK(one.next_slot == 'b');
    CHECK(one.damaged.size() == 1);
    CHECK(store::choose({std::nullopt, "damaged"}).next_slot == 'a');
    CHECK(store::choose({"damaged", "too"}).damaged.size() == 2);
}

TEST_CASE("store: a save that is cut off at any byte leaves the one before") {
    const std::string before = record_text(8, R"({"title":"Orchard lip balm"})");
    const std::string after = record_text(9, R"({"title":"Orchard lip balm, softer"})");
    for (std::size_t written = 0; written < after.size(); ++written) {
        const store::Chosen chosen = store::choose({before, after.substr(0, written)});
        REQUIRE(chosen.record.has_value());
        CHECK(chosen.record->saves == 8);
    }
    CHECK(store::choose({before, after}).record->saves == 9);
}

TEST_CASE("store: a kept recipe comes back with its counter and its instants") {
    workspace::Kept kept;
    kept.id = "r-1";
    kept.recipe = shipped::recipe("orchard_lip_balm");
    kept.saves = 18446744073709551615u;
    kept.changed = "2026-11-25T12:00:00Z";
    kept.binned = "2026-11-26T12:00:00Z";
    CHECK(store::read_kept(store::write_kept(kept)).value() == kept);
    CHECK(store::read_kept("{}").error().code == Code::not_a_recipe);
    CHECK(store::read_kept(store::write_recipe(kept.recipe)).error().code == Code::not_a_recipe);
}

TEST_CASE("store: what a person entered on this device is read back whatever its length") {
    workspace::Kept kept;
    kept.id = "r-1";
    kept.recipe.title = std::string(500, 'x');
    kept.recipe.formula.phases = {{"A", {}, {}}};
    kept.recipe.formula.lines = {{}};
    kept.recipe.batch.division = {0};
    CHECK(store::read_kept(store::write_kept(kept)).value() == kept);
}

TEST_CASE("store: settings come back with the open recipe") {
    workspace::Settings settings;
    settings.language = "de";
    settings.sign = workspace::DecimalSign::comma;
    settings.theme = workspace::Theme::dark;
    settings.hosted_address = "https://hollow-lane.example/";
    settings.scales.push_back({"Post", {50000}, {20'000'000}});
    const auto back = store::read_settings(store::write_settings(settings, "r-1"));
    CHECK(back.value().settings == settings);
    CHECK(back.value().open == "r-1");
    CHECK(store::read_settings(R"({"tarebench":1,"kind":"settings"})").error().code == Code::field_missing);
}

}  // namespace test_store
