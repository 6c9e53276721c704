// A number of the workbook for a spreadsheet's cell.
#pragma once

#include <string>

#include "core/quantity/field_unit.hpp"

namespace torchside {

/// The number alone: in the reader's unit, behind a point, without gaps, to 4 decimals: "6.35", "0.25", "30".
[[nodiscard]] std::string print_cell(double value, FieldUnit unit, Units units);

} // namespace torchside
