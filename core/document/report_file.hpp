// The parts of a worksheet that speak of what feeds the torch. Internal to core/document.
#pragma once

#include "core/air/report.hpp"
#include "core/document/json.hpp"
#include "core/supply/divider.hpp"
#include "core/supply/report.hpp"

namespace torchside::document {

void write_circuit(const supply::Report& report, JsonWriter& out);
void write_tap(const supply::ControllerInput& report, JsonWriter& out);
void write_air(const air::Report& report, JsonWriter& out);

} // namespace torchside::document
