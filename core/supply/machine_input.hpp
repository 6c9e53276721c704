// What the machine asks of its supply: load voltage of the type test, apparent power, duty, effective current.
//
// What       From the output to the input side, before any wire.
// Formula    rated load voltage   U2 = 80 V + 0.4 I2 to 165 A, 130 V + 0.1 I2 to 500 A, 180 V above
//            apparent power       S = U2 I2 / (eta PF)
//            supply current       I1 = S / U1, with three phases S / (sqrt(3) U1)
//            duty at a current    X = X_rated (I_rated / I2)^2, at most 1      (equal heating)
//            effective current    I1eff = sqrt(I1^2 X + I0^2 (1 - X))
//              U2, I2  output volts, amperes   eta  efficiency   PF  power factor   I0  supply current, arc off
//            With a nameplate: eta PF = U2 I2 / (U1 I1max), U2 and I2 at the largest output.
// Source     U2, duty period of 10 min, I1eff: IEC 60974-1 (from memory). S: energy balance, exact for RMS current and
//            true power factor. PF of a corrected input 0.99, of an uncorrected one 0.6..0.75: from memory.
//            Equal heating: an estimate; the machine's own plate governs.
// Error      U2 is a test voltage, not a cut's: while cutting, the arc is commonly 10..40 V higher and the
//            input with it.
// Edges      The rule steps up 0.5 V at 165 A. I0 above I1 counts as I1. An I1max that would need eta PF above 1 is
//            refuted and put aside.
// Example    40 A: 96 V, 3840 W; 240 V, 0.80, 0.70: 28.571 A; 35 % duty, 1.0 A idle: 16.922 A effective.
#pragma once

#include "core/gear/machine.hpp"
#include "core/quantity/quantity.hpp"
#include "core/supply/report.hpp"

namespace torchside::supply {

inline constexpr double corrected_power_factor = 0.99;

[[nodiscard]] Voltage rated_load_voltage(Current output);

/// Output watts per input volt-ampere, and where it comes from. 0.16..1.
struct Conversion {
    double share = 0.56;
    PowerBasis basis = PowerBasis::estimate;
    double plate_share = 0.0; // as the nameplate implies; 0 without one
};
[[nodiscard]] Conversion conversion(const Machine& machine, Voltage line);

[[nodiscard]] ApparentPower apparent_power(Current output, Voltage arc, double share);
[[nodiscard]] Current supply_current(ApparentPower power, Voltage line, int phases);
[[nodiscard]] double duty_at(const Machine& machine, Current output);
[[nodiscard]] Current effective_current(Current input, Current idle, double duty);

} // namespace torchside::supply
