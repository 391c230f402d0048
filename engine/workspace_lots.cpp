#include "workspace_lots.h"

#include <algorithm>
#include <utility>

#include "record_number.h"
#include "sorting.h"
#include "workspace_records.h"

namespace workspace {
namespace {

using lot::Lot;
using result::Code;
using result::Error;

const Lot& lot_in(const Filed* filed) {
    return std::get<Lot>(filed->what);
}

std::optional<Error> fault_of_new(const Workspace& workspace, const Lot& lot, std::string_view id) {
    if (auto fault = lot::fault_of(lot)) return fault;
    for (const Filed* other : lots_of(workspace, lot.ingredient))
        if (other->id != id && record::same_number(lot_in(other).number, lot.number))
            return Error{Code::preset_duplicate, "number", lot.number};
    return std::nullopt;
}

}  // namespace

std::vector<const Filed*> lots_of(const Workspace& workspace, std::string_view ingredient) {
    std::vector<const Filed*> all;
    for (const Filed& filed : workspace.filed)
        if (const auto* one = std::get_if<Lot>(&filed.what); one && one->ingredient == ingredient)
            all.push_back(&filed);
    // One whose day is not known comes after those whose is.
    const auto day = [](const Lot& lot) {
        return lot.best_before.empty() ? std::string_view("9999-12-31") : std::string_view(lot.best_before);
    };
    sorting::stable(all, [&](const Filed* a, const Filed* b) {
        const Lot &one = lot_in(a), &other = lot_in(b);
        if (one.used_up.empty() != other.used_up.empty()) return one.used_up.empty();
        return day(one) < day(other);
    });
    return all;
}

const Lot* find_lot(const Workspace& workspace, std::string_view id) {
    for (const Filed& filed : workspace.filed)
        if (filed.id == id) return std::get_if<Lot>(&filed.what);
    return nullptr;
}

result::Result<std::string> add_lot(Workspace& workspace, Lot lot, std::string id, std::string now) {
    if (auto fault = fault_of_new(workspace, lot, "")) return *fault;
    file(workspace, {id, std::move(lot), now, now});
    return id;
}

result::Result<std::string> set_lot(Workspace& workspace, std::string_view id, Lot changed, std::string now) {
    for (Filed& filed : workspace.filed) {
        auto* lot = filed.id == id ? std::get_if<Lot>(&filed.what) : nullptr;
        if (!lot) continue;
        changed.ingredient = lot->ingredient;
        changed = lot::corrected(*lot, std::move(changed));
        if (auto fault = fault_of_new(workspace, changed, id)) return *fault;
        if (changed == *lot) return filed.id;
        *lot = std::move(changed);
        filed.changed = std::move(now);
        ++workspace.filings;
        return filed.id;
    }
    return Error{Code::field_unknown_value, "id", std::string(id)};
}

std::vector<std::string> numbers_of(const Workspace& workspace, std::string_view ingredient,
                                    std::string_view number) {
    for (const Filed* filed : lots_of(workspace, ingredient)) {
        std::vector<std::string> numbers = lot::numbers(lot_in(filed));
        for (const std::string& one : numbers)
            if (record::same_number(one, number)) return numbers;
    }
    return {std::string(number)};
}

std::vector<Choice> lots_for(const Workspace& workspace, std::string_view ingredient) {
    constexpr std::size_t kMostBatches = 8;
    std::vector<Choice> all;
    if (ingredient.empty()) return all;
    for (const Filed* filed : lots_of(workspace, ingredient))
        if (const Lot& lot = lot_in(filed); lot.used_up.empty()) all.push_back({lot.number, lot.best_before});
    std::size_t batches = 0;
    for (const record::Record* one : plain(records(workspace)))
        if (one->makes == ingredient && batches++ < kMostBatches)
            all.push_back({record::state_of(*one).number, ""});
    return all;
}

std::optional<Choice> only_lot(const Workspace& workspace, std::string_view ingredient) {
    const std::vector<Choice> all = lots_for(workspace, ingredient);
    if (all.size() != 1) return std::nullopt;
    return all.front();
}

}  // namespace workspace
