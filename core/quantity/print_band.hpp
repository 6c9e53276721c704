// Printing an estimate: value and band to one step that fits the band. As in print.hpp, what is rounded here is shown
// and goes no further.
#pragma once

#include <string>
#include <string_view>

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"
#include "core/quantity/unit_system.hpp"

namespace torchside {

/// An estimate as a screen shows it, all three to one step: the largest of 1, 2 or 5 times a power of ten that is at most
/// 1/25 of the band, so that rounding moves a figure by at most 1/50 of it. A band of nothing has no step. Worked example
/// (also a test): 1637 with a band of 1300..2100 is 1640.
struct PrintedBand {
    std::string value{};
    std::string low{};
    std::string high{};
    std::string_view unit{};
};
[[nodiscard]] PrintedBand print_band(double value, double low, double high, std::string_view unit, Units units = {});
[[nodiscard]] PrintedBand print(const Estimate<Length>& estimate, Units units);        // mm or in
[[nodiscard]] PrintedBand print(const Estimate<Speed>& estimate, Units units);         // mm/min or in/min
[[nodiscard]] PrintedBand print(const Estimate<Voltage>& estimate, Units units = {});  // V
[[nodiscard]] PrintedBand print(const Estimate<Duration>& estimate, Units units = {}); // s

} // namespace torchside
