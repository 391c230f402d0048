// Two or more states of a recipe side by side, figure by figure: lines, blend, checks, cost; and what the
// checks say of the last that they do not say of the first. For versions, and for what a swap would change.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "catalogue.h"
#include "finding.h"
#include "limits_book.h"
#include "price.h"
#include "scales.h"
#include "workspace.h"

namespace comparison {

enum class Part { lines, blend, checks, cost };
std::string_view part_name(Part part);
enum class Unit { percent, number, count, money };

struct Row {
    Part part = Part::lines;
    Unit unit = Unit::percent;
    std::string key;   // of a line its ingredient or name; else what is told, as in "compare.<key>"
    std::string name;  // of a line, as it is shown; of a fatty acid; else ""
    std::vector<std::optional<std::int64_t>> values;  // a side each, on the grid; none: not there, not known
    bool differs() const;
    bool operator==(const Row&) const = default;
};
struct Table {
    std::vector<Row> rows;
    std::string currency;                      // of the rows in money; "" no prices
    std::vector<finding::Finding> come, gone;  // of the last side, against the first
};

struct Ground {  // what it is worked out with
    const catalogue::Catalogue& shipped;
    const limits::Book* book = nullptr;   // null: checks that need it are not made, and counted so
    const price::Book* prices = nullptr;  // null, or without a currency: no cost
    const scales::Bench& bench;
    const std::vector<catalogue::Ingredient>& mine;  // what this device has of its own
};
Table of(const std::vector<const workspace::Recipe*>& sides, const Ground& ground);

}  // namespace comparison
