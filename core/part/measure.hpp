// What a contour measures: length, area, box, centre of gravity, mass, and whether a point is in it.
//
// Formula    length    sum of c, and of c (1 + b^2) atan|b| / |b| for arcs (c chord, b bulge)
//            area      shoelace of the chords, and for each arc the segment between it and its chord:
//                      r^2 (sweep - sin sweep) / 2, signed; about the first vertex, so that a part far from the origin
//                      loses no digits
//            centroid  first moments of the same pieces; a segment's about its arc's centre is c^3 / 12
//            mass      area x thickness x density
// Source     geometry; densities: assets/data/metals.json
// Range      any contour; exact to rounding, arcs included
// Edges      area is positive for an anticlockwise contour, negative for a clockwise one; 0 for an open one. A contour
//            without area has its box's middle as centroid. An outline's area is that of its outer contours less that
//            of its inner ones, whichever way they run.
// Example    a ring of 120 and 40 mm: area 3200 pi = 10053.096 mm2, length 160 pi = 502.655 mm.
#pragma once

#include "core/part/outline.hpp"
#include "core/quantity/quantity.hpp"
#include "core/stock/metal.hpp"

namespace torchside::part {

struct Piece; // piece.hpp

/// Empty when low.x > high.x.
struct Box {
    Point low{1e300, 1e300};
    Point high{-1e300, -1e300};
    [[nodiscard]] double width() const { return high.x - low.x; }
    [[nodiscard]] double height() const { return high.y - low.y; }
    [[nodiscard]] bool empty() const { return low.x > high.x; }
    void add(Point p);
    void add(const Box& box);
};

[[nodiscard]] double length_mm(const Contour& c);
[[nodiscard]] double area_mm2(const Contour& c);
[[nodiscard]] Box box_of(const Contour& c);
[[nodiscard]] Point centroid_of(const Contour& c);
/// What a ray from the point to the right counts at a piece: +1 where it rises over the ray, -1 where it falls.
[[nodiscard]] int winding_of(const Piece& piece, Point p);
/// Whether a point is within a closed contour; of points on the contour itself either may be said.
[[nodiscard]] bool holds(const Contour& c, Point p);
/// Diameter of the circle of the same area: what a hole is judged by.
[[nodiscard]] double equal_diameter_mm(const Contour& c);

[[nodiscard]] double length_mm(const Outline& o); // all that is to be cut
[[nodiscard]] double area_mm2(const Outline& o);
[[nodiscard]] Box box_of(const Outline& o);
[[nodiscard]] Point centroid_of(const Outline& o);
[[nodiscard]] Mass mass_of(Area area, Length thickness, Metal metal);

} // namespace torchside::part
