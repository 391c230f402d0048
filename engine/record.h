// A batch record: what was weighed into one batch, and what was written about it since. Its head is what was
// known when it was begun; after that entries are added and none is changed: a correction is an entry that
// names the one whose place it takes. What holds now is worked out (State). Units are counted, not weighed.
// Lots of made parts are the batch numbers of their own records (record_trace.h).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity.h"
#include "result.h"

namespace record {

struct Weighed {                            // one line, or one pour of it
    std::string ingredient, name;           // id, or "" for a line that has only a name
    std::string phase;                      // "" none
    quantity::Percent percent;              // planned
    quantity::Mass planned;                 // 0: beyond the plan
    std::optional<quantity::Mass> weighed;  // none: not known
    std::string lot, best_before;           // as printed; a day; "" not known
    bool after = false;                     // added while warm, when the batch had been made
    bool operator==(const Weighed&) const = default;
};

enum class Kind {
    weighed,      // `lines`: what has become known of lines of the head
    number,       // text: the batch number, in place of the head's
    day,          // text: the day it was made, likewise
    who,          // text: who made it, likewise
    temperature,  // figure: °C; text: of what, and when
    ph,           // figure
    yield,        // figure: grams of product that came of it, whatever they were filled into
    filled,       // figure: units; text: which container
    sent,         // figure: units; text: where they went
    kept_back,    // figure: units; text: where they lie
    release,      // yes or no; text: the reason
    look,         // smell, colour, texture on a day
    complaint,    // text; figure: units, where known
    remark,       // text
    withdrawn     // text: why; the entry that it corrects does not hold and nothing takes its place
};
inline constexpr int kKinds = static_cast<int>(Kind::withdrawn) + 1;

struct Known {  // of one line of the head
    std::size_t line = 0;
    std::optional<quantity::Mass> weighed;  // none, "": nothing new
    std::string lot, best_before;
    bool operator==(const Known&) const = default;
};

struct Entry {
    std::string id;  // one of its kind in the record; from the host
    Kind kind = Kind::remark;
    std::string day;       // when it was so
    std::string written;   // instant, UTC
    std::string who;       // wrote it; "" not said
    std::string corrects;  // id of the entry whose place it takes; "" none
    std::string text;
    std::string smell, colour, texture;
    std::optional<std::int64_t> figure;  // on the grid of decimal.h
    bool yes = false;
    std::vector<Known> lines;
    bool operator==(const Entry&) const = default;
};

struct Record {
    std::string number;               // of the batch
    std::string day;                  // it was made
    std::string who;                  // made it
    std::string recipe, title;        // id in the book, "" none; what it was called then
    std::string version;              // id of the version it was made by; "" none
    std::string product;              // id of the product kind
    std::string makes;                // id of the made part that it is a batch of; "" none
    bool with_water = false;          // its pH is asked for
    std::vector<Weighed> lines;       // in the order they were weighed
    std::vector<Entry> entries = {};  // in the order they were written
    bool operator==(const Record&) const = default;
};

inline constexpr std::size_t kMostNumberBytes = 40;
inline constexpr std::size_t kMostShortBytes = 120;  // names, lots, who, where
inline constexpr std::size_t kMostTextBytes = 4000;
inline constexpr std::size_t kMostLines = 200;
inline constexpr std::size_t kMostEntries = 1000;

// What an entry of a kind says beside day and text.
enum class Figure { none, celsius, ph, grams, units, units_or_none };
Figure figure_of(Kind kind);
bool text_needed(Kind kind);       // else it may be left empty
std::string_view name(Kind kind);  // "kept_back": in files and in the keys of words

struct State {  // what holds, with all that was entered
    std::string number, day, who;
    std::vector<Weighed> lines;
    std::vector<std::size_t> holds;       // entries that nothing has taken the place of, as they were written
    std::optional<quantity::Mass> total;  // weighed; none while a line's weight is not known
    std::optional<quantity::Mass> yield;
    std::optional<quantity::Percent> loss;  // of what was weighed; none: not known, or more came than went in
    std::optional<std::int64_t> filled, sent, kept_back;  // units, whole
    std::optional<std::int64_t> left;                     // of those filled; none: not known
    std::optional<bool> released;
    bool operator==(const State&) const = default;
};
State state_of(const Record& record);

// What is asked of a record and is not in it: after EN ISO 22716 (good manufacturing practice, cosmetics),
// cut to one bench. The standard was not read for this; what it asks is from memory.
enum class Asked { number, day, who, weighed, lots, yield, filled, sent, kept_back, ph, release };
std::vector<Asked> missing(const Record& record, const State& state);
std::string_view name(Asked asked);

// The record with the entry at its end. Refused: an id that is there, `corrects` that is not there or was
// corrected already, a line that is not, a day that is none, nothing said.
result::Result<Record> with_entry(Record record, Entry entry);
// Two states of one record, of two windows or a backup: all entries of both, by the instant they were
// written.
Record merged(Record one, const Record& other);
// The first fault of a record that came from outside, with its place.
std::optional<result::Error> fault_of(const Record& record);

}  // namespace record
