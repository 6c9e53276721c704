// What the sentences of a worksheet call a plate.
#pragma once

#include "core/stock/metal.hpp"
#include "core/words/text.hpp"

namespace torchside::words {

/// A plate as it is called: "12.7 mm" to a metric reader, "1/2 in" or "10 ga" to another.
[[nodiscard]] Text plate(Length thickness, Metal metal);

} // namespace torchside::words
