// Ends that meet become contours; what does not meet, lies twice or is too short is found and named.
//
// What       Ends within the tolerance are one point. Where two ends meet they are joined. Where more meet, pieces that
//            lead nowhere are set aside, then those that meet again elsewhere are kept together, then those that go on
//            most nearly straight are joined. A gap closed that way is drawn in by its middle.
// Formula    distance <= tolerance to the first point found there; points are kept by cells of 4 tolerances, so the
//            work is proportional to the number of ends. The same piece twice: both ends and the middle within the
//            tolerance, in either direction.
//            Curves may be drawn as lines shorter than the tolerance, each on its own: these are first welded where two
//            ends, and no third, lie within a tenth of the tolerance (at most 0.005 mm).
// Source     own method
// Range      tolerance 0.001 to 5 mm, coordinates within +-1e6 mm
// Edges      A chain that stays shorter than the tolerance is a short_piece, a closed one without area is left open as
// no_area; of
//            a closed chain that shares only some pieces with another nothing is taken out (nest.hpp finds the
//            overlap).
// Example    four lines of a square drawn in any order and direction, one end 0.04 mm off, tolerance 0.05: one closed
//            contour, one gap of 0.04 mm; with tolerance 0.03 an open one. A circle of 5 mm radius drawn as 720 lines
//            of 0.044 mm is one contour of 720 pieces.
#pragma once

#include "core/drawing/sketch.hpp"

namespace torchside::drawing {

/// Takes the sketch's chains; adds to its problems and counts. Closed contours first, in the order drawn, as
/// Role::outer; then the open ones. Word{}, or why it was given up.
[[nodiscard]] Word join(Sketch& sketch, double tolerance_mm, const Progress& progress, Outline& out);

} // namespace torchside::drawing
