// How much heat a moving cut loses into the plate beside it.
//
// What       A cylinder of radius a held at the melting point moves at speed v through a wide plate. F(p) is all the
//            heat that leaves it, per thickness, as a number; G(p) is the part that stays in the plate beside the kerf.
// Formula    p = v w / (4 alpha)                          w = 2 a kerf width, alpha = k / (rho cp) diffusivity
//            F(p) = 2 pi p sum_{n>=0} eps_n (-1)^n I_n(p)^2 [-K_n'(p) / K_n(p)],  eps_0 = 1, eps_n = 2
//            G(p) = F(p) - 4 p                            the swept strip leaves as melt and is counted there
//            heat per thickness [W/m] = k (T_melt - T_0) G(p)
// Source     own: the Fourier-mode solution of the moving-source equation (Rosenthal 1946, key rosenthal_1946) for a
//            round isothermal hole. The fit's constants are own, made with the series, which
//            tests/exact_conduction.hpp sums.
// Range      | form  | p            | largest relative error of G                                            |
//            | fit   | 0.003..12    | 0.19 %                                                                 |
//            | slow  | p < 0.003    | 2 pi / (ln(2/p) - gamma) - 4 p, scaled by 1 - 3.1e-5 to meet the fit   |
//            | fast  | p > 12       | G(12) (p/12)^0.33; not known, the exponent is the slope of G at 12     |
// Edges      G rises with p everywhere and is continuous; p must be > 0 and finite.
// Example    p = 1: F 8.1065, G 4.1065 exact, 4.1029 by the fit.
#pragma once

namespace torchside::cut {

/// What the balance uses: the fit with its two end forms; any p > 0.
[[nodiscard]] double conduction_shape(double p); // G

/// d ln G / d ln p of conduction_shape, for Newton's method.
[[nodiscard]] double conduction_slope(double p);

} // namespace torchside::cut
