#include "workspace_stock.h"

#include <algorithm>
#include <utility>

#include "record_number.h"
#include "workspace_lots.h"
#include "workspace_records.h"

namespace workspace {
namespace {

using quantity::Mass;
using record::Record;

// A day, and the instant within it where that is known: which of two came first.
struct When {
    std::string_view day, instant;
};
bool is_before(const When& one, const When& other) {
    if (one.day != other.day) return one.day < other.day;
    return !one.instant.empty() && !other.instant.empty() && one.instant < other.instant;
}

bool has_number(const lot::Lot& lot, std::string_view number) {
    for (const std::string& one : lot::numbers(lot))
        if (record::same_number(one, number)) return true;
    return false;
}

struct Filing {  // a record with what holds of it
    const Filed* filed;
    const Record* record;
    record::State state;
};
Filing filing_of(const Filed& filed, const Record& record) {
    return {&filed, &record, record::state_of(record)};
}

// Which place of the shelf a line was taken from, and whether it was.
Taking taking_of(const Workspace& workspace, const Shelf& shelf, const Filing& by, std::size_t line) {
    const record::Weighed& said = by.state.lines[line];
    Taking taking{line, std::nullopt, said.weighed.value_or(Mass{}), NotTaken::none};
    const auto not_taken = [&](NotTaken why) {
        taking.why = why;
        return taking;
    };
    if (!said.weighed) return not_taken(NotTaken::not_weighed);
    if (said.lot.empty()) return not_taken(NotTaken::no_lot);
    for (std::size_t i = 0; i < shelf.all.size() && !taking.shelf; ++i) {
        const OnShelf& one = shelf.all[i];
        if (one.ingredient != said.ingredient || one.filed == by.filed->id) continue;
        const lot::Lot* lot = one.batch ? nullptr : find_lot(workspace, one.filed);
        if (lot ? has_number(*lot, said.lot) : record::same_number(one.number, said.lot)) taking.shelf = i;
    }
    if (!taking.shelf) return not_taken(NotTaken::no_such_lot);
    const OnShelf& from = shelf.all[*taking.shelf];
    if (!from.counted) return not_taken(NotTaken::not_counted);
    if (from.batch) return taking;
    const lot::Lot* lot = find_lot(workspace, from.filed);
    if (is_before({by.state.day, by.filed->made}, {lot->counted, lot->counted_at}))
        return not_taken(NotTaken::before_count);
    return taking;
}

}  // namespace

std::optional<Mass> OnShelf::left() const {
    if (used_up) return Mass{};
    if (!counted) return std::nullopt;
    return std::max(*counted - taken, Mass{});
}

Shelf shelf(const Workspace& workspace) {
    Shelf shelf;
    std::vector<Filing> filings;
    for (const Filed& filed : workspace.filed) {
        if (const auto* lot = std::get_if<lot::Lot>(&filed.what))
            shelf.all.push_back(
                {filed.id, lot->ingredient, lot->number, lot->left, {}, false, !lot->used_up.empty()});
        if (const auto* record = std::get_if<Record>(&filed.what)) {
            filings.push_back(filing_of(filed, *record));
            if (!record->makes.empty())
                shelf.all.push_back({filed.id,
                                     record->makes,
                                     filings.back().state.number,
                                     filings.back().state.yield,
                                     {},
                                     true,
                                     false});
        }
    }
    for (const Filing& one : filings)
        for (std::size_t i = 0; i < one.state.lines.size(); ++i)
            if (const Taking taking = taking_of(workspace, shelf, one, i); taking.why == NotTaken::none)
                shelf.all[*taking.shelf].taken = shelf.all[*taking.shelf].taken + taking.grams;
    return shelf;
}

std::vector<Taking> takings(const Workspace& workspace, const Shelf& shelf, std::string_view id) {
    std::vector<Taking> all;
    for (const Filed& filed : workspace.filed) {
        const auto* record = filed.id == id ? std::get_if<Record>(&filed.what) : nullptr;
        if (!record) continue;
        const Filing filing = filing_of(filed, *record);
        for (std::size_t i = 0; i < filing.state.lines.size(); ++i)
            all.push_back(taking_of(workspace, shelf, filing, i));
    }
    return all;
}

const OnShelf* find(const Shelf& shelf, std::string_view filed) {
    for (const OnShelf& one : shelf.all)
        if (one.filed == filed) return &one;
    return nullptr;
}

std::optional<Mass> at_hand(const Shelf& shelf, std::string_view ingredient) {
    std::optional<Mass> sum;
    for (const OnShelf& one : shelf.all)
        if (one.ingredient == ingredient)
            if (const auto left = one.left()) sum = sum.value_or(Mass{}) + *left;
    return sum;
}

std::vector<Wanted> wanted(const Recipe& recipe, const batch::Batch& batch) {
    std::vector<Wanted> all;
    for (const batch::Line& line : batch.lines) {
        if (line.line >= recipe.formula.lines.size()) continue;
        const std::string& id = recipe.formula.lines[line.line].ingredient;
        if (id.empty() || line.grams.grid <= 0) continue;
        const auto same =
            std::find_if(all.begin(), all.end(), [&](const Wanted& one) { return one.ingredient == id; });
        if (same == all.end())
            all.push_back({id, line.grams});
        else
            same->grams = same->grams + line.grams;
    }
    return all;
}

std::vector<Low> low(const Workspace& workspace, const Shelf& shelf, const std::vector<Wanted>& needs) {
    std::vector<Low> all;
    for (const lot::Threshold& own : workspace.settings.low) {
        const auto left = at_hand(shelf, own.ingredient);
        if (!left || *left < own.grams) all.push_back({own.ingredient, left, own.grams, true});
    }
    for (const Wanted& need : needs) {
        const auto left = at_hand(shelf, need.ingredient);
        const auto& own = workspace.settings.low;
        const bool said = std::any_of(own.begin(), own.end(), [&](const lot::Threshold& one) {
            return one.ingredient == need.ingredient;
        });
        if (left && !said && *left < need.grams) all.push_back({need.ingredient, left, need.grams, false});
    }
    return all;
}

}  // namespace workspace
