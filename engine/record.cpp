#include "record.h"

#include <algorithm>
#include <utility>

#include "bounds.h"
#include "date.h"
#include "sorting.h"

namespace record {
namespace {

using bounds::Fault;
using bounds::outside;
using bounds::too_long;
using quantity::Mass;
using result::Code;
using result::Error;

struct KindRow {
    std::string_view name;
    Figure figure;
    bool text;
};
constexpr KindRow kRows[kKinds] = {
    {"weighed", Figure::none, false},
    {"number", Figure::none, true},
    {"day", Figure::none, true},
    {"who", Figure::none, true},
    {"temperature", Figure::celsius, true},
    {"ph", Figure::ph, false},
    {"yield", Figure::grams, false},
    {"filled", Figure::units, false},
    {"sent", Figure::units, true},
    {"kept_back", Figure::units, false},
    {"release", Figure::none, true},
    {"look", Figure::none, false},
    {"complaint", Figure::units_or_none, true},
    {"remark", Figure::none, true},
    {"withdrawn", Figure::none, true},
};
constexpr std::string_view kAsked[] = {"number", "day",  "who",       "weighed", "lots",   "yield",
                                       "filled", "sent", "kept_back", "ph",      "release"};

const KindRow& row_of(Kind kind) {
    return kRows[static_cast<int>(kind)];
}

constexpr std::int64_t kMostUnits = 100'000;
constexpr std::int64_t kMostGrams = 1'000'000;  // as of a batch: 1 t

Fault fault_of_day(const std::string& day, bool needed, const std::string& at) {
    if (!needed && day.empty()) return std::nullopt;
    if (date::is_day(day)) return std::nullopt;
    return Error{Code::field_unknown_value, at, day.substr(0, kMostNumberBytes)};
}

Fault fault_of_figure(Kind kind, const std::optional<std::int64_t>& figure, const std::string& at) {
    const auto within = [&](std::int64_t least, std::int64_t most) -> Fault {
        if (!figure) return Error{Code::number_empty, at, ""};
        if (*figure < least * decimal::kOne) return Error{Code::number_negative, at, decimal::print(*figure)};
        if (*figure > most * decimal::kOne) return Error{Code::number_too_large, at, decimal::print(*figure)};
        return std::nullopt;
    };
    switch (figure_of(kind)) {
        case Figure::celsius:
            return within(-50, 300);
        case Figure::ph:
            return within(0, 14);
        case Figure::grams:
            return within(0, kMostGrams);
        case Figure::units_or_none:
            if (!figure) return std::nullopt;
            [[fallthrough]];
        case Figure::units:
            if (auto fault = within(0, kMostUnits)) return fault;
            if (*figure % decimal::kOne != 0)
                return Error{Code::number_too_fine, at, decimal::print(*figure)};
            return std::nullopt;
        case Figure::none:
            break;
    }
    return std::nullopt;
}

Fault fault_of_entry(const Entry& entry, std::size_t lines, const std::string& at) {
    if (auto fault = bounds::unnamed(entry.id, kMostShortBytes, at + "id")) return fault;
    if (auto fault = fault_of_day(entry.day, true, at + "day")) return fault;
    for (const auto& [text, field] :
         {std::pair(&entry.written, "written"), std::pair(&entry.who, "who"),
          std::pair(&entry.corrects, "corrects"), std::pair(&entry.smell, "smell"),
          std::pair(&entry.colour, "colour"), std::pair(&entry.texture, "texture")})
        if (auto fault = too_long(*text, kMostShortBytes, at + field)) return fault;
    const std::size_t most = entry.kind == Kind::number ? kMostNumberBytes
                             : entry.kind == Kind::who  ? kMostShortBytes
                                                        : kMostTextBytes;
    if (auto fault = too_long(entry.text, most, at + "text")) return fault;
    if (text_needed(entry.kind) && entry.text.empty()) return Error{Code::name_empty, at + "text", ""};
    if (entry.kind == Kind::day)
        if (auto fault = fault_of_day(entry.text, true, at + "text")) return fault;
    if (auto fault = fault_of_figure(entry.kind, entry.figure, at + "figure")) return fault;
    if (entry.kind == Kind::look && entry.text.empty() && entry.smell.empty() && entry.colour.empty() &&
        entry.texture.empty())
        return Error{Code::name_empty, at + "text", ""};
    if (entry.kind == Kind::withdrawn && entry.corrects.empty())
        return Error{Code::field_missing, at + "corrects", "corrects"};
    if (entry.lines.size() > kMostLines)
        return Error{Code::too_many, at + "lines", std::to_string(kMostLines)};
    if (entry.kind == Kind::weighed && entry.lines.empty()) return Error{Code::name_empty, at + "lines", ""};
    for (const Known& known : entry.lines) {
        if (known.line >= lines) return Error{Code::line_missing, at + "lines", std::to_string(known.line)};
        if (known.weighed)
            if (auto fault = outside(known.weighed->grid, kMostGrams * decimal::kOne, at + "lines"))
                return fault;
        if (auto fault = too_long(known.lot, kMostShortBytes, at + "lines")) return fault;
        if (auto fault = fault_of_day(known.best_before, false, at + "lines")) return fault;
    }
    return std::nullopt;
}

Fault fault_of_line(const Weighed& line, const std::string& at) {
    for (const auto& [text, field] :
         {std::pair(&line.ingredient, "ingredient"), std::pair(&line.name, "name"),
          std::pair(&line.phase, "phase"), std::pair(&line.lot, "lot")})
        if (auto fault = too_long(*text, kMostShortBytes, at + field)) return fault;
    if (line.ingredient.empty() && line.name.empty()) return Error{Code::name_empty, at + "name", ""};
    if (auto fault = outside(line.percent.grid, quantity::kHundred.grid, at + "percent")) return fault;
    if (auto fault = outside(line.planned.grid, kMostGrams * decimal::kOne, at + "planned_g")) return fault;
    if (line.weighed)
        if (auto fault = outside(line.weighed->grid, kMostGrams * decimal::kOne, at + "weighed_g"))
            return fault;
    return fault_of_day(line.best_before, false, at + "best_before");
}

std::string at_place(std::string_view list, std::size_t index) {
    return std::string(list) + "[" + std::to_string(index) + "].";
}

void add_units(std::optional<std::int64_t>& sum, const Entry& entry) {
    if (entry.figure) sum = sum.value_or(0) + *entry.figure / decimal::kOne;
}

}  // namespace

Figure figure_of(Kind kind) {
    return row_of(kind).figure;
}
bool text_needed(Kind kind) {
    return row_of(kind).text;
}
std::string_view name(Kind kind) {
    return row_of(kind).name;
}
std::string_view name(Asked asked) {
    return kAsked[static_cast<int>(asked)];
}

State state_of(const Record& record) {
    State state{record.number, record.day, record.who, record.lines, {}, {}, {}, {}, {}, {}, {}, {}, {}};
    for (std::size_t i = 0; i < record.entries.size(); ++i) {
        const Entry& entry = record.entries[i];
        const bool replaced = std::any_of(record.entries.begin(), record.entries.end(),
                                          [&](const Entry& other) { return other.corrects == entry.id; });
        if (replaced || entry.kind == Kind::withdrawn) continue;
        state.holds.push_back(i);
        switch (entry.kind) {
            case Kind::weighed:
                for (const Known& known : entry.lines) {
                    if (known.line >= state.lines.size()) continue;
                    Weighed& line = state.lines[known.line];
                    if (known.weighed) line.weighed = known.weighed;
                    if (!known.lot.empty()) line.lot = known.lot;
                    if (!known.best_before.empty()) line.best_before = known.best_before;
                }
                break;
            case Kind::number:
                state.number = entry.text;
                break;
            case Kind::day:
                state.day = entry.text;
                break;
            case Kind::who:
                state.who = entry.text;
                break;
            case Kind::yield:
                if (entry.figure) state.yield = Mass{*entry.figure};
                break;
            case Kind::filled:
                add_units(state.filled, entry);
                break;
            case Kind::sent:
                add_units(state.sent, entry);
                break;
            case Kind::kept_back:
                add_units(state.kept_back, entry);
                break;
            case Kind::release:
                state.released = entry.yes;
                break;
            default:
                break;
        }
    }
    Mass total;
    bool known = !state.lines.empty();
    for (const Weighed& line : state.lines) {
        known = known && line.weighed;
        if (line.weighed) total = total + *line.weighed;
    }
    if (known) state.total = total;
    if (known && state.yield && *state.yield <= total && total > Mass{0})
        state.loss = quantity::Percent{
            decimal::scale_nearest((total - *state.yield).grid, quantity::kHundred.grid, total.grid)};
    if (state.filled) state.left = *state.filled - state.sent.value_or(0) - state.kept_back.value_or(0);
    return state;
}

std::vector<Asked> missing(const Record& record, const State& state) {
    std::vector<Asked> asked;
    const auto ask = [&](Asked one, bool there) {
        if (!there) asked.push_back(one);
    };
    const auto of_all = [&](auto there) {
        return std::all_of(state.lines.begin(), state.lines.end(), there);
    };
    const bool has_ph = std::any_of(state.holds.begin(), state.holds.end(),
                                    [&](std::size_t i) { return record.entries[i].kind == Kind::ph; });
    ask(Asked::number, !state.number.empty());
    ask(Asked::day, !state.day.empty());
    ask(Asked::who, !state.who.empty());
    ask(Asked::weighed, of_all([](const Weighed& line) { return line.weighed.has_value(); }));
    ask(Asked::lots, of_all([](const Weighed& line) { return !line.lot.empty(); }));
    ask(Asked::ph, !record.with_water || has_ph);
    ask(Asked::yield, state.yield.has_value());
    ask(Asked::filled, state.filled.has_value());
    ask(Asked::kept_back, state.kept_back.has_value());
    ask(Asked::release, state.released.has_value());
    // Nothing has gone anywhere before it is released.
    ask(Asked::sent, !state.released.value_or(false) || state.left.value_or(1) <= 0);
    return asked;
}

result::Result<Record> with_entry(Record record, Entry entry) {
    if (record.entries.size() >= kMostEntries)
        return Error{Code::too_many, "entries", std::to_string(kMostEntries)};
    if (auto fault = fault_of_entry(entry, record.lines.size(), "")) return *fault;
    bool corrected = entry.corrects.empty();
    for (const Entry& there : record.entries) {
        if (there.id == entry.id) return Error{Code::preset_duplicate, "id", entry.id};
        if (entry.corrects.empty()) continue;
        if (there.corrects == entry.corrects)
            return Error{Code::preset_duplicate, "corrects", entry.corrects};
        corrected = corrected || there.id == entry.corrects;
    }
    if (!corrected) return Error{Code::field_unknown_value, "corrects", entry.corrects};
    record.entries.push_back(std::move(entry));
    return record;
}

Record merged(Record one, const Record& other) {
    for (const Entry& entry : other.entries)
        if (std::none_of(one.entries.begin(), one.entries.end(),
                         [&](const Entry& there) { return there.id == entry.id; }))
            one.entries.push_back(entry);
    sorting::stable(one.entries, [](const Entry& a, const Entry& b) {
        return std::pair(std::string_view(a.written), std::string_view(a.id)) <
               std::pair(std::string_view(b.written), std::string_view(b.id));
    });
    return one;
}

std::optional<Error> fault_of(const Record& record) {
    if (auto fault = bounds::unnamed(record.number, kMostNumberBytes, "number")) return fault;
    if (auto fault = fault_of_day(record.day, true, "day")) return fault;
    for (const auto& [text, field] :
         {std::pair(&record.who, "who"), std::pair(&record.recipe, "recipe"),
          std::pair(&record.title, "title"), std::pair(&record.version, "version"),
          std::pair(&record.product, "product"), std::pair(&record.makes, "makes")})
        if (auto fault = too_long(*text, kMostShortBytes, field)) return fault;
    if (record.lines.size() > kMostLines) return Error{Code::too_many, "lines", std::to_string(kMostLines)};
    for (std::size_t i = 0; i < record.lines.size(); ++i)
        if (auto fault = fault_of_line(record.lines[i], at_place("lines", i))) return fault;
    if (record.entries.size() > kMostEntries)
        return Error{Code::too_many, "entries", std::to_string(kMostEntries)};
    for (std::size_t i = 0; i < record.entries.size(); ++i) {
        const std::string at = at_place("entries", i);
        if (auto fault = fault_of_entry(record.entries[i], record.lines.size(), at)) return fault;
        for (std::size_t before = 0; before < i; ++before)
            if (record.entries[before].id == record.entries[i].id)
                return Error{Code::preset_duplicate, at + "id", record.entries[i].id};
    }
    return std::nullopt;
}

}  // namespace record
