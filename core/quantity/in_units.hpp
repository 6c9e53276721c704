// A sentence in the reader's units. Core's sentences say an amount in metric units, or in both at once: "6 mm", "6.35 mm
// (1/4 in)". Here one of the two is left.
//
//   text                            metric             inch
//   6.35 mm (1/4 in) is too thick   6.35 mm is ...     1/4 in is ...        both were said: one is kept
//   a kerf is 0 to 15 mm            as it stands       a kerf is 0 to 0.591 in
//   rated at 40 °C                  as it stands       rated at 104 °F
//   a 75 °C mark                    as it stands       as it stands         printed so on the terminal
//
// Known: mm, mm/min, mm², m, bar, °C and their counterparts in, in/min, kcmil, ft, psi, °F; "ga" only beside mm. Amounts
// that are turned round are printed to three figures: they are limits and rules of thumb. Any text whatever; what is
// not understood stays. Linear in the text. Factors: core/quantity/quantity.hpp; 1 kcmil = pi/4 * (0.001 in)^2 * 1000.
#pragma once

#include <string>
#include <string_view>

#include "core/quantity/unit_system.hpp"

namespace torchside {

[[nodiscard]] std::string in_units(std::string_view text, UnitSystem units);

/// The section of a wire in thousands of circular mils, as thick cable is sold by in inches.
inline constexpr double mm2_per_kcmil = 0.5067074790974977;

} // namespace torchside
