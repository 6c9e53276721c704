// A row of vertices as points near enough to each other to be drawn.
//
// Formula    an arc of radius r is walked in equal steps of its sweep, each at most 2 acos(1 - tolerance / r), so that
//            no chord is further than `tolerance` from its arc
// Source     geometry
// Range      any contour or path; tolerance above 0
// Edges      distances are along the row from its first vertex; what lies before `from_mm` or behind `to_mm` is left
//            out, with a point exactly there. At most 720 points for one piece.
// Example    half a circle of radius 10 mm within 0.1 mm: steps of at most 16.2 degrees, so 12 steps, 13 points.
#pragma once

#include <limits>
#include <span>
#include <vector>

#include "core/part/outline.hpp"

namespace torchside::part {

struct Stretch {
    double from_mm = 0.0;
    double to_mm = std::numeric_limits<double>::infinity();
};

/// With `closed` the row runs back to its first vertex.
[[nodiscard]] std::vector<Point> trace(std::span<const Vertex> row, bool closed, double tolerance_mm,
                                       Stretch stretch = {});

} // namespace torchside::part
