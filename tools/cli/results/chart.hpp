// The chart of a shop as a file: what `torchside chart` prints and what a spreadsheet opens.
//
// CSV (RFC 4180, line ends \n): one line a cell, thickest last, with the units in the header's names; a refused cell
// has its figures empty. JSON: the same cells, every figure with its 80 % band and basis, keys named by the same units.
// `basis` of a cell is what carries its feed (tune/dominant_basis.hpp): physics, practice or cuts; none when refused.
#pragma once

#include <string>

#include "core/quantity/unit_system.hpp"
#include "core/worksheet/chart.hpp"
#include "tools/cli/results/json.hpp"

namespace torchside::cli {

[[nodiscard]] std::string chart_csv(const Chart& chart, UnitSystem units);
[[nodiscard]] Json chart_json(const Chart& chart, UnitSystem units);

} // namespace torchside::cli
