// A weigh-out from a recipe and its batch, and what becomes of it. One at a time for each recipe. What the
// weighing itself comes to is weigh_out's.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "batch.h"
#include "catalogue.h"
#include "result.h"
#include "workspace.h"

namespace workspace {

// What is to be weighed; `known` with the recipe's own ingredients laid over it. What the recipe says is at
// hand goes along. line_missing where the batch is of another formula.
result::Result<weigh_out::Plan> plan_of(const Recipe& recipe, const batch::Batch& batch,
                                        const catalogue::Catalogue& known, const scales::Bench& bench);

// Under way of this recipe of the book; null where none is.
const KeptWeighOut* weigh_out_of(const Workspace& workspace, std::string_view recipe);
// Begins one, unless there is one already; false then, and where there is no such recipe.
bool begin_weigh_out(Workspace& workspace, std::string id, std::string_view recipe, weigh_out::Plan plan,
                     std::string now);
bool set_weigh_out(Workspace& workspace, std::string_view id, weigh_out::WeighOut weighing);
bool drop_weigh_out(Workspace& workspace, std::string_view id);
void put_weigh_out(Workspace& workspace, KeptWeighOut kept);  // as it was kept elsewhere

// The batch record that it becomes: what was weighed of each line, what was added after an adjustment apart.
// Number and version are left open.
record::Record record_of(const KeptWeighOut& kept, const catalogue::Catalogue& known);

struct Finish {  // from the host
    std::string day, who;
    std::string record_id, version_id, adjusted_id;
    std::string adjusted_name;  // of the version that an adjustment leaves
    std::string now;
};
// Files the record, keeps what an adjustment made of the recipe as a version, and takes the weigh-out away.
// Gives the record's id.
result::Result<std::string> finish_weigh_out(Workspace& workspace, std::string_view id,
                                             const catalogue::Catalogue& known, Finish finish);

// The recipe as it has become: percents and amount of what is in the jug in the end. The rest line stays one.
Recipe as_weighed(const Recipe& recipe, const weigh_out::Standing& standing);

// Of a timer, at an instant: below 0 when it is over; nothing where an instant is none.
std::optional<std::int64_t> seconds_left(const weigh_out::Timer& timer, std::string_view now);

}  // namespace workspace
