// Time along a cut path: what the table can do of the feed that is set.
//
// What       Every run is followed from rest to rest with look-ahead: the speed at each joint is the highest from which
//            the rest can still be driven. Between two joints speed rises, holds and falls evenly.
// Formula    joint     direction change phi, interior angle th = pi - phi: R = d sin(th/2) / (1 - sin(th/2)), at most
//                      (l/2) / tan(phi/2) with l the shorter of the two pieces; v <= sqrt(a R)
//            arc       v <= sqrt(a r)
//            piece     peak v_p = min(cap, sqrt((2 a L + v0^2 + v1^2) / 2)), time (2 v_p - v0 - v1) / a
//                      + (L - (2 v_p^2 - v0^2 - v1^2) / (2 a)) / v_p
//            hole      share of the feed: hole_share up to 5 t across, rising evenly to 1 at 10 t
//            moves     to the next pierce in a straight line at the rapid, rest to rest; touch-off before each pierce;
//                      the last one goes to the next part, its own width further on
//            rests     at most d seconds of arc in ten minutes: w = ceil(arc of the batch / d) - 1 full windows, rest
//                      max(0, w (600 s - d) - time without arc)
//            gaps      each is a restart: the pierce delay once more, standing
//            edge      a start from the plate's edge has no pierce: it costs its touch-off and the way in. Where
//                      nothing can be pierced, the other starts are taken to be at the edge of a drilled hole, at the
//                      same cost; the holes are counted (to_drill), the drilling is not
//            band      first order: the time at full feed goes as 1 / feed, the pierces as their delay; in quadrature
// Source     geometry: a circle that touches both legs and passes the corner at distance d (own derivation; the first
//            bound is for long legs, the second keeps a curve of short pieces from being driven as if it were
//            straight); hole rule and touch-off: priors (assets/data/motion_rules.json)
// Range      1 to 50 000 mm/min, 10 to 20 000 mm/s2; 200 000 pieces in one pass each way
// Edges      pieces without length are skipped; an empty path takes no time. By hand there is no acceleration, no
//            rapid, no slow place.
// Example    a = 500 mm/s2, d = 0.05 mm: a 100 mm square at 50 mm/s, rest to rest, takes 8.314 s (8.0 without the
//            corners).
#pragma once

#include <optional>

#include "core/motion/report.hpp"
#include "core/part/cut_path.hpp"

namespace torchside::motion {

struct Drive {
    Estimate<Speed> feed{};
    Acceleration acceleration{500, mm_s2};
    Length corner_tolerance{0.05, mm};
    Speed rapid{10000, mm_min};
    std::optional<Estimate<Duration>> pierce_delay{}; // none: the plate is not pierced
    Duration touch_off{3, second};
    Length thickness{6, mm};
    double gaps_per_m = 0.0;
    Duration arc_per_10_min{600, second}; // what the machine's duty cycle allows
    int quantity = 1;
    bool by_hand = false;
};

[[nodiscard]] Report travel(const part::CutPath& path, const Drive& drive);

/// Highest speed through a corner between two pieces at least `shorter` long; phi is the change of direction, 0 to pi.
[[nodiscard]] Speed corner_speed(double phi, Length tolerance, Acceleration a, Length shorter);

/// The feed in a hole as a share of the feed set.
[[nodiscard]] double hole_share(double diameter_mm, Length thickness);

/// Rest that a batch needs when one part has `arc` of arc and `other` of time without.
[[nodiscard]] Duration rests(Duration arc, Duration other, int quantity, Duration arc_per_10_min);

} // namespace torchside::motion
