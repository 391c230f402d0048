#include "workspace_records.h"

#include <algorithm>
#include <utility>

#include "bounds.h"
#include "record_number.h"
#include "sorting.h"
#include "utf8.h"
#include "workspace_versions.h"

namespace workspace {
namespace {

using record::Record;
using result::Code;
using result::Error;

Filed* find_filed(Workspace& workspace, std::string_view id) {
    for (Filed& filed : workspace.filed)
        if (filed.id == id) return &filed;
    return nullptr;
}

std::string number_of(const Record& record) {
    for (std::size_t i = record.entries.size(); i-- > 0;)
        if (record.entries[i].kind == record::Kind::number) return record::state_of(record).number;
    return record.number;
}

std::vector<std::string> numbers_but(const Workspace& workspace, std::string_view id) {
    std::vector<std::string> numbers;
    for (const Filed& filed : workspace.filed)
        if (const auto* one = std::get_if<Record>(&filed.what); one && filed.id != id)
            numbers.push_back(number_of(*one));
    return numbers;
}

std::optional<Error> taken(const Workspace& workspace, std::string_view id, const std::string& number) {
    for (const std::string& other : numbers_but(workspace, id))
        if (record::same_number(other, number)) return Error{Code::preset_duplicate, "number", number};
    return std::nullopt;
}

std::string searched(const Record& record) {
    const record::State state = record::state_of(record);
    std::string text = state.number + "\n" + state.day + "\n" + state.who + "\n" + record.title;
    for (const record::Weighed& line : state.lines)
        text += "\n" + line.name + "\n" + line.lot;
    for (const std::size_t i : state.holds) {
        const record::Entry& entry = record.entries[i];
        for (const std::string* said : {&entry.text, &entry.smell, &entry.colour, &entry.texture})
            text += "\n" + *said;
    }
    return utf8::lowered(text);
}

}  // namespace

// Of those of one instant each further one counts on behind it: "2026-11-26T09:00:00Z.002".
void file(Workspace& workspace, Filed filed) {
    std::size_t before = 0;
    for (const Filed& other : workspace.filed)
        before += other.made.compare(0, filed.made.size(), filed.made) == 0 ? 1 : 0;
    if (const std::string count = std::to_string(before + 1); before > 0)
        filed.made += "." + std::string(count.size() < 3 ? 3 - count.size() : 0, '0') + count;
    workspace.filed.push_back(std::move(filed));
    ++workspace.filings;
}

void sort_filed(std::vector<Filed>& filed) {
    sorting::stable(filed, [](const Filed& a, const Filed& b) { return a.made < b.made; });
}

std::vector<const Filed*> records(const Workspace& workspace) {
    struct Dated {
        std::string day;
        const Filed* filed;
    };
    std::vector<Dated> dated;
    for (const Filed& filed : workspace.filed)
        if (const auto* one = std::get_if<Record>(&filed.what)) {
            std::string day = one->day;
            for (const record::Entry& entry : one->entries)
                if (entry.kind == record::Kind::day) day = record::state_of(*one).day;
            dated.push_back({std::move(day), &filed});
        }
    std::reverse(dated.begin(), dated.end());
    sorting::stable(dated, [](const Dated& a, const Dated& b) { return a.day > b.day; });
    std::vector<const Filed*> all;
    for (const Dated& one : dated)
        all.push_back(one.filed);
    return all;
}

std::vector<const Record*> plain(const std::vector<const Filed*>& filed) {
    std::vector<const Record*> all;
    for (const Filed* one : filed)
        if (const auto* record = std::get_if<Record>(&one->what)) all.push_back(record);
    return all;
}

const Record* find_record(const Workspace& workspace, std::string_view id) {
    for (const Filed& filed : workspace.filed)
        if (filed.id == id) return std::get_if<Record>(&filed.what);
    return nullptr;
}

std::vector<const Filed*> records_found(const Workspace& workspace, std::string_view search) {
    std::vector<std::string> wanted(1);
    for (const char c : utf8::lowered(search)) {
        if (c != ' ')
            wanted.back() += c;
        else if (!wanted.back().empty())
            wanted.emplace_back();
    }
    std::vector<const Filed*> all = records(workspace);
    if (wanted.front().empty()) return all;
    std::erase_if(all, [&](const Filed* one) {
        const std::string text = searched(std::get<Record>(one->what));
        return !std::all_of(wanted.begin(), wanted.end(),
                            [&](const std::string& word) { return text.find(word) != std::string::npos; });
    });
    return all;
}

Record record_of(const Recipe& recipe, std::string_view recipe_id, const batch::Batch& batch,
                 const catalogue::Catalogue& known) {
    Record record;
    record.recipe = recipe_id;
    record.title = recipe.title;
    record.product = recipe.product;
    if (recipe.made) record.makes = recipe.made->id;
    for (const batch::Line& one : batch.lines) {
        if (one.line >= recipe.formula.lines.size()) continue;
        const formula::Line& line = recipe.formula.lines[one.line];
        const catalogue::Ingredient* ingredient = catalogue::find_ingredient(known, line.ingredient);
        record.with_water = record.with_water || (ingredient && ingredient->role == "water");
        record::Weighed weighed;
        weighed.ingredient = line.ingredient;
        weighed.name = display_name(known, line);
        weighed.phase = line.phase;
        weighed.percent = one.percent;
        weighed.planned = one.grams;
        record.lines.push_back(std::move(weighed));
    }
    return record;
}

std::string next_batch_number(const Workspace& workspace, std::string_view day, std::string_view title) {
    return record::next_number(workspace.settings.batch_pattern, day, title, numbers_but(workspace, ""));
}

result::Result<std::string> add_record(Workspace& workspace, Record record, const Recipe& made_by, NewIds ids,
                                       std::string now) {
    if (record.number.empty()) record.number = next_batch_number(workspace, record.day, record.title);
    if (auto fault = record::fault_of(record)) return *fault;
    if (auto fault = taken(workspace, "", record.number)) return *fault;
    if (!record.recipe.empty()) {
        const auto version = keep_version(workspace, record.recipe, made_by, "", std::move(ids.version), now);
        if (!version) return version.error();
        freeze_version(workspace, *version, now);
        record.version = *version;
    }
    file(workspace, {ids.record, std::move(record), now, now});
    return ids.record;
}

result::Result<std::string> add_entry(Workspace& workspace, std::string_view id, record::Entry entry,
                                      std::string now) {
    Filed* filed = find_filed(workspace, id);
    auto* record = filed ? std::get_if<Record>(&filed->what) : nullptr;
    if (!record) return Error{Code::field_unknown_value, "id", std::string(id)};
    if (entry.kind == record::Kind::number)
        if (auto fault = taken(workspace, id, entry.text)) return *fault;
    std::string entry_id = entry.id;
    if (entry.written.empty()) entry.written = now;
    auto changed = record::with_entry(*record, std::move(entry));
    if (!changed) return changed.error();
    *record = std::move(changed).value();
    filed->changed = std::move(now);
    ++workspace.filings;
    return entry_id;
}

std::vector<record::Use> batches_with(const Workspace& workspace, std::string_view ingredient,
                                      const std::vector<std::string>& numbers) {
    return record::uses_of(plain(records(workspace)), ingredient, numbers);
}

std::optional<record::Loss> usual_loss(const Workspace& workspace, std::string_view recipe) {
    return record::usual_loss(plain(records(workspace)), recipe);
}

bool take_filed(Workspace& workspace, Filed theirs) {
    Filed* mine = find_filed(workspace, theirs.id);
    if (mine == nullptr) {
        workspace.filed.push_back(std::move(theirs));
        sort_filed(workspace.filed);
        ++workspace.filings;
        return true;
    }
    if (mine->what == theirs.what || mine->what.index() != theirs.what.index()) return false;
    auto* record = std::get_if<Record>(&mine->what);
    Record both;
    if (record) {
        both = record::merged(*record, std::get<Record>(theirs.what));
        if (both == *record) return false;
    } else if (theirs.changed <= mine->changed) {
        return false;
    }
    if (record)
        *record = std::move(both);
    else
        mine->what = std::move(theirs.what);
    mine->changed = std::max(mine->changed, theirs.changed);
    mine->saves = std::max(mine->saves, theirs.saves);
    ++workspace.filings;
    return true;
}

std::optional<Error> fault_of(const Filed& filed) {
    if (!bounds::is_id(filed.id)) return Error{Code::field_unknown_value, "id", filed.id.substr(0, 80)};
    for (const auto& [text, field] : {std::pair(&filed.made, "made"), std::pair(&filed.changed, "changed")})
        if (auto fault = bounds::too_long(*text, record::kMostNumberBytes, field)) return fault;
    if (const auto* record = std::get_if<Record>(&filed.what)) return record::fault_of(*record);
    if (const auto* lot = std::get_if<lot::Lot>(&filed.what)) return lot::fault_of(*lot);
    const Version& version = std::get<Version>(filed.what);
    if (!bounds::is_id(version.of)) return Error{Code::field_unknown_value, "of", ""};
    if (auto fault = bounds::too_long(version.name, kMostVersionBytes, "name")) return fault;
    if (auto recipe = checked(version.recipe); !recipe) return recipe.error();
    return std::nullopt;
}

}  // namespace workspace
