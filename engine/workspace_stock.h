// What is on the shelf now: what was counted or made, less what the batch records since then took of it.
// Nothing is written down twice: a corrected record corrects the shelf, and no record can take its share
// again.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "lot.h"
#include "quantity.h"
#include "workspace.h"

namespace workspace {

struct OnShelf {        // one lot, or one batch of a made part
    std::string filed;  // id
    std::string ingredient, number;
    std::optional<quantity::Mass> counted;  // as it stands in the lot; of a batch its yield; none: not known
    quantity::Mass taken;                   // by records since; more than there was is more than there was
    bool batch = false;
    bool used_up = false;
    std::optional<quantity::Mass> left() const;  // not below 0
    bool operator==(const OnShelf&) const = default;
};

enum class NotTaken {
    none,         // it was taken
    not_weighed,  // its weight is not known
    no_lot,       // none is named
    no_such_lot,  // on this device
    not_counted,  // what there was of the lot is not known
    before_count  // it was made before the lot was counted
};
struct Taking {  // of one line of a record
    std::size_t line = 0;
    std::optional<std::size_t> shelf;  // the one it comes from
    quantity::Mass grams;
    NotTaken why = NotTaken::none;
    bool operator==(const Taking&) const = default;
};

struct Shelf {
    std::vector<OnShelf> all;  // in the order they were filed
    bool operator==(const Shelf&) const = default;
};
Shelf shelf(const Workspace& workspace);
std::vector<Taking> takings(const Workspace& workspace, const Shelf& shelf, std::string_view record);
const OnShelf* find(const Shelf& shelf, std::string_view filed);
// Over all that are not used up; none: there is no lot, or what there is of none is known.
std::optional<quantity::Mass> at_hand(const Shelf& shelf, std::string_view ingredient);

struct Wanted {
    std::string ingredient;
    quantity::Mass grams;
};
struct Low {
    std::string ingredient;
    std::optional<quantity::Mass> left;  // none: nothing is known of it
    quantity::Mass wanted;
    bool own = false;  // the threshold is the person's; else it is what the open recipe needs
    bool operator==(const Low&) const = default;
};
// What is under its own threshold, or, where it has none, under what `needs` says of it. Of what no lot was
// ever counted only a threshold tells.
std::vector<Low> low(const Workspace& workspace, const Shelf& shelf, const std::vector<Wanted>& needs);
std::vector<Wanted> wanted(const Recipe& recipe, const batch::Batch& batch);

}  // namespace workspace
