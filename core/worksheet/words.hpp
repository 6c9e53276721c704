// What the sentences of a worksheet call a plate and a limit.
#pragma once

#include <string>

#include "core/quantity/outcome.hpp"
#include "core/stock/metal.hpp"
#include "core/words/text.hpp"

namespace torchside::words {

/// A plate as it is called: "12.7 mm" to a metric reader, "1/2 in" or "10 ga" to another.
[[nodiscard]] Text plate(Length thickness, Metal metal);
/// A refusal as a sentence. Refusals are still written in metric units, some in both.
[[nodiscard]] Text fault(const Fault& refused);
/// A limit that is an estimate, rounded down, in both units for a refusal: "18.5 mm (0.72 in)".
[[nodiscard]] std::string both_limits(Length thickness);

} // namespace torchside::words
