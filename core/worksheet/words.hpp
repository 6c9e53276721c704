// Figures inside sentences: both units at once, rounded to what the estimate behind them is good for. Of the two, the
// worksheet keeps the reader's (core/quantity/in_units.hpp).
#pragma once

#include <string>

#include "core/quantity/print.hpp"
#include "core/stock/metal.hpp"

namespace torchside::words {

/// A plate as entered and as it is called: "12.7 mm (1/2 in)", "3.42 mm (10 ga)".
[[nodiscard]] std::string plate(Length thickness, Metal metal);
/// A size as entered: "12.7 mm (0.5 in)".
[[nodiscard]] std::string size(Length length);
/// A limit that is an estimate, rounded down, for what is shown must not promise more: "18.5 mm", "0.72 in".
[[nodiscard]] Printed at_most(Length thickness, UnitSystem units);
/// The same in both units: "18.5 mm (0.72 in)".
[[nodiscard]] std::string limit(Length thickness);
/// Two significant figures: "1600 mm/min (64 in/min)".
[[nodiscard]] std::string feed(Speed speed);
[[nodiscard]] std::string amps(Current current);  // "45 A"
[[nodiscard]] std::string volts(Voltage voltage); // "128 V", whole

} // namespace torchside::words
