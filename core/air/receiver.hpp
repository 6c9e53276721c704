// How long a receiver gives more air than the compressor makes, and how long it takes to fill.
//
// What       Time for a receiver to go from one pressure to another.
// Formula    t = V (p1 - p2) / (p_atm (Q_out - Q_in))
//              V  receiver    p1, p2  from and to, both gauge    Q  free air, out and in    p_atm 1.01325 bar
//            Filling is the same with Q_out < Q_in and p1 < p2. Isothermal: the receiver's metal keeps the air near
//            room temperature over minutes.
// Source     two engineering notes that agree (sources.json: receiver_sizing).
// Error      | a fast run-down cools the air, up to adiabatic | up to 1 / 1.4 of this time |
//            | 500 m above sea | free air is measured at 0.955 bar: 5 % longer |
// Edges      Nothing runs down when Q_in >= Q_out, nothing fills when Q_in <= Q_out: none, never a negative time.
//            Already past the target: 0 s.
// Example    100 L, 8 to 6 bar, 150 out, 100 in: 236.86 s. 60 US gal, 0 to 125 psig, 5 cfm, no draw: 13.64 min.
#pragma once

#include <optional>

#include "core/quantity/quantity.hpp"

namespace torchside::air {

inline constexpr Pressure atmosphere{1.01325, bar};

[[nodiscard]] std::optional<Duration> run_down(Volume receiver, Pressure from, Pressure to, Flow out, Flow in,
                                               Pressure atmospheric = atmosphere);
[[nodiscard]] std::optional<Duration> fill(Volume receiver, Pressure from, Pressure to, Flow out, Flow in,
                                           Pressure atmospheric = atmosphere);

} // namespace torchside::air
