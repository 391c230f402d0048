// Batch records on this device: begun from a recipe and its batch, added to, looked up. None is ever taken
// away. Each freezes a version of the recipe it was made by.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "batch.h"
#include "record.h"
#include "record_trace.h"
#include "result.h"
#include "workspace.h"

namespace workspace {

// Every record, the latest day first; of one day the one begun last.
std::vector<const Filed*> records(const Workspace& workspace);
std::vector<const record::Record*> plain(const std::vector<const Filed*>& filed);
const record::Record* find_record(const Workspace& workspace, std::string_view id);
// Those in which every word of `search` is found: number, title, who, lots, remarks; without case.
std::vector<const Filed*> records_found(const Workspace& workspace, std::string_view search);

// What a record begins with: the recipe's lines as its batch plans them, what was weighed not known.
record::Record record_of(const Recipe& recipe, std::string_view recipe_id, const batch::Batch& batch,
                         const catalogue::Catalogue& known);
// By the pattern of the settings; nobody has it.
std::string next_batch_number(const Workspace& workspace, std::string_view day, std::string_view title);

struct NewIds {  // from the host
    std::string record, version;
};
// Files it with the version it was made by, which is one that is there already where nothing differs. A
// number that is taken, in whatever writing, is refused (preset_duplicate); one that is empty is made. Gives
// its id.
result::Result<std::string> add_record(Workspace& workspace, record::Record record, const Recipe& made_by,
                                       NewIds ids, std::string now);
// At its end. A number that another record has is refused.
result::Result<std::string> add_entry(Workspace& workspace, std::string_view id, record::Entry entry,
                                      std::string now);

std::vector<record::Use> batches_with(const Workspace& workspace, std::string_view ingredient,
                                      const std::vector<std::string>& numbers);  // of records()
std::optional<record::Loss> usual_loss(const Workspace& workspace, std::string_view recipe);

// For all that is filed: a new one at the end; the order it was made in.
void file(Workspace& workspace, Filed filed);
void sort_filed(std::vector<Filed>& filed);
// Anything filed that came from elsewhere, another window or a backup: what is here of it is not lost. A
// record gets the entries of both; of a lot and a version the state changed later holds. True: something is
// other now.
bool take_filed(Workspace& workspace, Filed theirs);
std::optional<result::Error> fault_of(const Filed& filed);  // of one that came from outside

}  // namespace workspace
