// What a backup holds, what putting it back would do to this device, and doing it. Nothing here is
// overwritten unasked: a recipe that differs is kept beside the one that is here, unless the person chooses
// otherwise. Files are the store's; ids and the instant come from the host.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "workspace.h"

namespace workspace_backup {

struct Content {
    std::string made;                      // instant; "" not known
    std::vector<workspace::Kept> recipes;  // the bin included
    std::optional<workspace::Settings> settings;
    std::vector<std::string> damaged;                 // what could not be read, as text
    std::vector<workspace::KeptOwn> own{};            // own ingredients, the bin included
    std::vector<workspace::Filed> filed{};            // batch records, lots, versions
    std::vector<workspace::KeptWeighOut> weighing{};  // under way
};

enum class State { fresh, changed, same };
enum class Choice { both, mine, theirs };

struct Entry {
    workspace::Kept theirs;
    std::string mine;  // id of the recipe here that it is a version of; "" none
    State state = State::fresh;
    Choice choice = Choice::both;  // asked where it is changed
};

struct Preview {
    std::vector<Entry> entries;  // in the file's order
    std::size_t fresh = 0, changed = 0, same = 0;
    std::vector<workspace::KeptOwn> own;            // own ingredients that are not here as they are there
    std::vector<workspace::Filed> filed;            // likewise; what take_filed would change something by
    std::optional<workspace::Settings> settings;    // the file's, where they differ from those here
    std::vector<workspace::KeptWeighOut> weighing;  // come back where none is under way of their recipe
    bool take_settings = false;
    std::vector<std::string> damaged;
    std::string made;
};

// Versions of one recipe have one id. The same content is the same recipe, whatever its id: a backup put back
// twice adds nothing the second time. Tags and bin count for one id only.
Preview preview(const workspace::Workspace& workspace, Content content);

// One entry as chosen. new_id: for what comes beside another recipe or has no id of its own. `tag` is put on
// a version that stands beside ours, to tell the two apart. False: nothing was to be done.
bool put_back(workspace::Workspace& workspace, const Entry& entry, std::string new_id, std::string_view tag);
// The own ingredients: those that are not here come as they are, one that is another here comes beside it
// under an id that is free. Recipes hold copies of their own and are none the worse. Returns how many came.
std::size_t put_back_own(workspace::Workspace& workspace, const Preview& preview,
                         const catalogue::Catalogue& shipped);
// What was filed: what is here of it is not lost (workspace_records.h). Returns how many came or grew.
std::size_t put_back_filed(workspace::Workspace& workspace, const Preview& preview);
// All of them, and the settings if chosen. new_ids: one for each entry. Returns how many recipes came.
std::size_t put_back(workspace::Workspace& workspace, const Preview& preview,
                     const std::vector<std::string>& new_ids, std::string_view tag);

// Recipes changed since the last backup, the bin apart.
std::size_t not_in_backup(const workspace::Workspace& workspace);
std::size_t filed_not_in_backup(const workspace::Workspace& workspace);  // likewise what is filed
// From one instant to another, less than 0 where that is the earlier one; nothing where either is no instant.
std::optional<std::int64_t> seconds_between(std::string_view from, std::string_view to);
// Whole days from one instant to another; nothing where either is no instant, never less than 0.
std::optional<std::int64_t> days_between(std::string_view from, std::string_view to);
// Whether to remind: kManyChanged of both are in no backup, or one is and the last backup is kLongDays old.
inline constexpr std::size_t kManyChanged = 5;
inline constexpr std::int64_t kLongDays = 30;
bool due(const workspace::Workspace& workspace, std::string_view now);

}  // namespace workspace_backup
