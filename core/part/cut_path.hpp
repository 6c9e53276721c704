// What the torch follows: for each contour, in cutting order, the path from where the plate is pierced to where the arc
// goes off. Made by compensation (compensate.hpp), timed by core/motion.
#pragma once

#include <cstddef>
#include <vector>

#include "core/part/outline.hpp"

namespace torchside::part {

/// One torch-on. `path` is open: its first vertex is the pierce, its last is where the arc goes off (its bulge is
/// unused). Vertices contour_begin .. contour_end are on the compensated contour (the last one closes it); what comes
/// before is the lead-in, what comes after the lead-out.
struct Run {
    Role role = Role::outer;
    std::vector<Vertex> path{};
    std::size_t contour_begin = 0;
    std::size_t contour_end = 0;
    std::size_t source = 0;  // index of the contour as drawn
    double hole_mm = 0.0;    // inner: diameter of the circle of equal area as drawn; 0 for outer and open
    bool edge_start = false; // begins off the plate: no pierce
};

struct CutPath {
    std::vector<Run> runs{}; // inner first
};

} // namespace torchside::part
