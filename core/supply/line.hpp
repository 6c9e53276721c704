// What a machine draws through wires that take their share: a constant-power load behind a resistance.
//
// What       Supply current I and the voltage left at the machine, for an apparent power S at the machine.
// Formula    E I - r I^2 = S   =>   I = 2 S / (E + sqrt(E^2 - 4 r S)),  no root: the line cannot deliver S
//            one phase     E = V - 2 R_run I_o        r = 2 (R_run + R_cord)     S = S
//            three phases  E = V / sqrt(3) - R_run I_o  r = R_run + R_cord       S = S / 3   (per phase)
//              V    at the panel, V (line to line)      R    one way, ohm
//              I_o  other load at the end of the run, A; counted in phase
//            The smaller root is taken: the larger one needs the voltage to fall past one half and is never reached.
//            Most power there is: E^2 / (4 r), at I = E / (2 r).
// Source     circuit theory; own derivation.
// Error      | current and drop taken in phase, wire reactance left out | drop comes out too high, never too low:
//            | at power factor 0.70 by up to a third of the drop; up to 4 AWG reactance is below 1/5 of the resistance |
//            Against scipy's root finder: 1e-9 relative on 10 000 random circuits (tests/oracle/supply_line.py).
// Edges      r = 0: I = S / E. S = 0: I = 0. E <= 0 (the other load alone takes all voltage): nothing delivered, 0 A.
//            Not delivered: current and voltage are those of most power.
// Example    S 6857.142857 VA (40 A at 96 V, 0.80 x 0.70), 240 V, 15.24 m of 10 AWG: before drop 28.571 A; solved
//            29.006 A, 236.403 V.
#pragma once

#include "core/quantity/quantity.hpp"

namespace torchside::supply {

struct Line {
    Voltage source{240, volt};
    Resistance run{};  // one way
    Resistance cord{}; // one way
    Current other{};   // at the end of the run
    int phases = 1;    // 1 or 3
};

struct Draw {
    bool delivered = true;
    Current current{};
    Voltage outlet{};  // at the end of the run
    Voltage machine{}; // at the end of the cord
};

[[nodiscard]] Draw draw(const Line& line, ApparentPower machine);

/// Volts times amperes of the whole line: V for one phase, sqrt(3) V for three.
[[nodiscard]] Voltage power_voltage(Voltage line, int phases);

} // namespace torchside::supply
