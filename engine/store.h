// The only door for JSON: recipes and the kept workspace in and out, and the shipped presets in.
// Old versions are lifted step by step (store_migrations.cpp); a newer one is refused with version_newer.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "catalogue.h"
#include "result.h"
#include "words.h"
#include "workspace.h"
#include "workspace_backup.h"

namespace store {

inline constexpr int kFormat = 1;

// One recipe as a file ({"tarebench":1,"kind":"formula",…}). Unknown keys are refused by name, so nothing a
// person wrote is dropped in silence; numbers must lie on the grid. Ingredients that are not in any catalogue
// are kept.
result::Result<workspace::Recipe> read_recipe(std::string_view json);
std::string write_recipe(const workspace::Recipe& recipe);  // indented, keys in the order of the contract

// --- presets ---
struct Presets {
    catalogue::Catalogue catalogue;
    std::vector<words::Table> words;                                 // by language
    std::vector<std::pair<std::string, workspace::Recipe>> recipes;  // file stem -> recipe, sorted
    bool operator==(const Presets&) const = default;
};
using File = std::pair<std::string_view, std::string_view>;  // "ingredients/waxes.json" -> text
// Refuses the whole set at the first fault: place "ingredients/waxes.json: shea.density".
result::Result<Presets> read_presets(const std::vector<File>& files);
// What read_presets gave, packed when the program is built and read at each of its starts; damage is refused.
// The words are not copied out of the bytes: those must stay.
std::string pack_presets(const Presets& presets);
result::Result<Presets> unpack_presets(std::string_view bytes);

// --- what is kept on the device: two keys in turn for each record ---
// A record's text is "<save counter> <crc32 as 8 hex> <json>"; the checksum is over counter and json.
struct Record {
    std::uint64_t saves = 0;
    std::string json;
    bool operator==(const Record&) const = default;
};
std::string write_record(const Record& record);
result::Result<Record> read_record(std::string_view text);

struct Slots {  // the texts found under "<key>.a" and "<key>.b"
    std::optional<std::string> a, b;
};
struct Chosen {
    std::optional<Record> record;      // the valid one with the higher counter
    std::vector<std::string> damaged;  // texts that are there but not valid, to be kept aside and shown
    char next_slot = 'a';              // where the next save goes: never over the chosen one
};
Chosen choose(const Slots& slots);

std::string write_kept(const workspace::Kept& kept);  // JSON for a record
result::Result<workspace::Kept> read_kept(std::string_view json);
std::string write_kept_own(const workspace::KeptOwn& kept);
result::Result<workspace::KeptOwn> read_kept_own(std::string_view json);
// A batch record, a lot or a version, each of a kind of its own.
bool is_filed(std::string_view kind);
std::string write_filed(const workspace::Filed& filed);
result::Result<workspace::Filed> read_filed(std::string_view json);
std::string write_weigh_out(const workspace::KeptWeighOut& kept);
result::Result<workspace::KeptWeighOut> read_weigh_out(std::string_view json);
struct Device {
    workspace::Settings settings;
    std::string open, place;  // as in workspace::Workspace
    bool operator==(const Device&) const = default;
};
std::string write_settings(const workspace::Settings& settings, std::string_view open,
                           std::string_view place = "");
result::Result<Device> read_settings(std::string_view json);

// --- everything as one file ---
// {"tarebench":1,"kind":"backup","made":…,"records":[…]}: the records as they lie on the device, each with
// its own heading, so that old ones are lifted by the same steps; one to a line, so that a file that was cut
// off gives back what is whole. A record that cannot be read, or of a kind this version does not know, comes
// back as text. The crash notice's file ({"tarebench_records":1,…}, shell/boot.js) is read likewise.
bool is_backup(std::string_view text);  // by its heading
std::string write_backup(const workspace::Workspace& workspace, const std::vector<std::string>& damaged,
                         std::string_view made);
result::Result<workspace_backup::Content> read_backup(std::string_view json);

}  // namespace store
