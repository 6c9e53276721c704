// Figures inside sentences: both units at once, rounded to what the estimate behind them is good for.
#pragma once

#include <string>

#include "core/quantity/print.hpp"

namespace torchside::words {

/// A plate as entered: "12.7 mm (0.5 in)".
[[nodiscard]] std::string plate(Length thickness);
/// A limit that is an estimate, rounded down, for what is shown must not promise more: "18.5 mm", "0.72 in".
[[nodiscard]] Printed at_most(Length thickness, UnitSystem units);
/// The same in both units: "18.5 mm (0.72 in)".
[[nodiscard]] std::string limit(Length thickness);
/// Two significant figures: "1600 mm/min (64 in/min)".
[[nodiscard]] std::string feed(Speed speed);
[[nodiscard]] std::string amps(Current current);  // "45 A"
[[nodiscard]] std::string volts(Voltage voltage); // "128 V", whole

} // namespace torchside::words
