// What the kerf does to sizes, and what sizes say about the kerf.
//
// Formula    cut on the line, an outside size comes out as drawn less the kerf, an inside size as drawn plus the kerf;
//            so kerf = drawn - measured outside, measured - drawn inside, and offset = kerf / 2.
//            taper = atan((w_top - w_bottom) / (2 t)): both faces alike, positive when the kerf is wider at the top
// Source     geometry
// Range      kerfs up to 15 mm; thickness 0.3 to 150 mm
// Edges      of a coupon any of the four sizes may be missing (0), but not all; what is there is averaged, top and
//            bottom apart. A Fault names a size that gives no kerf between 0 and 15 mm. Without both a top and a bottom
//            there is no taper.
// Example    a 50 mm square measures 48.35 mm: kerf 1.65 mm, offset 0.825 mm. To measure 50 it is drawn 51.65 mm, or
//            cut with that offset. 50 / 20 mm measure 48.2 and 21.8 at the top, 48.6 and 21.4 at the bottom, 6 mm
//            thick: kerf 1.8 at the top, 1.4 at the bottom, mean 1.6, offset 0.8, taper 1.909 degrees.
#pragma once

#include <optional>

#include "core/quantity/outcome.hpp"
#include "core/quantity/quantity.hpp"

namespace torchside::part {

/// Kerf from a size cut on the line.
[[nodiscard]] constexpr Length kerf_from(Length drawn, Length measured, bool inside) {
    return inside ? measured - drawn : drawn - measured;
}

/// What a size measures when it is cut on the line.
[[nodiscard]] constexpr Length comes_out(Length drawn, Length kerf, bool inside) {
    return inside ? drawn + kerf : drawn - kerf;
}

/// What to draw so that, cut on the line, it measures what is wanted.
[[nodiscard]] constexpr Length draw_for(Length wanted, Length kerf, bool inside) {
    return comes_out(wanted, kerf, !inside);
}

/// Degrees; positive: kerf wider at the top, the part narrower there.
[[nodiscard]] double taper_deg(Length kerf_top, Length kerf_bottom, Length thickness);

/// A square with a hole in it, cut on the line; sizes not measured are 0.
struct MeasuredCoupon {
    Length outside{50, mm}; // as drawn
    Length inside{20, mm};
    Length outside_top{};
    Length outside_bottom{};
    Length inside_top{};
    Length inside_bottom{};
    Length thickness{6, mm};
};

struct KerfReading {
    std::optional<Length> top{};
    std::optional<Length> bottom{};
    Length kerf{}; // mean of top and bottom, or the one there is
    Length offset{};
    std::optional<double> taper_deg{};
    Length spread{}; // largest less smallest of the kerfs at one face: how well the sizes agree
};

[[nodiscard]] Outcome<KerfReading> read_coupon(const MeasuredCoupon& coupon);

} // namespace torchside::part
