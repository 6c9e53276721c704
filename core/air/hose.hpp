// Pressure lost in an air hose: a smooth pipe with a little roughness, and a band that holds what is published.
//
// What       Drop of pressure along a hose at a steady flow of free air, isothermal.
// Formula    p1^2 - p2^2 = 2 K,  K = f (L / d) G^2 R T / 2,  G = 4 m / (pi d^2)          (Darcy-Weisbach)
//            1 / sqrt(f) = -1.8 log10((e / 3.7 d)^1.11 + 6.9 / Re), at least 64 / Re     Re = G d / mu
//              m  mass flow of the free air, 1.01325 bar at 20 C    R 287.05 J/(kg K)    mu 1.82e-5 Pa s
//              e  roughness: value 0.01 mm; low a smooth pipe, less 20 %; high 0.05 mm, and 20 % more
// Source     Darcy-Weisbach and Haaland's friction factor (from memory, darcy_haaland: within 2 % of Colebrook). The
//            roughness of hose rubber and the 20 % are priors, chosen so that all published rows seen lie in the band.
// Error      | published row                                     | bar    | this, band             |
//            | 3/4 in, 30 cfm, 90 psi, 50 ft (hose_chart)        | 0.028  | 0.036, 0.026 to 0.055  |
//            | 1 in, 100 cfm, 90 psi, 100 ft (hose_page)         | 0.231  | 0.165, 0.116 to 0.261  |
//            | 32 mm, 100 L/s, 7 bar, 50 m (pipe_diagram)        | 0.42   | 0.321, 0.220 to 0.515  |
//            | 40 mm, the same                                   | 0.15   | 0.104, 0.074 to 0.159  |
//            Couplings and quick connectors add and are not counted.
// Range      bore 4..50 mm, 0..200 m, 0..5000 L/min. Edges: no length or no flow: no drop. More than the hose can
//            pass: all of the pressure is lost.
// Example    3/8 in, 50 ft, 10 cfm, 100 psig: 1.94 psi, 1.38 to 3.13.
#pragma once

#include "core/quantity/estimate.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::air {

struct Hose {
    Length bore{9.5, mm};
    Length length{15, metre};
    Flow flow{150, litre_min};
};

[[nodiscard]] Estimate<Pressure> drop(const Hose& hose, Pressure inlet);       // inlet: gauge
[[nodiscard]] Estimate<Pressure> inlet_for(const Hose& hose, Pressure outlet); // both gauge

} // namespace torchside::air
