// Pressure lost in an air hose. Three published forms disagree, so the answer is a range.
//
// What       Drop of pressure along a hose at a steady flow of free air.
// Formula    A   7.57e4 q^1.85 L / (d^5 p)      kg/cm2; m3/min, m, mm, kg/cm2 absolute
//            B   1.6e12 q^1.85 L / (d^5 p)      kPa; m3/s, m, mm, kPa absolute
//            C   0.1025 L Q^2 / (r d^5.31)      psi; ft, ft3/s, inch, r = absolute / 14.7 psi
//              p  at the hose's inlet, absolute. All three are a constant over p for one hose and flow.
//            Value: mean of the three. Band: 25 % either way, or the three forms where they spread further.
//            Inlet for a wanted outlet: p - K / p = p_out  =>  p = (p_out + sqrt(p_out^2 + 4 K)) / 2
// Source     A and B: engineering notes (pipe_drop_a, pipe_drop_b), sold as the same formula, 13 % apart. C: Harris, a
//            handbook form from memory (harris_drop). The band is a prior.
// Error      | 3/4 in, 30 cfm, 50 ft, 90 psig | forms 0.66, 0.74, 0.83 psi | a hose chart (hose_chart) says about 0.4 |
//            Smooth hose reads lower; couplings and quick connectors add and are not counted.
// Range      bore 4..50 mm, 0..200 m, 0..5000 L/min. Edges: no length or no flow: no drop.
// Example    3/8 in, 50 ft, 10 cfm, 100 psig: 2.52, 2.84, 3.34, mean 2.90 psi.
#pragma once

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::air {

struct Hose {
    Length bore{9.5, mm};
    Length length{15, metre};
    Flow flow{150, litre_min};
};

struct DropForms {
    Pressure a{};
    Pressure b{};
    Pressure c{};
};

[[nodiscard]] DropForms drop_forms(const Hose& hose, Pressure inlet);          // inlet: gauge
[[nodiscard]] Estimate<Pressure> drop(const Hose& hose, Pressure inlet);       // inlet: gauge
[[nodiscard]] Estimate<Pressure> inlet_for(const Hose& hose, Pressure outlet); // both gauge

} // namespace torchside::air
