// Shop rules around the energy balance: heights, lead-in, smallest hole, and the torch in the hand.
//
// What       Cut and pierce height, lead-in length, smallest hole and the hand's pace, each with an 80 % band.
// Formula    cut height     1.5 mm
//            pierce height  cut height x min(4, 1.5 + 0.16 t / mm)
//            lead-in        max(1.5 t, 2.5 w, 3 mm)          t plate thickness, w kerf
//            smallest hole  max(1.0 t, 3 w)                  diameter
//            air pressure   4.5 bar, gauge, while it flows
//            post-flow      10 s
//            pace           100 mm / v and 304.8 mm / v      v feed
//            For a maximum, combine the lows with the lows and the highs with the highs.
// Source     assets/data/cut_rules.json: common practice, no source, except cut height, hole-per-kerf and how the
//            pierce height grows, which are priors (the trade says 1.5 to 4 cut heights, more for thick plate). Nothing published was found for small air torches. Pressure and post-flow are what such machines
//            are commonly set to, from memory.
// Range      any plate the balance accepts; the rules are kept for 1..25 mm.
// Example    6 mm plate, kerf 1.606 mm: pierce height 3.69 mm, lead-in 9.0 mm, smallest hole 6.0 mm; 1700 mm/min: 3.53 s per 100 mm.
#pragma once

#include <string_view>

#include "core/cut/settings.hpp"

namespace torchside::cut {

struct Rule {
    double value = 0.0;
    double low = 0.0;
    double high = 0.0;
    std::string_view source{};
};

struct Rules {
    Rule cut_height{};          // mm
    Rule pierce_ratio{};        // of the thinnest sheet
    Rule pierce_ratio_per_mm{}; // of plate
    Rule pierce_ratio_most{};
    Rule lead_per_thickness{};
    Rule lead_per_kerf{};
    Rule lead_least{}; // mm
    Rule hole_per_thickness{};
    Rule hole_per_kerf{};
    Rule drag_current{}; // A
    Rule air_pressure{}; // bar
    Rule post_flow{};    // s
};

[[nodiscard]] const Rules& rules();

[[nodiscard]] Estimate<Length> cut_height();
[[nodiscard]] Estimate<Length> pierce_height(Length thickness, const Estimate<Length>& cut_height);
[[nodiscard]] Estimate<Length> lead_in(Length thickness, const Estimate<Length>& kerf);
[[nodiscard]] Estimate<Length> smallest_hole(Length thickness, const Estimate<Length>& kerf);

/// The shop's own; where it says what the rule says it may not have looked, and the rule's band holds.
[[nodiscard]] Estimate<Pressure> air_pressure(Pressure own);
[[nodiscard]] Estimate<Duration> post_flow(Duration own);

/// The same cut with the torch in the hand. The tip may ride on the plate up to rules().drag_current; `drag` says that
/// the user wants it to. `feed` is the arc's own, not cut down to a table's maximum.
[[nodiscard]] ByHand by_hand(Speed feed, Current current, bool drag);

} // namespace torchside::cut
