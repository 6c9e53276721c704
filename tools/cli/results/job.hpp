// The part, its plate's gaps, time, wear and price of a worksheet.
//
// Amounts of money are in the currency's main unit; those of a Money have no more digits than the currency.
#pragma once

#include <string_view>

#include "core/words/say.hpp"
#include "core/worksheet/worksheet.hpp"
#include "tools/cli/results/json.hpp"

namespace torchside::cli {

[[nodiscard]] Json part_json(const Worksheet& sheet, const Speech& speech);
[[nodiscard]] Json gaps_json(const Gaps& gaps);
[[nodiscard]] Json time_json(const std::optional<motion::Report>& time);
[[nodiscard]] Json wear_json(const wear::Report& wear);
[[nodiscard]] Json price_json(const std::optional<price::Report>& price, std::string_view currency,
                              const Speech& speech);

} // namespace torchside::cli
