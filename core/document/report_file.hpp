// The parts of a worksheet that speak of what feeds the torch. Internal to core/document.
#pragma once

#include "core/air/report.hpp"
#include "core/document/json.hpp"
#include "core/supply/divider.hpp"
#include "core/supply/report.hpp"
#include "core/words/say.hpp"

namespace torchside::document {

void write_circuit(const supply::Report& report, const Speech& speech, JsonWriter& out);
void write_tap(const supply::TapReport& report, const Speech& speech, JsonWriter& out);
void write_air(const air::Report& report, const Speech& speech, JsonWriter& out);

} // namespace torchside::document
