// The table of words: every sentence and label a person reads, per language, with its plural rule.
// The table is data (presets/words/<language>.json); here it is looked up and filled in. No sentence stands
// in code.
#pragma once

#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "decimal.h"
#include "quantity.h"
#include "result.h"
#include "words_packed.h"

namespace words {

struct Entry {
    std::string other;  // the text; the only form of most entries
    std::string one;    // form for a count of one, when the entry has plural forms
    bool operator==(const Entry&) const = default;
};

struct Table {
    std::string language;     // "en"
    std::string name;         // the language in itself: "English"
    std::string plural_rule;  // "one_other" (one for 1) or "one_upto_two" (one for 0 and 1) or "none"
    std::map<std::string, Entry, std::less<>> entries;
    Packed shipped;  // further ones, that lie in the program
    decimal::Sign sign =
        decimal::Sign::point;  // how figures are written; set by the settings, not by the file
};
// With all entries spelled out in the map; the same entries spelled out or packed are equal.
Table spelled_out(Table table);
bool operator==(const Table& one, const Table& other);

using Arguments = std::vector<std::pair<std::string_view, std::string>>;

// The text of `key` with each {name} replaced. Argument "n" picks the plural form. A key that is not in the
// table comes back as itself in double square brackets, so that a gap is seen and a test can find it.
std::string say(const Table& table, std::string_view key, const Arguments& arguments = {});
bool has(const Table& table, std::string_view key);

// The sentence for an error, with its place: key "error.<code>", arguments {place} and {detail}.
std::string say(const Table& table, const result::Error& error);
// The stable name of a code, as used in keys and by the command line: "sum_not_hundred".
std::string_view code_name(result::Code code);

std::string figure(const Table& table, std::int64_t grid);                    // shortest
std::string figure_fixed(const Table& table, std::int64_t grid, int places);  // fixed places
std::string trace(const Table& table, quantity::Trace trace);                 // in %, shortest

}  // namespace words
