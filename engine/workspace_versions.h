// Versions of the recipes in the book: kept under a name or frozen by a batch record, compared, pinned, made
// a recipe of its own, or made the recipe again. What differs between two of them is version's.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "result.h"
#include "version.h"
#include "workspace.h"

namespace workspace {

inline constexpr std::size_t kMostVersions = 100;  // of one recipe
inline constexpr std::size_t kMostVersionBytes = 60;

// Of one recipe, the newest first.
std::vector<const Filed*> versions_of(const Workspace& workspace, std::string_view recipe);
const Version* find_version(const Workspace& workspace, std::string_view id);

// The recipe as it stands, under `name`. One that is the same in all but name is taken and named so; ""
// leaves a name that it has. Gives the id it stands under.
result::Result<std::string> keep_version(Workspace& workspace, std::string_view recipe_id,
                                         const Recipe& recipe, std::string_view name, std::string id,
                                         std::string now);
bool freeze_version(Workspace& workspace, std::string_view id, std::string now);  // made by a record
result::Result<std::string> name_version(Workspace& workspace, std::string_view id, std::string_view name,
                                         std::string now);
bool pin_version(Workspace& workspace, std::string_view id, bool pinned, std::string now);
// Those of a recipe that is gone for good, but for the frozen ones: records name them.
void forget_versions(Workspace& workspace, std::string_view recipe);

struct Differences {  // of two states of a recipe
    std::vector<version::Line> lines;
    std::size_t changed_lines = 0;
    bool title = false, product = false, steps = false, notes = false, label = false, batch = false;
    bool any() const { return changed_lines > 0 || title || product || steps || notes || label || batch; }
    bool operator==(const Differences&) const = default;
};
Differences differences(const Recipe& one, const Recipe& other);

}  // namespace workspace
