// Printing an estimate: value and band to one step that fits the band. As in print.hpp, what is rounded here is shown
// and goes no further.
#pragma once

#include <string>
#include <string_view>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"
#include "core/quantity/unit_system.hpp"

namespace torchside {

/// The step a figure is shown to: the largest of 1, 2 or 5 times a power of ten that is at most 1/25 of its band, so
/// that rounding moves a figure by at most 1/50 of the band. 0 for a band of nothing.
[[nodiscard]] double sensible_step(double spread);

/// `value` rounded to sensible_step(spread). Worked example (also a test): 1637 with a band of 1300..2100 is 1640.
[[nodiscard]] double sensible(double value, double spread);

/// An estimate as a screen shows it, all three to the same sensible step.
struct PrintedBand {
    std::string value{};
    std::string low{};
    std::string high{};
    std::string_view unit{};
};
[[nodiscard]] PrintedBand print_band(double value, double low, double high, std::string_view unit);
[[nodiscard]] PrintedBand print(const Estimate<Length>& estimate, UnitSystem units); // mm or in
[[nodiscard]] PrintedBand print(const Estimate<Speed>& estimate, UnitSystem units);  // mm/min or in/min
[[nodiscard]] PrintedBand print(const Estimate<Voltage>& estimate);                  // V
[[nodiscard]] PrintedBand print(const Estimate<Duration>& estimate);                 // s

} // namespace torchside
