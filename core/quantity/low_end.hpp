// The low end of a band of something that cannot be below 0.
//
// What       value - less, or 0 where that comes within a hundredth of the value: its last digits would only be what
//            rounding left.
// Example    10 and 4: 6; 10 and 9.95: 0.
#pragma once

namespace torchside {

[[nodiscard]] constexpr double low_end(double value, double less) {
    return value - less > 0.01 * value ? value - less : 0.0;
}

} // namespace torchside
