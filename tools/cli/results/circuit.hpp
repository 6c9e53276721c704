// The parts of a worksheet that speak of what feeds the torch.
#pragma once

#include "core/air/report.hpp"
#include "core/supply/divider.hpp"
#include "core/words/say.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tools/cli/results/json.hpp"

namespace torchside::cli {

[[nodiscard]] Json circuit_json(const Worksheet& sheet, const Workbook& workbook, const Speech& speech);
[[nodiscard]] Json tap_json(const supply::ControllerInput& report, const Speech& speech);
[[nodiscard]] Json air_json(const air::Report& report, const Speech& speech);

} // namespace torchside::cli
