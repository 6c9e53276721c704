// How far a figure of one plate is carried: by physics alone, by shop practice, or by the shop's own cuts.
//
// What       A figure has all three in it; this names the highest of them that did much for it.
// Formula    V: variance of the stock's own f (posterior.hpp: ln of feed, kerf and delay, volts of the arc), the noise
//            of a next cut left out. cuts when the log took away 3/4 of V or more, which halves the band; else practice
//            when its rows took away 1/2 of V or more, a band narrower by three tenths; else physics.
//            share of practice = 1 - V_practice / V_physics, of the log = 1 - V_cuts / V_practice.
//            The arc's voltage terms are themselves common practice: its figures are never physics alone. Kerf and
//            pierce delay have no practice rows.
// Source     own; both shares are definitions, not estimates. The log is asked for more: what it teaches of the shop
//            reaches, weakly, every plate of every metal.
// Range      any plate that core/cut accepts.
// Edges      an own cut far from the plate, or one whose verdict was expected, may leave the footing as it was: it
//            says little. Contradictory verdicts may widen a band: a share below 0 is no share.
// Example    6 mm at 45 A, no cuts: mild steel rests on practice (share 0.62), copper on physics (0.34; no rule of
//            thumb speaks of it), and so does 0.8 mm mild steel (0.45; no rule of thumb is near).
#pragma once

#include "core/tune/posterior.hpp"

namespace torchside::tune {

enum class DominantBasis { physics, practice, cuts };

struct DominantBases {
    DominantBasis feed = DominantBasis::physics;
    DominantBasis arc = DominantBasis::practice;
    DominantBasis pierce_delay = DominantBasis::physics;
    DominantBasis kerf = DominantBasis::physics;
};

[[nodiscard]] DominantBases dominant_bases(const Posterior& posterior, const cut::CutSetup& plate);

} // namespace torchside::tune
