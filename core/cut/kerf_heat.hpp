// What one metal asks of the arc: the metal's properties and the terms put together. Shared inside core/cut.
#pragma once

#include "core/cut/terms.hpp"

namespace torchside::cut {

struct KerfHeat {
    double melt_j_m3;      // rho (s h - phi q): to melt and eject the kerf, less what burns in it
    double conduction_w_m; // k (T_melt - T_0)
    double diffusivity_m2_s;
};

/// Example: mild steel, handbook terms: 1.15 * 7850 * 1 283 380 = 1.1586e10 J/m3, 52 570 W/m, 6.462e-6 m2/s.
[[nodiscard]] KerfHeat kerf_heat(Metal metal, const Terms& terms);

} // namespace torchside::cut
