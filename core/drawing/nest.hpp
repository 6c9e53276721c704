// Which contour is within which; and where contours cross, touch or lie on each other.
//
// What       A closed contour within an even number of others is outer and runs anticlockwise, within an odd number
//            inner and clockwise. Pieces that meet where they are not joined are found, and those that share a length.
// Formula    winding of a ray from the middle of the contour's first piece, over the contours whose boxes hold that
//            point. Meetings: line and line, line and circle, circle and circle, within 1e-6 mm.
//            Both by a tree of boxes, four to a box, over the pieces in the order they are drawn and the contours in
//            the order of a Z-curve: n log n for what a drawing is like.
// Source     own method; Z-curve: Morton 1966
// Range      200 000 pieces
// Edges      Contours that cross get the role of their first piece. After 8 million comparisons, or 2000 meetings,
//            what is left is not looked at, and that is a problem "unchecked". Contours so deep in each other that
//            sorting takes more than 50 million steps: a Fault.
//            Pieces of no length are passed over: a vertex given twice is no crossing. Roles that come from elsewhere,
//            as in a workbook, are compared with those that the nesting gives when nothing crosses.
// Example    a ring of 120 and 40 mm with a disc of 20 mm in it: outer, inner, outer.
#pragma once

#include <vector>

#include "core/drawing/sketch.hpp"

namespace torchside::drawing {

/// Sets roles and directions. Word{}, or why it was given up.
[[nodiscard]] Word nest(Outline& outline);

/// Adds crossing, overlap and unchecked. False when progress said stop. Meetings within `tolerance_mm` of an open
/// contour's ends are not counted: those are named already.
[[nodiscard]] bool find_crossings(const Outline& outline, double tolerance_mm, const Progress& progress,
                                  std::vector<Problem>& problems);

/// What an outline that was not just read, and so not nested, may have: adds crossing, overlap and unchecked, or, when
/// nothing crosses, inside_out for each closed contour whose role is not the one nest() gives.
void check_nesting(const Outline& outline, std::vector<Problem>& problems);

} // namespace torchside::drawing
