// The worksheet as JSON: what `torchside worksheet` prints.
//
// A figure that is advice is {"value", "low", "high", "basis": ["physics", "practice", "published:<key>", "tests:<n>",
// "entered"]}; units are in the keys. The members are always all there: when the plate is refused, those of "settings",
// "by_hand", "time" and "price" are null and the reason is in "capacity" and "warnings".
#pragma once

#include "core/words/say.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tools/cli/results/json.hpp"

namespace torchside::cli {

[[nodiscard]] Json worksheet_json(const Worksheet& sheet, const Workbook& workbook,
                                  const Language& language = english());

} // namespace torchside::cli
