// The curve beside a contour at a fixed distance, arcs kept as arcs.
//
// What       All points at `right_mm` to the right of travel that are no nearer to any other place of the contour: the
//            boundary of what a disc of that radius leaves when it is rolled along. Outside corners become arcs about
//            the corner; arcs become arcs of the same sweep, whose radius grows or shrinks.
// How        1 each piece is moved to its right; an arc that would turn inside out is left out
//            2 at outside corners they are joined by an arc, or, where it would stand out less than 0.001 mm, by their
//              crossing; at inside corners they are cut back to their crossing, or left crossing
//            3 all that cross are cut there, found by a tree of boxes. The moved curve can only come too near to the
//              contour where it crosses itself, so each run between crossings is kept or dropped whole
//            4 kept are runs whose middles lie as far from the contour as they should; their ends join to loops
//            Where coincidences make ends that do not join, the distance is changed by 1e-5 of itself and all done
//            again.
// Why own    No flattening: arcs stay true arcs in the program for the controller and in sqrt(a r) of the time; a
//            general clipping library knows straight pieces only, and weighs more than all of this folder.
// Source     geometry
// Range      right_mm of either sign, up to 1e4; a closed contour that does not cross itself. What a crossing one gives
//            is some closed curve; it is found and named when the drawing is read.
// Edges      0 gives the contour back. A contour narrower than twice the distance gives no loop, one with a neck
//            several; a pocket behind a neck gives a loop that runs the other way than the contour. `kept` is parallel
//            to the contour's vertices: whether anything of the piece that starts there is left (joints of corners do
//            not count).
// Example    a 50 mm square, anticlockwise, 0.825 to the right: four pieces of 50 mm and four quarter circles, area
//            2500 + 4 x 50 x 0.825 + pi 0.825^2 = 2667.138 mm2.
#pragma once

#include <vector>

#include "core/part/outline.hpp"

namespace torchside::part {

struct Offset {
    std::vector<Contour> loops{}; // roles as the contour's
    std::vector<char> kept{};
    bool whole = true; // false: something did not join, and was left out
};

[[nodiscard]] Offset offset(const Contour& contour, double right_mm);

} // namespace torchside::part
