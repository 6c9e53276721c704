// How upright a cut face is, and which range of ISO 9013 that is.
//
// What       Angle of a face, its out-of-squareness u, the limits of u for a thickness, the zone at the edges that
//            does not count.
// Formula    theta = atan((w_top - w_bottom) / (2 t))   both faces alike; positive: kerf wider at the top
//            u = (t - 2 z) tan |theta|                  z edge zone, left out at the top and again at the bottom
//            limit of range r = base_r + per_mm_r t
//            lag angle = atan(n / t)                    n how far the drag lines trail at the bottom
// Source     limits and zone: assets/data/tune_squareness.json (seen), tune_edge_zone.json (memory); ISO 9013:2017,
//            same ranges in 2002. u of the standard also holds the face's waviness: here it is a straight face's.
// Range      plasma cuts of 0.5 to 150 mm. Plasma is usually in ranges 3 to 5.
// Edges      u past range 5: no range. u is not an angle: an angle is turned into u only for the thickness it was
//            measured on. Thickness outside 0.5 to 150 mm: no ranges.
// Example    6 mm, kerf 1.8 mm at the top and 1.4 mm at the bottom: 1.909 degrees. u 0.9 mm at 6 mm: range 4 (limit
//            0.92 mm); 0.93 mm: range 5.
#pragma once

#include <optional>
#include <string_view>

#include "core/quantity/quantity.hpp"

namespace torchside::tune {

inline constexpr std::string_view squareness_edition = "ISO 9013:2017";

/// Degrees; positive: kerf wider at the top, the part narrower there.
[[nodiscard]] double face_angle_deg(Length kerf_top, Length kerf_bottom, Length thickness);

[[nodiscard]] double lag_angle_deg(Length lag, Length thickness);

/// Left out at the top edge and again at the bottom edge.
[[nodiscard]] Length edge_zone(Length thickness);

/// u of a straight face between its two edge zones.
[[nodiscard]] Length out_of_square(double angle_deg, Length thickness);

/// Largest u of a range 1..5; none for other ranges and thicknesses.
[[nodiscard]] std::optional<Length> squareness_limit(int range, Length thickness);

/// The finest range that u is within; none past range 5.
[[nodiscard]] std::optional<int> squareness_range(Length u, Length thickness);

/// Both faces of a cut apart: what height and feed do to both alike, and what leans one way.
struct Faces {
    double alike_deg = 0.0;   // (left + right) / 2
    double leaning_deg = 0.0; // (left - right) / 2: torch tilt or swirl
};
[[nodiscard]] Faces faces(double left_deg, double right_deg);

} // namespace torchside::tune
