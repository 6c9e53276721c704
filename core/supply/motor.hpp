// What a compressor's motor adds to the circuit.
//
// What       Full-load current of a single-phase motor. What its conductors carry besides is motor_share() in limits.hpp.
// Formula    to 150 V the 115 V column, above the 230 V column; above 250 V, and below 220 V (208 V systems), the 230 V
//            column times 230 / V (own: equal power)
// Source     assets/data/motors.json: NEC Table 430.248, seen in three reproductions of its 1999 form.
// Range      0.5..10 hp. Edges: between rows the next larger; below the first row the first; above the last in
//            proportion to it. Starting current is not counted: it is several times this for a second.
// Example    2 hp at 120 V: 24 A.
#pragma once

#include "core/quantity/quantity.hpp"

namespace torchside::supply {

[[nodiscard]] Current motor_current(double horsepower, Voltage line);

} // namespace torchside::supply
