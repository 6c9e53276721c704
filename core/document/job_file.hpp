// The part, its plate's gaps, time, wear and price of a worksheet as JSON. Internal to core/document.
//
// Amounts of money are in the currency's main unit; those of a Money have no more digits than the currency.
#pragma once

#include <string_view>

#include "core/document/json.hpp"
#include "core/words/say.hpp"
#include "core/worksheet/worksheet.hpp"

namespace torchside::document {

void write_part(const Worksheet& sheet, const Speech& speech, JsonWriter& out);
void write_gaps(const Gaps& gaps, JsonWriter& out);
void write_time(const std::optional<motion::Report>& time, JsonWriter& out);
void write_wear(const wear::Report& wear, JsonWriter& out);
void write_price(const std::optional<price::Report>& price, std::string_view currency, const Speech& speech,
                 JsonWriter& out);

} // namespace torchside::document
