// The shapes a part can be by its sizes.
//
// What       plate          length x width, corners rounded by `corner`, holes in it:
//                           1 in the middle; an odd number in one row along the length; an even number in two rows, 2
//                           in one. A row begins and ends `hole_edge` from the ends, is spaced evenly, and two rows are
//                           `hole_edge` from the sides
//            disc, ring     `outside`, and a bore of `inside`
//            flange         a ring with `holes` holes evenly on `hole_circle`, the first to the right; a bore of 0 is
//                           no bore
//            gusset         a right-angled triangle of `length` and `width`, corners rounded
//            slotted plate  a plate with one slot in its middle, along its length, with round ends
//            bracket        an L of `length` and `width` with legs `leg` wide. Holes on the middle of the legs, as many
//                           on one as on the other, an odd one in the corner; the last on a leg `hole_edge` from its
//                           end, those before it evenly between it and the corner
// Source     own layout
// Range      sizes as the schema has them; up to 200 holes
// Edges      the lower left corner of the part's box is at 0,0. A Fault names the field that does not fit: a radius
//            that two corners have no room for, holes that leave the part or meet each other, a bore or slot too large.
//            A drawing is not drawn here.
// Example    flange 120 mm, bore 40 mm, four 11 mm holes on 90 mm: six contours of true arcs,
//            pi (60^2 - 20^2 - 4 x 5.5^2) = 9672.964 mm2, pi (120 + 40 + 4 x 11) = 640.885 mm of cut.
#pragma once

#include "core/part/outline.hpp"
#include "core/part/part_spec.hpp"
#include "core/words/outcome.hpp"

namespace torchside::part {

[[nodiscard]] Outcome<Outline> make_outline(const PartSpec& spec);

/// A full circle of two half circles; anticlockwise as outer, clockwise as inner contour.
[[nodiscard]] Contour circle(Point centre, double radius_mm, Role role);

} // namespace torchside::part
