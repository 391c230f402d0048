// From a finished list of ingredients to a reading: which names are added ingredients, which are allergens
// that came with something, what may stand outside the order, what is likely a carrier. All of it is offered;
// the person decides, and the problem is made from what is decided. Nothing that was written is lost.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "declaration_read.h"
#include "reading_statements.h"

namespace reading_list {

enum class As {
    added,       // in its place
    free,        // outside the order: a colourant at the end, a parfum where it stands last
    incidental,  // an allergen, named because something holds it
    carrier,     // came with the one before it, an oil for an extract; counts in its place all the same
    aside,       // of other shades, or not in this product
};
struct Entry {
    std::string written, ingredient;           // as the list has it; id, when one is meant
    std::vector<std::string> offered;          // ids, when several fit
    As as = As::added;                         // what it is taken as
    std::optional<As> other;                   // what else it may well be
    std::optional<quantity::Percent> percent;  // that the list says
    bool twice = false;                        // an earlier entry is the same
    bool operator==(const Entry&) const = default;
};

std::vector<Entry> entries_of(const declaration_read::Reading& reading, const catalogue::Catalogue& known,
                              const limits::Book& book);

struct Made {
    reading::Problem problem;
    std::vector<std::size_t> entry_of;  // of each item
    std::vector<std::string> not_said;  // allergens on the list of which nothing is known here
};
// The problem as decided: percents that were printed, the allergens that are declared and those that are
// missing, each a statement. `more`: limits too, those of law switched on.
Made problem_of(const std::vector<Entry>& entries, const reading::Sold& sold,
                const catalogue::Catalogue& known, const limits::Book& book, bool more);

}  // namespace reading_list
