#include "label_sheet.h"

namespace label_sheet {

using decimal::kOne;

Size size_of(Paper paper) {
    return paper == Paper::letter ? Size{2'159'000, 2'794'000} : Size{210 * kOne, 297 * kOne};
}

std::vector<Cell> cells(const Sheet& sheet) {
    std::vector<Cell> all;
    for (std::int64_t row = 0; row < sheet.rows; ++row)
        for (std::int64_t column = 0; column < sheet.columns; ++column)
            all.push_back({sheet.left + column * (sheet.width + sheet.across) + sheet.shift_right,
                           sheet.top + row * (sheet.height + sheet.down) + sheet.shift_down});
    return all;
}

std::optional<result::Error> fault_of(const Sheet& sheet, const std::string& at) {
    const auto wrong = [&](result::Code code, const char* field, std::int64_t value) {
        return result::Error{code, at + field, decimal::print(value)};
    };
    const Size paper = size_of(sheet.paper);
    struct Bound {
        const char* field;
        std::int64_t value, least, most;
    };
    for (const Bound& one :
         {Bound{"columns", sheet.columns * kOne, kOne, kMostCells * kOne},
          Bound{"rows", sheet.rows * kOne, kOne, kMostCells * kOne},
          Bound{"width_mm", sheet.width, kOne, paper.width},
          Bound{"height_mm", sheet.height, kOne, paper.height}, Bound{"left_mm", sheet.left, 0, paper.width},
          Bound{"top_mm", sheet.top, 0, paper.height}, Bound{"across_mm", sheet.across, 0, paper.width},
          Bound{"down_mm", sheet.down, 0, paper.height},
          Bound{"shift_right_mm", sheet.shift_right, -kMostShift, kMostShift},
          Bound{"shift_down_mm", sheet.shift_down, -kMostShift, kMostShift}})
        if (one.value < one.least || one.value > one.most)
            return wrong(result::Code::number_too_large, one.field, one.value);
    const std::int64_t right = sheet.left + sheet.columns * sheet.width + (sheet.columns - 1) * sheet.across,
                       foot = sheet.top + sheet.rows * sheet.height + (sheet.rows - 1) * sheet.down;
    if (right > paper.width) return wrong(result::Code::number_too_large, "columns", right);
    if (foot > paper.height) return wrong(result::Code::number_too_large, "rows", foot);
    return std::nullopt;
}

}  // namespace label_sheet
