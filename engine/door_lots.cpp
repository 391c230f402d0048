// tarebench lots: a backup to every lot that its batch records name, the batches it went into and where those
// went.
#include "door.h"
#include "record_number.h"
#include "store_json.h"
#include "workspace_lots.h"
#include "workspace_records.h"

namespace door {
namespace {

using record::Record;
using record::State;

struct Lot {
    std::string ingredient, name;
    std::vector<std::string> numbers;
};

// Each once, in the order they first stand in the records.
std::vector<Lot> lots_in(const workspace::Workspace& work, const std::vector<State>& states) {
    std::vector<Lot> lots;
    for (const State& state : states)
        for (const record::Weighed& line : state.lines) {
            if (line.lot.empty()) continue;
            bool there = false;
            for (const Lot& lot : lots)
                for (const std::string& number : lot.numbers)
                    there = there || (lot.ingredient == line.ingredient && lot.name == line.name &&
                                      record::same_number(number, line.lot));
            if (!there)
                lots.push_back({line.ingredient, line.name, numbers_of(work, line.ingredient, line.lot)});
        }
    return lots;
}

void write_units(store_json::Writer& writer, std::string_view key, const std::optional<std::int64_t>& units) {
    if (units) writer.pair_figure(key, *units * decimal::kOne);
}

void write_batch(store_json::Writer& writer, const Record& record, const State& state,
                 const record::Use& use) {
    writer.flat_object();
    writer.pair("number", state.number);
    writer.pair("day", state.day);
    writer.pair("title", record.title);
    if (use.grams) writer.pair_figure("grams", use.grams->grid);
    if (!use.by_way_of.empty()) writer.pair("by_way_of", use.by_way_of);
    if (use.other_ingredient) {
        writer.key("other_ingredient");
        writer.flag(true);
    }
    write_units(writer, "filled", state.filled);
    write_units(writer, "kept_back", state.kept_back);
    write_units(writer, "left", state.left);
    writer.key("went");
    writer.list();
    for (const std::size_t i : state.holds) {
        const record::Entry& entry = record.entries[i];
        if (entry.kind != record::Kind::sent) continue;
        writer.object();
        writer.pair_figure("units", entry.figure.value_or(0));
        writer.pair("to", entry.text);
        writer.pair("day", entry.day);
        writer.end();
    }
    writer.end();
    writer.end();
}

}  // namespace

Answer lots(std::string_view input, const store::Presets& presets) {
    auto content = store::read_backup(input);
    if (!content) return refuse(content.error(), presets);
    workspace::Workspace work;
    for (workspace::Filed& filed : content.value().filed)
        workspace::take_filed(work, std::move(filed));
    const std::vector<const Record*> records = workspace::plain(workspace::records(work));
    std::vector<State> states;
    for (const Record* one : records)
        states.push_back(record::state_of(*one));

    store_json::Writer writer(store_json::Layout::indented);
    writer.object();
    writer.key("records");
    writer.whole(records.size());
    writer.key("lots");
    writer.list();
    for (const Lot& lot : lots_in(work, states)) {
        writer.object();
        writer.pair(lot.ingredient.empty() ? "name" : "ingredient",
                    lot.ingredient.empty() ? lot.name : lot.ingredient);
        writer.key("numbers");
        writer.list();
        for (const std::string& number : lot.numbers)
            writer.text(number);
        writer.end();
        writer.key("batches");
        writer.list();
        for (const record::Use& use : record::uses_of(records, lot.ingredient, lot.numbers))
            write_batch(writer, *records[use.record], states[use.record], use);
        writer.end();
        writer.end();
    }
    writer.end();
    return {0, writer.finish(), ""};
}

}  // namespace door
