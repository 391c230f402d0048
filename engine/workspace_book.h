// The formula book as it is looked at: which recipes stand in it, found by a search or a tag, in the order
// asked for. Leaves out the bin. Changes nothing.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "workspace.h"

namespace workspace_book {

struct View {
    std::string search;  // every word of it must be found, in title, ingredient, product kind or tag
    std::string tag;     // "": any
    workspace::Sort sort = workspace::Sort::changed;
};

// Titles are sorted and searched without case; recipes of one product kind stand together,
// in the catalogue's order of kinds. Where the order leaves it open, the one changed last comes first.
std::vector<const workspace::Kept*> shown(const workspace::Workspace& workspace,
                                          const catalogue::Catalogue& catalogue, const View& view);

// All tags of the book, sorted, one for those that differ in case alone.
std::vector<std::string> tags(const workspace::Workspace& workspace);
bool has_tag(const workspace::Kept& kept, std::string_view tag);

}  // namespace workspace_book
