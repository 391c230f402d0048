// JSON for the sources of store and door: careful reading with the place of the first fault, and a writer
// that prints figures from the grid, so that 12.5 is 12.5 in every build. Only store*.cpp, door*.cpp and
// tests include this.
#pragma once

#include <nlohmann/json.hpp>

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "quantity.h"
#include "result.h"

namespace store_json {

using Json = nlohmann::ordered_json;  // keeps the order of keys: a stock list is an object

inline constexpr std::size_t kMostBytes = 5'000'000;
inline constexpr std::size_t kMostDepth = 32;
inline constexpr std::size_t kMostKeys = 4000;  // of one object: a table of words has over a thousand

// Refused: what is not JSON or not UTF-8 (json_malformed, place "character N"), a key said twice
// (preset_duplicate, place its path), too deep, too many keys, too long (too_many).
result::Result<Json> parse(std::string_view text);

// The first failure stays; what is read after it does not matter.
struct Failure {
    std::optional<result::Error> error;
    void at(result::Code code, std::string place, std::string detail = "");
    bool failed() const { return error.has_value(); }
};

std::string joined(const std::string& place,
                   std::string_view key);  // "lines[2]" + "percent" -> "lines[2].percent"
std::string indexed(const std::string& place, std::size_t index);  // "lines" + 2 -> "lines[2]"

std::string text_of(const Json& value, const std::string& place, Failure& failure);
std::int64_t figure_of(const Json& value, const std::string& place, Failure& failure);        // on the grid
quantity::Percent percent_of(const Json& value, const std::string& place, Failure& failure);  // 0 to 100

// One object. A key that is asked for is ticked off; finish() refuses those nobody asked for, by name.
class Fields {
  public:
    Fields(const Json& value, std::string place, Failure& failure);
    bool has(std::string_view key) const;
    const Json* any(std::string_view key);  // null when it is not there
    const Json* list(std::string_view key);
    const Json* object(std::string_view key);
    std::string text(std::string_view key);  // "" when it is not there
    std::string needed_text(std::string_view key);
    bool flag(std::string_view key);  // false when it is not there
    std::optional<std::int64_t> figure(std::string_view key);
    std::optional<quantity::Percent> percent(std::string_view key);
    std::optional<quantity::Mass> mass(std::string_view key);        // not negative
    std::optional<std::uint64_t> whole(std::string_view key);        // a whole number from 0
    std::map<std::string, std::string> texts(std::string_view key);  // an object of texts
    void need(std::string_view key);                                 // field_missing when it is not there
    void finish();
    std::string place(std::string_view key) const { return joined(place_, key); }
    Failure& failure() { return failure_; }

  private:
    const Json* object_ = nullptr;
    std::string place_;
    Failure& failure_;
    std::vector<std::string_view> asked_;
};

enum class Layout { indented, one_line };

class Writer {
  public:
    explicit Writer(Layout layout) : layout_(layout) {}
    void object();
    void flat_object();  // on one line, whatever is in it
    void list();
    void end();
    void key(std::string_view name);
    void text(std::string_view plain);
    void figure(std::int64_t grid);
    void fine(std::int64_t steps, int places);  // of 10^-places
    void whole(std::uint64_t number);
    void flag(bool value);
    void pair(std::string_view name, std::string_view plain) { key(name), text(plain); }
    void pair_figure(std::string_view name, std::int64_t grid) { key(name), figure(grid); }
    std::string finish();  // closes what is open; a line break at the end when indented

  private:
    void begin(char opening, char closing);
    void before_value();
    void line_break();
    Layout layout_;
    std::string out_;
    std::vector<char> open_;     // '}' or ']' to come
    std::size_t flat_from_ = 0;  // depth of the flat object we are in, 0 in none
    bool fresh_ = true;          // nothing in the innermost one yet
    bool after_key_ = false;
};

}  // namespace store_json
