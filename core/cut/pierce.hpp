// Piercing a plate standing still.
//
// What       The delay between arc transfer and the first movement, and the thickest plate to pierce like that.
// Formula    hole    A = pi (m w / 2)^2                     w melted width of the balance, m = terms.pierce_width
//            t_melt  = A t rho (s h - phi q) / (eta U I)     U at pierce height
//            t_max   = thickness whose production feed is terms.pierce_feed, same metal and current
//            delay   = k t_melt / (1 - t / t_max)            k = terms.pierce_margin
// Source     own, not validated: no published table of pierce times was found. Prior sd of ln(delay) 0.5
//            (terms.pierce_margin.sd).
//            pierce_feed is 500 mm/min with the handbook terms. Feeds of small_air_torch are higher at the same plate,
//            so it is 750 mm/min there (prior): that keeps t_max of 45 A on mild steel where it was, near 9.6 mm once
//            practice rows are in, half of what is severed; the shop rule says "half to two thirds of cut capacity".
// Edges      refused at and past t_max: start at an edge, pierce moving, or drill a pilot hole. Refusals of balance().
// Example    handbook, mild steel 45 A 6 mm: t_melt 0.1216 s, t_max 9.60 mm, delay 0.65 s.
#pragma once

#include "core/cut/balance.hpp"

namespace torchside::cut {

/// Time to melt the pierced hole of a thin plate.
[[nodiscard]] Outcome<Duration> melting_time(const CutSetup& plate, const Terms& terms);

/// Level-1 t_max: by the energy balance alone.
[[nodiscard]] Length pierce_limit(const CutSetup& plate, const Terms& terms);

/// The delay, for a limit that the caller knows better (from the user's own cuts).
[[nodiscard]] Outcome<Duration> pierce_delay(const CutSetup& plate, Length limit, const Terms& terms);

/// The delay with the level-1 limit.
[[nodiscard]] Outcome<Duration> pierce_delay(const CutSetup& plate, const Terms& terms);

} // namespace torchside::cut
