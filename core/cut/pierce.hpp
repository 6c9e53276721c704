// Piercing a plate standing still.
//
// What       The delay between arc transfer and the first movement, and the thickest plate to pierce like that.
// Formula    hole    A = pi (m w / 2)^2                     w melted width that the current makes, m = terms.pierce_width:
//                    of the bore by terms.density, whatever the nozzle's: at pierce height the arc is past it, and a
//                    narrower bore does not make a smaller crater (prior; before, 0.9 mm at 40 A was given 2/3 of 1.1 mm's)
//            t_melt  = A t rho (s h - phi q) / (eta U I)     U at pierce height
//            t_max   = thickness whose production feed is terms.pierce_feed, same metal and current
//            delay   = k t_melt (1 + b (t / t_max)^2)        k = terms.pierce_margin, b = terms.pierce_growth
//            Finite for every plate: a slow pierce loses more heat into the plate, but does not stall at t_max.
// Source     form own; k and b fitted to four rules of thumb of 45 A on mild steel (assets/data/pierce_practice.json:
//            common practice, no source), which are therefore no proof of it. No published table of pierce times was
//            found. Prior sd of ln(delay) 0.5 (terms.pierce_margin.sd).
// Error      | 45 A, mild steel, no own cuts | 3 mm   | 6 mm   | 10 mm  | 12 mm  |
//            | rule of thumb                 | 0.2 s  | 0.5 s  | 0.8 s  | 1.3 s  |
//            | here, fitted to it            | 0.21 s | 0.45 s | 0.91 s | 1.21 s |
//            40 A on 8 mm, bores of 0.9, 1.0, 1.1 mm: 0.67, 0.70, 0.72 s. All meet what a shop expects (0.6 to 1.3 s);
//            0.9 mm is 63 A/mm2, at the end of the bores seen (51..62), so a nozzle that a 40 A shop may have.
//            pierce_feed is 500 mm/min with the handbook terms. Feeds of small_air_torch are higher at the same plate,
//            so it is 700 mm/min there (prior): t_max of a 1.1 mm nozzle at 45 A on mild steel is then 10.1 mm once
//            practice rows are in, half of what is severed; the shop rule says "half to two thirds of cut capacity".
// Edges      delay is from transferred arc to first movement: core/gear/start.hpp holds what comes before. pierce_delay()
//            refuses at and past t_max: start at an edge, pierce moving, or drill a pilot hole. Refusals of balance().
// Example    handbook, mild steel 45 A 6 mm: t_melt 0.1216 s, t_max 9.60 mm, delay 0.658 s.
#pragma once

#include "core/cut/balance.hpp"

namespace torchside::cut {

/// Time to melt the pierced hole of a thin plate.
[[nodiscard]] Outcome<Duration> melting_time(const CutSetup& plate, const Terms& terms);

/// Level-1 t_max: by the energy balance alone.
[[nodiscard]] Length pierce_limit(const CutSetup& plate, const Terms& terms);

/// The delay of any plate, past the limit too: what the log is read against.
[[nodiscard]] Outcome<Duration> piercing_time(const CutSetup& plate, Length limit, const Terms& terms);

/// The delay, for a limit that the caller knows better (from the user's own cuts).
[[nodiscard]] Outcome<Duration> pierce_delay(const CutSetup& plate, Length limit, const Terms& terms);

/// The delay with the level-1 limit.
[[nodiscard]] Outcome<Duration> pierce_delay(const CutSetup& plate, const Terms& terms);

} // namespace torchside::cut
