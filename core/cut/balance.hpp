// Feed from the energy balance of the kerf: level 1 of the estimate, before practice rows and the user's own cuts.
//
// What       The production feed v at which the arc's power just melts the kerf and feeds the heat lost into the plate.
// Formula    eta U I = t [ v w rho (s h - phi q) + f_c k (T_melt - T_0) G(p) ],  p = v w / (4 alpha)
//            h = cp (T_melt - T_0) + L_f,  w = kappa d,  d = bore, or sqrt(4 I / (pi J)) when it is not known
//            U = offset + per_a I + per_mm t + per_height (height - reference_height)
//   v  feed (m/s inside)     t  thickness     w  melted width      U, I  arc voltage and current
//   rho, cp, k, L_f, T_melt  core/stock, means over heating        T_0  293 K
//   eta, kappa, s, f_c, phi, q, J and the voltage terms: Terms      G  core/cut/conduction.hpp
// Source     own balance; eta fitted to assets/data/published_cuts.csv by tools/fit; each term's own source is in
//            assets/data/cut_terms.json.
// Error      | rows                                                      | terms           | RMS ln error of v    |
//            | 14 handbook rows, 6..152 mm, 250..750 A, given U and bore | handbook        | 0.216                |
//            | the same                                                  | small_air_torch | 0.210                |
//            | the same, each from the fit to the others                 | small_air_torch | 0.255                |
//            | 5 practice rows, 3..12 mm, 45 A, from memory              | small_air_torch | 0.201, mean 15 % low |
//            No complete published row exists for 20..100 A air: expect +-35 % (1 sd) before any own cut.
// Edges      v is a production feed; the plate still parts at about 1.25 v. Below 1 mm the energy limit is above what
//            the table, the arc and melt ejection allow. Nothing here knows the jet's momentum or the arc's length, so
//            thick plate comes out optimistic: core/cut/capacity.hpp caps it. Refused with a Fault: thickness outside
//            0.1..200 mm, current outside 5..1000 A, bore outside 0.2..20 mm, arc outside 20..500 V, height outside
//            0..25 mm, and plate so thick that the feed would be below 0.001 mm/min.
// Example    mild steel 6 mm, 45 A, handbook terms: U 104.0 V, P 4680 W, w 1.6057 mm, p 0.9526, v 920.0 mm/min,
//            melt 1711.5 W + conduction 956.1 W = 0.57 P.
#pragma once

#include <optional>

#include "core/cut/terms.hpp"
#include "core/quantity/quantity.hpp"
#include "core/words/outcome.hpp"

namespace torchside::cut {

/// One cut to be made. What is not known is worked out from the terms.
struct CutSetup {
    Metal metal = Metal::mild_steel;
    Length thickness{6, mm};
    Current current{45, ampere};
    std::optional<Voltage> arc{}; // measured at the torch
    std::optional<Length> bore{}; // of the nozzle in use
    Length height{1.5, mm};       // torch above the plate while cutting
};

struct Balance {
    Speed feed{};
    Voltage arc{};
    Length kerf{};      // melted width of the balance, not the kerf to offset by: that is cut::kerf
    Power power{};      // of the arc
    Power melt{};       // carried off as melt
    Power conduction{}; // lost into the plate; melt + conduction = eta * power
};

[[nodiscard]] Outcome<Balance> balance(const CutSetup& plate, const Terms& terms);

/// The feed alone, 0 mm/min where balance() refuses: for searches over thickness and current.
[[nodiscard]] Speed balance_feed(const CutSetup& plate, const Terms& terms);

/// Level-1 arc voltage: the measured one when the plate has it, else U above. Prior sd of the offset 10 V
/// (terms.arc_offset.sd), of the slopes in their own terms. Example: handbook, 45 A, 6 mm, 1.5 mm high: 104.0 V.
[[nodiscard]] Voltage arc_volts(const CutSetup& plate, const Terms& terms);

/// Bore of the nozzle: the given one, else from the current density. Example: handbook, 45 A: 1.0705 mm.
[[nodiscard]] Length bore(const CutSetup& plate, const Terms& terms);

/// Level-1 kerf to offset by: terms.kerf_width times the bore; prior sd of ln(kerf) 0.30 (terms.kerf_width.sd). Two or
/// three measured kerfs replace it. Example: handbook, 45 A: 1.606 mm.
[[nodiscard]] Length kerf(const CutSetup& plate, const Terms& terms);

} // namespace torchside::cut
