// What a figure out of its range is answered with, wherever it came from.
#pragma once

#include "core/quantity/field_unit.hpp"
#include "core/words/text.hpp"

namespace torchside::words {

/// "Enter 0.3 to 150 mm.", in the key's unit here, in the reader's when it is said.
[[nodiscard]] Text range(double low, double high, FieldUnit unit);

} // namespace torchside::words
