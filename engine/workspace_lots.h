// Lots on the shelf: added, corrected, used up; offered for a line. None is taken away: records name them.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "lot.h"
#include "result.h"
#include "workspace.h"

namespace workspace {

// Of one ingredient, those that are not used up first, the shortest best before first of all.
std::vector<const Filed*> lots_of(const Workspace& workspace, std::string_view ingredient);
const lot::Lot* find_lot(const Workspace& workspace, std::string_view id);

// Refused: no number, a lot of this ingredient that has it, a day that is none.
result::Result<std::string> add_lot(Workspace& workspace, lot::Lot lot, std::string id, std::string now);
result::Result<std::string> set_lot(Workspace& workspace, std::string_view id, lot::Lot changed,
                                    std::string now);

// All numbers of the lot that has or had this one; itself where no lot of this device is it.
std::vector<std::string> numbers_of(const Workspace& workspace, std::string_view ingredient,
                                    std::string_view number);

struct Choice {  // of a lot for a line
    std::string number, best_before;
    bool operator==(const Choice&) const = default;
};
// What there is of it: lots that are not used up, and for a made part the batches of its own, latest first.
std::vector<Choice> lots_for(const Workspace& workspace, std::string_view ingredient);
// The one lot there is, where there is just one.
std::optional<Choice> only_lot(const Workspace& workspace, std::string_view ingredient);

}  // namespace workspace
