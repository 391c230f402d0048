// A sheet of labels as it is bought: where its cells lie on the paper, and by how much a printer misses them.
// Lengths in mm on the grid of decimal.h. What the cells bear is documents' business.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "decimal.h"
#include "result.h"

namespace label_sheet {

enum class Paper { a4, letter };
struct Size {
    std::int64_t width = 0, height = 0;
    bool operator==(const Size&) const = default;
};
Size size_of(Paper paper);

struct Sheet {
    Paper paper = Paper::a4;
    std::int64_t columns = 3, rows = 8;
    std::int64_t width = 70 * decimal::kOne, height = 37 * decimal::kOne;  // of a cell
    std::int64_t left = 0, top = decimal::kOne / 2;  // from the paper's edge to the first cell
    std::int64_t across = 0, down = 0;               // between cells
    std::int64_t shift_right = 0, shift_down = 0;    // against what the printer misses by
    bool operator==(const Sheet&) const = default;
};
inline constexpr std::int64_t kMostCells = 40;  // a side
inline constexpr std::int64_t kMostShift = 20 * decimal::kOne;

struct Cell {
    std::int64_t x = 0, y = 0;  // of its upper left corner, shifted
    bool operator==(const Cell&) const = default;
};
std::vector<Cell> cells(const Sheet& sheet);  // row by row

// number_too_large with the field where the cells reach beyond the paper.
std::optional<result::Error> fault_of(const Sheet& sheet, const std::string& at);

}  // namespace label_sheet
