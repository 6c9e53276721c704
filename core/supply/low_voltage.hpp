// The machine as it is rated at the voltage it is fed with: one made for two voltages has a second, smaller rating.
//
// What       Largest output, duty, I1max and I1eff that hold at a line; and where they come from.
// Formula    a line below 150 V is a low one. There the low-voltage rating replaces the other:
//              largest output   low_voltage.max_current, at most that of the machine; else that of the machine
//              duty             low_voltage.duty_cycle at low_voltage.duty_current; without a share the machine's own share, without
//                               a current at the largest output at this voltage
//              I1max, I1eff     of the low rating only: those of the other rating say nothing of this voltage
//            With I1max the input follows from it (machine_input.hpp): I1 = I1max U I2 / (U2 I2max), U the arc's volts, U2 the
//            rated load voltage at the largest output. Without, from efficiency and power factor.
// Source     I1max, I1eff, duty: terms of the rating plate of IEC 60974-1 (from memory). 150 V and the duty where none is
//            entered: own (prior).
// Edges      A smallest setting above the largest output at this voltage counts as that. A line of 150 V or more: the machine.
// Example    40 A machine, low rating 20 A, 35 %, I1max 25 A, on 120 V with an arc of 110 V at 20 A:
//            25 x 110 x 20 / (88 x 20) = 31.25 A.
#pragma once

#include "core/gear/machine.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::supply {

[[nodiscard]] bool is_low(Voltage line);

/// What the machine's numbers at a line rest on.
enum class Rating {
    full,    // the line is not low: the machine's main rating
    plate,   // a low line, and the rating for it with its I1max
    entered, // a low line, and its largest current
    assumed  // a low line, and nothing entered: the main rating's currents, efficiency and power factor
};
[[nodiscard]] Rating rating_of(const Machine& machine, Voltage line);

[[nodiscard]] Machine machine_on(const Machine& machine, Voltage line);

} // namespace torchside::supply
